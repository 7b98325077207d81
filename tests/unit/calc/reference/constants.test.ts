import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { constant, IncompleteConstantError } from '#lib/calc/reference/constant.ts';
import type { Constant, Source } from '#lib/calc/reference/constant.ts';
import { derivations } from '#lib/calc/reference/derivations.ts';
import { plausibleRanges } from '#lib/calc/reference/plausible-ranges.ts';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { take } from '#lib/calc/reference/reference-set.ts';

const evidences = ['read', 'second-hand', 'memory', 'computed'];

function expectFullSource(source: Source): void {
  expect(source.title.trim()).not.toBe('');
  if (source.title === 'common practice, no source') return;
  const where = [source.locator, source.doi, source.year].filter((part) => part !== undefined);
  expect(where.length).toBeGreaterThan(0);
  if (source.doi !== undefined) expect(source.doi).toMatch(/^10\.\d{4,}\/\S+$/);
  if (source.year !== undefined) expect(source.year).toSatisfy((year: number) => year > 1900 && year < 2027);
}

/** The numbers in a printed value, e.g. 1.520 and 1.525 in `1.520–1.525`. */
const numbersIn = (printed: string): number[] =>
  [...printed.replaceAll('−', '-').matchAll(/-?\d+(\.\d+)?/g)].map(([text]) => Number(text));

for (const set of referenceSets)
  describe(`every constant of set ${set.id}`, () => {
    const all = [...set.constants.values()];
    it.each(all.map((record): [string, Constant] => [record.id, record]))('%s is complete', (id, record) => {
      expect(set.constants.get(id)).toBe(record);
      expect(id).toMatch(/^[A-Za-z0-9]+([.-][A-Za-z0-9]+)*$/);
      expect(record.name).not.toBe('');
      expect(record.unit).not.toBe('');
      expect(evidences).toContain(record.evidence);
      expectFullSource(record.source);
      const plausible = plausibleRanges[record.kind];
      if (plausible === undefined) throw new Error(`no plausible range for the kind “${record.kind}”`);
      for (const { value } of [record, ...record.alternatives]) {
        expect(value).toBeGreaterThanOrEqual(plausible.low);
        expect(value).toBeLessThanOrEqual(plausible.high);
      }
      for (const alternative of record.alternatives) {
        expectFullSource(alternative.source);
        expect(alternative.whyNot.trim()).toMatch(/\.$/);
      }
    });

    it('prints what it holds: the value lies in the printed range, or rounds to the printed number', () => {
      for (const record of all) {
        const printed = numbersIn(record.printed);
        const decimals = /\.(\d+)/.exec(record.printed)?.[1]?.length ?? 0;
        const halfOfLastPlace = 0.5 * 10 ** -decimals;
        const near = printed.some((number) => Math.abs(number - record.value) <= halfOfLastPlace + 1e-12);
        const within = record.value >= Math.min(...printed) && record.value <= Math.max(...printed);
        expect([record.id, near || within]).toEqual([record.id, true]);
      }
    });

    it('has one unit per kind, so that a range means the same for all of it', () => {
      const units = new Map<string, Set<string>>();
      for (const { kind, unit } of all) units.set(kind, (units.get(kind) ?? new Set()).add(unit));
      const mixed = [...units]
        .filter(([kind, of]) => of.size > 1 && kind !== 'carbon-value')
        .map(([kind]) => kind);
      expect(mixed).toEqual([]);
    });

    it('says in a sentence why each kind is bounded, and bounds no kind that is not there', () => {
      const kinds = new Set(
        referenceSets.flatMap(({ constants }) => [...constants.values()]).map(({ kind }) => kind)
      );
      for (const [kind, { low, high, because }] of Object.entries(plausibleRanges)) {
        expect(kinds).toContain(kind);
        expect(low).toBeLessThanOrEqual(high);
        expect(because).toMatch(/^[A-Z].*\.$/);
      }
    });
  });

describe('computed constants', () => {
  const set = referenceSet2026;
  it('each have a derivation, and each derivation a constant', () => {
    const computed = [...set.constants.values()].filter(({ evidence }) => evidence === 'computed');
    expect(computed.map(({ id }) => id).sort()).toEqual(derivations.map(({ yields }) => yields).sort());
  });

  it.each(derivations.map((derivation) => [derivation.yields, derivation] as const))(
    '%s follows from its parents by the expression that it shows',
    (id, { from, expression }) => {
      const record = take(set, id);
      expect(record.parents).toEqual(Object.values(from));
      expect(record.derivation).toContain(expression);
      const scope = Object.fromEntries(
        Object.entries(from).map(([symbol, parent]) => [symbol, take(set, parent).value])
      );
      expect(evaluate(expression, scope)).toBeCloseTo(record.value, 10);
    }
  );

  it('give the reference adult of the published organ tables', () => {
    const value = (id: string): number => take(set, `body.reference-adult.${id}`).value;
    expect(value('vessel-rich.volume')).toBeCloseTo(4.98, 2);
    expect(value('muscle.volume')).toBeCloseTo(29.2, 1);
    expect(value('fat.volume')).toBeCloseTo(14.6, 1);
    expect(value('vessel-rich.share')).toBeCloseTo(66.4, 1);
    expect(value('muscle.share')).toBeCloseTo(18.75, 1);
    expect(value('fat.share')).toBeCloseTo(4.6, 1);
  });

  it('leave some cardiac output for the direct shunt in every body model', () => {
    for (const body of ['eger', 'reference-adult', 'two-fat']) {
      const shares = [...set.constants.values()].filter(
        ({ id, kind }) => kind === 'compartment-share' && id.startsWith(`body.${body}.`)
      );
      expect(shares.length).toBeGreaterThanOrEqual(3);
      expect(shares.reduce((sum, { value }) => sum + value, 0)).toBeLessThan(100);
    }
  });
});

describe('constant()', () => {
  const complete = {
    id: 'x',
    name: 'X',
    value: 1,
    printed: '1',
    unit: 'L',
    source: { title: 'A table', locator: 'p. 1' },
    evidence: 'read',
    kind: 'lung-volume'
  } as const;

  it.each([
    ['a finite value', { value: Number.NaN }],
    ['a unit', { unit: '' }],
    ['a source with a title', { source: { title: ' ', year: 2000 } }],
    ['a source that says where', { source: { title: 'A book' } }],
    ['parents, where it is computed', { evidence: 'computed' as const }],
    [
      'a reason to prefer it, where there are alternatives',
      {
        alternatives: [
          { value: 2, source: { title: 'B', year: 2000 }, evidence: 'read' as const, whyNot: 'Older.' }
        ]
      }
    ]
  ])('builds nothing without %s', (_, change) => {
    expect(() => constant({ ...complete, ...change })).toThrow(IncompleteConstantError);
  });

  it('takes common practice as a source without a locator', () => {
    const record = constant({ ...complete, source: { title: 'common practice, no source' } });
    expect(record.alternatives).toEqual([]);
  });
});
