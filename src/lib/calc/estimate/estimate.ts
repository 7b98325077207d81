/** The front door of the core: input in, estimate out. */
import type { Against } from '../reckoning/against.ts';
import type { Attribution } from '../attribution/attribution.ts';
import { attribution } from '../attribution/attribution.ts';
import { RunFailedError } from '../attribution/lever-runs.ts';
import { CaseMemo } from '../known-cases/case-memo.ts';
import {
  ladderStep,
  leverPart,
  moneyIncrement,
  stepFigures,
  tonnesIncrement
} from './estimate-attribution.ts';
import { theatreAirEstimate } from './estimate-theatre-air.ts';
import { estimateWarnings } from './estimate-warnings.ts';
import type {
  AgentFateOfYear,
  AgainstBaseline,
  AgentYear,
  CaseEstimate,
  Co2eLines,
  CostLine,
  CostLines,
  CostOfWay,
  Estimate,
  LadderStep,
  MonitoringNeed,
  ScenarioEstimate,
  ScenarioYear,
  WaysToPay
} from '../estimate-types.ts';
import type { Agent, EstimateInput, Lever, Scenario } from '../input.ts';
import { levers } from '../input.ts';
import type { AgentFate } from '../emissions/agent-fate.ts';
import { restrictionsInWords } from './restrictions-in-words.ts';
import { lowFlowCautions } from './low-flow-cautions.ts';
import { once } from '../working/kept.ts';
import { Decimal, text } from '../money/decimal.ts';
import { costLineNames } from '../money/cost-lines.ts';
import type { CostOfService } from '../money/equal-service.ts';
import type { WaysOfMove } from '../money/ways-to-pay.ts';
import { levelOrder } from '../monitoring/level-order.ts';
import { pricedNeed } from '../reckoning/monitoring-of-scenario.ts';
import type { CaseResult } from '../case/case-result.ts';
import type { IntensityFigures } from '../reckoning/intensity.ts';
import type { ReconciledAgent } from '../reckoning/reconciliation.ts';
import type { Reckoning } from '../reckoning/reckoning.ts';
import { reckon } from '../reckoning/reckoning.ts';
import type { CaseReckoning } from '../reckoning/scenario-cases.ts';
import type { YearFigures } from '../reckoning/scenario-year.ts';
import { plain } from '../working/plain.ts';
import type { Quantity } from '../working/reckoner.ts';

const number = <T extends number | null>(quantity: Quantity<T>): T => plain.value(quantity);
const numberOrNull = (quantity: Quantity | null): number | null =>
  quantity === null ? null : number(quantity);
const money = (quantity: Quantity<Decimal>): string => text(plain.value(quantity));
const moneyOrNull = (quantity: Quantity<Decimal | null>): string | null => {
  const value = plain.value(quantity);
  return value === null ? null : text(value);
};

/**
 * The estimate of a checked input: every scenario's year, its cases, what it saves against the baseline, and the
 * monitoring it asks for. Pure: the same input gives the same estimate, with or without a memo.
 *
 * Each part is computed when it is first read, so that the bottom line of a large workbook does not wait for the figures
 * of every case in every scenario. Read in full (as by `JSON.stringify`), it is complete.
 * @param memo keeps results of cases, so that the next estimate computes only what changed.
 */
export function estimate(input: EstimateInput, memo = new CaseMemo()): Estimate {
  const reckoning = reckon(plain, input, memo);
  const apart = attributionOf(input, memo);
  const scenarios = input.scenarios.map((scenario) => scenarioEstimate(reckoning, apart, scenario));
  const increments = once(() =>
    unlessFailed(() => {
      const { money: byOutlay, tonnes } = apart.increments();
      return { money: byOutlay.map(moneyIncrement), tonnes: tonnes.map(tonnesIncrement) };
    })
  );
  const reconciliation = once(() => {
    const { agents, nitrousOxide } = reckoning.reconciliation();
    const { boughtKg, usedKg, lostKg, lostPercent } = nitrousOxide;
    return {
      agents: mapped(agents as Readonly<Record<Agent, ReconciledAgent>>, ({ finding, ...of }) => ({
        ...mapped(of, numberOrNull),
        finding
      })),
      nitrousOxide: {
        ...mapped({ boughtKg, lostKg, lostPercent }, numberOrNull),
        usedKg: number(usedKg)
      }
    };
  });
  const monitoring = once(() => overScenarios(scenarios));
  const cautions = once(() => scenarios.flatMap((scenario) => scenario.cautions));
  const restrictions = once(() => restrictionsInWords(input));
  const warnings = once(() => [
    ...restrictions().map(({ sentence }) => sentence),
    ...estimateWarnings(input, scenarios, cautions())
  ]);
  return {
    format: 'vapour-ledger-estimate',
    version: 2,
    title: input.title,
    invented: input.invented,
    currency: input.currency,
    referenceSet: input.reference.id,
    scenarios,
    get reconciliation() {
      return reconciliation();
    },
    get increments() {
      return increments().value;
    },
    get monitoring() {
      return monitoring();
    },
    get cautions() {
      return cautions();
    },
    get restrictions() {
      return restrictions();
    },
    get warnings() {
      return warnings();
    }
  };
}

/**
 * A scenario's levers one after the other, in an order of the user's. Levers that the scenario does not use are passed
 * over, and those that are not named come last.
 * @throws RunFailedError where a case could not be computed in one of the runs.
 */
export function ladderInOrder(
  input: EstimateInput,
  { scenarioId, order, memo }: { scenarioId: string; order: readonly Lever[]; memo?: CaseMemo }
): LadderStep[] {
  const scenario = input.scenarios.find(({ id }) => id === scenarioId);
  if (scenario === undefined) throw new Error(`There is no scenario “${scenarioId}”.`);
  return attributionOf(input, memo).ladder(scenario, order).map(ladderStep);
}

/** The runs have a reckoning of their own: a case that fails in one of them is no failure of a scenario. */
const attributionOf = (input: EstimateInput, memo = new CaseMemo()): Attribution =>
  attribution(plain, input, () => reckon(plain, input, memo));

/** What is made of runs, or why there is none: a case that failed is missing from one run and not from another. */
function unlessFailed<T>(make: () => T): { readonly value: T | null; readonly sentence: string | null } {
  try {
    return { value: make(), sentence: null };
  } catch (error) {
    if (!(error instanceof RunFailedError)) throw error;
    return { value: null, sentence: error.message };
  }
}

function scenarioEstimate(reckoning: Reckoning, apart: Attribution, scenario: Scenario): ScenarioEstimate {
  const parts = once(() => unlessFailed(() => apart.parts(scenario).map(leverPart)));
  const ladder = once(() => unlessFailed(() => apart.ladder(scenario, levers).map(ladderStep)));
  const twin = once(() =>
    unlessFailed(() => {
      const found = apart.twin(scenario);
      return found === null
        ? null
        : { withoutMachine: againstEstimate(found.twin), machineAdds: stepFigures(found.machineAdds) };
    })
  );
  const lawful = once(() =>
    unlessFailed(() => {
      const step = apart.againstLawful(scenario);
      return step === null ? null : stepFigures(step);
    })
  );
  const perYear = once(() => yearEstimate(reckoning.year(scenario)));
  const cases = once(() => reckoning.cases(scenario).map((one) => caseEstimate(reckoning, scenario, one)));
  const againstBaseline = once(() => againstEstimate(reckoning.against(scenario)));
  const monitoring = once(() => reckoning.monitoring(scenario).map(pricedNeed));
  const waysToPay = once(() => reckoning.waysToPay(scenario).map(waysEstimate));
  const cautions = once(() => lowFlowCautions(scenario, reckoning.casesDone(scenario)));
  const vapour = once(() => {
    const { takenUpMl, spilledMl, leftMl, togetherMl } = reckoning.vapour(scenario);
    return {
      takenUpMl: number(takenUpMl),
      spilledMl: number(spilledMl),
      leftMl: number(leftMl),
      togetherMl: number(togetherMl)
    };
  });
  const ledger = once(() =>
    reckoning.ledger(scenario).map(({ activity, factor, co2eKg, ...line }) => ({
      ...line,
      activity: activity === null ? null : number(activity),
      factor: factor === null ? null : number(factor),
      co2eKg: co2eKg === null ? null : number(co2eKg)
    }))
  );
  const intensity = once(() => {
    const { cases: groups, agents, year, changePercent } = reckoning.intensity(scenario);
    return {
      year: mapped(year, numberOrNull),
      changePercent: mapped(changePercent, numberOrNull),
      agents: mapped(agents as Readonly<Record<Agent, IntensityFigures>>, (of) => mapped(of, numberOrNull)),
      cases: mapped(groups, (of) => mapped(of, numberOrNull))
    };
  });
  const air = once(() => theatreAirEstimate(reckoning.theatreAir(scenario)));
  return {
    id: scenario.id,
    get perYear() {
      return perYear();
    },
    get cases() {
      return cases();
    },
    get againstBaseline() {
      return againstBaseline();
    },
    get attribution() {
      return parts().value;
    },
    get ladder() {
      return ladder().value;
    },
    get withoutMachine() {
      return twin().value?.withoutMachine ?? null;
    },
    get machineAdds() {
      return twin().value?.machineAdds ?? null;
    },
    get againstLawful() {
      return lawful().value;
    },
    get attributionFailed() {
      return parts().sentence;
    },
    get waysToPay() {
      return waysToPay();
    },
    get monitoring() {
      return monitoring();
    },
    get cautions() {
      return cautions();
    },
    get monitoringGaps() {
      return number(reckoning.monitoringGaps(scenario));
    },
    get placing() {
      return [...reckoning.placing(scenario)];
    },
    get vapourOnOwnPlan() {
      return vapour();
    },
    get agentFate() {
      return fates(reckoning.agentFate(scenario));
    },
    get agentFateByGroup() {
      return mapped(reckoning.agentFateByGroup(scenario), fates);
    },
    get ledger() {
      return ledger();
    },
    get intensity() {
      return intensity();
    },
    get theatreAir() {
      return air();
    },
    get failed() {
      return [...reckoning.failed(scenario)];
    }
  };
}

function yearEstimate(year: YearFigures): ScenarioYear {
  const agents: Partial<Record<Agent, AgentYear>> = {};
  for (const [agent, of] of Object.entries(year.agents) as [Agent, YearFigures['agents'][Agent]][])
    if (of !== undefined)
      agents[agent] = {
        liquidMl: number(of.liquidMl),
        bottles: number(of.bottles),
        cost: money(of.cost),
        estimateOverPurchase: of.estimateOverPurchase === null ? null : number(of.estimateOverPurchase)
      };
  return {
    agents,
    oxygenM3: number(year.oxygenM3),
    airM3: number(year.airM3),
    nitrousOxideKg: number(year.nitrousOxideKg),
    absorbentKg: number(year.absorbentKg),
    electricityKWh: number(year.electricityKWh),
    intravenousCases: number(year.intravenousCases),
    propofolDrawnUpG: number(year.propofolDrawnUpG),
    propofolWastedG: number(year.propofolWastedG),
    eegSensors: number(year.eegSensors),
    regionalCases: number(year.regionalCases),
    cost: mapped(year.cost, money) satisfies CostLines,
    co2eKg: mapped(year.co2eKg, number) satisfies Co2eLines
  };
}

function mapped<K extends string, From, To>(
  record: Readonly<Record<K, From>>,
  to: (from: From) => To
): Record<K, To> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, to(value as From)])) as Record<
    K,
    To
  >;
}

function caseEstimate(
  reckoning: Reckoning,
  scenario: Scenario,
  one: CaseReckoning<CaseResult>
): CaseEstimate {
  const { row, plan, agent, method, result } = one;
  const priced = once(() => reckoning.pricedCase(scenario)(row));
  return {
    caseId: row.id,
    flowPlan: plan.id,
    technique: row.technique,
    agent,
    method,
    liquidMl: number(result.liquidMl),
    takenUpMl: number(result.takenUpMl),
    spilledMl: number(result.spilledMl),
    leftMl: number(result.leftMl),
    get floorMl() {
      return number(reckoning.floorOf(scenario, row));
    },
    constantDialMl: number(result.constantDialMl),
    constantDialVapourAddedMl: number(result.constantDialVapourAddedMl),
    minutesToTarget: number(result.minutesToTarget),
    minutesBelowTarget: number(result.minutesBelowTarget),
    macHours: number(result.macHours),
    meanFlowLPerMin: number(result.meanFlowLPerMin),
    flowClasses: result.phases.map((phase) => phase.flowClass),
    oxygenL: number(result.oxygenL),
    airL: number(result.airL),
    nitrousOxideL: number(result.nitrousOxideL),
    absorbentKg: number(result.absorbentKg),
    get co2eKg() {
      return number(priced().co2eKg);
    },
    get cost() {
      return money(priced().cost);
    },
    warnings: [...result.warnings]
  };
}

function againstEstimate(against: Against): AgainstBaseline {
  return {
    yearlySaving: money(against.yearlySaving),
    co2eAvoidedKg: number(against.co2eAvoidedKg),
    co2eAvoidedOverAppraisalKg: number(against.co2eAvoidedOverAppraisalKg),
    departmentSharePercent:
      against.departmentSharePercent === null ? null : number(against.departmentSharePercent),
    investment: money(against.investment),
    simplePaybackYears: number(against.simplePaybackYears),
    discountedPaybackYears: number(against.discountedPaybackYears),
    aheadForATime: against.aheadForATime.map(({ fromYears, untilYears, cause }) => ({
      fromYears: number(fromYears),
      untilYears: number(untilYears),
      cause
    })),
    npv: money(against.npv),
    irrPercent: number(against.irrPercent),
    irrAllPercent: [...against.irrAllPercent],
    costPerTonneAvoided: moneyOrNull(against.costPerTonneAvoided),
    shadow: mapped({ ...against.shadow }, money),
    equivalentAnnualCost: money(against.equivalentAnnualCost),
    benefitCostRatio: number(against.benefitCostRatio),
    totalCostOfOwnership: money(against.totalCostOfOwnership),
    worthAtEnd: money(against.worthAtEnd),
    years: against.years.map((year) => ({
      year: year.year,
      investment: money(year.investment),
      payments: money(year.payments),
      savings: Object.fromEntries(costLineNames.map((line) => [line, money(year.savings[line])])) as Record<
        CostLine,
        string
      >,
      saving: money(year.saving),
      net: money(year.net),
      cumulative: money(year.cumulative),
      discounted: money(year.discounted),
      cumulativeDiscounted: money(year.cumulativeDiscounted)
    })),
    budget: against.budget.map(({ year, once: paidOnce, running, total }) => ({
      year,
      once: money(paidOnce),
      running: money(running),
      total: money(total)
    })),
    charges:
      against.charges === null
        ? null
        : {
            npvAfterTax: money(against.charges.npvAfterTax),
            years: against.charges.years.map(({ year, writtenOff, capitalCharge, tax }) => ({
              year,
              writtenOff: money(writtenOff),
              capitalCharge: money(capitalCharge),
              tax: money(tax)
            }))
          }
  };
}

const fates = (
  ofAgents: Readonly<Partial<Record<Agent, AgentFate>>>
): Partial<Record<Agent, AgentFateOfYear>> =>
  mapped(ofAgents as Readonly<Record<Agent, AgentFate>>, (fate) => mapped(fate, number));

function waysEstimate({ move, machine, units, asEntered, bought, fees }: WaysOfMove): WaysToPay {
  const wayOf = ({ lifeYears, presentValue, equivalentAnnualCost }: CostOfService): CostOfWay => ({
    lifeYears,
    presentValue: money(presentValue),
    equivalentAnnualCost: money(equivalentAnnualCost)
  });
  return {
    move,
    machine: machine.id,
    units: number(units),
    asEntered: wayOf(asEntered),
    bought: wayOf(bought),
    fees: fees.map(({ year, fee, machine: left, service, consumables, growth }) => ({
      year,
      fee: money(fee),
      machine: money(left),
      service: money(service),
      consumables: money(consumables),
      growth: money(growth)
    }))
  };
}

/** What any of the scenarios asks for: the strictest level, all the rows that trigger it, the most that is missing. */
function overScenarios(scenarios: readonly ScenarioEstimate[]): MonitoringNeed[] {
  const byRule = new Map<string, MonitoringNeed>();
  for (const need of scenarios.flatMap((scenario) => scenario.monitoring)) {
    const known = byRule.get(need.rule);
    if (known === undefined) {
      byRule.set(need.rule, { ...need });
      continue;
    }
    if (need.applies === known.applies) known.why = [...new Set([...known.why, ...need.why])];
    else if (need.applies === 'yes') Object.assign(known, { applies: need.applies, why: need.why });
    if (need.theatresMissing !== null && need.theatresMissing > (known.theatresMissing ?? -1)) {
      known.theatresMissing = need.theatresMissing;
      known.cost = need.cost;
    }
  }
  return [...byRule.values()].sort((a, b) => levelOrder.indexOf(a.level) - levelOrder.indexOf(b.level));
}
