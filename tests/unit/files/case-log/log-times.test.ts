import { describe, expect, test } from 'vitest';
import { dayOf } from '#lib/files/case-log/log-dates.ts';
import { minutesBetween, timeOf } from '#lib/files/case-log/log-times.ts';
import type { CaseLogPlan } from '#lib/files/case-log/group-cases.ts';
import { groupCases } from '#lib/files/case-log/group-cases.ts';
import { openCaseLog } from '#lib/files/case-log/open-case-log.ts';
import { readCaseLog } from '#lib/files/case-log/read-case-log.ts';

const day = dayOf('2025-03-04', 'year-month-day');

describe('a moment', () => {
  test.each([
    ['10:15', null, 615],
    ['10.15', null, 615],
    ['10h15', null, 615],
    ['10:15 Uhr', null, 615],
    ['1015', null, 615],
    ['915', null, 555],
    ['10:15:30', null, 615.5],
    ['10:15 PM', null, 1335],
    ['12:05 a.m.', null, 5],
    ['24:00', null, 1440],
    ['T08:00', null, 480],
    ['2025-03-04 10:15', day, 615],
    ['2025-03-04T10:15:00', day, 615],
    ['2025-03-04T10:15:00.000Z', day, 615],
    ['04.03.2025 10.15', day, 615],
    ['04/03/2025, 10:15', day, 615],
    ['4.3.25 8:05', day, 485],
    ['20250304T1015', day, 615],
    ['04-MAR-25 10:15', day, 615],
    ['4 March 2025, 10:15', day, 615],
    ['45720.427083333', day, 615],
    ['45720,427083333', day, 615],
    ['202503041015', day, 615],
    ['20250304101500', day, 615]
  ])('%s', (text, wantedDay, minute) => {
    expect(timeOf(text, 'day-month-year')).toMatchObject({ day: wantedDay, minute });
  });

  test.each([
    '',
    '2025-03-04',
    '25:00',
    '10:60',
    '24:01',
    '13:00 pm',
    '31.2.2025 10:00',
    'noon',
    '7',
    '75 min',
    '10:15 to 11'
  ])('%j is none', (text) => {
    expect(timeOf(text, 'day-month-year')).toBeNull();
  });
});

describe('the minutes between', () => {
  test.each([
    ['10:15', '11:30', 75],
    ['23:30', '00:45', 75],
    ['2025-03-04 23:30', '00:45', 75],
    ['23:30', '2025-03-05 00:45', 75],
    ['2025-03-04 10:15', '11:30', 75],
    ['2025-03-04 23:30', '2025-03-05 00:45', 75],
    ['2025-03-04 10:00', '2025-03-05 11:00', 1500],
    ['2025-03-04T10:00+01:00', '2025-03-04T10:00+00:00', 60],
    ['2025-12-31 23:00', '2026-01-01 01:00', 120],
    ['2025-03-04 11:00', '2025-03-04 10:00', 'backwards'],
    ['11:00', '10:00', 'ambiguous'],
    ['2025-03-04 11:00', '10:00', 'ambiguous'],
    ['10:00', '10:00', 'ambiguous'],
    ['2025-03-04 10:00', '2025-03-04 10:00', 0]
  ])('from %s to %s', (start, end, minutes) => {
    const [from, to] = [start, end].map((text) => timeOf(text, 'year-month-day'));
    expect(from && to && minutesBetween(from, to)).toBe(minutes);
  });
});

async function* pieces(csv: string) {
  yield await Promise.resolve(new TextEncoder().encode(csv));
}

async function groupedLog(csv: string) {
  const opened = await openCaseLog(() => pieces(csv), { locale: 'en-GB' });
  if (opened.kind !== 'log') throw new Error(opened.sentence);
  const plan = { ...opened.plan, fewestCases: 1 };
  const read = await readCaseLog(() => pieces(csv), { plan, columns: opened.columns, allowed: [] });
  if (read.kind !== 'grouped') throw new Error(read.kind === 'refused' ? read.sentence : read.kind);
  return { plan, cases: read.cases };
}

test('a log with start and end instead of minutes needs no date column', async () => {
  const { plan, cases } = await groupedLog(
    [
      'Procedure,Start time,End time,Agent',
      'Knee,2025-03-04 10:00,2025-03-04 11:00,Sevo',
      'Knee,2025-03-05 23:30,2025-03-06 01:00,Sevo',
      'Knee,2025-03-06 12:00,2025-03-06 11:00,Sevo',
      'Knee,2025-03-06 12:00,,Sevo',
      'Knee,2025-03-06 12:00,2025-03-09 12:00,Sevo',
      'Knee,2025-03-13 08:00,2025-03-13 09:15,Sevo'
    ].join('\n')
  );
  expect(plan.columns).toMatchObject({ start: 1, end: 2, agent: 3 });
  expect(plan.columns.date).toBeUndefined();
  expect(cases.groups[0]?.minutes.mean).toBe(75);
  expect(cases).toMatchObject({
    casesTaken: 3,
    firstDate: '2025-03-04',
    lastDate: '2025-03-13',
    daysCovered: 10
  });
  expect(cases.leftOut).toEqual([
    { reason: 'The end is before the start.', count: 1, lines: [4] },
    { reason: 'The start or the end is missing, or no time of day.', count: 1, lines: [5] },
    { reason: 'From start to end there are no minutes, or more than 1440.', count: 1, lines: [6] }
  ]);
});

test('a date and two times of day, over midnight; what may be mixed up is left out', async () => {
  const { cases } = await groupedLog(
    [
      'Datum;Eingriff;Beginn;Ende;Narkosegas',
      '04.03.2025;Knie;23.30;00.45;Sevofluran',
      '05.03.2025;Knie;08:00;09:15;Sevofluran',
      '05.03.2025;Knie;11:00;10:00;Sevofluran',
      '05.03.2025;Knie;11:00;11:00;Sevofluran'
    ].join('\n')
  );
  expect(cases.groups[0]).toMatchObject({ cases: 2, minutes: { mean: 75 } });
  expect(cases.leftOut).toEqual([
    {
      reason:
        'Start and end are times of day with no time between them, or more than 12 hours over midnight: they may be mixed up.',
      count: 2,
      lines: [4, 5]
    }
  ]);
});

test.each([
  ['Duration (h)', '1.25'],
  ['Duration', '1:15'],
  ['Duration', '75 min'],
  ['Minutes', '75'],
  ['Hours', '1.25']
])('a duration under %s as %s', async (header, duration) => {
  const { cases } = await groupedLog(`Date,Procedure,${header},Agent\n2025-03-04,Knee,${duration},Sevo`);
  expect(cases.groups[0]?.minutes.mean).toBe(75);
});

test('hours with a fraction are exact in minutes', () => {
  const plan: CaseLogPlan = {
    columns: { minutes: 0, technique: 1 },
    groupBy: [2],
    locale: 'en-GB',
    dateOrder: 'year-month-day',
    durationsIn: 'h',
    daysCovered: 365,
    fewestCases: 1
  };
  const grouper = groupCases(plan);
  grouper.add(['1.1', 'Spinal', 'Knee'], 2);
  expect(grouper.finish().groups[0]?.minutes.mean).toBe(66);
});
