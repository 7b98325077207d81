/** The model's own error in the draws: derived from what was measured, put on every case alike, and told apart. */
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { modelErrors } from '#lib/calc/published/model-error.ts';
import { publishedChecks } from '#lib/calc/published/published-checks.ts';
import { referenceSets } from '#lib/calc/reference/reference-sets.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { setUpRun, summaryOf } from '#lib/calc/what-if/draws.ts';
import { explainDrawn } from '#lib/calc/what-if/explain-draws.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import { modelErrorInputs, modelErrorPaths, modelSpreads } from '#lib/calc/what-if/model-spread.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { cellsName } from '#lib/workbook/cell-name.ts';
import { lowFlow, today, wholeWorkbook } from '../../../fixtures/whole-workbook.ts';

describe('how far the model may be off', () => {
  test.each(referenceSets)('is, by set $id, its error against the measured rows', (set) => {
    const errors = modelErrors(publishedChecks(set), 'eger');
    const of = (area: string) =>
      (errors.find((each) => each.area === area)?.rootMeanSquarePercent ?? NaN) / 100;
    expect(modelSpreads[set.id]?.uptakeFactor).toBeCloseTo(of('uptake'), 3);
    expect(modelSpreads[set.id]?.spillFactor).toBeCloseTo(of('difference between flows'), 3);
  });

  const sampling = {
    draws: 4000,
    seed: 7,
    minutesTogether: false,
    overBodyModels: false,
    overModelError: true,
    overSpillShare: false
  };
  test.each(['pert', 'triangular'] as const)('is the scatter of the drawn factors, by %s', (shape) => {
    const input = coreInput(wholeWorkbook({ scenarios: [today, lowFlow], sampling: { ...sampling, shape } }));
    const { inputs, draws } = setUpRun(input, new Set());
    expect(inputs).toEqual(modelErrorInputs(input));
    inputs.forEach(({ path }, place) => {
      const values = Array.from({ length: draws.count }, (_, draw) => draws.valuesOf(draw)[place]!);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
      const expected =
        path === modelErrorPaths.spillFactor
          ? modelSpreads['2026-1']!.spillFactor
          : modelSpreads['2026-1']!.uptakeFactor;
      expect(mean).toBeCloseTo(1, 3);
      expect(spread / expected).toBeCloseTo(1, 2);
      for (const value of values) expect(value).toBeGreaterThan(0);
    });
  });
});

describe('the model’s error on a case', () => {
  const input = coreInput(wholeWorkbook({ scenarios: [today, lowFlow] }));
  const casesOf = (modelError?: { uptakeFactor: number; spillFactor: number }) =>
    estimate(modelError === undefined ? input : { ...input, modelError }).scenarios[0]!.cases;
  const volatile = (of: ReturnType<typeof casesOf>) => of.find(({ method }) => method === 'circle-system')!;

  test('is a factor on what is taken up and one on what is spilled; what is left is left', () => {
    const plainCase = volatile(casesOf());
    const off = volatile(casesOf({ uptakeFactor: 1.2, spillFactor: 0.7 }));
    expect(off.takenUpMl).toBeCloseTo(1.2 * plainCase.takenUpMl, 12);
    expect(off.spilledMl).toBeCloseTo(0.7 * plainCase.spilledMl, 12);
    expect(off.leftMl).toBe(plainCase.leftMl);
    expect(off.liquidMl).toBeCloseTo(off.takenUpMl + off.spilledMl + off.leftMl, 12);
    expect(off.oxygenL).toBe(plainCase.oxygenL);
  });

  test('leaves cases without vapour as they are', () => {
    const intravenous = (of: ReturnType<typeof casesOf>) => of.find(({ method }) => method === 'none');
    expect(intravenous(casesOf({ uptakeFactor: 2, spillFactor: 2 }))).toEqual(intravenous(casesOf()));
  });

  test('in uptake hardly moves a saving between two flows, in spill it does', () => {
    const saving = (uptakeFactor: number, spillFactor: number) =>
      Number(
        estimate({ ...input, modelError: { uptakeFactor, spillFactor } }).scenarios[1]!.againstBaseline
          .yearlySaving
      );
    const off = (uptakeFactor: number, spillFactor: number) =>
      Math.abs(saving(uptakeFactor, spillFactor) / saving(1, 1) - 1);
    expect(off(1.2, 1)).toBeLessThan(0.02);
    expect(off(1, 1.2)).toBeGreaterThan(0.1);
  });
});

describe('a run that draws it', () => {
  const price = 'agents.sevoflurane.bottlePrice';
  const workbook = wholeWorkbook({
    scenarios: [today, lowFlow],
    ranges: { [price]: { low: 100, high: 140 } },
    sampling: {
      draws: 400,
      seed: 3,
      shape: 'pert',
      minutesTogether: false,
      overBodyModels: true,
      overModelError: true,
      overSpillShare: false
    }
  });
  const input = coreInput(workbook);
  const run = setUpRun(input, new Set());
  const summary = summaryOf(
    input,
    run,
    joinSlices([runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount })])
  );
  const spread = summary.scenarios[0]!;

  test('draws it after the body model and the cells, so that their values stay what they were', () => {
    const without = setUpRun({ ...input, sampling: { ...input.sampling, overModelError: false } }, new Set());
    expect(run.inputs.slice(2).map(({ path }) => path)).toEqual(Object.values(modelErrorPaths));
    expect(run.draws.valuesOf(5).slice(0, 2)).toEqual(without.draws.valuesOf(5));
  });

  test('has a wider band than one that does not', () => {
    const narrow = setUpRun({ ...input, sampling: { ...input.sampling, overModelError: false } }, new Set());
    const of = summaryOf(
      input,
      narrow,
      joinSlices([runDraws({ model: narrow.model, draws: narrow.draws, figureCount: narrow.figureCount })])
    ).scenarios[0]!.bands.co2eAvoidedKg;
    const { low, high } = spread.bands.co2eAvoidedKg;
    expect(high.value - low.value).toBeGreaterThan(2 * (of.high.value - of.low.value));
  });

  test('says whose the spread is: of emissions the model’s, of money the price’s as well', () => {
    expect(spread.spreadOf.model.co2eAvoidedKg).toBeGreaterThan(0.9);
    expect(spread.spreadOf.cells.co2eAvoidedKg).toBeLessThan(0.05);
    expect(spread.spreadOf.cells.yearlySaving).toBeGreaterThan(0.02);
    expect(spread.spreadOf.model.yearlySaving + spread.spreadOf.cells.yearlySaving).toBeLessThan(1.1);
  });

  test('explains each share and each swing by what was drawn, the factors among it', () => {
    const explained = {
      input,
      summary,
      explain: explainer(input),
      wholeCells: new Set<string>(),
      unitOf: () => '1',
      nameOf: (paths: readonly string[]) => cellsName(workbook, paths),
      optionName: (id: string) => id
    };
    const share = explainDrawn(explained, 'low-flow.spreadOf.model.npv');
    expect(share.value).toBe(100 * spread.spreadOf.model.npv);
    expect(share.kind === 'method' ? Object.keys(share.inputs) : []).toContain(
      'The model itself: what is spilled, lowest factor'
    );
    const swing = spread.swings.findIndex(({ paths }) => paths[0] === modelErrorPaths.spillFactor);
    for (const end of [0, 1])
      expect(
        Number(explainDrawn(explained, `low-flow.swings.${swing}.${end}.co2eAvoidedKg`).value)
      ).toBeCloseTo(spread.swings[swing]!.outcomes[end]!.figures!.co2eAvoidedKg, 6);
  });
});
