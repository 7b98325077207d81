import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { mostKeptText, tooLongForCell } from './cell-text-limits.ts';
import { cellReader } from './cell-reader.ts';
import { crossChecks } from './cross-checks.ts';
import { entryKey } from './edit-rows.ts';
import { fieldAt } from './field-at.ts';
import type { RangeFollowed } from './range-follows.ts';
import { rangesFollowing } from './range-follows.ts';
import { notesFollowing } from './notes-follow.ts';
import { readText } from './read-text.ts';
import type { SourceNote } from './source-note.ts';
import type { Issue, Workbook } from './workbook.ts';

/** A text that the user put into a cell. */
export interface CellText {
  readonly path: string;
  readonly text: string;
  /** Where it comes from; kept as the cell's note where it is a new number. */
  readonly source?: SourceNote;
}

/** A text that could not be taken over, with the sentence that says why. */
export interface RefusedText extends CellText {
  readonly sentence: string;
}

export interface EditedWorkbook {
  readonly workbook: Workbook;
  readonly refused: readonly RefusedText[];
  /** Ranges that went along with their cell's new value. */
  readonly followed: readonly RangeFollowed[];
  /** Cells whose source note spoke of their earlier value and went with it. */
  readonly notesGone: readonly string[];
  /** Cells whose text was kept from earlier and is in force now. */
  readonly inForceNow: readonly string[];
}

/** A text that was read, on its way into its cell. */
interface ReadCellText extends CellText {
  readonly value: unknown;
  readonly computedFrom?: string;
}

/**
 * Puts texts into cells. What can be read and fits goes in; every other text stays in its cell as typed (`keptTexts`)
 * with its sentence, while the last good value stays in force. A text that would break something elsewhere in the
 * workbook (an id, a second baseline) is refused in the same way; a range goes along with its cell, a source note goes. A text longer than a
 * cell takes, or one more than a workbook keeps, is refused without being kept, and its sentence says so. Texts kept
 * from earlier that fit now go in as well.
 * @param before the workbook without the rows that were added for these texts: in these there is no last good value, and
 * a case group that lacks one takes part in nothing
 */
export function editCells(
  workbook: Workbook,
  texts: readonly CellText[],
  locale: string,
  before: Workbook = workbook
): EditedWorkbook {
  const edited = putTexts(workbook, texts, locale, before);
  const afresh = withNeverGiven(edited, before, texts);
  const given = new Set(texts.map(({ path }) => path));
  const earlier = Object.entries(workbook.keptTexts)
    .map(([path, text]) => ({ path, text }))
    .filter(({ path }) => !given.has(path) && stands(afresh.workbook, path));
  if (earlier.length === 0) return afresh;
  const again = putTexts(afresh.workbook, earlier, locale);
  return {
    workbook: withNeverGiven(again, again.workbook, earlier).workbook,
    refused: afresh.refused,
    followed: [...afresh.followed, ...again.followed],
    notesGone: [...afresh.notesGone, ...again.notesGone],
    inForceNow: earlier.flatMap(({ path }) => (path in again.workbook.keptTexts ? [] : [path]))
  };
}

/** Notes the cells of new case groups that got no valid value, and strikes out those that have one now. */
function withNeverGiven(
  edited: EditedWorkbook,
  before: Workbook,
  texts: readonly CellText[]
): EditedWorkbook {
  const { workbook, refused } = edited;
  const turnedAway = new Set(refused.map(({ path }) => path));
  const known = new Set(before.caseMix.map(({ id }) => id));
  const isNew = (path: string): boolean =>
    path.startsWith('caseMix.') && !known.has(path.split('.')[1] ?? '');
  const taken = new Set(texts.map(({ path }) => path).filter((path) => !turnedAway.has(path)));
  const were = workbook.neverGiven ?? [];
  const neverGiven = [
    ...new Set([...were.filter((path) => !taken.has(path)), ...[...turnedAway].filter(isNew)])
  ];
  const isSame = neverGiven.length === were.length && neverGiven.every((path, at) => path === were[at]);
  return isSame ? edited : { ...edited, workbook: { ...workbook, neverGiven } };
}

function putTexts(
  workbook: Workbook,
  texts: readonly CellText[],
  locale: string,
  before: Workbook = workbook
): EditedWorkbook {
  const refused: RefusedText[] = [];
  const leftOut: RefusedText[] = [];
  const read: readonly ReadCellText[] = texts.flatMap((given) => {
    const { path, text } = given;
    const field = fieldAt(path);
    if (field === undefined) throw new Error(`There is no cell at ${path}.`);
    const tooLong = tooLongForCell(text);
    if (tooLong !== null) {
      leftOut.push({ path, text, sentence: `${field.title}: ${tooLong}, so the text is left out.` });
      return [];
    }
    const result = readText(text, { field, workbook, locale });
    if ('value' in result) return [{ ...given, ...result }];
    refused.push({ path, text, sentence: result.sentence });
    return [];
  });
  const known = new Set(crossChecks(workbook, locale).map(({ path, sentence }) => `${path} ${sentence}`));
  const writeWithRanges = (cells: readonly ReadCellText[]) =>
    rangesFollowing(
      workbook,
      write(workbook, cells),
      cells.map(({ path }) => path)
    );
  const issuesWith = (cells: readonly ReadCellText[]) =>
    crossChecks(writeWithRanges(cells).workbook, locale).filter(
      ({ path, sentence }) => !known.has(`${path} ${sentence}`)
    );
  const taken: readonly ReadCellText[] = fitting(read, [], issuesWith, (cell, sentence) =>
    refused.push({ path: cell.path, text: cell.text, sentence })
  );
  const { workbook: ranged, followed } = writeWithRanges(taken);
  const { workbook: edited, gone: notesGone } = notesFollowing(before, ranged, taken);
  const keptTexts: Record<string, string> = { ...workbook.keptTexts };
  for (const { path } of [...taken, ...refused]) delete keptTexts[path];
  let kept = Object.values(keptTexts).reduce((sum, text) => sum + text.length, 0);
  const said = refused.map((each): RefusedText => {
    if (kept + each.text.length > mostKeptText)
      return {
        ...each,
        sentence: `${each.sentence} The workbook keeps no more texts that could not be read, so this one is left out.`
      };
    kept += each.text.length;
    keptTexts[each.path] = each.text;
    return each;
  });
  return {
    workbook: { ...edited, keptTexts },
    refused: [...said, ...leftOut],
    followed,
    notesGone,
    inForceNow: []
  };
}

/**
 * The cells that can go in on top of others. Cells that an issue names are turned away; where it names none of them, it
 * is of a thing elsewhere that one of the rows does not fit, and halves are tried until that row is found.
 */
function fitting(
  cells: readonly ReadCellText[],
  others: readonly ReadCellText[],
  issuesWith: (cells: readonly ReadCellText[]) => readonly Issue[],
  refuse: (cell: ReadCellText, sentence: string) => void
): readonly ReadCellText[] {
  let left = cells;
  for (;;) {
    const issues = issuesWith([...others, ...left]);
    const [first] = issues;
    if (first === undefined || left.length === 0) return left;
    const blamed = blame(issues, left);
    if (blamed.size === 0) {
      const rows = [...new Set(left.map(({ path }) => rowOf(path)))];
      const firstRows = new Set(rows.slice(0, Math.ceil(rows.length / 2)));
      if (rows.length < 2) {
        for (const cell of left) refuse(cell, first.sentence);
        return [];
      }
      const half = left.filter(({ path }) => firstRows.has(rowOf(path)));
      const fits = fitting(half, others, issuesWith, refuse);
      const rest = left.filter(({ path }) => !firstRows.has(rowOf(path)));
      return [...fits, ...fitting(rest, [...others, ...fits], issuesWith, refuse)];
    }
    for (const cell of left) {
      const issue = blamed.get(cell.path);
      if (issue !== undefined) refuse(cell, issue.sentence);
    }
    left = left.filter(({ path }) => !blamed.has(path));
  }
}

const rowOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf('.')));

/**
 * The cells at fault, each with its issue: those that an issue names, and only where it names none the other cells of
 * its row, or what lies under it; so that one bad cell does not turn its whole row away.
 */
function blame(issues: readonly Issue[], taken: readonly CellText[]): ReadonlyMap<string, Issue> {
  const paths = new Set(taken.map(({ path }) => path));
  const places = issues.map((issue) => ({ issue, at: issue.path.replace(/^ranges\./, '') }));
  const named = new Map<string, Issue>();
  for (const { issue, at } of places) if (paths.has(at) && !named.has(at)) named.set(at, issue);
  if (named.size > 0) return named;
  const byRow = new Map<string, Issue>();
  for (const { issue, at } of places) {
    byRow.set(rowOf(at), issue);
    byRow.set(at, issue);
  }
  const near = new Map<string, Issue>();
  for (const path of paths) {
    const issue = byRow.get(rowOf(path)) ?? places.find(({ at }) => at.startsWith(`${path}.`))?.issue;
    if (issue !== undefined) near.set(path, issue);
  }
  return near;
}

/** The workbook with values in place; a list is copied once, however many of its cells change. */
function write(workbook: Workbook, values: readonly ReadCellText[]): Workbook {
  const inEntries = new Map<string, Map<string, ReadCellText[]>>();
  const valueAt = cellReader(workbook);
  let written = workbook;
  for (const cell of values) {
    if (valueAt(cell.path) === cell.value) continue;
    const [list = '', key = '', , ...deeper] = cell.path.split('.');
    if (!Array.isArray(workbook[list as keyof Workbook]) || deeper.length > 0) {
      written = writeCell(written, cell.path, cell.value ?? nothingAt(cell.path));
      continue;
    }
    const entries = inEntries.get(list) ?? new Map<string, ReadCellText[]>();
    inEntries.set(list, entries);
    const inEntry = entries.get(key);
    if (inEntry === undefined) entries.set(key, [cell]);
    else inEntry.push(cell);
  }
  for (const [list, entries] of inEntries) {
    const before = written[list as keyof Workbook] as unknown as readonly object[];
    const after = before.map((entry) => {
      const cells = entries.get(entryKey(entry));
      if (cells === undefined) return entry;
      const changes = cells.map(({ path, value }) => [path.slice(path.lastIndexOf('.') + 1), value] as const);
      return { ...entry, ...Object.fromEntries(changes) };
    });
    written = { ...written, [list]: after };
  }
  return written;
}

/** What an empty cell is in the document: null, but in a list by id the entry is left out. */
const nothingAt = (path: string): null | undefined =>
  /^(scenarios\.[^.]+\.(plans|flowPlanByCase|agentSwitch|intravenousPercentByCase|regionalPercentByCase)|accounting\.customWarming|theatreGroups\.[^.]+\.monitors|caseMix\.[^.]+\.theatreGroups)\./.test(
    path
  )
    ? undefined
    : null;

/** Whether the cell stands in the document, be it empty. */
const stands = (workbook: Workbook, path: string): boolean =>
  fieldAt(path) !== undefined &&
  readCell(workbook, nothingAt(path) === undefined ? rowOf(path) : path) !== undefined;

/** The sentence of every kept text, by path, as it stands now. */
export function keptSentences(workbook: Workbook, locale: string): Readonly<Record<string, string>> {
  const texts = Object.entries(workbook.keptTexts)
    .map(([path, text]) => ({ path, text }))
    .filter(({ path }) => stands(workbook, path));
  const { refused } = putTexts({ ...workbook, keptTexts: {} }, texts, locale);
  const sentences = new Map(refused.map(({ path, sentence }) => [path, sentence]));
  return Object.fromEntries(
    texts.map(({ path }) => [path, sentences.get(path) ?? 'This text can be taken now: enter it again.'])
  );
}
