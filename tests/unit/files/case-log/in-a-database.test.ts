/** The query for a database against the importer, on two engines: the same words, the same rows, the same figures. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DuckDBInstance } from '@duckdb/node-api';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { caseMixTable } from '#lib/files/case-log/case-mix-table.ts';
import { groupCases } from '#lib/files/case-log/group-cases.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { caseLog } from '../../../bench/case-log-generator.ts';
import { findPostgres, onPostgres } from '../../../fixtures/postgres.ts';

const query = readFileSync(fileURLToPath(new URL('../../../../sql/case-mix.sql', import.meta.url)), 'utf8');
const postgres = findPostgres();

/** Texts in the order of the view’s columns; an empty one is null but in the words. */
type LogRow = readonly string[];
const columns = [
  ['procedure_name', 'text'],
  ['day', 'date'],
  ['minutes', 'integer'],
  ['technique', 'text'],
  ['agent', 'text'],
  ['age_years', 'integer'],
  ['weight_kg', 'double precision'],
  ['mean_flow_l_per_min', 'double precision'],
  ['liquid_ml', 'double precision']
] as const;

function tableOf(rows: readonly LogRow[]): string {
  const value = (text: string, kind: string): string =>
    kind !== 'text' && text === '' ? 'null' : `'${text.replaceAll("'", "''")}'`;
  const made = `create table anaesthetics (${columns.map((column) => column.join(' ')).join(', ')});\n`;
  const lines = rows.map(
    (row) => `(${columns.map(([, kind], at) => value(row[at] ?? '', kind)).join(', ')})`
  );
  return `${made}insert into anaesthetics values\n${lines.join(',\n')};\n`;
}

/** What the query gives, each row as texts; numbers as they are read, so that 75.0 is 75. */
type Rows = readonly string[];
const asRow = (cells: readonly unknown[]): string =>
  cells
    .map((cell) => {
      const text = cell === null ? '' : String(cell).toLowerCase();
      return text !== '' && Number.isFinite(Number(text)) ? String(Number(text)) : text;
    })
    .join(' | ');
const taken = [
  ...['case_group', 'cases', 'minutes', 'age', 'weight', 'technique', 'agent', 'measured'],
  ...['minutes_low', 'minutes_high', 'age_low', 'age_high', 'weight_low', 'weight_high']
];

async function byDuckDb(rows: readonly LogRow[]): Promise<Rows> {
  const connection = await (await DuckDBInstance.create()).connect();
  await connection.run(tableOf(rows));
  const found = (await connection.runAndReadAll(query)).getRowObjectsJson();
  connection.closeSync();
  return found.map((row) => asRow(taken.map((column) => row[column]))).sort();
}

function byPostgres(rows: readonly LogRow[], initdb: string): Rows {
  return onPostgres(initdb, (run) => {
    const csv = run(`${tableOf(rows)}copy (${query}) to stdout (format csv, header);\n`);
    const found = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;
    return found.map((row) => asRow(taken.map((column) => row[column] ?? ''))).sort();
  });
}

function byImporter(rows: readonly LogRow[]): Rows {
  const grouper = groupCases({
    columns: { date: 1, minutes: 2, technique: 3, agent: 4, ageYears: 5, weightKg: 6, liquidMl: 8 },
    groupBy: [0],
    locale: 'en-GB',
    dateOrder: 'day-month-year',
    durationsIn: 'min',
    daysCovered: null,
    fewestCases: 5
  });
  rows.forEach((row, index) => grouper.add(row, index + 2));
  const { headers, rows: made } = caseMixTable(grouper.finish(), blankWorkbook(), 'en-GB');
  expect(headers).toHaveLength(taken.length);
  return made.map(({ texts }) => asRow(texts)).sort();
}

const techniques = [
  ...[
    'volatile',
    'Volatiles',
    'intravenous',
    'IV',
    'regional',
    'TIVA',
    'TCI (propofol)',
    'GA',
    'ITN',
    'General'
  ],
  ...[
    'GA + epidural',
    'general anaesthesia, TAP block',
    'Spinal',
    'spinal/sedation',
    'Plexus',
    'blocks',
    'local'
  ],
  ...[
    'balanced (propofol, sevoflurane)',
    'Inhalation',
    'inhalatorisch',
    'Sedation',
    'hypnosis',
    'no sevoflurane'
  ],
  ...[
    'ohne Sevofluran',
    'desflurane then sevoflurane',
    'Péridurale',
    'rachianesthésie',
    'gas',
    'vapour',
    '',
    ' '
  ]
];
const agents = [
  ...[
    'Sevo',
    'SEVOFLURANE',
    'desflurane',
    'iso',
    'Isofluran',
    'Halothan',
    'enflurane',
    'Propofol',
    'TIVA',
    'none'
  ],
  ...[
    'n/a',
    'kein',
    'xenon',
    'no sevoflurane',
    'propofol + sevo',
    'nitrous, isoflurane, then desflurane',
    '',
    '?'
  ]
];
/** Every pair of words six times, so that none is lost among the small groups. */
const words: readonly LogRow[] = techniques.flatMap((technique, at) =>
  agents.flatMap((agent, index) =>
    Array.from({ length: 6 }, (_, day) => [
      `Kind ${at}.${index}`,
      `2025-0${day + 1}-15`,
      String(30 + at + 4 * day),
      technique,
      agent,
      String(20 + index),
      String(60 + day / 2),
      '',
      day % 2 === 0 ? String(10 + day) : ''
    ])
  )
);

/** A log as a hospital exports it, with what is no number or date taken for none, as a view does. */
function exported(): readonly LogRow[] {
  const text = Buffer.concat([...caseLog({ rows: 4000, seed: 7 })]).toString('utf8');
  const number = /^-?\d+(\.\d+)?$/;
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data.map((row) => {
    const numberIn = (column: string, whole: boolean): string => {
      const given = (row[column] ?? '').trim();
      return number.test(given) && !(whole && given.includes('.')) ? given : '';
    };
    const day = (row['Date'] ?? '').trim();
    return [
      row['Procedure'] ?? '',
      /^\d{4}-\d{2}-\d{2}$/.test(day) ? day : '',
      numberIn('Minutes', true),
      row['Technique'] ?? '',
      row['Agent'] ?? '',
      numberIn('Age', true),
      numberIn('Weight', false),
      '',
      numberIn('Liquid agent', false)
    ];
  });
}

describe.each([
  ['words of the trade, each agent with each technique', words],
  ['a log with defects', exported()]
])('%s', (_what, rows) => {
  const own = byImporter(rows);

  test('gives more than a few rows', () => {
    expect(own.length).toBeGreaterThan(10);
  });

  test('DuckDB gives the importer’s rows', async () => {
    expect(await byDuckDb(rows)).toEqual(own);
  });

  test.skipIf(postgres === null)(
    `PostgreSQL gives the importer’s rows${postgres === null ? ' (skipped: there is no PostgreSQL here; POSTGRES_BIN may name one)' : ''}`,
    () => {
      expect(byPostgres(rows, postgres ?? '')).toEqual(own);
    }
  );
});
