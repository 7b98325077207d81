/** Emissions for a case, an hour and a MAC-hour, added up from the cases of a small workbook. */
import { expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  expectFigures,
  hernia,
  hip,
  lowFlow,
  neck,
  today,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const scenariosOf = (changes: Partial<Workbook> = {}) => {
  const { scenarios } = estimate(coreInput(wholeWorkbook(changes)));
  const [now, low] = scenarios;
  if (now === undefined || low === undefined) throw new Error('There are two scenarios.');
  return { now, low };
};
const macHoursOf = ({ cases }: ReturnType<typeof scenariosOf>['now']): number =>
  cases.find(({ caseId }) => caseId === hernia.id)?.macHours ?? NaN;

test('a year is divided by all its cases and hours, whatever their technique, with every line of its total', () => {
  const cases = hernia.casesPerYear + neck.casesPerYear + hip.casesPerYear;
  const hours =
    (hernia.casesPerYear * hernia.minutes +
      neck.casesPerYear * neck.minutes +
      hip.casesPerYear * hip.minutes) /
    60;
  const { now, low } = scenariosOf();
  for (const { intensity, perYear } of [now, low])
    expectFigures(
      { a: intensity.year.co2eKgPerCase, b: intensity.year.co2eKgPerHour },
      { a: perYear.co2eKg.total / cases, b: perYear.co2eKg.total / hours }
    );
  expect(now.perYear.co2eKg.nitrousOxideLost).toBeGreaterThan(0);
});

test('a MAC-hour is of agents alone, and of the cases that follow and those that do not', () => {
  const { now, low } = scenariosOf();
  const n = hernia.casesPerYear;
  const share = lowFlow.adoptionPercent / 100;
  expectFigures(
    [now.intensity.year.agentCo2eKgPerMacHour, low.intensity.year.agentCo2eKgPerMacHour],
    [
      now.perYear.co2eKg.agents / (n * macHoursOf(now)),
      low.perYear.co2eKg.agents / (n * (share * macHoursOf(low) + (1 - share) * macHoursOf(now)))
    ]
  );
});

test('each agent stands by itself, over the cases that it is given in', () => {
  const other = { ...hernia, id: 'other', casesPerYear: 30, agent: 'desflurane' as const };
  const { now } = scenariosOf({ caseMix: [hernia, other, neck] });
  const { sevoflurane, desflurane } = now.intensity.agents;
  const kgOf = (agent: string): number =>
    now.ledger.find(({ kind, subject }) => kind === 'agents' && subject === agent)?.co2eKg ?? NaN;
  expectFigures(
    [sevoflurane?.co2eKgPerCase, desflurane?.co2eKgPerCase, desflurane?.co2eKgPerHour],
    [kgOf('sevoflurane') / 200, kgOf('desflurane') / 30, kgOf('desflurane') / 30]
  );
});

test('a case group is one of its cases on the scenario’s own plan, whatever share follows it', () => {
  const { low } = scenariosOf();
  for (const { caseId, co2eKg, macHours } of low.cases) {
    const row = [hernia, neck, hip].find(({ id }) => id === caseId);
    const of = low.intensity.cases[caseId];
    expect(of?.co2eKgPerCase).toBe(co2eKg);
    expect(of?.co2eKgPerHour).toBeCloseTo(co2eKg / ((row?.minutes ?? NaN) / 60), 12);
    if (macHours === 0) expect(of?.agentCo2eKgPerMacHour).toBeNull();
    else expect(of?.agentCo2eKgPerMacHour).toBeLessThan(co2eKg / macHours);
  }
});

test('the change is against today, which has none', () => {
  const { now, low } = scenariosOf();
  expect(now.intensity.changePercent).toEqual({
    co2eKgPerCase: 0,
    co2eKgPerHour: 0,
    agentCo2eKgPerMacHour: 0
  });
  const [before, after] = [now.intensity.year.co2eKgPerCase ?? NaN, low.intensity.year.co2eKgPerCase ?? NaN];
  expect(low.intensity.changePercent.co2eKgPerCase).toBeCloseTo(100 * (after / before - 1), 10);
  expect(after).toBeLessThan(before);
});

test('without volatile cases there is no figure for a MAC-hour, and without cases there is none at all', () => {
  const { year } = scenariosOf({ caseMix: [neck, hip], scenarios: [today, lowFlow] }).low.intensity;
  expect(year.agentCo2eKgPerMacHour).toBeNull();
  expect(year.co2eKgPerCase).not.toBeNull();
  const none = scenariosOf({ caseMix: [] }).low.intensity;
  expect([none.year, none.changePercent]).toEqual([
    { co2eKgPerCase: null, co2eKgPerHour: null, agentCo2eKgPerMacHour: null },
    { co2eKgPerCase: null, co2eKgPerHour: null, agentCo2eKgPerMacHour: null }
  ]);
});
