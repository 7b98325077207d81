/**
 * From single anaesthetics to groups of alike ones, one at a time and in little memory: of each group sums are kept, of
 * a case nothing. `sql/case-mix.sql` does the same in a database; a test holds the two together.
 */
import type { Agent, Technique } from '#lib/calc/input.ts';
import { readNumber } from '#lib/numbers/read-number.ts';
import { agentNamedIn, agentOf, techniqueOf } from '#lib/workbook/trade-words.ts';
import type { DaysOfLog } from './far-dates.ts';
import { daysOfLog } from './far-dates.ts';
import type { LogChecks } from './log-checks.ts';
import { LogChecker } from './log-checks.ts';
import type { DateOrder } from './log-dates.ts';
import { dayOf, isoDay } from './log-dates.ts';
import type { LogTime } from './log-times.ts';
import { minutesBetween, timeOf } from './log-times.ts';

/** What the columns of a log can mean. `group` may be several columns, whose texts together name the group. */
export const logFields = {
  date: { header: 'Date', unit: '' },
  minutes: { header: 'Minutes', unit: 'min' },
  start: { header: 'Start', unit: '' },
  end: { header: 'End', unit: '' },
  ageYears: { header: 'Age', unit: 'years' },
  weightKg: { header: 'Weight', unit: 'kg' },
  technique: { header: 'Technique', unit: '' },
  agent: { header: 'Agent', unit: '' },
  meanFlowLPerMin: { header: 'Mean fresh gas flow', unit: 'L/min' },
  liquidMl: { header: 'Liquid agent used', unit: 'mL' }
} as const;
export type LogField = keyof typeof logFields;

/** Which column of the log (counted from 0) holds what, and how its texts are written. */
export interface CaseLogPlan {
  readonly columns: Readonly<Partial<Record<LogField, number>>>;
  /** One or more columns whose texts name a group, e.g. the procedure. */
  readonly groupBy: readonly number[];
  readonly locale: string;
  readonly dateOrder: DateOrder;
  /** What a duration without a unit is in: minutes, or hours with a fraction. */
  readonly durationsIn: 'min' | 'h';
  /** Days that the log covers, where its own first and last date do not say so; needed without a date column. */
  readonly daysCovered: number | null;
  /** Groups with fewer cases are put together as “Other”, so that no row is about a few persons. */
  readonly fewestCases: number;
}

/** The mean of a quantity, and how far the mean itself may be off. */
export interface MeanAndSpread {
  readonly mean: number;
  /** Standard deviation between cases; null for a single one. */
  readonly deviation: number | null;
  /**
   * mean ∓ √7 standard errors: between these, a PERT distribution with the mean as its mode has the standard error of
   * the mean as its standard deviation. null for a single case.
   */
  readonly low: number | null;
  readonly high: number | null;
  /** Cases in which it was given. */
  readonly cases: number;
}

export interface CaseGroup {
  readonly name: string;
  readonly technique: Technique;
  readonly agent: Agent | null;
  readonly cases: number;
  readonly casesPerYear: number;
  readonly minutes: MeanAndSpread;
  readonly ageYears: MeanAndSpread | null;
  readonly weightKg: MeanAndSpread | null;
  readonly meanFlowLPerMin: MeanAndSpread | null;
  readonly liquidMl: MeanAndSpread | null;
}

/** Cases that were not taken, for one reason; the first lines tell where to look, and nothing of what stands there. */
export interface LeftOut {
  readonly reason: string;
  readonly count: number;
  readonly lines: readonly number[];
}

export interface GroupedCases {
  readonly groups: readonly CaseGroup[];
  readonly rowsRead: number;
  readonly casesTaken: number;
  readonly leftOut: readonly LeftOut[];
  /** What was noticed of cases that were taken all the same, such as a figure that cannot be. */
  readonly remarks: readonly LeftOut[];
  /** ISO dates, those far from the rest left out; null without a date column. */
  readonly firstDate: string | null;
  readonly lastDate: string | null;
  /** The longest stretch without a case between them, and the ISO date before it. */
  readonly longestGap: { readonly days: number; readonly after: string } | null;
  readonly daysCovered: number;
  readonly checks: LogChecks;
}

/** Thrown where the log cannot be grouped as planned; the sentence is for the user. */
export class CaseLogError extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'CaseLogError';
  }
}

export const otherGroup = 'Other';

/** More groups than any case mix has: the column that was chosen tells single cases apart, not kinds of case. */
const mostGroups = 20_000;
const noMinutes = 'Minutes are missing, or no number above 0 to 1440.';
const daysOfYear = 365.25;
const examples = 5;

/** What a figure of a case may be; the same limits as in the case mix. */
const plausible = {
  minutes: { above: 0, upTo: 1440 },
  ageYears: { above: -1e-9, upTo: 120 },
  weightKg: { above: 0.999999999, upTo: 300 },
  meanFlowLPerMin: { above: 0, upTo: 20 },
  liquidMl: { above: -1e-9, upTo: 2000 }
} as const;
type Figure = keyof typeof plausible;
const figures = Object.keys(plausible) as readonly Figure[];

interface Sums {
  cases: number;
  sum: number;
  squares: number;
}

interface Group {
  name: string;
  readonly technique: Technique;
  readonly agent: Agent | null;
  cases: number;
  readonly sums: Record<Figure, Sums>;
}

export interface CaseGrouper {
  /** Takes one row of the log; `line` is where it stands in the file. */
  add(row: readonly string[], line: number): void;
  /** Counts a row that cannot be taken, with the reason. */
  leaveOut(reason: string, line: number): void;
  /** The groups, those with the most cases first. Throws CaseLogError where there is nothing to give. */
  finish(): GroupedCases;
}

/** Starts to group a log. `add` throws CaseLogError once there are more groups than make sense. */
export function groupCases(plan: CaseLogPlan): CaseGrouper {
  const { columns, groupBy } = plan;
  const groups = new Map<string, Group>();
  const leftOut = new Map<string, { count: number; lines: number[] }>();
  const remarks = new Map<string, { count: number; lines: number[] }>();
  const number = numberReader(plan.locale);
  const agents = remembered(agentOf);
  const agentsAmongWords = remembered(agentNamedIn);
  const techniques = remembered(techniqueOf);
  const days = remembered((text: string) => dayOf(text, plan.dateOrder));
  const checker = new LogChecker();
  let rowsRead = 0;
  const casesOn = new Map<number, { cases: number; lines: number[] }>();

  const textAt = (row: readonly string[], field: LogField): string | null => {
    const column = columns[field];
    return column === undefined ? null : (row[column] ?? '').trim();
  };

  function note(where: typeof leftOut, reason: string, line: number): void {
    const entry = where.get(reason) ?? { count: 0, lines: [] };
    entry.count++;
    if (entry.lines.length < examples) entry.lines.push(line);
    where.set(reason, entry);
  }

  /** The figure of a case; null where it is not given or cannot be. */
  function figure(row: readonly string[], field: Figure, line: number): number | null {
    const text = textAt(row, field);
    if (text === null || text === '') return null;
    const inHours = field === 'minutes' && plan.durationsIn === 'h';
    const read = number(text, inHours ? 'h' : logFields[field].unit);
    // Hours with a fraction are rarely exact in binary: 1.1 h are 66 minutes.
    const value = inHours && read !== null ? Math.round(read * 60e6) / 1e6 : read;
    const { above, upTo } = plausible[field];
    if (value !== null && value > above && value <= upTo) return value;
    if (field !== 'minutes') note(remarks, `${logFields[field].header} is no number that can be.`, line);
    return null;
  }

  /** The minutes of a case, given or from start to end; or the reason why there are none. */
  function duration(row: readonly string[], start: LogTime | null, line: number): number | string {
    const given = textAt(row, 'minutes');
    if (given !== null && given !== '') return figure(row, 'minutes', line) ?? noMinutes;
    if (columns.start === undefined || columns.end === undefined) return noMinutes;
    const end = timeOf(textAt(row, 'end') ?? '', plan.dateOrder);
    if (start === null || end === null) return 'The start or the end is missing, or no time of day.';
    const minutes = minutesBetween(start, end);
    if (minutes === 'backwards') return 'The end is before the start.';
    if (minutes === 'ambiguous')
      return 'Start and end are times of day with no time between them, or more than 12 hours over midnight: they may be mixed up.';
    return minutes > plausible.minutes.above && minutes <= plausible.minutes.upTo
      ? minutes
      : 'From start to end there are no minutes, or more than 1440.';
  }

  return {
    add(row, line) {
      if (row.every((cell) => cell.trim() === '')) return;
      rowsRead++;
      const name = groupBy
        .map((column) => (row[column] ?? '').trim().replace(/\s+/g, ' '))
        .filter((part) => part !== '')
        .join(', ');
      if (name === '') return note(leftOut, 'No group is named.', line);
      const dateText = textAt(row, 'date');
      const start = columns.start === undefined ? null : timeOf(textAt(row, 'start') ?? '', plan.dateOrder);
      const day = dateText === null ? (start?.day ?? null) : days(dateText);
      if (dateText !== null && day === null)
        return note(leftOut, 'The date is missing or none of the calendar.', line);
      const minutes = duration(row, start, line);
      if (typeof minutes === 'string') return note(leftOut, minutes, line);
      const agentInColumn = agents(textAt(row, 'agent') ?? '');
      if (agentInColumn === undefined) return note(leftOut, 'The agent is none that is known here.', line);
      const techniqueText = textAt(row, 'technique') ?? '';
      const agent = agentInColumn ?? agentsAmongWords(techniqueText) ?? null;
      const named = techniques(techniqueText);
      // An agent that is named was used, whatever else was: “GA + epidural”, “LMA”, “TIVA” and then a vapour.
      const technique = agent === null ? named : 'volatile';
      if (technique === undefined)
        return note(leftOut, 'The technique is not given, or none that is known here.', line);
      if (technique === 'volatile' && agent === null)
        return note(leftOut, 'A volatile anaesthetic without an agent.', line);
      if (technique !== named && techniqueText !== '')
        note(
          remarks,
          'An agent is named beside another technique, so the case is taken as a volatile one.',
          line
        );

      if (day !== null) {
        const known = casesOn.get(day) ?? { cases: 0, lines: [] };
        if (known.cases++ === 0) casesOn.set(day, known);
        if (known.lines.length < examples) known.lines.push(line);
      }
      checker.see(row, { line, day, dateText: dateText ?? textAt(row, 'start') ?? '', technique, agent });
      const group = groupOf(name, technique, agent);
      group.cases++;
      if (name > group.name) group.name = name;
      addTo(group.sums.minutes, minutes);
      for (const field of figures)
        if (field !== 'minutes') {
          const value = figure(row, field, line);
          if (value !== null) addTo(group.sums[field], value);
        }
    },
    leaveOut(reason, line) {
      rowsRead++;
      note(leftOut, reason, line);
    },
    finish() {
      if (groups.size === 0)
        throw new CaseLogError(`None of ${rowsRead} rows can be taken. ${reasons(leftOut)}`);
      const days =
        casesOn.size === 0 ? null : daysOfLog(new Map([...casesOn].map(([day, { cases }]) => [day, cases])));
      const daysCovered = plan.daysCovered ?? (days === null ? null : days.last - days.first + 1);
      if (daysCovered === null || !(daysCovered > 0) || !Number.isFinite(daysCovered))
        throw new CaseLogError(
          'How many days the log covers is not known: choose the column with the date, or say how many.'
        );
      const kept = withoutSmall([...groups.values()], plan.fewestCases);
      const tooFew =
        [...groups.values()].reduce((sum, group) => sum + group.cases, 0) -
        kept.reduce((sum, group) => sum + group.cases, 0);
      const casesTaken = kept.reduce((sum, group) => sum + group.cases, 0);
      return {
        groups: kept
          .map((group) => finished(group, daysCovered))
          .sort(
            (a, b) => b.cases - a.cases || compare(a.name, b.name) || compare(a.agent ?? '', b.agent ?? '')
          ),
        rowsRead,
        casesTaken,
        leftOut: [
          ...listed(leftOut),
          ...(tooFew > 0
            ? [
                {
                  reason: `Fewer than ${plan.fewestCases} cases, also when put together as “${otherGroup}”.`,
                  count: tooFew,
                  lines: []
                }
              ]
            : [])
        ],
        remarks: [
          ...(days !== null && days.far.length > 0 && plan.daysCovered === null ? [farDates(days)] : []),
          ...listed(remarks)
        ],
        firstDate: days === null ? null : isoDay(days.first),
        lastDate: days === null ? null : isoDay(days.last),
        longestGap:
          days === null || days.longestGap === null
            ? null
            : { days: days.longestGap.days, after: isoDay(days.longestGap.after) },
        daysCovered,
        checks: checker.finish(days)
      };
    }
  };

  /** What is said of dates that may be mistyped, with the way to count them. */
  function farDates({ first, last, far }: DaysOfLog): LeftOut {
    const on = far.flatMap((day) => casesOn.get(day) ?? []);
    const whole = Math.max(last, ...far) - Math.min(first, ...far) + 1;
    return {
      reason: `Far from all other dates (${isoDay(first)} to ${isoDay(last)}), perhaps mistyped: ${far.slice(0, examples).map(isoDay).join(', ')}${far.length > examples ? ' …' : ''}. These cases are counted, but the days of the log do not reach to their dates; if they are right, give ${whole} as the days that the log covers.`,
      count: on.reduce((sum, { cases }) => sum + cases, 0),
      lines: on
        .flatMap(({ lines }) => lines)
        .sort((a, b) => a - b)
        .slice(0, examples)
    };
  }

  function groupOf(name: string, technique: Technique, agent: Agent | null): Group {
    const key = `${name.toLowerCase()}\n${technique}\n${agent ?? ''}`;
    const known = groups.get(key);
    if (known !== undefined) return known;
    if (groups.size >= mostGroups)
      throw new CaseLogError(
        `There are more than ${mostGroups} groups: choose columns that name a kind of case, such as the procedure or the specialty.`
      );
    const group: Group = { name, technique, agent, cases: 0, sums: emptySums() };
    groups.set(key, group);
    return group;
  }
}

const emptySums = (): Record<Figure, Sums> =>
  Object.fromEntries(figures.map((field) => [field, { cases: 0, sum: 0, squares: 0 }])) as Record<
    Figure,
    Sums
  >;

function addTo(sums: Sums, value: number): void {
  sums.cases++;
  sums.sum += value;
  sums.squares += value * value;
}

/** Small groups put together by technique and agent; what is still small then is left out. */
function withoutSmall(groups: readonly Group[], fewestCases: number): Group[] {
  const large = groups.filter((group) => group.cases >= fewestCases);
  const others = new Map<string, Group>();
  for (const small of groups.filter((group) => group.cases < fewestCases)) {
    const key = `${small.technique}\n${small.agent ?? ''}`;
    const other = others.get(key) ??
      large.find(
        ({ name, technique, agent }) =>
          name === otherGroup && technique === small.technique && agent === small.agent
      ) ?? { ...small, name: otherGroup, cases: 0, sums: emptySums() };
    others.set(key, other);
    other.cases += small.cases;
    for (const field of figures) {
      other.sums[field].cases += small.sums[field].cases;
      other.sums[field].sum += small.sums[field].sum;
      other.sums[field].squares += small.sums[field].squares;
    }
  }
  return [...new Set([...large, ...others.values()])].filter((group) => group.cases >= fewestCases);
}

function finished({ name, technique, agent, cases, sums }: Group, daysCovered: number): CaseGroup {
  return {
    name,
    technique,
    agent,
    cases,
    casesPerYear: (cases * daysOfYear) / daysCovered,
    minutes: meanAndSpread(sums.minutes) as MeanAndSpread,
    ageYears: meanAndSpread(sums.ageYears),
    weightKg: meanAndSpread(sums.weightKg),
    meanFlowLPerMin: meanAndSpread(sums.meanFlowLPerMin),
    liquidMl: technique === 'volatile' ? meanAndSpread(sums.liquidMl) : null
  };
}

function meanAndSpread({ cases, sum, squares }: Sums): MeanAndSpread | null {
  if (cases === 0) return null;
  const mean = sum / cases;
  if (cases === 1) return { mean, deviation: null, low: null, high: null, cases };
  const variance = Math.max(0, (squares - (sum * sum) / cases) / (cases - 1));
  const half = Math.sqrt(7 * (variance / cases));
  return { mean, deviation: Math.sqrt(variance), low: mean - half, high: mean + half, cases };
}

/** Codes of letters decide, as in a database without a language. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const listed = (
  reasonsByText: ReadonlyMap<string, { count: number; lines: readonly number[] }>
): readonly LeftOut[] =>
  [...reasonsByText]
    .map(([reason, { count, lines }]) => ({ reason, count, lines }))
    .sort((a, b) => b.count - a.count);

const reasons = (leftOut: ReadonlyMap<string, { count: number; lines: readonly number[] }>): string =>
  listed(leftOut)
    .map(({ reason, count, lines }) => `${reason.replace(/\.$/, '')}: ${count}, first in line ${lines[0]}.`)
    .join(' ');

/** The answers to texts that come again and again, kept up to a number of them. */
function remembered<T>(read: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined || known.has(text)) return before as T;
    const answer = read(text);
    if (known.size < 5000) known.set(text, answer);
    return answer;
  };
}

/** Reads the numbers of a log: plain ones at once, others in every way that a cell takes. */
function numberReader(locale: string): (text: string, unit: string) => number | null {
  const byUnit = new Map<string, (text: string) => number | null>();
  return (text, unit) => {
    if (/^\d{1,9}$/.test(text)) return Number(text);
    let read = byUnit.get(unit);
    if (read === undefined) {
      read = remembered((given: string) => {
        const result = readNumber(given, { unit, locale });
        return 'value' in result ? result.value : null;
      });
      byUnit.set(unit, read);
    }
    return read(text);
  };
}
