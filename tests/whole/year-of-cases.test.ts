/** What a year of cases uses, added up by hand from what one case of each group uses. */
import { expect, test } from 'vitest';
import {
  expectFigures,
  hernia,
  hip,
  low,
  lowFlow,
  neck,
  nitrousOxideKgPerL,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const workbook = wholeWorkbook();
const onUsual = {
  hernia: oneCase(workbook, { row: hernia, plan: usual, machine: oldMachine }),
  neck: oneCase(workbook, { row: neck, plan: usual, machine: oldMachine })
};
const onLow = {
  hernia: oneCase(workbook, { row: hernia, plan: low, machine: oldMachine }),
  neck: oneCase(workbook, { row: neck, plan: low, machine: oldMachine })
};

test('a year of today uses the cases of each group times what one of them uses', () => {
  const { agents, oxygenM3, airM3, nitrousOxideKg, absorbentKg } = scenarioOf(workbook, today).perYear;
  const liquidMl = 200 * onUsual.hernia.liquidMl;
  expectFigures(agents, {
    sevoflurane: {
      liquidMl,
      bottles: liquidMl / (250 * 0.98),
      cost: (liquidMl * 118) / (250 * 0.98),
      estimateOverPurchase: null
    }
  });
  expectFigures(oxygenM3, (200 * onUsual.hernia.oxygenL + 50 * onUsual.neck.oxygenL) / 1000);
  expectFigures(airM3, (200 * onUsual.hernia.airL + 50 * onUsual.neck.airL) / 1000);
  expectFigures(nitrousOxideKg, 200 * onUsual.hernia.nitrousOxideL * nitrousOxideKgPerL);
  expectFigures(absorbentKg, 200 * onUsual.hernia.absorbentKg + 50 * onUsual.neck.absorbentKg);
});

test('cases that do not follow the plan use what today’s plan uses', () => {
  const { agents, oxygenM3, airM3, nitrousOxideKg, absorbentKg } = scenarioOf(workbook, lowFlow).perYear;
  const followed = (amount: 'liquidMl' | 'oxygenL' | 'airL' | 'nitrousOxideL' | 'absorbentKg') =>
    200 * (0.6 * onLow.hernia[amount] + 0.4 * onUsual.hernia[amount]) +
    50 * (0.6 * onLow.neck[amount] + 0.4 * onUsual.neck[amount]);
  expectFigures(agents.sevoflurane?.liquidMl, followed('liquidMl'));
  expectFigures(oxygenM3, followed('oxygenL') / 1000);
  expectFigures(airM3, followed('airL') / 1000);
  expectFigures(nitrousOxideKg, followed('nitrousOxideL') * nitrousOxideKgPerL);
  expectFigures(absorbentKg, followed('absorbentKg'));
});

test('a low flow that is followed uses less of everything that flows', () => {
  for (const amount of ['liquidMl', 'nitrousOxideL'] as const)
    expect(onLow.hernia[amount]).toBeLessThan(0.9 * onUsual.hernia[amount]);
  expect(onLow.neck.oxygenL).toBeLessThan(0.9 * onUsual.neck.oxygenL);
  expect(onLow.neck.airL).toBeLessThan(0.9 * onUsual.neck.airL);
});

test('electricity is that of the hours with a machine in use: a regional case has none', () => {
  expectFigures(
    scenarioOf(workbook, today).perYear.electricityKWh,
    (((200 * 60 + 50 * 120) / 60) * 90) / 1000
  );
  const regionalAlone = wholeWorkbook({ caseMix: [hip] });
  const { perYear } = scenarioOf(regionalAlone, lowFlow);
  expectFigures(
    { electricityKWh: perYear.electricityKWh, oxygenM3: perYear.oxygenM3, absorbentKg: perYear.absorbentKg },
    { electricityKWh: 0, oxygenM3: 0, absorbentKg: 0 }
  );
});

test('a machine without a power of its own takes the published one', () => {
  const machines = [{ ...oldMachine, powerW: null }];
  const { electricityKWh } = scenarioOf(wholeWorkbook({ machines }), today).perYear;
  expectFigures(electricityKWh, (((200 * 60 + 50 * 120) / 60) * 97) / 1000);
});

test('today is whole, whatever adoption its scenario is given', () => {
  const scenarios = [{ ...today, adoptionPercent: 10 }, lowFlow];
  const { agents } = scenarioOf(wholeWorkbook({ scenarios }), today).perYear;
  expectFigures(agents.sevoflurane?.liquidMl, 200 * onUsual.hernia.liquidMl);
});

test('a scenario that is followed in every case uses nothing of today’s plan', () => {
  const scenarios = [today, { ...lowFlow, adoptionPercent: 100 }];
  const { agents } = scenarioOf(wholeWorkbook({ scenarios }), lowFlow).perYear;
  expectFigures(agents.sevoflurane?.liquidMl, 200 * onLow.hernia.liquidMl);
});

test('a case group with a plan of its own follows that plan, and the others the scenario’s', () => {
  const scenarios = [today, { ...lowFlow, flowPlanByCase: { neck: 'usual' } }];
  const { oxygenM3 } = scenarioOf(wholeWorkbook({ scenarios }), lowFlow).perYear;
  const litres =
    200 * (0.6 * onLow.hernia.oxygenL + 0.4 * onUsual.hernia.oxygenL) + 50 * onUsual.neck.oxygenL;
  expectFigures(oxygenM3, litres / 1000);
});

test('cases that follow get the agent that is given instead, and the others today’s agent', () => {
  const scenarios = [today, { ...lowFlow, agentSwitch: { sevoflurane: 'desflurane' as const } }];
  const { agents } = scenarioOf(wholeWorkbook({ scenarios }), lowFlow).perYear;
  const desflurane = oneCase(workbook, { row: hernia, plan: low, machine: oldMachine, agent: 'desflurane' });
  expectFigures(
    { sevoflurane: agents.sevoflurane?.liquidMl, desflurane: agents.desflurane?.liquidMl },
    { sevoflurane: 200 * 0.4 * onUsual.hernia.liquidMl, desflurane: 200 * 0.6 * desflurane.liquidMl }
  );
});

test('where the vapour went is told as if every case followed the scenario’s own plan', () => {
  const { hernia: one } = onLow;
  expectFigures(scenarioOf(workbook, lowFlow).vapourOnOwnPlan, {
    takenUpMl: 200 * one.takenUpMl,
    spilledMl: 200 * one.spilledMl,
    leftMl: 200 * one.leftMl,
    togetherMl: 200 * (one.takenUpMl + one.spilledMl + one.leftMl)
  });
});
