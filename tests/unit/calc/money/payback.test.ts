import { describe, expect, test } from 'vitest';
import { causeOfFall } from '#lib/calc/money/cause-of-fall.ts';
import type { FallingYear } from '#lib/calc/money/cause-of-fall.ts';
import { Decimal } from '#lib/calc/money/decimal.ts';
import type { OutlayKind } from '#lib/calc/money/investment.ts';
import { aheadForATime, lowestSumFrom, payback } from '#lib/calc/money/payback.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { paybackYearsOf } from './business-case.ts';

/** Saved evenly over the year, and paid at its end. */
type Flows = readonly (readonly [number, number])[];
const paybackOf = (flows: Flows) => plain.value(payback(plain, paybackYearsOf(plain, flows)));
const aheadOf = (flows: Flows) =>
  aheadForATime(plain, paybackYearsOf(plain, flows)).map(({ fromYears, untilYears }) => [
    plain.value(fromYears),
    plain.value(untilYears)
  ]);

const cases: readonly (readonly [string, Flows, number | null, readonly (readonly number[])[]])[] = [
  // −100, −60, 20: 60 of 80 into year 2.
  [
    'within a year',
    [
      [0, 100],
      [40, 0],
      [80, 0]
    ],
    1.75,
    []
  ],
  [
    'at a year end',
    [
      [0, 100],
      [40, 0],
      [60, 0],
      [60, 0]
    ],
    2,
    []
  ],
  [
    'never',
    [
      [0, 100],
      [40, 0],
      [50, 0]
    ],
    null,
    []
  ],
  [
    'at once, where nothing is invested and something saved',
    [
      [0, 0],
      [10, 0],
      [10, 0]
    ],
    0,
    []
  ],
  [
    'no figure, where nothing is invested and nothing saved',
    [
      [0, 0],
      [0, 0],
      [0, 0]
    ],
    null,
    []
  ],
  [
    'of a scenario that only costs more',
    [
      [0, 0],
      [-10, 0],
      [-10, 0]
    ],
    null,
    []
  ],
  [
    'of a purchase in a later year',
    [
      [0, 0],
      [0, 100],
      [50, 0],
      [100, 0]
    ],
    2.5,
    []
  ],
  // A later purchase is paid at the end of year 1: 50 until then, −50 after it, 100 in year 2.
  [
    'counted from the last time below 0',
    [
      [0, -50],
      [0, 100],
      [100, 0]
    ],
    1.5,
    [[0, 1]]
  ],
  // −100, 50 | −30, 70: the crossing after 100 / 150 of year 1 does not last beyond the replacement at its end.
  [
    'of a crossing that a replacement undoes',
    [
      [0, 100],
      [150, 0],
      [0, 80],
      [100, 0]
    ],
    2.3,
    [[100 / 150, 2]]
  ],
  [
    'never, where a replacement undoes it for good',
    [
      [0, 100],
      [60, 0],
      [60, 0],
      [60, 200]
    ],
    null,
    [[100 / 60, 3]]
  ],
  // A lump at the end of year 2 is not spread over the year: −20 just before it, 50 after.
  [
    'at the date of a purchase avoided, not before',
    [
      [0, 0],
      [-10, 0],
      [-10, -70],
      [-10, 0]
    ],
    2,
    []
  ],
  [
    'never, where a purchase avoided is used up by a yearly loss',
    [
      [0, 0],
      [-10, 0],
      [-10, -50],
      [-20, 0],
      [-20, 0]
    ],
    null,
    [[2, 3.5]]
  ],
  // Saved 30 by the end of year 1 and 5 paid there: the sum passes 0 at 20 / 30 and stays.
  [
    'within a year whose end takes something back',
    [
      [0, 20],
      [30, 5],
      [1, 0]
    ],
    20 / 30,
    []
  ],
  [
    'at once, with money back at the start',
    [
      [0, -5],
      [0, 0]
    ],
    0,
    []
  ],
  [
    'where the sum only touches 0 before it falls',
    [
      [0, 10],
      [10, 5],
      [10, 0]
    ],
    1.5,
    []
  ]
];

describe('payback', () => {
  test.each(cases)('%s', (_, flows, years, ahead) => {
    const found = paybackOf(flows);
    if (years === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(years, 14);
    expect(aheadOf(flows)).toEqual(
      ahead.map((times) => times.map((time) => expect.closeTo(time, 14) as number))
    );
  });

  test.each(cases)(
    'is within a limit exactly where the sum never stands below 0 from it on: %s',
    (_, flows, years) => {
      const bare = paybackYearsOf(plain, flows).map(({ sum, evenly }) => ({
        sum: plain.value(sum),
        evenly: plain.value(evenly)
      }));
      const nothing = flows.every(([evenly, paid]) => evenly === 0 && paid === 0);
      for (const limit of [0, 0.5, 1, 1.6, 1.9, 2, 2.2, 2.75, 3, 9])
        if (!nothing)
          expect([limit, lowestSumFrom(bare, limit).gte(0)]).toEqual([
            limit,
            years !== null && years <= limit
          ]);
    }
  );
});

test('the lowest sum is looked for between year ends and just before what falls there', () => {
  const years = [
    [-100, 0],
    [-60, 40],
    [20, -30],
    [15, -5]
  ].map(([sum, evenly]) => ({ sum: new Decimal(sum ?? 0), evenly: new Decimal(evenly ?? 0) }));
  const at = (from: number): number => lowestSumFrom(years, from).toNumber();
  // Year 2 loses 30 evenly, to −90, and 110 come in at its end.
  expect([at(0), at(0.5), at(1), at(1.5), at(2), at(2.5), at(3), at(7)]).toEqual([
    -100, -90, -90, -90, 15, 15, 15, 15
  ]);
});

describe('the cause of a fall', () => {
  const year = (evenly: number, outlays: Partial<Record<OutlayKind, number>> = {}): FallingYear => {
    const none = {
      purchase: 0,
      installation: 0,
      tradeIn: 0,
      oneOff: 0,
      monitors: 0,
      avoided: 0,
      replacement: 0,
      residual: 0
    };
    const all = Object.entries({ ...none, ...outlays }).map(([kind, amount]) => [kind, new Decimal(amount)]);
    return { evenly: new Decimal(evenly), outlays: Object.fromEntries(all) as FallingYear['outlays'] };
  };
  const between = (fromYears: number, untilYears: number, years: readonly FallingYear[]) =>
    causeOfFall(years, { fromYears, untilYears });

  test('is what took most off the sum between the two times', () => {
    const replaced = [year(0, { purchase: 100 }), year(60), year(60), year(60, { replacement: 200 })];
    expect(between(100 / 60, 3, replaced)).toBe('replacement');
    const later = [year(0), year(60), year(60, { purchase: 90, installation: 60, tradeIn: -10 }), year(60)];
    expect(between(0, 2, later)).toBe('later-purchase');
    const losing = [year(0), year(-10), year(-10, { avoided: -50 }), year(-20), year(-20)];
    expect(between(2, 3.5, losing)).toBe('yearly-cost');
  });

  test('takes of a yearly cost only the part between the two times, and no outlay of before', () => {
    // 100 a year for half a year, against 60 for machines at the end of year 2.
    const both = [year(0, { purchase: 999 }), year(-100, { purchase: 999 }), year(-100, { replacement: 60 })];
    expect(between(1.5, 2, both)).toBe('replacement');
    expect(between(1, 2, both)).toBe('yearly-cost');
  });
});
