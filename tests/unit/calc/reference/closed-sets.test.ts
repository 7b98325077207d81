/** A published reference set is closed: a workbook names the set it was made with, and keeps its answer by it. */
import { describe, expect, it } from 'vitest';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { setDigest } from '../../../fixtures/set-digest.ts';

/** What each set was when it was published. An entry is added with its set, and never changed. */
const published: Readonly<Record<string, string>> = {
  '2026-1': 'a564dfe9bbcbbda51fd4997fc20199f2c8d502c7e3576d8f7a9a6b0ef1e3807e',
  '2026-2': 'f48b27d8f97665336de1bd0a35ecdb66a2424245477e3ea19dbad07a92de95fb',
  '2026-3': '205f89c9aa8ce9b3142afd02d87357ba3712ec02afff9a219f09914c0d89a1e5'
};

const closed = (id: string): string =>
  `Reference set ${id} is closed: workbooks name it, and its figures must stay what they were. Take the change back ` +
  `here and put it into the next set: nextSet(base, { id, date, records }) in calc/reference/next-set.ts makes one out ` +
  `of this, with what is derived computed anew. It joins calc/reference/reference-sets.ts, and its digest this test.`;
const isNew = (id: string, digest: string): string =>
  `Reference set ${id} has no digest yet. Once its records are final, add '${id}': '${digest}' to this test; from then ` +
  `on the set is closed.`;

describe('every published reference set', () => {
  it.each(referenceSets.map((set): [string, ReferenceSet] => [set.id, set]))(
    '%s is closed, and holds what it held when it was published',
    (id, set) => {
      const digest = setDigest(set);
      expect(published, isNew(id, digest)).toHaveProperty([id]);
      expect(digest, closed(id)).toBe(published[id]);
    }
  );

  it('is still offered, as workbooks may name it', () => {
    const offered = referenceSets.map(({ id }) => id);
    expect(Object.keys(published).filter((id) => !offered.includes(id))).toEqual([]);
  });

  it('has an id of its own, and stands after those of earlier dates', () => {
    expect(new Set(referenceSets.map(({ id }) => id)).size).toBe(referenceSets.length);
    const dates = referenceSets.map(({ date }) => date);
    expect(dates).toEqual([...dates].sort());
  });
});

describe('the digest of a set', () => {
  const first = take(referenceSet2026, 'gas-constant');
  const computed = take(referenceSet2026, 'oxygen.co2e');
  const withRecords = (...records: readonly object[]): ReferenceSet =>
    ({ ...referenceSet2026, constants: new Map(records.map((record, index) => [index, record])) }) as never;
  const digest = setDigest(withRecords(first, computed));

  it.each<[string, ReferenceSet]>([
    [
      'another value in the last bit',
      withRecords({ ...first, value: first.value * (1 + 2 ** -52) }, computed)
    ],
    ['another computed value', withRecords(first, { ...computed, value: computed.value * (1 + 1e-11) })],
    ['another unit', withRecords({ ...first, unit: 'x' }, computed)],
    ['another source', withRecords({ ...first, source: { ...first.source, title: 'x' } }, computed)],
    ['another evidence', withRecords({ ...first, evidence: 'x' }, computed)],
    [
      'another value beside it',
      withRecords({ ...first, alternatives: [...first.alternatives, { value: 1 }] }, computed)
    ],
    ['a record less', withRecords(first)],
    ['another id of the set', { ...withRecords(first, computed), id: 'x' }],
    ['another date of the set', { ...withRecords(first, computed), date: 'x' }]
  ])('is another for %s', (_, set) => {
    expect(setDigest(set)).not.toBe(digest);
  });

  it.each<[string, ReferenceSet]>([
    ['records in another order', withRecords(computed, first)],
    [
      'what a record holds in another order',
      withRecords(Object.fromEntries(Object.entries(first).reverse()), computed)
    ],
    ['the last bit of a power', withRecords(first, { ...computed, value: computed.value * (1 + 2 ** -52) })],
    ['why the program does not use a record', withRecords({ ...first, unusedBecause: 'x' }, computed)]
  ])('is the same for %s', (_, set) => {
    expect(setDigest(set)).toBe(digest);
  });
});
