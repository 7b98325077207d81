/**
 * The machine on which the cases run that do not follow a scenario's plan. These tests fix the rule of today: they stay
 * on today's machine, with today's capture, even where the scenario buys others. A change of that rule changes this file,
 * and no other whole workbook.
 */
import { expect, test } from 'vitest';
import type { Scenario } from '#lib/calc/input.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  low,
  lowFlow,
  neck,
  oldMachine,
  oneCase,
  published,
  scenarioOf,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const closed: Scenario = { ...lowFlow, id: 'closed', machine: 'closed' };
const workbook = wholeWorkbook({ scenarios: [today, closed] });
const followed = {
  hernia: oneCase(workbook, { row: hernia, plan: low, machine: closedMachine }),
  neck: oneCase(workbook, { row: neck, plan: low, machine: closedMachine })
};
const rest = {
  hernia: oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine }),
  neck: oneCase(workbook, { row: neck, plan: usual, machine: oldMachine })
};

test('cases that do not follow use what they use on today’s machine', () => {
  const { agents, oxygenM3 } = scenarioOf(workbook, closed).perYear;
  expectFigures(
    agents.sevoflurane?.liquidMl,
    200 * (0.6 * followed.hernia.liquidMl + 0.4 * rest.hernia.liquidMl)
  );
  expectFigures(
    oxygenM3,
    (200 * (0.6 * followed.hernia.oxygenL + 0.4 * rest.hernia.oxygenL) +
      50 * (0.6 * followed.neck.oxygenL + 0.4 * rest.neck.oxygenL)) /
      1000
  );
});

test('cases that do not follow take the power of today’s machine', () => {
  const hours = (200 * 60 + 50 * 120) / 60;
  expectFigures(scenarioOf(workbook, closed).perYear.electricityKWh, (hours * (0.6 * 60 + 0.4 * 90)) / 1000);
});

test('cases that do not follow use up today’s absorbent, and each absorbent has its own price and making', () => {
  const ownKg = 0.6 * (200 * followed.hernia.absorbentKg + 50 * followed.neck.absorbentKg);
  const restKg = 0.4 * (200 * rest.hernia.absorbentKg + 50 * rest.neck.absorbentKg);
  const { absorbentKg, cost, co2eKg } = scenarioOf(workbook, closed).perYear;
  expectFigures(
    { absorbentKg, cost: cost.absorbent, co2eKg: co2eKg.absorbent },
    { absorbentKg: ownKg + restKg, cost: 17 * ownKg + 9 * restKg, co2eKg: 1.3 * ownKg + 0.7 * restKg }
  );
});

/** Agent of hernia repairs as mass, less what is metabolised and captured, kg CO2e a case. */
const agentKg = ({ liquidMl, takenUpMl }: typeof rest.hernia, capturePercent: number): number => {
  const { densityGPerMl, metabolisedPercent, kgCo2ePerKg } = published.sevoflurane;
  const ventedG = (liquidMl - (metabolisedPercent / 100) * takenUpMl) * densityGPerMl;
  return ((ventedG * (1 - capturePercent / 100)) / 1000) * kgCo2ePerKg;
};

test('what cases vent that do not follow is captured as today', () => {
  const capturing: Scenario = { ...closed, capturePercent: 70 };
  const { agents } = scenarioOf({ ...workbook, scenarios: [today, capturing] }, capturing).perYear.co2eKg;
  expectFigures(agents, 200 * (0.6 * agentKg(followed.hernia, 70) + 0.4 * agentKg(rest.hernia, 30)));
});

test('a scenario that only captures does so in the cases that follow', () => {
  const capturing: Scenario = {
    ...today,
    id: 'capture',
    baseline: false,
    adoptionPercent: 60,
    capturePercent: 70
  };
  const { agents, electricity } = scenarioOf({ ...workbook, scenarios: [today, capturing] }, capturing)
    .perYear.co2eKg;
  expectFigures(agents, 200 * (0.6 * agentKg(rest.hernia, 70) + 0.4 * agentKg(rest.hernia, 30)));
  expect(electricity).toBe(scenarioOf(workbook, today).perYear.co2eKg.electricity);
});

test('service is paid for the scenario’s machines alone', () => {
  expectFigures(scenarioOf(workbook, closed).perYear.cost.service, 3 * 1100);
});
