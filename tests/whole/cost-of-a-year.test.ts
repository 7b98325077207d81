/** What a year costs, line by line, and what a scenario saves of it. */
import { expect, test } from 'vitest';
import type { Scenario } from '#lib/calc/input.ts';
import type { CostLine } from '#lib/calc/estimate-types.ts';
import {
  expectFigures,
  hernia,
  hip,
  low,
  neck,
  nitrousOxideKgPerL,
  oldMachine,
  oneCase,
  lowFlow,
  pricedTechniques,
  scenarioOf,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing } from '../fixtures/one-group.ts';

// The machines that are bought make the same use of a case as those of today, so that only money tells them apart.
const buying: Scenario = {
  ...lowFlow,
  id: 'buying',
  ...bringing('like-the-old', 'low'),
  yearlyExtraCost: '250.50',
  oneOffCost: '3000',
  recoveryMinutesSavedPerCase: 4
};
const workbook = wholeWorkbook({
  scenarios: [{ ...today, yearlyExtraCost: '40' }, buying],
  ...pricedTechniques
});

test('every line of a year that is partly followed, and their total', () => {
  const on = (plan: typeof usual) => ({
    hernia: oneCase(workbook, { row: hernia, plan, machine: oldMachine }),
    neck: oneCase(workbook, { row: neck, plan, machine: oldMachine })
  });
  const [onUsual, onLow] = [on(usual), on(low)];
  const ofYear = (amount: 'liquidMl' | 'oxygenL' | 'airL' | 'nitrousOxideL' | 'absorbentKg') =>
    200 * (0.6 * onLow.hernia[amount] + 0.4 * onUsual.hernia[amount]) +
    50 * (0.6 * onLow.neck[amount] + 0.4 * onUsual.neck[amount]);
  const lostKg = 300 - 200 * onUsual.hernia.nitrousOxideL * nitrousOxideKgPerL;
  const { perYear } = scenarioOf(workbook, buying);
  const lines: Record<CostLine, number> = {
    agents: (ofYear('liquidMl') * 118) / (250 * 0.98),
    gases:
      (ofYear('oxygenL') / 1000) * 0.9 +
      (ofYear('airL') / 1000) * 0.05 +
      (ofYear('nitrousOxideL') * nitrousOxideKgPerL + lostKg) * 4,
    absorbent: ofYear('absorbentKg') * 9,
    // Of 50 cases of two hours 40 % of the propofol is wasted; 60 regional cases.
    drugs:
      ((50 * 2 * 8 * neck.weightKg) / 1000 / 0.6) * 6 +
      50 * 2 * 3 +
      50 * (12.5 + 0.8 * 20) +
      hip.casesPerYear * 31,
    capture: 0,
    service: 3 * 1100,
    electricity: ((((200 * 60 + 50 * 120) / 60) * 90) / 1000) * 0.25,
    other: 250.5,
    carbon: (perYear.co2eKg.total / 1000) * 100,
    recovery: -(0.6 * (200 + 50) * 4 * 1.5)
  };
  // Carbon price and recovery minutes stand beside the cash.
  const { carbon: _, recovery: __, ...cash } = lines;
  const total = Object.values(cash).reduce((sum, line) => sum + line, 0);
  expectFigures(perYear.cost, { ...lines, total });
});

test('each agent is priced by its own bottles', () => {
  const switching: Scenario = { ...lowFlow, agentSwitch: { sevoflurane: 'desflurane' } };
  const { agents, cost } = scenarioOf({ ...workbook, scenarios: [today, switching] }, switching).perYear;
  const desfluraneMl =
    200 *
    0.6 *
    oneCase(workbook, { row: hernia, plan: low, machine: oldMachine, agent: 'desflurane' }).liquidMl;
  const sevofluraneMl =
    200 * 0.4 * oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine }).liquidMl;
  const costs = {
    sevoflurane: (sevofluraneMl * 118) / (250 * 0.98),
    desflurane: (desfluraneMl * 104) / (240 * 0.98)
  };
  expectFigures(
    { sevoflurane: agents.sevoflurane?.cost, desflurane: agents.desflurane?.cost, all: cost.agents },
    { ...costs, all: costs.sevoflurane + costs.desflurane }
  );
});

test('the yearly saving is the year of today less the year of the scenario, all lines', () => {
  const { yearlySaving } = scenarioOf(workbook, buying).againstBaseline;
  const saving =
    Number(scenarioOf(workbook, today).perYear.cost.total) -
    Number(scenarioOf(workbook, buying).perYear.cost.total);
  expect(saving).toBeGreaterThan(0);
  expectFigures(yearlySaving, saving);
});
