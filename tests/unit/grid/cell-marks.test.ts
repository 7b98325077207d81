import { readdir, readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { cellMarks, markWords } from '#lib/grid/cell-marks.ts';

const src = new URL('../../../src/', import.meta.url);

it('every mark that a row draws stands in the key, and no other', async () => {
  const row = await readFile(new URL('lib/grid/GridRow.svelte', src), 'utf8');
  const drawn = [...row.matchAll(/content: '(?:\\00a0)?([^\\' ])(?:\\00a0)?' \/ /g)].map(([, sign]) => sign);
  expect(new Set(drawn)).toEqual(new Set(Object.values(cellMarks)));
  expect(Object.keys(markWords)).toEqual(Object.keys(cellMarks));
});

it('no sign of the app reads as “deceased” to a clinician', async () => {
  const files = (await readdir(src, { recursive: true })).filter((name) =>
    /\.(svelte|ts|css|html)$/.test(name)
  );
  expect(files.length).toBeGreaterThan(100);
  for (const name of files) expect(await readFile(new URL(name, src), 'utf8'), name).not.toMatch(/[†‡✝]/);
});
