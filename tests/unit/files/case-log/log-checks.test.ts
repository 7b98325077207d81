import { describe, expect, test } from 'vitest';
import { groupCases } from '#lib/files/case-log/group-cases.ts';

function checksOf(rows: readonly string[]) {
  const grouper = groupCases({
    columns: { date: 0, minutes: 2, agent: 3, technique: 4 },
    groupBy: [1],
    locale: 'en-GB',
    dateOrder: 'day-month-year',
    durationsIn: 'min',
    daysCovered: null,
    fewestCases: 1
  });
  rows.forEach((row, index) => grouper.add(row.split('|'), index + 2));
  return grouper.finish().checks;
}

describe('a log is checked before it is believed', () => {
  test('its cases are counted month by month, months without one included', () => {
    expect(
      checksOf(['20/1/2025|Knee|60|sevo|', '21/1/2025|Knee|60|sevo|', '4/3/2025|Knee|60|sevo|']).casesByMonth
    ).toEqual([
      { month: '2025-01', cases: 2 },
      { month: '2025-02', cases: 0 },
      { month: '2025-03', cases: 1 }
    ]);
  });

  test('the agents that were met are counted, and techniques without one', () => {
    const rows = [
      '20/1/2025|A|60|sevo|',
      '20/1/2025|B|60|Des|GA',
      '21/1/2025|C|60|sevo|spinal',
      '22/1/2025|D|60||TIVA'
    ];
    expect(checksOf(rows).casesByAgent).toEqual([
      { agent: 'sevoflurane', cases: 2 },
      { agent: 'desflurane', cases: 1 },
      { agent: 'intravenous', cases: 1 }
    ]);
  });

  test('a line that stands twice is told with its place, and one that differs in a letter is not', () => {
    const twice = [
      '20/1/2025|Knee|60|sevo|',
      '20/1/2025|Knee|61|sevo|',
      '20/1/2025|Knee|60|sevo|',
      '20/1/2025|Kne|e60|sevo|'
    ];
    expect(checksOf(twice.slice(0, 3)).repeated).toEqual({ count: 1, lines: [4] });
    expect(checksOf(twice.slice(0, 2)).repeated).toEqual({ count: 0, lines: [] });
  });

  test('the order of day and month is not known where no date tells it', () => {
    expect(checksOf(['1/2/2025|Knee|60|sevo|', '3/4/2025|Knee|60|sevo|']).isDateOrderUndecided).toBe(true);
    expect(checksOf(['1/2/2025|Knee|60|sevo|', '13/4/2025|Knee|60|sevo|']).isDateOrderUndecided).toBe(false);
    expect(checksOf(['2/2/2025|Knee|60|sevo|']).isDateOrderUndecided).toBe(false);
    expect(checksOf(['2025-02-01|Knee|60|sevo|']).isDateOrderUndecided).toBe(false);
  });
});
