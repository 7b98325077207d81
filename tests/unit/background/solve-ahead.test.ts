import { afterEach, expect, test, vi } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { casesLacking, solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import { packCases } from '#lib/calc/known-cases/packed-cases.ts';
import type { CasesPort, CasesTask } from '#lib/background/cases-worker.ts';
import { openPort as openAnyPort } from '#lib/background/worker-port.ts';
import { solveAhead } from '#lib/background/solve-ahead.ts';
import { once } from '#lib/calc/working/kept.ts';
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

type CasesInHand = Extract<CasesTask, { cases: unknown }>['cases'];

/** A worker on the test's own thread. */
function worker(log: { open: number; tasks: number[] }, fails: (cases: CasesInHand) => boolean) {
  log.open++;
  const self: CasesPort = {
    onreply: () => undefined,
    onfail: () => undefined,
    post: (task: CasesTask) => {
      if (!('cases' in task)) return;
      const { cases } = task;
      log.tasks.push(cases.length);
      setTimeout(() => {
        if (fails(cases)) self.onfail('It broke.');
        else
          self.onreply(
            packCases(solveCases(cases.map((given) => ({ ...given, reference: input.reference }))))
          );
      });
    },
    close: () => {
      log.open--;
      self.onreply = () => undefined;
    }
  };
  return self;
}

function run(memo: CaseMemo, fails: (cases: CasesInHand) => boolean = () => false) {
  const log = { open: 0, tasks: [] as number[], progress: [] as number[] };
  const cases = casesLacking(input, memo);
  const ahead = solveAhead(
    { reference: workbook, input, cases, memo },
    { workers: 2, openPort: () => worker(log, fails), onProgress: (done) => log.progress.push(done) }
  );
  return { log, cases, ahead };
}

/** All figures of the scenarios themselves. Taking one apart runs variants of it, whose cases nobody solves ahead. */
const ofScenarios = ({ scenarios }: Estimate): string =>
  JSON.stringify(
    scenarios.map(({ perYear, cases, againstBaseline, monitoring, vapourOnOwnPlan }) => [
      perYear,
      cases,
      againstBaseline,
      monitoring,
      vapourOnOwnPlan
    ])
  );

test('workers share the cases and the memo holds them all', async () => {
  const memo = new CaseMemo();
  const { log, cases, ahead } = run(memo);
  await ahead.solved;
  expect(cases.length).toBeGreaterThan(1000);
  expect(log.tasks.reduce((sum, each) => sum + each)).toBe(cases.length);
  expect(log.progress.at(-1)).toBe(cases.length);
  expect(log.open).toBe(0);
  void ofScenarios(estimate(input, memo));
  expect(memo.computed).toBe(0);
});

const solvedByItself = once(() => ofScenarios(estimate(input)));

/** The figures of the memo and of an estimate that solves all itself are the same, and the memo lacks none. */
function expectWhole(memo: CaseMemo): void {
  expect(ofScenarios(estimate(input, memo))).toBe(solvedByItself());
  expect(memo.computed).toBe(0);
}

test('a worker that fails ends the others, and what is left is solved on the page', async () => {
  const memo = new CaseMemo();
  const { log, cases, ahead } = run(memo, (cases) => cases.some(({ cells }) => cells.row === 'row-390'));
  await ahead.solved;
  expect(log.open).toBe(0);
  expect(log.progress.at(-1)).toBe(cases.length);
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
  const cases = casesLacking(input, memo);
  const openPort = (): CasesPort =>
    openAnyPort(() => {
      throw new DOMException('Refused to create a worker', 'SecurityError');
    });
  const ahead = solveAhead(
    { reference: workbook, input, cases, memo },
    { workers: 2, openPort, onProgress: (done) => progress.push(done) }
  );
  await ahead.solved;
  expect(progress.length).toBeGreaterThan(2);
  expect(progress.at(-1)).toBe(cases.length);
  const handedOver = progress.map((done, index) => done - (progress[index - 1] ?? 0));
  const pieces = handedOver.reduce((sum, cases) => sum + Math.ceil(cases / casesAPiece), 0);
  // The page has its turn before each piece.
  expect(turns).toHaveBeenCalledTimes(pieces);
  expectWhole(memo);
});

test('a worker that was started is ended where the next one cannot be', async () => {
  const memo = new CaseMemo();
  const log = { open: 0, tasks: [] };
  const openPort = (): CasesPort =>
    log.open > 0
      ? openAnyPort(() => {
          throw new Error('No more.');
        })
      : worker(log, () => false);
  const cases = casesLacking(input, memo).slice(0, 20);
  await solveAhead(
    { reference: workbook, input, cases, memo },
    { workers: 2, openPort, onProgress: () => undefined }
  ).solved;
  expect(log.open).toBe(0);
});

test('what is solved on the page can be cancelled too', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout'] });
  const memo = new CaseMemo();
  const progress: number[] = [];
  const cases = casesLacking(input, memo);
  const openPort = (): CasesPort =>
    openAnyPort(() => {
      throw new Error('None.');
    });
  const ahead = solveAhead(
    { reference: workbook, input, cases, memo },
    {
      workers: 2,
      openPort,
      onProgress: (done) => {
        progress.push(done);
        ahead.cancel();
      }
    }
  );
  await vi.runAllTimersAsync();
  expect(progress).toHaveLength(1);
  expect(casesLacking(input, memo).length).toBe(cases.length - (progress[0] ?? 0));
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
