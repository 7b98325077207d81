/**
 * Monitors that the standard requires and theatres lack: what a scenario pays for, and the lists. The standard is the
 * Japanese one; at 1 L/min or less the low-flow layer asks for more. Three theatres.
 */
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { MonitorItem, Scenario } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  hip,
  likeTheOld,
  lowFlow,
  neck,
  oldMachine,
  scenarioOf,
  today,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing as coming, keeping, oneGroup } from '../fixtures/one-group.ts';

const prices: Readonly<Partial<Record<MonitorItem, string>>> = {
  'pulse-oximetry': '900',
  ecg: '800',
  'non-invasive-blood-pressure': '700',
  capnography: '2600',
  temperature: '350',
  neuromuscular: '1900',
  'inspired-oxygen': '1200',
  'agent-concentration': '3900'
};

/** Every theatre has every monitor, but of those named here. */
const stockBut = (
  lacking: Readonly<Partial<Record<MonitorItem, number>>>
): Pick<Workbook, 'theatreGroups' | 'monitorPrices'> => {
  const items = Object.entries(prices) as [MonitorItem, string][];
  return {
    theatreGroups: oneGroup(3, 'old', {
      monitors: Object.fromEntries(items.map(([item]) => [item, lacking[item] ?? 3]))
    }),
    monitorPrices: items.map(([item, unitPrice]) => ({ item, unitPrice }))
  };
};
const withStock = (
  lacking: Readonly<Partial<Record<MonitorItem, number>>>,
  changes: Partial<Workbook> = {}
): Workbook => wholeWorkbook({ ...stockBut(lacking), ...changes });
const investmentIn = (workbook: Workbook, scenario: Scenario): string =>
  scenarioOf(workbook, scenario).againstBaseline.investment;

describe('monitors that a scenario pays for', () => {
  test('one that only its low flow requires, for each theatre that lacks it', () => {
    expectFigures(investmentIn(withStock({ 'agent-concentration': 1 }), lowFlow), 2 * 3900);
  });

  test('none that today requires and lacks as well', () => {
    expectFigures(investmentIn(withStock({ capnography: 1, ecg: 2 }), lowFlow), 0);
  });

  test('both at once: what today lacks is left out, and what the low flow adds is not', () => {
    expectFigures(investmentIn(withStock({ capnography: 1, 'inspired-oxygen': 0 }), lowFlow), 3 * 1200);
  });

  test('the theatres whose machine brought it, where the ones that come do not', () => {
    const buying: Scenario = { ...lowFlow, id: 'buying', ...coming('like-the-old', 'low', { byYear: [2] }) };
    const free = { unitPrice: '0', tradeInPerUnit: '0', installationPerUnit: '0' };
    const workbook = withStock(
      { capnography: 1 },
      {
        scenarios: [today, buying],
        machines: [
          { ...oldMachine, monitors: ['capnography'] },
          { ...likeTheOld, ...free, monitors: [] }
        ]
      }
    );
    // Two theatres need one from elsewhere, and one stands there.
    expectFigures(investmentIn(workbook, buying), 2600);
  });

  test('none that its machines bring to every theatre', () => {
    const buying: Scenario = { ...lowFlow, id: 'buying', ...coming('like-the-old', 'low') };
    const free = { unitPrice: '0', tradeInPerUnit: '0', installationPerUnit: '0' };
    const workbook = withStock(
      { 'agent-concentration': 0 },
      {
        scenarios: [today, buying],
        machines: [oldMachine, { ...likeTheOld, ...free, monitors: ['agent-concentration'] }]
      }
    );
    expectFigures(investmentIn(workbook, buying), 0);
  });

  test('today itself buys none', () => {
    expectFigures(investmentIn(withStock({ capnography: 1 }), today), 0);
  });

  test('none that only groups without a case in the year would require', () => {
    const caseMix = [{ ...hernia, casesPerYear: 0 }, neck, hip];
    expectFigures(investmentIn(withStock({ 'agent-concentration': 0 }, { caseMix }), lowFlow), 0);
  });
});

describe('required monitors that theatres lack', () => {
  test('each counts once, however many rules ask for it; those that nobody can tell of do not count', () => {
    // The standard and the low-flow layer both ask for capnography.
    const workbook = withStock({ capnography: 1, 'inspired-oxygen': 0 });
    expect(scenarioOf(workbook, today).monitoringGaps).toBe(1);
    expect(scenarioOf(workbook, lowFlow).monitoringGaps).toBe(2);
    expect(scenarioOf(wholeWorkbook({ monitorPrices: [] }), lowFlow).monitoringGaps).toBe(0);
  });

  test('a need names its theatres, their cost, and the groups that trigger it', () => {
    const workbook = withStock({ capnography: 1 });
    const need = scenarioOf(workbook, lowFlow).monitoring.find(({ rule }) => rule === 'low-flow.capnography');
    expect(need).toMatchObject({ theatresMissing: 2, cost: '5200', why: ['hernia', 'neck'] });
    const agent = scenarioOf(workbook, lowFlow).monitoring.find(
      ({ rule }) => rule === 'low-flow.agent-concentration'
    );
    expect(agent).toMatchObject({ theatresMissing: 0, cost: '0', why: ['hernia'] });
    const ecg = scenarioOf(workbook, today).monitoring.find(({ rule }) => rule === 'jsa.ecg');
    expect(ecg).toMatchObject({ why: ['hernia', 'neck', 'hip'] });
    expect(scenarioOf(workbook, today).monitoring.filter(({ layer }) => layer === 'low-flow')).toEqual([]);
  });
});

describe('the list over all scenarios', () => {
  const listOf = (workbook: Workbook) => estimate(coreInput(workbook)).monitoring;

  test('stands by level, the strictest first', () => {
    const levels = listOf(withStock({})).map(({ level }) => level);
    const order = ['required', 'caution', 'recommended', 'suggested', 'available'];
    expect(new Set(levels)).toEqual(new Set(['required', 'caution', 'recommended']));
    expect(levels).toEqual([...levels].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    const [first] = levels;
    expect(first).toBe('required');
  });

  test('names each rule once, with all groups that trigger it in any scenario', () => {
    const closedNeck: Scenario = {
      ...lowFlow,
      id: 'neck',
      ...keeping('old', 'usual'),
      flowPlanByCase: { neck: 'low' }
    };
    const closedHernia: Scenario = {
      ...lowFlow,
      id: 'hernia',
      ...keeping('old', 'usual'),
      flowPlanByCase: { hernia: 'low' }
    };
    const list = listOf(withStock({}, { scenarios: [today, closedNeck, closedHernia] }));
    const capnography = list.filter(({ rule }) => rule === 'low-flow.capnography');
    expect(capnography.map(({ why }) => why)).toEqual([['neck', 'hernia']]);
    expect(new Set(list.map(({ rule }) => rule)).size).toBe(list.length);
  });

  test('tells the most that any scenario lacks', () => {
    const bringing: Scenario = { ...lowFlow, id: 'bringing', ...coming('closed', 'low') };
    const machines = [oldMachine, { ...closedMachine, monitors: ['capnography' as const] }];
    for (const scenarios of [
      [today, lowFlow, bringing],
      [today, bringing, lowFlow]
    ]) {
      const list = listOf(withStock({ capnography: 1 }, { scenarios, machines }));
      const capnography = list.find(({ rule }) => rule === 'low-flow.capnography');
      expect(capnography).toMatchObject({ theatresMissing: 2, cost: '5200' });
    }
  });

  test('keeps apart what only the patient on the day can tell', () => {
    // A supraglottic airway leaves open whether a ventilator is used.
    const mask = { ...hernia, id: 'mask', neuromuscularBlock: false, airway: 'supraglottic' as const };
    const list = listOf(withStock({}, { caseMix: [mask] }));
    expect(list.find(({ rule }) => rule === 'jsa.exhaled-volume')).toMatchObject({
      applies: 'when-triggered',
      why: ['mask']
    });
  });
});
