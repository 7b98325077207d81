import type { ListName } from '#lib/workbook/edit-rows.ts';
import { deleteRows, entryKey } from '#lib/workbook/edit-rows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** What a row is called where it is spoken of. */
export const nameOf = (entry: object): string => ('name' in entry ? String(entry.name) : entryKey(entry));

/** The list with the entries of these keys in their order; others go, but for those that something still refers to. */
export function keepOnly(
  before: Workbook,
  list: ListName,
  keys: readonly string[]
): { workbook: Workbook; removed: readonly string[]; notes: readonly string[] } {
  const placeOf = new Map(keys.map((key, index) => [key, index]));
  const { workbook, removed, notes } = without(
    before,
    list,
    (before[list] as readonly object[]).filter((entry) => !placeOf.has(entryKey(entry)))
  );
  const place = (entry: object) => placeOf.get(entryKey(entry)) ?? keys.length;
  const entries: readonly object[] = workbook[list];
  const sorted = [...entries].sort((a, b) => place(a) - place(b));
  return { workbook: { ...workbook, [list]: sorted }, removed, notes };
}

/** The workbook without these entries: all at once or, where something refers to one of them, each that can go. */
function without(
  before: Workbook,
  list: ListName,
  going: readonly object[]
): { workbook: Workbook; removed: readonly string[]; notes: readonly string[] } {
  const placeIn = new Map((before[list] as readonly object[]).map((entry, place) => [entry, place]));
  const allGone = deleteRows(before, { list, rows: going.map((entry) => placeIn.get(entry) ?? -1) });
  if ('workbook' in allGone) return { workbook: allGone.workbook, removed: going.map(nameOf), notes: [] };
  const removed: string[] = [];
  const notes: string[] = [];
  let workbook = before;
  for (const entry of going) {
    const key = entryKey(entry);
    const row = (workbook[list] as readonly object[]).findIndex((each) => entryKey(each) === key);
    const shrunk = deleteRows(workbook, { list, rows: [row] });
    if ('sentence' in shrunk)
      notes.push(`“${nameOf(entry)}” stays, though the file does not have it: ${shrunk.sentence}`);
    else {
      workbook = shrunk.workbook;
      removed.push(nameOf(entry));
    }
  }
  return { workbook, removed, notes };
}
