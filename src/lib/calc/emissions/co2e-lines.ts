import type { Accounting, Agent, Potentials, RegionalSupply, Site } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { take } from '../reference/reference-set.ts';
import type { Co2eLine } from '../estimate-types.ts';
import { formula } from '../working/formula.ts';
import type { Made } from './manufacture.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { captureInputs } from './capture.ts';

/** What is caught of an agent. */
export interface CaptureOfAgent {
  /** Share of what leaves by the exhaust that is captured, %. */
  readonly capturePercent: Quantity;
  /** Share of what is caught that is lost again, %. */
  readonly caughtLostPercent: Quantity;
  /** What leaves by the exhaust, as liquid; made where something is captured of it. */
  readonly atExhaustMl: () => Quantity;
}

/** What is emitted or bought, from which the lines of CO2e follow. Parts that differ in capture come apart. */
export interface EmittingUse {
  readonly agents: readonly {
    readonly agent: Agent;
    readonly liquidMl: Quantity;
    readonly takenUpMl: Quantity;
    readonly capture: CaptureOfAgent;
  }[];
  readonly nitrousOxideKg: Quantity;
  /** Bought and never used: lost from the pipes; null where purchases were not given. */
  readonly nitrousOxideLostKg: Quantity | null;
  readonly oxygenM3: Quantity;
  readonly absorbents: readonly { readonly massKg: Quantity; readonly kgCo2ePerKg: Quantity | null }[];
  readonly electricityKWh: Quantity;
  readonly intravenousH: Quantity;
  readonly regionalCases: Quantity;
  /** What was emitted in making it, as far as figures are entered. */
  readonly made: readonly Made[];
}

/**
 * Agent that reaches the open air: ρ · (V − m · U − c · (1 − q) · X), X what leaves by the exhaust. What is caught and
 * lost again is in it.
 */
export const ventedMass = formula<{
  liquidMl: number;
  takenUpMl: number;
  densityGPerMl: number;
  metabolisedPercent: number;
  atExhaustMl: number;
  capturePercent: number;
  caughtLostPercent: number;
}>({
  id: 'emissions.vented-mass',
  yields: 'Agent vented to the open air',
  words:
    'liquid used less the share of what was taken up that the body metabolises, less what is captured at the exhaust and not lost again, as mass; never below 0',
  expression: 'max(0, (V - m / 100 * U - c / 100 * (1 - q / 100) * X) * d / 1000)',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    takenUpMl: { symbol: 'U', unit: 'mL', words: 'liquid agent taken up' },
    densityGPerMl: { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' },
    metabolisedPercent: { symbol: 'm', unit: '%', words: 'share of what is taken up that is metabolised' },
    ...captureInputs
  },
  unit: 'kg',
  source: 'definition',
  compute: ({
    liquidMl,
    takenUpMl,
    densityGPerMl,
    metabolisedPercent,
    atExhaustMl,
    capturePercent,
    caughtLostPercent
  }) =>
    Math.max(
      0,
      ((liquidMl -
        (metabolisedPercent / 100) * takenUpMl -
        (capturePercent / 100) * (1 - caughtLostPercent / 100) * atExhaustMl) *
        densityGPerMl) /
        1000
    )
});

const warmingOf = (id: string, what: string) =>
  formula<{ massKg: number; potential: number }>({
    id,
    yields: `Emissions, ${what}`,
    words: 'mass times global warming potential',
    expression: 'm * G',
    inputs: {
      massKg: { symbol: 'm', unit: 'kg', words: 'mass emitted' },
      potential: { symbol: 'G', unit: 'kg CO2e/kg', words: 'global warming potential' }
    },
    unit: 'kg CO2e',
    source: 'definition',
    compute: ({ massKg, potential }) => massKg * potential
  });

/** CO2e of an agent's vented mass. */
export const agentWarming = warmingOf('emissions.agent', 'one agent');
export const nitrousOxideWarming = warmingOf('emissions.nitrous-oxide', 'nitrous oxide used');
export const nitrousOxideLostWarming = warmingOf(
  'emissions.nitrous-oxide-lost',
  'nitrous oxide lost from the pipes'
);

const sumOf = (id: string, yields: string, words: string) =>
  formula<{ parts: readonly number[] }>({
    id,
    yields,
    words,
    expression: 'sum(x)',
    inputs: { parts: { symbol: 'x', unit: 'kg CO2e', words: 'each part' } },
    unit: 'kg CO2e',
    source: 'definition',
    compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
  });
const agentsTotal = sumOf('emissions.agents', 'Emissions, agents', 'sum over the agents');
const absorbentTotal = sumOf(
  'emissions.absorbents',
  'Emissions, absorbent',
  'sum over the absorbents with a figure given'
);
const madeTotal = sumOf(
  'emissions.manufacture',
  'Emissions, manufacture',
  'making agents, machines and consumables, where a figure is entered, added up'
);
const linesTotal = sumOf('emissions.total', 'Emissions, all lines', 'sum over the lines');

export const byFactor = (id: string, yields: string, amount: string, unit: string, factorWords: string) =>
  formula<{ amount: number; factor: number }>({
    id,
    yields,
    words: `${amount} times ${factorWords}`,
    expression: 'a * f',
    inputs: {
      amount: { symbol: 'a', unit, words: amount },
      factor: { symbol: 'f', unit: unit === '1' ? 'kg CO2e' : `kg CO2e/${unit}`, words: factorWords }
    },
    unit: 'kg CO2e',
    source: 'definition',
    compute: (given) => given.amount * given.factor
  });
export const oxygenLine = byFactor(
  'emissions.oxygen',
  'Emissions, oxygen',
  'oxygen',
  'm3',
  'emissions of bulk oxygen'
);
export const absorbentLine = byFactor(
  'emissions.absorbent',
  'Emissions, one absorbent',
  'absorbent',
  'kg',
  'emissions of making it'
);
export const electricityLine = byFactor(
  'emissions.electricity',
  'Emissions, electricity',
  'electricity',
  'kWh',
  'emissions of the site’s electricity'
);
export const intravenousLine = byFactor(
  'emissions.intravenous',
  'Emissions, intravenous drugs',
  'hours of intravenous anaesthesia',
  'h',
  'emissions of the drugs of an hour'
);

export const regionalLine = byFactor(
  'emissions.regional',
  'Emissions, regional anaesthesia',
  'regional cases',
  '1',
  'emissions of drugs and material of one'
);
const drugsTotal = sumOf(
  'emissions.drugs',
  'Emissions, intravenous and regional drugs',
  'intravenous and regional anaesthesia added up'
);

/** What a regional case emits; null: not given. */
export const regionalFactor = (r: Reckoner, { kgCo2ePerCase }: RegionalSupply): Quantity | null =>
  kgCo2ePerCase === null ? null : r.cell(kgCo2ePerCase, 'kg CO2e', 'regional', 'kgCo2ePerCase');

/** With what regional cases emit, where a figure was given for one. */
function withRegional(
  r: Reckoner,
  ofIntravenous: Quantity,
  { cases, regional }: { cases: Quantity; regional: RegionalSupply }
): Quantity {
  const factor = regionalFactor(r, regional);
  if (factor === null) return ofIntravenous;
  return r.apply(drugsTotal, { parts: [ofIntravenous, r.apply(regionalLine, { amount: cases, factor })] });
}

/** What potentials are taken from. */
export interface WarmingContext {
  readonly accounting: Accounting;
  readonly reference: ReferenceSet;
  readonly potentials?: Potentials | undefined;
}

/** The warming potential in force: the user's own, or the chosen set's at the chosen horizon. */
export function warmingPotential(
  r: Reckoner,
  subject: Agent | 'nitrous-oxide',
  { accounting, reference, potentials }: WarmingContext
): Quantity {
  const instead = potentials?.[subject];
  if (instead !== undefined) return r.constant(instead);
  const { warmingSet, warmingHorizonYears, customWarming } = accounting;
  const own = customWarming[subject];
  if (warmingSet === 'custom' && own !== undefined)
    return r.cell(own, 'kg CO2e/kg', 'accounting', 'customWarming', subject);
  const set = warmingSet === 'custom' ? 'AR6' : warmingSet;
  return r.constant(take(reference, `warming.${set}.${warmingHorizonYears}.${subject}`));
}

/** The capture of an agent as formulas take it; what leaves by the exhaust is reckoned where something is captured of it. */
export const captured = (
  r: Reckoner,
  { capturePercent, caughtLostPercent, atExhaustMl }: CaptureOfAgent
): { capturePercent: Quantity; caughtLostPercent: Quantity; atExhaustMl: Quantity } => ({
  capturePercent,
  caughtLostPercent,
  // The working has it in any case: a spreadsheet follows a share that is raised from 0.
  atExhaustMl:
    r.records || r.value(capturePercent) > 0 ? atExhaustMl() : r.assumption(0, 'mL', 'Nothing is captured.')
});

/** What of an agent's use reaches the open air. */
export const ventedOf = (
  r: Reckoner,
  { agent, liquidMl, takenUpMl, capture }: EmittingUse['agents'][number],
  reference: ReferenceSet
): Quantity =>
  r.apply(ventedMass, {
    liquidMl,
    takenUpMl,
    densityGPerMl: r.constant(take(reference, `${agent}.liquid-density`)),
    metabolisedPercent: r.constant(take(reference, `${agent}.metabolised`)),
    ...captured(r, capture)
  });

/** CO2e by line, kg, and their total. A line without a published or given figure is 0, and the estimate says so. */
export function co2eLines(
  r: Reckoner,
  use: EmittingUse,
  context: WarmingContext & { readonly site: Site; readonly regional: RegionalSupply }
): Record<Co2eLine | 'total', Quantity> {
  const { reference, site } = context;
  const agentParts = use.agents.map((part) =>
    r.apply(agentWarming, {
      massKg: ventedOf(r, part, reference),
      potential: warmingPotential(r, part.agent, context)
    })
  );
  const nothing = () =>
    r.assumption(0, 'kg', 'Purchases of nitrous oxide were not given, so no loss is counted.');
  const nitrousOxidePotential = warmingPotential(r, 'nitrous-oxide', context);
  const lines = {
    agents: r.apply(agentsTotal, { parts: agentParts }),
    nitrousOxide: r.apply(nitrousOxideWarming, {
      massKg: use.nitrousOxideKg,
      potential: nitrousOxidePotential
    }),
    nitrousOxideLost: r.apply(nitrousOxideLostWarming, {
      massKg: use.nitrousOxideLostKg ?? nothing(),
      potential: nitrousOxidePotential
    }),
    gases: r.apply(oxygenLine, { amount: use.oxygenM3, factor: r.constant(take(reference, 'oxygen.co2e')) }),
    absorbent: r.apply(absorbentTotal, {
      parts: use.absorbents.flatMap(({ massKg, kgCo2ePerKg }) =>
        kgCo2ePerKg === null ? [] : [r.apply(absorbentLine, { amount: massKg, factor: kgCo2ePerKg })]
      )
    }),
    electricity: r.apply(electricityLine, {
      amount: use.electricityKWh,
      factor: r.cell(site.electricityKgCo2ePerKWh, 'kg CO2e/kWh', 'site', 'electricityKgCo2ePerKWh')
    }),
    intravenous: withRegional(
      r,
      r.apply(intravenousLine, {
        amount: use.intravenousH,
        factor: r.constant(take(reference, 'intravenous.co2e'))
      }),
      { cases: use.regionalCases, regional: context.regional }
    ),
    manufacture: r.apply(madeTotal, { parts: use.made.map(({ co2eKg }) => co2eKg) })
  };
  return { ...lines, total: r.apply(linesTotal, { parts: Object.values(lines) }) };
}
