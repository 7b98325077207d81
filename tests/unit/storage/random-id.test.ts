import { afterEach, expect, test, vi } from 'vitest';
import { randomId } from '#lib/storage/random-id.ts';
import { workbookStore } from '#lib/storage/workbook-store.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { memoryShelf } from '../../fixtures/memory-shelf.ts';

afterEach(() => void vi.unstubAllGlobals());

test('ids are 32 hexadecimal digits, and no two are the same', () => {
  const ids = Array.from({ length: 1000 }, randomId);
  for (const id of ids) expect(id).toMatch(/^[0-9a-f]{32}$/);
  expect(new Set(ids).size).toBe(1000);
});

test('a page without encryption, which has no randomUUID, can put a workbook away', async () => {
  const { crypto } = globalThis;
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) });
  const store = workbookStore({ openShelf: async () => memoryShelf() });
  expect((await store.create(demoWorkbook())).kind).toBe('done');
});
