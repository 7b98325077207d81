/** Which rows of a grid fit the conditions of a filter. Pure. */
import { readDecimal } from '#lib/numbers/read-decimal.ts';
import type { GridCell, GridColumn, GridRow } from './grid-types.ts';

export type FilterRule = 'contains' | 'lacks' | 'is' | 'at-least' | 'at-most' | 'empty';

/** The rules in words, as they stand between a column and a text. */
export const filterRules: Readonly<Record<FilterRule, string>> = {
  contains: 'contains',
  lacks: 'does not contain',
  is: 'is',
  'at-least': 'is at least',
  'at-most': 'is at most',
  empty: 'is empty'
};

/** A row fits where its cell in the column keeps the rule. An empty column means any: one such cell is enough. */
export interface FilterCondition {
  readonly column: string;
  readonly rule: FilterRule;
  readonly text: string;
}

const folded = (text: string): string => text.trim().toLowerCase();

function numberIn(text: string, locale: string): number | null {
  const read = readDecimal(text, locale);
  return 'decimal' in read ? Number(read.decimal) : null;
}

const compares = ({ rule }: FilterCondition): boolean => rule === 'at-least' || rule === 'at-most';

/** Why a condition says nothing yet, in a sentence; null where it holds. One without a text says nothing, in silence. */
export function filterFault(condition: FilterCondition, locale: string): string | null {
  if (!compares(condition) || condition.text.trim() === '' || numberIn(condition.text, locale) !== null)
    return null;
  return `“${condition.text.trim()}” is no number: this condition hides nothing.`;
}

const isAsked = (condition: FilterCondition, locale: string): boolean =>
  condition.rule === 'empty' || (folded(condition.text) !== '' && filterFault(condition, locale) === null);

function keeps(cell: GridCell, { rule, text }: FilterCondition, locale: string): boolean {
  // As shown and as edited: 1,234 is found by either of its spellings.
  const texts = [folded(cell.text), folded(cell.editText)];
  switch (rule) {
    case 'contains':
      return texts.some((each) => each.includes(folded(text)));
    case 'lacks':
      return !texts.some((each) => each.includes(folded(text)));
    case 'is':
      return texts.includes(folded(text));
    case 'empty':
      return cell.editText.trim() === '' && cell.state !== 'off';
    case 'at-least':
    case 'at-most': {
      const value = numberIn(cell.editText, locale);
      const limit = numberIn(text, locale);
      if (value === null || limit === null) return false;
      return rule === 'at-least' ? value >= limit : value <= limit;
    }
  }
}

/** The rows that fit all conditions, told of each row. An empty cell is empty, whatever default acts in it. */
export function rowsThatFit(
  { columns, rows }: { readonly columns: readonly GridColumn[]; readonly rows: readonly GridRow[] },
  conditions: readonly FilterCondition[],
  locale: string
): readonly boolean[] {
  const asked = conditions
    .filter((condition) => isAsked(condition, locale))
    .map((condition) => ({ condition, at: columns.findIndex(({ key }) => key === condition.column) }));
  return rows.map((row) =>
    asked.every(({ condition, at }) => {
      if (condition.column === '') {
        const kept = (cell: GridCell): boolean => keeps(cell, condition, locale);
        return condition.rule === 'lacks' ? row.cells.every(kept) : row.cells.some(kept);
      }
      const cell = row.cells[at];
      // A column that is no longer there hides nothing.
      return cell === undefined || keeps(cell, condition, locale);
    })
  );
}

/** The condition by which only rows stay that have in a column what this cell has. */
export const likeCell = (column: string, { text, editText }: GridCell): FilterCondition =>
  editText.trim() === ''
    ? { column, rule: 'empty', text: '' }
    : { column, rule: 'is', text: text.trim() === '' ? editText : text };
