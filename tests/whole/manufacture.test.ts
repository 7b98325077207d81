/** Emissions of making agents, machines and consumables: figures that are entered, and left out until they are. */
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  low,
  lowFlow,
  neck,
  oldMachine,
  oneCase,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing } from '../fixtures/one-group.ts';

const base = wholeWorkbook();
interface Figures {
  readonly sevoflurane?: number;
  readonly machines?: Readonly<Record<string, number>>;
  readonly consumables?: number;
}
const made = ({ sevoflurane, machines = {}, consumables }: Figures, more: Partial<Workbook> = {}) => {
  const workbook = wholeWorkbook({
    agents: base.agents.map((each) =>
      each.agent === 'sevoflurane' ? { ...each, manufactureKgCo2ePerKg: sevoflurane ?? null } : each
    ),
    machines: base.machines.map((each) => ({
      ...each,
      manufactureKgCo2ePerUnit: machines[each.id] ?? null
    })),
    site: { ...base.site, consumablesKgCo2ePerCase: consumables ?? null },
    ...more
  });
  return estimate(coreInput(workbook)).scenarios;
};
type Scenarios = ReturnType<typeof made>;
const [none] = made({});
const ofYear = ([first]: Scenarios): number => first?.perYear.co2eKg.manufacture ?? NaN;
const linesOf = (scenario: Scenarios[number] | undefined) =>
  (scenario?.ledger ?? []).filter(({ kind }) => kind.startsWith('making'));

describe('an agent that is made', () => {
  test('counts by all that has to be bought, what stays in the bottle included', () => {
    const onUsual = oneCase(base, { row: hernia, plan: usual, machine: oldMachine });
    // 2 % of a bottle cannot be used; 1.52 g/mL.
    expectFigures(ofYear(made({ sevoflurane: 40 })), ((200 * onUsual.liquidMl) / 0.98) * (1.52 / 1000) * 40);
  });

  test('counts for less where less of it is used', () => {
    const onLow = oneCase(base, { row: hernia, plan: low, machine: oldMachine });
    const [, of] = made({ sevoflurane: 40 }, { scenarios: [today, { ...lowFlow, adoptionPercent: 100 }] });
    expectFigures(of?.perYear.co2eKg.manufacture, ((200 * onLow.liquidMl) / 0.98) * (1.52 / 1000) * 40);
  });
});

test('machines that stand count by the share of their life that a year is, spares among them', () => {
  const closed = { ...lowFlow, ...bringing('closed', 'low', { spares: 1 }) };
  const [now, then] = made({ machines: { old: 500, closed: 900 } }, { scenarios: [today, closed] });
  expectFigures(now?.perYear.co2eKg.manufacture, (3 * 500) / oldMachine.lifeYears);
  expectFigures(then?.perYear.co2eKg.manufacture, (4 * 900) / closedMachine.lifeYears);
});

test('consumables count for each general anaesthetic, and for no regional one', () => {
  expectFigures(ofYear(made({ consumables: 1.5 })), 1.5 * (hernia.casesPerYear + neck.casesPerYear));
});

test('a case carries the making of its agent and its consumables, and of no machine', () => {
  const [before] = made({});
  const [after] = made({ sevoflurane: 40, machines: { old: 500 }, consumables: 1.5 });
  const kgOf = (scenario: Scenarios[number] | undefined) =>
    scenario?.cases.find(({ caseId }) => caseId === hernia.id)?.co2eKg ?? NaN;
  const { liquidMl } = oneCase(base, { row: hernia, plan: usual, machine: oldMachine });
  expect(kgOf(after) - kgOf(before)).toBeCloseTo((liquidMl / 0.98) * (1.52 / 1000) * 40 + 1.5, 9);
});

test('what is entered joins the total, each line in a class of its own', () => {
  const [of] = made({ sevoflurane: 40, machines: { old: 500 }, consumables: 1.5 });
  const lines = linesOf(of);
  expect(lines.map(({ kind, subject, isInTotal }) => [kind, subject, isInTotal])).toEqual([
    ['makingAgents', 'sevoflurane', true],
    ['makingMachines', 'old', true],
    ['makingConsumables', null, true]
  ]);
  const sum = lines.reduce((all, { co2eKg }) => all + (co2eKg ?? NaN), 0);
  expectFigures(of?.perYear.co2eKg.manufacture, sum);
  expect(of?.perYear.co2eKg.total).toBeCloseTo((none?.perYear.co2eKg.total ?? NaN) + sum, 9);
});

test('a figure of 0 is shown as 0, and an empty cell as no line at all', () => {
  const [zero] = made({ sevoflurane: 0, machines: { old: 0 }, consumables: 0 });
  expect(linesOf(zero).map(({ co2eKg }) => co2eKg)).toEqual([0, 0, 0]);
  expect(linesOf(none)).toEqual([]);
  expect(zero?.perYear).toEqual(none?.perYear);
});

test('a set of potentials, which weighs what is vented, changes nothing of it', () => {
  const figures = { sevoflurane: 40, machines: { old: 500 }, consumables: 1.5 };
  const AR5 = { accounting: { ...base.accounting, warmingSet: 'AR5' as const } };
  expect(ofYear(made(figures, AR5))).toBe(ofYear(made(figures)));
});
