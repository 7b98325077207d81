import { describe, expect, test } from 'vitest';
import type { CaseLogPlan } from '#lib/files/case-log/group-cases.ts';
import { groupCases } from '#lib/files/case-log/group-cases.ts';
import { dayOf, guessDateOrder, isoDay } from '#lib/files/case-log/log-dates.ts';
import { agentOf, techniqueOf } from '#lib/workbook/trade-words.ts';

const plan: CaseLogPlan = {
  columns: { date: 0, minutes: 2, ageYears: 3, weightKg: 4, agent: 5, technique: 6, liquidMl: 7 },
  groupBy: [1],
  locale: 'en-GB',
  dateOrder: 'day-month-year',
  durationsIn: 'min' as const,
  daysCovered: null,
  fewestCases: 1
};

function grouped(rows: readonly (readonly string[])[], more: Partial<CaseLogPlan> = {}) {
  const grouper = groupCases({ ...plan, ...more });
  rows.forEach((row, index) => grouper.add(row, index + 2));
  return grouper.finish();
}
const row = (text: string) => text.split('|');

test('cases of one kind become a group with means, and a year’s cases by the span of the dates', () => {
  const { groups, ...told } = grouped([
    row('1.1.2025|Knee|60|50|80|Sevo|GA|10'),
    row('20.6.2025|knee|90|60|90|Sevoflurane|balanced|20'),
    row('31.12.2025|Hip|120|70|70||spinal|')
  ]);
  expect(told).toMatchObject({
    rowsRead: 3,
    casesTaken: 3,
    leftOut: [],
    firstDate: '2025-01-01',
    lastDate: '2025-12-31',
    daysCovered: 365
  });
  expect(groups).toHaveLength(2);
  expect(groups[0]).toMatchObject({ name: 'knee', technique: 'volatile', agent: 'sevoflurane', cases: 2 });
  expect(groups[0]?.casesPerYear).toBeCloseTo((2 * 365.25) / 365, 12);
  // Variance of 60 and 90 is 450, the squared standard error of their mean 225: mean ∓ √7 · 15.
  expect(groups[0]?.minutes).toMatchObject({ mean: 75, deviation: Math.sqrt(450), cases: 2 });
  expect(groups[0]?.minutes.low).toBeCloseTo(75 - Math.sqrt(7) * 15, 10);
  expect(groups[0]?.liquidMl?.mean).toBe(15);
  expect(groups[1]).toMatchObject({ name: 'Hip', technique: 'regional', agent: null, liquidMl: null });
  expect(groups[1]?.minutes).toEqual({ mean: 120, deviation: null, low: null, high: null, cases: 1 });
});

test('a PERT distribution between low and high has the standard error as its standard deviation', () => {
  const minutes = [50, 60, 70, 95, 120, 61];
  const { groups } = grouped(minutes.map((each) => row(`1.1.2025|Knee|${each}|50|80|Sevo|GA|`)));
  const {
    mean = NaN,
    low = NaN,
    high = NaN,
    deviation = NaN
  } = { ...groups[0]?.minutes } as Record<string, number>;
  // Beta-PERT with shape 4: α and β from the mode, variance (high − low)² αβ / ((α + β)² (α + β + 1)).
  const alpha = 1 + (4 * (mean - low)) / (high - low);
  const beta = 1 + (4 * (high - mean)) / (high - low);
  const variance = ((high - low) ** 2 * alpha * beta) / ((alpha + beta) ** 2 * (alpha + beta + 1));
  expect(Math.sqrt(variance)).toBeCloseTo(deviation / Math.sqrt(minutes.length), 10);
});

test('what cannot be taken is counted by reason, with lines to look at and nothing of what stands there', () => {
  const { leftOut, remarks, casesTaken } = grouped([
    row('1.1.2025|Knee|60|50|80|Sevo|GA|10'),
    row('1.1.2025||60|50|80|Sevo|GA|'),
    row('31.2.2025|Knee|60|50|80|Sevo|GA|'),
    row('1.1.2025|Knee|about an hour|50|80|Sevo|GA|'),
    row('1.1.2025|Knee|0|50|80|Sevo|GA|'),
    row('1.1.2025|Knee|60|50|80|Xenon|GA|'),
    row('1.1.2025|Knee|60|50|80||hypnosis|'),
    row('1.1.2025|Knee|60|50|80||GA|'),
    row('1.1.2025|Knee|60|150|800|Sevo|GA|')
  ]);
  expect(casesTaken).toBe(2);
  expect(leftOut).toEqual([
    { reason: 'Minutes are missing, or no number above 0 to 1440.', count: 2, lines: [5, 6] },
    { reason: 'No group is named.', count: 1, lines: [3] },
    { reason: 'The date is missing or none of the calendar.', count: 1, lines: [4] },
    { reason: 'The agent is none that is known here.', count: 1, lines: [7] },
    { reason: 'The technique is not given, or none that is known here.', count: 1, lines: [8] },
    { reason: 'A volatile anaesthetic without an agent.', count: 1, lines: [9] }
  ]);
  expect(remarks).toEqual([
    { reason: 'Age is no number that can be.', count: 1, lines: [10] },
    { reason: 'Weight is no number that can be.', count: 1, lines: [10] }
  ]);
});

describe('an agent that is named was used', () => {
  test.each([
    ['Sevoflurane', 'GA + epidural', 0],
    ['Sevoflurane', 'General anaesthesia and TAP block', 0],
    ['Sevoflurane', 'Balanced (propofol induction, sevoflurane)', 0],
    ['Sevoflurane', 'General + IV paracetamol', 1],
    ['Sevoflurane', 'TIVA', 1],
    ['Sevoflurane', 'spinal', 1],
    ['Sevoflurane', 'LMA', 1],
    ['', 'GA (sevoflurane) + epidural', 0]
  ])('%s beside “%s” is a volatile anaesthetic', (agent, technique, remarked) => {
    const { groups, leftOut, remarks } = grouped([row(`1.1.2025|Knee|60|50|80|${agent}|${technique}|10`)]);
    expect(leftOut).toEqual([]);
    expect(groups).toHaveLength(1);
    expect(groups[0]).toMatchObject({ technique: 'volatile', agent: 'sevoflurane', liquidMl: { mean: 10 } });
    expect(remarks).toEqual(
      remarked === 0
        ? []
        : [
            {
              reason: 'An agent is named beside another technique, so the case is taken as a volatile one.',
              count: 1,
              lines: [2]
            }
          ]
    );
  });

  test('but “GA + epidural” without one is left out and said, not taken as a regional anaesthetic', () => {
    expect(() => grouped([row('1.1.2025|Knee|60|50|80||GA + epidural|')])).toThrow(
      'None of 1 rows can be taken. A volatile anaesthetic without an agent: 1, first in line 2.'
    );
  });
});

test('groups of a few persons lose their name, and go where they stay too few', () => {
  const { groups, casesTaken, leftOut } = grouped(
    [
      ...Array.from({ length: 5 }, () => row('1.1.2025|Knee|60|50|80|Sevo|GA|')),
      ...Array.from({ length: 3 }, (_, index) => row(`1.1.2025|Rare ${index}|80|50|80|Sevo|GA|`)),
      ...Array.from({ length: 2 }, () => row('1.1.2025|Rarer|100|50|80|Sevo|GA|')),
      row('1.1.2025|Rarest|100|50|80|Iso|GA|')
    ],
    { fewestCases: 5 }
  );
  expect(groups.map(({ name, cases }) => [name, cases])).toEqual([
    ['Knee', 5],
    ['Other', 5]
  ]);
  expect(groups[1]?.minutes.mean).toBe(88);
  expect(casesTaken).toBe(10);
  expect(leftOut).toEqual([
    { reason: 'Fewer than 5 cases, also when put together as “Other”.', count: 1, lines: [] }
  ]);
});

test('several columns name a group together, and a log without dates needs its days', () => {
  const { columns, ...rest } = plan;
  const { date: _, ...dateless } = columns;
  const more = { ...rest, columns: dateless, groupBy: [1, 8] };
  const rows = [row('|Knee|60|50|80|Sevo|GA||day'), row('|Knee|60|50|80|Sevo|GA||stay')];
  expect(
    grouped(rows, { ...more, daysCovered: 73.05 }).groups.map(({ name, casesPerYear }) => [
      name,
      casesPerYear
    ])
  ).toEqual([
    ['Knee, day', 5],
    ['Knee, stay', 5]
  ]);
  expect(() => grouped(rows, more)).toThrow(/choose the column with the date, or say how many/);
});

test('a column that tells single cases apart is no group', () => {
  const grouper = groupCases(plan);
  expect(() => {
    for (let index = 0; index < 20_001; index++)
      grouper.add(row(`1.1.2025|case ${index}|60|50|80|Sevo|GA|`), index);
  }).toThrow(/more than 20000 groups: choose columns that name a kind of case/);
});

test('a log of which nothing can be taken says why', () => {
  expect(() => grouped([row('1.1.2025|Knee||50|80|Sevo|GA|')])).toThrow(
    'None of 1 rows can be taken. Minutes are missing, or no number above 0 to 1440: 1, first in line 2.'
  );
});

describe('dates', () => {
  test.each([
    ['2025-03-04', 'day-month-year', '2025-03-04'],
    ['2025-03-04T10:15:00', 'month-day-year', '2025-03-04'],
    ['20250304', 'day-month-year', '2025-03-04'],
    ['4.3.2025', 'day-month-year', '2025-03-04'],
    ['04/03/25 08:00', 'day-month-year', '2025-03-04'],
    ['03/04/2025', 'month-day-year', '2025-03-04'],
    ['04-MAR-25', 'day-month-year', '2025-03-04'],
    ['04-MAR-2025 10:15', 'month-day-year', '2025-03-04'],
    ['4. März 2025', 'day-month-year', '2025-03-04'],
    ['4 mars 2025', 'day-month-year', '2025-03-04'],
    ['4 de marzo de 2025', 'day-month-year', '2025-03-04'],
    ['Mar 4, 2025', 'month-day-year', '2025-03-04'],
    ['2025-Mar-04', 'day-month-year', '2025-03-04'],
    ['45720', 'day-month-year', '2025-03-04'],
    ['45720.75', 'day-month-year', '2025-03-04']
  ] as const)('%s read as %s is %s', (text, order, iso) => {
    expect(isoDay(dayOf(text, order) ?? NaN)).toBe(iso);
  });

  test.each([
    '',
    '31.2.2025',
    '2025-13-01',
    '1.1.1825',
    'soon',
    '12:30',
    '31-FEB-25',
    '4 cases 2025',
    '12345',
    '99999'
  ])('%j is no date', (text) => {
    expect(dayOf(text, 'day-month-year')).toBeNull();
  });

  test('the order is found from a date that can be read one way only, else from the locale', () => {
    expect(guessDateOrder(['1/2/2025', '1/13/2025'], 'en-GB')).toBe('month-day-year');
    expect(guessDateOrder(['1/2/2025', '13/1/2025'], 'en-US')).toBe('day-month-year');
    expect(guessDateOrder(['1/2/2025'], 'en-US')).toBe('month-day-year');
    expect(guessDateOrder(['1/2/2025'], 'de-DE')).toBe('day-month-year');
    expect(guessDateOrder(['2025-02-01'], 'de-DE')).toBe('year-month-day');
  });
});

test.each([
  ['Sevoflurane', 'sevoflurane'],
  ['SEVO', 'sevoflurane'],
  ['Sévoflurane', 'sevoflurane'],
  ['Desfluran', 'desflurane'],
  ['iso', 'isoflurane'],
  ['TIVA', null],
  ['–', null],
  ['O2/N2O/Sevo', 'sevoflurane'],
  ['air, then isoflurane', 'isoflurane'],
  ['no sevoflurane', undefined],
  ['xenon', undefined]
])('the agent %s is %s', (text, agent) => {
  expect(agentOf(text)).toBe(agent);
});

test.each([
  ['General anaesthesia', 'volatile'],
  ['ITN', 'volatile'],
  ['balancierte Anästhesie', 'volatile'],
  ['TIVA', 'intravenous'],
  ['Total intravenous', 'intravenous'],
  ['Spinal', 'regional'],
  ['Epidural + sedation', 'regional'],
  ['Two nerve blocks', 'regional'],
  ['GA + epidural', 'volatile'],
  ['General anaesthesia and TAP block', 'volatile'],
  ['Balanced (propofol induction)', 'volatile'],
  ['General, TIVA', 'intravenous'],
  ['hypnosis', undefined]
])('the technique %s is %s', (text, technique) => {
  expect(techniqueOf(text)).toBe(technique);
});
