import { describe, expect, test } from 'vitest';
import type { ScenarioSwing } from '#lib/calc/what-if/draws.ts';
import { weightsInWords, weightsOfInputs } from '#lib/sheets/parts/weights-in-words.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import type { SourceGrade } from '#lib/workbook/source-note.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const swing = (paths: readonly string[], low: number, high: number): ScenarioSwing => ({
  paths,
  outcomes: [low, high].map((npv) => ({
    values: paths.map(() => 1),
    figures: { yearlySaving: 0, co2eAvoidedKg: 0, npv, paybackYears: 1 }
  }))
});
const [sevoflurane, isoflurane, machine] = [
  'agents.sevoflurane.bottlePrice',
  'agents.isoflurane.bottlePrice',
  'machines.m-now.unitPrice'
];
const swings = [
  swing([isoflurane], 0, 10),
  swing([machine], 100, 40),
  swing([sevoflurane], -30, 0),
  swing(['gases.airPerM3'], 5, 5)
];
const graded = (grades: Readonly<Record<string, SourceGrade>>): Workbook => ({
  ...blankWorkbook(),
  notes: Object.fromEntries(
    Object.entries(grades).map(([path, grade]) => [path, { text: `of ${grade}`, date: null, grade }])
  )
});
const of = (workbook: Workbook, given = swings) => weightsOfInputs(given, { workbook, locale: 'en-GB' });

test('inputs stand by their weight with grade and note; one that moves nothing is left out', () => {
  expect(
    of(graded({ [machine]: 'quoted' })).map(({ name, share, grades, note }) => [name, share, grades, note])
  ).toEqual([
    ['Machines, Machine in use: Price', 0.6, 'Quoted', 'of quoted'],
    ['Prices, sevoflurane: Bottle price', 0.3, 'no grade', ''],
    ['Prices, isoflurane: Bottle price', 0.1, 'no grade', '']
  ]);
});

describe('the sentence', () => {
  const said = (workbook: Workbook, given = swings) => weightsInWords(of(workbook, given), workbook);

  test.each([
    [{}, '2 cells carry four fifths of what is not known of the answer; of these, 2 have no grade.'],
    [
      { [machine]: 'assumed', [sevoflurane]: 'invoiced' },
      '2 cells carry four fifths of what is not known of the answer; of these, 1 is assumed.'
    ],
    [
      { [machine]: 'assumed', [sevoflurane]: 'assumed' },
      '2 cells carry four fifths of what is not known of the answer; of these, all are assumed.'
    ],
    [
      { [machine]: 'quoted', [sevoflurane]: 'measured', [isoflurane]: 'assumed' },
      '2 cells carry four fifths of what is not known of the answer; each of them is measured, invoiced or quoted.'
    ]
  ] as const)('counts the weak grades among those that carry most: %o', (grades, sentence) => {
    expect(said(graded(grades))).toBe(sentence);
  });

  test('of one cell, of cells that vary together, and of none', () => {
    expect(said(graded({ [machine]: 'assumed' }), [swing([machine], 0, 1)])).toBe(
      'One cell carries four fifths of what is not known of the answer; its grade: Assumed.'
    );
    const together = [swing([machine, sevoflurane], 0, 1)];
    expect(of(graded({ [machine]: 'assumed' }), together)[0]?.grades).toBe('1 × Assumed, 1 × no grade');
    expect(said(graded({ [machine]: 'assumed' }), together)).toBe(
      '2 cells carry four fifths of what is not known of the answer; of these, 1 is assumed, 1 has no grade.'
    );
    expect(said(blankWorkbook(), [])).toBe(
      'No range moves the answer, so no cell carries more of it than another.'
    );
  });
});
