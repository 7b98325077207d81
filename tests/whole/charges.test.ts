/** Capital charge and tax beside the cash, added up by hand: three machines over four years, with a life of ten. */
import { describe, expect, test } from 'vitest';
import type { Payment, Scenario } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { bringing, oneGroup } from '../fixtures/one-group.ts';
import {
  expectFigures,
  likeTheOld,
  lowFlow,
  oldMachine,
  scenarioOf,
  today,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const buying: Scenario = { ...lowFlow, id: 'buying', ...bringing('like-the-old', 'low') };
const { accounting } = wholeWorkbook();
const againstOf = (
  rates: Partial<Workbook['accounting']>,
  { scenario = buying, ...changes }: Partial<Workbook> & { scenario?: Scenario } = {}
) =>
  scenarioOf(
    wholeWorkbook({ scenarios: [today, scenario], accounting: { ...accounting, ...rates }, ...changes }),
    scenario
  ).againstBaseline;

test('both are off until a rate is given', () => {
  expect(againstOf({}).charges).toBeNull();
});

test('neither is in any other figure', () => {
  const { charges, ...with3 } = againstOf({ capitalChargePercent: 3.5, taxPercent: 20 });
  const { charges: none, ...without } = againstOf({});
  expect([charges === null, none]).toEqual([false, null]);
  expect(with3).toEqual(without);
});

describe('a capital charge', () => {
  const rates = { capitalChargePercent: 3.5 };

  test('is the rate on what is not written off on average over the year', () => {
    const years = againstOf(rates).charges?.years ?? [];
    // 60 000 are written off by 6 000 a year: 57 000, 51 000, 45 000 and 39 000 on average.
    expectFigures(
      years.map(({ writtenOff }) => writtenOff),
      [0, 6000, 6000, 6000, 6000, 0]
    );
    expectFigures(
      years.map(({ capitalCharge }) => capitalCharge),
      [0, 1995, 1785, 1575, 1365, 0]
    );
  });

  test('is less by that on machines of today that would be bought again', () => {
    const [three] = oneGroup(3, 'old');
    const years =
      againstOf(
        { ...rates, counterfactual: 'replaced-at-end-of-life' },
        {
          theatreGroups: [{ ...three, machineAgeYears: 8 }],
          machines: [{ ...oldMachine, unitPrice: '15000', installationPerUnit: '400' }, likeTheOld]
        }
      ).charges?.years ?? [];
    // 46 200 at the end of year 2, written off by 4 620 a year: 43 890 and 39 270 on average.
    expectFigures(
      years.map(({ writtenOff }) => writtenOff),
      [0, 6000, 6000, 1380, 1380, 0]
    );
    expectFigures(
      years.map(({ capitalCharge }) => capitalCharge),
      [0, 1995, 1785, 0.035 * (45_000 - 43_890), 0.035 * (39_000 - 39_270), 0]
    );
  });

  test('falls on leased machines from when they are bought', () => {
    const payment: Payment = {
      kind: 'lease',
      perUnitPerYear: '3000',
      includesService: false,
      includesConsumables: false,
      growthPercent: 0,
      inAdvance: false,
      termYears: 2,
      atEnd: 'buy',
      endPricePerUnit: '500'
    };
    const leasing: Scenario = { ...buying, moves: buying.moves.map((move) => ({ ...move, payment })) };
    const years = againstOf(rates, { scenario: leasing }).charges?.years ?? [];
    expectFigures(
      years.map(({ writtenOff }) => writtenOff),
      [0, 0, 0, 150, 150, 0]
    );
    expectFigures(
      years.map(({ capitalCharge }) => capitalCharge),
      [0, 0, 0, 0.035 * 1425, 0.035 * 1275, 0]
    );
  });
});

describe('tax', () => {
  test('is paid a year later, on what is saved less what is written off', () => {
    const { years, charges, npv } = againstOf({ taxPercent: 20 });
    const savings = years.slice(1).map(({ saving }) => Number(saving));
    // Year 0: three installed for 700 and traded in for 1 500; the 60 000 are written off.
    const taxes = [0, 0.2 * 3 * (1500 - 700), ...savings.map((saving) => 0.2 * (saving - 6000))];
    expectFigures(charges?.years.map(({ tax }) => tax) ?? [], taxes);
    const presentValue = taxes.reduce((sum, tax, year) => sum + tax / 1.03 ** year, 0);
    expectFigures(charges?.npvAfterTax ?? '', Number(npv) - presentValue);
  });

  test('is not paid on what machines are worth at the end', () => {
    const taxesOf = (residualValue: 'none' | 'straight-line') =>
      againstOf({ taxPercent: 20, residualValue }).charges?.years.map(({ tax }) => tax) ?? [];
    expectFigures(taxesOf('straight-line'), taxesOf('none').map(Number));
  });
});
