/** Thirty input cells of a spreadsheet, changed in turn; all of them by `npm run audit:xlsx`. */
import { describe, expect, test } from 'vitest';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../../fixtures/every-branch.ts';
import { findOffice } from '../../fixtures/recalculated.ts';
import type { AuditedCell } from '../../fixtures/spreadsheet-audit.ts';
import { audit, auditSheets, cellsToAudit } from '../../fixtures/spreadsheet-audit.ts';
import { wholeWorkbook } from '../../fixtures/whole-workbook.ts';

const office = findOffice();
const workbook = wholeWorkbook();
const sheets = auditSheets(workbook);
const cells = cellsToAudit(workbook, sheets);

/** So many of them, spread evenly over all. */
const spread = (of: readonly AuditedCell[], count: number): readonly AuditedCell[] =>
  of.filter(
    (_, index) => Math.floor((index * count) / of.length) !== Math.floor(((index - 1) * count) / of.length)
  );

describe.runIf(office !== null)('thirty cells, each changed by itself', () => {
  const tinted = spread(
    cells.filter(({ isTinted, workbook: changed }) => isTinted && changed !== null),
    18
  );
  const fixed = spread(
    cells.filter(({ isTinted }) => !isTinted),
    12
  );

  test('are followed as the tool follows them, or turn their check red', async () => {
    expect([tinted.length, fixed.length]).toEqual([18, 12]);
    expect(await audit(office ?? '', sheets, [...tinted, ...fixed])).toEqual([]);
  });

  test('costs of scenarios to which several rates fit are followed too', async () => {
    const several = everyBranch[0] as Workbook;
    const of = auditSheets(several);
    const costs = cellsToAudit(several, of).filter(({ name }) =>
      /^scenarios\.(today|losing)\.(oneOffCost|yearlyExtraCost)$/.test(name)
    );
    expect(costs).toHaveLength(4);
    expect(await audit(office ?? '', of, costs)).toEqual([]);
  });

  test('one that is called tinted and is fixed, and one whose figures are others, are found', async () => {
    const [price] = cells.filter(
      ({ name, isTinted, workbook: changed }) => isTinted && changed !== null && name.endsWith('Price')
    );
    const [locked] = fixed.filter(
      ({ workbook: changed, typed }) => changed !== null && typed.kind === 'number'
    );
    if (price === undefined || locked === undefined) throw new Error('There is no such cell.');
    const found = await audit(office ?? '', sheets, [
      { ...price, workbook },
      { ...locked, isTinted: true }
    ]);
    expect(found.map(({ cell }) => cell)).toEqual([price.name, locked.name]);
  });
});
