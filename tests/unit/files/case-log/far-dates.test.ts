import { DuckDBInstance } from '@duckdb/node-api';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { daysOfLog } from '#lib/files/case-log/far-dates.ts';
import type { CaseLogPlan, GroupedCases } from '#lib/files/case-log/group-cases.ts';
import { groupCases } from '#lib/files/case-log/group-cases.ts';
import { dayOf, isoDay } from '#lib/files/case-log/log-dates.ts';

const plan: CaseLogPlan = {
  columns: { date: 0, minutes: 2, agent: 3 },
  groupBy: [1],
  locale: 'en-GB',
  dateOrder: 'year-month-day',
  durationsIn: 'min',
  daysCovered: null,
  fewestCases: 1
};
const first = dayOf('2025-01-01', 'year-month-day') as number;
/** So many cases, evenly over 2025. */
const of2025 = (cases: number) =>
  Array.from({ length: cases }, (_, index) => isoDay(first + Math.floor((index * 365) / cases)));
const withOne = (cases: number, date: string) => of2025(cases).with(Math.floor(cases / 2), date);

function grouped(dates: readonly string[], more: Partial<CaseLogPlan> = {}): GroupedCases {
  const grouper = groupCases({ ...plan, ...more });
  dates.forEach((date, index) => grouper.add([date, 'Knee', '60', 'Sevo'], index + 2));
  return grouper.finish();
}

describe('one mistyped year does not stretch the days that the log covers', () => {
  test.each(['2052-07-02', '2015-07-02', '2026-07-02', '1987-01-01'])('%s', (date) => {
    const { groups, remarks, daysCovered, firstDate, lastDate } = grouped(withOne(1000, date));
    expect([firstDate, lastDate, daysCovered]).toEqual(['2025-01-01', '2025-12-31', 365]);
    expect(groups[0]?.cases).toBe(1000);
    expect(groups[0]?.casesPerYear).toBeCloseTo((1000 * 365.25) / 365, 9);
    expect(remarks).toHaveLength(1);
    expect(remarks[0]).toMatchObject({ count: 1, lines: [502] });
    expect(remarks[0]?.reason).toContain(
      `Far from all other dates (2025-01-01 to 2025-12-31), perhaps mistyped: ${date}.`
    );
  });

  test('and the remark says how to count it, which is then done without a remark', () => {
    const dates = withOne(1000, '2052-01-01');
    expect(grouped(dates).remarks[0]?.reason).toContain('give 9862 as the days that the log covers');
    const { daysCovered, remarks } = grouped(dates, { daysCovered: 9862 });
    expect([daysCovered, remarks]).toEqual([9862, []]);
  });

  test('however few the other cases of a small log', () => {
    expect(grouped(withOne(20, '2052-07-02')).daysCovered).toBeLessThan(366);
  });
});

describe('dates that are not far', () => {
  test.each([
    ['so few cases that a gap says nothing', ['2025-01-01', '2025-01-02', '2025-06-01'], 152],
    ['rare cases over years', Array.from({ length: 30 }, (_, index) => isoDay(first + index * 100)), 2901],
    [
      'a closure, with more than a few cases before it',
      [...of2025(100), ...of2025(100).map((date) => date.replace('2025', '2027'))],
      1092
    ],
    ['the last case of the year, after weeks without', [...of2025(300), '2026-03-01'], 425]
  ])('%s', (_, dates, days) => {
    const { daysCovered, remarks } = grouped(dates);
    expect([daysCovered, remarks]).toEqual([days, []]);
  });
});

test('the longest stretch without a case is told', () => {
  const dates = of2025(730).filter((date) => date < '2025-04-10' || date > '2025-05-20');
  expect(grouped(dates)).toMatchObject({ longestGap: { days: 41, after: '2025-04-09' }, daysCovered: 365 });
  expect(grouped(of2025(730)).longestGap).toBeNull();
});

test('far dates at both ends are told in order', () => {
  const casesOn = new Map([...of2025(500)].map((date) => [dayOf(date, 'year-month-day') as number, 2]));
  casesOn
    .set(first - 3000, 1)
    .set(first + 9000, 2)
    .set(first + 5000, 1);
  expect(daysOfLog(casesOn)).toMatchObject({
    first,
    last: first + 364,
    far: [first - 3000, first + 5000, first + 9000]
  });
});

test('the query for a database leaves the same dates out of the span', async () => {
  const query = readFileSync(fileURLToPath(new URL('../../../../sql/case-mix.sql', import.meta.url)), 'utf8');
  const connection = await (await DuckDBInstance.create()).connect();
  for (const dates of [
    of2025(1000),
    withOne(1000, '2052-07-02'),
    withOne(1000, '2015-07-02'),
    withOne(20, '2052-07-02'),
    [...of2025(300), '2026-03-01'],
    [...of2025(199), '2014-01-01', '2014-01-02', '2040-01-01'],
    ['2025-01-01', '2025-01-02', '2025-01-02', '2025-01-02', '2025-06-01']
  ]) {
    await connection.run(`create or replace view anaesthetics as
      select 'Knee' as procedure_name, cast(day as date) as day, 60 as minutes, 'volatile' as technique,
        'sevoflurane' as agent, null::int as age_years, null::int as weight_kg, null::int as mean_flow_l_per_min,
        null::int as liquid_ml
      from (values ${dates.map((date) => `('${date}')`).join(',')}) as given(day)`);
    const [row] = (await connection.runAndReadAll(query)).getRowObjectsJson();
    expect(row?.['cases']).toBe(Math.round((grouped(dates).groups[0]?.casesPerYear ?? NaN) * 10) / 10);
  }
  connection.closeSync();
});
