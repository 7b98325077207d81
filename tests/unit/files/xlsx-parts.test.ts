/** What stands in the parts of the spreadsheet file, and what an office program makes of it. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { crc32, inflateRawSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { workbookSheets } from '#lib/files/xlsx/xlsx-out.ts';
import type { Sheet } from '#lib/files/xlsx/sheet.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { zipEntries } from '#lib/files/read/zip-entries.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { findOffice } from '../../fixtures/recalculated.ts';

const workbook = demoWorkbook();
const sheets: readonly Sheet[] = [
  ...workbookSheets({
    workbook,
    reckoning: reckon(recorder, coreInput(workbook)),
    cautions: [],
    warnings: [],
    workingOf,
    citation
  }),
  { name: "The owner's, 2026!", frozenRows: 2, widthsCh: [8], rows: [[{ kind: 'text', text: 'Head' }]] }
];
let bytes: Uint8Array = new Uint8Array();
const parts = new Map<string, string>();

beforeAll(async () => {
  bytes = await writeSheets(sheets, { title: 'Parts' });
  for (const entry of zipEntries(bytes)) {
    const packed = bytes.subarray(entry.start, entry.start + entry.packedBytes);
    const plain = entry.packed ? inflateRawSync(packed) : packed;
    expect([entry.name, plain.length, crc32(plain)]).toEqual([entry.name, entry.bytes, entry.crc32]);
    parts.set(entry.name, new TextDecoder().decode(plain));
  }
});

const withTitles = sheets.filter(({ frozenRows }) => frozenRows > 0);

describe('rows that are printed on each page', () => {
  test('are named with the sheet’s name in quotation marks, one for each sheet that has them', () => {
    const defined = [
      ...(parts.get('xl/workbook.xml') ?? '').matchAll(
        /<definedName name="_xlnm.Print_Titles" localSheetId="(\d+)">(.*?)<\/definedName>/g
      )
    ].map(([, index, range = '']) => [sheets[Number(index)]?.name, range.replaceAll('&apos;', "'")]);
    expect(withTitles.length).toBeGreaterThan(10);
    expect(defined).toEqual(
      withTitles.map(({ name, frozenRows }) => [name, `'${name.replaceAll("'", "''")}'!$1:$${frozenRows}`])
    );
  });

  const office = findOffice();
  test.skipIf(office === null)('are repeated by LibreOffice on every one of these sheets', () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'xlsx-parts-'));
    try {
      writeFileSync(path.join(folder, 'a.xlsx'), bytes);
      const run = spawnSync(
        office as string,
        [
          `-env:UserInstallation=${pathToFileURL(path.join(folder, 'profile')).href}`,
          ...['--headless', '--convert-to', 'fods', '--outdir', folder, path.join(folder, 'a.xlsx')]
        ],
        { timeout: 240_000, encoding: 'utf8' }
      );
      expect([run.status, run.stderr]).toEqual([0, expect.anything()]);
      const tables = readFileSync(path.join(folder, 'a.fods'), 'utf8').split('<table:table ').slice(1);
      const repeated = tables.flatMap((table) =>
        table.includes('<table:table-header-rows>')
          ? [/table:name="([^"]*)"/.exec(table)?.[1]?.replaceAll('&apos;', "'")]
          : []
      );
      expect(repeated).toEqual(withTitles.map(({ name }) => name));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

test('sheets with inputs are locked without a password, but for the tinted cells, and their checks turn red', () => {
  const names = sheets.map(({ name }) => name);
  for (const { name, locked } of sheets) {
    const part = parts.get(`xl/worksheets/sheet${names.indexOf(name) + 1}.xml`) ?? '';
    expect([name, /<sheetProtection [^>]*sheet="1"/.test(part)]).toEqual([name, locked === true]);
    expect(part).not.toMatch(/<sheetProtection [^>]*(password|hashValue)=/);
    expect([name, part.includes('<conditionalFormatting ')]).toEqual([name, locked === true]);
    expect(part).toContain('paperSize="9"');
  }
  expect(parts.get('xl/styles.xml')).toMatch(/<protection locked="(0|false)"/);
});

test('inputs and results have names in formulas', () => {
  const defined = [
    ...(parts.get('xl/workbook.xml') ?? '').matchAll(/<definedName name="([^"]*)"[^>]*>(.*?)</g)
  ].map(([, name = '', range = '']) => [name, range.replaceAll('&apos;', "'")]);
  expect(defined).toContainEqual([
    'input.accounting.discountRatePercent',
    expect.stringMatching(/^'Settings'!\$C\$\d+$/)
  ]);
  expect(defined.some(([name = '']) => /^result\.\w+\.net_present_value$/.test(name))).toBe(true);
});

test('the theme and the program that wrote the file are ours, and no other program is named', () => {
  const theme = parts.get('xl/theme/theme1.xml') ?? '';
  expect(
    [...theme.matchAll(/<a:(?:theme|clrScheme|fontScheme|fmtScheme)[^>]* name="([^"]*)"/g)].map(
      ([, name]) => name
    )
  ).toEqual(Array.from({ length: 4 }, () => 'Vapour Ledger'));
  expect(parts.get('docProps/app.xml')).toContain('<Application>Vapour Ledger</Application>');
  for (const [name, text] of parts)
    expect([name, /hucre|Office Theme|name="Office"/i.test(text)]).toEqual([name, false]);
});

test('the colours of the theme are those of the pages on paper', () => {
  const tokens = readFileSync(new URL('../../../src/lib/sheets/frame/tokens.css', import.meta.url), 'utf8');
  const onPaper = (token: string) =>
    new RegExp(`--${token}: light-dark\\(#([0-9a-f]{6})`).exec(tokens)?.[1]?.toUpperCase();
  const theme = parts.get('xl/theme/theme1.xml') ?? '';
  const inTheme = (place: string) => new RegExp(`<a:${place}><a:srgbClr val="(\\w{6})"`).exec(theme)?.[1];
  expect(['dk2', 'lt2', 'hlink'].map(inTheme)).toEqual(['ink-soft', 'paper-sunk', 'input'].map(onPaper));
  for (let series = 1; series <= 6; series++)
    expect(inTheme(`accent${series}`)).toBe(onPaper(`series-${series}`));
});
