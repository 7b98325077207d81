/** What an hour, a MAC-hour and a bottle of an agent take at a flow: each figure from one case, in plain arithmetic. */
import { describe, expect, test } from 'vitest';
import { givenOf } from '#lib/calc/case/conditions.ts';
import type { AgentAtFlow } from '#lib/calc/reckoning/agent-at-flow.ts';
import { agentAtFlowFigures, agentsAtFlows, recordedAgentAtFlow } from '#lib/calc/reckoning/agent-at-flow.ts';
import { ownCaseSources } from '#lib/calc/reckoning/own-case.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import {
  expectFigures,
  hernia,
  oldMachine,
  oneCase,
  published,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const workbook = wholeWorkbook();
const input = coreInput(workbook);
const given = givenOf(ownCaseSources(input, today, hernia));
const points = agentsAtFlows(input, given);

const at = (agent: string, flowLPerMin: number): AgentAtFlow => {
  const found = points.find((point) => point.agent === agent && point.flowLPerMin === flowLPerMin);
  if (found === undefined) throw new Error(`There is no ${agent} at ${flowLPerMin} L/min.`);
  return found;
};

const bottles = {
  sevoflurane: { usableMl: 250 * 0.98, price: 118 },
  desflurane: { usableMl: 240 * 0.98, price: 104 }
} as const;

describe.each(['sevoflurane', 'desflurane'] as const)('%s at 1 L/min after the plan’s wash-in', (agent) => {
  const plan = { ...usual, phases: [usual.phases[0]!, { ...usual.phases[1]!, flowLPerMin: 1 }] };
  const { liquidMl, takenUpMl } = oneCase(workbook, { row: hernia, plan, machine: oldMachine, agent });
  const { usableMl, price } = bottles[agent];
  const { densityGPerMl, metabolisedPercent, kgCo2ePerKg } = published[agent];
  const used = liquidMl / usableMl;
  const co2eKg = (((liquidMl - (metabolisedPercent / 100) * takenUpMl) * densityGPerMl) / 1000) * kgCo2ePerKg;
  const { figures } = at(agent, 1);

  test('is, for an hour and a bottle, one case over its hours and over its bottles', () => {
    const hours = hernia.minutes / 60;
    expectFigures(
      {
        mlPerHour: figures.mlPerHour,
        co2eKgPerHour: figures.co2eKgPerHour,
        costPerHour: figures.costPerHour,
        hoursPerBottle: figures.hoursPerBottle,
        co2eKgPerBottle: figures.co2eKgPerBottle,
        costPerBottle: figures.costPerBottle
      },
      {
        mlPerHour: liquidMl / hours,
        co2eKgPerHour: co2eKg / hours,
        costPerHour: (used * price) / hours,
        hoursPerBottle: hours / used,
        co2eKgPerBottle: co2eKg / used,
        costPerBottle: price
      }
    );
  });

  test('is, for a MAC-hour, by the depth that was really held, of the agent alone', () => {
    const macHours = figures.macHoursPerBottle * used;
    expectFigures(
      [figures.mlPerMacHour, figures.co2eKgPerMacHour, figures.costPerMacHour],
      [liquidMl / macHours, co2eKg / macHours, (used * price) / macHours]
    );
    const withoutGas = { ...given, conditions: { ...given.conditions, nitrousOxidePercent: 0 } };
    const alone = agentsAtFlows(input, withoutGas).find(
      (point) => point.agent === agent && point.flowLPerMin === 1
    );
    // Without nitrous oxide the target is reached within minutes and then held: nearly that depth throughout.
    const depth = (alone?.figures.mlPerHour ?? NaN) / (alone?.figures.mlPerMacHour ?? NaN);
    expect(depth / (hernia.targetMac ?? NaN)).toBeGreaterThan(0.95);
    expect(depth / (hernia.targetMac ?? NaN)).toBeLessThan(1.01);
    expect(macHours / (hernia.minutes / 60)).toBeLessThan(0.6 * depth);
  });
});

test('every priced agent is there at every flow, and takes more at each higher one', () => {
  expect(points.map(({ agent, flowLPerMin }) => `${agent} ${flowLPerMin}`)).toEqual(
    ['sevoflurane', 'desflurane'].flatMap((agent) =>
      [0.57, 1, 2, 4, 6].map((flow, i) =>
        i === 0 ? `${agent} ${points[0]?.flowLPerMin}` : `${agent} ${flow}`
      )
    )
  );
  for (const [i, { agent, figures }] of points.entries()) {
    const before = points[i - 1];
    if (before?.agent === agent) expect(figures.mlPerHour).toBeGreaterThan(before.figures.mlPerHour);
  }
});

test('flows that patient and machine do not allow are one: the least that is feasible', () => {
  // The old machine loses 120 mL/min and a sample of 200 mL/min beside what the patient consumes.
  expect(points[0]?.flowLPerMin).toBeCloseTo(0.32 + (10 * hernia.weightKg ** 0.75) / 1000, 9);
});

test('a plan with a fixed dial is held at the target all the same, so that agents are compared alike', () => {
  const phases = given.conditions.phases.map((phase) => ({
    ...phase,
    vaporiser: 'dial' as const,
    dialPercent: 7
  }));
  expect(agentsAtFlows(input, { ...given, conditions: { ...given.conditions, phases } })).toEqual(points);
});

test('a case without vapour has no figures', () => {
  const without = { technique: 'intravenous', agent: null, targetMac: null } as const;
  expect(agentsAtFlows(input, { ...given, conditions: { ...given.conditions, ...without } })).toEqual([]);
  // Nitrous oxide leaves nothing of a low target.
  const gas = { nitrousOxidePercent: 60, targetMac: 0.3 };
  expect(agentsAtFlows(input, { ...given, conditions: { ...given.conditions, ...gas } })).toEqual([]);
  const phases = given.conditions.phases.map((phase) => ({ ...phase, vaporiser: 'off' as const }));
  expect(agentsAtFlows(input, { ...given, conditions: { ...given.conditions, phases } })).toEqual([]);
});

test('every figure ends its working in what is shown', () => {
  for (const { agent, flowLPerMin, figures } of points)
    for (const figure of agentAtFlowFigures)
      expect(
        Number(workingOf(recordedAgentAtFlow(input, { given, agent, flowLPerMin, figure })).value),
        `${agent} ${flowLPerMin} ${figure}`
      ).toBe(figures[figure]);
});
