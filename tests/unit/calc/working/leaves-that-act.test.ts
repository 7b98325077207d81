/** Cells that act without changing a figure today are leaves all the same: whoever asks may change them. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { inputsOf } from '#lib/calc/working/working-text.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** Paths of the cells under a figure's working. */
function cellsUnder(workbook: Workbook, path: string): ReadonlySet<string> {
  const seen = new Set<Working>();
  const cells = new Set<string>();
  const walk = (working: Working): void => {
    if (seen.has(working)) return;
    seen.add(working);
    if (working.kind === 'cell') cells.add(working.path);
    for (const { input } of inputsOf(working)) walk(input);
  };
  walk(explainer(coreInput(workbook))(path));
  return cells;
}

const demo = departmentWorkbook();
const still: Workbook = {
  ...demo,
  accounting: {
    ...demo.accounting,
    agentGrowthPercent: 0,
    serviceGrowthPercent: 0,
    carbonGrowthPercent: 0
  }
};
const scenario = still.scenarios.find(({ moves }) => moves.length > 0);
const { id, machine } = { id: scenario?.id ?? '', machine: scenario?.moves[0]?.machine ?? '' };

test.each([
  ['npv', ['agentGrowthPercent', 'serviceGrowthPercent']],
  ['simplePaybackYears', ['agentGrowthPercent', 'serviceGrowthPercent']],
  ['totalCostOfOwnership', ['agentGrowthPercent', 'serviceGrowthPercent']],
  ['shadow.npv', ['agentGrowthPercent', 'serviceGrowthPercent', 'carbonGrowthPercent']],
  ['years.3.savings.carbon', ['carbonGrowthPercent']],
  ['years.3.savings.agents', ['agentGrowthPercent']],
  ['years.3.saving', ['agentGrowthPercent', 'serviceGrowthPercent']]
])('%s shows the growth cells that it is multiplied by, at 0 % too', (figure, growth) => {
  const cells = cellsUnder(still, `${id}.againstBaseline.${figure}`);
  for (const cell of growth) expect([...cells]).toContain(`accounting.${cell}`);
});

test.each(['npv', 'simplePaybackYears', 'investment', 'years.2.net'])(
  '%s shows the life by which machines are replaced, where none is within the appraisal too',
  (figure) => {
    const long: Workbook = {
      ...still,
      machines: still.machines.map((each) => ({ ...each, lifeYears: 40 }))
    };
    for (const workbook of [still, long])
      expect([...cellsUnder(workbook, `${id}.againstBaseline.${figure}`)]).toContain(
        `machines.${machine}.lifeYears`
      );
  }
);

test('what a gap in monitoring costs leads to the theatres, the stock and the price', () => {
  const gaps = estimate(coreInput(demo)).scenarios.flatMap((one) =>
    one.monitoring
      .filter(({ cost }) => Number(cost ?? 0) > 0)
      .map(({ rule, item }) => ({ path: `${one.id}.monitoring.${rule}.cost`, item }))
  );
  expect(gaps.length).toBeGreaterThan(0);
  for (const { path, item } of gaps)
    expect([...cellsUnder(demo, path)]).toEqual(
      expect.arrayContaining([
        'theatreGroups.main.theatres',
        `theatreGroups.main.monitors.${item}`,
        `monitorPrices.${item}.unitPrice`
      ])
    );
});
