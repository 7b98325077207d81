/** What must hold of theatres and machines, however many there are and whichever come. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Scenario, TheatreGroup } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { bringing, oneGroup } from '../fixtures/one-group.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';
import { expectFigures, lowFlow, today, wholeWorkbook } from '../fixtures/whole-workbook.ts';

const figuresOf = (workbook: Workbook) =>
  estimate(coreInput(workbook)).scenarios.map(({ id, perYear, againstBaseline, monitoringGaps }) => ({
    id,
    perYear,
    againstBaseline,
    monitoringGaps
  }));

/** Amounts of money as numbers, so that they are compared to rounding. */
const asNumbers = (figures: unknown): unknown =>
  JSON.parse(JSON.stringify(figures), (_, value: unknown) =>
    typeof value === 'string' && /^-?\d+(\.\d+)?$/.test(value) ? Number(value) : value
  );

const monitors = ['capnography', 'agent-concentration', 'ecg'] as const;
const prices: Workbook['monitorPrices'] = monitors.map((item) => ({ item, unitPrice: '1300' }));

/** Half of a group, of half the moves and half the monitors. */
const halves = fc.record({
  theatres: fc.integer({ min: 1, max: 4 }),
  byYear: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 1, maxLength: 3 }),
  stock: fc.tuple(fc.nat(4), fc.nat(4), fc.nat(4))
});

test('a group of even theatres, monitors and moves that is split into two halves changes no figure', () => {
  fc.assert(
    fc.property(halves, ({ theatres, byYear, stock }) => {
      let left = theatres;
      const moved = byYear.map((asked) => {
        const moves = Math.min(asked, left);
        left -= moves;
        return moves;
      });
      const having = (id: string, times: number): TheatreGroup => ({
        ...oneGroup(times * theatres, 'old')[0],
        id,
        monitors: Object.fromEntries(
          monitors.map((item, index) => [item, times * Math.min(stock[index] ?? 0, theatres)])
        )
      });
      const half = (theatreGroup: string) => bringing('closed', 'low', { byYear: moved, theatreGroup }).moves;
      const scenario = (moves: Scenario['moves']): Scenario => ({
        ...lowFlow,
        id: 'moving',
        moves,
        plans: { closed: 'low' }
      });
      const whole = wholeWorkbook({
        theatreGroups: [having('main', 2)],
        monitorPrices: prices,
        scenarios: [
          today,
          scenario(bringing('closed', 'low', { byYear: moved.map((each) => 2 * each) }).moves)
        ]
      });
      const split = wholeWorkbook({
        theatreGroups: [having('main', 1), having('other', 1)],
        monitorPrices: prices,
        scenarios: [today, scenario([...half('main'), ...half('other')])]
      });
      for (const workbook of [whole, split]) expect(parseWorkbook(workbook).kind).toBe('workbook');
      expectFigures(figuresOf(split), asNumbers(figuresOf(whole)));
    }),
    { numRuns: 25, endOnFailure: true }
  );
});

const workbooks = randomWorkbook({ rows: 3 });

test('the order of theatre groups changes nothing but rounding', () => {
  const paid = ({ againstBaseline: { investment, npv } }: ReturnType<typeof figuresOf>[number]) => [
    Number(investment),
    Number(npv)
  ];
  fc.assert(
    fc.property(
      workbooks.filter(({ theatreGroups }) => theatreGroups.length > 1),
      (workbook) => {
        // What was measured in a group that is done on unlike machines is taken for the first of them, and that is said.
        const unmeasured = {
          ...workbook,
          caseMix: workbook.caseMix.map((row) => ({ ...row, measuredMlPerCase: null }))
        };
        const turned = { ...unmeasured, theatreGroups: [...workbook.theatreGroups].reverse() };
        const [before, after] = [figuresOf(unmeasured), figuresOf(turned)];
        before.forEach((scenario, index) => {
          const other = after[index] as (typeof after)[number];
          expect(other.monitoringGaps).toBe(scenario.monitoringGaps);
          const scale = Math.max(1, ...paid(scenario).map(Math.abs), Number(scenario.perYear.cost.total));
          paid(other).forEach((value, at) =>
            expect(Math.abs(value - (paid(scenario)[at] ?? NaN)) / scale).toBeLessThan(1e-9)
          );
        });
      }
    ),
    { numRuns: 25, endOnFailure: true }
  );
});

test('moving no theatre buys nothing, and one more theatre never buys fewer', () => {
  const [price] = [20_000 + 700 - 1500];
  const investmentOf = (theatres: number): number => {
    const scenario: Scenario = {
      ...lowFlow,
      id: 'moving',
      ...bringing('like-the-old', 'usual', { byYear: [theatres] })
    };
    const workbook = wholeWorkbook({
      theatreGroups: oneGroup(6, 'old'),
      scenarios: [today, scenario]
    });
    const [, moving] = figuresOf(workbook);
    if (theatres === 0) expectFigures(moving?.againstBaseline.yearlySaving, 0);
    return Number(moving?.againstBaseline.investment);
  };
  expect([0, 1, 2, 3, 4, 5, 6].map(investmentOf)).toEqual([0, 1, 2, 3, 4, 5, 6].map((n) => n * price));
});

test('service of a year is that of every machine that stands in it, whatever comes', () => {
  fc.assert(
    fc.property(workbooks, (drawn) => {
      const workbook: Workbook = {
        ...drawn,
        scenarios: drawn.scenarios.map((scenario) => ({
          ...scenario,
          machinesStay: false,
          moves: scenario.moves.map((move) => ({ ...move, payment: null }))
        }))
      };
      const priceOf = (id: string): number =>
        Number(workbook.machines.find((machine) => machine.id === id)?.servicePerUnitPerYear);
      for (const { id, perYear } of figuresOf(workbook)) {
        const { moves, spares } = workbook.scenarios.find((each) => each.id === id) as Scenario;
        const last = [...moves].sort((a, b) => a.year - b.year).at(-1);
        let service = last === undefined ? 0 : spares * priceOf(last.machine);
        for (const { id: group, theatres, machine } of workbook.theatreGroups) {
          let left = theatres;
          for (const move of [...moves].sort((a, b) => a.year - b.year)) {
            if (move.theatreGroup !== group) continue;
            const here = Math.min(move.theatres ?? left, left);
            left -= here;
            service += here * priceOf(move.machine);
          }
          service += left * priceOf(machine);
        }
        expect(Math.abs(Number(perYear.cost.service) - service)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, service)
        );
      }
    }),
    { numRuns: 40, endOnFailure: true }
  );
});
