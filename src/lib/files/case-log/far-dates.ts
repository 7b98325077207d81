/**
 * Dates of a log that lie far from all others, as a mistyped year does: one of them would stretch the days that the log
 * covers, and divide every volume by as much. `sql/case-mix.sql` has the same rule; the limits are this project's own.
 */

/** From so many cases on it can be told what is far; below, a gap says nothing. */
const fewestCases = 20;
/** Longer than a theatre is closed for holidays or works. */
const longestClosureDays = 90;
/** In the gap so many cases would be expected, at the rate of the others. */
const expectedInGap = 20;

/** First and last day of a log without the dates far from the rest, and those dates, in order. */
export interface DaysOfLog {
  readonly first: number;
  readonly last: number;
  readonly far: readonly number[];
  /** The longest stretch without a case between first and last; null where cases are on every day. */
  readonly longestGap: { readonly days: number; readonly after: number } | null;
}

/**
 * @param casesOn cases on each day, as whole days since some day; not empty
 * @returns the far dates: at most the first and last hundredth of the cases (two where that is more) that more than 90
 * days part from the rest, in which 20 cases or more would be expected
 */
export function daysOfLog(casesOn: ReadonlyMap<number, number>): DaysOfLog {
  const days = [...casesOn.keys()].sort((a, b) => a - b);
  let upTo = 0;
  const told = days.map((day, index) => {
    const cases = casesOn.get(day) as number;
    upTo += cases;
    return { day, before: upTo - cases, upTo, gap: day - (days[index - 1] ?? day) };
  });
  const total = upTo;
  const mayBeFar = total < fewestCases ? 0 : Math.max(2, Math.floor(total / 100));
  const core = told.filter(({ before, upTo }) => upTo > mayBeFar && total - before > mayBeFar);
  const coreCases = (core.at(-1)?.upTo ?? 0) - (core[0]?.before ?? 0);
  const coreDays = (core.at(-1)?.day ?? 0) - (core[0]?.day ?? 0) + 1;
  const parts = told.filter(
    ({ gap }) => gap > longestClosureDays && gap * coreCases >= expectedInGap * coreDays
  );
  const first = parts.findLast(({ before }) => before <= mayBeFar)?.day ?? (days[0] as number);
  const endsAt = parts.find(({ before }) => total - before <= mayBeFar)?.day ?? Infinity;
  const within = told.filter(({ day }) => day >= first && day < endsAt);
  const widest = within.slice(1).reduce((most, { day, gap }) => (gap > most.gap ? { day, gap } : most), {
    day: 0,
    gap: 1
  });
  return {
    first,
    last: within.at(-1)?.day ?? first,
    far: days.filter((day) => day < first || day >= endsAt),
    longestGap: widest.gap > 1 ? { days: widest.gap - 1, after: widest.day - widest.gap } : null
  };
}
