/** The ledger of emissions, and where each agent goes. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Agent, Scenario, Site } from '#lib/calc/input.ts';
import {
  co2eLineTitles,
  inventoryClasses,
  ledgerKinds,
  ledgerTitles,
  leftOutOfBoundary
} from '#lib/calc/line-names.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { oneGroup } from '../fixtures/one-group.ts';
import {
  atExhaustMl,
  expectFigures,
  hernia,
  oldMachine,
  oneCase,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const base = wholeWorkbook();
function scenariosOf(site: Partial<Site> = {}, all: Partial<Scenario> = {}) {
  return estimate(
    coreInput(
      wholeWorkbook({
        site: { ...base.site, ...site },
        scenarios: base.scenarios.map((scenario) => ({ ...scenario, ...all }))
      })
    )
  ).scenarios;
}
const sum = (parts: readonly number[]): number => parts.reduce((all, part) => all + part, 0);

test('every line has its title and its class in both standards', () => {
  expect([...ledgerKinds].sort()).toEqual(Object.keys(ledgerTitles).sort());
  for (const kind of ledgerKinds) {
    const filed = inventoryClasses[kind];
    expect(filed.class, kind).toMatch(/^(direct|energy indirect|other indirect)$/);
    // The first scope and category are direct, the second energy, all others other.
    const place = { direct: '1', 'energy indirect': '2', 'other indirect': '3' }[filed.class];
    expect(filed.ghgProtocol, kind).toMatch(new RegExp(`^scope ${place}`));
    expect(/^category (\d)$/.exec(filed.iso14064)?.[1], kind).toMatch(
      { direct: /1/, 'energy indirect': /2/, 'other indirect': /[3-6]/ }[filed.class]
    );
  }
  expect(Object.keys(co2eLineTitles).filter((line) => !ledgerKinds.some((kind) => kind === line))).toEqual([
    // Told apart there by what is made.
    'manufacture'
  ]);
});

test('each line is its activity times its factor, and those in the total make the estimate’s lines', () => {
  for (const { ledger, perYear } of scenariosOf()) {
    for (const { activity, factor, co2eKg } of ledger)
      if (activity !== null && factor !== null) expect(co2eKg).toBeCloseTo(activity * factor, 9);
      else expect(co2eKg).toBeNull();
    const { total, ...lines } = perYear.co2eKg;
    for (const [kind, kg] of Object.entries(lines))
      expect(
        sum(
          ledger
            // What regional cases emit is in the estimate's line of drugs, all that is made in one line.
            .filter(
              (line) =>
                line.kind === kind ||
                (kind === 'intravenous' && line.kind === 'regional') ||
                (kind === 'manufacture' && line.kind.startsWith('making'))
            )
            .map(({ co2eKg }) => co2eKg ?? 0)
        ),
        kind
      ).toBeCloseTo(kg, 9);
    expect(sum(ledger.filter(({ isInTotal }) => isInTotal).map(({ co2eKg }) => co2eKg ?? 0))).toBeCloseTo(
      total,
      9
    );
  }
});

test('electricity by contract and medical air are missing until they are given, and then change no other figure', () => {
  const beside = (scenario: ReturnType<typeof scenariosOf>[number] | undefined) =>
    (scenario?.ledger ?? []).filter(({ kind }) => kind === 'electricityByContract' || kind === 'medicalAir');
  const [without] = scenariosOf();
  expect(beside(without).map(({ co2eKg }) => co2eKg)).toEqual([null, null]);
  const [given] = scenariosOf({ electricityMarketKgCo2ePerKWh: 0.05, medicalAirKWhPerM3: 0.15 });
  const perYear = given?.perYear;
  expect(beside(given).map(({ co2eKg }) => co2eKg)).toEqual([
    expect.closeTo((perYear?.electricityKWh ?? NaN) * 0.05, 9),
    expect.closeTo((perYear?.airM3 ?? NaN) * 0.15 * base.site.electricityKgCo2ePerKWh, 9)
  ]);
  expect(JSON.stringify(perYear)).toBe(JSON.stringify(without?.perYear));
});

test('agent that is lost at filling is what is bought beyond the liquid used, beside the total', () => {
  const [today] = scenariosOf();
  const lost = today?.ledger.find(({ kind }) => kind === 'lostAtFilling');
  const supply = base.agents.find(({ agent }) => agent === lost?.subject);
  const year = Object.entries(today?.perYear.agents ?? {}).find(([agent]) => agent === lost?.subject)?.[1];
  const boughtMl = (year?.bottles ?? NaN) * (supply?.bottleMl ?? NaN);
  // Sevoflurane, 1.52 g/mL.
  expect(lost?.activity).toBeCloseTo(((boughtMl - (year?.liquidMl ?? NaN)) * 1.52) / 1000, 9);
  expect(lost?.isInTotal).toBe(false);
});

test.each([
  [0, null],
  [30, null],
  [30, 40],
  [100, 0],
  [100, 100]
])('delivered is metabolised, caught and vented, with %i %% captured and %s %% of it lost', (...shares) => {
  const [capturePercent, caughtLostPercent] = shares;
  for (const { agentFate, ledger } of scenariosOf({}, { capturePercent, caughtLostPercent })) {
    for (const [agent, fate] of Object.entries(agentFate)) {
      const { deliveredKg, metabolisedKg, caughtKg, ventedKg, caughtAndLostKg } = fate;
      expect(metabolisedKg + caughtKg + ventedKg).toBeCloseTo(deliveredKg, 9);
      expect(ledger.find(({ kind, subject }) => kind === 'agents' && subject === agent)?.activity).toBe(
        ventedKg
      );
      const lost = (caughtLostPercent ?? 0) / 100;
      expect(caughtAndLostKg).toBeCloseTo(lost * (caughtKg + caughtAndLostKg), 12);
      expect(caughtKg > 0).toBe(capturePercent > 0 && lost < 1);
      expect(caughtAndLostKg > 0).toBe(capturePercent > 0 && lost > 0);
    }
    expect(Object.keys(agentFate).length).toBeGreaterThan(0);
  }
});

test('capture gets what leaves by the exhaust: no leak, nothing that is taken up, nothing left in the circuit', () => {
  const [all] = scenariosOf({}, { capturePercent: 100 });
  const one = oneCase(base, { row: hernia, plan: usual, machine: oldMachine });
  const atExhaustKg = (atExhaustMl(one, { row: hernia, machine: oldMachine }) * 1.52) / 1000;
  expectFigures(all?.agentFate.sevoflurane?.caughtKg, hernia.casesPerYear * atExhaustKg);
  const outOfReachMl = 0.95 * one.takenUpMl + one.leftMl;
  expect(all?.agentFate.sevoflurane?.ventedKg).toBeGreaterThan(
    (hernia.casesPerYear * outOfReachMl * 1.52) / 1000
  );
});

test('of what is caught the share that is lost again is vented', () => {
  const [kept] = scenariosOf({}, { capturePercent: 40 });
  const [lost] = scenariosOf({}, { capturePercent: 40, caughtLostPercent: 25 });
  const before = kept?.agentFate.sevoflurane;
  expectFigures(lost?.agentFate.sevoflurane?.caughtKg, 0.75 * (before?.caughtKg ?? NaN));
  expectFigures(
    lost?.agentFate.sevoflurane?.ventedKg,
    (before?.ventedKg ?? NaN) + 0.25 * (before?.caughtKg ?? NaN)
  );
});

test('each theatre group has its own part of each agent, and all of a case group where it alone does it', () => {
  const [group] = oneGroup(3, oldMachine.id);
  const workbook = wholeWorkbook({
    theatreGroups: [group, { ...group, id: 'day', name: 'Day', theatres: 1 }],
    caseMix: [{ ...hernia, theatreGroups: { day: 25 } }]
  });
  const [today] = estimate(coreInput(workbook)).scenarios;
  const delivered = (of: Partial<Record<Agent, { deliveredKg: number }>> | undefined) =>
    of?.sevoflurane?.deliveredKg ?? NaN;
  const all = delivered(today?.agentFate);
  expect(delivered(today?.agentFateByGroup['main'])).toBeCloseTo(0.75 * all, 12);
  expect(delivered(today?.agentFateByGroup['day'])).toBeCloseTo(0.25 * all, 12);
  const alone = { ...workbook, caseMix: [{ ...hernia, theatreGroups: { day: 100 } }] };
  const [there] = estimate(coreInput(alone)).scenarios;
  expect(there?.agentFateByGroup).toEqual({ main: {}, day: there?.agentFate });
});

test('what the boundary leaves out is named', () => {
  for (const part of [/making monitors/, /spent absorbent/, /freight/])
    expect(leftOutOfBoundary.filter((each) => part.test(each))).toHaveLength(1);
});
