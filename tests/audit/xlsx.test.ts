/** Every input cell of the spreadsheets of some workbooks, changed in turn: `npm run audit:xlsx`. It takes a while. */
import { describe, expect, test } from 'vitest';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../fixtures/every-branch.ts';
import { findOffice } from '../fixtures/recalculated.ts';
import { audit, auditSheets, cellsToAudit } from '../fixtures/spreadsheet-audit.ts';
import { wholeWorkbook } from '../fixtures/whole-workbook.ts';

const office = findOffice();

const workbooks: readonly (readonly [what: string, workbook: Workbook])[] = [
  ['a small workbook', wholeWorkbook()],
  ...everyBranch.map((workbook, index) => [`every branch (${index})`, workbook] as const)
];

describe.each(workbooks)('%s', (_what, workbook) => {
  test('each cell is followed, or its check turns red', async () => {
    if (office === null) throw new Error('LibreOffice was not found: let SOFFICE name it.');
    const sheets = auditSheets(workbook);
    const cells = cellsToAudit(workbook, sheets);
    console.log(`${cells.length} cells, ${cells.filter(({ isTinted }) => isTinted).length} of them tinted`);
    expect(await audit(office, sheets, cells)).toEqual([]);
  });
});
