/** How fast the bottom line follows an edit in a large workbook, and what is left to the page where workers solve. */
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import { casesLacking, keepCases, solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { packCases, unpackCases } from '#lib/calc/known-cases/packed-cases.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { BenchRow } from './bench-row.ts';

const rows = 500;
const frameMs = 16;

function largeWorkbook(count = rows): Workbook {
  const demo = demoWorkbook();
  const [first] = demo.caseMix;
  const [, habit, circle, closed] = demo.scenarios;
  if (!first || !habit || !circle || !closed)
    throw new Error('The demo has changed: this bench builds on it.');
  return {
    ...demo,
    ranges: {},
    // No two rows alike, so that none is found instead of computed.
    caseMix: Array.from({ length: count }, (_, index) => ({
      ...first,
      id: `row-${index}`,
      minutes: 40 + index * 0.31,
      weightKg: 45 + (index % 60)
    })),
    scenarios: [
      ...demo.scenarios,
      { ...circle, id: 'fifth', plans: { 'm-circle': 'low' } },
      { ...closed, id: 'sixth', plans: { 'm-closed': 'minimal' } }
    ]
  };
}

/** What the bottom line shows: today and the chosen scenario. */
function bottomLine(input: EstimateInput, memo: CaseMemo): void {
  const { scenarios } = estimate(input, memo);
  for (const scenario of scenarios.filter(({ id }) => id === 'today' || id === 'closed'))
    void [scenario.perYear.cost.total, scenario.againstBaseline.npv, scenario.monitoring.length];
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;
}

function timeEdits(edit: (workbook: Workbook, turn: number) => Workbook): number {
  let workbook = largeWorkbook();
  const memo = new CaseMemo();
  const times: number[] = [];
  for (let turn = 0; turn < 60; turn++) {
    workbook = edit(workbook, turn);
    const start = performance.now();
    bottomLine(coreInput(workbook), memo);
    // The first turns compute everything and let the compiler see the code.
    if (turn >= 20) times.push(performance.now() - start);
  }
  return median(times);
}

/** Of the work after a change to every case of 2 000 rows: what the page does itself where workers solve, percent. */
function sharePercentOnPage(): number {
  const workbook = largeWorkbook(2000);
  const shares: number[] = [];
  for (let turn = 0; turn < 12; turn++) {
    const memo = new CaseMemo();
    const input = coreInput({ ...workbook, site: { ...workbook.site, theatreTemperatureC: 20 + turn / 10 } });
    let start = performance.now();
    const elapsed = (): number => {
      const now = performance.now();
      const ms = now - start;
      start = now;
      return ms;
    };
    const cases = casesLacking(input, memo);
    const finding = elapsed();
    const results = solveCases(cases.map(givenOf));
    const solving = elapsed();
    const packed = packCases(results);
    elapsed();
    keepCases(memo, { cases, results: unpackCases(packed) });
    bottomLine(input, memo);
    const page = finding + elapsed();
    if (turn >= 4) shares.push((100 * page) / (page + solving));
  }
  return median(shares);
}

export async function bench(): Promise<BenchRow[]> {
  const row = (name: string, value: number): BenchRow => ({
    name,
    value,
    unit: 'ms',
    target: `below ${frameMs} ms`,
    met: value < frameMs
  });
  const onPage = sharePercentOnPage();
  return [
    row(
      `bottom line after an edit of one row, ${rows} rows, 6 scenarios`,
      timeEdits((workbook, turn) => ({
        ...workbook,
        caseMix: workbook.caseMix.map((each, index) =>
          index === turn ? { ...each, minutes: each.minutes + 1 } : each
        )
      }))
    ),
    row(
      `bottom line after an edit of the plan that all ${rows} rows use`,
      timeEdits((workbook, turn) => ({
        ...workbook,
        flowPlans: workbook.flowPlans.map((plan) =>
          plan.id === 'closed'
            ? {
                ...plan,
                phases: plan.phases.map((phase) =>
                  phase.minutes === null ? { ...phase, flowLPerMin: 0.5 + turn / 100 } : phase
                )
              }
            : plan
        )
      }))
    ),
    {
      name: 'the page’s own part of a change to every case, 2 000 rows, 6 scenarios, the rest being done by workers',
      value: onPage,
      unit: '%',
      target: 'below 50 %',
      met: onPage < 50
    }
  ];
}
