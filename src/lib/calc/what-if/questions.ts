/** What would have to change for a scenario to have paid for itself by the limit: asked of one cell at a time. */
import type { CaseUse } from '../case/case-result.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { readCell } from '../cell-path.ts';
import { machineThatComes } from '../fleet/machine-that-comes.ts';
import { planUnder } from '../fleet/plan-followed.ts';
import type { EstimateInput, FlowPlan, Machine, Range, Scenario, TheatreGroup } from '../input.ts';
import { breakEven } from '../money/break-even.ts';
import type { BreakEven } from '../money/break-even.ts';
import type { CandidateInput, TurningInput } from '../money/turning-inputs.ts';
import { turningInputs } from '../money/turning-inputs.ts';
import type { ComparedWith } from './changed-cell.ts';
import { comparison, numberAt, reckonUse, standingFromLimit, withNumber } from './changed-cell.ts';
import { plain } from '../working/plain.ts';

export const questionSubjects = ['price', 'flow', 'adoption', 'cases', 'agent-price'] as const;
export type QuestionSubject = (typeof questionSubjects)[number];

/** Which value of `path` makes the payback of the scenario, or of the step from its twin, equal the limit? */
export interface Question {
  readonly subject: QuestionSubject;
  readonly scenarioId: string;
  readonly comparedWith: ComparedWith;
  /** The cell; `caseMix` where all case groups are scaled together and the value is the cases of a year in all. */
  readonly path: string;
  readonly now: number;
  readonly low: number;
  readonly high: number;
}

/** A question that does not arise in this scenario, and why. */
export interface Unasked {
  readonly subject: QuestionSubject;
  readonly sentence: string;
}

export type Answer =
  | {
      readonly kind: 'found';
      readonly question: Question;
      /** Rounded to the side on which it pays, so that it can be taken over as it is shown. */
      readonly value: number;
      readonly pays: 'above' | 'below';
      /** The payback at that value; off the limit where the answer turns by a jump, as when monitors become due. */
      readonly paybackYears: number | null;
    }
  | { readonly kind: 'always' | 'never' | 'nothing'; readonly question: Question }
  | { readonly kind: 'failed'; readonly question: Question; readonly sentence: string };

/** Decimals of an answer: an adoption of 81.37 %, a price to the cent, whole cases. */
const decimals: Readonly<Record<QuestionSubject, number>> = {
  price: 2,
  flow: 3,
  adoption: 2,
  cases: 0,
  'agent-price': 2
};

/** Prices have no highest value of their own: they are looked for up to this many times today's. */
const timesNow = 100;

const totalCases = (input: Pick<EstimateInput, 'caseMix'>): number =>
  input.caseMix.reduce((sum, row) => sum + row.casesPerYear, 0);

/**
 * The questions that can be put to a scenario, and those that cannot. Against the twin they are put to a scenario that
 * changes the machine alone; of any other, every one is unasked.
 * @param rangeOf the values that a cell may take by its field; null where the field sets no end.
 */
export function questionsOf(
  input: EstimateInput,
  {
    scenarioId,
    comparedWith = 'today',
    memo,
    rangeOf
  }: {
    scenarioId: string;
    comparedWith?: ComparedWith;
    memo: CaseMemo<CaseUse>;
    rangeOf: (path: string) => Range | null;
  }
): (Question | Unasked)[] {
  const scenario = input.scenarios.find(({ id }) => id === scenarioId) as Scenario;
  const today = input.scenarios.find(({ baseline }) => baseline) as Scenario;
  const coming = machineThatComes(input, scenario);
  const stays = coming === null;
  const [firstGroup] = input.theatreGroups;
  const place = { group: firstGroup as TheatreGroup, planOf: coming ?? (firstGroup as TheatreGroup).machine };
  const machine = input.machines.find(({ id }) => id === place.planOf) as Machine;
  const { plans } = scenario;
  const planId = planUnder({ plans, flowPlanByCase: {} }, '', {
    place,
    today: { plans: today.plans, flowPlanByCase: {} }
  });
  const plan = input.flowPlans.find(({ id }) => id === planId) as FlowPlan;
  if (comparedWith === 'twin' && stays)
    return questionSubjects.map((subject) => ({
      subject,
      sentence: 'This scenario stays on today’s machines: there is no step to another.'
    }));
  const ask = (subject: QuestionSubject, path: string, limits: Partial<Range> = {}): Question => {
    const now = numberAt(input, path) ?? 0;
    const { low, high } = rangeOf(path) ?? { low: 0, high: timesNow * now || 1e6 };
    return {
      subject,
      scenarioId,
      comparedWith,
      path,
      now,
      low: Math.max(low, limits.low ?? low),
      high: limits.high ?? high
    };
  };
  const open = plan.phases.findIndex(({ minutes }) => minutes === null);
  const most = Math.max(0, ...input.caseMix.map(({ casesPerYear }) => casesPerYear));
  const cases = totalCases(input);
  const mainAgent = mainAgentOf(input, memo);
  return [
    stays
      ? {
          subject: 'price',
          sentence: 'This scenario buys no machine, so no purchase price is asked for.'
        }
      : ask('price', `machines.${machine.id}.unitPrice`),
    Object.keys(scenario.flowPlanByCase).length >= input.caseMix.length && input.caseMix.length > 0
      ? { subject: 'flow', sentence: 'Every case group has a plan of its own, so no one flow is asked for.' }
      : plan.phases[open]?.flowAsNeeded === true && machine.canFlowAsNeeded
        ? {
            subject: 'flow',
            sentence: 'The machine lets the flow follow the need, so no one flow is asked for.'
          }
        : ask('flow', `flowPlans.${plan.id}.phases.${open}.flowLPerMin`, { low: machine.minimumFlowLPerMin }),
    ask('adoption', `scenarios.${scenario.id}.adoptionPercent`),
    cases === 0
      ? { subject: 'cases', sentence: 'There are no cases in the year yet: enter them on Case mix.' }
      : {
          subject: 'cases',
          scenarioId,
          comparedWith,
          path: 'caseMix',
          now: cases,
          low: 0,
          high: (cases * (rangeOf('caseMix.any.casesPerYear')?.high ?? timesNow * most)) / most
        },
    mainAgent === null
      ? { subject: 'agent-price', sentence: 'Today uses no agent, so no agent price is asked for.' }
      : ask('agent-price', `agents.${mainAgent}.bottlePrice`)
  ];
}

/** The agent on which today's practice spends most, or of which it uses most where all are free; null: none is used. */
function mainAgentOf(input: EstimateInput, memo: CaseMemo<CaseUse>): string | null {
  const reckoning = reckonUse(input, memo);
  const used = Object.entries(reckoning.year(reckoning.today).agents).map(([agent, of]) => ({
    agent,
    cost: plain.value(of.cost).toNumber(),
    liquidMl: plain.value(of.liquidMl)
  }));
  used.sort((a, b) => b.cost - a.cost || b.liquidMl - a.liquidMl);
  return used[0]?.agent ?? null;
}

/** Answers one question out of the estimate. */
export function answerTo(
  input: EstimateInput,
  question: Question,
  { discounted, memo }: { discounted: boolean; memo: CaseMemo<CaseUse> }
): Answer {
  const { paybackLimitYears } = input.accounting;
  const as = { scenario: freeId(input.scenarios), part: freeId([...input.machines, ...input.flowPlans]) };
  const figuresAt = (value: number) => {
    const changed = withAnswer(input, question, { value, as });
    const { comparedWith } = question;
    return comparison(changed.document, { scenarioId: changed.scenarioId, comparedWith }, memo);
  };
  const of = (value: number): number =>
    standingFromLimit(figuresAt(value), { paybackLimitYears, discounted });
  const { low, high } = question;
  let found: BreakEven;
  try {
    found = breakEven({ of, low, high });
  } catch (error) {
    return { kind: 'failed', question, sentence: error instanceof Error ? error.message : String(error) };
  }
  if (found.kind !== 'found') return { kind: found.kind, question };
  const { value, pays } = found;
  const unit = 10 ** -decimals[question.subject];
  const step = pays === 'above' ? unit : -unit;
  const within = (given: number) => Math.min(Math.max(given, low), high);
  const places = (given: number) => Number(given.toFixed(decimals[question.subject]));
  let rounded = within(places(value));
  const paybackAt = (given: number): number | null => {
    const figures = figuresAt(given);
    return plain.value(discounted ? figures.discountedPaybackYears : figures.simplePaybackYears);
  };
  let paybackYears = paybackAt(rounded);
  // To the side on which it pays, which the nearest may miss, and rows of the case mix that are rounded as well; and where
  // nothing is done at all, as with an adoption of 0 %, nothing is paid back.
  for (let tries = 0; tries < 3 && (of(rounded) < 0 || paybackYears === null); tries += 1) {
    rounded = within(places(rounded + step));
    paybackYears = paybackAt(rounded);
  }
  return { kind: 'found', question, value: rounded, pays, paybackYears };
}

const freeId = (entries: readonly { readonly id: string }[]): string => {
  let id = 'what-if';
  while (entries.some((entry) => entry.id === id)) id += '-x';
  return id;
};

/** The parts of an input, and of a workbook, that taking over an answer may change. */
export type Changeable = Pick<
  EstimateInput,
  'scenarios' | 'machines' | 'flowPlans' | 'caseMix' | 'agents' | 'ranges' | 'theatreGroups'
>;

/** Ids and, where they are shown, names for what is new. */
export interface NewEntries {
  readonly scenario: string;
  /** Of the copy of the machine or the plan, where the cell belongs to one. */
  readonly part: string;
  readonly scenarioName?: string;
  readonly partName?: string;
}

/** Whether the cell belongs to the scenario alone, so that the answer becomes a scenario of its own. */
export const isOwnCell = ({ subject }: Question): boolean => subject !== 'cases' && subject !== 'agent-price';

/**
 * The document with a value in place of what a question asks for.
 *
 * A price, a flow or an adoption is put into a copy of the scenario, with a copy of the machine or plan that it belongs
 * to, so that today and every other scenario stay what they were. Cases and agent prices are shared by all scenarios and
 * change in place. Ranges go with what they belong to: copied with a copy, scaled with the cases; the range of the changed
 * cell itself is widened where it would no longer hold it.
 * @returns the document, and the id of the scenario that now answers.
 */
export function withAnswer<T extends Changeable>(
  document: T,
  question: Question,
  { value, as }: { value: number; as: NewEntries }
): { document: T; scenarioId: string } {
  const { subject, scenarioId, path } = question;
  if (subject === 'cases') return { document: withCases(document, value), scenarioId };
  if (subject === 'agent-price')
    return { document: holding(withNumber(document, path, value), path), scenarioId };
  const original = document.scenarios.find(({ id }) => id === scenarioId) as Scenario;
  const [list, part, ...cell] = path.split('.') as [
    'scenarios' | 'machines' | 'flowPlans',
    string,
    ...string[]
  ];
  const copy: Scenario = {
    ...original,
    id: as.scenario,
    name: as.scenarioName ?? original.name,
    baseline: false,
    ...(list === 'machines' ? withMachine(original, part, as.part) : {}),
    ...(list === 'flowPlans' ? withPlan(document, original, { from: part, to: as.part }) : {})
  };
  const at = document.scenarios.indexOf(original) + 1;
  let copied: T = {
    ...document,
    scenarios: [...document.scenarios.slice(0, at), copy, ...document.scenarios.slice(at)],
    ranges: withCopies(document.ranges, `scenarios.${scenarioId}.`, `scenarios.${as.scenario}.`)
  };
  if (list !== 'scenarios') {
    const entry = readCell(document, `${list}.${part}`) as Machine | FlowPlan;
    copied = {
      ...copied,
      [list]: [...document[list], { ...entry, id: as.part, name: as.partName ?? entry.name }],
      ranges: withCopies(copied.ranges, `${list}.${part}.`, `${list}.${as.part}.`)
    };
  }
  const ownPath = [list, list === 'scenarios' ? as.scenario : as.part, ...cell].join('.');
  return { document: holding(withNumber(copied, ownPath, value), ownPath), scenarioId: as.scenario };
}

const renamed = (
  record: Readonly<Record<string, string>>,
  from: string,
  to: string
): Record<string, string> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, value === from ? to : value]));

/** The copy comes where the machine would have, and the plan on it is the same. */
const withMachine = ({ moves, plans }: Scenario, from: string, to: string): Partial<Scenario> => ({
  moves: moves.map((move) => (move.machine === from ? { ...move, machine: to } : move)),
  plans: plans[from] === undefined ? plans : { ...plans, [to]: plans[from] }
});

/** Machines and rows that name the copied plan follow the copy; where none does, every machine without a plan of its own. */
function withPlan(
  { theatreGroups }: Pick<EstimateInput, 'theatreGroups'>,
  { moves, plans, flowPlanByCase }: Scenario,
  { from, to }: { from: string; to: string }
): Partial<Scenario> {
  const named = Object.values(plans).includes(from);
  const machines = [...moves, ...theatreGroups].map(({ machine }) => machine);
  return {
    plans: named
      ? renamed(plans, from, to)
      : { ...Object.fromEntries(machines.map((machine) => [machine, to])), ...plans },
    flowPlanByCase: renamed(flowPlanByCase, from, to)
  };
}

function withCopies(ranges: Changeable['ranges'], from: string, to: string): Record<string, Range> {
  const copies = Object.entries(ranges).filter(([path]) => path.startsWith(from));
  return {
    ...ranges,
    ...Object.fromEntries(copies.map(([path, range]) => [to + path.slice(from.length), range]))
  };
}

/** All case groups more or fewer together; rows are kept to a hundredth of a case. */
function withCases<T extends Changeable>(document: T, cases: number): T {
  const factor = cases / totalCases(document);
  const scaled = (number: number) => Math.round(number * factor * 100) / 100;
  let changed: T = {
    ...document,
    caseMix: document.caseMix.map((row) => ({ ...row, casesPerYear: scaled(row.casesPerYear) }))
  };
  for (const { id } of document.caseMix) {
    const path = `caseMix.${id}.casesPerYear`;
    const range = document.ranges[path];
    if (range === undefined) continue;
    const ranges = { ...changed.ranges, [path]: { low: scaled(range.low), high: scaled(range.high) } };
    changed = holding({ ...changed, ranges }, path);
  }
  return changed;
}

/** The document with the range of a cell, if it has one, wide enough for the cell's value. */
function holding<T extends Changeable>(document: T, path: string): T {
  const range = document.ranges[path];
  const value = numberAt(document, path);
  if (range === undefined || value === null || (range.low <= value && value <= range.high)) return document;
  const wide = { low: Math.min(range.low, value), high: Math.max(range.high, value) };
  return { ...document, ranges: { ...document.ranges, [path]: wide } };
}

/**
 * The cells that turn the answer on their own, changed within their ranges, the nearest turn first.
 *
 * A cell is looked at where its low or its high gives another answer than today's value; a cell whose answer turns and
 * turns back between the two is not seen. A cell is changed where it stands: one that several scenarios share, or today,
 * changes for all of them.
 * @param onProgress told after each cell, how many of all are done.
 */
export function cellsThatTurn(
  input: EstimateInput,
  cells: readonly CandidateInput[],
  {
    scenarioId,
    comparedWith = 'today',
    discounted,
    memo,
    onProgress
  }: {
    scenarioId: string;
    comparedWith?: ComparedWith;
    discounted: boolean;
    memo: CaseMemo<CaseUse>;
    onProgress?: (done: number, of: number) => void;
  }
): TurningInput[] {
  const { paybackLimitYears } = input.accounting;
  const of = (path: string, value: number): number =>
    standingFromLimit(comparison(withNumber(input, path, value), { scenarioId, comparedWith }, memo), {
      paybackLimitYears,
      discounted
    });
  const paysAt = (path: string, value: number): boolean | null => {
    try {
      return of(path, value) >= 0;
    } catch {
      // The cell cannot take this value beside the others (oxygen with nitrous oxide above 100 %): no answer there.
      return null;
    }
  };
  const used = cells.filter(({ path }) => concerns(input, scenarioId, path));
  return used
    .flatMap((cell, index) => {
      const pays = paysAt(cell.path, cell.now);
      const turns = (end: number) => pays !== null && (paysAt(cell.path, end) ?? pays) !== pays;
      const low = turns(cell.low) ? cell.low : cell.now;
      const high = turns(cell.high) ? cell.high : cell.now;
      const found = turningInputs([{ ...cell, low, high }], of);
      onProgress?.(index + 1, used.length);
      return found.map((turning) => ({ ...turning, low: cell.low, high: cell.high }));
    })
    .sort((a, b) => a.shareOfWay - b.shareOfWay);
}

/** Whether a cell can act on the scenario or on today: cells of other machines, plans and scenarios cannot. */
function concerns(input: EstimateInput, scenarioId: string, path: string): boolean {
  const [list = '', id = ''] = path.split('.');
  const compared = input.scenarios.filter((scenario) => scenario.baseline || scenario.id === scenarioId);
  if (list === 'scenarios') return compared.some((scenario) => scenario.id === id);
  if (list === 'machines')
    return compared.some(
      ({ moves }) =>
        moves.some(({ machine }) => machine === id) ||
        input.theatreGroups.some(({ machine }) => machine === id)
    );
  if (list === 'flowPlans')
    return compared.some(({ plans, flowPlanByCase }) =>
      [...Object.values(plans), ...Object.values(flowPlanByCase)].includes(id)
    );
  return true;
}
