import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readXlsxTables } from '#lib/files/read/xlsx-in.ts';
import type { SheetCell } from '#lib/files/xlsx/sheet.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { withZipTexts } from '#lib/files/read/zip-entries.ts';
import { zipSize } from '#lib/files/read/zip-size.ts';

const sheet = (name: string, rows: readonly (readonly (string | number)[])[]) => ({
  name,
  frozenRows: 0,
  widthsCh: [],
  rows: rows.map((row) =>
    row.map((cell): SheetCell =>
      typeof cell === 'number' ? { kind: 'number', value: cell } : { kind: 'text', text: cell }
    )
  )
});

const refusal = async (bytes: Uint8Array) => {
  const read = await readXlsxTables(bytes, 'en-GB');
  return read.kind === 'refused' ? read.sentence : null;
};

/** A ZIP archive of one entry, whose headers may say anything of its size. */
function zipOf(packed: Uint8Array, { saysBytes }: { saysBytes: number }): Uint8Array {
  const name = new TextEncoder().encode('xl/workbook.xml');
  const head = (signature: number, extra: readonly number[]) => {
    const bytes = new Uint8Array(26 + extra.length);
    const view = new DataView(bytes.buffer);
    view.setUint32(0, signature, true);
    bytes.set(extra, 26);
    return { bytes, view };
  };
  const local = head(0x04034b50, [0, 0, 0, 0]);
  local.view.setUint16(8, 8, true);
  local.view.setUint32(18, packed.length, true);
  local.view.setUint32(22, saysBytes, true);
  local.view.setUint16(26, name.length, true);
  const entry = head(
    0x02014b50,
    Array.from({ length: 20 }, () => 0)
  );
  entry.view.setUint16(10, 8, true);
  entry.view.setUint32(20, packed.length, true);
  entry.view.setUint32(24, saysBytes, true);
  entry.view.setUint16(28, name.length, true);
  const start = local.bytes.length + name.length + packed.length;
  const end = new Uint8Array(22);
  const view = new DataView(end.buffer);
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, 1, true);
  view.setUint16(10, 1, true);
  view.setUint32(12, entry.bytes.length + name.length, true);
  view.setUint32(16, start, true);
  return Uint8Array.from([...local.bytes, ...name, ...packed, ...entry.bytes, ...name, ...end]);
}

test('tables are read with their headings, numbers in the locale’s way', async () => {
  const bytes = await writeSheets(
    [sheet('Mix', [['Case group', 'Minutes'], ['Knee', 72.5], [], ['Hip', 90]]), sheet('Empty', [])],
    { title: 'x' }
  );
  expect(await readXlsxTables(bytes, 'de-DE')).toEqual({
    kind: 'sheets',
    sheets: [
      {
        name: 'Mix',
        sentence: null,
        table: {
          headers: ['Case group', 'Minutes'],
          rows: [
            { line: 2, texts: ['Knee', '72,5'] },
            { line: 4, texts: ['Hip', '90'] }
          ]
        }
      },
      { name: 'Empty', table: null, sentence: 'The sheet is empty.' }
    ]
  });
});

test('a sheet that is no table says why', async () => {
  const wide = Array.from({ length: 501 }, (_, index) => `c${index}`);
  const bytes = await writeSheets(
    [
      sheet('Wide', [wide, wide]),
      sheet('Twice', [
        ['Age', 'age'],
        [1, 2]
      ]),
      sheet('Beyond', [['Age'], [1, 2]]),
      sheet('Bare', [['Age', 'Weight']])
    ],
    { title: 'x' }
  );
  const read = await readXlsxTables(bytes, 'en-GB');
  expect(read.kind === 'sheets' && read.sheets.map(({ sentence }) => sentence)).toEqual([
    'The sheet has more than 500 columns, more than any grid takes.',
    'Columns 1 and 2 are both called “age”: give each a heading of its own.',
    'Row 2 has 2 cells, but there are 1 headings in row 1.',
    null
  ]);
  expect(read.kind === 'sheets' && read.sheets[3]?.table).toEqual({ headers: ['Age', 'Weight'], rows: [] });
});

test('a file that is no spreadsheet is told what it is', async () => {
  expect(await refusal(new TextEncoder().encode('a,b\n1,2'))).toBe(
    'The file is no spreadsheet. A spreadsheet has to be saved as XLSX, or each table as CSV.'
  );
  expect(await refusal(Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0, 0))).toMatch(/XLS, DOC.*password/);
  expect(await refusal(new Uint8Array())).toBe('The file is empty.');
  expect(await refusal(new Uint8Array(20_000_001))).toMatch(/20\.0 MB/);
  expect(await refusal(zipOf(deflateRawSync('<x/>'), { saysBytes: 4 }))).toMatch(
    /no spreadsheet in it can be read/
  );
});

test('a file that is cut off is refused', async () => {
  const bytes = await writeSheets([sheet('Mix', [['a'], [1]])], { title: 'x' });
  for (const share of [0.1, 0.5, 0.9, 0.999]) {
    expect(await refusal(bytes.slice(0, Math.floor(bytes.length * share)))).toBe(
      'The file is cut off or damaged: fetch or save it again.'
    );
  }
});

test('a file that unpacks to gigabytes is not opened, whatever it says of its size', async () => {
  const packed = deflateRawSync(new Uint8Array(300_000_000), { level: 9 });
  expect(packed.length).toBeLessThan(400_000);
  for (const saysBytes of [4, 300_000_000]) {
    expect(await refusal(zipOf(packed, { saysBytes }))).toBe(
      'The file unpacks to more than 100 MB, more than can be read here, so it was not opened. The workbook’s own file (JSON) holds the same.'
    );
  }
});

test('the size of an archive is what it unpacks to', async () => {
  const bytes = zipOf(deflateRawSync('hello'.repeat(1000)), { saysBytes: 1 });
  expect(await zipSize(bytes, { bytes: 10_000, textBytes: 10_000 })).toEqual({ kind: 'size', bytes: 5000 });
  expect(await zipSize(bytes, { bytes: 4999, textBytes: 10_000 })).toEqual({ kind: 'over-limit' });
});

describe('what was not measured is not read, whichever way an archive leads to it:', () => {
  const little = (value: number, bytes: number) =>
    Array.from({ length: bytes }, (_, at) => Math.floor(value / 256 ** at) % 256);
  const read = async (bytes: Uint8Array) => JSON.stringify(await readXlsxTables(bytes, 'en-GB'));
  const spreadsheet = () => writeSheets([sheet('Mix', [['Case group'], ['Knee']])], { title: 'x' });
  /** Of an archive without a comment: where its directory begins, and where the record that ends it. */
  const placesIn = (bytes: Uint8Array) => {
    const end = bytes.length - 22;
    return { end, directory: new DataView(bytes.buffer, bytes.byteOffset).getUint32(end + 16, true) };
  };

  test('a second directory, by the records for archives beyond four gigabytes', async () => {
    const bytes = await spreadsheet();
    expect(await read(bytes)).toContain('Knee');
    const { directory, end } = placesIn(bytes);
    const entries = new DataView(bytes.buffer, bytes.byteOffset).getUint16(end + 10, true);
    const first = bytes.slice(directory, end);
    const two = Uint8Array.from([
      ...bytes.subarray(0, end),
      // The directory that an old reader meets, with the first entry alone.
      ...first,
      ...[...little(0x06064b50, 4), ...little(44, 8), ...little(45, 2), ...little(45, 2), ...little(0, 8)],
      ...[
        ...little(entries, 8),
        ...little(entries, 8),
        ...little(end - directory, 8),
        ...little(directory, 8)
      ],
      ...[...little(0x07064b50, 4), ...little(0, 4), ...little(end + first.length, 8), ...little(1, 4)],
      ...[...little(0x06054b50, 4), ...little(0, 4), ...little(1, 2), ...little(1, 2)],
      ...[...little(0xffffffff, 4), ...little(end, 4), ...little(0, 2)]
    ]);
    expect(await read(two)).toMatch(/no spreadsheet in it can be read/);
  });

  test('a part that is empty by the directory, and is not by its own header', async () => {
    const name = 'xl/sharedStrings.xml';
    const bytes = withZipTexts(
      await spreadsheet(),
      new Map([[name, '<sst><si><t>Case group</t></si><si><t>Hip</t></si></sst>']])
    );
    expect(await read(bytes)).toContain('Hip');
    const view = new DataView(bytes.buffer);
    let at = placesIn(bytes).directory;
    const nameAt = (place: number) =>
      new TextDecoder().decode(bytes.subarray(place + 46, place + 46 + view.getUint16(place + 28, true)));
    while (nameAt(at) !== name) at += 46 + view.getUint16(at + 28, true);
    // Its size follows its bytes, says the flag, and the directory has none.
    view.setUint16(at + 8, view.getUint16(at + 8, true) | 8, true);
    view.setUint32(at + 20, 0, true);
    expect(await read(bytes)).not.toContain('Hip');
  });
});
