/** Bottles bought: what the estimate is held against, and scaled to where the user asks for it. */
import { describe, expect, test } from 'vitest';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { AgentSupply, Scenario } from '#lib/calc/input.ts';
import { recorder } from '#lib/calc/working/recorder.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import {
  atExhaustMl,
  expectFigures,
  hernia,
  low,
  lowFlow,
  oldMachine,
  oneCase,
  scenarioOf,
  today,
  usual,
  warningsOf,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const buying = (of: Partial<AgentSupply>, changes: Partial<Workbook> = {}): Workbook =>
  wholeWorkbook({
    agents: wholeWorkbook().agents.map((supply) =>
      supply.agent === 'sevoflurane' ? { ...supply, ...of } : supply
    ),
    ...changes
  });
const onUsual = oneCase(wholeWorkbook(), { row: hernia, plan: usual, machine: oldMachine });
const onLow = oneCase(wholeWorkbook(), { row: hernia, plan: low, machine: oldMachine });
const estimatedMl = 200 * onUsual.liquidMl;
const usableMl = 250 * 0.98;

test('the estimate of today is divided by the usable liquid bought', () => {
  const { sevoflurane } = scenarioOf(buying({ bottlesBoughtPerYear: 10 }), today).perYear.agents;
  expectFigures(sevoflurane?.estimateOverPurchase, estimatedMl / (10 * usableMl));
});

test('every scenario tells the quotient of today, whatever it uses itself', () => {
  const { sevoflurane } = scenarioOf(buying({ bottlesBoughtPerYear: 10 }), lowFlow).perYear.agents;
  expectFigures(sevoflurane?.estimateOverPurchase, estimatedMl / (10 * usableMl));
});

test('purchases that are given scale nothing unless the user asks for it', () => {
  const { sevoflurane } = scenarioOf(buying({ bottlesBoughtPerYear: 10 }), today).perYear.agents;
  expectFigures(sevoflurane?.liquidMl, estimatedMl);
});

describe('bottles used elsewhere', () => {
  const elsewhere = { bottlesBoughtPerYear: 10, bottlesUsedElsewherePerYear: 4 } as const;

  test('the estimate is divided by what is left for the theatres', () => {
    const { sevoflurane } = scenarioOf(buying(elsewhere), today).perYear.agents;
    expectFigures(sevoflurane?.estimateOverPurchase, estimatedMl / (6 * usableMl));
  });

  test('scaled to purchases, today uses what is left for the theatres', () => {
    const { sevoflurane } = scenarioOf(buying({ ...elsewhere, scaleToPurchases: true }), today).perYear
      .agents;
    expectFigures(sevoflurane?.liquidMl, 6 * usableMl);
  });

  test('the working names both cells', () => {
    const working = explainer(
      coreInput(buying(elsewhere)),
      recorder
    )(`${today.id}.perYear.agents.sevoflurane.estimateOverPurchase`);
    expect(JSON.stringify(working)).toContain('agents.sevoflurane.bottlesUsedElsewherePerYear');
  });

  test.each([10, 12])('%s of 10: nothing is left to compare with, and that is said', (used) => {
    const none = buying({ ...elsewhere, bottlesUsedElsewherePerYear: used, scaleToPurchases: true });
    const { sevoflurane } = scenarioOf(none, today).perYear.agents;
    expect(sevoflurane?.estimateOverPurchase).toBeNull();
    expectFigures(sevoflurane?.liquidMl, estimatedMl);
    expect(warningsOf(none)).toEqual([
      `All the sevoflurane that was bought is said to be used elsewhere (${used} of 10 bottles), so today’s use is compared with no purchases and not scaled.`
    ]);
  });

  test('that purchases are met is told by what is left for the theatres', () => {
    const met = buying({
      bottlesBoughtPerYear: 4 + estimatedMl / usableMl,
      bottlesUsedElsewherePerYear: 4,
      scaleToPurchases: true
    });
    expect(warningsOf({ ...met, referenceSet: '2026-2' })).toContain(
      'The use of sevoflurane is scaled in every scenario so that today’s meets the purchases.'
    );
  });
});

describe('scaled to purchases', () => {
  const workbook = buying({ bottlesBoughtPerYear: 10, scaleToPurchases: true });
  const ratio = estimatedMl / (10 * usableMl);

  test('today uses what was bought', () => {
    const { sevoflurane } = scenarioOf(workbook, today).perYear.agents;
    expectFigures(sevoflurane, {
      liquidMl: 10 * usableMl,
      bottles: 10,
      cost: 10 * 118,
      estimateOverPurchase: ratio
    });
  });

  test('a scenario uses its estimate divided by today’s quotient, in both its parts', () => {
    const { sevoflurane } = scenarioOf(workbook, lowFlow).perYear.agents;
    const liquidMl = (200 * (0.6 * onLow.liquidMl + 0.4 * onUsual.liquidMl)) / ratio;
    expectFigures(sevoflurane, {
      liquidMl,
      bottles: liquidMl / usableMl,
      cost: (liquidMl * 118) / usableMl,
      estimateOverPurchase: ratio
    });
  });

  test('what patients take up stays the model’s own: emissions are of the scaled liquid less that', () => {
    const kgOf = (one: typeof onLow) => {
      const caughtMl = 0.3 * atExhaustMl(one, { row: hernia, machine: oldMachine });
      return (((one.liquidMl - caughtMl) / ratio - 0.05 * one.takenUpMl) * 1.52) / 1000;
    };
    expectFigures(
      scenarioOf(workbook, lowFlow).perYear.co2eKg.agents,
      200 * (0.6 * kgOf(onLow) + 0.4 * kgOf(onUsual)) * 195
    );
  });

  test('with mass kept, what leaves by the exhaust is scaled as the spill is, and capture gets its share', () => {
    const kept = { ...workbook, referenceSet: '2026-2' };
    const one = oneCase(kept, { row: hernia, plan: usual, machine: oldMachine });
    const factor = 1 + (10 * usableMl - 200 * one.liquidMl) / (200 * one.spilledMl);
    const caughtKg = (of: Workbook) => scenarioOf(of, today).agentFate.sevoflurane?.caughtKg ?? NaN;
    const asEstimated = buying({ bottlesBoughtPerYear: 10 }, { referenceSet: '2026-2' });
    expect(Math.abs(factor - 1)).toBeGreaterThan(0.1);
    expectFigures(caughtKg(kept), factor * caughtKg(asEstimated));
  });

  test('an agent that today does not use is not scaled', () => {
    const switching: Scenario = { ...lowFlow, agentSwitch: { sevoflurane: 'desflurane' } };
    const { desflurane } = scenarioOf({ ...workbook, scenarios: [today, switching] }, switching).perYear
      .agents;
    const one = oneCase(workbook, { row: hernia, plan: low, machine: oldMachine, agent: 'desflurane' });
    expectFigures(desflurane?.liquidMl, 200 * 0.6 * one.liquidMl);
    expect(desflurane?.estimateOverPurchase).toBeNull();
  });

  test('that it is scaled is said', () => {
    expect(
      warningsOf(buying({ bottlesBoughtPerYear: estimatedMl / usableMl, scaleToPurchases: true }))
    ).toEqual(['The use of sevoflurane is scaled in every scenario so that today’s meets the purchases.']);
  });

  test('without purchases nothing is scaled, and that is said', () => {
    const none = buying({ bottlesBoughtPerYear: null, scaleToPurchases: true });
    expectFigures(scenarioOf(none, today).perYear.agents.sevoflurane?.liquidMl, estimatedMl);
    expect(warningsOf(none)).toEqual([
      'sevoflurane is to be scaled to purchases, but no purchases are given; it is not scaled.'
    ]);
  });
});

describe('a reader is told where the estimate is far from what was bought', () => {
  const boughtSoThat = (ratio: number) =>
    warningsOf(buying({ bottlesBoughtPerYear: estimatedMl / (ratio * usableMl) }));

  test.each([0.71, 1, 1.19])('not where it is %s times as much', (ratio) => {
    expect(boughtSoThat(ratio)).toEqual([]);
  });

  test('below 0.7: flows above the plan, or cases missing', () => {
    const [warning, ...others] = boughtSoThat(0.69);
    expect(others).toEqual([]);
    expect(warning).toMatch(
      /^Today’s estimate of sevoflurane is 69 % of what was bought\. Usual causes: flows or dial settings above the plan, cases missing/
    );
  });

  test('above 1.2: flows below the plan, or too many cases', () => {
    const [warning, ...others] = boughtSoThat(1.21);
    expect(others).toEqual([]);
    expect(warning).toMatch(
      /^Today’s estimate of sevoflurane is 121 % of what was bought\. Usual causes: flows below the plan, too many cases/
    );
  });
});
