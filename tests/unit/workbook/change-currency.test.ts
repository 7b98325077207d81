import { describe, expect, test } from 'vitest';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { convertedAmount, countOfAmounts, withCurrency } from '#lib/workbook/change-currency.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { aDesk } from '../../fixtures/a-desk.ts';

const price = 'agents.sevoflurane.bottlePrice';
const blank = blankWorkbook();
const priced: Workbook = {
  ...blank,
  agents: blank.agents.map((each) =>
    each.agent === 'sevoflurane' ? { ...each, bottlePrice: '118.00' } : each
  ),
  scenarios: blank.scenarios.map((each) => ({
    ...each,
    avoidedPurchases: [{ year: 1, units: 2, unitPrice: '100.00' }]
  })),
  ranges: { [price]: { low: 100, high: 120 } },
  notes: { [price]: { text: 'tender', date: '2026-01-02', grade: 'invoiced' } }
};
const to = (become: Parameters<typeof withCurrency>[1]['become']) =>
  withCurrency(priced, { to: 'GBP', become, day: '2026-03-01' });

test.each([
  ['118.00', '0.86', '101.48'],
  ['100', '1', '100.00'],
  ['0.25', '1.08345', '0.2708625'],
  ['0.0000000001', '0.5', '0.0000000001'],
  ['0.0000000001', '0.4', '0.00'],
  ['-12.50', '2', '-25.00'],
  ['999999999.99', '1.1', '1099999999.989']
])('%s at %s is %s', (amount, rate, wanted) => {
  expect(convertedAmount(amount, rate)).toBe(wanted);
});

describe('another currency', () => {
  test('with amounts converted takes ranges and purchases avoided along, and says what they were', () => {
    const workbook = to({ kind: 'converted', rate: '0.5' });
    expect(workbook).toMatchObject({
      currency: 'GBP',
      ranges: { [price]: { low: 50, high: 60 } },
      notes: {
        [price]: { text: 'Converted from 118.00 EUR at 0.5. tender', date: '2026-01-02', grade: 'invoiced' }
      }
    });
    expect(workbook.agents[0]?.bottlePrice).toBe('59.00');
    expect(workbook.scenarios[0]?.avoidedPurchases[0]?.unitPrice).toBe('50.00');
    expect(parseWorkbook(workbook).kind).toBe('workbook');
  });

  test('with amounts kept changes nothing else', () => {
    expect(to({ kind: 'kept' })).toEqual({ ...priced, currency: 'GBP' });
  });

  test('with amounts cleared leaves none, and no range or note of one', () => {
    const workbook = to({ kind: 'cleared' });
    expect([countOfAmounts(workbook), workbook.ranges, workbook.notes]).toEqual([0, {}, {}]);
    expect(parseWorkbook(workbook).kind).toBe('workbook');
  });
});

describe('a currency typed on the desk', () => {
  test('asks what becomes of the amounts before anything is written', () => {
    const desk = aDesk({ workbook: priced });
    desk.edit([{ path: 'currency', text: 'gbp' }]);
    expect(desk.workbook).toBe(priced);
    expect(desk.currencyQuestion).toMatchObject({ from: 'EUR', to: 'GBP', amounts: 2 });
    desk.currencyQuestion?.answer(null);
    expect([desk.workbook, desk.currencyQuestion]).toEqual([priced, null]);
    desk.edit([{ path: 'currency', text: 'GBP' }]);
    desk.currencyQuestion?.answer({ kind: 'converted', rate: '0.5' });
    expect(desk.workbook.agents[0]?.bottlePrice).toBe('59.00');
    expect(desk.message?.sentence).toBe('Prices are in GBP now; their amounts were multiplied by 0.5.');
    desk.undo();
    expect(desk.workbook).toBe(priced);
  });

  test('is taken at once where there is no amount, and refused where it is no currency', () => {
    const desk = aDesk({ workbook: blank });
    desk.edit([{ path: 'currency', text: 'GBP' }]);
    expect([desk.workbook.currency, desk.currencyQuestion]).toEqual(['GBP', null]);
    desk.edit([{ path: 'currency', text: 'ZZZ' }]);
    expect([desk.workbook.currency, desk.currencyQuestion]).toEqual(['GBP', null]);
  });
});
