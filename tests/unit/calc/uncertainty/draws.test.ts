import { describe, expect, test } from 'vitest';
import { UncertainInputError, layOutDraws } from '#lib/calc/uncertainty/draws.ts';
import type { DrawPlan, UncertainInput } from '#lib/calc/uncertainty/draws.ts';
import { latinShares } from '#lib/calc/uncertainty/latin-hypercube.ts';
import { buffersOf, joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { swings, widestFirst, widthOfSwing, plainFigures } from '#lib/calc/uncertainty/swings.ts';

const plan: DrawPlan = { draws: 1000, seed: 5, shape: 'pert' };
const range = (path: string, low: number, mode: number, high: number, together?: string): UncertainInput =>
  together === undefined ? { path, low, mode, high } : { path, low, mode, high, together };
const column = (inputs: UncertainInput[], index: number, of: DrawPlan = plan): number[] => {
  const draws = layOutDraws(inputs, of);
  return Array.from({ length: draws.count }, (_, draw) => draws.valuesOf(draw)[index] as number);
};
const correlation = (a: readonly number[], b: readonly number[]): number => {
  const mean = (list: readonly number[]): number => list.reduce((sum, x) => sum + x, 0) / list.length;
  const [ma, mb] = [mean(a), mean(b)];
  const product = (x: readonly number[], mx: number, y: readonly number[], my: number): number =>
    x.reduce((sum, one, k) => sum + (one - mx) * ((y[k] as number) - my), 0);
  return product(a, ma, b, mb) / Math.sqrt(product(a, ma, a, ma) * product(b, mb, b, mb));
};

describe('Latin hypercube', () => {
  test('has one share in every equal part, in an order of its own for each input', () => {
    const orders = [0, 1, 2].map((dimension) => {
      const shares = latinShares({ seed: 1, draws: 500, dimension });
      const parts = Array.from(shares, (share) => Math.floor(share * 500));
      expect([...parts].sort((a, b) => a - b)).toEqual(Array.from({ length: 500 }, (_, k) => k));
      return parts;
    });
    expect(Math.abs(correlation(orders[0] as number[], orders[1] as number[]))).toBeLessThan(
      4 / Math.sqrt(500)
    );
    expect(Math.abs(correlation(orders[1] as number[], orders[2] as number[]))).toBeLessThan(
      4 / Math.sqrt(500)
    );
  });

  test('depends on the seed', () => {
    const of = (seed: number): string => latinShares({ seed, draws: 20, dimension: 0 }).join();
    expect(of(1)).toBe(of(1));
    expect(of(1)).not.toBe(of(2));
  });
});

describe('draws', () => {
  test('stay within their ranges, and give the entered value where there is no width', () => {
    const values = column([range('a', 60, 75, 95)], 0);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(60);
    expect(Math.max(...values)).toBeLessThanOrEqual(95);
    expect(new Set(column([range('a', 7.7, 7.7, 7.7)], 0))).toEqual(new Set([7.7]));
  });

  test('of inputs that vary together rise and fall together; of others do not', () => {
    const inputs = [range('a', 0, 1, 4, 'minutes'), range('b', 10, 40, 50, 'minutes'), range('c', 0, 1, 4)];
    const [a, b, c] = [0, 1, 2].map((index) => column(inputs, index)) as [number[], number[], number[]];
    const order = (list: number[]): number[] =>
      list.map((_, k) => k).sort((x, y) => (list[x] as number) - (list[y] as number));
    expect(order(a)).toEqual(order(b));
    expect(Math.abs(correlation(a, c))).toBeLessThan(4 / Math.sqrt(1000));
  });

  test('of a choice take each possibility equally often', () => {
    const values = column([{ path: 'model', choices: 3, mode: 0 }], 0, { ...plan, draws: 999 });
    expect([0, 1, 2].map((choice) => values.filter((value) => value === choice).length)).toEqual([
      333, 333, 333
    ]);
  });

  test('of an input do not depend on how many follow it', () => {
    const first = range('a', 0, 1, 4);
    expect(column([first], 0)).toEqual(column([first, range('b', 0, 1, 2)], 0));
  });

  test('are refused where an input is none, with its path', () => {
    const failing = (input: UncertainInput) => () => layOutDraws([input], plan);
    expect(failing(range('site.theatres', 5, 4, 3))).toThrow(UncertainInputError);
    expect(failing({ path: 'x', choices: 0, mode: 0 })).toThrow('Choice 0 of 0');
    expect(() => layOutDraws([], { ...plan, draws: 0 })).toThrow('0 draws');
    expect(() => layOutDraws([], plan).valuesOf(1000)).toThrow('from 0 to 999');
  });
});

describe('a run', () => {
  const draws = layOutDraws([range('a', 0, 1, 4), range('b', 0, 2, 3)], plan);
  const model = ([a, b]: number[]): number[] | null => ((a as number) > 3 ? null : [a! + b!, a! * b!]);

  test('joined from slices of any size and order equals the whole', () => {
    const whole = joinSlices([runDraws({ model, draws, figureCount: 2 })]);
    const slices = [
      [300, 1000],
      [0, 1],
      [1, 300]
    ].map(([from, to]) => runDraws({ model, draws, figureCount: 2, from: from!, to: to! }));
    expect(joinSlices(slices)).toEqual(whole);
    expect(whole[0]?.some(Number.isNaN)).toBe(true);
  });

  test('hands over a slice as one buffer, with nothing else in it', () => {
    const slice = runDraws({ model, draws, figureCount: 2, from: 10, to: 60 });
    const whole = joinSlices([runDraws({ model, draws, figureCount: 2 })]);
    const buffers = buffersOf(slice);
    expect(buffers.map((buffer) => buffer.byteLength)).toEqual([2 * 50 * 8]);
    const { figures } = structuredClone(slice, { transfer: buffers as ArrayBuffer[] });
    expect(figures).toEqual(whole.map((list) => list.slice(10, 60)));
    expect(slice.figures[0]).toHaveLength(0);
    expect(buffersOf({ from: 0, to: 5, figures: [] })).toEqual([]);
  });

  test('with a gap or an overlap is refused', () => {
    const slice = (from: number, to: number) => runDraws({ model, draws, figureCount: 2, from, to });
    expect(() => joinSlices([slice(0, 10), slice(11, 20)])).toThrow('draw 10');
    expect(() => joinSlices([slice(0, 10), slice(9, 20)])).toThrow('draw 9');
    expect(() => joinSlices([slice(1, 10)])).toThrow('draw 0');
    expect(() =>
      joinSlices([slice(0, 10), runDraws({ model, draws, figureCount: 1, from: 10, to: 20 })])
    ).toThrow('differ');
  });

  test('lets errors of the program through', () => {
    const broken = (): never => {
      throw new TypeError('broken');
    };
    expect(() => runDraws({ model: broken, draws, figureCount: 1 })).toThrow('broken');
  });
});

describe('swings', () => {
  const inputs: UncertainInput[] = [
    range('small', 0, 1, 2),
    range('still', 3, 3, 3),
    range('m1', 10, 20, 30, 'minutes'),
    { path: 'body', choices: 3, mode: 1 },
    range('m2', 1, 2, 4, 'minutes')
  ];
  const model = ([small, still, m1, body, m2]: number[]): number[] => [
    small! + still! + m1! * m2! + 5 * body!,
    m1! > 25 ? Infinity : 4
  ];

  test('set each input, or those that vary together, to low and high with all others as entered', () => {
    const found = swings(model, inputs);
    expect(plainFigures(model, inputs)).toEqual([49, 4]);
    expect(found.map(({ paths }) => paths)).toEqual([['small'], ['m1', 'm2'], ['body']]);
    expect(found[0]?.outcomes).toEqual([
      { values: [0], figures: [48, 4] },
      { values: [2], figures: [50, 4] }
    ]);
    expect(found[1]?.outcomes.map(({ figures }) => figures?.[0])).toEqual([19, 129]);
    expect(found[2]?.outcomes.map(({ figures }) => figures?.[0])).toEqual([44, 49, 54]);
  });

  test('come widest first, “never” being wider than anything', () => {
    const found = swings(model, inputs);
    expect(widestFirst(found, 0).map((swing) => widthOfSwing(swing, 0))).toEqual([110, 10, 2]);
    expect(widestFirst(found, 1).map((swing) => widthOfSwing(swing, 1))).toEqual([Infinity, 0, 0]);
    expect(widthOfSwing({ paths: [], outcomes: [{ values: [1], figures: null }] }, 0)).toBe(0);
  });
});
