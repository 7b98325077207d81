/** Where gas is spilled, drawn for machines that say nothing of it: one share for all of them, five of them in all. */
import { describe, expect, test } from 'vitest';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { setUpRun, summaryOf, uncertainInputs } from '#lib/calc/what-if/draws.ts';
import { drawnSpillShares, spillSharePath } from '#lib/calc/what-if/spill-spread.ts';
import { cellsName } from '#lib/workbook/cell-name.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { blankWorkbook } from '#lib/workbook/blank.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { lowFlow, oldMachine, today, wholeWorkbook } from '../../../fixtures/whole-workbook.ts';

const sampling = {
  draws: 300,
  seed: 7,
  shape: 'pert',
  minutesTogether: false,
  overBodyModels: false,
  overModelError: false,
  overSpillShare: true
} as const;
const drawn = (changes: Partial<Workbook> = {}): Workbook => ({
  ...wholeWorkbook({ scenarios: [today, lowFlow], sampling }),
  referenceSet: '2026-2',
  ...changes
});
const atShare = (spillShareInspiredFraction: number | null): Workbook =>
  drawn({
    machines: [{ ...oldMachine, spillShareInspiredFraction }],
    sampling: { ...sampling, overSpillShare: false }
  });

describe('the share of spilled gas that leaves as inspired gas', () => {
  test('is drawn between the dead-space share and all of it, which is what is computed', () => {
    expect([drawnSpillShares[0], drawnSpillShares.at(-1)]).toEqual([0.33, 1]);
    const run = setUpRun(coreInput(drawn({ machines: [oldMachine] })), new Set());
    expect(run.inputs).toEqual([{ path: spillSharePath, choices: 5, mode: 4 }]);
    expect(run.model([4])).toEqual(setUpRun(coreInput(atShare(null)), new Set()).model([]));
  });

  test.each(drawnSpillShares.map((share, place) => [share, place]))(
    'as %s is the estimate with that in the machine’s cell',
    (share, place) => {
      const run = setUpRun(coreInput(drawn({ machines: [oldMachine] })), new Set());
      expect(run.model([place])).toEqual(setUpRun(coreInput(atShare(share)), new Set()).model([]));
    }
  );

  test('is drawn as often each', () => {
    const { draws } = setUpRun(coreInput(drawn()), new Set());
    const counts = drawnSpillShares.map(() => 0);
    for (let draw = 0; draw < draws.count; draw++) counts[draws.valuesOf(draw)[0]!]!++;
    expect(counts).toEqual([60, 60, 60, 60, 60]);
  });

  test('is left alone where a machine says its own, and drawn for the others', () => {
    const own = { ...oldMachine, spillShareInspiredFraction: 0.5 };
    expect(uncertainInputs(coreInput(drawn({ machines: [own] })))).toEqual([]);
    const run = setUpRun(coreInput(drawn({ machines: [own] })), new Set());
    expect(run.model([])).toEqual(setUpRun(coreInput(atShare(0.5)), new Set()).model([]));
  });

  test('counts as the model’s part of the spread, under a name of its own', () => {
    const workbook = drawn();
    const input = coreInput(workbook);
    const run = setUpRun(input, new Set());
    const summary = summaryOf(
      input,
      run,
      joinSlices([runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount })])
    );
    const [scenario] = summary.scenarios;
    expect(scenario!.spreadOf.model.yearlySaving).toBeGreaterThan(0.9);
    expect(scenario!.spreadOf.cells.yearlySaving).toBe(0);
    expect(cellsName(workbook, scenario!.swings[0]!.paths)).toBe('The model itself: where gas is spilled');
  });
});

test('new workbooks draw it, files from before do not', () => {
  expect(blankWorkbook().sampling.overSpillShare).toBe(true);
  const { overSpillShare: _, ...before } = blankWorkbook().sampling;
  const parsed = parseWorkbook({ ...blankWorkbook(), sampling: before });
  if (parsed.kind !== 'workbook') throw new Error(parsed.kind);
  expect(parsed.workbook.sampling.overSpillShare).toBe(false);
});
