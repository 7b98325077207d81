/** Which year today stands for, and how the activity is known that emissions are counted from, in words. */
import type { LedgerKind, LedgerLine } from '#lib/calc/estimate-types.ts';
import type { ActivityGrade, EstimateInput, Site } from '#lib/calc/input.ts';
import { activityGradeOptions } from '#lib/workbook/fields.ts';

const data = {
  cases: 'casesKnownBy',
  durations: 'durationsKnownBy',
  'bottles bought': 'bottlesKnownBy',
  'nitrous oxide bought': 'nitrousOxideKnownBy',
  electricity: 'electricityKnownBy'
} as const satisfies Readonly<Record<string, keyof Site>>;
type Data = keyof typeof data;

const gradeInWords = (grade: ActivityGrade | null): string =>
  (activityGradeOptions.find(({ id }) => id === grade)?.label ?? 'not given').toLowerCase();
const dataInWords = (site: Site, of: readonly Data[]): string =>
  of.map((each) => `${each} ${gradeInWords(site[data[each]])}`).join(', ');

export const baseYearInWords = ({ baseYear }: Pick<Site, 'baseYear'>): string =>
  baseYear === null
    ? 'Which year today stands for, the base year, is not given.'
    : `Today stands for the base year ${baseYear}.`;

export function activityInWords(site: Site): string {
  const all = Object.keys(data) as Data[];
  return all.every((each) => site[data[each]] === null)
    ? 'How the activity is known is not given.'
    : `How the activity is known: ${dataInWords(site, all)}.`;
}

const ofCases: readonly Data[] = ['cases', 'durations'];

/** What each line's activity is counted from; of machines that stand nothing needs to be known but their number. */
const dataOf: Readonly<Record<LedgerKind, readonly Data[]>> = {
  agents: ofCases,
  nitrousOxide: ofCases,
  nitrousOxideLost: [...ofCases, 'nitrous oxide bought'],
  gases: ofCases,
  absorbent: ofCases,
  electricity: ['durations', 'electricity'],
  intravenous: ofCases,
  regional: ['cases'],
  makingAgents: ofCases,
  makingMachines: [],
  makingConsumables: ['cases'],
  lostAtFilling: ofCases,
  electricityByContract: ['durations', 'electricity'],
  medicalAir: ofCases
};
const isOfAgent: readonly LedgerKind[] = ['agents', 'makingAgents', 'lostAtFilling'];

/** How a line's activity is known: of agents that are scaled to purchases by the bottles as well. */
export function lineKnownInWords(
  { site, agents }: Pick<EstimateInput, 'site' | 'agents'>,
  { kind, subject }: Pick<LedgerLine, 'kind' | 'subject'>
): string {
  const isScaled =
    isOfAgent.includes(kind) &&
    agents.some(({ agent, scaleToPurchases }) => agent === subject && scaleToPurchases);
  const of: readonly Data[] = isScaled ? [...dataOf[kind], 'bottles bought'] : dataOf[kind];
  if (of.length === 0) return 'machines as entered';
  return of.every((each) => site[data[each]] === null) ? 'not given' : dataInWords(site, of);
}
