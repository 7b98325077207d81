/**
 * What one case is computed from. A case is given its conditions and nothing else, and the lists below say what of an
 * input they are made of: types, the text by which cases are told apart, and what crosses to a worker all follow from
 * the lists. So whatever a case reads is part of what tells it from another.
 */
import type { Absorbent, Accounting, Agent, CaseRow, FlowPlan, Machine, Phase, Site } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';

const ofRow = [
  'minutes',
  'ageYears',
  'weightKg',
  'technique',
  'targetMac',
  'nitrousOxidePercent',
  'inspiredOxygenPercent',
  'pneumoperitoneum'
] as const satisfies readonly (keyof CaseRow)[];

const ofMachine = [
  'circuitVolumeL',
  'leakMlPerMin',
  'sampleMlPerMin',
  'sampleReturned',
  'minimumFlowLPerMin',
  'canFlowAsNeeded',
  'spillShareInspiredFraction'
] as const satisfies readonly (keyof Machine)[];

const ofAbsorbent = ['capacityLPerKg'] as const satisfies readonly (keyof Absorbent)[];

const ofSite = ['theatreTemperatureC', 'ambientPressureKPa'] as const satisfies readonly (keyof Site)[];

/** Which of several published models and groups of constants are taken. */
const chosen = ['bodyModel', 'macSet', 'solubilityGroup'] as const satisfies readonly (keyof Accounting)[];
export type ChosenModels = Pick<Accounting, (typeof chosen)[number]>;

const ofPlan = ['phases'] as const satisfies readonly (keyof FlowPlan)[];

/** Figures and words, flat, that cross to a worker as they are. */
export type CaseConditions = Pick<CaseRow, (typeof ofRow)[number]> &
  Pick<Machine, (typeof ofMachine)[number]> &
  Pick<Absorbent, (typeof ofAbsorbent)[number]> &
  Pick<Site, (typeof ofSite)[number]> &
  ChosenModels & {
    readonly phases: readonly Phase[];
    /** The agent given, a scenario's switch applied; null where the technique is not volatile. */
    readonly agent: Agent | null;
  };

/** Ids of the entries in whose cells the conditions stand: for workings and sentences, never for a figure. */
export interface CaseCells {
  readonly row: string;
  readonly plan: string;
  readonly machine: string;
  readonly absorbent: string;
}

/** One case to be computed. */
export interface CaseGiven {
  readonly conditions: CaseConditions;
  readonly cells: CaseCells;
  readonly reference: ReferenceSet;
}

/** The entries of an input that a case is made of. */
export interface CaseSources {
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  readonly absorbent: Absorbent;
  readonly site: Site;
  readonly agent: Agent | null;
  readonly accounting: ChosenModels;
  readonly reference: ReferenceSet;
}

/** The case that is made of some entries: of each, what the lists name. */
export function givenOf(sources: CaseSources): CaseGiven {
  const { row, plan, machine, absorbent, site, agent, accounting, reference } = sources;
  const conditions: Record<string, unknown> = {};
  for (const name of ofRow) conditions[name] = row[name];
  for (const name of ofMachine) conditions[name] = machine[name];
  for (const name of ofAbsorbent) conditions[name] = absorbent[name];
  for (const name of ofSite) conditions[name] = site[name];
  for (const name of ofPlan) conditions[name] = plan[name];
  conditions['agent'] = agent;
  for (const name of chosen) conditions[name] = accounting[name];
  return {
    conditions: conditions as unknown as CaseConditions,
    cells: { row: row.id, plan: plan.id, machine: machine.id, absorbent: absorbent.id },
    reference
  };
}

/** A text of what the list names of an entry, made once for each: unchanged entries keep their identity over edits. */
function textBy<T extends object>(names: readonly (keyof T)[]): (of: T) => string {
  const known = new WeakMap<T, string>();
  return (of) => {
    let text = known.get(of);
    if (text === undefined) known.set(of, (text = JSON.stringify(names.map((name) => of[name]))));
    return text;
  };
}

/** What the row says of a case, as text. */
export const rowText = textBy<CaseRow>(ofRow);
const machineText = textBy<Machine>(ofMachine);
const absorbentText = textBy<Absorbent>(ofAbsorbent);
const siteText = textBy<Site>(ofSite);
const planText = textBy<FlowPlan>(ofPlan);
const chosenText = textBy<ChosenModels>(chosen);

/** A set has no text that would tell it from another, so sets are numbered as they come. */
const referenceNumbers = new WeakMap<ReferenceSet, number>();
let referenceCount = 0;
function referenceNumber(given: ReferenceSet): number {
  const set = given.casesAs ?? given;
  let number = referenceNumbers.get(set);
  if (number === undefined) referenceNumbers.set(set, (number = ++referenceCount));
  return number;
}

/** All that tells a case from another but its row, as text: cases with this and `rowText` alike have the same result. */
export const circumstancesText = ({
  plan,
  machine,
  absorbent,
  site,
  agent,
  accounting,
  reference
}: CaseSources): string =>
  `${referenceNumber(reference)}|${planText(plan)}|${machineText(machine)}|${absorbentText(absorbent)}|${siteText(site)}|${agent}|${chosenText(accounting)}`;
