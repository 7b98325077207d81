import { expect, test } from 'vitest';
import { flowClassOf } from '#lib/calc/case/fresh-gas-flow.ts';

test.each([
  [0.2, 'metabolic'],
  [0.25, 'minimal'],
  [0.5, 'minimal'],
  [0.51, 'low'],
  [1, 'low'],
  [2, 'medium'],
  [2.1, 'high'],
  [4, 'high'],
  [4.1, 'very high']
] as const)('%s L/min is %s flow', (flowLPerMin, flowClass) => {
  expect(flowClassOf(flowLPerMin)).toBe(flowClass);
});
