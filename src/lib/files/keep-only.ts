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
  const removed: string[] = [];
  const placeOf = new Map(keys.map((key, index) => [key, index]));
  const notes: string[] = [];
  let workbook = before;
  for (const entry of before[list] as readonly object[]) {
    const key = entryKey(entry);
    if (placeOf.has(key)) continue;
    const row = (workbook[list] as readonly object[]).findIndex((each) => entryKey(each) === key);
    const shrunk = deleteRows(workbook, { list, rows: [row] });
    if ('sentence' in shrunk)
      notes.push(`“${nameOf(entry)}” stays, though the file does not have it: ${shrunk.sentence}`);
    else {
      workbook = shrunk.workbook;
      removed.push(nameOf(entry));
    }
  }
  const place = (entry: object) => placeOf.get(entryKey(entry)) ?? keys.length;
  const entries: readonly object[] = workbook[list];
  const sorted = [...entries].sort((a, b) => place(a) - place(b));
  return { workbook: { ...workbook, [list]: sorted }, removed, notes };
}
