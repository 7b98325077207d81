/** Today's use beside what was bought, added up from the cases of a small workbook. */
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { AgentSupply } from '#lib/calc/input.ts';
import { pipeLosses } from '#lib/calc/reference/pipe-losses.ts';
import { likelyCauses } from '#lib/calc/reference/reconciliation-practice.ts';
import { findingOf, reconciliationFindings } from '#lib/calc/year/reconciliation.ts';
import {
  findingInWords,
  nitrousOxideInWords,
  pipeLossesInWords
} from '#lib/sheets/emissions/reconciliation-words.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import {
  expectFigures,
  hernia,
  nitrousOxideKgPerL,
  oldMachine,
  oneCase,
  usual,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';

const base = wholeWorkbook();
const use = oneCase(base, { row: hernia, plan: usual, machine: oldMachine });
const estimatedMl = hernia.casesPerYear * use.liquidMl;
const usedKg = hernia.casesPerYear * use.nitrousOxideL * nitrousOxideKgPerL;

const reconciled = ({
  boughtKg = 300,
  ...supply
}: Partial<AgentSupply> & { boughtKg?: number | null } = {}) =>
  estimate(
    coreInput(
      wholeWorkbook({
        agents: base.agents.map((each) => (each.agent === 'sevoflurane' ? { ...each, ...supply } : each)),
        gases: { ...base.gases, nitrousOxideBoughtKgPerYear: boughtKg }
      })
    )
  ).reconciliation;
const sevofluraneOf = (supply: Partial<AgentSupply>) => reconciled(supply).agents.sevoflurane;

describe('an agent', () => {
  test('is told with the usable liquid for the theatres, the estimate and their quotient', () => {
    const purchasedMl = (60 - 10) * 250 * 0.98;
    expectFigures(sevofluraneOf({ bottlesBoughtPerYear: 60, bottlesUsedElsewherePerYear: 10 }), {
      purchasedMl,
      estimatedMl,
      estimateOverPurchase: estimatedMl / purchasedMl,
      finding: findingOf(estimatedMl / purchasedMl)
    });
  });

  test('is told by the model’s own estimate, where use is scaled to the purchases as well', () => {
    const scaled = sevofluraneOf({ bottlesBoughtPerYear: 60, scaleToPurchases: true });
    expectFigures(scaled?.estimatedMl, estimatedMl);
  });

  test('without purchases is not given, and never 0', () => {
    expect(sevofluraneOf({})).toMatchObject({
      purchasedMl: null,
      estimateOverPurchase: null,
      finding: 'not-given'
    });
  });

  test('that is bought and given in no case is said to be so', () => {
    const desflurane = estimate(
      coreInput(wholeWorkbook({ agents: base.agents.map((each) => ({ ...each, bottlesBoughtPerYear: 5 })) }))
    ).reconciliation.agents.desflurane;
    expect(desflurane).toMatchObject({ estimatedMl: null, estimateOverPurchase: null, finding: 'not-used' });
  });

  test('of which nothing is left for the theatres is compared with nothing', () => {
    expect(sevofluraneOf({ bottlesBoughtPerYear: 6, bottlesUsedElsewherePerYear: 6 })).toMatchObject({
      purchasedMl: 0,
      estimateOverPurchase: null,
      finding: 'all-elsewhere'
    });
  });
});

describe('a finding', () => {
  test.each([
    [0.69, 'far-below'],
    [0.7, 'agrees'],
    [1, 'agrees'],
    [1.01, 'more-than-bought'],
    [1.2, 'more-than-bought'],
    [1.21, 'far-above']
  ] as const)('of %d is %s', (ratio, finding) => {
    expect(findingOf(ratio)).toBe(finding);
  });

  test('warns wherever less was bought than is used, and names the usual causes', () => {
    const warned = reconciliationFindings.filter((finding) => findingInWords(finding).isWarning);
    expect(warned).toEqual(['all-elsewhere', 'more-than-bought', 'far-above']);
    expect(findingInWords('far-above').sentence).toContain(likelyCauses.moreUsed);
    expect(findingInWords('far-below').sentence).toContain(likelyCauses.lessUsed);
    for (const finding of reconciliationFindings)
      expect(findingInWords(finding).sentence).toMatch(/^[A-Z].*\.$/);
  });
});

describe('nitrous oxide', () => {
  test('that was bought and not used is lost, with its share of what was bought', () => {
    expectFigures(reconciled().nitrousOxide, {
      boughtKg: 300,
      usedKg,
      lostKg: 300 - usedKg,
      lostPercent: (100 * (300 - usedKg)) / 300
    });
  });

  test('without purchases is used, and its loss is not given', () => {
    const { nitrousOxide } = reconciled({ boughtKg: null });
    expectFigures(nitrousOxide, { boughtKg: null, usedKg, lostKg: null, lostPercent: null });
    expect(nitrousOxideInWords(nitrousOxide).sentence).toMatch(/not 0/);
  });

  test('of which less was bought than is used warns, and none is lost', () => {
    const { nitrousOxide } = reconciled({ boughtKg: usedKg / 2 });
    expect(nitrousOxide.lostKg).toBe(0);
    expect(nitrousOxideInWords(nitrousOxide)).toEqual({
      sentence: expect.stringContaining(likelyCauses.moreNitrousOxideUsed) as string,
      isWarning: true
    });
  });

  test('of which none was bought has no share', () => {
    expect(reconciled({ boughtKg: 0 }).nitrousOxide.lostPercent).toBeNull();
  });
});

test('each published share of pipes stands with its source', () => {
  expect(pipeLosses.length).toBe(3);
  for (const { lost, source } of pipeLosses) {
    expect(pipeLossesInWords).toContain(lost);
    expect(pipeLossesInWords).toContain(source.doi ?? source.title);
  }
});
