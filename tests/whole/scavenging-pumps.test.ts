/** Scavenging pumps: what they draw today, and what hours that a scenario takes off are worth. No machine is needed. */
import { expect, test } from 'vitest';
import { levers } from '#lib/calc/input.ts';
import type { Scenario, TheatreGroup } from '#lib/calc/input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { bringing, oneGroup } from '../fixtures/one-group.ts';
import {
  expectFigures,
  hernia,
  oldMachine,
  scenarioOf,
  today,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const off: Scenario = {
  ...today,
  id: 'off',
  name: 'Off at night',
  baseline: false,
  scavengingPumpHoursPerWeek: 60
};
const given = { scavengingPumpKW: 1.5, scavengingPumpHoursPerWeek: 168 };
const notGiven = { scavengingPumpKW: null, scavengingPumpHoursPerWeek: null };
const withPumps = (
  group: Partial<TheatreGroup> = given,
  { scenario = {}, ...more }: { scenario?: Partial<Scenario> } & Partial<Workbook> = {}
): Workbook =>
  wholeWorkbook({
    theatreGroups: oneGroup(3, oldMachine.id, group),
    scenarios: [today, { ...off, ...scenario }],
    ...more
  });
const caution =
  'Scavenging pumps must run whenever anaesthetic gas is given, in emergencies at any hour too; local rules and the hospital’s engineers decide. They run for fewer hours in “Off at night”.';

/** Hours of 3 theatres' machines of 90 W, the regional cases aside. */
const machinesKWh = (((200 * 60 + 50 * 120) / 60) * 90) / 1000;
const pumpsKWh = (hoursPerWeek: number) => (3 * 1.5 * hoursPerWeek * 365) / 7;

test('what they draw joins the electricity of today and of the scenario, its money and its emissions', () => {
  const workbook = withPumps();
  for (const [scenario, hours] of [
    [today, 168],
    [off, 60]
  ] as const) {
    const { electricityKWh, cost, co2eKg } = scenarioOf(workbook, scenario).perYear;
    const kWh = machinesKWh + pumpsKWh(hours);
    expectFigures(
      { electricityKWh, cost: cost.electricity, co2eKg: co2eKg.electricity },
      { electricityKWh: kWh, cost: kWh * 0.25, co2eKg: kWh * 0.3 }
    );
  }
  const { ledger } = scenarioOf(workbook, off);
  expectFigures(ledger.find(({ kind }) => kind === 'electricity')?.activity, machinesKWh + pumpsKWh(60));
});

test('hours that are taken off are a lever of their own, and need no machine', () => {
  const { attribution, againstBaseline, withoutMachine } = scenarioOf(withPumps(), off);
  const savedKWh = pumpsKWh(168) - pumpsKWh(60);
  expectFigures(againstBaseline.yearlySaving, savedKWh * 0.25);
  expectFigures(againstBaseline.co2eAvoidedKg, savedKWh * 0.3);
  expectFigures(againstBaseline.investment, 0);
  expect(withoutMachine).toBeNull();
  expect(attribution?.map(({ lever, yearlySaving }) => [lever, yearlySaving])).toEqual([
    ['scavenging', againstBaseline.yearlySaving]
  ]);
});

test('each group has its own power and hours, and one of which nothing is given counts for nothing', () => {
  const [group] = oneGroup(3, oldMachine.id, given);
  const day = { ...group, id: 'day', name: 'Day', theatres: 2, scavengingPumpKW: 0.4 };
  const other = { ...group, id: 'other', name: 'Other', theatres: 4, scavengingPumpKW: null };
  const groups = [group, { ...day, scavengingPumpHoursPerWeek: 50 }, { ...other, ...notGiven }];
  const { electricityKWh } = scenarioOf(withPumps({}, { theatreGroups: groups }), off).perYear;
  expectFigures(electricityKWh, machinesKWh + pumpsKWh(60) + (2 * 0.4 * 50 * 365) / 7);
});

test('where nothing is given no figure changes by a bit, and a scenario that changes the hours says so', () => {
  const none = withPumps(notGiven);
  const before = wholeWorkbook({ theatreGroups: oneGroup(3, oldMachine.id) });
  expect(JSON.stringify(scenarioOf(none, off).perYear)).toBe(
    JSON.stringify(scenarioOf(before, today).perYear)
  );
  expect(warningsOf(none)).toEqual([
    '“Off at night” changes the hours of scavenging pumps, and what they draw is given for no theatres: nothing is counted of it. Theatres has the cells.'
  ]);
});

test.each([
  [{ scavengingPumpKW: 1.5, scavengingPumpHoursPerWeek: null }, 'their power is given, their hours are not'],
  [{ scavengingPumpKW: null, scavengingPumpHoursPerWeek: 168 }, 'their hours are given, their power is not']
])('with one of the two cells alone nothing is counted, and that is said: %j', (group, what) => {
  const half = withPumps(group, { scenario: { scavengingPumpHoursPerWeek: null } });
  expectFigures(scenarioOf(half, today).perYear.electricityKWh, machinesKWh);
  expect(warningsOf(half)).toEqual([`What the scavenging pumps of “Theatres” draw is not counted: ${what}.`]);
});

test('the hours of a scenario come with the caution that pumps run whenever gas is given', () => {
  expect(warningsOf(withPumps())).toEqual([caution]);
  expect(warningsOf(withPumps(given, { scenario: { scavengingPumpHoursPerWeek: null } }))).toEqual([]);
});

test('fewer hours than the cases take are told beside the hours of the cases', () => {
  // 200 cases of an hour against 3 theatres for 60 hours a week, then for one.
  const caseMix = [hernia];
  expect(warningsOf(withPumps(given, { caseMix }))).toEqual([caution]);
  expect(warningsOf(withPumps(given, { caseMix, scenario: { scavengingPumpHoursPerWeek: 1 } }))).toEqual([
    caution,
    'In “Theatres” the cases take 200 hours a year, and under “Off at night” the pumps run 156: gas would be given while they are off.'
  ]);
});

test('a scenario takes hours off and adds none', () => {
  const workbook = withPumps({ ...given, scavengingPumpHoursPerWeek: 50 });
  expectFigures(scenarioOf(workbook, off).perYear.electricityKWh, machinesKWh + pumpsKWh(50));
  expect(warningsOf(workbook)).toEqual([
    caution,
    '“Off at night” lets scavenging pumps run 60 hours a week, and in “Theatres” they run 50 today: they are taken to run no longer than that.'
  ]);
});

test('a scenario that pulls every lever there is is taken apart, and its parts add up', () => {
  const everything: Scenario = {
    ...off,
    ...bringing('closed', 'low'),
    agentSwitch: { sevoflurane: 'desflurane' },
    intravenousPercentByCase: { [hernia.id]: 20 },
    adoptionPercent: 80,
    adoptionWithoutMachinePercent: 50,
    capturePercent: 70,
    nitrousOxideSupply: 'cylinders'
  };
  const workbook = withPumps(given, { scenarios: [today, everything] });
  const { attribution, attributionFailed, againstBaseline } = scenarioOf(workbook, everything);
  expect(attributionFailed).toBeNull();
  expect(attribution?.map(({ lever }) => lever)).toEqual([...levers]);
  expectFigures(
    attribution?.reduce((sum, { co2eAvoidedKg }) => sum + co2eAvoidedKg, 0),
    againstBaseline.co2eAvoidedKg
  );
});
