/** Files as programs really export them: line ends of two kinds, UTF-16, a line that names the delimiter. */
import { describe, expect, test } from 'vitest';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { openCaseLog } from '#lib/files/case-log/open-case-log.ts';
import { readCaseLog } from '#lib/files/case-log/read-case-log.ts';

async function grouped(...given: readonly (string | Uint8Array)[]) {
  async function* pieces() {
    for (const piece of given) yield typeof piece === 'string' ? new TextEncoder().encode(piece) : piece;
  }
  const opened = await openCaseLog(pieces, { locale: 'en-GB' });
  if (opened.kind === 'refused') throw new Error(opened.sentence);
  const { plan, columns } = opened;
  const result = await readCaseLog(pieces, {
    plan: { ...plan, daysCovered: 365, fewestCases: 1 },
    columns,
    allowed: []
  });
  if (result.kind !== 'grouped') throw new Error(JSON.stringify(result));
  return result.cases;
}

const heading = 'Date,Procedure,Minutes,Agent';
const row = 'Knee,60,Sevo';
const rows = (count: number, end: string) =>
  Array.from({ length: count }, () => `2025-03-04,${row}${end}`).join('');

describe('line ends', () => {
  test.each([
    ['the heading ends as on one system, the rows as on another', `${heading}\r\n${rows(40, '\n')}`],
    ['the second half ends otherwise than the first', `${heading}\r\n${rows(20, '\r\n')}${rows(20, '\n')}`],
    ['the first half ends otherwise', `${heading}\n${rows(20, '\n')}${rows(20, '\r\n')}`],
    ['carriage returns alone are among them', `${heading}\n${rows(20, '\r')}${rows(20, '\r\n')}`]
  ])('mixed, every case is taken: %s', async (_, text) => {
    expect(await grouped(text)).toMatchObject({ rowsRead: 40, casesTaken: 40, leftOut: [] });
  });

  test('cut between carriage return and line feed are one line end', async () => {
    const cases = await grouped(`${heading}\r\n2025-03-04,${row}\r`, `\n2025-03-04,,60,Sevo\r`, `\n`);
    expect(cases.leftOut).toEqual([{ reason: 'No group is named.', count: 1, lines: [3] }]);
    expect(cases.casesTaken).toBe(1);
  });
});

test('a line with more cells than headings is left out and counted, not taken with its cells moved', async () => {
  const cases = await grouped(`${heading}\n${rows(3, '\n')}2025-03-04,Knee, left,60,Sevo\n${rows(1, ',\n')}`);
  expect(cases.casesTaken).toBe(4);
  expect(cases.leftOut).toEqual([
    { reason: 'The line has more cells than there are headings.', count: 1, lines: [5] }
  ]);
});

describe('UTF-16, as “Unicode text” is saved', () => {
  const inUtf16 = (text: string, isLittle: boolean) => {
    const view = new DataView(new ArrayBuffer(2 + 2 * text.length));
    view.setUint16(0, 0xfeff, isLittle);
    [...text].forEach((letter, index) => view.setUint16(2 + 2 * index, letter.charCodeAt(0), isLittle));
    return new Uint8Array(view.buffer);
  };

  test.each([true, false])('is read by its byte order mark (little-endian: %s)', async (isLittle) => {
    const bytes = inUtf16(`${heading}\r\n${rows(6, '\r\n')}`.replaceAll(',', '\t'), isLittle);
    const cases = await grouped(bytes.slice(0, 61), bytes.slice(61));
    expect(cases).toMatchObject({ rowsRead: 6, casesTaken: 6 });
  });
});

describe('a first line `sep=;`', () => {
  const text =
    'sep=;\r\nDate;Procedure;Minutes;Agent\r\n2025-03-04;Knee, left;60;Sevo\r\n2025-03-04;;60;Sevo\r\n';

  test('names the delimiter of a log, and lines are counted as in the file', async () => {
    const { groups, leftOut } = await grouped(text);
    expect(groups.map(({ name }) => name)).toEqual(['Knee, left']);
    expect(leftOut[0]?.lines).toEqual([4]);
  });

  test('names the delimiter of a table', () => {
    const read = readCsv(new TextEncoder().encode(text));
    expect(read).toMatchObject({
      kind: 'table',
      delimiter: ';',
      table: { headers: ['Date', 'Procedure', 'Minutes', 'Agent'], rows: [{ line: 3 }, { line: 4 }] }
    });
  });
});
