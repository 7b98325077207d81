import type { Evidence, Source } from '../reference/constant.ts';

/** A source in one line: authors, title, container, year, locator, doi, as far as they are given. */
export function citation(source: Source): string {
  const { authors, title, container, year, locator = '' } = source;
  const where = locator.charAt(0).toUpperCase() + locator.slice(1);
  const parts = [authors, title, container, year?.toString(), where];
  const text = parts
    .filter((part): part is string => part !== undefined && part !== '')
    .map((part) => part.replace(/\.$/, ''))
    .join('. ');
  return source.doi === undefined ? text : `${text}. doi ${source.doi}`;
}

/** How we know a value, in words. */
export const evidenceWords: Readonly<Record<Evidence, string>> = {
  read: 'read in the source',
  'second-hand': 'read in a text that quotes it',
  memory: 'from memory',
  computed: 'computed from other records'
};
