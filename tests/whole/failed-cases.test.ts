/**
 * Cases that cannot be computed, as an input that is not a checked workbook may hold: a row that fails everywhere, and
 * one that fails on one scenario's machine alone.
 */
import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import type { EstimateInput, Scenario } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import {
  closedMachine,
  expectFigures,
  hernia,
  hip,
  lowFlow,
  neck,
  oldMachine,
  scenarioOf,
  today,
  wholeWorkbook
} from '../fixtures/whole-workbook.ts';
import { bringing } from '../fixtures/one-group.ts';

const closed: Scenario = { ...lowFlow, id: 'closed', ...bringing('closed', 'low') };
const unsound = { ...hernia, id: 'unsound', weightKg: -1 };
const workbook = wholeWorkbook({
  caseMix: [hernia, unsound, hip],
  machines: [oldMachine, { ...closedMachine, circuitVolumeL: 99 }],
  scenarios: [today, lowFlow, closed]
});
const input = coreInput(workbook);

const weight = {
  path: 'caseMix.unsound',
  sentence: 'Weight: -1 kg was given; allowed is 1 to 300 kg.'
};
const circuit = {
  path: 'caseMix.hernia',
  sentence: 'Circuit volume: 99 L was given; allowed is 0.5 to 30 L.'
};

describe('failures are told', () => {
  test('of each scenario: those of today, and its own', () => {
    expect(estimate(input).scenarios.map(({ id, failed }) => [id, failed])).toEqual([
      ['today', [weight]],
      ['low-flow', [weight]],
      ['closed', [weight, circuit]]
    ]);
  });

  test('among the warnings, each sentence once', () => {
    const said = ({ path, sentence }: typeof weight) =>
      `${path} could not be computed and is left out of every total: ${sentence}`;
    const { warnings, cautions } = estimate(input);
    expect(warnings.slice(cautions.length)).toEqual([said(weight), said(circuit)]);
  });
});

test('a row that fails is left out of every figure', () => {
  const without = { ...workbook, caseMix: [hernia, hip] };
  expectFigures(scenarioOf(workbook, lowFlow).perYear, scenarioOf(without, lowFlow).perYear);
  expectFigures(scenarioOf(workbook, lowFlow).cases, scenarioOf(without, lowFlow).cases);
});

test('an estimate reads the same in any order, with failed cells', () => {
  const readings: readonly ((of: Estimate) => unknown)[] = [
    () => null,
    ({ warnings }) => warnings,
    ({ scenarios }) => scenarios.map(({ failed }) => failed),
    ({ scenarios }) => scenarios.toReversed().map(({ failed }) => failed),
    ({ scenarios }) => scenarios.toReversed().map(({ againstBaseline }) => againstBaseline.npv),
    ({ monitoring, scenarios }) => [monitoring, scenarios[1]?.cases]
  ];
  const texts = readings.map((first) => {
    const read = estimate(input);
    first(read);
    return JSON.stringify(read);
  });
  expect(new Set(texts).size).toBe(1);
});

test('an error that is not about a figure is none of a cell: it is thrown', () => {
  const constants = new Map(input.reference.constants);
  constants.delete('sevoflurane.liquid-density');
  const lacking: EstimateInput = { ...input, reference: { ...input.reference, constants } };
  expect(() => estimate({ ...lacking, caseMix: [hernia, neck] }).scenarios[0]?.cases).toThrow(
    'sevoflurane.liquid-density'
  );
});
