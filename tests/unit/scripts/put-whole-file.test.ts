import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { putWholeFile } from '../../../scripts/put-whole-file.mjs';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'put-whole-file-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const bytes = new TextEncoder().encode('whole');

test('a file is put in place, in folders made for it, over an older one', async () => {
  const place = path.join(folder, 'a', 'b', 'file.csv');
  await putWholeFile(place, new TextEncoder().encode('an older and longer one'));
  await putWholeFile(place, bytes);
  expect(readFileSync(place, 'utf8')).toBe('whole');
  expect(readdirSync(path.dirname(place))).toEqual(['file.csv']);
});

test('a folder in place of the file, or a file in place of the folder, is an error that leaves nothing behind', async () => {
  mkdirSync(path.join(folder, 'taken.csv'));
  writeFileSync(path.join(folder, 'taken.csv', 'inside'), 'kept');
  writeFileSync(path.join(folder, 'file'), 'kept');
  await expect(putWholeFile(path.join(folder, 'taken.csv'), bytes)).rejects.toHaveProperty('code');
  await expect(putWholeFile(path.join(folder, 'file', 'x.csv'), bytes)).rejects.toHaveProperty('code');
  await expect(putWholeFile(path.join(folder, `${'x'.repeat(300)}.csv`), bytes)).rejects.toHaveProperty(
    'code',
    'ENAMETOOLONG'
  );
  expect(readdirSync(folder).sort()).toEqual(['file', 'taken.csv']);
});

test('what was there stays where the new bytes cannot be written', async () => {
  const place = path.join(folder, 'file.csv');
  writeFileSync(place, 'the good one');
  const unwritable = { length: 5 } as Uint8Array;
  await expect(putWholeFile(place, unwritable)).rejects.toThrow();
  expect(readFileSync(place, 'utf8')).toBe('the good one');
  expect(readdirSync(folder)).toEqual(['file.csv']);
});
