import { fleetWarnings } from '../fleet/fleet-warnings.ts';
import type { EstimateInput } from '../input.ts';
import { captureWarnings } from './capture-warnings.ts';
import { scavengingWarnings } from './scavenging-warnings.ts';

/** What a reader must know of what is entered, before any figure: one sentence each, for a file that leaves the app. */
export const warningsOfCells = (
  input: Pick<EstimateInput, 'machines' | 'scenarios' | 'theatreGroups' | 'caseMix' | 'accounting'>
): readonly string[] => [
  ...fleetWarnings(input),
  ...captureWarnings(input.scenarios),
  ...scavengingWarnings(input)
];
