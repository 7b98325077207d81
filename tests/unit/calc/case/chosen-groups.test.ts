/** The set of MAC and the group of solubilities that a workbook chooses: what they change, and where they do not hold. */
import { describe, expect, test } from 'vitest';
import { modelCase } from '#lib/calc/case/case-model.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import type { CaseConditions } from '#lib/calc/case/conditions.ts';
import { modelErrors } from '#lib/calc/published/model-error.ts';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { referenceSet2026Third } from '#lib/calc/reference/reference-set-2026-3.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { caseOf, under } from '../../../fixtures/circle-cases.ts';

const held = [{ vaporiser: 'hold', dialPercent: null, minutes: null, flowLPerMin: 1 }] as const;
const of = (conditions: Partial<CaseConditions> = {}, reference = referenceSet2026Third) => ({
  ...under(caseOf({ agent: 'sevoflurane' }, held), conditions),
  reference
});
/** One MAC, % of one atmosphere. */
const macOf = (...given: Parameters<typeof of>): number =>
  100 * plain.value(modelCase(plain, of(...given)).agent!.macFraction);
const notHeld = (...given: Parameters<typeof of>): readonly string[] =>
  estimateCase(plain, of(...given))
    .warnings.filter(({ code }) => code === 'chosen-group-not-held')
    .map(({ sentence }) => sentence);

describe('the set of MAC', () => {
  test('is Mapleson’s by default: 1.8 % sevoflurane at 40 years', () => {
    expect(macOf()).toBeCloseTo(1.8, 10);
    expect(notHeld()).toEqual([]);
  });

  test('by the label is 2.1 % sevoflurane at 40 years, and halves from 20 to 80', () => {
    const label = { macSet: 'sevoflurane-label' } as const;
    expect(macOf(label)).toBeCloseTo(2.1, 10);
    expect(macOf({ ...label, ageYears: 80 }) / macOf({ ...label, ageYears: 20 })).toBeCloseTo(0.5, 2);
    expect(notHeld(label)).toEqual([]);
  });

  test('by the label says nothing of another agent, and the case says so', () => {
    const given = { macSet: 'sevoflurane-label', agent: 'isoflurane' } as const;
    expect(macOf(given)).toBe(macOf({ agent: 'isoflurane' }));
    expect(notHeld(given)).toEqual([
      'The chosen set of MAC is not used, as it has none for isoflurane at 40 years: computed with MAC by Mapleson 1996.'
    ]);
  });

  test.each([30, 42, 55])('of the textbook is one figure at %i years, no function of age', (ageYears) => {
    expect(macOf({ macSet: 'textbook', agent: 'desflurane', ageYears })).toBeCloseTo(6, 10);
    expect(notHeld({ macSet: 'textbook', agent: 'desflurane', ageYears })).toEqual([]);
  });

  test.each([29, 56])('of the textbook does not hold at %i years: Mapleson’s stands in', (ageYears) => {
    const given = { macSet: 'textbook', agent: 'desflurane', ageYears } as const;
    expect(macOf(given)).toBe(macOf({ agent: 'desflurane', ageYears }));
    expect(notHeld(given)).toHaveLength(1);
  });

  test('of the textbook counts nitrous oxide by its own figure', () => {
    const target = (macSet: CaseConditions['macSet']) =>
      modelCase(plain, of({ macSet, ageYears: 30, nitrousOxidePercent: 52 })).agent!.circle.targetFraction;
    expect(target('textbook')).toBeCloseTo((1 - 0.52 / 1.04) * 0.0185, 10);
    expect(target('mapleson')).not.toBeCloseTo(target('textbook'), 4);
  });
});

describe('the group of solubilities', () => {
  const bloodGas = (...given: Parameters<typeof of>) => modelCase(plain, of(...given)).agent!.circle.bloodGas;

  test('of patients is what was measured, and the lung goes by it', () => {
    expect(bloodGas({ solubilityGroup: 'patients' })).toBe(0.74);
    expect(bloodGas()).toBe(0.65);
    const liquid = (solubilityGroup: CaseConditions['solubilityGroup']) =>
      plain.value(estimateCase(plain, of({ solubilityGroup })).takenUpMl);
    expect(liquid('patients')).toBeGreaterThan(liquid('of-the-set'));
  });

  test('has no halothane: the set’s own stands in, and the case says so', () => {
    const given = { solubilityGroup: 'patients', agent: 'halothane' } as const;
    expect(bloodGas(given)).toBe(bloodGas({ agent: 'halothane' }));
    expect(notHeld(given)[0]).toMatch(/not among the agents measured/);
  });

  test('changes how far off the model is, each printed beside the other', () => {
    const use = (group: CaseConditions['solubilityGroup']) =>
      modelErrors(publishedChecks(referenceSet2026Third, null, group), 'eger').find(
        ({ area }) => area === 'uptake'
      )!;
    expect(use('patients').biasPercent).toBeGreaterThan(use('of-the-set').biasPercent);
  });
});

test('a set that offers no choice keeps its answer, and the case says so', () => {
  const chosen = { macSet: 'textbook', solubilityGroup: 'patients' } as const;
  const before = estimateCase(plain, of({}, referenceSet2026Second));
  const after = estimateCase(plain, of(chosen, referenceSet2026Second));
  expect(after.liquidMl).toBe(before.liquidMl);
  expect(notHeld(chosen, referenceSet2026Second)).toHaveLength(2);
  expect(notHeld(chosen, referenceSet2026Second)[0]).toContain('reference set 2026-2 offers no choice of it');
});
