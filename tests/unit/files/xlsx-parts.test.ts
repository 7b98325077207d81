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
        // A chart keeps a table of its own.
        table.includes('<table:table-header-rows>') && !table.startsWith('table:name="local-table"')
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

/**
 * No schema of the open format, and no checker under a permissive licence, could be had: its rules that programs are
 * strict about are held here, from memory of ECMA-376 part 1 (18.2.27, 18.3.1.99, 18.8.39) and part 2 (package).
 */
describe('the parts keep the rules of the format', () => {
  /** Names of the elements within the outermost one, in their order. */
  function childrenOf(part: string): string[] {
    const names: string[] = [];
    let depth = 0;
    for (const [, end, name = '', closed] of part.matchAll(/<(\/?)([\w:]+)(?:"[^"]*"|[^">])*?(\/?)>/g)) {
      if (end === '/') depth -= 1;
      else {
        if (depth === 1) names.push(name);
        if (closed !== '/') depth += 1;
      }
    }
    expect(depth).toBe(0);
    return names;
  }
  const orders: readonly (readonly [RegExp, readonly string[]])[] = [
    [
      /^xl\/worksheets\/sheet\d+\.xml$/,
      [
        ...['sheetPr', 'dimension', 'sheetViews', 'sheetFormatPr', 'cols', 'sheetData', 'sheetCalcPr'],
        ...['sheetProtection', 'protectedRanges', 'scenarios', 'autoFilter', 'sortState', 'dataConsolidate'],
        ...['customSheetViews', 'mergeCells', 'phoneticPr', 'conditionalFormatting', 'dataValidations'],
        ...[
          'hyperlinks',
          'printOptions',
          'pageMargins',
          'pageSetup',
          'headerFooter',
          'rowBreaks',
          'colBreaks'
        ],
        ...['customProperties', 'cellWatches', 'ignoredErrors', 'smartTags', 'drawing', 'legacyDrawing'],
        ...['legacyDrawingHF', 'picture', 'oleObjects', 'controls', 'webPublishItems', 'tableParts', 'extLst']
      ]
    ],
    [
      /^xl\/workbook\.xml$/,
      [
        ...['fileVersion', 'fileSharing', 'workbookPr', 'workbookProtection', 'bookViews', 'sheets'],
        ...['functionGroups', 'externalReferences', 'definedNames', 'calcPr', 'oleSize', 'extLst']
      ]
    ],
    [
      /^xl\/styles\.xml$/,
      [
        ...['numFmts', 'fonts', 'fills', 'borders', 'cellStyleXfs', 'cellXfs', 'cellStyles', 'dxfs'],
        ...['tableStyles', 'colors', 'extLst']
      ]
    ]
  ];

  test('the elements of a part stand in the order of the schema', () => {
    for (const [which, order] of orders) {
      const named = [...parts].filter(([name]) => which.test(name));
      expect([which.source, named.length > 0]).toEqual([which.source, true]);
      for (const [name, part] of named) {
        const places = childrenOf(part).map((child) => order.indexOf(child));
        expect([name, places]).toEqual([name, places.toSorted((a, b) => a - b)]);
        expect([name, places.includes(-1)]).toEqual([name, false]);
      }
    }
  });

  test('rows and cells ascend, their looks and texts are there, and no cell stands twice', () => {
    const looks = Number(/<cellXfs count="(\d+)"/.exec(parts.get('xl/styles.xml') ?? '')?.[1]);
    const texts = (parts.get('xl/sharedStrings.xml') ?? '').match(/<si>/g)?.length ?? 0;
    expect(looks).toBeGreaterThan(3);
    let cells = 0;
    let shared = 0;
    const columnNumber = (letters: string): number =>
      [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
    for (const [name, part] of parts) {
      if (!name.startsWith('xl/worksheets/')) continue;
      let place = 0;
      for (const [, letters = '', row, attributes = '', inside = ''] of part.matchAll(
        /<c r="([A-Z]+)(\d+)"([^>]*?)(?:\/>|>(.*?)<\/c>)/gs
      )) {
        const next = Number(row) * 20_000 + columnNumber(letters);
        expect(next).toBeGreaterThan(place);
        place = next;
        cells += 1;
        expect(Number(/ s="(\d+)"/.exec(attributes)?.[1] ?? 0)).toBeLessThan(looks);
        if (!attributes.includes('t="s"')) continue;
        shared += 1;
        expect(Number(/<v>(\d+)<\/v>/.exec(inside)?.[1])).toBeLessThan(texts);
      }
    }
    expect(Math.min(cells, shared)).toBeGreaterThan(500);
  });

  test('each part has its type and each relation its part; sheets and names are unlike each other', () => {
    const types = parts.get('[Content_Types].xml') ?? '';
    for (const name of parts.keys()) {
      if (name === '[Content_Types].xml') continue;
      const ending = name.slice(name.lastIndexOf('.') + 1);
      expect([
        name,
        types.includes(`PartName="/${name}"`) || types.includes(`Extension="${ending}"`)
      ]).toEqual([name, true]);
    }
    for (const [, target = ''] of (parts.get('xl/_rels/workbook.xml.rels') ?? '').matchAll(
      / Target="([^"]*)"/g
    ))
      expect([target, parts.has(target.startsWith('/') ? target.slice(1) : `xl/${target}`)]).toEqual([
        target,
        true
      ]);
    const book = parts.get('xl/workbook.xml') ?? '';
    for (const names of [
      [...book.matchAll(/<sheet name="([^"]*)"/g)].map(([, name = '']) => name),
      [...book.matchAll(/<definedName ([^>]*)>/g)].map(([, attributes = '']) => attributes)
    ]) {
      expect(names.length).toBeGreaterThan(0);
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    }
    for (const [, name = ''] of book.matchAll(/<sheet name="([^"]*)"/g)) {
      const plain = name.replaceAll('&apos;', "'").replaceAll('&amp;', '&');
      expect([plain, plain.length <= 31 && !/[\\/?*:[\]]/.test(plain)]).toEqual([plain, true]);
    }
  });
});
