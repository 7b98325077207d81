/** What may be changed in the spreadsheet, what is fixed, and that the file says which is which. */
import { describe, expect, test } from 'vitest';
import { checkHeaders } from '#lib/files/tables/added-headers.ts';
import { differsFormula } from '#lib/files/xlsx/check-formula.ts';
import type { Sheet } from '#lib/files/xlsx/sheet.ts';
import { cellAddress, columnLetters } from '#lib/files/xlsx/sheet.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../../fixtures/every-branch.ts';
import { auditSheets } from '../../fixtures/spreadsheet-audit.ts';
import { wholeWorkbook } from '../../fixtures/whole-workbook.ts';

const reference = /'((?:[^']|'')+)'!\$([A-Z]+)\$(\d+)(?::\$([A-Z]+)\$(\d+))?/g;
const columnNumber = (letters: string): number =>
  [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** The cells that formulas of the results take, and those that these take, down to cells without a formula. */
function reached(sheets: readonly Sheet[]): ReadonlySet<string> {
  const byName = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  const seen = new Set<string>();
  const waiting: string[] = [];
  const follow = (formula: string): void => {
    for (const [, quoted = '', from = '', first = '', to = from, last = first] of formula.matchAll(
      reference
    )) {
      const sheet = quoted.replaceAll("''", "'");
      for (let row = Number(first) - 1; row < Number(last); row++)
        for (let column = columnNumber(from); column <= columnNumber(to); column++) {
          const address = cellAddress(sheet, { row, column });
          if (seen.has(address)) continue;
          seen.add(address);
          const cell = byName.get(sheet)?.rows[row]?.[column];
          if (cell?.kind === 'formula') waiting.push(cell.formula);
        }
    }
  };
  for (const name of ['Results', 'Cash flow', 'Year'])
    for (const cell of byName.get(name)?.rows.flat() ?? [])
      if (cell?.kind === 'formula') waiting.push(cell.formula);
  for (let formula = waiting.pop(); formula !== undefined; formula = waiting.pop()) follow(formula);
  return seen;
}

const workbooks: readonly (readonly [what: string, workbook: Workbook])[] = [
  ['a small workbook', wholeWorkbook()],
  ...everyBranch.map((workbook, index) => [`every branch (${index})`, workbook] as const)
];

describe.each(workbooks)('%s', (_what, workbook) => {
  const sheets = auditSheets(workbook);
  const locked = sheets.filter((sheet) => sheet.locked === true);
  const cells = locked.flatMap(({ name, rows }) =>
    rows.flatMap((row, at) =>
      row.map((cell, column) => ({
        cell,
        address: cellAddress(name, { row: at, column }),
        sheet: name,
        at,
        column
      }))
    )
  );
  const tinted = cells.filter(({ cell }) => cell?.look === 'input' || cell?.look === 'price');
  const fixed = cells.filter(({ cell }) => cell?.look === 'fixed' || cell?.look === 'fixed-price');
  const followed = reached(sheets);

  test('each tinted cell is one from which a result follows, and there are many', () => {
    expect(tinted.filter(({ address }) => !followed.has(address)).map(({ address }) => address)).toEqual([]);
    expect(tinted.length).toBeGreaterThan(25);
  });

  test('each number that a result follows from is tinted, or fixed and looked after by the check of its row', () => {
    const unlooked = cells.filter(({ cell, address, sheet, at, column }) => {
      if (!followed.has(address) || cell?.kind !== 'number') return false;
      if (cell.look === 'input' || cell.look === 'price') return false;
      const check = sheets.find(({ name }) => name === sheet)?.rows[at]?.at(-1);
      return check?.kind !== 'formula' || !check.formula.includes(`(${columnLetters(column)}${at + 1}<>`);
    });
    expect(unlooked.map(({ address }) => address)).toEqual([]);
  });

  test('what is fixed is said at the end of its row', () => {
    const tables = fixed.filter(({ sheet }) => !['Constants', 'Other inputs'].includes(sheet));
    expect(tables.length).toBeGreaterThan(50);
    for (const { sheet, at, column } of tables) {
      const rows = sheets.find(({ name }) => name === sheet)?.rows ?? [];
      const [head, said] = [rows[0]?.[column], rows[at]?.at(-2)];
      const heading = head?.kind === 'text' ? head.text : '';
      const words = said?.kind === 'text' ? said.text : '';
      expect(sheet === 'Settings' ? words : words.includes(heading)).toEqual(
        sheet === 'Settings' ? 'Fixed' : true
      );
    }
  });

  test('the name of a plan that is said again in a further row is looked after by the check of the row', () => {
    const rows = sheets.find(({ name }) => name === 'Flow plans')?.rows ?? [];
    const again = rows.flatMap(([name], at) => {
      const above = rows[at - 1]?.[0];
      return name?.kind === 'text' && above?.kind === 'text' && name.text === above.text ? [at] : [];
    });
    expect(again.length).toBeGreaterThan(1);
    for (const at of again) {
      expect(rows[at]?.[0]?.look).toBeUndefined();
      expect(rows[at]?.at(-1)).toMatchObject({ formula: expect.stringContaining(`EXACT(A${at + 1},`) });
    }
  });

  test('each locked sheet has its check, which turns red', () => {
    expect(locked.length).toBeGreaterThan(10);
    for (const { rows, alerts = [] } of locked) {
      const head = rows[0]?.at(-1);
      expect(head).toMatchObject({ kind: 'formula', result: checkHeaders.asSaved });
      const column = columnLetters((rows[0]?.length ?? 0) - 1);
      expect(alerts[0]?.cells).toBe(`${column}1`);
    }
  });

  test('each tinted cell of a table has a name, and so has each result; no name stands twice', () => {
    const names = sheets.flatMap((sheet) => sheet.names ?? []);
    const named = new Set(names.map(({ address }) => address));
    const ofTables = tinted.filter(({ sheet }) => !['Constants', 'Other inputs'].includes(sheet));
    expect(ofTables.filter(({ address }) => !named.has(address))).toEqual([]);
    expect(new Set(names.map(({ name }) => name)).size).toBe(names.length);
    for (const { name } of names) expect(name).toMatch(/^(input|result)\.[A-Za-z0-9_.]+$/);
    expect(names.some(({ name }) => name.endsWith('.net_present_value'))).toBe(true);
  });

  test('steps are named by what they were first needed for', () => {
    const steps = sheets.find(({ name }) => name === 'Steps')?.rows ?? [];
    const said = steps
      .slice(1)
      .map((row) => (row.at(-1)?.kind === 'text' ? (row.at(-1) as { text: string }).text : ''));
    expect(said.some((words) => /against today, year \d/.test(words))).toBe(true);
  });
});

test('a text is compared by its letters, whatever is in it, in a formula that a spreadsheet takes', () => {
  expect(differsFormula('B2', 75.5)).toBe('(B2<>75.5)');
  expect(differsFormula('B2', -3)).toBe('(B2<>(-3))');
  expect(differsFormula('B2', '')).toBe('(B2<>"")');
  expect(differsFormula('B2', 'the "big" list')).toBe('(1-EXACT(B2,"the ""big"" list"))');
  expect(differsFormula('B2', 'one\ntwo')).toBe('(1-EXACT(LEFT(B2,3),"one"))');
  expect(differsFormula('B2', '胆囊')).toBe('(B2="")');
  expect(differsFormula('B2', '#REF!')).toBe('0');
  expect(differsFormula('B2', 'x'.repeat(9999)).length).toBeLessThan(300);
});
