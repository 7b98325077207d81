import type { CaseSources } from '../case/conditions.ts';
import { baselineOf } from '../baseline-of.ts';
import { sharesOfCases } from '../fleet/share-of-cases.ts';
import type { Standing } from '../fleet/standing.ts';
import { fleetOf } from '../fleet/standing.ts';
import type { CaseRow, EstimateInput, Scenario } from '../input.ts';
import { plain } from '../working/plain.ts';
import { sourcesOfCases } from './case-sources.ts';
import { ownPlace } from './scenario-cases.ts';
import { techniqueShares } from '../fleet/technique-shares.ts';

/**
 * What a case of a row is made of that follows the scenario, in the theatres that its machine comes to: one that keeps
 * the row's technique, where any does.
 */
export function ownCaseSources(input: EstimateInput, scenario: Scenario, row: CaseRow): CaseSources {
  const today = baselineOf(input);
  const { following, sourcesOf } = sourcesOfCases(input, today);
  const shareIn = sharesOfCases<Standing>(plain, input.theatreGroups);
  const place = ownPlace(
    fleetOf(plain, input, today).periods(scenario),
    (standing) => shareIn(standing, row) !== 'none'
  );
  const [{ technique }] = techniqueShares(plain, scenario, row);
  return sourcesOf(following(scenario, row, place, technique));
}
