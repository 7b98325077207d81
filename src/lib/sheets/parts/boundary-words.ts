/** What a year's emissions count and what they leave out, in words: the same on Emissions and in the report. */
import type { LedgerLine } from '#lib/calc/estimate-types.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import {
  inventoryClasses,
  ledgerTitles,
  leftOutOfBoundary,
  scavengingPumpsLeftOut
} from '#lib/calc/line-names.ts';
import { arePumpsKnown } from '#lib/calc/pumps-known.ts';
import { activityInWords, baseYearInWords } from './activity-words.ts';
import { accountingFields, warmingSetOptions } from '#lib/workbook/fields.ts';

export interface Boundary {
  /** Which year, and how warming is counted. */
  readonly counted: string;
  /** Which year today stands for, and how the activity is known. */
  readonly known: string;
  /** The lines of the total by class, e.g. `direct (scope 1; category 1): agents`. */
  readonly within: readonly string[];
  /** What is told beside the total and in no figure elsewhere. */
  readonly beside: string;
  readonly leftOut: readonly string[];
  /** Whose the classes are, and how machines are counted where they are. */
  readonly mapping: string;
}

export const mappingOfClasses =
  'Scopes are those of the GHG Protocol, categories those of ISO 14064-1:2018; the mapping is our own, and agents that are no HFC in the letter of the basket may be reported apart from the scopes where your scheme asks so.';

const once = (words: readonly string[]): readonly string[] => [...new Set(words)];
const lowered = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);

/** What is said of a list of which some carry a figure: all of it, or those without one. */
const withoutFigure = (
  all: string,
  names: readonly { readonly name: string; readonly isGiven: boolean }[]
): string | null => {
  const lacking = names.filter(({ isGiven }) => !isGiven);
  if (lacking.length === 0) return null;
  return lacking.length === names.length
    ? all
    : `${all}: of ${lacking.map(({ name }) => name).join(', ')} no figure is given`;
};

/** Of what a year takes, the making that nobody has given a figure. */
function notMade({
  agents,
  machines,
  site
}: Pick<EstimateInput, 'agents' | 'machines' | 'site'>): readonly string[] {
  return [
    withoutFigure(
      'making agents, which depends on the route of synthesis and may not be small',
      agents.map(({ agent, manufactureKgCo2ePerKg }) => ({
        name: agent,
        isGiven: manufactureKgCo2ePerKg !== null
      }))
    ),
    withoutFigure(
      'making machines',
      machines.map(({ name, manufactureKgCo2ePerUnit }) => ({
        name: `“${name}”`,
        isGiven: manufactureKgCo2ePerUnit !== null
      }))
    ),
    site.consumablesKgCo2ePerCase === null
      ? 'circuits, filters and other consumables, and their waste, beyond what intravenous and regional drugs come with'
      : null
  ].filter((words) => words !== null);
}

/** How machines are counted, where they are. */
const machinesInWords =
  'A machine that is made carries a share of its making in each year of its life, as the year that is told is one in which nothing is bought. An inventory counts it whole in the year of purchase (scope 3.2 of the GHG Protocol, from memory).';

/** @param ledger the lines of today and of every scenario */
export function boundaryOf(
  input: Pick<
    EstimateInput,
    'accounting' | 'priceYear' | 'reference' | 'absorbents' | 'agents' | 'machines' | 'site' | 'theatreGroups'
  >,
  ledger: readonly LedgerLine[]
): Boundary {
  const { accounting, priceYear, reference, absorbents } = input;
  const set =
    warmingSetOptions.find(({ id }) => id === accounting.warmingSet)?.label ?? accounting.warmingSet;
  const horizon = accountingFields.warmingHorizonYears.options.find(
    ({ id }) => id === String(accounting.warmingHorizonYears)
  );
  const isCounted = ({ isInTotal, co2eKg }: LedgerLine): boolean => isInTotal && co2eKg !== null;
  const classes = once(ledger.filter(isCounted).map(({ kind }) => inventoryClasses[kind].class));
  const nameOf = ({ kind, subject }: LedgerLine): string =>
    kind === 'absorbent'
      ? `making the absorbent “${absorbents.find(({ id }) => id === subject)?.name ?? subject ?? ''}”`
      : lowered(ledgerTitles[kind]);
  const missing = ledger
    // Where no case is regional, nothing of it is left out.
    .filter(({ isInTotal, co2eKg, activity }) => isInTotal && co2eKg === null && activity !== 0)
    .map((line) => `${nameOf(line)}, as ${line.factor === null ? 'no factor' : 'no purchase'} is given`);
  const beside = once(ledger.filter(({ isInTotal }) => !isInTotal).map(({ kind }) => ledgerTitles[kind]));
  const pumps = input.theatreGroups.every(arePumpsKnown) ? [] : [scavengingPumpsLeftOut];
  return {
    counted: `One year of the cases as entered, of today and of each scenario once all of it is in place, with figures of ${priceYear} and reference set ${reference.id}. Warming: ${set}, ${horizon?.label ?? ''}.`,
    known: `${baseYearInWords(input.site)} ${activityInWords(input.site)}`,
    within: classes.map((each) => {
      const lines = ledger.filter((line) => isCounted(line) && inventoryClasses[line.kind].class === each);
      const placesIn = (standard: 'ghgProtocol' | 'iso14064') =>
        once(lines.map(({ kind }) => inventoryClasses[kind][standard])).join(' and ');
      return `${each} (${placesIn('ghgProtocol')}; ${placesIn('iso14064')}): ${once(lines.map(({ kind }) => lowered(ledgerTitles[kind]))).join('; ')}`;
    }),
    beside: beside.map(lowered).join('; '),
    leftOut: [...once(missing), ...notMade(input), ...leftOutOfBoundary, ...pumps],
    mapping: ledger.some(({ kind }) => kind === 'makingMachines')
      ? `${mappingOfClasses} ${machinesInWords}`
      : mappingOfClasses
  };
}
