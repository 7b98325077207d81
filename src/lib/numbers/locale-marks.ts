/** How a locale writes a number: its decimal mark, its grouping mark, its digits. Taken from the platform, not from a table. */

export interface LocaleMarks {
  readonly decimal: string;
  readonly group: string;
  /** The locale's digits 0 to 9, where they are not the usual ones. */
  readonly digits: readonly string[];
}

const known = new Map<string, LocaleMarks>();

/**
 * The locale of the person before the screen, or `en-GB` where there is no screen (scripts, tests).
 *
 * A browser may report a name that is no language tag (`en-US@posix`); that falls back to `en-GB` as well.
 */
export function defaultLocale(): string {
  const inBrowser = 'document' in globalThis || 'importScripts' in globalThis;
  if (!inBrowser || typeof navigator === 'undefined') return 'en-GB';
  try {
    return Intl.getCanonicalLocales(navigator.language)[0] ?? 'en-GB';
  } catch {
    return 'en-GB';
  }
}

/** The marks of `locale` (a language tag such as `de-CH`). Throws RangeError for what is no language tag. */
export function localeMarks(locale: string): LocaleMarks {
  const before = known.get(locale);
  if (before !== undefined) return before;
  const parts = new Intl.NumberFormat(locale).formatToParts(12345678.9);
  const ungrouped = new Intl.NumberFormat(locale, { useGrouping: false });
  const marks: LocaleMarks = {
    decimal: plainMark(parts.find((part) => part.type === 'decimal')?.value ?? '.'),
    group: plainMark(parts.find((part) => part.type === 'group')?.value ?? ''),
    digits: Array.from({ length: 10 }, (_, digit) => ungrouped.format(digit))
  };
  known.set(locale, marks);
  return marks;
}

/** Marks that go with other digits or another apostrophe, as the plain one that means the same. */
export function plainMark(mark: string): string {
  return mark
    .replace('\u066b', '.')
    .replace('\u066c', "'")
    .replace(/[\u2019\u02bc]/, "'");
}
