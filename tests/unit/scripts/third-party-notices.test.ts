import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { noticeOf, noticesText, packageFolderOf } from '../../../scripts/third-party-notices.mjs';

const modules = path.resolve('node_modules');

describe('the package of a module', () => {
  it.each([
    [path.join(modules, 'zod/mini/index.js'), 'zod'],
    [path.join(modules, '@kurkle/color/dist/color.esm.js'), '@kurkle/color'],
    [path.join(modules, 'svelte/node_modules/clsx/dist/clsx.mjs?used'), 'svelte/node_modules/clsx'],
    ['node_modules/@fontsource-variable/source-sans-3/files/a.woff2', '@fontsource-variable/source-sans-3'],
    [`\0${path.join(modules, 'papaparse/papaparse.js')}?commonjs`, 'papaparse'],
    ['\0vite/preload-helper.js', 'vite'],
    ['\0rolldown/runtime.js', 'rolldown']
  ])('%j', (id, name) => expect(packageFolderOf(id)).toBe(path.join(modules, name)));

  it('is none for a module of the project', () => {
    expect(packageFolderOf(path.resolve('src/lib/calc/estimate.ts'))).toBeNull();
  });
});

describe('a notice', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'notices-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('is refused for a package that ships no licence text', () => {
    writeFileSync(path.join(folder, 'package.json'), '{"name":"bare","version":"1.0.0","license":"MIT"}');
    expect(() => noticeOf(folder)).toThrow('bare 1.0.0 is built into the app and ships no licence text');
  });

  it('is the package’s own text, without what a build tool bundles into itself', () => {
    const vite = noticeOf(path.join(modules, 'vite'));
    expect(vite.text).toMatch(/MIT License[^]*Permission is hereby granted/);
    expect(vite.text).not.toContain('Licenses of bundled dependencies');
  });

  it('stands once, by name, after a list of all', () => {
    const [zod, idb] = ['zod', 'idb'].map((name) => path.join(modules, name)) as [string, string];
    const text = noticesText([zod, idb, zod]);
    expect(text.match(/^ {2}\S+ \S+ \(.+\)$/gm)?.map((line) => line.trim().split(' ')[0])).toEqual([
      'idb',
      'zod'
    ]);
    expect(text.match(/^zod .+ \(MIT\)$/gm)).toHaveLength(1);
  });
});
