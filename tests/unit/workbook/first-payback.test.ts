/** How much has to be typed before a department sees a first payback: a promise that a new field must not break. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { addMove } from '#lib/workbook/edit-moves.ts';
import type { RowsChanged } from '#lib/workbook/edit-rows.ts';
import { insertRows } from '#lib/workbook/edit-rows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

test('from an empty workbook to a first payback at most 15 cells are typed', () => {
  let workbook: Workbook = blankWorkbook();
  let typed = 0;
  const type = (path: string, text: string): void => {
    const edited = editCells(workbook, [{ path, text }], 'en-GB');
    expect(edited.refused, path).toEqual([]);
    workbook = edited.workbook;
    typed += 1;
  };
  const click = (changed: RowsChanged): void => {
    expect(changed).toHaveProperty('workbook');
    if ('workbook' in changed) workbook = changed.workbook;
  };
  type('theatreGroups.main.theatres', '2');
  click(insertRows(workbook, { list: 'caseMix', at: 0, count: 1 }));
  type('caseMix.case.name', 'Hernia repair');
  type('caseMix.case.casesPerYear', '1500');
  type('caseMix.case.minutes', '90');
  type('agents.sevoflurane.bottlePrice', '118');
  click(insertRows(workbook, { list: 'machines', at: 1, count: 1 }));
  type('machines.machine.name', 'Closed circuit');
  type('machines.machine.unitPrice', '15000');
  type('machines.machine.leakMlPerMin', '30');
  click(insertRows(workbook, { list: 'flowPlans', at: 1, count: 1 }));
  type('flowPlans.plan.name', 'Low flow');
  type('flowPlans.plan.phases.1.flowLPerMin', '0.4');
  click(insertRows(workbook, { list: 'scenarios', at: 1, count: 1 }));
  click(addMove(workbook, 'scenario'));
  type('scenarios.scenario.plans.machine', 'Low flow');
  const [, scenario] = estimate(coreInput(workbook)).scenarios;
  expect(Number(scenario?.againstBaseline.investment)).toBe(30_000);
  expect(scenario?.againstBaseline.simplePaybackYears).toBeGreaterThan(0);
  expect(typed).toBeLessThanOrEqual(15);
});
