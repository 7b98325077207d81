/**
 * The same year under every set of warming potentials and horizon on record, and under metrics of temperature as a
 * sensitivity. Cases, litres and cash are those of the estimate: only what a kilogram counts for differs.
 */
import { warmingPotential } from '../emissions/co2e-lines.ts';
import { cutAsOnePulse, cutAsPulses, cutPerYear } from '../emissions/lasting-cut.ts';
import type { Accounting, Agent, EstimateInput, Potentials, WarmingSet } from '../input.ts';
import { agents, warmingSets } from '../input.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { reckon } from '../reckoning/reckoning.ts';
import type { MetricHorizon } from '../reference/temperature-metrics.ts';
import { temperatureMetric } from '../reference/temperature-metrics.ts';
import { plain } from '../working/plain.ts';
import { recorder, workingOf } from '../working/recorder.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Working } from '../working/working.ts';

/** A way to count warming. */
export interface WarmingChoice {
  /** e.g. `AR6.100`, `GTP.50`. */
  readonly key: string;
  /** A set of potentials, or the metric of temperature. */
  readonly set: WarmingSet | 'GTP';
  readonly years: number;
  readonly isInForce: boolean;
  /** Agents of this workbook for which it has no figure: nothing is told then. */
  readonly lacks: readonly string[];
}

export interface YearUnderChoice extends WarmingChoice {
  /** Emissions of a year by scenario, kg CO2e; null where the choice lacks a figure. */
  readonly scenarios: readonly { readonly id: string; readonly co2eKg: number | null }[];
}

const horizons: readonly Accounting['warmingHorizonYears'][] = [20, 100, 500];
const metricHorizons: readonly MetricHorizon[] = [50, 100];
const subjectsOf = (input: EstimateInput): readonly (Agent | 'nitrous-oxide')[] => [
  ...input.agents.map(({ agent }) => agent),
  'nitrous-oxide'
];

/** Every set and horizon on record, the user's own where it is in force, then temperature after 50 and 100 years. */
export function warmingChoices(input: EstimateInput): readonly WarmingChoice[] {
  const { accounting, reference } = input;
  const subjects = subjectsOf(input);
  const isInForce = (set: WarmingSet, years: number): boolean =>
    accounting.warmingSet === set && accounting.warmingHorizonYears === years;
  const published = warmingSets.flatMap((set) =>
    horizons
      .filter((years) => reference.constants.has(`warming.${set}.${years}.sevoflurane`))
      .map((years): WarmingChoice => ({
        key: `${set}.${years}`,
        set,
        years,
        isInForce: isInForce(set, years),
        lacks: subjects.filter((subject) => !reference.constants.has(`warming.${set}.${years}.${subject}`))
      }))
  );
  const own: readonly WarmingChoice[] =
    accounting.warmingSet === 'custom'
      ? [
          {
            key: `custom.${accounting.warmingHorizonYears}`,
            set: 'custom',
            years: accounting.warmingHorizonYears,
            isInForce: true,
            lacks: []
          }
        ]
      : [];
  return [
    ...published,
    ...own,
    ...metricHorizons.map((years): WarmingChoice => ({
      key: `GTP.${years}`,
      set: 'GTP',
      years,
      isInForce: false,
      lacks: []
    }))
  ];
}

/** The input with warming counted by a choice. */
function under(input: EstimateInput, { set, years }: WarmingChoice): EstimateInput {
  if (set !== 'GTP')
    return {
      ...input,
      accounting: {
        ...input.accounting,
        warmingSet: set,
        warmingHorizonYears: years as Accounting['warmingHorizonYears']
      }
    };
  const potentials = Object.fromEntries(
    [...agents, 'nitrous-oxide'].flatMap((subject) => {
      const record = temperatureMetric('GTP', years as MetricHorizon, subject);
      return record === null ? [] : [[subject, record]];
    })
  ) as Potentials;
  return { ...input, potentials };
}

/** @param memo results of cases that are known; no choice changes one. */
export function underEverySet(input: EstimateInput, memo: CaseMemo): readonly YearUnderChoice[] {
  return warmingChoices(input).map((choice) => {
    const reckoning = choice.lacks.length > 0 ? null : reckon(plain, under(input, choice), memo);
    return {
      ...choice,
      scenarios: input.scenarios.map((scenario) => ({
        id: scenario.id,
        co2eKg: reckoning === null ? null : plain.value(reckoning.year(scenario).co2eKg.total)
      }))
    };
  });
}

/** How a year's emissions under a choice came about. */
export function explainUnder(
  input: EstimateInput,
  { choice, scenarioId, memo }: { choice: WarmingChoice; scenarioId: string; memo: CaseMemo }
): Working {
  const scenario = input.scenarios.find(({ id }) => id === scenarioId);
  if (scenario === undefined) throw new Error(`There is no scenario “${scenarioId}”.`);
  return workingOf(reckon(recorder, under(input, choice), memo).year(scenario).co2eKg.total);
}

export interface LastingCut<Q = number> {
  /** As CO2 that is emitted once, by CGTP over 100 years, kg. */
  readonly asOnePulseKg: Q;
  /** As a pulse each year of a century, by GWP over 100 years of AR6, kg. */
  readonly asPulsesKg: Q;
}

/**
 * What a scenario's lasting cut of agents against today is worth in both ways of counting. Nitrous oxide is left out: it
 * is long-lived, a pulse metric serves there, and no figure for a lasting change is given.
 */
export function lastingCut(
  r: Reckoner,
  input: EstimateInput,
  { scenarioId, memo }: { scenarioId: string; memo: CaseMemo }
): LastingCut<Quantity> {
  const reckoning = reckon(r, input, memo);
  const scenario = input.scenarios.find(({ id }) => id === scenarioId);
  if (scenario === undefined) throw new Error(`There is no scenario “${scenarioId}”.`);
  const before = reckoning.agentFate(reckoning.today);
  const after = reckoning.agentFate(scenario);
  const years = r.assumption(1, 'year', 'What is vented is that of one year.');
  const none = () => r.assumption(0, 'kg', 'None of this agent is given.');
  const cut = agents.filter((agent) => before[agent] !== undefined || after[agent] !== undefined);
  const cutsKgPerYear = cut.map((agent) =>
    r.apply(cutPerYear, {
      todayKg: before[agent]?.ventedKg ?? none(),
      scenarioKg: after[agent]?.ventedKg ?? none(),
      years
    })
  );
  const century: Accounting = { ...input.accounting, warmingSet: 'AR6', warmingHorizonYears: 100 };
  return {
    asOnePulseKg: r.apply(cutAsOnePulse, {
      cutsKgPerYear,
      potentials: cut.flatMap((agent) => {
        const record = temperatureMetric('CGTP', 100, agent);
        return record === null ? [] : [r.constant(record)];
      })
    }),
    asPulsesKg: r.apply(cutAsPulses, {
      cutsKgPerYear,
      potentials: cut.map((agent) =>
        warmingPotential(r, agent, { accounting: century, reference: input.reference })
      ),
      years: r.assumption(100, 'year', 'The horizon of the potentials.')
    })
  };
}

/** A pair of scenarios whose order by emissions is not the same under every choice. */
export interface ChangedOrder {
  /** Ids: under the choice in force the first emits less. */
  readonly less: string;
  readonly more: string;
  /** Where it is the other way round. */
  readonly reversedUnder: readonly WarmingChoice[];
}

/** Relative difference below which two sums are told apart by rounding alone. */
const rounding = 1e-9;

/** Every pair whose order differs from that under the choice in force; equal ones have no order. */
export function changedOrders(years: readonly YearUnderChoice[]): readonly ChangedOrder[] {
  const inForce = years.find((year) => year.isInForce);
  if (inForce === undefined) return [];
  const signOf = (year: YearUnderChoice, one: string, other: string): number => {
    const of = (id: string) => year.scenarios.find((each) => each.id === id)?.co2eKg ?? null;
    const [a, b] = [of(one), of(other)];
    if (a === null || b === null || Math.abs(a - b) <= rounding * Math.max(Math.abs(a), Math.abs(b)))
      return 0;
    return Math.sign(a - b);
  };
  const ids = inForce.scenarios.map(({ id }) => id);
  return ids.flatMap((one, place) =>
    ids.slice(place + 1).flatMap((other): ChangedOrder[] => {
      const sign = signOf(inForce, one, other);
      const reversedUnder = years.filter((year) => sign !== 0 && signOf(year, one, other) === -sign);
      if (reversedUnder.length === 0) return [];
      return [
        sign < 0 ? { less: one, more: other, reversedUnder } : { less: other, more: one, reversedUnder }
      ];
    })
  );
}
