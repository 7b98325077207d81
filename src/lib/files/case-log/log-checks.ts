/** What a reader checks a log by before believing it: what it holds month by month, and what may be wrong with all of it. */
import type { Agent, Technique } from '#lib/calc/input.ts';
import { isoDay } from './log-dates.ts';

export interface LogChecks {
  /** Cases of each calendar month from the first with a case to the last, months without one included. */
  readonly casesByMonth: readonly { readonly month: string; readonly cases: number }[];
  /** Cases by what the patient was given, the most frequent first; the technique where that is no agent. */
  readonly casesByAgent: readonly {
    readonly agent: Agent | Exclude<Technique, 'volatile'>;
    readonly cases: number;
  }[];
  /** Lines that are the same as an earlier one in every column. */
  readonly repeated: { readonly count: number; readonly lines: readonly number[] };
  /** True where every date with digits alone can be read with day or month first: the log itself does not tell. */
  readonly isDateOrderUndecided: boolean;
}

/** Of so many lines it is remembered what they hold, as a number that tells nothing of it. */
const mostRemembered = 2_000_000;
/** Months shown; a mistyped year would make thousands. */
const mostMonths = 240;
const examples = 5;

/** Collects the checks line by line, and keeps nothing of a case but counts. */
export class LogChecker {
  readonly #seen = new Set<number>();
  readonly #months = new Map<string, number>();
  readonly #agents = new Map<LogChecks['casesByAgent'][number]['agent'], number>();
  readonly #repeatedLines: number[] = [];
  #repeated = 0;
  #undecided = 0;
  #decided = 0;

  /** Sees a case that is taken. */
  see(
    row: readonly string[],
    {
      line,
      day,
      dateText,
      technique,
      agent
    }: {
      readonly line: number;
      readonly day: number | null;
      readonly dateText: string;
      readonly technique: Technique;
      readonly agent: Agent | null;
    }
  ): void {
    const given = agent ?? (technique === 'volatile' ? null : technique);
    if (given !== null) this.#agents.set(given, (this.#agents.get(given) ?? 0) + 1);
    // Without a day, alike lines are alike cases.
    if (day === null) return;
    const month = isoDay(day).slice(0, 7);
    this.#months.set(month, (this.#months.get(month) ?? 0) + 1);
    const [, first, second] = /^\s*(\d{1,2})\D(\d{1,2})\D\d/.exec(dateText) ?? [];
    if (first !== undefined && first !== second)
      if (Number(first) <= 12 && Number(second) <= 12) this.#undecided++;
      else this.#decided++;
    const hash = hashOf(row);
    if (this.#seen.has(hash)) {
      this.#repeated++;
      if (this.#repeatedLines.length < examples) this.#repeatedLines.push(line);
    } else if (this.#seen.size < mostRemembered) this.#seen.add(hash);
  }

  /** @param days first and last day of the log, those far from all others left out; null without dates */
  finish(days: { readonly first: number; readonly last: number } | null): LogChecks {
    return {
      casesByMonth:
        days === null
          ? []
          : monthsBetween(isoDay(days.first), isoDay(days.last)).map((month) => ({
              month,
              cases: this.#months.get(month) ?? 0
            })),
      casesByAgent: [...this.#agents]
        .map(([agent, cases]) => ({ agent, cases }))
        .sort((a, b) => b.cases - a.cases),
      repeated: { count: this.#repeated, lines: this.#repeatedLines },
      isDateOrderUndecided: this.#undecided > 0 && this.#decided === 0
    };
  }
}

function monthsBetween(first: string, last: string): readonly string[] {
  const months: string[] = [];
  let [year, month] = first.split('-').map(Number) as [number, number];
  while (months.length < mostMonths) {
    const text = `${year}-${String(month).padStart(2, '0')}`;
    if (text > last.slice(0, 7)) break;
    months.push(text);
    if (++month > 12) [year, month] = [year + 1, 1];
  }
  return months;
}

/** A line as fifty-three bits, from two hashes: so many that differing lines are all but never taken for the same. */
function hashOf(row: readonly string[]): number {
  let [a, b] = [0x811c9dc5, 0x9e3779b9];
  for (const cell of row) {
    for (let at = 0; at < cell.length; at++) {
      const code = cell.charCodeAt(at);
      a = Math.imul(a ^ code, 0x01000193);
      b = Math.imul(b ^ code, 0x85ebca6b) ^ (b >>> 13);
    }
    a = Math.imul(a ^ 0x1f, 0x01000193);
    b = Math.imul(b ^ 0x1f, 0x85ebca6b) ^ (b >>> 13);
  }
  return (a >>> 11) * 2 ** 32 + (b >>> 0);
}
