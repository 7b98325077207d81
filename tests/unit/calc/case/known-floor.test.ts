import { expect, test } from 'vitest';
import { emptyOutcome, solveFloor } from '#lib/calc/case/circle-system.ts';
import type { CircleCase } from '#lib/calc/case/circle-system.ts';
import { floorOf } from '#lib/calc/case/known-floor.ts';
import { circleOf, conditionsOf, randomConditions, seededRandom } from '../../../fixtures/circle-cases.ts';

const outcome = emptyOutcome();
const solved = (circle: CircleCase): number => {
  solveFloor(circle, outcome);
  return outcome.deliveredL;
};

test('a kept floor is taken again only where nothing that it depends on has changed', () => {
  const { row } = conditionsOf({ agent: 'sevoflurane' }, []);
  const random = seededRandom(3);
  // Many cases under one row: more than are kept, each asked for twice.
  const circles = Array.from({ length: 12 }, () => circleOf(randomConditions(random)));
  for (const circle of [...circles, ...circles.toReversed()])
    expect(floorOf(row, circle, outcome)).toBe(solved(circle));
});

test('each thing that it depends on is looked at', () => {
  const conditions = conditionsOf({ agent: 'isoflurane' }, [
    { minutes: null, flowLPerMin: 1, vaporiser: 'hold', dialPercent: null }
  ]);
  const circle = circleOf(conditions);
  const [tissue, ...rest] = circle.tissues;
  const [phase] = circle.phases;
  const changed: CircleCase[] = [
    { ...circle, targetFraction: 0.01 },
    { ...circle, circuitVolumeL: 4 },
    { ...circle, lungVolumeL: 2 },
    { ...circle, bloodGas: 1.4 },
    { ...circle, cardiacOutputLPerMin: 4 },
    { ...circle, alveolarVentilationLPerMin: 4 },
    { ...circle, tissues: [tissue!] },
    { ...circle, tissues: [{ ...tissue!, volumeL: 5 }, ...rest] },
    { ...circle, tissues: [{ ...tissue!, outputShare: 0.7 }, ...rest] },
    { ...circle, tissues: [{ ...tissue!, tissueBlood: 1.5 }, ...rest] },
    { ...circle, phases: [{ ...phase!, minutes: 90 }] }
  ];
  const floor = floorOf(conditions.row, circle, outcome);
  for (const other of changed) {
    expect(floorOf(conditions.row, other, outcome)).toBe(solved(other));
    expect(floorOf(conditions.row, other, outcome)).not.toBe(floor);
  }
});

test('the plan is not: another flow has the same floor', () => {
  const at = (flowLPerMin: number) =>
    conditionsOf({ agent: 'isoflurane' }, [
      { minutes: null, flowLPerMin, vaporiser: 'hold', dialPercent: null }
    ]);
  const { row } = at(1);
  expect(floorOf(row, circleOf(at(0.5)), outcome)).toBe(floorOf(row, circleOf(at(6)), outcome));
});
