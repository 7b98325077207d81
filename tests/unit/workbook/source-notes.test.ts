import { describe, expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { payFor, newPayment } from '#lib/workbook/edit-moves.ts';
import { deleteRows, duplicateRows, insertRows } from '#lib/workbook/edit-rows.ts';
import { numericCells } from '#lib/workbook/numeric-cells.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { readSourceNote, sourceNoteInWords, withSourceNote } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../../fixtures/every-branch.ts';

function withMachineThatComes(): Workbook {
  const found = everyBranch.find(({ scenarios }) => scenarios.some(({ moves }) => moves.length > 0));
  if (found === undefined) throw new Error('No fixture has a machine that comes.');
  return found;
}

const price = 'agents.sevoflurane.bottlePrice';
const invoice: SourceNote = { text: 'tender 2026', date: '2026-03-01', grade: 'invoiced' };
const pasted: SourceNote = { text: 'Pasted', date: '2026-03-02', grade: null };
const noted = withSourceNote(blankWorkbook(), price, invoice);
const put = (workbook: Workbook, text: string, source?: SourceNote) =>
  editCells(workbook, [{ path: price, text, ...(source === undefined ? {} : { source }) }], 'en-GB');
const asFile = (notes: unknown) => parseWorkbook({ ...blankWorkbook(), notes });

describe('a note in a file', () => {
  test('comes back as it was saved; date and grade may be left out', () => {
    const read = asFile({ [price]: invoice, currency: { text: 'since 2020' } });
    expect(read).toMatchObject({
      kind: 'workbook',
      workbook: { notes: { [price]: invoice, currency: { text: 'since 2020', date: null, grade: null } } }
    });
    expect(parseWorkbook(blankWorkbook())).toMatchObject({ kind: 'workbook' });
  });

  test.each([
    ['of no cell', { 'agents.xenon.colour': invoice }, 'is not a cell'],
    ['of a path that objects have', { constructor: invoice }, 'is not a cell'],
    ['that is a bare text', { [price]: 'tender' }, 'a text with a date and a grade'],
    ['with a grade of its own', { [price]: { ...invoice, grade: 'sure' } }, 'measured, invoiced, quoted'],
    ['of a day that is none', { [price]: { ...invoice, date: '2026-02-30' } }, '“2026-02-30” was given'],
    ['with another field', { [price]: { ...invoice, by: 'me' } }, '“by”: no such field'],
    ['that says nothing', { [price]: { text: '', date: null, grade: null } }, 'nothing was given'],
    [
      'longer than a cell takes',
      { [price]: { ...invoice, text: 'x'.repeat(10_001) } },
      '10\u202f001 characters'
    ]
  ])('%s is refused with a sentence', (_what, notes, sentence) => {
    const read = asFile(notes);
    expect(read.kind).toBe('refused');
    expect(JSON.stringify(read)).toContain(sentence);
  });

  test('of 10 000 characters, or that looks like a formula, is plain text', () => {
    for (const text of ['x'.repeat(10_000), '=1+cmd|x', '<b onclick=x>'])
      expect(asFile({ [price]: { text } })).toMatchObject({
        kind: 'workbook',
        workbook: { notes: { [price]: { text } } }
      });
  });
});

describe('the note of a cell that is written', () => {
  test('goes with the value that it spoke of, and that is told', () => {
    const { workbook, notesGone } = put(noted, '150');
    expect([workbook.notes, notesGone]).toEqual([{}, [price]]);
  });

  test('stays where the value stays, whatever is written over it', () => {
    expect(put(noted, noted.agents[0]?.bottlePrice ?? '', pasted).workbook.notes).toEqual({
      [price]: invoice
    });
    const refused = put(noted, 'ask the pharmacy', pasted);
    expect([refused.workbook.notes, refused.notesGone]).toEqual([{ [price]: invoice }, []]);
  });

  test('is where the new value comes from, if that is known', () => {
    const { workbook, notesGone } = put(noted, '150', pasted);
    expect([workbook.notes, notesGone]).toEqual([{ [price]: pasted }, []]);
  });

  test('keeps arithmetic, beside where it comes from', () => {
    expect(put(noted, '=30*2').workbook.notes?.[price]).toEqual({
      text: 'Computed from =30*2',
      date: null,
      grade: null
    });
    expect(put(noted, '90+30', pasted).workbook.notes?.[price]).toEqual({
      ...pasted,
      text: 'Computed from 90+30. Pasted'
    });
  });

  test('is given to numbers of a new row even where they are what a new row starts with, and to no words', () => {
    const before = blankWorkbook();
    const grown = insertRows(before, { list: 'caseMix', at: 0, count: 1 });
    if ('sentence' in grown) throw new Error(grown.sentence);
    const id = grown.workbook.caseMix[0]?.id ?? '';
    const texts = [
      { path: `caseMix.${id}.minutes`, text: '60', source: pasted },
      { path: `caseMix.${id}.name`, text: 'Hernia', source: pasted }
    ];
    expect(editCells(grown.workbook, texts, 'en-GB', before).workbook.notes).toEqual({
      [`caseMix.${id}.minutes`]: pasted
    });
  });
});

describe('the notes of rows', () => {
  const path = 'machines.m-now.unitPrice';

  test('go with a row that is deleted, and are not taken over by its copy', () => {
    const copied = duplicateRows(withSourceNote(blankWorkbook(), path, invoice), {
      list: 'machines',
      rows: [0]
    });
    if ('sentence' in copied) throw new Error(copied.sentence);
    expect(copied.workbook.notes).toEqual({ [path]: invoice });
    const copy = 'machines.m-now-2.unitPrice';
    const deleted = deleteRows(withSourceNote(copied.workbook, copy, pasted), {
      list: 'machines',
      rows: [1]
    });
    if ('sentence' in deleted) throw new Error(deleted.sentence);
    expect(deleted.workbook.notes).toEqual({ [path]: invoice });
  });

  test('go with a way of paying that is taken back, as its ranges do, so that the file can be opened again', () => {
    const workbook = withMachineThatComes();
    const scenario = workbook.scenarios.find(({ moves }) => moves.length > 0);
    const [move] = scenario?.moves ?? [];
    if (scenario === undefined || move === undefined)
      throw new Error('The fixture has no machine that comes.');
    const row = { scenario, move, index: 0 };
    const leased = payFor(workbook, row, { ...newPayment, perUnitPerYear: '900' });
    if ('sentence' in leased) throw new Error(leased.sentence);
    const cell = `scenarios.${scenario.id}.moves.0.payment.perUnitPerYear`;
    const known = withSourceNote(
      { ...leased.workbook, ranges: { ...leased.workbook.ranges, [cell]: { low: 800, high: 1000 } } },
      cell,
      invoice
    );
    expect(parseWorkbook(known).kind).toBe('workbook');
    const bought = payFor(known, row, null);
    if ('sentence' in bought) throw new Error(bought.sentence);
    expect(bought.workbook.notes).toEqual({});
    expect(parseWorkbook(bought.workbook).kind).toBe('workbook');
  });
});

test('no figure rests on a note', () => {
  const workbook = withMachineThatComes();
  const all = Object.fromEntries(numericCells(workbook).map(({ path }) => [path, invoice]));
  const answer = (of: Workbook, memo = new CaseMemo()) => JSON.stringify(estimate(coreInput(of), memo));
  expect(answer({ ...workbook, notes: all })).toBe(answer(workbook));
  expect(numericCells({ ...workbook, notes: all })).toEqual(numericCells(workbook));
});

test('a form’s texts become a note, none, or a sentence', () => {
  const workbook = blankWorkbook();
  const read = (text: string, date: string, grade: string) => readSourceNote({ text, date, grade }, workbook);
  expect(read(' tender 2026 ', '2026-03-01', 'Invoiced')).toEqual({ note: invoice });
  expect(read('', ' ', '')).toEqual({ note: null });
  expect(read('', '1.3.2026', '')).toEqual({
    sentence: 'Date: “1.3.2026” was given; allowed is a day such as 2026-03-01.'
  });
  expect(read('', '', 'sure')).toMatchObject({ sentence: expect.stringContaining('Grade: “sure”') });
});

test('a note in one line', () => {
  expect(sourceNoteInWords(invoice, 'en-GB')).toBe('Invoiced, 1 March 2026: tender 2026');
  expect(sourceNoteInWords({ text: '', date: null, grade: 'assumed' }, 'en-GB')).toBe('Assumed');
});
