import { describe, expect, test } from 'vitest';
import { textToCells } from '#lib/grid/clipboard.ts';
import type { GridColumn } from '#lib/grid/grid-types.ts';
import { headedBlock } from '#lib/grid/paste-by-heading.ts';
import { columnsMeant, mapColumns } from '#lib/workbook/match-headings.ts';

const column = (key: string, title: string, kind: GridColumn['kind'] = 'number'): GridColumn => ({
  ...{ key, title, kind, words: '', widthCh: 9 }
});
const columns = [
  column('name', 'Case group', 'text'),
  column('casesPerYear', 'Cases'),
  column('minutes', 'Minutes'),
  column('today', 'Today', 'computed'),
  column('ageYears', 'Age'),
  column('technique', 'Technique', 'choice')
];
const met = (text: string, from = 0) =>
  headedBlock(textToCells(text), {
    columns,
    match: (headings) =>
      mapColumns(
        headings,
        columns.map(({ key, title }) => ({ key, header: title }))
      ),
    from
  });
const targets = (text: string) => met(text)?.columns.map(({ column, why }) => column ?? why);

describe('a block with headings', () => {
  test('goes to the columns that they name, in words of the trade too, past computed ones', () => {
    const block = met('Procedure\tCases\tDuration (min)\tAge\nHip\t30\t90\t70');
    expect(block?.columns.map((each) => each.column)).toEqual([0, 1, 2, 4]);
    expect(block?.rows).toEqual([['Hip', '30', '90', '70']]);
    expect(block?.isInOrder).toBe(true);
  });

  test('is looked at first where its columns are others, in another order, or not from the selected one on', () => {
    expect(met('Cases\tProcedure\n30\tHip')?.isInOrder).toBe(false);
    expect(met('Procedure\tCases\tSurgeon\nHip\t30\tX')?.isInOrder).toBe(false);
    expect(met('Procedure\tCases\nHip\t30', 1)?.isInOrder).toBe(false);
  });

  test('a heading that no column has, that names one twice or a computed one goes nowhere, and why is said', () => {
    expect(targets('Procedure\tCases\tSurgeon\tCases\tToday\nHip\t30\tX\t4\t5')).toEqual([
      0,
      1,
      'is no column here',
      'names Cases, as another column does',
      'is computed here'
    ]);
  });
});

test('a heading that could mean two columns goes nowhere, and both are named', () => {
  const two = [
    column('name', 'Name', 'text'),
    column('low', 'Bottle price, low'),
    column('high', 'Bottle price, high')
  ];
  const three = [...two, column('cases', 'Cases')];
  const all = three.map(({ key, title }) => ({ key, header: title }));
  expect(
    headedBlock(textToCells('Name\tBottle price\tCases\nSevo\t118\t4'), {
      columns: three,
      match: (headings) => mapColumns(headings, all),
      means: (heading) => columnsMeant(heading, all),
      from: 0
    })?.columns.map(({ column, why }) => column ?? why)
  ).toEqual([0, 'could mean Bottle price, low or Bottle price, high', 3]);
});

test('a column that is hidden takes nothing, and is named', () => {
  const [name, cases, ...hidden] = columns as [GridColumn, GridColumn, ...GridColumn[]];
  const block = headedBlock(textToCells('Procedure\tAge\tCases\nHip\t70\t30'), {
    columns: [name, cases],
    hidden,
    match: (headings) =>
      mapColumns(
        headings,
        columns.map(({ key, title }) => ({ key, header: title }))
      ),
    from: 0
  });
  expect(block?.columns.map(({ column, why }) => column ?? why)).toEqual([
    0,
    'names Age, which is hidden',
    1
  ]);
  expect(block?.isInOrder).toBe(false);
});

test.each([
  ['Hip\t30\t90', 'a row of values'],
  ['Hip\tKnee\nElbow\tHand', 'names that no column has'],
  ['Cases', 'no rows below'],
  ['Cases\tSurgeon\tNurse\tRoom\n1\t2\t3\t4', 'one name among many'],
  ['', 'nothing']
])('%j has %s, so it brings no headings', (text) => {
  expect(met(text)).toBeNull();
});
