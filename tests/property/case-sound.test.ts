import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { caseQuantities } from '#lib/calc/case/case-result.ts';
import { caseCourse } from '#lib/calc/case/case-course.ts';
import { estimateCase, useOfCase } from '#lib/calc/case/estimate-case.ts';
import { flowCurve } from '#lib/calc/case/flow-curve.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { anyCase } from '../fixtures/case-arbitrary.ts';

/** Every number of a result that was computed plainly. */
function numbersOf(result: unknown): number[] {
  if (typeof result === 'number') return [result];
  if (typeof result === 'object' && result !== null) return Object.values(result).flatMap(numbersOf);
  return [];
}

test('10 000 random valid cases give finite numbers, none below 0', () => {
  fc.assert(
    fc.property(anyCase, (given) => {
      for (const value of numbersOf(estimateCase(plain, given))) {
        if (!(value >= -1e-9 && value < Infinity)) throw new Error(`A figure is ${value}.`);
      }
    }),
    { numRuns: 10_000 }
  );
}, 240_000);

test('what what-if runs reckon of a case has the bits of the whole result', () => {
  fc.assert(
    fc.property(anyCase, (given) => {
      const use = useOfCase(plain, given);
      const whole: Record<string, unknown> = { ...estimateCase(plain, given) };
      for (const [figure, value] of Object.entries(use)) expect(Object.is(value, whole[figure])).toBe(true);
    }),
    { numRuns: 1000 }
  );
}, 240_000);

test('courses and flow curves of random cases are finite', () => {
  fc.assert(
    fc.property(anyCase, (given) => {
      const { minutes, dialPercent, inspiredPercent, endTidalPercent } = caseCourse(given);
      for (const list of [minutes, dialPercent, inspiredPercent, endTidalPercent])
        for (const value of list) expect(Number.isFinite(value)).toBe(true);
      for (const value of numbersOf(flowCurve(given))) expect(Number.isFinite(value)).toBe(true);
    }),
    { numRuns: 200 }
  );
}, 240_000);

test('the recording reckoner gives the bits of the plain one, and every step replays to its own', () => {
  const replay = (working: Working): void => {
    if (working.kind === 'method') for (const input of Object.values(working.inputs)) replay(input);
    if (working.kind !== 'step') return;
    const values: Record<string, unknown> = {};
    for (const [name, input] of Object.entries(working.inputs)) {
      const list: readonly Working[] = Array.isArray(input) ? input : [input as Working];
      list.forEach(replay);
      const worth = list.map(({ value }) => value);
      values[name] = Array.isArray(input) ? worth : worth[0];
    }
    expect(Object.is(working.formula.compute(values as never), working.value)).toBe(true);
  };
  fc.assert(
    fc.property(anyCase, (given) => {
      const bare = estimateCase(plain, given);
      const recorded = estimateCase(recorder, given);
      for (const figure of caseQuantities) {
        const working = workingOf(recorded[figure]);
        expect(Object.is(working.value, plain.value(bare[figure] as never))).toBe(true);
        replay(working);
      }
      expect(recorded.warnings).toEqual(bare.warnings);
      expect(recorded.phases).toEqual(bare.phases);
    }),
    { numRuns: 300 }
  );
}, 240_000);

test('a case does not know which cases were computed before it', () => {
  const result = (given: CaseGiven) => estimateCase(plain, given);
  fc.assert(
    fc.property(anyCase, anyCase, (one, other) => {
      const first = result(one);
      result(other);
      expect(result(one)).toEqual(first);
    }),
    { numRuns: 500 }
  );
}, 240_000);
