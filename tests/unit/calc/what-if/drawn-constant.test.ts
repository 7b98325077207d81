/** Published figures with a range: a draw is the estimate with that figure in force, and cases that read it not stay. */
import { describe, expect, test } from 'vitest';
import { circumstancesText } from '#lib/calc/case/conditions.ts';
import type { CaseSources } from '#lib/calc/case/conditions.ts';
import type { EstimateInput, Range } from '#lib/calc/input.ts';
import { constantPath, followingFrom } from '#lib/calc/reference/ranged-constant.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import { drawnWriter, setUpRun, uncertainInputs } from '#lib/calc/what-if/draws.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

const department = departmentWorkbook();
const sampling = { ...department.sampling, draws: 8, overBodyModels: false, overModelError: false };
const workbook: Workbook = { ...department, referenceSet: '2026-2', ranges: {}, overrides: [], sampling };
const input = coreInput(workbook);
const warming = `warming.${workbook.accounting.warmingSet}.${workbook.accounting.warmingHorizonYears}.sevoflurane`;
const ranged = (ranges: Readonly<Record<string, Range>>): EstimateInput => ({
  ...input,
  ranges: Object.fromEntries(Object.entries(ranges).map(([id, range]) => [constantPath(id), range]))
});
const around = (id: string): Range => {
  const { value } = take(input.reference, id);
  return { low: value * 0.9, high: value * 1.1 };
};

describe('a draw of a published figure', () => {
  test.each([
    warming,
    'sevoflurane.blood-gas',
    'sevoflurane.metabolised',
    'oxygen.co2e-per-bed-day',
    'body.co2-production.coefficient',
    'organ.muscle.volume'
  ])('of %s is the estimate with a figure of one’s own there', (id) => {
    const of = ranged({ [id]: around(id) });
    const value = take(input.reference, id).value * 1.07;
    const { unit } = take(input.reference, id);
    const own = coreInput({
      ...workbook,
      overrides: [{ constant: id, value, unit, reason: 'To compare with.' }]
    });
    expect(setUpRun(of, new Set()).model([value])).toEqual(
      setUpRun({ ...own, ranges: {} }, new Set()).model([])
    );
  });

  test('has the figure in force as its most likely value, one’s own included', () => {
    const own = coreInput({
      ...workbook,
      overrides: [{ constant: warming, value: 150, unit: 'kg CO2e/kg', reason: 'Measured.' }],
      ranges: { [constantPath(warming)]: { low: 100, high: 200 } }
    });
    expect(uncertainInputs(own)).toEqual([{ path: constantPath(warming), low: 100, mode: 150, high: 200 }]);
  });

  test('is one for all scenarios', () => {
    const run = setUpRun(ranged({ [warming]: around(warming) }), new Set());
    const at = run.scenarioIds.map((_, index) => index * run.figuresPerScenario + 1);
    const { value } = take(input.reference, warming);
    const [low, middle, high] = [0.9, 1, 1.1].map((factor) => run.model([value * factor]));
    for (const figure of at) {
      expect(low?.[figure]).not.toBe(high?.[figure]);
      expect((low![figure]! + high![figure]!) / 2 / middle![figure]!).toBeCloseTo(1, 9);
    }
  });
});

describe('cases under a drawn figure', () => {
  const sourcesUnder = (of: EstimateInput): CaseSources => ({
    row: of.caseMix[0]!,
    plan: of.flowPlans[0]!,
    machine: of.machines[0]!,
    absorbent: of.absorbents[0]!,
    site: of.site,
    agent: 'sevoflurane',
    accounting: of.accounting,
    reference: of.reference
  });
  const drawn = (...ids: readonly string[]): EstimateInput =>
    ids.reduce(
      (to, id) => drawnWriter(input, constantPath(id), new Set())(to, take(input.reference, id).value * 1.05),
      input
    );
  const textOf = (of: EstimateInput): string => circumstancesText(sourcesUnder(of));

  test('are the same where no case reads it, so that they are not solved again', () => {
    expect(textOf(drawn(warming))).toBe(textOf(input));
    expect(textOf(drawn(warming, 'oxygen.co2e-per-bed-day'))).toBe(textOf(input));
  });

  test('are others where a case reads it, or what is computed from it', () => {
    expect(textOf(drawn('sevoflurane.blood-gas'))).not.toBe(textOf(input));
    expect([...followingFrom('organ.muscle.volume')]).toContain('body.reference-adult.muscle.volume');
    expect(textOf(drawn('organ.muscle.volume'))).not.toBe(textOf(input));
  });

  test('are others in either order of what they read and what they do not', () => {
    const [one, other] = [drawn('sevoflurane.blood-gas', warming), drawn(warming, 'sevoflurane.blood-gas')];
    expect(textOf(one)).not.toBe(textOf(input));
    expect(textOf(other)).not.toBe(textOf(input));
    for (const { reference } of [one, other])
      expect(take(reference, 'sevoflurane.blood-gas').value).toBe(
        take(input.reference, 'sevoflurane.blood-gas').value * 1.05
      );
  });
});
