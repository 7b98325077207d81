/** What a year emits, line by line, from what it uses. */
import { expect, test } from 'vitest';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  expectFigures,
  hernia,
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
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const workbook = wholeWorkbook();
const on = (plan: typeof usual) => ({
  hernia: oneCase(workbook, { row: hernia, plan, machine: oldMachine }),
  neck: oneCase(workbook, { row: neck, plan, machine: oldMachine })
});
const onUsual = on(usual);
const onLow = on(low);
const ofHernia = { row: hernia, machine: oldMachine, capturePercent: 30 };

test('every line of a year that is partly followed, and their total', () => {
  const vented = 200 * (0.6 * ventedKg(onLow.hernia, ofHernia) + 0.4 * ventedKg(onUsual.hernia, ofHernia));
  const nitrousOxideKg =
    200 * (0.6 * onLow.hernia.nitrousOxideL + 0.4 * onUsual.hernia.nitrousOxideL) * nitrousOxideKgPerL;
  const oxygenM3 =
    (200 * (0.6 * onLow.hernia.oxygenL + 0.4 * onUsual.hernia.oxygenL) +
      50 * (0.6 * onLow.neck.oxygenL + 0.4 * onUsual.neck.oxygenL)) /
    1000;
  const absorbentKg =
    200 * (0.6 * onLow.hernia.absorbentKg + 0.4 * onUsual.hernia.absorbentKg) +
    50 * (0.6 * onLow.neck.absorbentKg + 0.4 * onUsual.neck.absorbentKg);
  const lines = {
    agents: vented * 195,
    nitrousOxide: nitrousOxideKg * 273,
    nitrousOxideLost: (300 - 200 * onUsual.hernia.nitrousOxideL * nitrousOxideKgPerL) * 273,
    gases: oxygenM3 * published.oxygenKgCo2ePerM3,
    absorbent: absorbentKg * 0.7,
    electricity: (((200 * 60 + 50 * 120) / 60) * 90 * 0.3) / 1000,
    intravenous: ((50 * 120) / 60) * 0.4,
    manufacture: 0
  };
  const total = Object.values(lines).reduce((sum, line) => sum + line, 0);
  expectFigures(scenarioOf(workbook, lowFlow).perYear.co2eKg, { ...lines, total });
});

test('hours of intravenous anaesthesia count in every scenario, and those of no other technique', () => {
  const only = (caseMix: Workbook['caseMix']) => scenarioOf(wholeWorkbook({ caseMix }), lowFlow).perYear;
  expectFigures(only([neck]).co2eKg.intravenous, ((50 * 120) / 60) * 0.4);
  expectFigures(only([hernia]).co2eKg.intravenous, 0);
});

test('emissions avoided are those of today less those of the scenario, also as a share of the department’s', () => {
  const avoidedKg =
    scenarioOf(workbook, today).perYear.co2eKg.total - scenarioOf(workbook, lowFlow).perYear.co2eKg.total;
  const { co2eAvoidedKg, departmentSharePercent } = scenarioOf(workbook, lowFlow).againstBaseline;
  expect(avoidedKg).toBeGreaterThan(0);
  expectFigures(
    { co2eAvoidedKg, departmentSharePercent },
    {
      co2eAvoidedKg: avoidedKg,
      departmentSharePercent: (100 * avoidedKg) / 120_000
    }
  );
});

test('there is no share of the department’s emissions where those are not given, or are 0', () => {
  for (const departmentFootprintTonnes of [null, 0]) {
    const { site } = workbook;
    const without = wholeWorkbook({ site: { ...site, departmentFootprintTonnes } });
    expect(scenarioOf(without, lowFlow).againstBaseline.departmentSharePercent).toBeNull();
  }
});

test('each agent warms by its own potential, of the cases that get it', () => {
  const scenarios = [today, { ...lowFlow, agentSwitch: { sevoflurane: 'desflurane' as const } }];
  const switched = oneCase(workbook, { row: hernia, plan: low, machine: oldMachine, agent: 'desflurane' });
  expectFigures(
    scenarioOf(wholeWorkbook({ scenarios }), lowFlow).perYear.co2eKg.agents,
    200 *
      (0.6 * ventedKg(switched, { ...ofHernia, agent: 'desflurane' }) * 2590 +
        0.4 * ventedKg(onUsual.hernia, ofHernia) * 195)
  );
});

test('own warming potentials count in place of published ones, and an agent without one keeps the newest published', () => {
  const { accounting } = workbook;
  const own = wholeWorkbook({
    accounting: { ...accounting, warmingSet: 'custom', customWarming: { sevoflurane: 1000 } }
  });
  const { agents, nitrousOxide } = scenarioOf(own, today).perYear.co2eKg;
  expectFigures(
    { agents, nitrousOxide },
    {
      agents: 200 * ventedKg(onUsual.hernia, ofHernia) * 1000,
      nitrousOxide: 200 * onUsual.hernia.nitrousOxideL * nitrousOxideKgPerL * 273
    }
  );
});

test('a constant of the user’s own takes the place of the published one', () => {
  const overridden = wholeWorkbook({
    overrides: [
      { constant: 'sevoflurane.metabolised', value: 4, unit: '%', reason: 'Measured here.' },
      { constant: 'intravenous.co2e', value: 0.8, unit: 'kg CO2e/h', reason: 'Counted here.' }
    ]
  });
  const { agents, intravenous } = scenarioOf(overridden, today).perYear.co2eKg;
  expectFigures(
    { agents, intravenous },
    {
      agents: 200 * ventedKg(onUsual.hernia, { ...ofHernia, metabolisedPercent: 4 }) * 195,
      intravenous: ((50 * 120) / 60) * 0.8
    }
  );
});

test('an absorbent of which no making is given is left out of the emissions, and that is said', () => {
  const absorbents = workbook.absorbents.map((absorbent) => ({ ...absorbent, kgCo2ePerKg: null }));
  const without = wholeWorkbook({ absorbents });
  expectFigures(scenarioOf(without, lowFlow).perYear.co2eKg.absorbent, 0);
  expect(warningsOf(without)).toEqual([
    'Making of soda lime and alkali-free is left out of the emissions: no published figure was found and none is given.'
  ]);
  expect(warningsOf(workbook)).toEqual([]);
});
