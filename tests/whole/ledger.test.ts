/** The ledger of emissions, and where each agent goes. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Scenario, Site } from '#lib/calc/input.ts';
import {
  co2eLineTitles,
  inventoryClasses,
  ledgerKinds,
  ledgerTitles,
  leftOutOfBoundary
} from '#lib/calc/line-names.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { wholeWorkbook } from '../fixtures/whole-workbook.ts';

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

test.each([0, 30, 100])(
  'delivered is metabolised, caught and vented, with %i %% captured',
  (capturePercent) => {
    for (const { agentFate, ledger } of scenariosOf({}, { capturePercent })) {
      for (const [agent, { deliveredKg, metabolisedKg, caughtKg, ventedKg }] of Object.entries(agentFate)) {
        expect(metabolisedKg + caughtKg + ventedKg).toBeCloseTo(deliveredKg, 9);
        expect(ledger.find(({ kind, subject }) => kind === 'agents' && subject === agent)?.activity).toBe(
          ventedKg
        );
        if (capturePercent === 100) expect(ventedKg).toBe(0);
        if (capturePercent === 0) expect(caughtKg).toBe(0);
      }
      expect(Object.keys(agentFate).length).toBeGreaterThan(0);
    }
  }
);

test('what the boundary leaves out is named', () => {
  for (const part of [/making monitors/, /spent absorbent/, /freight/])
    expect(leftOutOfBoundary.filter((each) => part.test(each))).toHaveLength(1);
});
