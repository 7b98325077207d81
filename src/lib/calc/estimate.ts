/** The front door of the core: input in, estimate out. */
import type { CaseMemo } from './case-memo.ts';
import { estimateWarnings } from './estimate-warnings.ts';
import type {
  AgainstBaseline,
  AgentYear,
  CaseEstimate,
  Co2eLines,
  CostLine,
  CostLines,
  Estimate,
  MonitoringNeed,
  ScenarioEstimate,
  ScenarioYear
} from './estimate-types.ts';
import type { Agent, EstimateInput, Scenario } from './input.ts';
import { Decimal, text } from './money/decimal.ts';
import { costLineNames } from './money/cost-lines.ts';
import { levelOrder, pricedNeed } from './monitoring-of-scenario.ts';
import type { AgainstReckoning, CaseReckoning, Reckoning, YearFigures } from './reckoning.ts';
import { reckon } from './reckoning.ts';
import { plain } from './working/plain.ts';
import type { Quantity } from './working/reckoner.ts';

const number = <T extends number | null>(quantity: Quantity<T>): T => plain.value(quantity);
const money = (quantity: Quantity<Decimal>): string => text(plain.value(quantity));
const moneyOrNull = (quantity: Quantity<Decimal | null>): string | null => {
  const value = plain.value(quantity);
  return value === null ? null : text(value);
};

/**
 * The estimate of a checked input: every scenario's year, its cases, what it saves against the baseline, and the
 * monitoring it asks for. Pure: the same input gives the same estimate, with or without a memo.
 * @param memo keeps results of cases, so that the next estimate computes only what changed.
 */
export function estimate(input: EstimateInput, memo?: CaseMemo): Estimate {
  const reckoning = reckon(plain, input, memo);
  const scenarios = input.scenarios.map((scenario) => scenarioEstimate(reckoning, scenario));
  return {
    format: 'vapour-ledger-estimate',
    version: 1,
    title: input.title,
    currency: input.currency,
    referenceSet: input.reference.id,
    scenarios,
    monitoring: overScenarios(scenarios),
    warnings: estimateWarnings(input, scenarios, reckoning.failed())
  };
}

/** The figures of the bottom line alone, of today and one scenario: what must follow each keystroke. */
export function scenarioEstimate(reckoning: Reckoning, scenario: Scenario): ScenarioEstimate {
  return {
    id: scenario.id,
    perYear: yearEstimate(reckoning.year(scenario)),
    cases: reckoning.cases(scenario).map((one) => caseEstimate(reckoning, scenario, one)),
    againstBaseline: againstEstimate(reckoning.against(scenario)),
    monitoring: reckoning.monitoring(scenario).map(pricedNeed),
    failed: [...reckoning.failed()]
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

function caseEstimate(reckoning: Reckoning, scenario: Scenario, one: CaseReckoning): CaseEstimate {
  const { row, plan, agent, method, result } = one;
  const figures = reckoning.caseFigures(scenario, row);
  return {
    caseId: row.id,
    flowPlan: plan.id,
    agent,
    method,
    liquidMl: number(figures.liquidMl),
    takenUpMl: number(figures.takenUpMl),
    spilledMl: number(figures.spilledMl),
    leftMl: number(figures.leftMl),
    floorMl: number(figures.floorMl),
    constantDialMl: number(figures.constantDialMl),
    minutesToTarget: number(figures.minutesToTarget),
    minutesBelowTarget: number(figures.minutesBelowTarget),
    macHours: number(figures.macHours),
    meanFlowLPerMin: number(figures.meanFlowLPerMin),
    flowClasses: result.phases.map((phase) => phase.flowClass),
    oxygenL: number(figures.oxygenL),
    airL: number(figures.airL),
    nitrousOxideL: number(figures.nitrousOxideL),
    absorbentKg: number(figures.absorbentKg),
    co2eKg: number(figures.co2eKg),
    cost: money(figures.cost),
    warnings: [...result.warnings]
  };
}

function againstEstimate({
  figures,
  irrAllPercent,
  paybackFallsBelowAgain
}: AgainstReckoning): AgainstBaseline {
  return {
    yearlySaving: money(figures.yearlySaving),
    co2eAvoidedKg: number(figures.co2eAvoidedKg),
    investment: money(figures.investment),
    simplePaybackYears: number(figures.simplePaybackYears),
    discountedPaybackYears: number(figures.discountedPaybackYears),
    npv: money(figures.npv),
    irrPercent: number(figures.irrPercent),
    irrAllPercent: [...irrAllPercent],
    costPerTonneAvoided: moneyOrNull(figures.costPerTonneAvoided),
    equivalentAnnualCost: money(figures.equivalentAnnualCost),
    benefitCostRatio: number(figures.benefitCostRatio),
    totalCostOfOwnership: money(figures.totalCostOfOwnership),
    paybackFallsBelowAgain,
    years: figures.years.map((year) => ({
      year: year.year,
      investment: money(year.investment),
      savings: Object.fromEntries(costLineNames.map((line) => [line, money(year.savings[line])])) as Record<
        CostLine,
        string
      >,
      saving: money(year.saving),
      net: money(year.net),
      cumulative: money(year.cumulative),
      discounted: money(year.discounted),
      cumulativeDiscounted: money(year.cumulativeDiscounted)
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
