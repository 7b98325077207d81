import type { ImportPreview, ImportRequest, RefusedRow } from './import-request.ts';
import type { TextRow } from '../read/read-table.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { columnNotes } from './column-notes.ts';

/** A row of a file that was read: what it is about, what that is called, and what it says of it. */
export interface KeyedRow<V> {
  readonly key: string;
  readonly name: string;
  readonly value: V;
}

/** A table whose rows say something of a key, and stand in no list. */
export interface KeyedTable<V> {
  /** What stands in the workbook, by key. */
  readonly before: ReadonlyMap<string, V>;
  readonly nameOf: (key: string) => string;
  /** A row of the file by its columns’ texts; or why it cannot be taken. */
  readonly read: (textOf: (column: string) => string) => KeyedRow<V> | { readonly sentence: string };
  readonly isSame: (a: V, b: V) => boolean;
  /** The workbook with these in place, and the keys that it does not take, each with a sentence. */
  readonly put: (values: ReadonlyMap<string, V>) => {
    readonly workbook: Workbook;
    readonly refused: ReadonlyMap<string, string>;
  };
}

/** `previewImport` for such a table. */
export function importKeyed<V>(
  workbook: Workbook,
  request: ImportRequest,
  { before, nameOf, read, isSame, put }: KeyedTable<V>
): ImportPreview {
  const { file, mapping, mode } = request;
  const refusedRows: RefusedRow[] = [];
  const taken = new Map<string, KeyedRow<V> & { readonly row: TextRow }>();
  for (const row of file.rows) {
    const refuse = (sentence: string) => void refusedRows.push({ line: row.line, sentence });
    const found = read((column) => (row.texts[mapping.indexOf(column)] ?? '').trim());
    if ('sentence' in found) refuse(found.sentence);
    else if (taken.has(found.key)) refuse(`“${found.name}” stands in the file twice; the first is taken.`);
    else if (mode === 'append' && before.has(found.key))
      refuse(`“${found.name}” is in the list already; replace the list to change it.`);
    else taken.set(found.key, { ...found, row });
  }
  const values = new Map(mode === 'append' ? before : []);
  for (const [key, { value }] of taken) values.set(key, value);
  const placed = put(values);
  for (const [key, sentence] of placed.refused) {
    const line = taken.get(key)?.row.line;
    if (line !== undefined) refusedRows.push({ line, sentence });
    taken.delete(key);
  }
  const known = [...taken].filter(([key]) => before.has(key));
  const unchanged = known.filter(([key, { value }]) => isSame(before.get(key) as V, value)).length;
  const removed = mode === 'append' ? [] : [...before.keys()].filter((key) => !taken.has(key)).map(nameOf);
  const added = taken.size - known.length;
  return {
    workbook: added + known.length - unchanged + removed.length === 0 ? workbook : placed.workbook,
    added,
    changed: known.length - unchanged,
    unchanged,
    removed,
    empties: removed.length > 0 && removed.length === before.size && taken.size === 0,
    refusedCells: [],
    refusedRows: refusedRows.sort((a, b) => a.line - b.line),
    notes: columnNotes(request, [], 0)
  };
}
