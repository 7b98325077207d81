/** What one case of a group costs and emits, beside what it uses: no scenario's share, no loss of the pipes. */
import { describe, expect, test } from 'vitest';
import type { CaseRow, FlowPlan, Machine, Scenario } from '#lib/calc/input.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  hip,
  low,
  lowFlow,
  neck,
  nitrousOxideKgPerL,
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

const closed: Scenario = { ...lowFlow, id: 'closed', ...bringing('closed', 'low'), capturePercent: 45 };
const workbook = wholeWorkbook({ scenarios: [today, lowFlow, closed] });
const absorbents = {
  'soda-lime': { pricePerKg: 9, kgCo2ePerKg: 0.7 },
  'alkali-free': { pricePerKg: 17, kgCo2ePerKg: 1.3 }
} as const;

interface Place {
  readonly scenario: Scenario;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  readonly capturePercent: number;
}
const places: readonly (readonly [string, Place])[] = [
  ['of today', { scenario: today, plan: usual, machine: oldMachine, capturePercent: 30 }],
  ['on today’s machine', { scenario: lowFlow, plan: low, machine: oldMachine, capturePercent: 30 }],
  ['on another machine', { scenario: closed, plan: low, machine: closedMachine, capturePercent: 45 }]
];

describe.each(places)('a case %s', (_, { scenario, plan, machine, capturePercent }) => {
  const caseOf = ({ id }: CaseRow) => {
    const found = scenarioOf(workbook, scenario).cases.find(({ caseId }) => caseId === id);
    if (found === undefined) throw new Error(`There is no case of ${id}.`);
    return found;
  };
  const absorbent = absorbents[machine.absorbent as keyof typeof absorbents];
  const powerW = machine.powerW ?? NaN;

  test('is, where volatile, on the scenario’s own plan, whatever share follows it', () => {
    const one = oneCase(workbook, { row: hernia, plan, machine });
    const { liquidMl, takenUpMl, spilledMl, leftMl, oxygenL, airL, nitrousOxideL, absorbentKg } =
      caseOf(hernia);
    expectFigures({ liquidMl, takenUpMl, spilledMl, leftMl, oxygenL, airL, nitrousOxideL, absorbentKg }, one);
    expect(caseOf(hernia)).toMatchObject({
      flowPlan: plan.id,
      agent: 'sevoflurane',
      method: 'circle-system'
    });
  });

  test('emits, where volatile, agent less capture, nitrous oxide, oxygen, absorbent and electricity', () => {
    const one = oneCase(workbook, { row: hernia, plan, machine });
    const { kgCo2ePerKg } = published.sevoflurane;
    expectFigures(
      caseOf(hernia).co2eKg,
      ventedKg(one, { row: hernia, machine, capturePercent }) * kgCo2ePerKg +
        one.nitrousOxideL * nitrousOxideKgPerL * published.nitrousOxideKgCo2ePerKg +
        (one.oxygenL / 1000) * published.oxygenKgCo2ePerM3 +
        one.absorbentKg * absorbent.kgCo2ePerKg +
        ((60 / 60) * powerW * 0.3) / 1000
    );
  });

  test('costs, where volatile, its agent, gases and absorbent', () => {
    const one = oneCase(workbook, { row: hernia, plan, machine });
    expectFigures(
      caseOf(hernia).cost,
      (one.liquidMl * 118) / (250 * 0.98) +
        (one.oxygenL * 0.9) / 1000 +
        (one.airL * 0.05) / 1000 +
        one.nitrousOxideL * nitrousOxideKgPerL * 4 +
        one.absorbentKg * absorbent.pricePerKg
    );
  });

  test('emits, where intravenous, the drugs of its hours besides gases, absorbent and electricity', () => {
    const one = oneCase(workbook, { row: neck, plan, machine });
    const { co2eKg, cost, agent, liquidMl } = caseOf(neck);
    expectFigures(
      { co2eKg, cost, agent, liquidMl },
      {
        co2eKg:
          (one.oxygenL / 1000) * published.oxygenKgCo2ePerM3 +
          one.absorbentKg * absorbent.kgCo2ePerKg +
          ((120 / 60) * powerW * 0.3) / 1000 +
          (120 / 60) * published.intravenousKgCo2ePerH,
        cost: (one.oxygenL * 0.9) / 1000 + (one.airL * 0.05) / 1000 + one.absorbentKg * absorbent.pricePerKg,
        agent: null,
        liquidMl: 0
      }
    );
  });

  test('emits and costs nothing where regional: no machine runs for it', () => {
    const { co2eKg, cost, oxygenL, absorbentKg } = caseOf(hip);
    expectFigures({ co2eKg, cost, oxygenL, absorbentKg }, { co2eKg: 0, cost: 0, oxygenL: 0, absorbentKg: 0 });
  });
});

test('a case of a group with another agent is priced and warms as that agent', () => {
  const switching: Scenario = { ...lowFlow, agentSwitch: { sevoflurane: 'desflurane' } };
  const switched = wholeWorkbook({
    scenarios: [today, switching],
    caseMix: [{ ...hernia, nitrousOxidePercent: 0 }]
  });
  const row = { ...hernia, nitrousOxidePercent: 0 };
  const one = oneCase(switched, { row, plan: low, machine: oldMachine, agent: 'desflurane' });
  const { agent, cost, co2eKg } = scenarioOf(switched, switching).cases[0] ?? {};
  expectFigures(
    { agent, cost, co2eKg },
    {
      agent: 'desflurane',
      cost:
        (one.liquidMl * 104) / (240 * 0.98) +
        (one.oxygenL * 0.9) / 1000 +
        (one.airL * 0.05) / 1000 +
        one.absorbentKg * 9,
      co2eKg:
        ventedKg(one, { row, machine: oldMachine, agent: 'desflurane', capturePercent: 30 }) * 2590 +
        (one.oxygenL / 1000) * published.oxygenKgCo2ePerM3 +
        one.absorbentKg * 0.7 +
        ((60 / 60) * 90 * 0.3) / 1000
    }
  );
});
