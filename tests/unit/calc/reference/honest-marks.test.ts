/**
 * What the published data say of themselves: “as printed” where it was read, “from memory” where it was, “shown beside”
 * where something is, and one work to a citation.
 */
import { describe, expect, test } from 'vitest';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import type { Evidence } from '#lib/calc/reference/constant.ts';
import { publishedSpreads } from '#lib/calc/reference/published-spreads.ts';
import { newestReferenceSet, referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { statements } from '#lib/calc/reference/statements.ts';
import { citation } from '#lib/calc/working/citation.ts';

interface Told {
  readonly where: string;
  readonly evidence: Evidence;
  readonly source: string;
  readonly texts: readonly string[];
}
const constants = referenceSets.flatMap((set) =>
  [...set.constants.values()].map((record) => ({ set, record }))
);
const ofConstants: readonly (Told & { readonly set: string })[] = constants.flatMap(({ set, record }) => [
  {
    set: set.id,
    where: `${record.id} of ${set.id}`,
    evidence: record.evidence,
    source: citation(record.source),
    texts: [
      record.name,
      record.printed,
      record.conditions,
      record.preferredBecause ?? '',
      record.unusedBecause ?? ''
    ]
  },
  ...record.alternatives.map(({ evidence, source, printed, whyNot }) => ({
    set: set.id,
    where: `another ${record.id} of ${set.id}`,
    evidence,
    source: citation(source),
    texts: [printed ?? '', whyNot]
  }))
]);
const ofOthers: readonly Told[] = [
  ...statements.map(({ id, evidence, source, statement }) => ({
    where: id,
    evidence,
    source: citation(source),
    texts: [statement]
  })),
  ...publishedSpreads.map(({ constant, evidence, source, words }) => ({
    where: `spread of ${constant}`,
    evidence,
    source: citation(source),
    texts: [words]
  })),
  ...publishedChecks(newestReferenceSet).map((check) => ({
    where: check.id,
    evidence: check.evidence,
    source: check.source,
    texts: [check.given, check.spread, check.tolerance, check.toleranceReason, check.remark]
  }))
];
const all = [...ofConstants, ...ofOthers];
const where = (told: readonly Told[]): readonly string[] => told.map((each) => each.where);

describe('what is said of how a figure is known', () => {
  test('“as printed” stands only where it was read', () => {
    const printed = all.filter(({ texts }) => texts.some((text) => /\bas printed\b/i.test(text)));
    expect(printed.length).toBeGreaterThan(0);
    expect(where(printed.filter(({ evidence }) => evidence !== 'read'))).toEqual([]);
  });

  test('“from memory” and “as recalled” stand only where it was, or name what of a citation was', () => {
    const recalled = all.filter(({ texts, source }) =>
      [...texts, source].some((text) =>
        /from memory|as recalled/i.test(text.replace(/\b(citation|formula|assumption) from memory\b/g, ''))
      )
    );
    expect(recalled.length).toBeGreaterThan(0);
    expect(where(recalled.filter(({ evidence }) => evidence !== 'memory'))).toEqual([]);
  });

  test('what only quotes its source is marked as quoted', () => {
    const quoting = all.filter(({ source }) => /as quoted (by|in)|as reproduced in/i.test(source));
    expect(quoting.length).toBeGreaterThan(0);
    expect(where(quoting.filter(({ evidence }) => evidence === 'read'))).toEqual([]);
  });
});

describe('what is said to be shown', () => {
  const claims = constants.filter(({ record }) =>
    /shown as a guide beside/i.test(record.unusedBecause ?? '')
  );

  test('as a guide beside a cell has its cell', () => {
    expect(claims.length).toBeGreaterThan(0);
    expect(
      claims.filter(({ record }) => record.guideFor === undefined).map(({ record }) => record.id)
    ).toEqual([]);
  });

  test('and what has a cell says so', () => {
    const silent = constants.filter(
      ({ record }) =>
        record.guideFor !== undefined && !/shown as a guide beside/i.test(record.unusedBecause ?? '')
    );
    expect(silent.map(({ record }) => record.id)).toEqual([]);
  });

  test('beside, below or above, or is to be seen elsewhere: nothing else is said so in the data', () => {
    const elsewhere = all.filter(({ texts }) =>
      texts.some((text) => /\b(shown|stands?|given) (beside|below|above)\b|\bsee (the|“|below)/i.test(text))
    );
    expect(where(elsewhere)).toEqual([]);
  });
});

describe('a citation', () => {
  /** Year, volume and page of an article; a doi names the work at hand once more. */
  const works = (source: string): number =>
    new Set([...source.matchAll(/\b(?:19|20)\d\d;\d+(?:\(\w+\))?:\w+/g)].map(([work]) => work)).size;
  const dois = (source: string): number => (source.match(/\bdoi\b/g) ?? []).length;
  const several = (told: readonly Told[]) =>
    told.filter(
      ({ source }) => works(source) > 1 || dois(source) > 1 || /\band an article in\b/.test(source)
    );

  test('names one work', () => {
    expect(where(several(ofOthers))).toEqual([]);
    expect(where(several(ofConstants.filter(({ set }) => set === newestReferenceSet.id)))).toEqual([]);
  });

  test('of two works is left only in sets that are closed, and in those only the articles of 2012', () => {
    expect(new Set(several(ofConstants).map(({ source }) => source.slice(0, 20)))).toEqual(
      new Set(['Sulbaek Andersen MP '])
    );
  });
});
