import { caseQuantities } from '../case/case-result.ts';
import type {
  AgainstBaseline,
  CostOfWay,
  Estimate,
  LeverPart,
  LimitHeldAgainst,
  MoneyIncrement,
  ScenarioEstimate,
  StepFigures,
  TheatreAir,
  TonnesIncrement
} from '../estimate-types.ts';

/** Absorbed CO2 stands in no estimate; it is a step on the way to the absorbent. */
const caseFigures = [...caseQuantities.filter((quantity) => quantity !== 'co2AbsorbedL'), 'floorMl'];

const againstFigures = [
  'yearlySaving',
  'co2eAvoidedKg',
  'co2eAvoidedOverAppraisalKg',
  'departmentSharePercent',
  'investment',
  'simplePaybackYears',
  'discountedPaybackYears',
  'npv',
  'irrPercent',
  'costPerTonneAvoided',
  'equivalentAnnualCost',
  'benefitCostRatio',
  'totalCostOfOwnership',
  'worthAtEnd'
] as const satisfies readonly (keyof AgainstBaseline)[];

const wayFigures = ['presentValue', 'equivalentAnnualCost'] as const satisfies readonly (keyof CostOfWay)[];
const partFigures = ['yearlySaving', 'co2eAvoidedKg', 'npv'] as const satisfies readonly (keyof LeverPart)[];
const stepFigures = [
  ...partFigures,
  'investment',
  'simplePaybackYears',
  'discountedPaybackYears',
  'irrPercent'
] as const satisfies readonly (keyof StepFigures)[];
const moneyFigures = [
  'extraInvestment',
  'extraYearlySaving',
  'npv',
  'simplePaybackYears',
  'irrPercent'
] as const satisfies readonly (keyof MoneyIncrement)[];
const tonnesFigures = [
  'extraCost',
  'extraTonnes',
  'costPerTonne'
] as const satisfies readonly (keyof TonnesIncrement)[];

/**
 * Paths of all computed figures of an estimate, in its order, as `explain` takes them. A figure that is `null` because
 * there is none (no payback within the appraisal) is among them: its working says why. Left out are names, flags,
 * sentences, and `irrAllPercent`, whose entries all come from the one search that `irrPercent` shows.
 */
export function figurePaths(estimate: Estimate): string[] {
  const ofScenarios = estimate.scenarios.flatMap(({ id, perYear, cases, againstBaseline, ...more }) => [
    ...leaves(`${id}.perYear`, perYear),
    ...cases.flatMap(({ caseId }) =>
      [...caseFigures, 'co2eKg', 'cost'].map((figure) => `${id}.cases.${caseId}.${figure}`)
    ),
    ...ofRun(`${id}.againstBaseline`, againstBaseline),
    ...attributionPaths(id, more),
    ...more.waysToPay.flatMap(({ asEntered, bought, fees }, index) => [
      ...wayFigures.flatMap((figure) => [
        ...leaves(`${id}.waysToPay.${index}.asEntered`, { [figure]: asEntered[figure] }),
        ...leaves(`${id}.waysToPay.${index}.bought`, { [figure]: bought[figure] })
      ]),
      ...fees.flatMap(({ year: _, ...figures }, place) =>
        leaves(`${id}.waysToPay.${index}.fees.${place}`, figures)
      )
    ]),
    ...more.monitoring.flatMap(({ rule, theatresMissing, cost }) =>
      leaves(`${id}.monitoring.${rule}`, { theatresMissing, cost })
    ),
    `${id}.monitoringGaps`,
    ...leaves(`${id}.vapourOnOwnPlan`, more.vapourOnOwnPlan),
    ...leaves(`${id}.agentFate`, more.agentFate),
    ...leaves(`${id}.agentFateByGroup`, more.agentFateByGroup),
    ...more.ledger.flatMap(({ activity, factor, co2eKg }, index) =>
      leaves(`${id}.ledger.${index}`, { activity, factor, co2eKg })
    ),
    ...leaves(`${id}.intensity`, more.intensity),
    ...theatreAirPaths(`${id}.theatreAir`, more.theatreAir)
  ]);
  return [
    ...ofScenarios,
    ...reconciliationPaths(estimate.reconciliation),
    ...incrementPaths(estimate.increments)
  ];
}

function reconciliationPaths({ agents, nitrousOxide }: Estimate['reconciliation']): string[] {
  return [
    ...Object.entries(agents).flatMap(([agent, { purchasedMl, estimatedMl, estimateOverPurchase }]) =>
      leaves(`reconciliation.agents.${agent}`, { purchasedMl, estimatedMl, estimateOverPurchase })
    ),
    ...leaves('reconciliation.nitrousOxide', nitrousOxide)
  ];
}

function ofRun(path: string, run: AgainstBaseline): string[] {
  return [
    ...againstFigures
      // Without a footprint there is no share of it, and no working that says more.
      .filter((figure) => figure !== 'departmentSharePercent' || run[figure] !== null)
      .map((figure) => `${path}.${figure}`),
    ...leaves(`${path}.shadow`, run.shadow),
    ...run.aheadForATime.flatMap((_, index) =>
      ['fromYears', 'untilYears'].map((end) => `${path}.aheadForATime.${index}.${end}`)
    ),
    ...run.years.flatMap(({ year, ...figures }) => leaves(`${path}.years.${year}`, figures)),
    ...run.budget.flatMap(({ year, ...figures }) => leaves(`${path}.budget.${year}`, figures)),
    ...(run.charges === null
      ? []
      : [
          `${path}.charges.npvAfterTax`,
          ...run.charges.years.flatMap(({ year, ...figures }) =>
            leaves(`${path}.charges.years.${year}`, figures)
          )
        ])
  ];
}

function theatreAirPaths(path: string, { rooms, recovery }: TheatreAir): string[] {
  const held = (at: string, limits: readonly LimitHeldAgainst[]) =>
    limits.flatMap(({ mgPerM3, sharePercent }, index) =>
      leaves(`${at}.heldAgainst.${index}`, { mgPerM3, sharePercent })
    );
  return [
    ...rooms.flatMap(({ lines }, room) =>
      lines.flatMap(({ escapingLPerMin, steadyPpm, endOfCasePpm, meanPpm, heldAgainst, course }, line) => {
        const at = `${path}.rooms.${room}.lines.${line}`;
        return [
          ...leaves(at, { escapingLPerMin, steadyPpm, endOfCasePpm, meanPpm }),
          ...held(at, heldAgainst),
          ...course.map((_, point) => `${at}.course.${point}.ppm`)
        ];
      })
    ),
    ...recovery.lines.flatMap(({ meanPpm, heldAgainst }, line) => {
      const at = `${path}.recovery.lines.${line}`;
      return [...leaves(at, { meanPpm }), ...held(at, heldAgainst)];
    })
  ];
}

function attributionPaths(
  id: string,
  of: Pick<ScenarioEstimate, 'attribution' | 'ladder' | 'withoutMachine' | 'machineAdds' | 'againstLawful'>
): string[] {
  const named = (path: string, figures: readonly string[]) => figures.map((figure) => `${path}.${figure}`);
  return [
    ...(of.attribution ?? []).flatMap(({ lever }) => named(`${id}.attribution.${lever}`, partFigures)),
    ...(of.ladder ?? []).flatMap(({ lever }) =>
      named(`${id}.ladder.${lever}`, [...partFigures, 'investment'])
    ),
    ...(of.withoutMachine === null ? [] : ofRun(`${id}.withoutMachine`, of.withoutMachine)),
    ...(of.machineAdds === null ? [] : named(`${id}.machineAdds`, stepFigures)),
    ...(of.againstLawful === null ? [] : named(`${id}.againstLawful`, stepFigures))
  ];
}

function incrementPaths(increments: Estimate['increments']): string[] {
  if (increments === null) return [];
  const { money, tonnes } = increments;
  return [
    ...money.flatMap(({ option, against }) =>
      ['presentValueOfOutlay', ...(against === null ? [] : moneyFigures)].map(
        (figure) => `increments.money.${option}.${figure}`
      )
    ),
    ...tonnes.flatMap(({ option, against, costPerTonne }) =>
      ['netPresentCost', 'tonnes', ...(against === null ? [] : tonnesFigures)]
        // Where no further tonne is avoided, there is no ratio and no working that says more.
        .filter((figure) => figure !== 'costPerTonne' || costPerTonne !== null)
        .map((figure) => `increments.tonnes.${option}.${figure}`)
    )
  ];
}

/** Paths of all numbers and amounts below a path. */
function leaves(path: string, value: unknown): string[] {
  if (value === null) return [];
  if (typeof value !== 'object') return [path];
  return Object.entries(value).flatMap(([key, below]) => leaves(`${path}.${key}`, below));
}
