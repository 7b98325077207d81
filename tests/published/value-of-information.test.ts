import { expect, test } from 'vitest';
import { valueOfInformation } from '#lib/calc/uncertainty/value-of-information.ts';

test('voi-1: three options in three states: means 680, 590, 500, with perfect information 1030, worth 350 (worth printed, the rest computed)', () => {
  // An encyclopaedia’s article on the expected value of perfect information (copy: liquisearch.com). Chances 0.5, 0.3 and
  // 0.2 as ten draws.
  const state = [0, 0, 0, 0, 0, 1, 1, 1, 2, 2];
  const inState = (values: readonly number[]) => Float64Array.from(state, (k) => values[k] as number);
  const found = valueOfInformation({
    options: [inState([1500, 300, -800]), inState([900, 600, -200]), inState([500, 500, 500])],
    inputs: [{ paths: ['state'], values: Float64Array.from(state) }],
    seed: 1
  });
  expect(found.means).toEqual([680, 590, 500]);
  expect(found.best).toBe(0);
  expect(found.worthOfAll).toBe(350);
  expect(found.worthOfAll + (found.means[found.best] as number)).toBe(1030);
  // The state is all there is to know: knowing it alone is worth as much.
  expect(found.inputs[0]?.worth).toBe(350);
});
