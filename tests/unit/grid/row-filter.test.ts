import { describe, expect, test } from 'vitest';
import type { GridCell, GridColumn, GridRow } from '#lib/grid/grid-types.ts';
import { filterFault, likeCell, rowsThatFit, type FilterCondition } from '#lib/grid/row-filter.ts';

const columns: readonly GridColumn[] = [
  { key: 'name', title: 'Name', words: '', kind: 'text', widthCh: 9 },
  { key: 'cases', title: 'Cases', words: '', kind: 'number', widthCh: 9 }
];
const cell = (
  text: string,
  editText = text.replace(',', ''),
  state: GridCell['state'] = 'given'
): GridCell => ({
  text,
  editText,
  state
});
const rows: readonly GridRow[] = [
  [cell('Hernia repair'), cell('1,234')],
  [cell('Knee'), cell('75')],
  [cell('hernia, child'), cell('60', '', 'default')],
  [cell('Eye'), cell('n/a', '', 'off')]
].map((cells, index) => ({ id: `r${index}`, label: '', cells }));

const fit = (...conditions: FilterCondition[]): readonly number[] =>
  rowsThatFit({ columns, rows }, conditions, 'en-GB').flatMap((fits, index) => (fits ? [index] : []));

describe('the rows that fit', () => {
  test.each<[string, FilterCondition, number[]]>([
    ['a part of the text, capitals or not', { column: 'name', rule: 'contains', text: ' HERNIA' }, [0, 2]],
    ['what a text has not in it', { column: 'name', rule: 'lacks', text: 'hernia' }, [1, 3]],
    ['the whole text', { column: 'name', rule: 'is', text: 'knee' }, [1]],
    ['a part is not the whole', { column: 'name', rule: 'is', text: 'hernia' }, []],
    ['a number as it is shown', { column: 'cases', rule: 'is', text: '1,234' }, [0]],
    ['the same as it is edited', { column: 'cases', rule: 'is', text: '1234' }, [0]],
    ['at least, by size and not by letters', { column: 'cases', rule: 'at-least', text: '100' }, [0]],
    ['at most; a default is no number of the row', { column: 'cases', rule: 'at-most', text: '75' }, [1]],
    ['empty; what does not apply is not empty', { column: 'cases', rule: 'empty', text: '' }, [2]],
    ['any column', { column: '', rule: 'contains', text: '75' }, [1]],
    ['no column has it', { column: '', rule: 'lacks', text: '75' }, [0, 2, 3]],
    ['an empty text asks nothing', { column: 'name', rule: 'contains', text: ' ' }, [0, 1, 2, 3]],
    ['a column that is gone hides nothing', { column: 'gone', rule: 'is', text: 'x' }, [0, 1, 2, 3]]
  ])('%s', (_, condition, expected) => {
    expect(fit(condition)).toEqual(expected);
  });

  test('all conditions hold at once', () => {
    expect(
      fit(
        { column: 'name', rule: 'contains', text: 'hernia' },
        { column: 'cases', rule: 'at-least', text: '1' }
      )
    ).toEqual([0]);
  });

  test('a limit that is no number hides nothing and says so', () => {
    const condition: FilterCondition = { column: 'cases', rule: 'at-least', text: 'many' };
    expect(fit(condition)).toEqual([0, 1, 2, 3]);
    expect(filterFault(condition, 'en-GB')).toBe('“many” is no number: this condition hides nothing.');
    expect(filterFault({ ...condition, text: '3' }, 'en-GB')).toBeNull();
  });
});

test('a cell makes the condition that its row fits', () => {
  expect(likeCell('cases', cell('1,234'))).toEqual({ column: 'cases', rule: 'is', text: '1,234' });
  expect(likeCell('cases', cell('60', '', 'default'))).toEqual({ column: 'cases', rule: 'empty', text: '' });
});
