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
/** What seven levers may take, which make 128 runs. */
const apartMs = 150;
const mostRuns = 128;

/** The demo with a scenario that uses every lever, and as many scenarios as make ten alternatives with their twins. */
function workbookToTakeApart(): Workbook {
  const demo = demoWorkbook();
  const [today, habit, circle, closed] = demo.scenarios as [Scenario, Scenario, Scenario, Scenario];
  const everything: Scenario = { ...closed, capturePercent: 20, adoptionWithoutMachinePercent: 70 };
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
    row(`the same, were it ${mostRuns} runs, 14 rows, 7 scenarios`, (apart * mostRuns) / runs, apartMs),
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
