/** The history of undo and redo, which is kept with the workbook: what a reload leaves of it. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { deleteRows, insertRows } from '#lib/workbook/edit-rows.ts';
import { aBrowser, type ABrowser, type Tab } from '../../fixtures/a-browser.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const row = demoWorkbook().caseMix[0]!;
const cell = `caseMix.${row.id}.casesPerYear`;
const casesOn = ({ desk }: Tab): number | null => desk.workbook.caseMix[0]!.casesPerYear;

const rest = () => vi.advanceTimersByTimeAsync(1000);

async function open(browser: ABrowser): Promise<Tab> {
  await vi.advanceTimersByTimeAsync(1);
  const opening = browser.open();
  await rest();
  return opening;
}

async function reloaded(browser: ABrowser, tab: Tab): Promise<Tab> {
  tab.end();
  return open(browser);
}

/** A tab in which 901, 902 and 903 cases were typed, each of them saved. */
async function withThreeSteps(browser: ABrowser): Promise<Tab> {
  const tab = await open(browser);
  for (const text of ['901', '902', '903']) {
    tab.edit(cell, text);
    await rest();
  }
  return tab;
}

function undo(tab: Tab): number | null {
  tab.desk.undo();
  tab.keeper.changed();
  return casesOn(tab);
}

function redo(tab: Tab): number | null {
  tab.desk.redo();
  tab.keeper.changed();
  return casesOn(tab);
}

test('after a reload each step is undone and done again as before, back to the workbook as it came', async () => {
  const browser = aBrowser();
  const tab = await reloaded(browser, await withThreeSteps(browser));
  expect(casesOn(tab)).toBe(903);
  expect([undo(tab), undo(tab), undo(tab)]).toEqual([902, 901, row.casesPerYear]);
  expect(tab.desk.canUndo).toBe(false);
  expect(tab.desk.workbook).toEqual(demoWorkbook());
  expect([redo(tab), redo(tab), redo(tab)]).toEqual([901, 902, 903]);
  expect(tab.desk.canRedo).toBe(false);
});

test('what was undone before the reload can be done again after it', async () => {
  const browser = aBrowser();
  const tab = await withThreeSteps(browser);
  expect([undo(tab), undo(tab)]).toEqual([902, 901]);
  await rest();
  const again = await reloaded(browser, tab);
  expect(casesOn(again)).toBe(901);
  expect([redo(again), redo(again)]).toEqual([902, 903]);
  await rest();
  const third = await reloaded(browser, again);
  expect([undo(third), undo(third), undo(third)]).toEqual([902, 901, row.casesPerYear]);
});

test('an edit after the reload begins a new way forward, with the kept way back', async () => {
  const browser = aBrowser();
  const tab = await withThreeSteps(browser);
  undo(tab);
  await rest();
  const again = await reloaded(browser, tab);
  again.edit(cell, '950');
  expect(again.desk.canRedo).toBe(false);
  await rest();
  const third = await reloaded(browser, again);
  expect([undo(third), undo(third)]).toEqual([902, 901]);
});

test('a page that is left before it is saved keeps its steps with what it could not save', async () => {
  const browser = aBrowser();
  const tab = await withThreeSteps(browser);
  tab.edit(cell, '904');
  tab.keeper.leave();
  const again = await reloaded(browser, tab);
  expect(casesOn(again)).toBe(904);
  expect([undo(again), undo(again)]).toEqual([903, 902]);
});

test.each(['{', '[]', '{"revision":3,"version":2,"past":[7],"future":[]}', 'null'])(
  'steps that cannot be read (%s) are gone, with a sentence; the workbook is whole',
  async (spoilt) => {
    const browser = aBrowser();
    const tab = await withThreeSteps(browser);
    await browser.spoilSteps(tab.keeper.head?.id ?? '', spoilt);
    const again = await reloaded(browser, tab);
    expect(casesOn(again)).toBe(903);
    expect(again.desk.canUndo).toBe(false);
    expect(again.desk.message?.sentence).toBe(
      'The steps of undo that were kept with this workbook could not be read, so they are gone. The workbook itself is whole.'
    );
  }
);

test.each([
  ['leads to no sound workbook', { in: { caseMix: { to: 7 } } }],
  ['is of another workbook', { in: { caseMix: { each: { 4000: { to: 1 } } } } }],
  ['is nothing', {}]
])('a step that %s is gone when it is taken, with a sentence', async (_, step) => {
  const browser = aBrowser();
  const tab = await withThreeSteps(browser);
  const spoilt = JSON.stringify({ revision: 3, version: 2, past: [step], future: [] });
  await browser.spoilSteps(tab.keeper.head?.id ?? '', spoilt);
  const again = await reloaded(browser, tab);
  expect(again.desk.canUndo).toBe(true);
  expect(undo(again)).toBe(903);
  expect(again.desk.canUndo).toBe(false);
  expect(again.desk.message?.sentence).toBe(
    'The earlier steps that were kept with this workbook could not be read, so they are gone. The workbook is as it was.'
  );
});

test('steps of another save lead nowhere, and are passed over', async () => {
  const browser = aBrowser();
  const tab = await withThreeSteps(browser);
  await browser.spoilSteps(
    tab.keeper.head?.id ?? '',
    JSON.stringify({ revision: 2, version: 2, past: [{ in: {} }], future: [] })
  );
  const again = await reloaded(browser, tab);
  expect(again.desk.canUndo).toBe(false);
  expect(again.desk.message).toBeNull();
});

test('steps are kept as far as there is room for them, the last ones first', async () => {
  const browser = aBrowser();
  const tab = await open(browser);
  const more = insertRows(tab.desk.workbook, { list: 'caseMix', at: 1, count: 900 });
  tab.desk.applyRows(more);
  // What a step back puts in again is what it takes room for.
  const stepsTaken = 12;
  const rows = Array.from({ length: 60 }, (_, at) => at + 1);
  for (let step = 0; step < stepsTaken; step++)
    tab.desk.applyRows(deleteRows(tab.desk.workbook, { list: 'caseMix', rows }));
  const left = tab.desk.workbook.caseMix.length;
  tab.keeper.changed();
  await rest();
  const again = await reloaded(browser, tab);
  let steps = 0;
  while (again.desk.canUndo) {
    again.desk.undo();
    steps++;
  }
  expect(steps).toBeGreaterThan(5);
  expect(steps).toBeLessThan(stepsTaken);
  expect(again.desk.workbook.caseMix).toHaveLength(left + 60 * steps);
});

test('where a browser has room for the workbook alone, the way back is left out', async () => {
  const browser = aBrowser();
  const tab = await open(browser);
  browser.hasNoRoomForSteps = true;
  tab.edit(cell, '901');
  await rest();
  expect(tab.keeper.state).toBe('saved');
  const again = await reloaded(browser, tab);
  expect(casesOn(again)).toBe(901);
  expect(again.desk.canUndo).toBe(false);
});
