/**
 * Exclusive alternatives, by outlay and by tonnes, against worked examples from outside. Where an answer was computed and
 * not printed, its test says so.
 */
import { describe, expect, test } from 'vitest';
import { moneyIncrements } from '#lib/calc/attribution/money-increments.ts';
import type { TonnesRow } from '#lib/calc/attribution/tonnes-increments.ts';
import { tonnesIncrements } from '#lib/calc/attribution/tonnes-increments.ts';
import { internalRatesOf } from '#lib/calc/money/internal-rate.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { cashFlowRun, costAndTonnes, factorsFor } from '../fixtures/cash-flow-run.ts';

/** The list by outlay over cash flows, today being no flow at all. */
function byOutlay(
  flows: Readonly<Record<string, readonly number[]>>,
  { ratePercent, paybackLimitYears }: { ratePercent: number; paybackLimitYears: number }
) {
  const [some = []] = Object.values(flows);
  const factors = factorsFor({ appraisalYears: some.length - 1, discountRatePercent: ratePercent });
  const all = { today: some.map(() => 0), ...flows };
  return moneyIncrements(
    plain,
    Object.entries(all).map(([id, list]) => ({ id, run: cashFlowRun(list, { factors }) })),
    { factors, paybackLimitYears }
  );
}
const irrOf = (flows: readonly number[]): number => 100 * (internalRatesOf(flows)[0] ?? NaN);
const costOf = (row: TonnesRow | undefined): number | null => {
  const ratio = row?.step?.costPerTonne ?? null;
  return ratio === null ? null : plain.value(ratio).toNumber();
};

describe('increments of exclusive alternatives', () => {
  test('inc-1: −10, +15 or −20, +28 at 6 %: the increment earns 30 %, so the dearer one is taken (printed)', () => {
    // Newnan, Eschenbach, Lavelle, Engineering Economic Analysis, chapters 7 and 8 (title from memory). Printed to whole
    // per cent; the rates of their own, 50 and 40 %, are computed.
    const cheap = [-10, 15];
    const dear = [-20, 28];
    const rows = byOutlay({ cheap, dear }, { ratePercent: 6, paybackLimitYears: 1 });
    expect(rows.map(({ id, step }) => [id, step?.against, step?.isTaken])).toEqual([
      ['today', undefined, undefined],
      ['cheap', 'today', true],
      ['dear', 'cheap', true]
    ]);
    expect(Math.abs((plain.value(rows[2]!.step!.figures.irrPercent) ?? NaN) - 30)).toBeLessThan(0.05);
    expect([irrOf(cheap), irrOf(dear)].map((rate) => rate.toFixed(1))).toEqual(['50.0', '40.0']);
  });

  test('inc-5: the increment earns 15.0 %, though the rates of their own are 25 and 17.43 %', () => {
    // Park CS, Contemporary Engineering Economics, Example 7.11 (from memory, recomputed).
    const cheap = [-3000, 1350, 1800, 1500];
    const dear = [-12000, 4200, 6225, 6330];
    const [, , step] = byOutlay({ cheap, dear }, { ratePercent: 10, paybackLimitYears: 3 });
    expect(step?.step?.against).toBe('cheap');
    expect(Math.abs((plain.value(step!.step!.figures.irrPercent) ?? NaN) - 15)).toBeLessThan(0.01);
    expect(Math.abs(irrOf(cheap) - 25)).toBeLessThan(0.01);
    expect(Math.abs(irrOf(dear) - 17.43)).toBeLessThan(0.01);
    // At more than the increment earns, the dearer one is not taken.
    const [, , refused] = byOutlay({ cheap, dear }, { ratePercent: 16, paybackLimitYears: 3 });
    expect([refused?.step?.npvIsEnough, refused?.step?.isTaken]).toEqual([false, false]);
  });
});

describe('dominance', () => {
  test('dom-1: B is extendedly dominated, at 600 a unit against 200 from B to C; A and C are left, at 266.67', () => {
    // European Commission, Guide to cost-benefit analysis of investment projects, box on extended dominance: table printed,
    // the last figure computed; half a unit of the last digit.
    const rows = tonnesIncrements(plain, costAndTonnes({ a: [1000, 10], b: [4000, 15], c: [9000, 40] }));
    expect(rows.map(({ id, status, beatenBy }) => [id, status, beatenBy])).toEqual([
      ['a', 'first', []],
      ['b', 'extendedly-dominated', ['a', 'c']],
      ['c', 'step', []]
    ]);
    expect(costOf(rows[1])).toBe(600);
    expect(Math.abs((costOf(rows[2]) ?? NaN) - 266.67)).toBeLessThan(0.01);
    const [, onlyStep] = tonnesIncrements(plain, costAndTonnes({ b: [4000, 15], c: [9000, 40] }));
    expect(costOf(onlyStep)).toBe(200);
  });

  test('dom-3: a printed frontier of six, and its costs per unit, rising, to the unit printed', () => {
    // Australia and New Zealand Health Policy 2005;2:10, Table 7, doi 10.1186/1743-8462-2-10.
    const rows = tonnesIncrements(
      plain,
      costAndTonnes({
        none: [0, 0],
        one: [140117791, 3551],
        two: [248112291, 6023],
        three: [304301903, 6720],
        four: [370181240, 7076],
        five: [422777702, 7299]
      })
    );
    expect(rows.map(({ status }) => status)).toEqual(['first', 'step', 'step', 'step', 'step', 'step']);
    const costs = rows.slice(1).map((row) => costOf(row) ?? NaN);
    [39459, 43687, 80616, 185054, 235859].forEach((printed, place) =>
      expect(Math.abs((costs[place] as number) - printed)).toBeLessThanOrEqual(1)
    );
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });
});

describe('cost per tonne below 0', () => {
  test('mac-cost-1: of two that save the same, the one that avoids more comes first, and no ratio is made', () => {
    // The flaw shown by Taylor S, Energy Policy 2012;48:430, in figures of our own: −100 and −200 a tonne would put Y first.
    const rows = tonnesIncrements(plain, costAndTonnes({ y: [-1000, 5], x: [-1000, 10] }));
    expect(rows.map(({ id, status, beatenBy }) => [id, status, beatenBy])).toEqual([
      ['x', 'first', []],
      ['y', 'dominated', ['x']]
    ]);
    expect(rows.map(costOf)).toEqual([null, null]);
  });

  test('mac-cost-2: P and Q are beaten by none; R is beaten by P, and S by Q (computed)', () => {
    // Partial ranking as Taylor S, Energy Policy 2012;48:430 proposes.
    const rows = tonnesIncrements(
      plain,
      costAndTonnes({ p: [-5000, 10], q: [-3000, 20], r: [-2000, 8], s: [-1000, 15] })
    );
    expect(rows.map(({ id, status, beatenBy }) => [id, status, beatenBy])).toEqual([
      ['p', 'first', []],
      ['q', 'step', []],
      ['r', 'dominated', ['p']],
      ['s', 'dominated', ['q']]
    ]);
    expect(rows.map((row) => (costOf(row) ?? 1) > 0)).toEqual([true, true, true, true]);
  });
});
