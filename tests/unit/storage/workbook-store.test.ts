import { describe, expect, test } from 'vitest';
import type { Shelf } from '#lib/storage/shelf.ts';
import type { Stored, WorkbookStore } from '#lib/storage/workbook-store.ts';
import { workbookStore } from '#lib/storage/workbook-store.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { failingShelf, memoryShelf } from '../../fixtures/memory-shelf.ts';

function setting(shelf: Shelf = memoryShelf()): {
  store: WorkbookStore;
  shelf: Shelf;
  pass: (days: number) => void;
} {
  let time = Date.parse('2026-03-01T08:00:00Z');
  let ids = 0;
  const store = workbookStore({
    openShelf: async () => shelf,
    now: () => new Date((time += 1000)),
    newId: () => `w${++ids}`
  });
  return { store, shelf, pass: (days) => void (time += days * 86_400_000) };
}

function value<T>(stored: Stored<T>): T {
  if (stored.kind === 'failed') throw new Error(stored.sentence);
  return stored.value;
}

const reason = (stored: Stored<unknown>) => (stored.kind === 'failed' ? stored.reason : 'none');
const titled = (title: string) => ({ ...demoWorkbook(), title });

describe('several workbooks', () => {
  test('what was put away comes back, the last saved first in the list', async () => {
    const { store } = setting();
    const first = value(await store.create(titled('First')));
    value(await store.create(titled('Second')));
    value(await store.save(first.id, titled('First, changed'), first.revision));
    expect(value(await store.list()).map(({ title }) => title)).toEqual(['First, changed', 'Second']);
    expect(value(await store.open(first.id)).parsed).toEqual({
      kind: 'workbook',
      workbook: titled('First, changed'),
      notes: []
    });
  });

  test('a rename changes the title inside the document too', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('Old')));
    expect(value(await store.rename(id, 'New')).title).toBe('New');
    expect(value(await store.open(id)).parsed.workbook.title).toBe('New');
  });

  test('a title that the document would not take is refused before it makes the document unreadable', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('Old')));
    expect(await store.rename(id, ' ')).toEqual({
      kind: 'failed',
      reason: 'title',
      sentence: 'Title: “ ” was given; allowed is a text of 1 to 200 characters.'
    });
    expect(value(await store.open(id)).parsed.workbook.title).toBe('Old');
  });

  test('copies get titles of their own, within the limit, and lead their own lives', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('🫁'.repeat(100))));
    const copies = [value(await store.duplicate(id)), value(await store.duplicate(id))];
    expect(copies.map(({ title }) => title)).toEqual([
      `${'🫁'.repeat(96)} (copy)`,
      `${'🫁'.repeat(95)} (copy 2)`
    ]);
    value(await store.save(copies[0]?.id ?? '', titled('Changed'), 1));
    expect(value(await store.open(id)).parsed.workbook.title).toBe('🫁'.repeat(100));
  });

  test('a deleted workbook can be taken back with its history, whatever the clock says meanwhile', async () => {
    const { store, pass } = setting();
    const { id } = value(await store.create(titled('A')));
    value(await store.save(id, titled('B'), 1));
    value(await store.delete(id));
    expect(value(await store.list())).toEqual([]);
    pass(10_000);
    expect(value(await store.bin()).map((head) => head.id)).toEqual([id]);
    pass(-10_000);
    value(await store.undelete(id));
    expect(value(await store.history(id)).map(({ title }) => title)).toEqual(['B', 'A']);
  });

  test('emptying the bin removes what lies in it with every version, and nothing else', async () => {
    const shelf = memoryShelf();
    const { store } = setting(shelf);
    const kept = value(await store.create(titled('Kept')));
    for (const title of ['One', 'Two']) {
      const { id } = value(await store.create(titled(title)));
      value(await store.save(id, titled(title), 1));
      value(await store.delete(id));
    }
    value(await store.emptyBin());
    expect(value(await store.bin())).toEqual([]);
    expect(value(await store.list()).map(({ id }) => id)).toEqual([kept.id]);
    expect(shelf.texts.size).toBe(1);
  });

  test('a workbook can be removed where there is no room to put it into the bin', async () => {
    const shelf = memoryShelf();
    const { id } = value(await setting(shelf).store.create(titled('A')));
    const full = { ...shelf, put: failingShelf('QuotaExceededError').put };
    const { store } = setting(full);
    expect(reason(await store.delete(id))).toBe('full');
    value(await store.remove(id));
    expect(value(await store.list())).toEqual([]);
    expect(shelf.texts.size).toBe(0);
  });
});

describe('history', () => {
  test('the last 50 saves can be opened, and of older ones the last of each day', async () => {
    const { store, pass } = setting();
    const { id } = value(await store.create(titled('save 1')));
    for (let save = 2; save <= 120; save++) {
      if (save === 31 || save === 61) pass(1);
      value(await store.save(id, titled(`save ${save}`), save - 1));
    }
    const kept = value(await store.history(id)).map(({ revision }) => revision);
    expect(kept).toEqual([...Array.from({ length: 50 }, (_, index) => 120 - index), 70, 60, 30]);
    expect(value(await store.openVersion(id, 30)).parsed.workbook.title).toBe('save 30');
    expect(reason(await store.openVersion(id, 31))).toBe('missing');
  });

  test('nothing stays of a version that left the history', async () => {
    const shelf = memoryShelf();
    const { store } = setting(shelf);
    const { id } = value(await store.create(titled('save 1')));
    for (let save = 2; save <= 70; save++) value(await store.save(id, titled(`save ${save}`), save - 1));
    expect(shelf.texts.size).toBe(value(await store.history(id)).length);
    expect(shelf.texts.size).toBe(51);
  });

  test('restoring makes the old version the newest and loses none', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('A')));
    value(await store.save(id, titled('B'), 1));
    expect(value(await store.restore(id, 1))).toMatchObject({ revision: 3, title: 'A' });
    expect(value(await store.open(id)).parsed.workbook.title).toBe('A');
    expect(value(await store.history(id)).map(({ title }) => title)).toEqual(['A', 'B', 'A']);
  });
});

describe('when something is in the way', () => {
  test('a save over a newer one is refused, and the newer one stands', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('A')));
    value(await store.save(id, titled('by another tab'), 1));
    expect(reason(await store.save(id, titled('mine'), 1))).toBe('conflict');
    expect(value(await store.open(id)).parsed.workbook.title).toBe('by another tab');
  });

  test('of two saves at the same moment one is told', async () => {
    const { store } = setting();
    const { id } = value(await store.create(titled('A')));
    const saves = await Promise.all([store.save(id, titled('left'), 1), store.save(id, titled('right'), 1)]);
    expect(saves.map((save) => save.kind).sort()).toEqual(['done', 'failed']);
  });

  test.each([
    ['QuotaExceededError', 'full', /no room left/],
    ['SecurityError', 'refused', /does not let this page keep data/],
    ['UnknownError', 'refused', /does not let this page keep data/],
    ['VersionError', 'refused', /reload the page/]
  ])('%s becomes a result that says what to do', async (name, why, words) => {
    const { store } = setting(failingShelf(name));
    const answers = await Promise.all([
      store.list(),
      store.bin(),
      store.open('x'),
      store.create(blankWorkbook()),
      store.save('x', blankWorkbook(), 1),
      store.rename('x', 'y'),
      store.duplicate('x'),
      store.delete('x'),
      store.undelete('x'),
      store.remove('x'),
      store.emptyBin(),
      store.history('x'),
      store.openVersion('x', 1),
      store.restore('x', 1)
    ]);
    for (const answer of answers) {
      expect(reason(answer)).toBe(why);
      expect(answer.kind === 'failed' && answer.sentence).toMatch(words);
    }
  });

  test('storage that is refused once is asked for again the next time', async () => {
    const shelf = memoryShelf();
    let asked = 0;
    const store = workbookStore({
      openShelf: async () => {
        if (++asked === 1) throw new DOMException('no', 'SecurityError');
        return shelf;
      }
    });
    expect(reason(await store.create(blankWorkbook()))).toBe('refused');
    expect(reason(await store.create(blankWorkbook()))).toBe('none');
  });

  test('a connection that the browser closed is opened anew without a word', async () => {
    const shelves = [failingShelf('InvalidStateError'), memoryShelf()];
    const store = workbookStore({ openShelf: async () => shelves.shift() ?? failingShelf('UnknownError') });
    expect(reason(await store.create(blankWorkbook()))).toBe('none');
  });

  test('a damaged document is not opened, and its history is', async () => {
    const shelf = memoryShelf();
    const { store } = setting(shelf);
    const { id } = value(await store.create(titled('A')));
    const head = await shelf.head(id);
    if (head === undefined) throw new Error('It was created.');
    await shelf.put({
      head: {
        ...head,
        revision: 2,
        versions: [...head.versions, { revision: 2, savedAt: head.savedAt, title: 'A' }]
      },
      expected: 1,
      text: { revision: 2, text: '{"format": ' },
      dropped: []
    });
    const opened = await store.open(id);
    expect(reason(opened)).toBe('unreadable');
    expect(opened.kind === 'failed' && opened.sentence).toMatch(/^“A” cannot be opened: The file is cut off/);
    expect(value(await store.openVersion(id, 1)).parsed.workbook.title).toBe('A');
  });
});
