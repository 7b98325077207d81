import { foldHeader } from '#lib/workbook/match-headings.ts';
import { firstRepeated, tableLimits } from '../read/read-table.ts';
import { fileKind } from '../read/file-kind.ts';
import { csvRows, UnreadableLogError } from './csv-rows.ts';
import type { CaseLogPlan, LogField } from './group-cases.ts';
import { logFields } from './group-cases.ts';
import { numberLocale } from '../read/number-locale.ts';
import { identifyingBecause, rowsLookedAt } from './identifying-columns.ts';
import type { DateOrder } from './log-dates.ts';
import { dayOf, guessDateOrder, serialDate } from './log-dates.ts';
import { timeOf } from './log-times.ts';
import { agentOf, techniqueOf } from '#lib/workbook/trade-words.ts';

export type LogEncoding = 'utf-8' | 'windows-1252';

/** A log that was opened: its columns, and a plan to start from. Of its rows nothing is kept. */
export interface OpenedCaseLog {
  readonly kind: 'log';
  readonly columns: readonly LogColumn[];
  readonly plan: CaseLogPlan;
}

export interface LogColumn {
  readonly header: string;
  /** Why the column is refused unless the user says otherwise; null where it is not. */
  readonly identifyingBecause: string | null;
}

export type OpenCaseLog =
  | OpenedCaseLog
  /** `offer`: the file can be read in this older encoding, if the user says so. */
  | { readonly kind: 'refused'; readonly sentence: string; readonly offer?: 'windows-1252' };

/** The bytes of a log, from the start at each call: a `File` in the browser, a stream of a file elsewhere. */
export type LogPieces = () => AsyncIterable<Uint8Array>;

/** Headings of columns that mean a field, in several languages. From memory, no source. */
const headings: Readonly<Record<LogField | 'group', RegExp>> = {
  group:
    /^(procedure|operation|surgery|specialt?y|speciality|service|intervention|acte|specialite|eingriff|prozedur|fachgebiet|fachabteilung|procedimiento|especialidad|procedura|intervento|specialita|procedimento|ingreep|specialisme|ingrepp|indgreb|zabieg)( (name|code|type|group|text))?$/,
  date: /^(date|day|datum|tag|fecha|data|dato|pvm)( of)?( (surgery|operation|procedure|case|anaesthesia|anesthesia))?$|^(surgery|operation|procedure|case|op) (date|datum)$/,
  start:
    /^((anaesthesia|anesthesia|anaesthetic|anesthetic|case|procedure|narkose|anasthesie|anesthesie|anestesia) )?(start|begin|beginning|beginn|started|debut|inicio|inizio|begintijd|induction|from)( (date ?time|time|at|datum|zeit|uhrzeit|heure))?$|^(narkosebeginn|anasthesiebeginn|startzeit|startzeitpunkt|starttime|starttijd|heure debut|hora inicio|ora inizio)$/,
  end: /^((anaesthesia|anesthesia|anaesthetic|anesthetic|case|procedure|narkose|anasthesie|anesthesie|anestesia) )?(end|ended|stop|finish|finished|ende|fin|fine|einde|slut|until|to)( (date ?time|time|at|datum|zeit|uhrzeit|heure))?$|^(narkoseende|anasthesieende|endzeit|endzeitpunkt|endtime|eindtijd|heure fin|hora fin|ora fine)$/,
  minutes:
    /^(minutes|min|hours|duration|dauer|duree|duracion|durata|duracao|duur|anaesthesia (time|minutes|duration)|anesthesia (time|minutes|duration)|narkosedauer|anasthesiedauer|case (minutes|duration))( min| minutes)?$/,
  ageYears: /^(age|alter|edad|eta|idade|leeftijd|alder|wiek|age years|years)( years| y)?$/,
  weightKg: /^(weight|gewicht|poids|peso|vikt|vekt|waga|body weight|koerpergewicht|korpergewicht)( kg)?$/,
  technique:
    /^(technique|anaesthetic|anesthetic|anaesthesia|anesthesia|technik|verfahren|narkoseart|anasthesieverfahren|tecnica|techniek)( type| technique)?$/,
  agent:
    /^(agent|volatile( agent)?|anaesthetic agent|anesthetic agent|vapou?r|gas|narkosegas|inhalationsanasthetikum|agente|halogene)( name)?$/,
  meanFlowLPerMin: /^((mean|average|avg) )?((fresh )?gas flow|fgf|flow|frischgas(fluss|flow)|dgf)( l min)?$/,
  liquidMl:
    /^(liquid( agent)?( used)?|agent (used|consumption|ml)|consumption|verbrauch|consommation|consumo|volatile ml|used ml)( ml)?$/
};

/** Opens a log and looks at its first rows: what the columns are, which of them may identify somebody. Never throws. */
export async function openCaseLog(
  pieces: LogPieces,
  { encoding = 'utf-8', locale }: { readonly encoding?: LogEncoding; readonly locale: string }
): Promise<OpenCaseLog> {
  const rows: (readonly string[])[] = [];
  try {
    for await (const batch of csvRows(checked(pieces()), encoding)) {
      rows.push(...batch.rows.slice(0, rowsLookedAt + 1 - rows.length));
      if (rows.length > rowsLookedAt) break;
    }
  } catch (error) {
    if (!(error instanceof UnreadableLogError)) throw error;
    const offer = encoding === 'utf-8' && error.message.includes('Windows-1252');
    return { kind: 'refused', sentence: error.message, ...(offer ? { offer: 'windows-1252' as const } : {}) };
  }
  const [first, ...sample] = rows;
  if (first === undefined || first.every((cell) => cell.trim() === '')) return refused('The file is empty.');
  if (first.length > tableLimits.columns)
    return refused(`The file has ${first.length} columns; a log has at most ${tableLimits.columns}.`);
  const headers = first.map((header, index) => header.trim() || `Column ${index + 1}`);
  const twice = firstRepeated(headers);
  if (twice !== null)
    return refused(
      `Columns ${twice.first + 1} and ${twice.second + 1} are both called “${headers[twice.second]}”: give each a heading of its own.`
    );
  if (sample.length === 0) return refused('The file has headings and no rows below them.');
  const valuesOf = (column: number) => sample.map((row) => row[column] ?? '');
  const columns = headers.map((header, index) => ({
    header,
    identifyingBecause: identifyingBecause(header, valuesOf(index))
  }));
  return {
    kind: 'log',
    columns,
    plan: { ...firstPlan(columns, valuesOf, locale), locale: numberLocale(sample, locale) }
  };
}

const refused = (sentence: string): OpenCaseLog => ({ kind: 'refused', sentence });

/** The pieces of a stream, unless the first of them says that the file is of another kind. */
async function* checked(pieces: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let isFirst = true;
  for await (const piece of pieces) {
    const kind = isFirst ? fileKind(piece) : null;
    if (kind !== null) throw new UnreadableLogError(`The file is ${kind}. A case log is a CSV file.`);
    isFirst = false;
    yield piece;
  }
}

/** Whether a heading says that its durations are hours. */
const isInHours = (header: string): boolean =>
  /\b(h|hrs?|hours?|std\.?|stunden|heures|horas|ore|uur)\b/i.test(header);

/** The plan that the headings, and failing them the values, suggest. */
function firstPlan(
  columns: readonly LogColumn[],
  valuesOf: (column: number) => readonly string[],
  locale: string
): CaseLogPlan {
  const free = new Set(
    columns.flatMap(({ identifyingBecause: why }, index) => (why === null ? [index] : []))
  );
  const take = (fits: (column: number) => boolean): number | undefined => {
    const found = [...free].find(fits);
    if (found !== undefined) free.delete(found);
    return found;
  };
  const headed = (pattern: RegExp) =>
    take((column) => pattern.test(foldHeader(columns[column]?.header ?? '')));
  const mostly = (fits: (value: string) => boolean) => (column: number) => {
    const given = valuesOf(column).filter((value) => value.trim() !== '');
    return given.length > 0 && given.filter(fits).length > 0.8 * given.length;
  };
  const mapping: Partial<Record<LogField, number | undefined>> = {};
  for (const field of Object.keys(logFields) as LogField[]) {
    const column = headed(headings[field]);
    if (column !== undefined) mapping[field] = column;
  }
  const group = headed(headings.group);
  const readable = <T>(read: (order: DateOrder) => T | null) =>
    read('day-month-year') ?? read('month-day-year');
  const hasDay = (value: string) => readable((order) => timeOf(value, order)?.day ?? null) !== null;
  // A start with its day says when the case was; another date is of something else.
  if (mapping.start === undefined || !mostly(hasDay)(mapping.start))
    // A serial number alone may be any number; under a heading that says date it is one.
    mapping.date ??= take(
      mostly((value) => serialDate(value) === null && readable((order) => dayOf(value, order)) !== null)
    );
  mapping.agent ??= take(mostly((value) => typeof agentOf(value) === 'string'));
  mapping.technique ??= take(mostly((value) => techniqueOf(value) !== undefined));
  const given = Object.fromEntries(
    Object.entries(mapping).filter(([, column]) => column !== undefined)
  ) as CaseLogPlan['columns'];
  return {
    columns: given,
    groupBy: group === undefined ? [] : [group],
    locale,
    dateOrder: guessDateOrder(
      [mapping.date, mapping.start, mapping.end].flatMap((column) =>
        column === undefined ? [] : valuesOf(column)
      ),
      locale
    ),
    durationsIn: isInHours(mapping.minutes === undefined ? '' : (columns[mapping.minutes]?.header ?? ''))
      ? 'h'
      : 'min',
    daysCovered: null,
    fewestCases: 5
  };
}
