import type { TableColumn } from '../tables/tables.ts';

/** For each column of the file, in its order: the key of the table's column that takes it, or null for none. */
export type ColumnMapping = readonly (string | null)[];

/** A heading without its unit, brackets, marks and capitals: `Bottle price [EUR]` and `bottlePrice` are one. */
export function foldHeader(header: string): string {
  return header
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\(.*?\)|\[.*?\]/g, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/**
 * Which column of the file goes where, by heading: the table's own headings first, then their keys, then headings that
 * begin alike. Each column of the table is filled at most once; what is not recognised is left to the user's choice.
 */
export function mapColumns(headers: readonly string[], columns: readonly TableColumn[]): ColumnMapping {
  const mapping: (string | null)[] = headers.map(() => null);
  const free = new Set(columns.map((column) => column.key));
  const take = (fits: (header: string, column: TableColumn) => boolean) => {
    headers.forEach((header, index) => {
      if (mapping[index] !== null) return;
      const column = columns.find((each) => free.has(each.key) && fits(header, each));
      if (column === undefined) return;
      mapping[index] = column.key;
      free.delete(column.key);
    });
  };
  take((header, column) => header === column.header);
  take((header, column) => foldHeader(header) === foldHeader(column.header));
  take((header, column) => foldHeader(header) === foldHeader(column.key));
  take((header, column) => {
    const [short, long] = [foldHeader(header), foldHeader(column.header)].sort((a, b) => a.length - b.length);
    return short !== undefined && short.length >= 4 && long?.startsWith(short) === true;
  });
  return mapping;
}
