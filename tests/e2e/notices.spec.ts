/** The build carries the licences of all that is built into it, and the app leads to them, without a network too. */
import { readFile } from 'node:fs/promises';
import { doors } from '../unit/structure/house.ts';
import { expect, test } from './browser.ts';

/** What the sources may import, whatever the build noted: the framework's own names stand for it. */
const imported = Object.keys(doors).filter((name) => !name.startsWith('$'));

test('the notices name every package that the app imports, each with its licence', async ({ page }) => {
  await page.goto('./case-mix/');
  const address = await page
    .getByRole('link', { name: 'Licences' })
    .evaluate((link: HTMLAnchorElement) => link.href);
  // The file itself is no page of the app, which would ask for an icon besides.
  const answer = await page.request.get(address);
  expect(answer.headers()['content-type']).toBe('text/plain; charset=utf-8');
  const text = await answer.text();
  // What a package brings along is built in as well.
  for (const name of [...imported, '@kurkle/color']) {
    const folder = `node_modules/${name}`;
    const { version, license } = JSON.parse(await readFile(`${folder}/package.json`, 'utf8'));
    const at = text.lastIndexOf(`\n${name} ${version} (${license})\n`);
    expect(at, name).toBeGreaterThan(0);
    expect(text.slice(at, at + 800), name).toMatch(/copyright|SIL Open Font License/i);
  }
  expect(text).toContain('SIL OPEN FONT LICENSE Version 1.1 - 26 February 2007');
  expect(text).toContain('Copyright (c) 2026 The Vapour Ledger contributors');
});
