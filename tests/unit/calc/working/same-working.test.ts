import { expect, test } from 'vitest';
import { formula } from '#lib/calc/working/formula.ts';
import type { Quantity } from '#lib/calc/working/reckoner.ts';
import { recorder as r, workingOf } from '#lib/calc/working/recorder.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { differenceFinder } from './same-working.ts';

const [constant] = [...newestReferenceSet.constants.values()];
const another = { ...constant!, id: 'test.other' };
const scaled = (id: string) =>
  formula<{ of: readonly number[]; by: number }>({
    id,
    yields: 'Scaled sum',
    words: 'The sum is scaled.',
    expression: 'sum(a) * k',
    inputs: {
      of: { symbol: 'a', unit: 'L', words: 'parts' },
      by: { symbol: 'k', unit: '1', words: 'factor' }
    },
    unit: 'L',
    source: 'definition',
    compute: ({ of, by }) => of.reduce((a, b) => a + b, 0) * by
  });

/** A working of each kind of step and leaf, two of them shared by several places. */
function sample({
  id = 'test.scaled',
  tolerance = 1e-9,
  path = 'minutes',
  cell = 0,
  unit = '1',
  words = 'Half of it.',
  published = constant!,
  standsIn = constant!,
  emptyCell = 'flow',
  parts = 2
} = {}): Working {
  const leaf = r.cell(cell, 'L', 'caseMix', path);
  const by = r.result(2, { half: r.assumption(0.5, unit, words), published: r.constant(published) }, () => ({
    id: 'test.doubled',
    yields: 'Twice',
    words: 'By trial.',
    unit: '1',
    source: 'definition',
    report: [{ words: 'tolerance', value: tolerance, unit: '1' }]
  }));
  const shared = r.apply(scaled('test.shared'), { of: [leaf, r.fallback(standsIn, 'plans', emptyCell)], by });
  const of: readonly Quantity[] = Array.from({ length: parts }, () => shared);
  return workingOf(r.apply(scaled(id), { of, by }));
}

test('workings made apart that say the same do not differ', () => {
  expect(differenceFinder()(sample(), sample())).toBeNull();
});

test.each([
  ['a formula', { id: 'test.other' }, 'root: ['],
  ['how a method ran', { tolerance: 1e-8 }, 'root › of[0] › by: ['],
  ['the path of a cell', { path: 'weightKg' }, 'root › of[0] › of[0]: ['],
  ['the sign of a zero', { cell: -0 }, 'root › of[0] › of[0]: ['],
  ['a unit', { unit: 'L' }, 'root › of[0] › by › half: ['],
  ['what is assumed', { words: 'All of it.' }, 'root › of[0] › by › half: ['],
  ['a constant', { published: another }, 'root › of[0] › by › published: ['],
  ['a default', { standsIn: another }, 'root › of[0] › of[1]: ['],
  ['the cell that a default stands in for', { emptyCell: 'delay' }, 'root › of[0] › of[1]: ['],
  ['how long a list is', { parts: 3 }, 'root: [']
])('%s that is another is found where it stands', (_, change, place) => {
  expect(differenceFinder()(sample(change), sample())?.slice(0, place.length)).toBe(place);
});

test('an input that is missing is named', () => {
  const whole = sample() as Extract<Working, { kind: 'step' }>;
  const { of } = whole.inputs;
  expect(differenceFinder()({ ...whole, inputs: { of: of! } }, whole)).toBe(
    'root: made from of[2], not from of[2], by'
  );
});

test('one leaf of a whole year that is another is found', () => {
  const path = 'today.perYear.co2eKg.total';
  const input = coreInput(demoWorkbook());
  const [wanted, found] = [explainer(input)(path), explainer(input)(path)];
  const difference = differenceFinder();
  expect(difference(found, wanted)).toBeNull();
  let deepest = found;
  const names: string[] = [];
  while ('inputs' in deepest) {
    const [[name, input]] = Object.entries(deepest.inputs) as [[string, Working | readonly Working[]]];
    names.push(Array.isArray(input) ? `${name}[0]` : name);
    deepest = (Array.isArray(input) ? input[0] : input) as Working;
  }
  expect(names.length).toBeGreaterThan(3);
  (deepest as { unit: string }).unit = 'furlong';
  expect(differenceFinder()(found, wanted)).toContain(`root › ${names.join(' › ')}: [`);
  expect(differenceFinder()(found, wanted)).toContain('furlong');
});
