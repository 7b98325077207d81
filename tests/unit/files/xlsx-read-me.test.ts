import { expect, test } from 'vitest';
import { fleetWarnings } from '#lib/calc/fleet/fleet-warnings.ts';
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
      warnings: fleetWarnings(workbook),
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
