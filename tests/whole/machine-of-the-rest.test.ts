/**
 * The machine on which the cases run that do not follow a scenario's plan: the one that stands in their theatre, with the
 * scenario's capture. All three theatres move here.
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
  ventedKg,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing } from '../fixtures/one-group.ts';

const closed: Scenario = { ...lowFlow, id: 'closed', ...bringing('closed', 'low') };
const workbook = wholeWorkbook({ scenarios: [today, closed] });
const followed = {
  hernia: oneCase(workbook, { row: hernia, plan: low, machine: closedMachine }),
  neck: oneCase(workbook, { row: neck, plan: low, machine: closedMachine })
};
const rest = {
  hernia: oneCase(workbook, { row: hernia, plan: usual, machine: closedMachine }),
  neck: oneCase(workbook, { row: neck, plan: usual, machine: closedMachine })
};

test('cases that do not follow use what today’s plan uses on the machine that came', () => {
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

test('cases that do not follow take the power of the machine that came', () => {
  const hours = (200 * 60 + 50 * 120) / 60;
  expectFigures(scenarioOf(workbook, closed).perYear.electricityKWh, (hours * 60) / 1000);
});

test('cases that do not follow use up the absorbent of the machine that came', () => {
  const massKg =
    200 * (0.6 * followed.hernia.absorbentKg + 0.4 * rest.hernia.absorbentKg) +
    50 * (0.6 * followed.neck.absorbentKg + 0.4 * rest.neck.absorbentKg);
  const { absorbentKg, cost, co2eKg } = scenarioOf(workbook, closed).perYear;
  expectFigures(
    { absorbentKg, cost: cost.absorbent, co2eKg: co2eKg.absorbent },
    { absorbentKg: massKg, cost: 17 * massKg, co2eKg: 1.3 * massKg }
  );
});

/** Agent of hernia repairs, less what is metabolised and captured, kg CO2e a case. */
const agentKg = (one: typeof rest.hernia, capturePercent: number, machine = closedMachine): number =>
  ventedKg(one, { row: hernia, machine, capturePercent }) * published.sevoflurane.kgCo2ePerKg;

test('what cases vent that do not follow is captured as in the scenario', () => {
  const capturing: Scenario = { ...closed, capturePercent: 70 };
  const { agents } = scenarioOf({ ...workbook, scenarios: [today, capturing] }, capturing).perYear.co2eKg;
  expectFigures(agents, 200 * (0.6 * agentKg(followed.hernia, 70) + 0.4 * agentKg(rest.hernia, 70)));
});

test('a scenario that only captures does so in every case, whatever its adoption', () => {
  const capturing: Scenario = {
    ...today,
    id: 'capture',
    baseline: false,
    adoptionPercent: 60,
    capturePercent: 70
  };
  const all = { ...workbook, scenarios: [today, capturing] };
  const { hernia: group } = { hernia: oneCase(all, { row: hernia, plan: usual, machine: all.machines[0]! }) };
  const { agents, electricity } = scenarioOf(all, capturing).perYear.co2eKg;
  expectFigures(agents, 200 * agentKg(group, 70, oldMachine));
  expect(electricity).toBe(scenarioOf(workbook, today).perYear.co2eKg.electricity);
});

test('service is paid for the machines that stand', () => {
  expectFigures(scenarioOf(workbook, closed).perYear.cost.service, 3 * 1100);
});
