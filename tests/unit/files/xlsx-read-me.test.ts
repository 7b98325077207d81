import { expect, test } from 'vitest';
import { warningsOfCells } from '#lib/calc/estimate/warnings-of-cells.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { workbookSheets } from '#lib/files/xlsx/xlsx-out.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { bringing } from '../../fixtures/one-group.ts';

const readMeOf = (workbook: Workbook): string =>
  JSON.stringify(
    workbookSheets({
      workbook,
      reckoning: reckon(recorder, coreInput(workbook)),
      cautions: [],
      warnings: warningsOfCells(workbook),
      workingOf,
      citation
    })[0]
  );

test('the first sheet says where machines that come and theatres disagree', () => {
  const demo = demoWorkbook();
  const two = demo.scenarios.map((scenario) =>
    scenario.id === 'closed' ? { ...scenario, ...bringing('m-closed', 'closed', { byYear: [2] }) } : scenario
  );
  const sentence = 'brings 2 machines to 4 theatres';
  expect(readMeOf(demo)).not.toContain(sentence);
  expect(readMeOf({ ...demo, scenarios: two })).toContain(sentence);
});

test('the first sheet says that nobody knows what becomes of what is captured, and that pumps must run with the gas', () => {
  const demo = demoWorkbook();
  const levers: Workbook = {
    ...demo,
    theatreGroups: demo.theatreGroups.map((group) => ({
      ...group,
      scavengingPumpKW: 0.75,
      scavengingPumpHoursPerWeek: 168
    })),
    scenarios: demo.scenarios.map((scenario) =>
      scenario.id === 'closed'
        ? { ...scenario, capturePercent: 70, caughtBecomes: 'not-known', scavengingPumpHoursPerWeek: 60 }
        : scenario
    )
  };
  for (const sentence of ['what becomes of it is not known', 'must run whenever anaesthetic gas is given']) {
    expect(readMeOf(demo)).not.toContain(sentence);
    expect(readMeOf(levers)).toContain(sentence);
  }
});
