import type { ListName } from '#lib/workbook/edit-rows.ts';
import { entryKey, freshId, fullSentence, insertKeyed, roomIn } from '#lib/workbook/edit-rows.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { TextRow } from '../read/read-table.ts';
import type { ImportPreview, ImportRequest, RefusedRow } from './import-request.ts';
import { columnNotes } from './column-notes.ts';
import { keepOnly, nameOf } from './keep-only.ts';
import type { AttachedText } from './place-attached.ts';
import { placeAttached } from './place-attached.ts';
import { placeRanges, rangesIn, withoutRanges } from './place-ranges.ts';
import type { PlacedText } from './place-texts.ts';
import { placeTexts } from './place-texts.ts';
import { columnsOf } from '../tables/tables.ts';

/** Lists with one row for each entry. */
type PlainList = Exclude<ListName, 'flowPlans'>;

/** Lists whose rows have no id: an agent or a monitor stands there once, and is known by what it is. */
const keyColumns: Readonly<Partial<Record<PlainList, string>>> = {
  agents: 'agent',
  monitorPrices: 'item'
};

/** A row of the file and the entry that it goes to. */
interface Met {
  readonly row: TextRow;
  readonly key: string;
  readonly isNew: boolean;
}

/** `previewImport` for a list with one row for each entry. */
export function importList(before: Workbook, request: ImportRequest, list: PlainList): ImportPreview {
  const { file, mapping, mode, locale } = request;
  const columns = columnsOf(list, before.currency);
  const matched = matchRows(before, request, list);
  const known = matched.met.flatMap(({ key, isNew }) => (isNew ? [] : [key]));
  // What leaves makes room for what comes; what cannot leave yet is tried again once the file's own values stand.
  const freed = mode === 'replace' ? keepOnly(before, list, known) : { workbook: before, removed: [] };
  const grown = addRows(freed.workbook, matched, list);
  const texts: PlacedText[] = [];
  const attachedTexts: AttachedText[] = [];
  mapping.forEach((key, index) => {
    const column = columns.find((each) => each.key === key);
    if (column === undefined || key === keyColumns[list]) return;
    for (const { row, key: id } of grown.met) {
      const text = {
        path: `${list}.${id}.${column.key}`,
        text: row.texts[index] ?? '',
        line: row.line,
        column: file.headers[index] ?? ''
      };
      if (column.attached !== undefined) attachedTexts.push({ ...text, field: column.attached });
      else if (column.field !== null) texts.push(text);
    }
  });
  const ranges = rangesIn(request, grown.met);
  const placed = placeTexts(withoutRanges(grown.workbook, ranges), texts, request, freed.workbook);
  const attached = placeAttached(placed.workbook, attachedTexts, { locale, mode });
  const ranged = placeRanges(attached.workbook, ranges, locale);
  const keys = grown.met.map(({ key }) => key);
  const replaced =
    mode === 'replace'
      ? keepOnly(ranged.workbook, list, keys)
      : { workbook: ranged.workbook, removed: [], notes: [] };
  const touched = new Set([...placed.differing, ...attached.differing].map((path) => path.split('.')[1]));
  const removed = [...freed.removed, ...replaced.removed];
  const added = grown.met.filter(({ isNew }) => isNew).length;
  const changed = grown.met.filter(({ key, isNew }) => !isNew && touched.has(key)).length;
  return {
    workbook: replaced.workbook,
    added,
    changed,
    unchanged: grown.met.length - added - changed,
    removed,
    empties: removed.length > 0 && replaced.workbook[list].length === 0,
    refusedCells: [...placed.refusedCells, ...attached.refusedCells, ...ranged.refusedCells].sort(
      (a, b) => a.line - b.line
    ),
    keyOfLine: new Map(grown.met.map(({ row, key }) => [row.line, key])),
    refusedRows: grown.refusedRows,
    notes: [...columnNotes(request, columns, added), ...placed.notes, ...replaced.notes]
  };
}

/** Rows of the file with the entries that they go to, and those that go nowhere. */
interface Matched {
  readonly met: readonly Met[];
  readonly refusedRows: readonly RefusedRow[];
}

/** Finds the entry for each row of the file, or a key for a new one where there is none. */
function matchRows(
  before: Workbook,
  { file, mapping, mode, locale }: ImportRequest,
  list: PlainList
): Matched {
  const keyColumn = keyColumns[list];
  const keyField = columnsOf(list, before.currency).find(({ key }) => key === keyColumn)?.field ?? null;
  const textOf = (row: TextRow, column: string) => (row.texts[mapping.indexOf(column)] ?? '').trim();
  const originals: readonly object[] = before[list];
  const taken = new Set(originals.map(entryKey));
  const met: Met[] = [];
  const reached = new Set<string>();
  const refusedRows: RefusedRow[] = [];
  const byKey = new Map(originals.map((entry) => [entryKey(entry), entry]));
  const byName = byOnlyName(originals);
  for (const row of file.rows) {
    const refuse = (sentence: string) => void refusedRows.push({ line: row.line, sentence });
    const wanted =
      keyField === null
        ? { value: textOf(row, 'id') }
        : readText(textOf(row, keyColumn ?? ''), { field: keyField, workbook: before, locale });
    if ('sentence' in wanted) {
      refuse(wanted.sentence);
      continue;
    }
    const id = String(wanted.value);
    const named = id === '' ? byName.get(textOf(row, 'name')) : undefined;
    // A second row of that name is another group, e.g. the same operation with another agent.
    const known = byKey.get(id) ?? (named !== undefined && !reached.has(entryKey(named)) ? named : undefined);
    if (known !== undefined && (mode === 'replace' || keyField !== null)) {
      const key = entryKey(known);
      if (reached.has(key)) refuse(`“${nameOf(known)}” stands in the file twice; the first is taken.`);
      else if (mode === 'append')
        refuse(`“${nameOf(known)}” is in the list already; replace the list to change it.`);
      else {
        reached.add(key);
        met.push({ row, key, isNew: false });
      }
      continue;
    }
    const key = keyField !== null || (isId(id) && !taken.has(id)) ? id : freshId(textOf(row, 'name'), taken);
    if (taken.has(key)) {
      refuse(`“${textOf(row, keyColumn ?? 'id')}” stands in the file twice; the first is taken.`);
      continue;
    }
    taken.add(key);
    met.push({ row, key, isNew: true });
  }
  return { met, refusedRows };
}

/** Adds the new entries, as many as the list has room for; rows beyond are refused. */
function addRows(
  workbook: Workbook,
  { met, refusedRows }: Matched,
  list: PlainList
): Matched & { readonly workbook: Workbook } {
  const room = roomIn(workbook, list);
  const coming = met.filter(({ isNew }) => isNew);
  const beyond = new Set(coming.slice(room));
  const keys = coming.slice(0, room).map(({ key }) => key);
  const grown = insertKeyed(workbook, { list, at: workbook[list].length, keys });
  if ('sentence' in grown) throw new Error(grown.sentence);
  return {
    workbook: grown.workbook,
    met: met.filter((row) => !beyond.has(row)),
    refusedRows: [
      ...refusedRows,
      ...[...beyond].map(({ row }) => ({ line: row.line, sentence: fullSentence(list) }))
    ].sort((a, b) => a.line - b.line)
  };
}

const isId = (text: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text) && text.length <= 80;

/** The entries by name, without names that more than one has. */
function byOnlyName(entries: readonly object[]): ReadonlyMap<string, object> {
  const found = new Map<string, object | null>();
  for (const entry of entries) found.set(nameOf(entry), found.has(nameOf(entry)) ? null : entry);
  return new Map([...found].flatMap(([name, entry]) => (entry === null ? [] : [[name, entry] as const])));
}
