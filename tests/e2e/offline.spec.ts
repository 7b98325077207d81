import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import type { Server } from 'node:http';
import os from 'node:os';
import path from 'node:path';
import type { Page } from '@playwright/test';
import { buildFolder } from '../../scripts/set-up.mjs';
import { createStaticServer, listen } from '../../scripts/static-server.mjs';
import { expect, test } from './browser.ts';
import { gridCell } from './grid-cell.ts';

test.use({ serviceWorkers: 'allow' });

// A host of its own, whose files a test may change, and which it may take away.
let folder = '';
let server: Server;
let address = '';

test.beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'offline-'));
  await cp(buildFolder, folder, { recursive: true });
  server = createStaticServer(folder);
  address = `http://127.0.0.1:${await listen(server, { host: '127.0.0.1', port: 0 })}/`;
});

test.afterEach(async () => {
  stopHost();
  await rm(folder, { recursive: true });
});

function stopHost(): void {
  server.close();
  server.closeAllConnections();
}

async function pageFiles(): Promise<string[]> {
  return (await readdir(folder, { recursive: true })).filter((file) => path.basename(file) === 'index.html');
}

async function change(file: string, from: string | RegExp, to: string): Promise<void> {
  const place = path.join(folder, file);
  const text = await readFile(place, 'utf8');
  expect(text).toMatch(from);
  await writeFile(place, text.replaceAll(from, to));
}

async function isKeptByTheBrowser(page: Page): Promise<void> {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

test('once it was open, every page of the app opens without a network', async ({ page, context }) => {
  const entries = await readdir(folder, { recursive: true });
  const pages = entries
    .filter((file) => path.basename(file) === 'index.html')
    .map((file) => path.dirname(file));
  expect(pages).toContain('.');

  await page.goto(address);
  await isKeptByTheBrowser(page);
  stopHost();
  await context.setOffline(true);
  for (const place of pages) {
    // As typed by hand or kept in a bookmark: without the slash, and with a question.
    const asked = new URL(`${place}?from=bookmark`, address);
    await page.goto(asked.href);
    await expect(page).toHaveTitle(/Vapour Ledger/);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    // The first address leads on to a sheet; each sheet stays at its own.
    if (place !== '.') expect(new URL(page.url()).pathname).toBe(`/${place}/`);
  }
});

test('everything that was built is kept for use without a network', async () => {
  // Parts that a worker would load later are not: a worker brings all it needs in its own file.
  const kept = await readFile(path.join(folder, 'service-worker.js'), 'utf8');
  const built = await readdir(path.join(folder, '_app/immutable'), { recursive: true, withFileTypes: true });
  const left = built.filter((entry) => entry.isFile() && !kept.includes(entry.name)).map(({ name }) => name);
  expect(left).toEqual([]);
});

/** Puts a newer version onto the host, and waits until the page's browser has fetched it. */
async function publishNewer(page: Page): Promise<void> {
  const { version } = JSON.parse(await readFile(path.join(folder, '_app/version.json'), 'utf8')) as {
    version: string;
  };
  await change('service-worker.js', version, 'newer');
  for (const file of await pageFiles()) await change(file, '<html ', '<html data-version="newer" ');

  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
  });
  // Asked again and again from here: a promise inside the page would pass for an answer at once.
  await expect
    .poll(() => page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state))
    .toBe('installed');
}

test('a newer version waits until it is asked to take over', async ({ page }) => {
  await page.goto(address);
  await isKeptByTheBrowser(page);
  await publishNewer(page);
  await page.reload();
  await expect(page.locator('html')).not.toHaveAttribute('data-version', 'newer');

  // The page says so, and comes back as the newer version once it is asked to.
  await page.getByRole('button', { name: 'Use it now' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-version', 'newer');
  expect(await page.evaluate(() => caches.keys())).toEqual([expect.stringContaining('newer')]);
});

test('a newer version that one tab takes reloads no other', async ({ page, context }) => {
  await page.goto(address);
  await isKeptByTheBrowser(page);
  const typing = await context.newPage();
  await typing.goto(`${address}case-mix/`);
  await isKeptByTheBrowser(typing);
  await publishNewer(page);
  await typing.getByRole('button', { name: 'Later' }).click();
  await typing.getByRole('button', { name: 'Demo', exact: true }).click();
  await (await gridCell(typing, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })).click();
  await typing.keyboard.type('123456');

  await page.getByRole('button', { name: 'Use it now' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-version', 'newer');
  await expect(typing.getByText('Another tab changed to a newer version')).toBeVisible();
  await typing.keyboard.press('Enter');
  await expect(
    await gridCell(typing, { grid: 'Case mix', row: 'Breast surgery', column: 'Cases' })
  ).toContainText('123,456');
  // Parts of the older version that are loaded late are still there.
  await typing.getByRole('link', { name: 'Payback' }).click();
  await expect(typing.getByRole('heading', { name: 'What would have to change' })).toBeVisible();
  await typing.getByRole('button', { name: 'Reload' }).click();
  await expect(typing.locator('html')).toHaveAttribute('data-version', 'newer');
});
