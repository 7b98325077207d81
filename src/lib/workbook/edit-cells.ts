import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { crossChecks } from './cross-checks.ts';
import { fieldAt } from './field-at.ts';
import { readText } from './read-text.ts';
import type { Workbook } from './workbook.ts';

/** A text that the user put into a cell. */
export interface CellText {
  readonly path: string;
  readonly text: string;
}

/** A text that could not be taken over, with the sentence that says why. */
export interface RefusedText extends CellText {
  readonly sentence: string;
}

export interface EditedWorkbook {
  readonly workbook: Workbook;
  readonly refused: readonly RefusedText[];
}

/**
 * Puts texts into cells. What can be read and fits goes in; every other text stays in its cell as typed (`keptTexts`)
 * with its sentence, while the last good value stays in force. A text that would break something elsewhere in the
 * workbook (a range, an id, a second baseline) is refused in the same way.
 */
export function editCells(workbook: Workbook, texts: readonly CellText[], locale: string): EditedWorkbook {
  const refused: RefusedText[] = [];
  const read: { path: string; text: string; value: unknown }[] = [];
  for (const { path, text } of texts) {
    const field = fieldAt(path);
    if (field === undefined) throw new Error(`There is no cell at ${path}.`);
    const result = readText(text, { field, workbook, locale });
    if ('value' in result) read.push({ path, text, value: result.value });
    else refused.push({ path, text, sentence: result.sentence });
  }
  const known = new Set(crossChecks(workbook).map(({ path, sentence }) => `${path} ${sentence}`));
  const newIssues = (candidate: Workbook) =>
    crossChecks(candidate).filter(({ path, sentence }) => !known.has(`${path} ${sentence}`));
  let taken = read;
  let edited = write(workbook, taken);
  let issues = newIssues(edited);
  while (issues.length > 0 && taken.length > 0) {
    const blamed = taken.filter(({ path }) => issues.some((issue) => touches(issue.path, path)));
    const turnedAway = blamed.length > 0 ? blamed : taken;
    for (const { path, text } of turnedAway) {
      const issue = issues.find((each) => touches(each.path, path)) ?? issues[0];
      refused.push({ path, text, sentence: issue?.sentence ?? '' });
    }
    taken = taken.filter((each) => !turnedAway.includes(each));
    edited = write(workbook, taken);
    issues = newIssues(edited);
  }
  const keptTexts: Record<string, string> = { ...workbook.keptTexts };
  for (const { path } of taken) delete keptTexts[path];
  for (const { path, text } of refused) keptTexts[path] = text;
  return { workbook: { ...edited, keptTexts }, refused };
}

/** Whether an issue is the doing of a cell: its own, its range's, or another of the same row. */
function touches(issuePath: string, cellPath: string): boolean {
  const bare = issuePath.startsWith('ranges.') ? issuePath.slice('ranges.'.length) : issuePath;
  if (bare === cellPath) return true;
  const row = (path: string) => path.split('.').slice(0, -1).join('.');
  return row(bare) === row(cellPath) || bare.startsWith(`${cellPath}.`) || bare === row(cellPath);
}

function write(workbook: Workbook, values: readonly { path: string; value: unknown }[]): Workbook {
  let written = workbook;
  for (const { path, value } of values)
    if (readCell(written, path) !== value) written = writeCell(written, path, value ?? nothingAt(path));
  return written;
}

/** What an empty cell is in the document: null, but in a list by id the entry is left out. */
const nothingAt = (path: string): null | undefined =>
  /^scenarios\.[^.]+\.(flowPlanByCase|agentSwitch)\./.test(path) ? undefined : null;

/** The sentence of every kept text, by path, as it stands now. */
export function keptSentences(workbook: Workbook, locale: string): Readonly<Record<string, string>> {
  const sentences: Record<string, string> = {};
  for (const [path, text] of Object.entries(workbook.keptTexts)) {
    if (fieldAt(path) === undefined || readCell(workbook, path) === undefined) continue;
    const { refused } = editCells({ ...workbook, keptTexts: {} }, [{ path, text }], locale);
    sentences[path] = refused[0]?.sentence ?? 'This text can be taken now: enter it again.';
  }
  return sentences;
}
