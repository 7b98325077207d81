import { DuckDBInstance } from '@duckdb/node-api';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { caseMixTable } from '#lib/files/case-log/case-mix-table.ts';
import type { GroupedCases } from '#lib/files/case-log/group-cases.ts';
import type { OpenedCaseLog } from '#lib/files/case-log/open-case-log.ts';
import { openCaseLog } from '#lib/files/case-log/open-case-log.ts';
import { readCaseLog } from '#lib/files/case-log/read-case-log.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import type { ReadTable } from '#lib/files/read/read-table.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { caseLog } from '../../../bench/case-log-generator.ts';

const log = { rows: 20_000, seed: 7 };
async function* pieces() {
  yield* caseLog(log);
}
const bytes = (text: string) => new TextEncoder().encode(text);
const pieceOf = (...given: readonly Uint8Array[]) =>
  async function* () {
    yield* given;
  };

async function opened(): Promise<OpenedCaseLog> {
  const result = await openCaseLog(pieces, { locale: 'en-GB' });
  if (result.kind === 'refused') throw new Error(result.sentence);
  return result;
}

async function grouped(): Promise<GroupedCases> {
  const { plan, columns } = await opened();
  const result = await readCaseLog(pieces, { plan, columns, allowed: [] });
  if (result.kind !== 'grouped') throw new Error(result.kind);
  return result.cases;
}

function imported(table: ReadTable) {
  const workbook = departmentWorkbook();
  const mapping = mapColumns(table.headers, importColumns('caseMix', workbook));
  const preview = previewImport(
    { ...workbook, agents: [...workbook.agents, { ...workbook.agents[0]!, agent: 'isoflurane' }] },
    { table: 'caseMix', file: table, mapping, mode: 'replace', locale: 'en-GB' }
  );
  return preview;
}

describe('a log of 20 000 cases', () => {
  test('is opened with its columns understood, and those that identify somebody refused', async () => {
    const { plan, columns } = await opened();
    expect(
      columns.flatMap(({ header, identifyingBecause }) => (identifyingBecause === null ? [] : [header]))
    ).toEqual(['Patient name', 'Record number', 'Date of birth']);
    expect(plan).toEqual({
      columns: {
        date: 3,
        technique: 5,
        agent: 6,
        minutes: 7,
        ageYears: 8,
        weightKg: 9,
        meanFlowLPerMin: 10,
        liquidMl: 11
      },
      groupBy: [4],
      locale: 'en-GB',
      dateOrder: 'year-month-day',
      durationsIn: 'min',
      daysCovered: null,
      fewestCases: 5
    });
  });

  test('is grouped, every row either taken or counted among those left out', async () => {
    const { groups, rowsRead, casesTaken, leftOut, daysCovered } = await grouped();
    expect(rowsRead).toBe(20_000);
    expect(casesTaken + leftOut.reduce((sum, { count }) => sum + count, 0)).toBe(20_000);
    expect(leftOut.length).toBeGreaterThanOrEqual(5);
    expect(daysCovered).toBe(730);
    expect(groups[0]).toMatchObject({
      name: 'Laparoscopic cholecystectomy',
      technique: 'volatile',
      agent: 'sevoflurane'
    });
    expect(JSON.stringify(groups)).not.toMatch(/Amsel|70000\d\d\d/);
  });

  test('becomes rows of the case mix, with ranges around the means', async () => {
    const { workbook, refusedCells, refusedRows } = imported(
      caseMixTable(await grouped(), departmentWorkbook(), 'en-GB')
    );
    expect([refusedCells, refusedRows]).toEqual([[], []]);
    expect(parseWorkbook(workbook).kind).toBe('workbook');
    expect(workbook.caseMix.length).toBeGreaterThan(13);
    const first = workbook.caseMix[0];
    expect(first?.id).toBe('lap-chole');
    const range = workbook.ranges['caseMix.lap-chole.minutes'];
    expect(range?.low).toBeLessThan(first?.minutes ?? 0);
    expect(range?.high).toBeGreaterThan(first?.minutes ?? 0);
    expect((range?.high ?? 0) - (range?.low ?? 0)).toBeLessThan(5);
  });

  test('does not read a column that may identify somebody, unless the user says that it does not', async () => {
    const { plan, columns } = await opened();
    const byRecord = { plan: { ...plan, groupBy: [1] }, columns };
    expect(await readCaseLog(pieces, { ...byRecord, allowed: [] })).toEqual({
      kind: 'refused',
      sentence:
        '“Record number” sounds like a name, number, birth date or address of a person. It is not read unless you say that it identifies nobody.'
    });
    const allowed = await readCaseLog(pieces, { ...byRecord, allowed: [1] });
    // All groups are then single cases, which are put together as “Other”.
    expect(allowed.kind === 'grouped' && new Set(allowed.cases.groups.map(({ name }) => name))).toEqual(
      new Set(['Other'])
    );
  });

  test('tells how far it is, and stops when it is told to', async () => {
    const { plan, columns } = await opened();
    const read: number[] = [];
    await readCaseLog(
      pieces,
      { plan, columns, allowed: [] },
      { progress: (bytesRead) => read.push(bytesRead) }
    );
    expect(read.length).toBeGreaterThan(3);
    expect(read).toEqual([...read].sort((a, b) => a - b));
    const stopper = new AbortController();
    const result = await readCaseLog(
      pieces,
      { plan, columns, allowed: [] },
      { progress: () => stopper.abort(), signal: stopper.signal }
    );
    expect(result).toEqual({ kind: 'cancelled' });
  });
});

describe('the same log in a database, grouped by sql/case-mix.sql', () => {
  let rows: readonly Record<string, unknown>[] = [];
  let csv = new Uint8Array();

  beforeAll(async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'case-log-'));
    try {
      const file = path.join(folder, 'log.csv');
      writeFileSync(file, Buffer.concat([...caseLog(log)]));
      const query = readFileSync(
        fileURLToPath(new URL('../../../../sql/case-mix.sql', import.meta.url)),
        'utf8'
      );
      const connection = await (await DuckDBInstance.create()).connect();
      await connection.run(`create view anaesthetics as
        select "Procedure" as procedure_name, try_cast("Date" as date) as day, try_cast("Minutes" as integer) as minutes,
          "Technique" as technique, "Agent" as agent, try_cast("Age" as integer) as age_years,
          try_cast("Weight" as double) as weight_kg, try_cast("Mean flow" as double) as mean_flow_l_per_min,
          try_cast("Liquid agent" as double) as liquid_ml
        from read_csv('${file}', all_varchar = true, header = true)`);
      rows = (await connection.runAndReadAll(query)).getRowObjectsJson();
      const out = path.join(folder, 'case-mix.csv');
      await connection.run(`copy (${query}) to '${out}' (header)`);
      csv = readFileSync(out);
      connection.closeSync();
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('gives the importer’s rows, figure for figure', async () => {
    const { headers, rows: own } = caseMixTable(await grouped(), departmentWorkbook(), 'en-GB');
    const columns = [
      ...['case_group', 'cases', 'minutes', 'age', 'weight', 'technique', 'agent', 'measured'],
      ...['minutes_low', 'minutes_high', 'age_low', 'age_high', 'weight_low', 'weight_high']
    ];
    expect(headers).toHaveLength(columns.length);
    const texts = (row: readonly unknown[]) =>
      row.map((cell) => (cell === null ? '' : String(cell).toLowerCase())).join(' | ');
    expect(rows.map((row) => texts(columns.map((column) => row[column]))).sort()).toEqual(
      own.map((row) => texts(row.texts)).sort()
    );
  });

  test('imports straight into the case mix', async () => {
    const read = readCsv(csv);
    if (read.kind === 'refused') throw new Error(read.sentence);
    const fromDatabase = imported(read.table);
    const fromLog = imported(caseMixTable(await grouped(), departmentWorkbook(), 'en-GB'));
    expect([fromDatabase.refusedCells, fromDatabase.refusedRows]).toEqual([[], []]);
    expect(fromDatabase.notes).toContain('Columns that are not taken: mean_flow.');
    const byName = ({ workbook }: typeof fromLog) =>
      workbook.caseMix
        .map(({ id, ...row }) => ({ ...row, range: workbook.ranges[`caseMix.${id}.minutes`] }))
        .sort((a, b) => (`${a.name} ${a.agent}` < `${b.name} ${b.agent}` ? -1 : 1));
    expect(byName(fromDatabase)).toEqual(byName(fromLog));
  });
});

describe('a file that is no log', () => {
  const refusal = async (...given: readonly Uint8Array[]) => {
    const result = await openCaseLog(pieceOf(...given), { locale: 'en-GB' });
    return result.kind === 'refused' ? result : null;
  };

  test.each([
    [bytes(''), 'The file is empty.'],
    [bytes('a,b\n'), 'The file has headings and no rows below them.'],
    [bytes('a,A\n1,2\n'), 'Columns 1 and 2 are both called “A”: give each a heading of its own.'],
    [bytes('%PDF-1.7'), 'The file is a PDF. A case log is a CSV file.'],
    [bytes('a,b\n1,\0'), 'The file is not text: it has zero bytes in it.'],
    [bytes('a,b\n1,"2\n3'), 'A quotation mark is never closed, so the file is cut off or damaged.'],
    [
      bytes(`${Array.from({ length: 100_000 }, (_, index) => `c${index}`).join(',')}\n1`),
      'The file has 100000 columns; a log has at most 500.'
    ]
  ])('%# is refused with a sentence', async (given, sentence) => {
    expect((await refusal(given))?.sentence).toBe(sentence);
  });

  test('in an older encoding, that is offered', async () => {
    const latin = Uint8Array.from(
      [...'Eingriff;Minuten\nH\u00fcfte;90\n'].map((letter) => letter.charCodeAt(0))
    );
    expect((await refusal(latin))?.offer).toBe('windows-1252');
    const again = await openCaseLog(pieceOf(latin), { locale: 'de-DE', encoding: 'windows-1252' });
    expect(again.kind === 'log' && again.columns.map(({ header }) => header)).toEqual([
      'Eingriff',
      'Minuten'
    ]);
  });

  test('a plan that lacks what is needed says what to choose', async () => {
    const { plan, columns } = await opened();
    const sentence = async (change: Partial<typeof plan>) => {
      const result = await readCaseLog(pieces, { plan: { ...plan, ...change }, columns, allowed: [] });
      return result.kind === 'refused' ? result.sentence : null;
    };
    expect(await sentence({ groupBy: [] })).toMatch(/^Choose the column that names a group/);
    expect(await sentence({ columns: { date: 3, agent: 6 } })).toMatch(/^Choose the column with the minutes/);
    expect(await sentence({ columns: { date: 3, minutes: 7 } })).toMatch(
      /agent or the one with the technique/
    );
    expect(await sentence({ columns: { agent: 6, minutes: 7 } })).toMatch(
      /with the date, or say how many days/
    );
  });
});
