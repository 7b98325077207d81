/** The uncertainty run over the real estimate: which cells vary, what one draw yields, and what a run says. */
import type { Against } from '../reckoning/against.ts';
import { askedScenarios } from '../reckoning/asked-scenarios.ts';
import { baselineOf } from '../baseline-of.ts';
import { bringsMachines, twinIdOf, twinOf } from '../attribution/levers.ts';
import { Step } from '../attribution/step.ts';
import type { CaseUse } from '../case/case-result.ts';
import { CaseMemo } from '../known-cases/case-memo.ts';
import { writeCell } from '../cell-path.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import { bodyModels } from '../input.ts';
import { timeFactors } from '../money/time-factors.ts';
import type { AheadForATime } from '../estimate-types.ts';
import { text } from '../money/decimal.ts';
import type { Decimal } from '../money/decimal.ts';
import { acceptability, likelihoodAbove, likelihoodWithin } from '../uncertainty/acceptability.ts';
import type { Likelihood } from '../uncertainty/acceptability.ts';
import { bandOf } from '../uncertainty/bands.ts';
import type { Band } from '../uncertainty/bands.ts';
import { UncertainInputError, layOutDraws } from '../uncertainty/draws.ts';
import type { Draws, UncertainInput } from '../uncertainty/draws.ts';
import { percentile, sortedFigures } from '../uncertainty/percentiles.ts';
import type { Model } from '../uncertainty/run.ts';
import type { SpreadPart } from '../uncertainty/spread-parts.ts';
import { plainFigures, swings, widthsTogether } from '../uncertainty/swings.ts';
import type { Swing } from '../uncertainty/swings.ts';
import type { InputWorth } from '../uncertainty/value-of-information.ts';
import { valueOfInformation } from '../uncertainty/value-of-information.ts';
import { drawsInOrder, varianceShare } from '../uncertainty/variance-share.ts';
import { numberAt, numberWriter, reckonUse } from './changed-cell.ts';
import { constantValueAt, constantWriter } from './drawn-constant.ts';
import { isModelError, modelErrorInputs, modelErrorWriter } from './model-spread.ts';
import { drawnSpillShares, spillShareInputs, spillSharePath, spillShareWriter } from './spill-spread.ts';
import { once } from '../working/kept.ts';
import { plain } from '../working/plain.ts';
import type { Quantity } from '../working/reckoner.ts';

export const bodyModelPath = 'accounting.bodyModel';

/** The figures of one scenario in a draw, in this order; the cumulative cash flow follows, year 0 first. */
export const drawnFigures = ['yearlySaving', 'co2eAvoidedKg', 'npv', 'paybackYears'] as const;
export type DrawnFigure = (typeof drawnFigures)[number];

/** The figures of one scenario's twin in a draw; they follow those of all scenarios. */
const twinFigures = ['npv', 'paybackYears', 'stepPaybackYears'] as const;

/**
 * What varies: cells and published figures by path, so that the order in which ranges were given changes nothing; the
 * body model before them, the model's own error and where gas is spilled after them.
 */
export function uncertainInputs(input: EstimateInput): UncertainInput[] {
  const { overBodyModels, overModelError, overSpillShare, minutesTogether } = input.sampling;
  const ranged = Object.entries(input.ranges)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([path, { low, high }]): UncertainInput => {
      const mode = constantValueAt(input, path) ?? numberAt(input, path);
      if (mode === null)
        throw new UncertainInputError(path, `“${path}” has a range but holds no number: delete the range.`);
      const isCaseMinutes = path.startsWith('caseMix.') && path.endsWith('.minutes');
      return { path, low, mode, high, ...(minutesTogether && isCaseMinutes ? { together: 'minutes' } : {}) };
    });
  const mode = bodyModels.indexOf(input.accounting.bodyModel);
  return [
    ...(overBodyModels ? [{ path: bodyModelPath, choices: bodyModels.length, mode }] : []),
    ...ranged,
    ...(overModelError ? modelErrorInputs(input) : []),
    ...(overSpillShare ? spillShareInputs(input) : [])
  ];
}

/**
 * Puts drawn values into a cell: the body model by its place in the list, and a whole number where the cell holds one.
 * @param wholeCells paths of cells that hold whole numbers
 */
export function drawnWriter(
  input: EstimateInput,
  path: string,
  wholeCells: ReadonlySet<string>
): (input: EstimateInput, value: number) => EstimateInput {
  if (path === bodyModelPath) return (to, value) => writeCell(to, path, bodyModels[value]);
  const ofConstant = constantWriter(input, path);
  if (ofConstant !== null) return ofConstant;
  const ofModel = modelErrorWriter(path) ?? spillShareWriter(path);
  if (ofModel !== null) return ofModel;
  const write = numberWriter(input, path);
  return wholeCells.has(path) ? (to, value) => write(to, Math.round(value)) : write;
}

/** A run that is set up: from the input alone, so that any worker sets up the same. */
export interface DrawRun {
  readonly inputs: readonly UncertainInput[];
  readonly draws: Draws;
  /** Ids of the scenarios in the figures; the baseline is not among them. */
  readonly scenarioIds: readonly string[];
  readonly figuresPerScenario: number;
  /** Ids of the scenarios that have a twin on today's machines, in the order of the twins' figures. */
  readonly twinsOf: readonly string[];
  readonly figureCount: number;
  readonly model: Model;
}

/**
 * @param wholeCells paths of cells that hold whole numbers: a drawn value is rounded to one.
 * @throws UncertainInputError, RangeError as `layOutDraws`.
 */
export function setUpRun(input: EstimateInput, wholeCells: ReadonlySet<string>): DrawRun {
  const inputs = uncertainInputs(input);
  const scenarioIds = input.scenarios.filter(({ baseline }) => !baseline).map(({ id }) => id);
  const twinsOf = input.scenarios.filter((scenario) => bringsMachines(scenario)).map(({ id }) => id);
  const years = input.accounting.appraisalYears + 1;
  const figuresPerScenario = drawnFigures.length + years;
  const writers = inputs.map(({ path }) => drawnWriter(input, path, wholeCells));
  // Cases that no range touches come again in each draw, and so stay; drawn ones never do, and give way to the next ones.
  const times = inputs.some(({ path }) => path === spillSharePath) ? drawnSpillShares.length : 1;
  const memo = new CaseMemo<CaseUse>(2 * times * input.scenarios.length * input.caseMix.length);

  const model: Model = (values) => {
    const drawn = writers.reduce((to, write, index) => write(to, values[index] as number), input);
    const { against: againstToday, failed } = askedScenarios(reckonUse(drawn, memo));
    const figures: number[] = [];
    for (const scenario of drawn.scenarios) {
      if (scenario.baseline) continue;
      const against = againstToday(scenario);
      figures.push(
        plain.value(against.yearlySaving).toNumber(),
        plain.value(against.co2eAvoidedKg),
        plain.value(against.npv).toNumber(),
        plain.value(against.simplePaybackYears) ?? Infinity
      );
      // A drawn appraisal may be shorter than the entered one: its later years then have no figure.
      for (let year = 0; year < years; year += 1) {
        const row = against.years[year];
        figures.push(row === undefined ? NaN : plain.value(row.cumulative).toNumber());
      }
    }
    for (const id of twinsOf) figures.push(...figuresOfTwin(drawn, id, againstToday));
    // A case that could not be computed is missing from every total.
    return failed().length > 0 ? null : figures;
  };

  return {
    inputs,
    draws: layOutDraws(inputs, input.sampling),
    scenarioIds,
    figuresPerScenario,
    twinsOf,
    figureCount: scenarioIds.length * figuresPerScenario + twinsOf.length * twinFigures.length,
    model
  };
}

/** Both sides of the step from the twin to the scenario, out of the same draw. */
function figuresOfTwin(
  drawn: EstimateInput,
  id: string,
  against: (scenario: Scenario) => Against
): [npv: number, paybackYears: number, stepPaybackYears: number] {
  const scenario = drawn.scenarios.find((each) => each.id === id) as Scenario;
  const twin = twinOf(drawn, scenario)?.scenario;
  if (twin === undefined) throw new Error(`The scenario “${id}” changes no machine in this draw.`);
  const from = against(twin);
  const factors = timeFactors(plain, drawn.accounting);
  const step = new Step(plain, { from, to: against(scenario), factors });
  return [
    plain.value(from.npv).toNumber(),
    plain.value(from.simplePaybackYears) ?? Infinity,
    plain.value(step.simplePaybackYears) ?? Infinity
  ];
}

/** A cash flow against today, as charts take it: decimal texts, year 0 first. */
export interface EnteredFlow {
  readonly net: readonly string[];
  readonly savings: readonly string[];
  readonly aheadForATime: readonly AheadForATime[];
  readonly worthAtEnd: string;
}

export interface ScenarioSpread {
  readonly id: string;
  readonly bands: Readonly<Record<DrawnFigure, Band>>;
  /** The figures with every cell as entered; payback Infinity where there is none. */
  readonly entered: Readonly<Record<DrawnFigure, number>>;
  /** The cash flow as entered; no years where it could not be computed. */
  readonly enteredFlow: EnteredFlow;
  /** 5th, 50th and 95th percentile of the cumulative cash flow at each year end, year 0 first. */
  readonly cumulative: { readonly low: number[]; readonly middle: number[]; readonly high: number[] };
  /** Share of the draws with payback within the user's limit. */
  readonly withinLimit: Likelihood;
  /** Share of the draws with a net present value above 0. */
  readonly npvAboveZero: Likelihood;
  /** Of payback, the same over a range of limits, the user's own among them, rising. */
  readonly acceptability: readonly Likelihood[];
  /** Its twin on today's machines, and the step from there to the scenario; null where it changes no machine. */
  readonly withoutMachine: SpreadOfOption | null;
  readonly machineAdds: SpreadOfOption | null;
  /** How much of the spread of each figure is the model's, and how much the cells' with ranges, each part by itself, 0 to 1. */
  readonly spreadOf: Readonly<Record<SpreadPart, Readonly<Record<DrawnFigure, number>>>>;
  /** What each uncertain input does to each figure by itself: at its low and high, or at each possibility. */
  readonly swings: readonly ScenarioSwing[];
}

export interface ScenarioSwing {
  readonly paths: readonly string[];
  /** The values set (one for each path), and the figures there; null where they make no sense together. */
  readonly outcomes: readonly {
    readonly values: readonly number[];
    readonly figures: Readonly<Record<DrawnFigure, number>> | null;
  }[];
}

export interface SpreadOfOption {
  readonly npv: Band;
  /** Share of the draws with payback within the user's limit. */
  readonly withinLimit: Likelihood;
  /** Share of the draws with a net present value above 0. */
  readonly npvAboveZero: Likelihood;
}

/** What it would be worth to know more before choosing among today, the scenarios and their twins, in money. */
export interface WorthOfKnowing {
  /** Ids of the options; of those that are the same in every draw, the first. */
  readonly options: readonly string[];
  /** The option with the highest mean net present value. */
  readonly best: string;
  /** Expected gain of choosing with everything known. */
  readonly worthOfAll: number;
  /** The same with one input known by itself, in the order of the inputs. */
  readonly inputs: readonly InputWorth[];
}

/** What a run says. Plain data, to cross from a worker. */
export interface RunSummary {
  readonly draws: number;
  /** Draws whose values together make no sense: left out of every band. */
  readonly failed: number;
  readonly scenarios: readonly ScenarioSpread[];
  readonly worthOfKnowing: WorthOfKnowing;
}

/**
 * Sums up a run.
 * @param figures one list for each figure, as `joinSlices` gives them.
 */
export function summaryOf(input: EstimateInput, run: DrawRun, figures: readonly Float64Array[]): RunSummary {
  const { appraisalYears, paybackLimitYears } = input.accounting;
  const entered = plainFigures(run.model, run.inputs);
  const ofInputs = swings(run.model, run.inputs);
  const limits = limitsUpTo(appraisalYears, paybackLimitYears);
  const partsOf = spreadByPart(run);
  const reckoning = once(() => reckonUse(input, new CaseMemo<CaseUse>()));
  const scenarios = run.scenarioIds.map((id, index): ScenarioSpread => {
    const at = index * run.figuresPerScenario;
    const listOf = (figure: number) => figures[at + figure] as Float64Array;
    const named = <T>(of: (figure: number) => T): Record<DrawnFigure, T> => ({
      yearlySaving: of(0),
      co2eAvoidedKg: of(1),
      npv: of(2),
      paybackYears: of(3)
    });
    const paybacks = listOf(drawnFigures.indexOf('paybackYears'));
    const yearEnds = Array.from({ length: appraisalYears + 1 }, (_, year) =>
      sortedFigures(listOf(drawnFigures.length + year))
    );
    return {
      id,
      bands: named((figure) => bandOf(listOf(figure))),
      entered: named((figure) => entered?.[at + figure] ?? NaN),
      enteredFlow: entered === null ? noFlow : enteredFlow(input, reckoning(), id),
      cumulative: {
        low: yearEnds.map((sorted) => percentile(sorted, 0.05)),
        middle: yearEnds.map((sorted) => percentile(sorted, 0.5)),
        high: yearEnds.map((sorted) => percentile(sorted, 0.95))
      },
      withinLimit: likelihoodWithin(paybacks, paybackLimitYears),
      npvAboveZero: likelihoodAbove(listOf(drawnFigures.indexOf('npv')), 0),
      acceptability: acceptability(paybacks, limits),
      ...spreadOfTwin(twinLists(run, figures, id), {
        npv: listOf(drawnFigures.indexOf('npv')),
        limit: paybackLimitYears
      }),
      spreadOf: partsOf(named, listOf),
      swings: ofInputs.map((swing) => swingOf(swing, (all) => named((figure) => all[at + figure] ?? NaN)))
    };
  });
  const first = scenarios[0]?.bands.yearlySaving;
  return {
    draws: run.draws.count,
    failed: first?.failed ?? 0,
    scenarios,
    worthOfKnowing: worthOfKnowing(input, run, figures)
  };
}

/** The first-order shares of variance of what belongs to each part, added up: no more than the whole. */
function spreadByPart(run: DrawRun) {
  const inputs = widthsTogether(run.inputs).map((places) => {
    const { path } = run.inputs[places[0] as number] as UncertainInput;
    const part: SpreadPart =
      path === bodyModelPath || path === spillSharePath || isModelError(path) ? 'model' : 'cells';
    return { part, inOrder: drawsInOrder(run.draws.orderBy(places[0] as number)) };
  });
  return (
    named: <T>(of: (figure: number) => T) => Record<DrawnFigure, T>,
    listOf: (figure: number) => Float64Array
  ): ScenarioSpread['spreadOf'] => {
    const shareOf = (part: SpreadPart) =>
      named((figure) =>
        Math.min(
          1,
          inputs
            .filter((input) => input.part === part)
            .reduce((sum, { inOrder }) => sum + varianceShare(listOf(figure), inOrder), 0)
        )
      );
    return { model: shareOf('model'), cells: shareOf('cells') };
  };
}

type TwinLists = Readonly<Record<(typeof twinFigures)[number], Float64Array>>;

/** The figures of a scenario's twin over all draws; null where it has none. */
function twinLists(run: DrawRun, figures: readonly Float64Array[], id: string): TwinLists | null {
  const place = run.twinsOf.indexOf(id);
  if (place < 0) return null;
  const at = run.scenarioIds.length * run.figuresPerScenario + place * twinFigures.length;
  const listOf = (figure: (typeof twinFigures)[number]) =>
    figures[at + twinFigures.indexOf(figure)] as Float64Array;
  return {
    npv: listOf('npv'),
    paybackYears: listOf('paybackYears'),
    stepPaybackYears: listOf('stepPaybackYears')
  };
}

function spreadOfTwin(
  twin: TwinLists | null,
  { npv, limit }: { npv: Float64Array; limit: number }
): Pick<ScenarioSpread, 'withoutMachine' | 'machineAdds'> {
  if (twin === null) return { withoutMachine: null, machineAdds: null };
  const npvOfStep = npv.map((value, draw) => value - (twin.npv[draw] as number));
  const spread = (worth: Float64Array, paybackYears: Float64Array): SpreadOfOption => ({
    npv: bandOf(worth),
    withinLimit: likelihoodWithin(paybackYears, limit),
    npvAboveZero: likelihoodAbove(worth, 0)
  });
  return {
    withoutMachine: spread(twin.npv, twin.paybackYears),
    machineAdds: spread(npvOfStep, twin.stepPaybackYears)
  };
}

function worthOfKnowing(
  input: EstimateInput,
  run: DrawRun,
  figures: readonly Float64Array[]
): WorthOfKnowing {
  const npvOf = (place: number) =>
    figures[place * run.figuresPerScenario + drawnFigures.indexOf('npv')] as Float64Array;
  const all = [
    { id: baselineOf(input).id, values: new Float64Array(run.draws.count) },
    ...run.scenarioIds.map((id, place) => ({ id, values: npvOf(place) })),
    ...run.twinsOf.map((id) => ({ id: twinIdOf(id), values: (twinLists(run, figures, id) as TwinLists).npv }))
  ];
  // A draw that failed has no figure of any scenario, and tells nothing apart.
  const isSame = (a: Float64Array, b: Float64Array): boolean =>
    a.every((value, draw) => value === b[draw] || Number.isNaN(value) || Number.isNaN(b[draw]));
  const options = all.filter(
    ({ values }, place) => !all.slice(0, place).some((other) => isSame(values, other.values))
  );
  const { best, worthOfAll, inputs } = valueOfInformation({
    options: options.map(({ values }) => values),
    // Inputs that vary together have one order.
    inputs: widthsTogether(run.inputs).map((places) => ({
      paths: places.map((place) => (run.inputs[place] as UncertainInput).path),
      values: run.draws.orderBy(places[0] as number)
    })),
    seed: input.sampling.seed
  });
  return {
    options: options.map(({ id }) => id),
    best: (options[best] as (typeof options)[number]).id,
    worthOfAll,
    inputs
  };
}

const noFlow: EnteredFlow = { net: [], savings: [], aheadForATime: [], worthAtEnd: '0' };

function enteredFlow(input: EstimateInput, reckoning: ReturnType<typeof reckonUse>, id: string): EnteredFlow {
  const scenario = input.scenarios.find((each) => each.id === id);
  if (scenario === undefined) return noFlow;
  const { years, aheadForATime, worthAtEnd } = reckoning.against(scenario);
  const money = (quantity: Quantity<Decimal>): string => text(plain.value(quantity));
  return {
    net: years.map(({ net }) => money(net)),
    savings: years.map(({ saving }) => money(saving)),
    aheadForATime: aheadForATime.map(({ fromYears, untilYears, cause }) => ({
      fromYears: plain.value(fromYears),
      untilYears: plain.value(untilYears),
      cause
    })),
    worthAtEnd: money(worthAtEnd)
  };
}

function swingOf(
  { paths, outcomes }: Swing,
  named: (figures: readonly number[]) => Record<DrawnFigure, number>
): ScenarioSwing {
  return {
    paths,
    outcomes: outcomes.map(({ values, figures }) => ({
      values,
      figures: figures === null ? null : named(figures)
    }))
  };
}

/** About forty limits from 0 to the end of the appraisal, with the user's own. */
function limitsUpTo(appraisalYears: number, own: number): number[] {
  const step = appraisalYears <= 10 ? 0.25 : appraisalYears <= 20 ? 0.5 : 1;
  const even = Array.from({ length: Math.floor(appraisalYears / step) + 1 }, (_, k) => k * step);
  return [...new Set([...even, own])].sort((a, b) => a - b);
}
