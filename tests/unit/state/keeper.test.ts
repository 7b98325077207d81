import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { ABrowser, Tab } from '../../fixtures/a-browser.ts';
import { aBrowser } from '../../fixtures/a-browser.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const row = demoWorkbook().caseMix[0]!;
const cell = `caseMix.${row.id}.casesPerYear`;
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);
const casesOn = (tab: Tab): number | null => tab.desk.workbook.caseMix[0]!.casesPerYear;

/** A second of rest: what is pending is saved, and tabs have heard of each other. */
const rest = () => pass(1000);

/** Number of cases in each workbook of the list, the last saved first. */
async function stored({ store }: ABrowser): Promise<(number | null)[]> {
  const heads = await store.list();
  if (heads.kind === 'failed') throw new Error(heads.sentence);
  return Promise.all(
    heads.value.map(async ({ id }) => {
      const opened = await store.open(id);
      if (opened.kind === 'failed') throw new Error(opened.sentence);
      return opened.value.parsed.workbook.caseMix[0]!.casesPerYear;
    })
  );
}

/** Opens the app and gives its promise the time that it waits for other tabs. */
async function open(browser: ABrowser, ofTab?: Storage): Promise<Tab> {
  const opening = browser.open(ofTab);
  await rest();
  return opening;
}

describe('autosave', () => {
  test('saves nothing of a demo that nobody touched', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.keeper.changed();
    await rest();
    expect(tab.keeper.state).toBe('untouched');
    expect(await stored(browser)).toEqual([]);
  });

  test('saves an edit within a second, and says when it is done', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    expect(tab.keeper.state).toBe('pending');
    await rest();
    expect(tab.keeper.state).toBe('saved');
    expect(await stored(browser)).toEqual([901]);
  });

  test('of edits in quick succession makes one version', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    for (const text of ['901', '902', '903']) {
      tab.edit(cell, text);
      await pass(100);
    }
    await rest();
    expect(tab.keeper.head?.revision).toBe(1);
    expect(await stored(browser)).toEqual([903]);
  });
});

describe('two tabs', () => {
  test('one writes, the other reads along and shows what was saved', async () => {
    const browser = aBrowser();
    const one = await open(browser);
    one.edit(cell, '901');
    await rest();
    const two = await open(browser);
    expect(two.desk.readOnly).toMatch(/open for writing in another tab/);
    one.edit(cell, '902');
    await rest();
    expect(casesOn(two)).toBe(902);
  });

  test('the other takes over what the first had not saved yet', async () => {
    const browser = aBrowser();
    const one = await open(browser);
    one.edit(cell, '901');
    await rest();
    const two = await open(browser);
    one.edit(cell, '902');
    const taking = two.keeper.takeOver();
    await rest();
    await taking;
    expect([casesOn(two), two.desk.readOnly]).toEqual([902, null]);
    expect(one.desk.readOnly).toMatch(/open for writing in another tab/);
  });
});

describe('a page that is left', () => {
  test('before its edit was saved has it on the next visit, in its workbook', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    await rest();
    tab.edit(cell, '902');
    // The page goes away in the middle of its save.
    browser.failsWith = 'AbortError';
    tab.keeper.leave();
    tab.end();
    browser.failsWith = null;
    const again = await open(browser);
    expect(casesOn(again)).toBe(902);
    expect(await stored(browser)).toEqual([902]);
  });
});
