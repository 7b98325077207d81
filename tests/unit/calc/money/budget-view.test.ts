import { expect, test } from 'vitest';
import { budgetView } from '#lib/calc/money/budget-view.ts';
import { text } from '#lib/calc/money/decimal.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { accounting, appraiseCase, machine, prices, scenario } from './business-case.ts';

const viewOf = (appraisalYears: number, residualValue: 'none' | 'straight-line') => {
  const { flow } = appraiseCase(plain, {
    prices,
    accounting: { ...accounting, appraisalYears, residualValue, agentGrowthPercent: 10 },
    today: {
      scenario: { ...scenario, id: 'today', baseline: true },
      machine: { ...machine, id: 'old', units: 2, servicePerUnitPerYear: '1000' },
      used: { sevofluraneMl: 24_750 },
      monitors: '0'
    },
    then: {
      scenario: {
        ...scenario,
        unitsByYear: [1, 1],
        avoidedPurchases: [{ year: 2, units: 1, unitPrice: '4000' }]
      },
      machine: {
        ...machine,
        units: 2,
        unitPrice: '10000',
        tradeInPerUnit: '500',
        installationPerUnit: '0',
        servicePerUnitPerYear: '1500'
      },
      used: { sevofluraneMl: 4950 },
      monitors: '700'
    }
  });
  return budgetView(plain, flow).map(({ year, once, running, total }) => ({
    year,
    once: text(plain.value(once)),
    running: text(plain.value(running)),
    total: text(plain.value(total))
  }));
};

test('capital and revenue of the budget years 0 to 5, as they fall due', () => {
  // Half of 9 440 for agents less 1 000 for service in year 1, then all of it, agents growing by a tenth a year.
  expect(viewOf(10, 'straight-line').map(({ once, running, total }) => [once, running, total])).toEqual([
    ['10200', '0', '10200'],
    ['9500', '-4220', '5280'],
    ['-4000', '-9384', '-13384'],
    ['0', '-10422.4', '-10422.4'],
    ['0', '-11564.64', '-11564.64'],
    ['0', '-12821.104', '-12821.104']
  ]);
});

test('an appraisal of fewer years has fewer budget years, and what machines are worth is no cash', () => {
  const years = viewOf(3, 'straight-line');
  expect(years).toHaveLength(4);
  expect(years.at(-1)).toMatchObject({ once: '0', total: '-10422.4' });
});
