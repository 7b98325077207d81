/** By which technique the cases of a row are done that follow a scenario: its own, and those that some of them change to. */
import type { CaseRow, Scenario, Technique } from '../input.ts';
import { ownEntry } from '../own-entry.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

type Changes = Pick<Scenario, 'id' | 'intravenousPercentByCase' | 'regionalPercentByCase'>;
type Row = Pick<CaseRow, 'id' | 'technique'>;

/** Cases of a row that are done by one technique. */
export interface TechniqueShare {
  readonly technique: Technique;
  /** Share of the row's cases that follow; null: all of them. */
  readonly percent: Quantity | null;
}

/** Share of the cases that keep the technique of their row. */
export const shareOfOwnTechnique = formula<{ changed: readonly number[] }>({
  id: 'fleet.share-of-own-technique',
  yields: 'Share of the cases that keep their technique',
  words: '100 % less the shares that become intravenous or regional; never below 0.',
  expression: 'max(0, 100 - sum(c))',
  inputs: { changed: { symbol: 'c', unit: '%', words: 'share that changes to another technique' } },
  unit: '%',
  source: 'definition',
  compute: ({ changed }) => Math.max(0, 100 - changed.reduce((sum, share) => sum + share, 0))
});

/** The field in which a scenario says how many change to a technique. Nothing changes to a volatile agent. */
const fieldOf = { intravenous: 'intravenousPercentByCase', regional: 'regionalPercentByCase' } as const;

const none: readonly { readonly technique: 'intravenous' | 'regional'; readonly percent: number }[] = [];

/** The shares that change to another technique, each above 0; none where the scenario changes nothing. */
function changesOf(scenario: Changes, row: Row): typeof none {
  // Most change none, and this is asked for each group of each run.
  if (
    !Object.hasOwn(scenario.intravenousPercentByCase, row.id) &&
    !Object.hasOwn(scenario.regionalPercentByCase, row.id)
  )
    return none;
  return (['intravenous', 'regional'] as const).flatMap((technique) => {
    const percent = ownEntry(scenario[fieldOf[technique]], row.id) ?? 0;
    return percent > 0 && technique !== row.technique ? [{ technique, percent }] : [];
  });
}

export const changesTechnique = (scenario: Changes, row: Row): boolean => changesOf(scenario, row).length > 0;

/**
 * The shares of a row's cases that follow a scenario, by technique, the row's own first: 100 % less what changes, then
 * what becomes intravenous, then what becomes regional. A technique by which none is done is left out.
 */
export function techniqueShares(
  r: Reckoner,
  scenario: Changes,
  row: Row
): readonly [TechniqueShare, ...TechniqueShare[]] {
  const changes = changesOf(scenario, row);
  if (changes.length === 0) return [{ technique: row.technique, percent: null }];
  const changed = changes.map(({ technique, percent }) => ({
    technique,
    percent: r.cell(percent, '%', 'scenarios', scenario.id, fieldOf[technique], row.id)
  }));
  const kept = r.apply(shareOfOwnTechnique, { changed: changed.map(({ percent }) => percent) });
  const own = r.value(kept) > 0 ? [{ technique: row.technique, percent: kept }] : [];
  return [...own, ...changed] as unknown as [TechniqueShare, ...TechniqueShare[]];
}
