import { describe, expect, test } from 'vitest';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Desk } from '#lib/state/desk.svelte.ts';
import { aDesk } from '../../fixtures/a-desk.ts';

const row = demoWorkbook().caseMix[0]!;
const cell = `caseMix.${row.id}.casesPerYear`;
const setCases = (desk: Desk, text: string): boolean => desk.edit([{ path: cell, text }]);
const cases = (desk: Desk): number | null => desk.workbook.caseMix[0]!.casesPerYear;
const yearlyCost = (desk: Desk): string => desk.today.perYear.cost.total;

describe('an edit', () => {
  test('puts the text into its cell, and the estimate follows', () => {
    const desk = aDesk();
    const before = yearlyCost(desk);
    setCases(desk, '901');
    expect(cases(desk)).toBe(901);
    expect(Number(yearlyCost(desk))).not.toBe(Number(before));
  });

  test('that cannot be read keeps its text and the last good value, and says so', () => {
    const desk = aDesk();
    setCases(desk, 'many');
    expect(cases(desk)).toBe(row.casesPerYear);
    expect(desk.sentences[cell]).toMatch(/many/);
    expect(desk.message?.sentence).toMatch(/The last good value stays in force/);
    setCases(desk, '902');
    expect(desk.message).toBeNull();
    expect(desk.sentences[cell]).toBeUndefined();
  });

  test('that cannot be read is named by sheet and row, and the message goes with its cause', () => {
    const desk = aDesk();
    setCases(desk, 'many');
    expect(desk.message?.sentence).toMatch(new RegExp(`^Case mix, ${row.name}: `));
    expect(desk.notInForce.map(({ path }) => path)).toEqual([cell]);
    desk.apply({ ...desk.workbook, title: 'North' });
    expect(desk.message?.sentence).toMatch(/many/);
    desk.undo();
    desk.undo();
    expect(desk.message).toBeNull();
    expect(desk.notInForce).toEqual([]);
  });

  test('moves a range with its cell, and says so with a way back', () => {
    const desk = aDesk();
    desk.edit([{ path: 'agents.sevoflurane.bottlePrice', text: '150' }]);
    expect(desk.workbook.agents[0]?.bottlePrice).toBe('150');
    expect(desk.message).toMatchObject({ tone: 'note', action: { label: 'Undo' } });
    expect(desk.message?.sentence).toMatch(/^The range of Prices, sevoflurane: Bottle price moved/);
  });

  test('changes nothing where the workbook is shown read-only, and says so', () => {
    const desk = aDesk();
    desk.readOnly = 'Another tab has it.';
    setCases(desk, '901');
    expect(cases(desk)).toBe(row.casesPerYear);
    expect(desk.canUndo).toBe(false);
    expect(desk.message?.sentence).toMatch(/Nothing was changed/);
  });

  test('of several cells is one step of undo', () => {
    const desk = aDesk();
    desk.edit([
      { path: cell, text: '901' },
      { path: 'title', text: 'North' }
    ]);
    desk.undo();
    expect([cases(desk), desk.workbook.title]).toEqual([row.casesPerYear, demoWorkbook().title]);
    expect(desk.canUndo).toBe(false);
  });
});

describe('undo and redo', () => {
  test('go back and forth through the same workbooks, one edit at a time', () => {
    const desk = aDesk();
    const passed = [desk.workbook];
    for (const text of ['901', '902', '903']) {
      setCases(desk, text);
      passed.push(desk.workbook);
    }
    for (const before of passed.slice(0, -1).reverse()) {
      desk.undo();
      expect(desk.workbook).toBe(before);
    }
    expect([desk.canUndo, desk.canRedo]).toEqual([false, true]);
    for (const after of passed.slice(1)) {
      desk.redo();
      expect(desk.workbook).toBe(after);
    }
    expect([desk.canUndo, desk.canRedo]).toEqual([true, false]);
  });

  test('do nothing where there is nothing to go back or forth to', () => {
    const desk = aDesk();
    const { workbook } = desk;
    desk.undo();
    desk.redo();
    expect(desk.workbook).toBe(workbook);
  });

  test('an edit drops what could have been redone', () => {
    const desk = aDesk();
    setCases(desk, '901');
    setCases(desk, '902');
    desk.undo();
    setCases(desk, '903');
    expect(desk.canRedo).toBe(false);
    desk.redo();
    expect(cases(desk)).toBe(903);
    desk.undo();
    expect(cases(desk)).toBe(901);
  });

  test('reach 500 edits back and no further', () => {
    const desk = aDesk();
    for (let edit = 1; edit <= 502; edit++) desk.apply({ ...desk.workbook, title: `after edit ${edit}` });
    while (desk.canUndo) desk.undo();
    expect(desk.workbook.title).toBe('after edit 2');
  });

  test('another workbook begins a history of its own', () => {
    const desk = aDesk();
    setCases(desk, '901');
    setCases(desk, '902');
    desk.undo();
    desk.open(blankWorkbook());
    expect([desk.canUndo, desk.canRedo]).toEqual([false, false]);
  });
});

describe('the scenario that is spoken of', () => {
  test('is the last that is not today until another is chosen, and again once that one is gone', () => {
    const desk = aDesk();
    const others = desk.workbook.scenarios.filter(({ baseline }) => !baseline).map(({ id }) => id);
    expect(desk.chosenId).toBe(others.at(-1));
    desk.choose(others[0]!);
    expect(desk.chosenId).toBe(others[0]);
    expect(desk.chosen.id).toBe(others[0]);
    desk.apply({
      ...desk.workbook,
      scenarios: desk.workbook.scenarios.filter(({ id }) => id !== others[0])
    });
    expect(desk.chosenId).toBe(others.at(-1));
  });
});

describe('a number that could be read in two ways', () => {
  const price = 'agents.sevoflurane.bottlePrice';
  const paste = (desk: Desk): boolean =>
    desk.edit(
      [
        { path: price, text: '39.000' },
        { path: cell, text: '1.200' },
        { path: 'title', text: 'Part 1.200' }
      ],
      undefined,
      { byHand: true }
    );

  test('is asked about once, before anything is written, and the answer is one step of undo', () => {
    const desk = aDesk();
    const before = desk.workbook;
    expect(paste(desk)).toBe(false);
    expect(desk.workbook).toBe(before);
    expect(desk.question).toMatchObject({ text: '39.000', more: 1, thousands: '39000', decimals: '39.000' });
    desk.question?.answer('thousands');
    expect([desk.workbook.agents[0]?.bottlePrice, cases(desk)]).toEqual(['39000', 1200]);
    expect(desk.workbook.title).toBe('Part 1.200');
    expect(desk.question).toBeNull();
    desk.undo();
    expect(desk.workbook).toBe(before);
    expect(desk.canUndo).toBe(false);
  });

  test('can be decimals, or nothing', () => {
    const desk = aDesk();
    paste(desk);
    desk.question?.answer('decimals');
    expect([desk.workbook.agents[0]?.bottlePrice, cases(desk)]).toEqual(['39.000', 1.2]);
    const after = desk.workbook;
    paste(desk);
    desk.question?.answer('neither');
    expect(desk.workbook).toBe(after);
  });

  test('is read as it stands where a grid or a program wrote it', () => {
    const desk = aDesk();
    desk.edit([{ path: cell, text: '1.200' }]);
    expect([desk.question, cases(desk)]).toEqual([null, 1.2]);
  });
});
