/**
 * How much CO2 elimination has risen while CO2 is insufflated, as a curve in time of straight lines. Insufflation is taken
 * to begin with the case. A phase is cut where the curve bends, so that between the cuts elimination stays or changes
 * evenly, and the first hour of a case is the same however long the case goes on.
 */
import type { Pneumoperitoneum } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CaseConstants, InsufflationConstants } from './case-constants.ts';

/** The rise at a time between two at which it is known. */
export const riseBetween = formula<{
  risePercent: number;
  beforePercent: number;
  fromMin: number;
  untilMin: number;
  atMin: number;
}>({
  id: 'case.insufflation-rise',
  yields: 'Rise of CO2 elimination at a time',
  words: 'on the straight line between the rises at two times',
  expression: 'r_0 + (r - r_0) * (t - a) / (b - a)',
  inputs: {
    risePercent: { symbol: 'r', unit: '%', words: 'rise at the later time' },
    beforePercent: { symbol: 'r_0', unit: '%', words: 'rise at the earlier time' },
    fromMin: { symbol: 'a', unit: 'min', words: 'earlier time', testRange: [1, 8] },
    untilMin: { symbol: 'b', unit: 'min', words: 'later time', testRange: [20, 30] },
    atMin: { symbol: 't', unit: 'min', words: 'the time at hand', testRange: [9, 19] }
  },
  unit: '%',
  source: 'straight lines between measured times',
  compute: ({ risePercent, beforePercent, fromMin, untilMin, atMin }) =>
    beforePercent + ((risePercent - beforePercent) * (atMin - fromMin)) / (untilMin - fromMin)
});

/** How long a part of a phase lasts. */
export const partMinutes = formula<{ fromMin: number; untilMin: number }>({
  id: 'case.part-minutes',
  yields: 'Minutes of a part of a phase',
  words: 'from its beginning to its end',
  expression: 'b - a',
  inputs: {
    fromMin: { symbol: 'a', unit: 'min', words: 'beginning of the part', testRange: [0, 20] },
    untilMin: { symbol: 'b', unit: 'min', words: 'end of the part', testRange: [21, 90] }
  },
  unit: 'min',
  source: 'definition',
  compute: ({ fromMin, untilMin }) => untilMin - fromMin
});

export const phaseBound = formula<{ earlierMinutes: readonly number[] }>({
  id: 'case.phase-bound',
  yields: 'Minute at which a phase begins or ends',
  words: 'sum of the phases until then',
  expression: 'sum(p)',
  inputs: { earlierMinutes: { symbol: 'p', unit: 'min', words: 'minutes of the phases until then' } },
  unit: 'min',
  source: 'definition',
  compute: ({ earlierMinutes }) => earlierMinutes.reduce((sum, part) => sum + part, 0)
});

/** A part of a phase, and the rise of CO2 elimination at its beginning and end: one quantity where it stays. */
export interface RiseInPhase {
  readonly minutes: Quantity;
  readonly fromPercent: Quantity;
  readonly untilPercent: Quantity;
}

/** The parts of a phase between the bends of the course of a kind of insufflation, in order. */
export function risesInPhase(
  r: Reckoner,
  kind: Exclude<Pneumoperitoneum, 'none'>,
  course: { course: InsufflationConstants; plateauRise: CaseConstants['co2Rise'] },
  { minutes, earlier }: { minutes: Quantity; earlier: readonly Quantity[] }
): readonly RiseInPhase[] {
  const bends = bendsOf(r, kind, course);
  const startMin =
    earlier.length === 0
      ? r.assumption(0, 'min', 'Insufflation is taken to begin with the case.')
      : r.apply(phaseBound, { earlierMinutes: earlier });
  const endMin = r.apply(phaseBound, { earlierMinutes: [...earlier, minutes] });
  const parts: RiseInPhase[] = [];
  let fromMin = startMin;
  for (let i = 0; i <= bends.length; i++) {
    const before = bends[i - 1];
    const bend = bends[i];
    const isEnd = bend === undefined || r.value(bend.atMin) >= r.value(endMin);
    const untilMin = isEnd ? endMin : bend.atMin;
    // A bend before the phase, or one that a figure of the user's own has put before an earlier bend.
    if (r.value(untilMin) > r.value(fromMin)) {
      parts.push({
        minutes:
          fromMin === startMin && untilMin === endMin ? minutes : r.apply(partMinutes, { fromMin, untilMin }),
        fromPercent: riseAt(r, fromMin, before, bend),
        untilPercent: riseAt(r, untilMin, before, bend)
      });
      fromMin = untilMin;
    }
    if (isEnd) break;
  }
  return parts;
}

/** A time from which the curve goes on otherwise, and the rise there. */
interface Bend {
  readonly atMin: Quantity;
  readonly risePercent: Quantity;
}

function bendsOf(
  r: Reckoner,
  kind: Exclude<Pneumoperitoneum, 'none'>,
  { course, plateauRise }: { course: InsufflationConstants; plateauRise: CaseConstants['co2Rise'] }
): readonly Bend[] {
  return [
    {
      atMin: r.constant(course.begins),
      risePercent: r.assumption(0, '%', 'Before that nothing has risen.')
    },
    ...(kind === 'extraperitoneal'
      ? course.extraperitoneal.map(({ minute, rise }) => ({
          atMin: r.assumption(minute, 'min', 'A time at which the source gives the rise.'),
          risePercent: r.constant(rise)
        }))
      : [{ atMin: r.constant(course.plateau), risePercent: r.constant(plateauRise[kind]) }])
  ];
}

/** The rise at a time from one bend to the next: what it is at the first bend before that, at the last one after it. */
function riseAt(r: Reckoner, atMin: Quantity, before: Bend | undefined, bend: Bend | undefined): Quantity {
  if (before === undefined) return bend!.risePercent;
  if (bend === undefined) return before.risePercent;
  if (r.value(atMin) === r.value(before.atMin)) return before.risePercent;
  if (r.value(atMin) === r.value(bend.atMin)) return bend.risePercent;
  return r.apply(riseBetween, {
    risePercent: bend.risePercent,
    beforePercent: before.risePercent,
    fromMin: before.atMin,
    untilMin: bend.atMin,
    atMin
  });
}
