import { describe, expect, test } from 'vitest';
import { abatementSteps } from '#lib/calc/money/abatement.ts';
import { breakEven } from '#lib/calc/money/break-even.ts';
import { Decimal } from '#lib/calc/money/decimal.ts';
import { UnsolvableError, solve } from '#lib/calc/money/solve.ts';
import { turningInputs } from '#lib/calc/money/turning-inputs.ts';

const found = (of: (x: number) => number, low: number, high: number): { value: number; calls: number } => {
  let calls = 0;
  const solution = solve({ of: (x) => ((calls += 1), of(x)), low, high });
  if (solution.kind !== 'found') throw new Error(`It was ${solution.kind}.`);
  return { value: solution.value, calls };
};

describe('solve', () => {
  test.each([
    ['a line', (x: number) => 3 * x - 1, 0, 10, 1 / 3],
    ['a falling line', (x: number) => 5 - x, -100, 100, 5],
    ['a cubic', (x: number) => x ** 3 - 2, 0, 2, Math.cbrt(2)],
    ['a cosine', (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['a steep step', (x: number) => Math.tanh(1e4 * (x - 0.123)), 0, 1, 0.123],
    ['a flat root', (x: number) => (x - 0.3) ** 5, 0, 1, 0.3],
    ['a kink', (x: number) => (x < 2 ? x - 2 : 50 * (x - 2)), -7, 11, 2],
    ['a jump', (x: number) => (x < 4.2 ? -1 : 1), 0, 10, 4.2],
    ['the first of two', (x: number) => (x - 2) * (x - 8), 0, 10, 2]
  ])('%s', (_, of, low, high, root) => {
    const { value, calls } = found(of, low, high);
    expect(Math.abs(value - root)).toBeLessThanOrEqual(1e-9 * (high - low));
    expect(calls).toBeLessThan(80);
  });

  test('closes a smooth bracket in a dozen evaluations after the looks', () => {
    expect(found((x) => Math.exp(x) - 5, 0, 4).calls).toBeLessThanOrEqual(16 + 12);
  });

  test('takes a root at an end or on a look', () => {
    expect(found((x) => x, 0, 1).value).toBe(0);
    expect(found((x) => x - 1, 0, 1).value).toBe(1);
    expect(found((x) => x - 0.5, 0, 1).value).toBe(0.5);
  });

  test('says that there is none', () => {
    expect(solve({ of: (x) => x * x + 1, low: -1, high: 1 })).toEqual({ kind: 'always-positive' });
    expect(solve({ of: (x) => -x - 1, low: 0, high: 1 })).toEqual({ kind: 'always-negative' });
  });

  test('refuses an empty range and a function without a result', () => {
    expect(() => solve({ of: (x) => x, low: 2, high: 1 })).toThrow(UnsolvableError);
    expect(() => solve({ of: () => NaN, low: 0, high: 1 })).toThrow('At 0 there is no result');
  });
});

describe('break-even', () => {
  test('says from which value on it pays in time', () => {
    const more = breakEven({ of: (cases) => cases * 12 - 6000, low: 0, high: 2000 });
    expect(more).toMatchObject({ kind: 'found', pays: 'above' });
    expect(more.kind === 'found' && Math.abs(more.value - 500)).toBeLessThan(1e-5);
    expect(breakEven({ of: (price) => 6000 - price, low: 0, high: 9000 })).toMatchObject({
      kind: 'found',
      pays: 'below'
    });
  });

  test('says always, or never', () => {
    expect(breakEven({ of: () => 1, low: 0, high: 1 })).toEqual({ kind: 'always' });
    expect(breakEven({ of: () => -1, low: 0, high: 1 })).toEqual({ kind: 'never' });
  });

  test('says that there is nothing to pay back, where nothing is invested and nothing saved', () => {
    expect(breakEven({ of: () => 0, low: 0, high: 1 })).toEqual({ kind: 'nothing' });
  });

  test('at an end of the range', () => {
    expect(breakEven({ of: (x) => x, low: 0, high: 1 })).toEqual({ kind: 'found', value: 0, pays: 'above' });
    expect(breakEven({ of: (x) => -x, low: 0, high: 1 })).toEqual({ kind: 'found', value: 0, pays: 'below' });
  });
});

test('the inputs that turn the answer on their own, nearest turn first', () => {
  const now: Record<string, number> = { price: 100, cases: 50, idle: 1 };
  const of = (path: string, value: number): number => {
    const at = { ...now, [path]: value } as { price: number; cases: number; idle: number };
    return at.cases * 3 - at.price;
  };
  const turning = turningInputs(
    [
      { path: 'price', now: 100, low: 80, high: 200 },
      { path: 'cases', now: 50, low: 10, high: 90 },
      { path: 'idle', now: 1, low: 0, high: 2 }
    ],
    of
  );
  expect(turning.map(({ path }) => path)).toEqual(['cases', 'price']);
  expect(turning[0]?.turnsAt).toBeCloseTo(100 / 3, 6);
  expect(turning[0]?.shareOfWay).toBeCloseTo((50 - 100 / 3) / 40, 6);
  expect(turning[1]?.turnsAt).toBeCloseTo(150, 6);
});

test('an input of whole numbers turns at a whole number', () => {
  const turning = turningInputs([{ path: 'units', now: 4, low: 1, high: 9, whole: true }], (_, units) =>
    Number.isInteger(units) ? 19.5 - 3 * units : NaN
  );
  expect(turning).toEqual([
    { path: 'units', now: 4, low: 1, high: 9, whole: true, turnsAt: 7, shareOfWay: 3 / 5 }
  ]);
});

test('abatement steps lie side by side, the cheapest tonne first', () => {
  const option = (id: string, cost: number, tonnes: number) => ({
    id,
    costPerTonne: new Decimal(cost),
    tonnes
  });
  const steps = abatementSteps([
    option('dear', 90, 5),
    option('saves', -20, 10),
    option('worse', -99, -3),
    option('mid', 90, 7)
  ]);
  expect(steps.map(({ id, fromTonnes, toTonnes }) => [id, fromTonnes, toTonnes])).toEqual([
    ['saves', 0, 10],
    ['mid', 10, 17],
    ['dear', 17, 22]
  ]);
});
