/**
 * The case mix in a real browser, on the built app: frames a second while somebody scrolls, moves by keyboard and types,
 * with 2,000 rows and, in the same run, with 14 rows. The browser draws 60 frames a second at most.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { chromium, type Browser, type Page } from '@playwright/test';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { findBrowser } from '../../scripts/browser.mjs';
import type { BenchRow } from './bench-row.ts';

/** The demo's case groups over and over, each copy a minute longer; only the work that they make is measured. */
function workbookOf(rows: number): Workbook {
  const demo = demoWorkbook();
  return {
    ...demo,
    title: `${rows} case groups`,
    caseMix: Array.from({ length: rows }, (_, index) => {
      const copy = Math.floor(index / demo.caseMix.length);
      const row = demo.caseMix[index % demo.caseMix.length];
      if (row === undefined) throw new Error('The demo has no case group.');
      if (copy === 0) return row;
      return {
        ...row,
        id: `${row.id}-${copy}`,
        name: `${row.name} ${copy}`,
        minutes: (row.minutes ?? 60) + copy
      };
    })
  };
}

interface Frames {
  readonly perSecond: number;
  readonly medianMs: number;
  /** 95 of a hundred frames took no longer. */
  readonly slowMs: number;
}

/** What somebody does, each step to be taken after `everyMs`, as from a held key or a turning wheel. */
interface Doing {
  readonly name: string;
  readonly everyMs: number;
  readonly start?: (page: Page) => Promise<void>;
  readonly step: (page: Page, index: number) => Promise<void>;
}

const firstCases = (page: Page) =>
  page.getByRole('grid', { name: 'Case mix' }).locator('tr[data-row="0"] [data-column="1"]');

async function toTheTop(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('ArrowRight');
}

const held = (key: string): Pick<Doing, 'everyMs' | 'start' | 'step'> => ({
  everyMs: 33,
  start: toTheTop,
  step: (page) => page.keyboard.down(key)
});

const doings: readonly Doing[] = [
  {
    name: 'scrolling by wheel, thirty notches or 120 rows a second',
    everyMs: 33,
    start: toTheTop,
    // Down for two thirds of the time, then up again.
    step: (page, index) => page.mouse.wheel(0, index % 90 < 60 ? 120 : -120)
  },
  { name: 'PageDown held', ...held('PageDown') },
  { name: 'ArrowDown held', ...held('ArrowDown') },
  {
    name: 'typing numbers, ten keys a second',
    everyMs: 100,
    start: toTheTop,
    step: (page, index) => page.keyboard.press(['2', '3', '5', 'Enter'][index % 4] ?? 'Enter')
  }
];

/** The frames of the page, counted by itself, for some seconds of doing something. */
async function framesWhile(page: Page, { everyMs, start, step }: Doing, seconds = 4): Promise<Frames> {
  await start?.(page);
  await pause(800);
  await page.evaluate(() => {
    const times: number[] = [];
    const seen = { times, going: true };
    Object.assign(window, { seen });
    const next = (ms: number): void => {
      times.push(ms);
      if (seen.going) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  const begin = performance.now();
  for (let index = 0; performance.now() - begin < seconds * 1000; index += 1) {
    await step(page, index);
    const due = begin + (index + 1) * everyMs;
    await pause(Math.max(0, due - performance.now()));
  }
  const times = await page.evaluate(() => {
    const { seen } = window as unknown as { seen: { times: number[]; going: boolean } };
    seen.going = false;
    return seen.times;
  });
  const lengths = times.slice(1).map((ms, index) => ms - (times[index] ?? ms));
  const sorted = lengths.toSorted((a, b) => a - b);
  const at = (share: number): number => sorted[Math.floor((sorted.length - 1) * share)] ?? NaN;
  const spanMs = (times.at(-1) ?? NaN) - (times[0] ?? NaN);
  return { perSecond: (lengths.length / spanMs) * 1000, medianMs: at(0.5), slowMs: at(0.95) };
}

/** A page with the workbook open on its case mix and the cursor in the first row. */
async function openPage(browser: Browser, address: string, workbook: Workbook): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    serviceWorkers: 'block'
  });
  const page = await context.newPage();
  await page.goto(`${address}case-mix/`);
  // The page answers once its grid has taken the focus.
  await firstCases(page).click();
  await firstCases(page).locator('input').waitFor({ state: 'attached' });
  await page.getByLabel('Open a workbook from a file').setInputFiles({
    name: 'workbook.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeWorkbookFile(workbook))
  });
  await page
    .getByText(new RegExp(`^${workbook.caseMix.length.toLocaleString('en-GB')} case groups, `))
    .waitFor({ timeout: 60_000 });
  await firstCases(page).click();
  return page;
}

/** Serves the built app, building it first where its sources have changed. */
function serve(): Promise<{ readonly server: ChildProcess; readonly address: string }> {
  const server = spawn(process.execPath, ['scripts/start.mjs', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit']
  });
  return new Promise((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      const address = /http:\/\/\S+\//.exec(said)?.[0];
      if (address !== undefined) resolve({ server, address });
    });
    server.on('exit', () => reject(new Error('the app was not served')));
  });
}

export async function bench(): Promise<BenchRow[]> {
  const executablePath = await findBrowser();
  const { server, address } = await serve();
  try {
    const browser = await chromium.launch({
      ...(executablePath === null ? {} : { executablePath }),
      args: ['--no-sandbox', '--disable-gpu']
    });
    try {
      const few = await openPage(browser, address, workbookOf(14));
      const few14 = await allFrames(few);
      await few.context().close();
      return rowsOf(await allFrames(await openPage(browser, address, workbookOf(2000))), few14);
    } finally {
      await browser.close();
    }
  } finally {
    server.kill();
  }
}

async function allFrames(page: Page): Promise<Frames[]> {
  const all: Frames[] = [];
  for (const doing of doings) all.push(await framesWhile(page, doing));
  return all;
}

function rowsOf(many: readonly Frames[], few: readonly Frames[]): BenchRow[] {
  return doings.flatMap(({ name }, index): BenchRow[] => {
    const [of2000, of14] = [many[index], few[index]];
    if (of2000 === undefined || of14 === undefined) return [];
    const ratio = of2000.perSecond / of14.perSecond;
    return [
      {
        name: `${name}, 2,000 rows`,
        value: of2000.perSecond,
        unit: 'frames a second',
        target: 'above 50',
        met: of2000.perSecond > 50
      },
      {
        name: '  a frame, the median',
        value: of2000.medianMs,
        unit: 'ms',
        target: 'at most 20 ms',
        met: of2000.medianMs <= 20
      },
      {
        name: '  a frame, 95 of a hundred',
        value: of2000.slowMs,
        unit: 'ms',
        target: 'at most 34 ms, one frame missed',
        met: of2000.slowMs <= 34
      },
      {
        name: `  frames against those with 14 rows (${of14.perSecond.toFixed(0)} a second)`,
        value: ratio,
        unit: 'times',
        target: 'at least 0.9 times',
        met: ratio >= 0.9
      }
    ];
  });
}
