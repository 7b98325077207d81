import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { deleteRows, duplicateRows, insertRows } from '#lib/workbook/edit-rows.ts';
import { cellsNotInForce, notInForceInWords } from '#lib/workbook/not-in-force.ts';
import { numericCells } from '#lib/workbook/numeric-cells.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();
const price = 'agents.sevoflurane.bottlePrice';

/** The demo with a row below that came with these texts. */
function withRow(texts: Readonly<Record<string, string>>, onto: Workbook = demo): Workbook {
  const grown = insertRows(onto, { list: 'caseMix', at: onto.caseMix.length, count: 1 });
  if ('sentence' in grown) throw new Error(grown.sentence);
  const id = grown.workbook.caseMix.at(-1)!.id;
  const given = Object.entries(texts).map(([key, text]) => ({ path: `caseMix.${id}.${key}`, text }));
  return editCells(grown.workbook, given, 'en-GB', onto).workbook;
}
const total = (workbook: Workbook): string => estimate(coreInput(workbook)).scenarios[0]!.perYear.cost.total;
const of = (workbook: Workbook) => cellsNotInForce(workbook, 'en-GB');

describe('a cell whose text is not in force', () => {
  test('is named with its sheet and row, the text, why it was not taken and what counts', () => {
    const { workbook } = editCells(demo, [{ path: price, text: 'dear' }], 'en-GB');
    expect(of(workbook)).toMatchObject([{ path: price, text: 'dear', inForce: '118.00', rowLeftOut: false }]);
    expect(of(workbook)[0]?.sentence).toMatch(
      /^Prices, sevoflurane: Bottle price: “dear” is not .* 118\.00 stays in force\.$/
    );
    expect(notInForceInWords(of(workbook))).toBe(
      '1 cell is not in force: Prices, sevoflurane: Bottle price (“dear”; 118.00 counts).'
    );
    expect(notInForceInWords(of(demo))).toBe('');
  });

  test('of many five are named, and the rest counted', () => {
    const texts = demo.caseMix.slice(0, 7).map(({ id }) => ({ path: `caseMix.${id}.minutes`, text: 'long' }));
    const words = notInForceInWords(of(editCells(demo, texts, 'en-GB').workbook));
    expect(words).toMatch(/^7 cells are not in force: .*; and 2 more\.$/);
    expect(words.match(/“long”/g)).toHaveLength(5);
  });
});

describe('a row that never had a valid value', () => {
  const made = { name: 'Thyroid', casesPerYear: '130', technique: 'hypnosis' };

  test('takes part in nothing until it has one, and says so', () => {
    const workbook = withRow(made);
    expect(workbook.caseMix.at(-1)).toMatchObject({ name: 'Thyroid', casesPerYear: 130 });
    expect(coreInput(workbook).caseMix.map(({ id }) => id)).toEqual(demo.caseMix.map(({ id }) => id));
    expect(total(workbook)).toBe(total(demo));
    const id = workbook.caseMix.at(-1)!.id;
    expect(numericCells(workbook).some(({ path }) => path.startsWith(`caseMix.${id}.`))).toBe(false);
    expect(of(workbook)[0]).toMatchObject({ inForce: '', rowLeftOut: true });
    expect(of(workbook)[0]?.sentence).toMatch(/The row is left out of every figure until it is mended\.$/);

    const mended = editCells(
      workbook,
      [{ path: `caseMix.${id}.technique`, text: 'Volatile' }],
      'en-GB'
    ).workbook;
    expect(of(mended)).toEqual([]);
    expect(total(mended)).not.toBe(total(demo));
  });

  test('stays out when the workbook is saved and opened again, when it is duplicated, and goes when deleted', () => {
    const workbook = withRow(made);
    const opened = parseWorkbook(JSON.parse(JSON.stringify(workbook)));
    expect(opened.kind === 'workbook' && total(opened.workbook)).toBe(total(demo));
    const rows = [workbook.caseMix.length - 1];
    const twice = duplicateRows(workbook, { list: 'caseMix', rows });
    if ('sentence' in twice) throw new Error(twice.sentence);
    expect(total(twice.workbook)).toBe(total(demo));
    expect(of(twice.workbook)).toHaveLength(2);
    const gone = deleteRows(workbook, { list: 'caseMix', rows });
    expect('workbook' in gone && of(gone.workbook)).toEqual([]);
  });

  test('one that had a good value before keeps counting with it', () => {
    const { workbook } = editCells(demo, [{ path: 'caseMix.hip.technique', text: 'hypnosis' }], 'en-GB');
    expect(total(workbook)).toBe(total(demo));
    expect(of(workbook)[0]).toMatchObject({ inForce: 'Regional', rowLeftOut: false });
  });

  test('a text that only lacked something elsewhere is in force once that is there', () => {
    const blank = { ...blankWorkbook(), agents: demo.agents.filter(({ agent }) => agent === 'sevoflurane') };
    const workbook = withRow({ name: 'Hip', casesPerYear: '10', agent: 'Isoflurane' }, blank);
    expect(coreInput(workbook).caseMix).toEqual([]);
    const more = {
      ...workbook,
      agents: [...workbook.agents, { ...workbook.agents[0]!, agent: 'isoflurane' as const }]
    };
    const edited = editCells(more, [], 'en-GB');
    expect(edited.inForceNow).toEqual([expect.stringMatching(/\.agent$/)]);
    expect(coreInput(edited.workbook).caseMix).toMatchObject([{ agent: 'isoflurane', casesPerYear: 10 }]);
  });
});
