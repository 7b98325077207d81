import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { givenOf } from '#lib/calc/case/conditions.ts';
import { casesLacking, keepCases, solveCases } from '#lib/calc/reckoning/cases-ahead.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import { packCases, unpackCases } from '#lib/calc/known-cases/packed-cases.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { anyCase } from '../../../fixtures/case-arbitrary.ts';

const demo = demoWorkbook();
const input = coreInput(demo);

/** All figures of the scenarios themselves. Taking one apart runs variants of it, whose cases nobody solves ahead. */
const ofScenarios = ({ scenarios }: Estimate): string =>
  JSON.stringify(
    scenarios.map(({ perYear, cases, againstBaseline, monitoring, vapourOnOwnPlan }) => [
      perYear,
      cases,
      againstBaseline,
      monitoring,
      vapourOnOwnPlan
    ])
  );

test('an estimate finds what was solved ahead, and says the same as one that solves for itself', () => {
  const memo = new CaseMemo();
  const cases = casesLacking(input, memo);
  keepCases(memo, { cases, results: unpackCases(packCases(solveCases(cases.map(givenOf)))) });
  expect(ofScenarios(estimate(input, memo))).toBe(ofScenarios(estimate(input)));
  expect(memo.computed).toBe(0);
  expect(casesLacking(input, memo)).toEqual([]);
});

test('alike cases are listed once, and an edit lists what it changes', () => {
  const [row] = demo.caseMix;
  const twice = coreInput({ ...demo, caseMix: [row!, { ...row!, id: 'twin', casesPerYear: 7 }] });
  const memo = new CaseMemo();
  // Of the demo's row: each plan on its machine, and today's on the machines that come, where some do not follow.
  const [today] = demo.scenarios;
  const plans = new Set(
    demo.scenarios.flatMap(({ plans: followed, adoptionPercent }) =>
      Object.entries(followed).flatMap(([machine, plan]) => [
        `${plan} ${machine}`,
        ...(adoptionPercent < 100 ? [`${today?.plans['m-old']} ${machine}`] : [])
      ])
    )
  );
  expect(casesLacking(twice, memo)).toHaveLength(plans.size);
  void ofScenarios(estimate(twice, memo));
  const edited = coreInput({ ...demo, caseMix: [row!, { ...row!, id: 'twin', minutes: row!.minutes + 1 }] });
  expect(casesLacking(edited, memo).every(({ row }) => row.id === 'twin')).toBe(true);
  expect(casesLacking(edited, memo)).toHaveLength(plans.size);
});

test('a case that cannot be estimated is left for the estimate to name', () => {
  const [row] = demo.caseMix;
  const bad = coreInput({ ...demo, caseMix: [{ ...row!, weightKg: -1 }] });
  expect(solveCases(casesLacking(bad, new CaseMemo()).slice(0, 1).map(givenOf))).toEqual([null]);
  expect(unpackCases(packCases([null, null]))).toEqual([null, null]);
});

test('packing keeps every figure and every word', () => {
  fc.assert(
    fc.property(fc.array(anyCase, { maxLength: 4 }), (several) => {
      const results = several.map((given) => estimateCase(plain, given));
      expect(unpackCases(packCases(results))).toEqual(results);
    })
  );
});
