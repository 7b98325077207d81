import { localeMarks } from '#lib/numbers/locale-marks.ts';

/** Numbers that can be read in one way only, with a decimal comma or with a decimal point. */
const commaOnly = /^[+-]?(\d{1,3}([. ']\d{3})+|\d+),\d+$/;
const pointOnly = /^[+-]?(\d{1,3}([, ']\d{3})+|\d+)\.\d+$/;
/** One mark before three digits: `1,234` may be either. */
const undecided = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/**
 * The locale by which a file's numbers are read: the user's, unless all numbers that can be read in one way only are
 * written in another. So a file with 0,25 and 12,5 in it has a decimal comma also where it says 1,234.
 */
export function numberLocale(rows: readonly (readonly string[])[], locale: string): string {
  let commas = 0;
  let points = 0;
  for (const row of rows)
    for (const cell of row) {
      // Most cells have no mark in them, and a large table has very many cells.
      if (!cell.includes(',') && !cell.includes('.')) continue;
      const text = cell.trim();
      if (undecided.test(text)) continue;
      if (commaOnly.test(text)) commas++;
      if (pointOnly.test(text)) points++;
    }
  const { decimal } = localeMarks(locale);
  if (commas > 0 && points === 0 && decimal !== ',') return 'de-DE';
  if (points > 0 && commas === 0 && decimal !== '.') return 'en-GB';
  return locale;
}
