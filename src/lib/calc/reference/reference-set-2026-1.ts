import { absorbentConstants } from './absorbents.ts';
import { agentConstants } from './agents.ts';
import { bodyConstants } from './body.ts';
import { captureConstants } from './capture.ts';
import { circuitConstants } from './circuit.ts';
import type { Constant } from './constant.ts';
import { economicConstants } from './economics.ts';
import { electricityConstants } from './electricity.ts';
import { exposureLimits } from './exposure-limits.ts';
import { gasConstants } from './gases.ts';
import { intravenousConstants } from './intravenous.ts';
import { lungConstants } from './lung.ts';
import { machineConstants } from './machines.ts';
import { physicalConstants } from './physical-constants.ts';
import { pneumoperitoneumConstants } from './pneumoperitoneum.ts';
import type { ReferenceSet } from './reference-set.ts';
import { theatreAirConstants } from './theatre-air.ts';
import { warmingPotentials } from './warming-potentials.ts';

const records: readonly Constant[] = [
  ...physicalConstants,
  ...agentConstants,
  ...bodyConstants,
  ...lungConstants,
  ...circuitConstants,
  ...pneumoperitoneumConstants,
  ...absorbentConstants,
  ...warmingPotentials,
  ...captureConstants,
  ...gasConstants,
  ...intravenousConstants,
  ...machineConstants,
  ...exposureLimits,
  ...theatreAirConstants,
  ...economicConstants,
  ...electricityConstants
];

/**
 * The first set. It stays as it is once a workbook may name it: a corrected or newer value goes into a new set,
 * which takes these records over and replaces some.
 */
export const referenceSet2026: ReferenceSet = {
  id: '2026-1',
  date: '2026-01-01',
  constants: new Map(records.map((record) => [record.id, record]))
};

/** How many records the set was made of; a repeated id would make the map smaller. */
export const recordCount2026 = records.length;
