import { expect, test } from 'vitest';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { flowCurve, recordedAtFlow } from '#lib/calc/case/flow-curve.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { workingOf } from '#lib/calc/working/recorder.ts';
import { caseOf, under } from '../../../fixtures/circle-cases.ts';
import { allUnder } from '../working/recorded.ts';

const given = caseOf({ agent: 'sevoflurane', minutes: 90 }, [
  { minutes: 5, flowLPerMin: 5, vaporiser: 'hold', dialPercent: null },
  { minutes: null, flowLPerMin: 1, vaporiser: 'hold', dialPercent: null }
]);

test('the curve runs from the least feasible flow to 6 L/min, above the floor and rising', () => {
  const { points, floorMl, neededFlowLPerMin } = flowCurve(given);
  expect(points).toHaveLength(25);
  expect(points[0]!.flowLPerMin).toBe(neededFlowLPerMin);
  expect(points.at(-1)!.flowLPerMin).toBeCloseTo(6, 9);
  points.forEach(({ liquidMl, constantDialMl, flowLPerMin, meanFlowLPerMin }, i) => {
    expect(liquidMl).toBeGreaterThan(floorMl!);
    expect(meanFlowLPerMin).toBeCloseTo((5 * 5 + 85 * flowLPerMin) / 90, 9);
    if (i === 0) return;
    expect(liquidMl).toBeGreaterThan(points[i - 1]!.liquidMl);
    expect(constantDialMl).toBeGreaterThan(points[i - 1]!.constantDialMl);
  });
});

test('a point of it is the estimate at that flow', () => {
  const point = flowCurve(given).points[12]!;
  const [first, second] = given.conditions.phases;
  const phases = [first!, { ...second!, flowLPerMin: point.flowLPerMin }];
  const result = estimateCase(plain, under(given, { phases }));
  expect(plain.value(result.liquidMl)).toBe(point.liquidMl);
});

test('the working of a point has the flow that was asked for, in words, and no flow of the open phase from the plan', () => {
  const { liquidMl } = recordedAtFlow(given, 0.75);
  const leaves = allUnder([workingOf(liquidMl)]);
  const plan = `flowPlans.${given.cells.plan}`;
  expect(leaves).toContainEqual(
    expect.objectContaining({
      kind: 'assumption',
      value: 0.75,
      words: expect.stringContaining('in place of the plan’s own')
    })
  );
  const cells = leaves.flatMap((leaf) => (leaf.kind === 'cell' ? [leaf.path] : []));
  expect(cells).toContain(`${plan}.phases.0.flowLPerMin`);
  expect(cells).not.toContain(`${plan}.phases.1.flowLPerMin`);
});

test('the constant-dial formula flatters low flow: it lies below the floor there', () => {
  const { points, floorMl } = flowCurve(given);
  expect(points[0]!.constantDialMl).toBeLessThan(0.7 * floorMl!);
});

test('without a volatile agent there is nothing to draw', () => {
  const curve = flowCurve(under(given, { technique: 'intravenous', agent: null, targetMac: null }));
  expect(curve.points).toEqual([]);
  expect(curve.floorMl).toBeNull();
});
