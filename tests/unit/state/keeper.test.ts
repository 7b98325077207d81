import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { readFileSync } from 'node:fs';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { ABrowser, Tab } from '../../fixtures/a-browser.ts';
import { aBrowser } from '../../fixtures/a-browser.ts';
import { memoryStorage } from '../../fixtures/memory-storage.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const row = demoWorkbook().caseMix[0]!;
const cell = `caseMix.${row.id}.casesPerYear`;
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);
const casesOn = (tab: Tab): number | null => tab.desk.workbook.caseMix[0]!.casesPerYear;

/** A second of rest: what is pending is saved, and tabs have heard of each other. */
const rest = () => pass(1000);

/** Number of cases in each workbook of the list, the last saved first. */
async function stored({ store }: ABrowser): Promise<(number | null | undefined)[]> {
  const heads = await store.list();
  if (heads.kind === 'failed') throw new Error(heads.sentence);
  return Promise.all(
    heads.value.map(async ({ id }) => {
      const opened = await store.open(id);
      if (opened.kind === 'failed') throw new Error(opened.sentence);
      return opened.value.parsed.workbook.caseMix[0]?.casesPerYear;
    })
  );
}

/** Opens the app and gives its promise the time that it waits for other tabs. */
async function open(browser: ABrowser, ofTab?: Storage): Promise<Tab> {
  // What a tab that has just ended held is free by then.
  await pass(1);
  const opening = browser.open(ofTab);
  await rest();
  return opening;
}

/** Fills the browser's database, or gives it room again. */
const fill = (browser: ABrowser) => (browser.failsWith = 'QuotaExceededError');
const makeRoom = (browser: ABrowser) => (browser.failsWith = null);

/** Presses the button beside the message on the desk. */
async function press(tab: Tab, label: string): Promise<void> {
  expect(tab.desk.message?.action?.label).toBe(label);
  tab.desk.message?.action?.run();
  await rest();
}

/** A tab whose workbook is saved with 901 cases, and whose change to 902 failed to be. */
async function withFailedSave(browser: ABrowser): Promise<Tab> {
  const tab = await open(browser);
  tab.edit(cell, '901');
  await rest();
  fill(browser);
  tab.edit(cell, '902');
  await rest();
  expect(tab.keeper.state).toBe('failed');
  return tab;
}

const openBlank = (tab: Tab) =>
  tab.keeper.openFresh(blankWorkbook(), { store: false, sentence: 'An empty workbook.' });

test('a workbook that an older version saved says what differs, and is then saved as it is', async () => {
  const browser = aBrowser();
  const tab = await open(browser);
  const file = new URL('../../fixtures/workbooks/version-1-2026-11-25-example.json', import.meta.url);
  const old = JSON.parse(readFileSync(file, 'utf8')) as Workbook;
  const head = await browser.store.create(old);
  if (head.kind === 'failed') throw new Error(head.sentence);
  const opening = tab.keeper.openStored(head.value.id);
  await rest();
  await opening;
  expect(tab.desk.workbook.version).toBe(2);
  expect(tab.desk.message?.sentence).toMatch(
    /^It was saved by an older version, .* “Closed-circuit A” do today’s plan/
  );
});

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

  test('never leaves an edit unsaved for longer than a second, however long one types on', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    for (let edit = 1; edit <= 50; edit++) {
      tab.edit(cell, String(900 + edit));
      await pass(300);
      const [newest = 0] = await stored(browser);
      // What was typed a second ago, three edits before, is in the database.
      if (edit > 4) expect(newest).toBeGreaterThanOrEqual(900 + edit - 3);
    }
  });

  test('an edit that is undone before it was saved leaves nothing to be saved', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    await rest();
    tab.edit(cell, '902');
    tab.desk.undo();
    tab.keeper.changed();
    await rest();
    expect(tab.keeper.state).toBe('saved');
    expect(tab.keeper.head?.revision).toBe(1);
  });
});

describe('a change that could not be saved', () => {
  test('is on the desk again after a reload, still not saved, and is saved once there is room', async () => {
    const browser = aBrowser();
    (await withFailedSave(browser)).end();
    const again = await open(browser);
    expect(casesOn(again)).toBe(902);
    expect(again.keeper.state).toBe('failed');
    expect(again.desk.message?.sentence).toMatch(/no room left/);
    makeRoom(browser);
    again.edit('title', 'North');
    await rest();
    expect(again.keeper.state).toBe('saved');
    // In its workbook, and nothing is left of the draft.
    expect(await stored(browser)).toEqual([902]);
    again.end();
    expect((await open(browser)).keeper.setAside).toEqual([]);
    expect(await stored(browser)).toEqual([902]);
  });

  test('is saved by the next visit where there is room by then', async () => {
    const browser = aBrowser();
    (await withFailedSave(browser)).end();
    makeRoom(browser);
    const again = await open(browser);
    expect([casesOn(again), again.keeper.state]).toEqual([902, 'saved']);
    expect(await stored(browser)).toEqual([902]);
  });

  test('in a browser without a database is on the desk after a reload, too', async () => {
    const browser = aBrowser();
    browser.failsWith = 'SecurityError';
    const tab = await open(browser);
    tab.edit(cell, '902');
    await rest();
    tab.end();
    const again = await open(browser);
    expect([casesOn(again), again.keeper.state]).toEqual([902, 'failed']);
    again.edit('title', 'North');
    await rest();
    again.end();
    const third = await open(browser);
    expect([casesOn(third), third.desk.workbook.title]).toEqual([902, 'North']);
  });

  test('is set aside when another workbook is opened, and the way back leads to it', async () => {
    const browser = aBrowser();
    const tab = await withFailedSave(browser);
    await openBlank(tab);
    expect(tab.keeper.setAside.map(({ workbook }) => workbook.caseMix[0]?.casesPerYear)).toEqual([902]);
    await press(tab, 'Back to the one before');
    expect([casesOn(tab), tab.keeper.state]).toEqual([902, 'failed']);
  });

  test('is not overwritten by edits of another workbook that cannot be saved either', async () => {
    const browser = aBrowser();
    const tab = await withFailedSave(browser);
    await openBlank(tab);
    tab.edit('title', 'Another');
    await rest();
    tab.end();
    makeRoom(browser);
    await open(browser);
    expect((await stored(browser)).toSorted()).toEqual([902, undefined]);
  });

  test('is offered where its workbook is opened as it is stored', async () => {
    const browser = aBrowser();
    const tab = await withFailedSave(browser);
    const id = tab.keeper.head?.id ?? '';
    await openBlank(tab);
    const opening = tab.keeper.openStored(id);
    await rest();
    expect(await opening).toBeNull();
    expect(casesOn(tab)).toBe(901);
    makeRoom(browser);
    await press(tab, 'Open them');
    expect([casesOn(tab), tab.keeper.state]).toEqual([902, 'saved']);
    expect(tab.keeper.setAside).toEqual([]);
    expect(await stored(browser)).toEqual([902]);
  });

  test('beside a newer version becomes a workbook of its own, and the user is told', async () => {
    const browser = aBrowser();
    const tab = await withFailedSave(browser);
    tab.end();
    makeRoom(browser);
    const id = tab.keeper.head?.id ?? '';
    await browser.store.save(id, { ...tab.desk.workbook, title: 'South' }, 1);
    const again = await open(browser);
    expect(again.desk.message?.sentence).toMatch(/a workbook of their own/);
    expect([casesOn(again), (await stored(browser)).length]).toEqual([902, 2]);
  });

  test('that cannot be set aside either is asked about before another workbook takes its place', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    browser.refusesDrafts = true;
    fill(browser);
    tab.edit(cell, '902');
    await rest();
    await openBlank(tab);
    expect(casesOn(tab)).toBe(902);
    await press(tab, 'Open the other without saving');
    expect(tab.desk.workbook.caseMix).toEqual([]);
  });

  test('is left to a tab that still has it', async () => {
    const browser = aBrowser();
    const one = await withFailedSave(browser);
    makeRoom(browser);
    const two = await open(browser);
    expect(casesOn(two)).toBe(901);
    one.edit(cell, '903');
    await rest();
    expect([one.keeper.state, casesOn(two)]).toEqual(['saved', 903]);
    expect(await stored(browser)).toEqual([903]);
  });
});

describe('a user who leaves the page', () => {
  test('is asked where something is not saved, and only there', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    expect(tab.keeper.asksBeforeLeaving()).toBe(false);
    tab.edit(cell, '901');
    // Kept at once where that takes no time: nothing would be lost.
    expect(tab.keeper.asksBeforeLeaving()).toBe(false);
    browser.refusesDrafts = true;
    expect(tab.keeper.asksBeforeLeaving()).toBe(true);
    browser.refusesDrafts = false;
    await rest();
    expect(tab.keeper.asksBeforeLeaving()).toBe(false);
    fill(browser);
    tab.edit(cell, '902');
    await rest();
    expect(tab.keeper.asksBeforeLeaving()).toBe(true);
  });

  test('before the edit was saved has it on the next visit, in its workbook', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    await rest();
    tab.edit(cell, '902');
    tab.keeper.leave();
    tab.end();
    const again = await open(browser);
    expect(casesOn(again)).toBe(902);
    expect(await stored(browser)).toEqual([902]);
  });
});

describe.each([
  ['with the browser’s locks', true],
  ['without locks', false]
])('two tabs %s', (_name, withLocks) => {
  async function twoTabs() {
    const browser = aBrowser({ withLocks });
    const one = await open(browser);
    one.edit(cell, '901');
    await rest();
    const two = await open(browser);
    return { browser, one, two };
  }
  async function takeOver(tab: Tab): Promise<void> {
    const taking = tab.keeper.takeOver();
    await pass(10_000);
    await taking;
  }

  async function saveCopy(tab: Tab): Promise<void> {
    expect(tab.desk.readOnly).toMatch(/before your last changes here were saved/);
    expect(tab.keeper.holdsUnsaved).toBe(true);
    const saving = tab.keeper.saveAnew();
    await rest();
    await saving;
  }

  test('one writes, the other reads along and shows what was saved', async () => {
    const { one, two } = await twoTabs();
    expect(two.desk.readOnly).toMatch(/open for writing in another tab/);
    one.edit(cell, '902');
    await rest();
    expect(casesOn(two)).toBe(902);
  });

  test('the scenario that the reader chose stays chosen', async () => {
    const { one, two } = await twoTabs();
    const first = two.desk.workbook.scenarios.find(({ baseline }) => !baseline)!.id;
    expect(two.desk.chosenId).not.toBe(first);
    two.desk.choose(first);
    one.edit(cell, '902');
    await rest();
    expect(two.desk.chosenId).toBe(first);
  });

  test('the other takes over what the first had not saved yet', async () => {
    const { one, two } = await twoTabs();
    one.edit(cell, '902');
    await takeOver(two);
    expect([casesOn(two), two.desk.readOnly]).toEqual([902, null]);
    expect(one.desk.readOnly).toMatch(/open for writing in another tab/);
  });

  test('a change that the first could not save stays on its desk, whatever the other saves', async () => {
    const { browser, one, two } = await twoTabs();
    fill(browser);
    one.edit(cell, '911');
    await takeOver(two);
    makeRoom(browser);
    two.edit(cell, '900');
    await rest();
    expect(casesOn(one)).toBe(911);
    await saveCopy(one);
    expect([one.keeper.state, one.desk.readOnly]).toEqual(['saved', null]);
    expect((await stored(browser)).toSorted()).toEqual([900, 911]);
    // From here on the two tabs write workbooks of their own.
    one.edit(cell, '912');
    two.edit(cell, '899');
    await rest();
    expect((await stored(browser)).toSorted()).toEqual([899, 912]);
  });

  test('a tab that slept with a pending edit keeps it, and can save it as a copy', async () => {
    const { browser, one, two } = await twoTabs();
    const [sleeping] = browser.platform.channels;
    one.edit(cell, '911');
    browser.platform.freeze(sleeping!);
    // While it sleeps, its timers do not run: the other edits and saves first.
    browser.failsWith = 'AbortError';
    await takeOver(two);
    browser.failsWith = null;
    two.edit(cell, '900');
    await rest();
    browser.platform.wake(sleeping!);
    await rest();
    expect(casesOn(one)).toBe(911);
    await saveCopy(one);
    expect((await stored(browser)).toSorted()).toEqual([900, 911]);
  });

  test('the first, taking back what it could not save, saves it where nothing came between', async () => {
    const { browser, one, two } = await twoTabs();
    fill(browser);
    one.edit(cell, '911');
    await takeOver(two);
    makeRoom(browser);
    await takeOver(one);
    expect([casesOn(one), one.keeper.state]).toEqual([911, 'saved']);
    expect(casesOn(two)).toBe(911);
  });
});

describe('what comes onto the desk first', () => {
  test('after a browser that was killed before it noted what was open, the workbook saved last', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    await rest();
    tab.end();
    browser.local.clear();
    expect(casesOn(await open(browser))).toBe(901);
  });

  test('in a tab where the demo was asked for, the demo after a reload', async () => {
    const browser = aBrowser();
    const ofTab = memoryStorage();
    const tab = await open(browser, ofTab);
    tab.edit(cell, '901');
    await rest();
    await tab.keeper.openFresh(demoWorkbook(), { store: false, sentence: 'The demo.' });
    tab.end();
    expect(casesOn(await open(browser, ofTab))).toBe(row.casesPerYear);
  });

  test('the scenario that was chosen, for each workbook its own', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    const others = tab.desk.workbook.scenarios.filter(({ baseline }) => !baseline).map(({ id }) => id);
    const [first, last] = [others[0], others.at(-1)];
    tab.desk.choose(first!);
    tab.keeper.chose();
    // Chosen before the workbook was stored, it is kept with it once it is.
    tab.edit(cell, '901');
    await rest();
    const one = tab.keeper.head?.id ?? '';
    await tab.keeper.openFresh(demoWorkbook(), { store: true, sentence: 'The demo.' });
    await rest();
    expect(tab.desk.chosenId).toBe(last);
    const opening = tab.keeper.openStored(one);
    await rest();
    await opening;
    expect(tab.desk.chosenId).toBe(first);
    tab.end();
    expect((await open(browser)).desk.chosenId).toBe(first);
  });
});

describe('a database that went away under the page', () => {
  test('is told, and the workbook can be kept as a new one', async () => {
    const browser = aBrowser();
    const tab = await open(browser);
    tab.edit(cell, '901');
    await rest();
    browser.deleteDatabase();
    tab.edit(cell, '902');
    await rest();
    expect(tab.keeper.state).toBe('failed');
    await press(tab, 'Keep it as a new workbook');
    expect(tab.keeper.state).toBe('saved');
    tab.edit(cell, '903');
    await rest();
    expect(await stored(browser)).toEqual([903]);
  });
});
