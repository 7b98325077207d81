/**
 * How much CO2 elimination has risen while CO2 is insufflated, as a curve in time. Insufflation is taken to begin with
 * the case; of the curve each phase takes its mean, so that the CO2 of a case adds up.
 */
import type { Pneumoperitoneum } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CaseConstants, InsufflationConstants } from './case-constants.ts';

/** What one straight piece of the curve adds to the mean of a phase: the area under a ramp from `from` to `until`. */
export const rampInPhase = formula<{
  risePercent: number;
  beforePercent: number;
  fromMin: number;
  untilMin: number;
  startMin: number;
  minutes: number;
}>({
  id: 'case.insufflation-ramp',
  yields: 'Part of the rise that falls into a phase',
  words: 'the mean over the phase of a rise that grows evenly between two times and then stays',
  expression:
    '(r - r_0) * (max(0, s + m - a)^2 - max(0, s + m - b)^2 - max(0, s - a)^2 + max(0, s - b)^2) / (2 * (b - a) * m)',
  inputs: {
    risePercent: { symbol: 'r', unit: '%', words: 'rise at the end of the piece' },
    beforePercent: { symbol: 'r_0', unit: '%', words: 'rise at its beginning' },
    fromMin: { symbol: 'a', unit: 'min', words: 'beginning of the piece', testRange: [1, 8] },
    untilMin: { symbol: 'b', unit: 'min', words: 'end of the piece', testRange: [9, 30] },
    startMin: { symbol: 's', unit: 'min', words: 'beginning of the phase', testRange: [0, 30] },
    minutes: { symbol: 'm', unit: 'min', words: 'minutes of the phase', testRange: [1, 60] }
  },
  unit: '%',
  source: 'definition of a mean',
  compute: ({ risePercent, beforePercent, fromMin, untilMin, startMin, minutes }) => {
    const until = startMin + minutes;
    const area =
      Math.max(0, until - fromMin) ** 2 -
      Math.max(0, until - untilMin) ** 2 -
      Math.max(0, startMin - fromMin) ** 2 +
      Math.max(0, startMin - untilMin) ** 2;
    return ((risePercent - beforePercent) * area) / (2 * (untilMin - fromMin) * minutes);
  }
});

export const riseInPhase = formula<{ parts: readonly number[] }>({
  id: 'case.insufflation-rise',
  yields: 'Rise of CO2 elimination, mean of a phase',
  words: 'sum of the pieces of the curve',
  expression: 'sum(x)',
  inputs: { parts: { symbol: 'x', unit: '%', words: 'each piece of the curve' } },
  unit: '%',
  source: 'definition',
  compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
});

export const phaseStart = formula<{ earlierMinutes: readonly number[] }>({
  id: 'case.phase-start',
  yields: 'Minute at which a phase begins',
  words: 'sum of the phases before it',
  expression: 'sum(p)',
  inputs: { earlierMinutes: { symbol: 'p', unit: 'min', words: 'minutes of the phases before it' } },
  unit: 'min',
  source: 'definition',
  compute: ({ earlierMinutes }) => earlierMinutes.reduce((sum, part) => sum + part, 0)
});

/** Mean rise of CO2 elimination over a phase, %, by the course of a kind of insufflation. */
export function meanRise(
  r: Reckoner,
  kind: Exclude<Pneumoperitoneum, 'none'>,
  { course, plateauRise }: { course: InsufflationConstants; plateauRise: CaseConstants['co2Rise'] },
  { minutes, earlier }: { minutes: Quantity; earlier: readonly Quantity[] }
): Quantity {
  const startMin =
    earlier.length === 0
      ? r.assumption(0, 'min', 'Insufflation is taken to begin with the case.')
      : r.apply(phaseStart, { earlierMinutes: earlier });
  const begins = r.constant(course.begins);
  const none = r.assumption(0, '%', 'Before that nothing has risen.');
  if (kind !== 'extraperitoneal')
    return r.apply(rampInPhase, {
      risePercent: r.constant(plateauRise[kind]),
      beforePercent: none,
      fromMin: begins,
      untilMin: r.constant(course.plateau),
      startMin,
      minutes
    });
  let fromMin = begins;
  let beforePercent = none;
  const parts: Quantity[] = [];
  for (const { minute, rise } of course.extraperitoneal) {
    const untilMin = r.assumption(minute, 'min', 'A time at which the source gives the rise.');
    const risePercent = r.constant(rise);
    parts.push(r.apply(rampInPhase, { risePercent, beforePercent, fromMin, untilMin, startMin, minutes }));
    fromMin = untilMin;
    beforePercent = risePercent;
  }
  return r.apply(riseInPhase, { parts });
}
