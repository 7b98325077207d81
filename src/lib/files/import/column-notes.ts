import type { ImportRequest } from './import-request.ts';
import { isAddedHeader } from '../tables/added-headers.ts';
import type { TableColumn } from '../tables/tables.ts';

/** What a reader of an import must know about its columns: those left out, and those that new rows have to do without. */
export function columnNotes(
  { mapping, file }: ImportRequest,
  columns: readonly TableColumn[],
  added: number
): readonly string[] {
  const unused = file.headers.filter((header, index) => mapping[index] === null && !isAddedHeader(header));
  const missing = columns.filter(({ key, field, attached }) =>
    field === null && attached === undefined ? false : !mapping.includes(key)
  );
  const notes: string[] = [];
  if (unused.length > 0) notes.push(`Columns that are not taken: ${unused.join(', ')}.`);
  if (missing.length > 0 && added > 0)
    notes.push(
      `New rows get start values, to be checked, in columns that the file does not have: ${missing.map(({ header }) => header).join(', ')}.`
    );
  return notes;
}
