import { describe, expect, test } from 'vitest';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { departmentWorkbook } from '../../fixtures/department.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = departmentWorkbook();
const workbook: Workbook = {
  ...demo,
  accounting: { ...demo.accounting, customWarming: { sevoflurane: 200, desflurane: 2500 } },
  scenarios: demo.scenarios.map((scenario) =>
    scenario.id === 'closed' ? { ...scenario, flowPlanByCase: { breast: 'low', hip: 'low' } } : scenario
  ),
  caseMix: demo.caseMix.map((row) => (row.id === 'breast' ? { ...row, measuredMlPerCase: 12 } : row))
};

const emptied = (path: string): Workbook => {
  const { workbook: edited, refused } = editCells(workbook, [{ path, text: '' }], 'en-GB');
  expect(refused).toEqual([]);
  expect(parseWorkbook(edited).kind).toBe('workbook');
  return edited;
};

describe('a cell that is emptied', () => {
  test('leaves no own warming potential behind, where the others stay', () => {
    expect(emptied('accounting.customWarming.sevoflurane').accounting.customWarming).toStrictEqual({
      desflurane: 2500
    });
  });

  test('leaves no plan of its own behind for a case group', () => {
    const closed = emptied('scenarios.closed.flowPlanByCase.breast').scenarios.find(
      ({ id }) => id === 'closed'
    );
    expect(closed?.flowPlanByCase).toStrictEqual({ hip: 'low' });
  });

  test('leaves no switch of the agent behind', () => {
    const closed = emptied('scenarios.closed.agentSwitch.desflurane').scenarios.find(
      ({ id }) => id === 'closed'
    );
    expect(closed?.agentSwitch).toStrictEqual({});
  });

  test('holds “not given” where it is a cell of its own', () => {
    expect(emptied('caseMix.breast.measuredMlPerCase').caseMix[7]?.measuredMlPerCase).toBeNull();
    expect(emptied('site.departmentFootprintTonnes').site.departmentFootprintTonnes).toBeNull();
  });
});

test('a currency is a code of ISO 4217, in capitals or not', () => {
  const put = (text: string) => editCells(workbook, [{ path: 'currency', text }], 'en-GB');
  expect(put('gbp').workbook.currency).toBe('GBP');
  for (const text of ['XYZ', 'pounds', '€']) {
    expect(put(text).workbook.currency).toBe(workbook.currency);
    expect(put(text).refused[0]?.sentence).toMatch(/allowed is a code of ISO 4217/);
  }
});
