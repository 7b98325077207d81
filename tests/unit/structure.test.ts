import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { brokenDirections, type Sources } from './structure/broken-directions.ts';
import { importCycle } from './structure/import-cycle.ts';
import { importsOf } from './structure/imports-of.ts';
import { privatePlaces } from './structure/private-places.ts';

const projectFolder = fileURLToPath(new URL('../../', import.meta.url));
const madeByTools =
  /^(node_modules|\.git|\.svelte-kit|\.cache|build|coverage|test-results|playwright-report)$/;
const pictures = /\.(png|ico|woff2|xlsx|gz)$/;

function filesUnder(folder: string): string[] {
  return readdirSync(path.join(projectFolder, folder), { withFileTypes: true }).flatMap((entry) => {
    const place = path.posix.join(folder, entry.name);
    if (madeByTools.test(entry.name)) return [];
    return entry.isDirectory() ? filesUnder(place) : [place];
  });
}

function read(file: string): string {
  return readFileSync(path.join(projectFolder, file), 'utf8');
}

describe('the house', () => {
  const sources: Sources = new Map(
    filesUnder('src')
      .filter((file) => /\.(ts|js|svelte)$/.test(file))
      .map((file) => [file.slice('src/'.length), read(file)])
  );

  test('imports run in its directions alone', () => {
    expect(sources.size).toBeGreaterThan(40);
    expect(brokenDirections(sources)).toEqual([]);
  });

  test('nowhere do imports run in a circle', () => {
    expect(importCycle(sources)).toBeNull();
  });

  test('the files have no circle of imports', () => {
    const files = new Map([...sources].filter(([file]) => file.startsWith('lib/files/')));
    expect(files.size).toBeGreaterThan(20);
    expect(importCycle(files)).toBeNull();
  });

  test('no file names a place of one machine or a host of packages', () => {
    const files = filesUnder('.').filter((file) => !pictures.test(file));
    expect(files).toContain('package-lock.json');
    expect(files.flatMap((file) => privatePlaces(read(file)).map((place) => `${file}: ${place}`))).toEqual(
      []
    );
  });
});

describe('the reader of imports', () => {
  test('finds every way to name another module, and which of them take types alone', () => {
    const source = `
      import './a.css';
      import b from './b.ts';
      import type { C } from './c.ts';
      import { type D, type D2 } from './d.ts';
      import { type E, e } from './e.ts';
      import * as f from './f.ts';
      export { g } from './g.ts';
      export type { H } from './h.ts';
      export * from './i.ts';
      const j = await import('./j.ts');
      type K = import('./k.ts').K;
      const l = new Worker(new URL('./l.ts', import.meta.url), { type: 'module' });
      import m from './m.csv?raw';
      const n = "import x from './not-an-import.ts'"; // import y from './nor-this.ts'
    `;
    const found = importsOf('x.ts', source);
    expect(found.filter(({ typesOnly }) => !typesOnly).map(({ specifier }) => specifier)).toEqual([
      './a.css',
      './b.ts',
      './e.ts',
      './f.ts',
      './g.ts',
      './i.ts',
      './j.ts',
      './l.ts',
      './m.csv'
    ]);
    expect(found.filter(({ typesOnly }) => typesOnly).map(({ specifier }) => specifier)).toEqual([
      './c.ts',
      './d.ts',
      './h.ts',
      './k.ts'
    ]);
  });

  test('reads the scripts of a component and the imports in its markup', () => {
    const source = `
      <script module lang="ts">import type { A } from './a.ts';</script>
      <script lang="ts">
        import B from './B.svelte';
      </script>
      <p>import c from './not-an-import.ts'</p>
      {#await import('./d.ts') then d}<B />{/await}
    `;
    expect(importsOf('X.svelte', source)).toEqual([
      { specifier: './a.ts', typesOnly: true },
      { specifier: './B.svelte', typesOnly: false },
      { specifier: './d.ts', typesOnly: false }
    ]);
  });

  test('shows an import that is put together at run time', () => {
    expect(importsOf('x.ts', 'await import(`./${name}.ts`)')).toEqual([
      { specifier: '`./${name}.ts`', typesOnly: false }
    ]);
  });
});

describe('the judge of directions', () => {
  const judge = (file: string, source: string) => brokenDirections(new Map([[file, source]]));

  test.each([
    ['lib/calc/case/circle.ts', `import { Decimal } from 'decimal.js';`],
    ['lib/calc/case/circle.ts', `import type { Line } from '../money/ledger.ts';`],
    ['lib/calc/money/ledger.ts', `import { run } from '#lib/calc/case/circle.ts';`],
    ['lib/calc/reference/agents.ts', `import { apply } from '../working/formula.ts';`],
    ['lib/calc/working/plain.ts', `import type { Row } from '../input.ts';`],
    ['lib/calc/estimate-types.ts', `import { warn } from './case/case-result.ts';`],
    ['lib/calc/estimate/estimate.ts', `import type { Workbook } from '#lib/workbook/workbook.ts';`],
    ['lib/calc/estimate/estimate.ts', `import { onMount } from 'svelte';`],
    ['lib/numbers/read-number.ts', `import type { Agent } from '#lib/calc/input.ts';`],
    ['lib/workbook/workbook.ts', `import { estimate } from '#lib/calc/estimate/estimate.ts';`],
    ['lib/files/csv.ts', `import * as z from 'zod/mini';`],
    ['lib/files/csv.ts', `import type { Store } from '#lib/state/store.ts';`],
    ['lib/grid/Grid.svelte', `<script>import { agents } from '#lib/calc/input.ts';</script>`],
    ['lib/charts/chart-data.ts', `import type { ChartData } from 'chart.js';`],
    ['lib/sheets/prices/PricesSheet.svelte', `{#await import('#lib/files/write/csv-out.ts')}{/await}`],
    ['lib/state/store.ts', `new Worker(new URL('../sheets/frame/worker.ts', import.meta.url))`],
    ['routes/+page.svelte', `<script>import Grid from '#lib/grid/Grid.svelte';</script>`],
    ['routes/+page.ts', `import lodash from 'lodash';`],
    ['routes/+page.ts', `import { x } from '$lib/state/store.ts';`],
    ['routes/+page.ts', `import names from '../../package.json';`],
    ['lib/helpers/anything.ts', ``]
  ])('refuses %s: %s', (file, source) => {
    expect(judge(file, source)).toHaveLength(1);
  });

  test.each([
    ['lib/calc/money/ledger.ts', `import { Decimal } from 'decimal.js';`],
    ['lib/calc/reference/agents.ts', `import type { Formula } from '../working/formula.ts';`],
    ['lib/calc/year/consumption.ts', `import { run } from '../case/circle.ts';`],
    ['lib/calc/estimate/estimate.ts', `import { run } from '../case/circle.ts';`],
    [
      'lib/workbook/workbook.ts',
      `import * as z from 'zod/mini'; import { agents } from '#lib/calc/input.ts';`
    ],
    ['lib/charts/Chart.svelte', `<script>import { Chart } from 'chart.js';</script>`],
    ['lib/state/store.ts', `import { estimate } from '#lib/calc/estimate/estimate.ts';`],
    [
      'lib/sheets/prices/PricesSheet.svelte',
      `<script>import type { Workbook } from '#lib/workbook/workbook.ts';</script>`
    ],
    [
      'routes/+page.svelte',
      `<script>import { page } from '$app/state'; import type { X } from './$types';</script>`
    ]
  ])('allows %s: %s', (file, source) => {
    expect(judge(file, source)).toEqual([]);
  });

  test('finds a circle, through types as well', () => {
    const circle = new Map([
      ['lib/calc/a.ts', `import { b } from './b.ts';`],
      ['lib/calc/b.ts', `import type { C } from '#lib/calc/c.ts';`],
      ['lib/calc/c.ts', `export * from './a.ts';`]
    ]);
    expect(importCycle(circle)).toEqual(['lib/calc/a.ts', 'lib/calc/b.ts', 'lib/calc/c.ts', 'lib/calc/a.ts']);
    circle.set('lib/calc/c.ts', '');
    expect(importCycle(circle)).toBeNull();
  });
});

describe('the finder of private places', () => {
  // Put together here, so that this file itself names none.
  const inFolder = (folder: string) => `/${folder}/someone/project/a.json`;

  test.each([
    ...['home', 'Users', 'root', 'mnt'].map(inFolder),
    `file://${inFolder('home')}`,
    ['C:', 'Users', 'someone'].join('\\'),
    `https://${['registry', 'example', 'org'].join('.')}/left-pad`,
    `https://packages.example.org/nexus/npm`.replace('packages', 'nexus')
  ])('finds %s', (place) => {
    expect(privatePlaces(`read "${place}" here`)).toHaveLength(1);
  });

  test.each([
    'https://example.org/home/page',
    'see ./home/page.md',
    '/usr/bin/chromium',
    'https://doi.org/10.1000/root/1'
  ])('leaves %s', (text) => {
    expect(privatePlaces(`read "${text}" here`)).toEqual([]);
  });
});
