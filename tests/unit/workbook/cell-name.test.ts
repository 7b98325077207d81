import { expect, test } from 'vitest';
import { cellName, cellsName } from '#lib/workbook/cell-name.ts';
import { departmentWorkbook } from '../../fixtures/department.ts';

const workbook = departmentWorkbook();
const named = (path: string): string => cellName(workbook, path);

test('a cell is called after its sheet, its entry and its column', () => {
  expect(named('caseMix.lap-chole.minutes')).toBe(
    `Case mix, ${workbook.caseMix.find(({ id }) => id === 'lap-chole')!.name}: Minutes`
  );
  expect(named('accounting.appraisalYears')).toMatch(/^Accounting: /);
  expect(named('agents.sevoflurane.bottlePrice')).toMatch(/^Prices, sevoflurane: /);
});

test('a cell of a record is called after what its last part stands for, by the name that people gave it', () => {
  const closed = workbook.scenarios.find(({ id }) => id === 'closed')!;
  const [machine] = Object.keys(closed.plans);
  expect(named(`scenarios.closed.plans.${machine}`)).toContain(
    `Scenarios, ${closed.name}, ${workbook.machines.find(({ id }) => id === machine)!.name}: `
  );
  const group = workbook.theatreGroups[0]!;
  expect(named(`caseMix.lap-chole.theatreGroups.${group.id}`)).toContain(`, ${group.name}: `);
  expect(named('scenarios.closed.agentSwitch.desflurane')).toContain(', Desflurane: ');
  expect(named(`theatreGroups.${group.id}.monitors.capnography`)).toContain(', Capnography: ');
});

test('the end of a range is called after the cell that it is of', () => {
  expect(named('ranges.caseMix.lap-chole.minutes.low')).toBe(
    `Uncertainty, range of “${named('caseMix.lap-chole.minutes')}”: low`
  );
});

test('what varies together in a run is named once, and a cell by itself as ever', () => {
  const path = 'caseMix.lap-chole.minutes';
  expect(cellsName(workbook, [path, 'caseMix.hip.minutes'])).toBe('Minutes of all case groups together');
  expect(cellsName(workbook, [path])).toBe(named(path));
  expect(cellsName(workbook, ['modelError.spillFactor'])).toBe('The model itself: what is spilled');
});
