import { expect, test } from 'vitest';
import { caseCourse } from '#lib/calc/case/case-course.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { caseOf, under } from '../../../fixtures/circle-cases.ts';

const given = caseOf({ agent: 'desflurane', minutes: 90 }, [
  { minutes: 5, flowLPerMin: 4, vaporiser: 'hold', dialPercent: null },
  { minutes: null, flowLPerMin: 0.5, vaporiser: 'hold', dialPercent: 12 }
]);
const course = caseCourse(given);

test('the course begins at nothing, ends with the case and never goes back in time', () => {
  const { minutes, inspiredPercent, endTidalPercent } = course;
  expect(minutes[0]).toBe(0);
  expect(inspiredPercent[0]).toBe(0);
  expect(endTidalPercent[0]).toBe(0);
  expect(minutes.at(-1)).toBeCloseTo(90, 9);
  minutes.forEach((minute, i) => expect(minute).toBeGreaterThanOrEqual(minutes[i - 1] ?? 0));
});

test('is the run that the estimate rests on', () => {
  const result = estimateCase(plain, given);
  expect(course.minutesToTarget).toBe(plain.value(result.minutesToTarget));
  expect(course.minutesBelowTarget).toBe(plain.value(result.minutesBelowTarget));
  expect(course.targetPercent).toBe(100 * result.targetFraction);
  let vapourMl = 0;
  for (let i = 1; i < course.minutes.length; i++)
    vapourMl +=
      ((course.minutes[i]! - course.minutes[i - 1]!) *
        (course.vapourMlPerMin[i]! + course.vapourMlPerMin[i - 1]!)) /
      2;
  // By the trapezium rule over the points that a chart gets; 209.7 mL vapour per mL liquid.
  expect(vapourMl / 209.7 / plain.value(result.liquidMl)).toBeCloseTo(1, 1);
});

test('the dial keeps to its limits, and meets them when the circuit is filled', () => {
  course.minutes.forEach((minute, i) => {
    expect(course.dialPercent[i]).toBeGreaterThanOrEqual(0);
    expect(course.dialPercent[i]).toBeLessThan(minute <= 5 ? 18 + 1e-9 : 12 + 1e-9);
  });
  expect(course.dialPercent[0]).toBeCloseTo(18, 9);
});

test('points lie close enough to draw a smooth curve', () => {
  course.endTidalPercent.forEach((value, i) => {
    if (i > 0)
      expect(Math.abs(value - course.endTidalPercent[i - 1]!)).toBeLessThan(0.1 * course.targetPercent);
  });
});

test('without a volatile agent there is no course', () => {
  const regional = under(given, { technique: 'regional', agent: null, targetMac: null });
  expect(caseCourse(regional).minutes).toHaveLength(0);
});
