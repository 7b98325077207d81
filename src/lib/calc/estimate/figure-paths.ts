import { caseQuantities } from '../case/case-result.ts';
import type { AgainstBaseline, Estimate } from '../estimate-types.ts';

/** Absorbed CO2 stands in no estimate; it is a step on the way to the absorbent. */
const caseFigures = [...caseQuantities.filter((quantity) => quantity !== 'co2AbsorbedL'), 'floorMl'];

const againstFigures = [
  'yearlySaving',
  'co2eAvoidedKg',
  'departmentSharePercent',
  'investment',
  'simplePaybackYears',
  'discountedPaybackYears',
  'npv',
  'irrPercent',
  'costPerTonneAvoided',
  'equivalentAnnualCost',
  'benefitCostRatio',
  'totalCostOfOwnership'
] as const satisfies readonly (keyof AgainstBaseline)[];

/**
 * Paths of all computed figures of an estimate, in its order, as `explain` takes them. A figure that is `null` because
 * there is none (no payback within the appraisal) is among them: its working says why. Left out are names, flags,
 * sentences, and `irrAllPercent`, whose entries all come from the one search that `irrPercent` shows.
 */
export function figurePaths(estimate: Estimate): string[] {
  return estimate.scenarios.flatMap(({ id, perYear, cases, againstBaseline, ...more }) => [
    ...leaves(`${id}.perYear`, perYear),
    ...cases.flatMap(({ caseId }) =>
      [...caseFigures, 'co2eKg', 'cost'].map((figure) => `${id}.cases.${caseId}.${figure}`)
    ),
    ...againstFigures
      // Without a footprint there is no share of it, and no working that says more.
      .filter((figure) => figure !== 'departmentSharePercent' || againstBaseline[figure] !== null)
      .map((figure) => `${id}.againstBaseline.${figure}`),
    ...againstBaseline.years.flatMap(({ year, ...figures }) =>
      leaves(`${id}.againstBaseline.years.${year}`, figures)
    ),
    ...more.monitoring.flatMap(({ rule, theatresMissing, cost }) =>
      leaves(`${id}.monitoring.${rule}`, { theatresMissing, cost })
    ),
    `${id}.monitoringGaps`,
    ...leaves(`${id}.vapourOnOwnPlan`, more.vapourOnOwnPlan)
  ]);
}

/** Paths of all numbers and amounts below a path. */
function leaves(path: string, value: unknown): string[] {
  if (value === null) return [];
  if (typeof value !== 'object') return [path];
  return Object.entries(value).flatMap(([key, below]) => leaves(`${path}.${key}`, below));
}
