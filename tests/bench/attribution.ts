/** How fast a scenario is taken apart, and how fast the lists of alternatives follow an edit. */
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import type { Scenario } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { BenchRow } from './bench-row.ts';

const frameMs = 16;
/** What seven levers may take, which make 128 runs: on the page, and at 500 rows in a worker. */
const apartMs = 150;
const apartLargeMs = 10_000;
const manyRows = 500;

/** The demo with a scenario that uses every lever, and as many scenarios as make ten alternatives with their twins. */
function workbookToTakeApart(): Workbook {
  const demo = demoWorkbook();
  const [today, habit, circle, closed] = demo.scenarios as [Scenario, Scenario, Scenario, Scenario];
  const [changed] = demo.caseMix.filter(({ technique }) => technique === 'volatile');
  if (changed === undefined) throw new Error('The demo has changed: this bench builds on it.');
  const everything: Scenario = {
    ...closed,
    intravenousPercentByCase: { [changed.id]: 30 },
    capturePercent: 20,
    nitrousOxideSupply: 'cylinders',
    adoptionWithoutMachinePercent: 70
  };
  return {
    ...demo,
    ranges: {},
    scenarios: [
      today,
      habit,
      circle,
      everything,
      { ...closed, id: 'low', plans: { 'm-closed': 'low' } },
      { ...habit, id: 'minimal', plans: { 'm-old': 'minimal' } },
      { ...circle, id: 'circle-low', plans: { 'm-circle': 'low' } }
    ]
  };
}

/** The same with many rows, no two of them alike, and six scenarios. */
function largeWorkbookToTakeApart(): Workbook {
  const workbook = workbookToTakeApart();
  const [changed] = workbook.caseMix.filter(({ technique }) => technique === 'volatile');
  if (changed === undefined) throw new Error('The demo has changed: this bench builds on it.');
  return {
    ...workbook,
    scenarios: workbook.scenarios.slice(0, 6),
    caseMix: Array.from({ length: manyRows }, (_, index) => ({
      ...changed,
      id: index === 0 ? changed.id : `row-${index}`,
      minutes: 40 + index * 0.31,
      weightKg: 45 + (index % 60)
    }))
  };
}

/** Milliseconds from a large workbook that was never computed to one scenario taken apart. */
function timeLarge(): number {
  const input = coreInput(largeWorkbookToTakeApart());
  const start = performance.now();
  void scenarioOf(estimate(input, new CaseMemo())).attribution;
  return performance.now() - start;
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;
}

/** One row's minutes changed, as by a keystroke. */
const oneRow = (workbook: Workbook, turn: number): Workbook => ({
  ...workbook,
  caseMix: workbook.caseMix.map((row, index) =>
    index === turn % workbook.caseMix.length ? { ...row, minutes: row.minutes + 1 } : row
  )
});
/** A change that every case depends on. */
const everyRow = (workbook: Workbook, turn: number): Workbook => ({
  ...workbook,
  site: { ...workbook.site, theatreTemperatureC: 18 + turn / 20 }
});

/** Median milliseconds from an edit to what is read, each edit on top of the last. */
function timeEdits(
  edit: (workbook: Workbook, turn: number) => Workbook,
  read: (of: Estimate) => unknown
): number {
  let workbook = workbookToTakeApart();
  const memo = new CaseMemo();
  const times: number[] = [];
  for (let turn = 0; turn < 50; turn++) {
    workbook = edit(workbook, turn);
    const start = performance.now();
    read(estimate(coreInput(workbook), memo));
    // The first turns compute everything and let the compiler see the code.
    if (turn >= 20) times.push(performance.now() - start);
  }
  return median(times);
}

const scenarioOf = ({ scenarios }: Estimate) => {
  const found = scenarios.find(({ id }) => id === 'closed');
  if (found === undefined) throw new Error('The demo has changed: this bench builds on it.');
  return found;
};
const whole = (of: Estimate): string => JSON.stringify({ ...scenarioOf(of), attribution: 0, ladder: 0 });

export async function bench(): Promise<BenchRow[]> {
  const read = (of: Estimate) => scenarioOf(of).attribution;
  const levers = read(estimate(coreInput(workbookToTakeApart())))?.length ?? 0;
  const runs = 2 ** levers;
  const row = (name: string, value: number, most: number): BenchRow => ({
    name,
    value,
    unit: 'ms',
    target: `below ${most} ms`,
    met: value < most
  });
  const one = timeEdits(oneRow, whole);
  const apart = timeEdits(oneRow, read);
  const fresh = timeEdits(everyRow, read);
  const ratio = apart / one;
  return [
    {
      name: `a scenario taken apart by ${levers} levers (${runs} runs) after an edit of one row, against one estimate of it`,
      value: ratio,
      unit: 'times',
      target: `below ${runs}`,
      met: ratio < runs
    },
    row(`the same, ${runs} runs, 14 rows, 7 scenarios`, apart, apartMs),
    row(
      `the same ${runs} runs of a new workbook of ${manyRows} rows and 6 scenarios, every case to be solved, on one core`,
      timeLarge(),
      apartLargeMs
    ),
    row(`the same ${runs} runs after an edit of every row`, fresh, apartMs),
    row(
      'both lists of 12 alternatives after an edit of one row, 14 rows',
      timeEdits(oneRow, (of) => of.increments),
      frameMs
    ),
    row(
      'both lists after an edit of every row',
      timeEdits(everyRow, (of) => of.increments),
      apartMs
    )
  ];
}
