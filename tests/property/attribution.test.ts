/** What must hold of parts, twins, alternatives and the worth of knowing, whatever the workbook. Seeds are fixed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Alternative } from '#lib/calc/attribution/alternatives.ts';
import { leversOf, variantOf } from '#lib/calc/attribution/levers.ts';
import { moneyIncrements } from '#lib/calc/attribution/money-increments.ts';
import type { TonnesRow } from '#lib/calc/attribution/tonnes-increments.ts';
import { tonnesIncrements } from '#lib/calc/attribution/tonnes-increments.ts';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate, ladderInOrder } from '#lib/calc/estimate/estimate.ts';
import type { AgainstBaseline } from '#lib/calc/estimate-types.ts';
import { levers } from '#lib/calc/input.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { valueOfInformation } from '#lib/calc/uncertainty/value-of-information.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { cashFlowRun, costAndTonnes, factorsFor } from '../fixtures/cash-flow-run.ts';
import { partsOfGame } from '../fixtures/game.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

// A busy computer must not decide a test.

const sum = (list: readonly (number | string)[]): number =>
  list.reduce<number>((all, next) => all + Number(next), 0);
/** Apart by no more than rounding leaves, as a share of the largest of what was added up. */
const near = (found: number, wanted: number, ...addedUp: readonly number[]): void => {
  const size = Math.max(1e-9, Math.abs(wanted), ...addedUp.map(Math.abs));
  expect(Math.abs(found - wanted) / size).toBeLessThan(1e-9);
};

describe('the parts of any game', () => {
  const games = fc.integer({ min: 0, max: 8 }).chain((players) =>
    fc.tuple(
      fc.constant(players),
      fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
        minLength: 2 ** players,
        maxLength: 2 ** players
      })
    )
  );

  test('add up to the whole; with both ends swapped each turns its sign', () => {
    fc.assert(
      fc.property(games, ([players, values]) => {
        const parts = partsOfGame(players, (set) => values[set] as number);
        const whole = (values.at(-1) as number) - (values[0] as number);
        near(sum(parts), whole, ...values);
        const swapped = partsOfGame(players, (set) => values[2 ** players - 1 - set] as number);
        parts.forEach((part, place) => near(swapped[place] as number, 0 - part, ...values));
      }),
      { numRuns: 200 }
    );
  });

  test('that changes nothing in any set is 0', () => {
    fc.assert(
      fc.property(games, fc.nat(6), ([players, values], chosen) => {
        fc.pre(players > 0);
        const idle = chosen % players;
        const parts = partsOfGame(players, (set) => values[set & ~(1 << idle)] as number);
        expect(parts[idle]).toBe(0);
      }),
      { numRuns: 200 }
    );
  });

  test('do not hang on the order in which the players are listed', () => {
    fc.assert(
      fc.property(games, ([players, values]) => {
        const inOrder = partsOfGame(players, (set) => values[set] as number);
        const mirrored = (set: number): number =>
          Array.from({ length: players }, (_, bit) => ((set >> bit) & 1) << (players - 1 - bit)).reduce(
            (all, bit) => all | bit,
            0
          );
        const turned = partsOfGame(players, (set) => values[mirrored(set)] as number);
        turned.reverse().forEach((part, place) => near(part, inOrder[place] as number, ...values));
      }),
      { numRuns: 100 }
    );
  });

  test.each([9, -1, 1.5])('of %s players is refused', (players) => {
    expect(() => partsOfGame(players, () => 0)).toThrow(RangeError);
  });
});

describe('in any workbook', () => {
  test('parts and rungs add up to the whole, and so do the twin and what the machine adds', () => {
    let [taken, twins, most] = [0, 0, 0];
    fc.assert(
      fc.property(randomWorkbook({ rows: 4 }), fc.shuffledSubarray([...levers]), (workbook, order) => {
        const input = coreInput(workbook);
        const memo = new CaseMemo();
        for (const scenario of estimate(input, memo).scenarios) {
          const { id, attribution, againstBaseline: whole, withoutMachine, machineAdds } = scenario;
          if (attribution === null) {
            expect(scenario.attributionFailed).not.toBeNull();
            continue;
          }
          const ladder = ladderInOrder(input, { scenarioId: id, order, memo });
          expect(ladder.map(({ lever }) => lever).toSorted()).toEqual(
            attribution.map(({ lever }) => lever).toSorted()
          );
          for (const figure of ['yearlySaving', 'co2eAvoidedKg', 'npv'] as const)
            for (const parts of [attribution, scenario.ladder ?? [], ladder]) {
              const figures = parts.map((part) => Number(part[figure]));
              near(sum(figures), Number(whole[figure]), ...figures);
            }
          taken += attribution.length;
          most = Math.max(most, attribution.length);
          if (withoutMachine === null || machineAdds === null) continue;
          twins += 1;
          for (const figure of ['yearlySaving', 'co2eAvoidedKg', 'npv', 'investment'] as const) {
            const sides = [Number(withoutMachine[figure]), Number(machineAdds[figure])];
            near(sum(sides), Number(whole[figure]), ...sides);
          }
        }
      }),
      { numRuns: 80 }
    );
    expect(taken).toBeGreaterThan(50);
    expect(twins).toBeGreaterThan(10);
    expect(most).toBeGreaterThanOrEqual(4);
  });

  test('a scenario with none of its levers on is today’s practice in every figure', () => {
    let scenarios = 0;
    fc.assert(
      fc.property(randomWorkbook({ rows: 4 }), (workbook) => {
        const input = coreInput(workbook);
        const reckoning = reckon(plain, input, new CaseMemo());
        for (const scenario of input.scenarios) {
          if (scenario.baseline || leversOf(input, scenario).length === 0) continue;
          scenarios += 1;
          const none = reckoning.against(variantOf(input, scenario, []).scenario);
          expect(plain.value(none.yearlySaving).toNumber()).toBe(0);
          expect(plain.value(none.co2eAvoidedKg)).toBe(0);
          expect(plain.value(none.npv).toNumber()).toBe(0);
          expect(plain.value(none.investment).toNumber()).toBe(0);
        }
      }),
      { numRuns: 40 }
    );
    expect(scenarios).toBeGreaterThan(30);
  });

  test('today and its like stand once in both lists, and every alternative is named', () => {
    fc.assert(
      fc.property(randomWorkbook({ rows: 3 }), (workbook) => {
        const { increments, scenarios } = estimate(coreInput(workbook));
        if (increments === null) return;
        const ids = [
          ...scenarios.map(({ id }) => id),
          ...scenarios.flatMap(
            ({ id, withoutMachine }: { id: string; withoutMachine: AgainstBaseline | null }) =>
              withoutMachine === null ? [] : [`${id}:without-machine`]
          )
        ].toSorted();
        for (const list of [increments.money, increments.tonnes])
          expect(list.flatMap(({ option, sameAs }) => [option, ...sameAs]).toSorted()).toEqual(ids);
        expect(increments.money.map(({ status }) => status).filter((status) => status === 'today')).toEqual([
          'today'
        ]);
      }),
      { numRuns: 30 }
    );
  });
});

describe('the list by tonnes', () => {
  const whole = (max: number) => fc.integer({ min: -max, max });
  const given = fc.array(fc.tuple(whole(1000), whole(200)), { minLength: 1, maxLength: 9 });
  const named = (list: readonly (readonly [number, number])[]): Alternative[] =>
    costAndTonnes(Object.fromEntries(list.map((each, place) => [`option-${place}`, each])));
  const stepsOf = (rows: readonly TonnesRow[]) =>
    rows
      .filter(({ status }) => status === 'first' || status === 'step')
      .map(({ id, step }) => ({
        id,
        against: step?.against ?? null,
        costPerTonne: step === null || step.costPerTonne === null ? null : plain.value(step.costPerTonne)
      }));

  test('has steps that cost more and avoid more, each tonne dearer than the last', () => {
    fc.assert(
      fc.property(given, (list) => {
        const rows = tonnesIncrements(plain, named(list));
        expect(rows.filter(({ status }) => status === 'first')).toHaveLength(1);
        let last = 0;
        for (const { status, step } of rows) {
          if (status !== 'step' || step === null) continue;
          expect(plain.value(step.extraCost).toNumber()).toBeGreaterThan(0);
          expect(plain.value(step.extraTonnes)).toBeGreaterThan(0);
          const cost = step.costPerTonne === null ? NaN : plain.value(step.costPerTonne).toNumber();
          expect(cost).toBeGreaterThanOrEqual(last);
          last = cost;
        }
      }),
      { numRuns: 300 }
    );
  });

  test('keeps its steps where an alternative is added that another beats', () => {
    fc.assert(
      fc.property(given, fc.nat(), fc.nat(300), fc.nat(50), (list, chosen, dearer, fewer) => {
        fc.pre(dearer + fewer > 0);
        const [cost, tonnes] = list[chosen % list.length] as [number, number];
        const before = tonnesIncrements(plain, named(list));
        const after = tonnesIncrements(plain, named([...list, [cost + dearer, tonnes - fewer]]));
        const added = after.find(({ id, sameAs }) => [id, ...sameAs].includes(`option-${list.length}`));
        // It may be the same as another that is no step either, but never a step by itself.
        expect(added?.status).toMatch(/dominated/);
        expect(stepsOf(after)).toEqual(stepsOf(before));
      }),
      { numRuns: 300 }
    );
  });
});

test('the list by outlay takes no step that fails a test, and begins with today', () => {
  const factors = factorsFor({ appraisalYears: 4, discountRatePercent: 5 });
  const flows = fc
    .tuple(
      fc.integer({ min: 0, max: 900 }),
      fc.array(fc.integer({ min: -200, max: 500 }), { minLength: 4, maxLength: 4 })
    )
    .map(([outlay, years]) => [0 - outlay, ...years]);
  fc.assert(
    fc.property(fc.array(flows, { maxLength: 7 }), (list) => {
      const rows = moneyIncrements(
        plain,
        [[0, 0, 0, 0, 0], ...list].map((each, place) => ({
          id: place === 0 ? 'today' : `option-${place}`,
          run: cashFlowRun(each, { factors })
        })),
        { factors, paybackLimitYears: 3 }
      );
      expect(rows[0]?.id).toBe('today');
      let [last, outlay] = ['today', 0];
      for (const { id, step, presentValueOfOutlay } of rows.slice(1)) {
        if (step === null) throw new Error('Only today has no step.');
        expect(step.against).toBe(last);
        expect(plain.value(presentValueOfOutlay).toNumber()).toBeGreaterThanOrEqual(outlay);
        outlay = plain.value(presentValueOfOutlay).toNumber();
        const payback = plain.value(step.figures.simplePaybackYears);
        const pays = payback !== null && payback <= 3 && !step.figures.isNothing;
        expect(step.isTaken).toBe(pays && plain.value(step.figures.npv).gte(0));
        if (step.isTaken) last = id;
      }
    }),
    { numRuns: 200 }
  );
});

describe('the worth of knowing', () => {
  const value = fc.oneof(fc.double({ min: -1e5, max: 1e5, noNaN: true }), fc.integer({ min: -3, max: 3 }));
  const draws = fc.integer({ min: 1, max: 120 }).chain((count) =>
    fc.record({
      options: fc.array(fc.array(value, { minLength: count, maxLength: count }), {
        minLength: 1,
        maxLength: 5
      }),
      input: fc.array(value, { minLength: count, maxLength: count })
    })
  );

  test('voi-3: of one input it is from 0 to that of all; that of all is by its definition', () => {
    fc.assert(
      fc.property(draws, ({ options, input }) => {
        const found = valueOfInformation({
          options: options.map((list) => Float64Array.from(list)),
          inputs: [{ paths: ['a'], values: Float64Array.from(input) }],
          seed: 7
        });
        const largest = Math.max(...options.flat().map(Math.abs));
        const bestMean = Math.max(...options.map((list) => sum(list) / list.length));
        const meanOfBest =
          sum(input.map((_, draw) => Math.max(...options.map((list) => list[draw] as number)))) /
          input.length;
        near(found.worthOfAll, meanOfBest - bestMean, largest);
        for (const { worth, noise } of found.inputs)
          for (const each of [worth, noise]) {
            expect(each).toBeGreaterThanOrEqual(0);
            expect(each).toBeLessThanOrEqual(found.worthOfAll + 1e-9 * Math.max(1, largest));
          }
      }),
      { numRuns: 200 }
    );
  });

  test('is 0 where one option is the best in every draw', () => {
    fc.assert(
      fc.property(draws, ({ options, input }) => {
        const best = input.map((_, draw) => 1 + Math.max(...options.map((list) => list[draw] as number)));
        const found = valueOfInformation({
          options: [...options, best].map((list) => Float64Array.from(list)),
          inputs: [{ paths: ['a'], values: Float64Array.from(input) }],
          seed: 7
        });
        expect([found.best, found.worthOfAll, found.inputs[0]?.worth]).toEqual([options.length, 0, 0]);
      }),
      { numRuns: 100 }
    );
  });
});
