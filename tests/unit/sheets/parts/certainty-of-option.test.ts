import { expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { joinSlices, runDraws } from '#lib/calc/uncertainty/run.ts';
import { setUpRun, summaryOf } from '#lib/calc/what-if/draws.ts';
import { certaintyOfOption } from '#lib/sheets/parts/certainty-of-option.ts';
import { optionsOf } from '#lib/sheets/parts/option-list.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const demo = demoWorkbook();
const input = coreInput({
  ...demo,
  sampling: { ...demo.sampling, draws: 40, overBodyModels: false, overModelError: false }
});
const run = setUpRun(input, new Set());
const summary = summaryOf(
  input,
  run,
  joinSlices([runDraws({ model: run.model, draws: run.draws, figureCount: run.figureCount })])
);
const options = optionsOf(estimate(input), { baselineId: 'today', nameOf: (id) => id });
const certaintyOf = (id: string) => {
  const option = options.find((each) => each.id === id);
  if (option === undefined) throw new Error(`There is no option ${id}.`);
  return certaintyOfOption(option, summary);
};

it('takes a scenario’s shares from the scenario and a twin’s from the twin', () => {
  const drawn = summary.scenarios.find(({ id }) => id === 'closed');
  expect(certaintyOf('closed')).toEqual({
    withinLimit: drawn?.withinLimit.probability,
    npvAboveZero: drawn?.npvAboveZero.probability,
    path: 'closed'
  });
  expect(certaintyOf('closed:without-machine')).toEqual({
    withinLimit: drawn?.withoutMachine?.withinLimit.probability,
    npvAboveZero: drawn?.withoutMachine?.npvAboveZero.probability,
    path: 'closed.withoutMachine'
  });
  expect(certaintyOf('closed')?.withinLimit).not.toBe(certaintyOf('closed:without-machine')?.withinLimit);
});

it('says nothing of today, nor of what was not drawn', () => {
  expect(certaintyOf('today')).toBeNull();
  expect(certaintyOfOption({ scenarioId: 'another', isTwin: false, place: 0 }, summary)).toBeNull();
});
