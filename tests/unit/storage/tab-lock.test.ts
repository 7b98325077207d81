import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { TabChannel, TabLock, TabLockEvents } from '#lib/storage/tab-lock.ts';
import { tabLock } from '#lib/storage/tab-lock.ts';
import { tabsOfABrowser } from '../../fixtures/tabs-of-a-browser.ts';

const listener = () => {
  const told: string[] = [];
  const events: TabLockEvents = {
    lettingGo: async () => void told.push('letting go'),
    readsAlong: () => void told.push('reads along'),
    saved: (revision) => void told.push(`saved ${revision}`),
    freed: () => void told.push('freed')
  };
  return { told, events };
};

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Lets time pass while a promise is awaited. */
async function after<T>(promise: Promise<T>, ms = 10_000): Promise<T> {
  await vi.advanceTimersByTimeAsync(ms);
  return promise;
}

describe.each([
  ['with the browser’s locks', true],
  ['without locks', false]
])('%s', (_name, withLocks) => {
  async function twoTabs() {
    const platform = tabsOfABrowser(withLocks);
    const [first, second] = [listener(), listener()];
    const one: TabLock = await after(tabLock('w', first.events, platform));
    const two: TabLock = await after(tabLock('w', second.events, platform));
    return { platform, one, two, first: first.told, second: second.told };
  }

  test('the first tab writes and the second reads along', async () => {
    const { one, two, first } = await twoTabs();
    expect([one.writes, two.writes]).toEqual([true, false]);
    expect(first).toEqual([]);
  });

  test('the second takes over once the first has saved, and the first is told', async () => {
    const { one, two, first } = await twoTabs();
    await after(two.takeOver());
    expect(first).toEqual(['letting go', 'reads along']);
    expect([one.writes, two.writes]).toEqual([false, true]);
    await after(one.takeOver());
    expect([one.writes, two.writes]).toEqual([true, false]);
  });

  test('a tab that sleeps loses its turn after a few seconds', async () => {
    const { platform, two } = await twoTabs();
    platform.freeze(platform.channels[0] as TabChannel);
    const taking = two.takeOver();
    await vi.advanceTimersByTimeAsync(1000);
    expect(two.writes).toBe(false);
    await after(taking);
    expect(two.writes).toBe(true);
  });

  test('whoever reads along hears of saves and of the writer’s end', async () => {
    const { one, two, second } = await twoTabs();
    one.tellSaved(7);
    await vi.advanceTimersByTimeAsync(1);
    one.release();
    await vi.advanceTimersByTimeAsync(1);
    expect(second).toEqual(['saved 7', 'freed']);
    await after(two.takeOver());
    expect(two.writes).toBe(true);
  });

  test('a tab that fails to save still lets go', async () => {
    const platform = tabsOfABrowser(withLocks);
    const failing = { ...listener().events, lettingGo: () => Promise.reject(new Error('full')) };
    const one = await after(tabLock('w', failing, platform));
    const two = await after(tabLock('w', listener().events, platform));
    const unhandled: unknown[] = [];
    const note = (error: unknown) => void unhandled.push(error);
    process.on('unhandledRejection', note);
    await after(two.takeOver(), 100);
    process.off('unhandledRejection', note);
    expect([one.writes, two.writes]).toEqual([false, true]);
    expect(unhandled).toEqual([]);
  });

  test('asking twice to take over is asking once', async () => {
    const { two, first } = await twoTabs();
    await after(Promise.all([two.takeOver(), two.takeOver()]));
    expect(first).toEqual(['letting go', 'reads along']);
  });
});

test('where two tabs without locks write at once, the one that hears of the other’s save steps back', async () => {
  const platform = tabsOfABrowser(false);
  const [first, second] = [listener(), listener()];
  const [one, two] = await after(
    Promise.all([tabLock('w', first.events, platform), tabLock('w', second.events, platform)])
  );
  expect([one.writes, two.writes]).toEqual([true, true]);
  one.tellSaved(2);
  await vi.advanceTimersByTimeAsync(1);
  expect([one.writes, two.writes]).toEqual([true, false]);
  expect(second.told).toEqual(['reads along', 'saved 2']);
});

test('other workbooks are no concern', async () => {
  const platform = tabsOfABrowser(true);
  const names: string[] = [];
  await after(
    tabLock('w', listener().events, {
      ...platform,
      channel: (name) => (names.push(name), platform.channel(name))
    })
  );
  expect(names).toEqual(['vapour-ledger w']);
});
