/** How long one task holds up the page while 10,000 draws are made and shown: measured in a real browser. */
import { spawn } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from '@playwright/test';
import type { CDPSession, Page } from '@playwright/test';
import type { BenchRow } from './bench-row.ts';

const longTaskMs = 50;
const secondsAllowed = 10;

/** Serves the built app, which it builds first where the sources have changed. */
function serve(): Promise<{ address: string; stop: () => void }> {
  const server = spawn(process.execPath, ['scripts/start.mjs', '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit']
  });
  return new Promise((resolve, reject) => {
    server.stdout.on('data', (said: Buffer) => {
      const address = /http:\/\/\S+\//.exec(String(said))?.[0];
      if (address !== undefined) resolve({ address, stop: () => void server.kill() });
    });
    server.on('error', reject);
    server.on('exit', () => reject(new Error('The app could not be served.')));
  });
}

/** An event of the browser's trace; times in µs, `tdur` the processor's own. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

async function traced(session: CDPSession, what: () => Promise<void>): Promise<TraceEvent[]> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel'] }
  });
  await what();
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await complete;
  return events;
}

/** Tasks of the page's main thread: what no other event encloses. */
function tasksOfPage(events: readonly TraceEvent[]): { ms: number; processorMs: number }[] {
  const thread = events.find(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain');
  if (thread === undefined) throw new Error('The trace names no main thread.');
  const ofPage = events
    .filter(({ ph, pid, tid }) => ph === 'X' && pid === thread.pid && tid === thread.tid)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
  let end = -Infinity;
  return ofPage.flatMap(({ ts, dur = 0, tdur = dur }) => {
    if (ts < end) return [];
    end = ts + dur;
    return [{ ms: dur / 1000, processorMs: tdur / 1000 }];
  });
}

/** Starts the draws and waits until their bands are shown, without asking the page anything in between. */
function drawn(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const start = performance.now();
    const button = [...document.querySelectorAll('button')].find(({ textContent }) =>
      /^Run [\d,]+ draws$/.test(textContent)
    );
    if (button === undefined) throw new Error('There is no button that starts the draws.');
    button.click();
    await new Promise<void>((resolve) => {
      const watch = new MutationObserver(() => {
        if (document.querySelector('[data-result]') === null) return;
        watch.disconnect();
        resolve();
      });
      watch.observe(document.body, { childList: true, subtree: true });
    });
    return (performance.now() - start) / 1000;
  });
}

export async function bench(): Promise<BenchRow[]> {
  const scripts = pathToFileURL(path.resolve('scripts/browser.mjs')).href;
  const { findBrowser } = (await import(scripts)) as typeof import('../../scripts/browser.mjs');
  const executablePath = await findBrowser();
  const { address, stop } = await serve();
  const browser = await chromium.launch({
    ...(executablePath === null ? {} : { executablePath }),
    args: ['--no-sandbox', '--disable-gpu']
  });
  try {
    const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(`${address}uncertainty/`);
    await page.getByRole('button', { name: /^Run .* draws$/ }).waitFor();
    let seconds = NaN;
    const events = await traced(await context.newCDPSession(page), async () => {
      seconds = await drawn(page);
      // The charts are drawn after the bands, one by one.
      await page.waitForTimeout(2000);
    });
    const tasks = tasksOfPage(events);
    const row = (name: string, ms: number): BenchRow => ({
      name,
      value: ms,
      unit: 'ms',
      target: `below ${longTaskMs} ms`,
      met: ms < longTaskMs
    });
    return [
      {
        name: '10,000 draws of the demo in a browser',
        value: seconds,
        unit: 's',
        target: `at most ${secondsAllowed} s`,
        met: seconds <= secondsAllowed
      },
      row('longest task of the page meanwhile', Math.max(...tasks.map(({ ms }) => ms))),
      row(
        'the same by processor time, without what else the computer did',
        Math.max(...tasks.map(({ processorMs }) => processorMs))
      )
    ];
  } finally {
    await browser.close();
    stop();
  }
}
