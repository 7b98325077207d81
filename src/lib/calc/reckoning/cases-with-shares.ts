/** The cases that are done in theatres where one machine stands, each with its share of its row's cases. */
import type { CaseUse } from '../case/case-result.ts';
import type { ShareOfCases } from '../fleet/share-of-cases.ts';
import type { Standing } from '../fleet/standing.ts';
import type { Scenario } from '../input.ts';
import { kept, once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { partByTechnique, partOfCases, restOfCases } from '../year/consumption.ts';
import type { CaseReckoning, ScenarioCases } from './scenario-cases.ts';

export interface CaseWithShare<C extends CaseUse> {
  readonly one: CaseReckoning<C>;
  /** Share of its row's cases that is done there in this way. */
  readonly sharePercent: Quantity;
}

export interface CasesWithShares<C extends CaseUse> {
  readonly following: readonly CaseWithShare<C>[];
  /** Those that do not follow, where they are done in another way than those that do. */
  readonly rest: readonly CaseWithShare<C>[];
}

type ShareThere = Exclude<ShareOfCases, 'none'>;

export function casesWithShares<C extends CaseUse>(
  r: Reckoner,
  cases: ScenarioCases<C>,
  { scenario, standing }: { readonly scenario: Scenario; readonly standing: Standing }
): CasesWithShares<C> {
  const everyCase = once(() =>
    r.assumption(100, '%', 'Every case of a group that is done in one way alone.')
  );
  const adopted = standing.adoptionPercent;
  const notAdopted = once(() => r.apply(restOfCases, { adoptionPercent: adopted }));
  const partOf = (there: ShareThere, sharePercent: Quantity): Quantity =>
    there === 'all' ? sharePercent : r.apply(partOfCases, { therePercent: there, sharePercent });
  const followingOf = kept((there: ShareThere) => partOf(there, adopted));
  const restOf = kept((there: ShareThere) => partOf(there, notAdopted()));
  const rows = cases.rowsOf(scenario).flatMap((row) => {
    const there = cases.shareIn(standing, row);
    return there === 'none' ? [] : [{ there, ...cases.casesIn(scenario, row, standing) }];
  });
  return {
    following: rows.flatMap(({ there, following, rest }) => {
      const sharePercent = rest !== null ? followingOf(there) : there === 'all' ? everyCase() : there;
      return following.map(({ one, percent }) => ({
        one,
        sharePercent:
          percent === null
            ? sharePercent
            : r.apply(partByTechnique, { sharePercent, techniquePercent: percent })
      }));
    }),
    rest: rows.flatMap(({ there, rest }) =>
      rest === null ? [] : [{ one: rest, sharePercent: restOf(there) }]
    )
  };
}
