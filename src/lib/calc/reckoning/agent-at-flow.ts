/**
 * What an agent takes at a flow: liquid, emissions and money of an hour, of a MAC-hour and of a bottle. One case of the
 * mix, all agents at its target, the flow of its plan's open phase as asked: figures to teach with, of the agent alone.
 */
import { caseAtFlow, recorderAtFlow } from '../case/flow-curve.ts';
import type { CaseGiven } from '../case/conditions.ts';
import { agentWarming, ventedMass, warmingPotential } from '../emissions/co2e-lines.ts';
import type { Agent, EstimateInput } from '../input.ts';
import { consumablePrices } from '../money/consumable-prices.ts';
import { bottles, costOfAgent } from '../money/consumables.ts';
import { Decimal } from '../money/decimal.ts';
import { take } from '../reference/reference-set.ts';
import type { Formula, InputOfFormula } from '../working/formula.ts';
import { formula } from '../working/formula.ts';
import { plain } from '../working/plain.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { hours } from '../year/consumption.ts';

/** Flows that are compared, L/min: what classes of flow are named after, and what is still met. */
const comparedFlowsLPerMin = [0.5, 1, 2, 4, 6] as const;

/** What is compared, and of what. */
export const agentAtFlowFigures = [
  'mlPerHour',
  'co2eKgPerHour',
  'costPerHour',
  'mlPerMacHour',
  'co2eKgPerMacHour',
  'costPerMacHour',
  'hoursPerBottle',
  'macHoursPerBottle',
  'co2eKgPerBottle',
  'costPerBottle'
] as const;
export type AgentAtFlowFigure = (typeof agentAtFlowFigures)[number];

export interface AgentAtFlow {
  readonly agent: Agent;
  /** Flow of the plan's open phase. */
  readonly flowLPerMin: number;
  /** Plain numbers; money is what it is worth as a number, to be shown. */
  readonly figures: Readonly<Record<AgentAtFlowFigure, number>>;
}

/** What an amount is divided by. */
const shares = {
  hour: { name: 'an hour', input: { symbol: 't', unit: 'h', words: 'hours of the case' } },
  'mac-hour': { name: 'a MAC-hour', input: { symbol: 'h', unit: 'h', words: 'MAC-hours of the case' } },
  bottle: { name: 'a bottle', input: { symbol: 'n', unit: '1', words: 'bottles that the case uses' } }
} as const satisfies Record<string, { name: string; input: InputOfFormula }>;
type Share = keyof typeof shares;

const worded = (id: string, amount: { yields: string; words: string; unit: string }, share: Share) => {
  const { name, input } = shares[share];
  return {
    id,
    yields: `${amount.yields} for ${name}`,
    words: `${amount.words} over ${input.words}`,
    expression: `a / ${input.symbol}`,
    inputs: { amount: { symbol: 'a', unit: amount.unit, words: amount.words }, share: input },
    unit:
      input.unit === '1' ? amount.unit : amount.unit === input.unit ? '1' : `${amount.unit}/${input.unit}`,
    source: 'definition'
  };
};
const numbers = (...of: Parameters<typeof worded>): Formula<{ amount: number; share: number }> =>
  formula<{ amount: number; share: number }>({
    ...worded(...of),
    compute: ({ amount, share }) => amount / share
  });
const amounts = (...of: Parameters<typeof worded>): Formula<{ amount: Decimal; share: number }, Decimal> =>
  formula<{ amount: Decimal; share: number }, Decimal>({
    ...worded(...of),
    compute: ({ amount, share }) => amount.div(share)
  });

const liquid = { yields: 'Liquid agent', words: 'liquid agent used', unit: 'mL' };
const emitted = { yields: 'Emissions of the agent', words: 'emissions of the agent', unit: 'kg CO2e' };
const cost = { yields: 'Cost of the agent', words: 'cost of the agent', unit: 'currency' };
const time = { yields: 'Time', words: 'hours of the case', unit: 'h' };
const depth = { yields: 'MAC-hours', words: 'MAC-hours of the case', unit: 'h' };

const liquidPer = {
  hour: numbers('case.liquid-per-hour', liquid, 'hour'),
  mac: numbers('case.liquid-per-mac-hour', liquid, 'mac-hour')
};
const emittedPer = {
  hour: numbers('case.emissions-per-hour', emitted, 'hour'),
  mac: numbers('case.emissions-per-mac-hour', emitted, 'mac-hour'),
  bottle: numbers('case.emissions-per-bottle', emitted, 'bottle')
};
const costPer = {
  hour: amounts('case.cost-per-hour', cost, 'hour'),
  mac: amounts('case.cost-per-mac-hour', cost, 'mac-hour'),
  bottle: amounts('case.cost-per-bottle', cost, 'bottle')
};
const timePerBottle = numbers('case.hours-per-bottle', time, 'bottle');
const depthPerBottle = numbers('case.mac-hours-per-bottle', depth, 'bottle');

/** The case with another agent that is held at the target, whatever the plan does with its dial; off stays off. */
function heldWith(given: CaseGiven, agent: Agent): CaseGiven {
  const phases = given.conditions.phases.map((phase) =>
    phase.vaporiser === 'off' ? phase : { ...phase, vaporiser: 'hold' as const, dialPercent: null }
  );
  return { ...given, conditions: { ...given.conditions, agent, phases } };
}

/** The figures of one agent at one flow, each asked for by its name. */
function figuresAt(
  r: Reckoner,
  input: EstimateInput,
  { given, agent, flowLPerMin }: { given: CaseGiven; agent: Agent; flowLPerMin: number }
): Readonly<Record<AgentAtFlowFigure, () => Quantity | Quantity<Decimal>>> {
  const { liquidMl, takenUpMl, macHours } = caseAtFlow(r, heldWith(given, agent), flowLPerMin);
  const price = consumablePrices(r, input).ofAgent(agent);
  const { reference } = input;
  const co2eKg = r.apply(agentWarming, {
    massKg: r.apply(ventedMass, {
      liquidMl,
      takenUpMl,
      densityGPerMl: r.constant(take(reference, `${agent}.liquid-density`)),
      metabolisedPercent: r.constant(take(reference, `${agent}.metabolised`)),
      atExhaustMl: r.assumption(0, 'mL', 'No capture is counted here.'),
      capturePercent: r.assumption(0, '%', 'No capture is counted here.'),
      caughtLostPercent: r.assumption(0, '%', 'No capture is counted here.')
    }),
    potential: warmingPotential(r, agent, input)
  });
  const paid = r.apply(costOfAgent, { liquidMl, pricePerMl: price.pricePerMl });
  const used = r.apply(bottles, {
    liquidMl,
    bottleMl: price.bottleMl,
    unusablePercent: price.unusablePercent
  });
  const lasting = r.apply(hours, {
    minutes: r.cell(given.conditions.minutes, 'min', 'caseMix', given.cells.row, 'minutes')
  });
  return {
    mlPerHour: () => r.apply(liquidPer.hour, { amount: liquidMl, share: lasting }),
    co2eKgPerHour: () => r.apply(emittedPer.hour, { amount: co2eKg, share: lasting }),
    costPerHour: () => r.apply(costPer.hour, { amount: paid, share: lasting }),
    mlPerMacHour: () => r.apply(liquidPer.mac, { amount: liquidMl, share: macHours }),
    co2eKgPerMacHour: () => r.apply(emittedPer.mac, { amount: co2eKg, share: macHours }),
    costPerMacHour: () => r.apply(costPer.mac, { amount: paid, share: macHours }),
    hoursPerBottle: () => r.apply(timePerBottle, { amount: lasting, share: used }),
    macHoursPerBottle: () => r.apply(depthPerBottle, { amount: macHours, share: used }),
    co2eKgPerBottle: () => r.apply(emittedPer.bottle, { amount: co2eKg, share: used }),
    costPerBottle: () => r.apply(costPer.bottle, { amount: paid, share: used })
  };
}

/**
 * Every agent that is priced, at 0.5, 1, 2, 4 and 6 L/min; where patient and machine need more than some of them, the
 * least feasible flow stands for those. The plan's other phases are kept, and every agent is held at the case's target.
 * Empty where the case gives no volatile agent, or its vaporiser is off throughout.
 * @throws OutOfRangeError where an input is outside what the model allows.
 */
export function agentsAtFlows(input: EstimateInput, given: CaseGiven): readonly AgentAtFlow[] {
  const { technique, phases } = given.conditions;
  if (technique !== 'volatile' || phases.every(({ vaporiser }) => vaporiser === 'off')) return [];
  const { neededFlowLPerMin } = caseAtFlow(plain, given, comparedFlowsLPerMin[0]);
  const feasible = comparedFlowsLPerMin.filter((flow) => flow >= neededFlowLPerMin);
  const flows = feasible.length === comparedFlowsLPerMin.length ? feasible : [neededFlowLPerMin, ...feasible];
  return input.agents.flatMap(({ agent }) =>
    flows.flatMap((flowLPerMin): AgentAtFlow[] => {
      const at = figuresAt(plain, input, { given, agent, flowLPerMin });
      const figures = Object.fromEntries(
        agentAtFlowFigures.map((name) => [name, Number(plain.value(at[name]() as Quantity))])
      ) as Record<AgentAtFlowFigure, number>;
      // Beside much nitrous oxide nothing is left of the target, and there is nothing to divide by.
      return Object.values(figures).every(Number.isFinite) ? [{ agent, flowLPerMin, figures }] : [];
    })
  );
}

/** How one of these figures came about. */
export function recordedAgentAtFlow(
  input: EstimateInput,
  { figure, ...at }: { given: CaseGiven; agent: Agent; flowLPerMin: number; figure: AgentAtFlowFigure }
): Quantity | Quantity<Decimal> {
  const words = 'Every agent is held at the target here, by a vaporiser that its own maximum alone limits.';
  const r = recorderAtFlow(at.given, (path) => (path.endsWith('.dialPercent') ? { words } : null));
  return figuresAt(r, input, at)[figure]();
}
