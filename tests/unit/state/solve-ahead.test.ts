import { afterEach, expect, test, vi } from 'vitest';
import { CaseMemo } from '#lib/calc/case-memo.ts';
import type { CasePlace } from '#lib/calc/cases-ahead.ts';
import { casesLacking, solveCases } from '#lib/calc/cases-ahead.ts';
import { estimate } from '#lib/calc/estimate.ts';
import { packCases } from '#lib/calc/packed-cases.ts';
import type { CasesTask } from '#lib/state/cases-worker.ts';
import type { CasesWorker } from '#lib/state/solve-ahead.ts';
import { solveAhead } from '#lib/state/solve-ahead.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

const demo = demoWorkbook();
const row = demo.caseMix[0]!;
const workbook = {
  ...demo,
  caseMix: Array.from({ length: 400 }, (_, index) => ({ ...row, id: `row-${index}`, minutes: 30 + index }))
};
const input = coreInput(workbook);

/** A worker on the test's own thread. */
function worker(log: { open: number; tasks: number[] }, fails: (places: readonly CasePlace[]) => boolean) {
  log.open++;
  const self: CasesWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (task: CasesTask) => {
      if (!('places' in task)) return;
      log.tasks.push(task.places.length);
      setTimeout(() => {
        if (fails(task.places)) self.onerror?.call(self as Worker, new Event('error') as ErrorEvent);
        else
          self.onmessage?.call(
            self as Worker,
            new MessageEvent('message', { data: packCases(solveCases(input, task.places)) })
          );
      });
    },
    terminate: () => {
      log.open--;
      self.onmessage = null;
    }
  };
  return self;
}

function run(memo: CaseMemo, fails: (places: readonly CasePlace[]) => boolean = () => false) {
  const log = { open: 0, tasks: [] as number[], progress: [] as number[] };
  const places = casesLacking(input, memo);
  const ahead = solveAhead(
    { workbook, input, places, memo },
    { workers: 2, openWorker: () => worker(log, fails), onProgress: (done) => log.progress.push(done) }
  );
  return { log, places, ahead };
}

test('workers share the cases and the memo holds them all', async () => {
  const memo = new CaseMemo();
  const { log, places, ahead } = run(memo);
  await ahead.solved;
  expect(places.length).toBeGreaterThan(1000);
  expect(log.tasks.reduce((sum, each) => sum + each)).toBe(places.length);
  expect(log.progress.at(-1)).toBe(places.length);
  expect(log.open).toBe(0);
  void JSON.stringify(estimate(input, memo));
  expect(memo.computed).toBe(0);
});

/** The figures of the memo and of an estimate that solves all itself are the same, and the memo lacks none. */
function expectWhole(memo: CaseMemo): void {
  expect(JSON.stringify(estimate(input, memo))).toBe(JSON.stringify(estimate(input)));
  expect(memo.computed).toBe(0);
}

test('a worker that fails ends the others, and what is left is solved on the page', async () => {
  const memo = new CaseMemo();
  const { log, places, ahead } = run(memo, (places) => places.some((place) => place.row === 390));
  await ahead.solved;
  expect(log.open).toBe(0);
  expect(log.progress.at(-1)).toBe(places.length);
  expect(log.progress).toEqual([...log.progress].sort((a, b) => a - b));
  expectWhole(memo);
});

test('where no worker can be started, all is solved on the page, with progress and in pieces', async () => {
  // A clock of the test's own: five cases are solved between two looks at it, and a piece ends after 20 ms.
  let clockMs = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => (clockMs += 10));
  const turns = vi.spyOn(globalThis, 'setTimeout');
  const casesAPiece = 10;
  const memo = new CaseMemo();
  const progress: number[] = [];
  const places = casesLacking(input, memo);
  const openWorker = (): CasesWorker => {
    throw new DOMException('Refused to create a worker', 'SecurityError');
  };
  const ahead = solveAhead(
    { workbook, input, places, memo },
    { workers: 2, openWorker, onProgress: (done) => progress.push(done) }
  );
  await ahead.solved;
  expect(progress.length).toBeGreaterThan(2);
  expect(progress.at(-1)).toBe(places.length);
  const handedOver = progress.map((done, index) => done - (progress[index - 1] ?? 0));
  const pieces = handedOver.reduce((sum, cases) => sum + Math.ceil(cases / casesAPiece), 0);
  // The page has its turn before each piece.
  expect(turns).toHaveBeenCalledTimes(pieces);
  expectWhole(memo);
});

test('a worker that was started is ended where the next one cannot be', async () => {
  const memo = new CaseMemo();
  const log = { open: 0, tasks: [] };
  const openWorker = (): CasesWorker => {
    if (log.open > 0) throw new Error('No more.');
    return worker(log, () => false);
  };
  const places = casesLacking(input, memo).slice(0, 20);
  await solveAhead({ workbook, input, places, memo }, { workers: 2, openWorker, onProgress: () => undefined })
    .solved;
  expect(log.open).toBe(0);
});

test('what is solved on the page can be cancelled too', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  const memo = new CaseMemo();
  const progress: number[] = [];
  const places = casesLacking(input, memo);
  const openWorker = (): CasesWorker => {
    throw new Error('None.');
  };
  const ahead = solveAhead(
    { workbook, input, places, memo },
    {
      workers: 2,
      openWorker,
      onProgress: (done) => {
        progress.push(done);
        ahead.cancel();
      }
    }
  );
  await vi.runAllTimersAsync();
  expect(progress).toHaveLength(1);
  expect(casesLacking(input, memo).length).toBe(places.length - (progress[0] ?? 0));
});

test('a cancelled run opens no more and tells nobody', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  const memo = new CaseMemo();
  const { log, ahead } = run(memo);
  ahead.cancel();
  await vi.runAllTimersAsync();
  expect(log.progress).toEqual([]);
  expect(log.open).toBe(0);
});
