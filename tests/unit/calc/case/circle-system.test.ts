import { describe, expect, test } from 'vitest';
import { emptyOutcome, REACHED_SHARE, solveCircleSystem, solveFloor } from '#lib/calc/case/circle-system.ts';
import type { CircleCase, CircleOutcome, CirclePhase } from '#lib/calc/case/circle-system.ts';
import { circleByOdex } from '../../../fixtures/circle-by-odex.ts';
import { circleOf, caseOf, randomConditions, seededRandom } from '../../../fixtures/circle-cases.ts';

const solved = (given: CircleCase): CircleOutcome => {
  const outcome = emptyOutcome();
  solveCircleSystem(given, outcome);
  return outcome;
};
/** A phase in which ventilation goes up by 40 % of the case's, the next one in which it comes down again. */
const breathedUnevenly =
  ({ alveolarVentilationLPerMin: rest }: CircleCase) =>
  (phase: CirclePhase, i: number): CirclePhase => ({
    ...phase,
    alveolarVentilationLPerMin: (i % 2 === 0 ? 1 : 1.4) * rest,
    endVentilationLPerMin: (i % 2 === 0 ? 1.4 : 1) * rest
  });
const hold = { vaporiser: 'hold', dialPercent: null } as const;

describe('against a general-purpose library at tolerance 1e-9', () => {
  const random = seededRandom(2026);
  const cases = Array.from({ length: 500 }, () => circleOf(randomConditions(random)));
  const worst = { delivered: 0, takenUp: 0, spilled: 0, endTidal: 0 };
  const seen = { limited: 0, unreached: 0, sagging: 0, off: 0, closed: 0, fixedDial: 0 };

  test('500 random cases agree within 0.2 %', () => {
    for (const given of cases) {
      const ours = solved(given);
      const reference = circleByOdex(given);
      const endTidalMin = ours.endTidalByPhaseMin[given.phases.length - 1]!;
      worst.delivered = Math.max(worst.delivered, Math.abs(ours.deliveredL / reference.deliveredL - 1));
      worst.takenUp = Math.max(worst.takenUp, Math.abs(ours.takenUpL / reference.takenUpL - 1));
      // A closed circuit spills next to nothing: what is spilled is held against what was delivered.
      worst.spilled = Math.max(
        worst.spilled,
        Math.abs(ours.spilledL - reference.spilledL) / reference.deliveredL
      );
      worst.endTidal = Math.max(worst.endTidal, Math.abs(endTidalMin / reference.endTidalMin - 1));
      if (Number.isNaN(ours.minutesToTarget)) seen.unreached++;
      if (ours.minutesBelowTarget > 0) seen.sagging++;
      if (ours.switches > 0) seen.limited++;
      if (given.phases.some(({ vaporiser }) => vaporiser === 'off')) seen.off++;
      if (given.phases.some(({ vaporiser }) => vaporiser === 'dial')) seen.fixedDial++;
      if (given.phases.some(({ flowLPerMin }) => flowLPerMin === given.oxygenUptakeLPerMin)) seen.closed++;
    }
    expect(worst.delivered).toBeLessThan(0.002);
    expect(worst.takenUp).toBeLessThan(0.002);
    expect(worst.spilled).toBeLessThan(0.002);
    expect(worst.endTidal).toBeLessThan(0.002);
  }, 300_000);

  test('60 of them whose ventilation rises and falls within their phases agree within 0.2 %', () => {
    for (const given of cases.slice(0, 60)) {
      const breathed = { ...given, phases: given.phases.map(breathedUnevenly(given)) };
      const ours = solved(breathed);
      const reference = circleByOdex(breathed);
      expect(Math.abs(ours.deliveredL / reference.deliveredL - 1)).toBeLessThan(0.002);
      expect(Math.abs(ours.takenUpL / reference.takenUpL - 1)).toBeLessThan(0.002);
      expect(Math.abs(ours.spilledL - reference.spilledL) / reference.deliveredL).toBeLessThan(0.002);
      expect(Math.abs(ours.balanceErrorL)).toBeLessThan(1e-9);
    }
  }, 300_000);

  test('the 500 hold every kind of case that can arise', () => {
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(40);
  });
});

describe('a target that is held', () => {
  const steady = circleOf(
    caseOf({ agent: 'sevoflurane', minutes: 60 }, [{ ...hold, minutes: null, flowLPerMin: 6 }])
  );

  test('is reached within two minutes at 6 L/min, and kept', () => {
    const { minutesToTarget, minutesBelowTarget } = solved(steady);
    expect(minutesToTarget).toBeGreaterThan(1);
    expect(minutesToTarget).toBeLessThan(2);
    expect(minutesBelowTarget).toBe(0);
  });

  test('is not reached where the dial may not go above it', () => {
    const [phase] = steady.phases;
    const outcome = solved({
      ...steady,
      phases: [{ ...phase!, dialFraction: 0.9 * steady.targetFraction }]
    });
    expect(outcome.minutesToTarget).toBeNaN();
    expect(outcome.minutesBelowTarget).toBe(0);
  });

  test('sags where the vaporiser is shut, and the minutes below are told apart', () => {
    const [phase] = steady.phases;
    const outcome = solved({
      ...steady,
      phases: [
        { ...phase!, minutes: 20 },
        { ...phase!, minutes: 15, vaporiser: 'off' },
        { ...phase!, minutes: 20, flowLPerMin: 0.3 }
      ]
    });
    expect(outcome.minutesBelowWhileOff).toBeGreaterThan(14);
    expect(outcome.minutesBelowWhileOff).toBeLessThan(15);
    expect(outcome.minutesBelowTarget).toBeGreaterThan(outcome.minutesBelowWhileOff + 1);
  });

  test('of 0 needs no vapour', () => {
    const outcome = solved({ ...steady, targetFraction: 0 });
    expect(outcome.deliveredL).toBe(0);
    expect(outcome.takenUpL).toBe(0);
    expect(outcome.steps).toBe(0);
  });
});

describe('the floor', () => {
  const floorOf = (given: CircleCase): number => {
    const outcome = emptyOutcome();
    solveFloor(given, outcome);
    expect(outcome.spilledL).toBe(0);
    return outcome.deliveredL;
  };
  /** A flow so high that no limit of the dial is met: the target is held from the first minute, as on the floor. */
  const unlimited = (minutes: number) =>
    circleOf(
      caseOf({ agent: 'desflurane', minutes, circuitVolumeL: 5 }, [
        { ...hold, minutes: null, flowLPerMin: 20 }
      ])
    );

  test('is what such a plan delivers less what it spills', () => {
    for (const minutes of [5, 30, 120, 600]) {
      const given = { ...unlimited(minutes) };
      const phases = given.phases.map((phase) => ({ ...phase, flowLPerMin: 500, dialFraction: 0.9 }));
      const outcome = solved({ ...given, phases });
      expect(floorOf(given) / (outcome.deliveredL - outcome.spilledL)).toBeCloseTo(1, 3);
    }
  });

  test('holds for an hour as a tissue formula says it must', () => {
    // With the end-tidal fraction at the target from the first moment, each tissue fills exponentially. The model's
    // circuit and lung have to be filled first, so its floor lies a little below.
    const given = unlimited(60);
    const { bloodGas, cardiacOutputLPerMin: output, tissues, targetFraction: target } = given;
    let takenUp = 0;
    let returned = 0;
    for (const { volumeL, tissueBlood, outputShare } of tissues) {
      const filled = 1 - Math.exp((-60 * outputShare * output) / (volumeL * tissueBlood));
      takenUp += bloodGas * tissueBlood * volumeL * target * filled;
      returned += outputShare * (1 - filled);
    }
    const need = target * (1 + (bloodGas * output * returned) / given.alveolarVentilationLPerMin);
    const atOnce = takenUp + given.lungVolumeL * target + given.circuitVolumeL * need;
    expect(floorOf(given)).toBeLessThan(atOnce);
    expect(floorOf(given)).toBeGreaterThan(0.95 * atOnce);
  });
});

test('the course is told without changing a bit of the outcome', () => {
  const random = seededRandom(7);
  for (let i = 0; i < 50; i++) {
    const given = circleOf(randomConditions(random));
    const alone = solved(given);
    const told = emptyOutcome();
    const points: { minute: number; endTidalFraction: number }[] = [];
    solveCircleSystem(given, told, { add: (point) => points.push(point) });
    expect(told).toEqual(alone);
    const minutes = given.phases.reduce((sum, phase) => sum + phase.minutes, 0);
    expect(points.at(-1)!.minute).toBeCloseTo(minutes, 9);
    points.forEach(({ minute }, at) => expect(minute).toBeGreaterThanOrEqual(points[at - 1]?.minute ?? 0));
    const reached = points.find((p) => p.endTidalFraction >= REACHED_SHARE * given.targetFraction);
    expect(reached === undefined).toBe(Number.isNaN(alone.minutesToTarget));
  }
});

test('more tissues or phases than provided for are refused', () => {
  const given = circleOf(caseOf({ agent: 'isoflurane' }, [{ ...hold, minutes: null, flowLPerMin: 1 }]));
  const [tissue] = given.tissues;
  const [phase] = given.phases;
  expect(() => solved({ ...given, tissues: new Array(13).fill(tissue) })).toThrow(/at most 12/);
  expect(() => solved({ ...given, phases: new Array(17).fill(phase) })).toThrow(/at most 16/);
});

test('a tissue split in two equal halves changes nothing', () => {
  const random = seededRandom(11);
  for (let i = 0; i < 20; i++) {
    const given = circleOf(randomConditions(random));
    const halves = given.tissues.flatMap(({ volumeL, tissueBlood, outputShare }) => {
      const half = { volumeL: volumeL / 2, tissueBlood, outputShare: outputShare / 2 };
      return [half, half];
    });
    const whole = solved(given);
    const split = solved({ ...given, tissues: halves });
    expect(split.deliveredL / whole.deliveredL).toBeCloseTo(1, 9);
    expect(split.takenUpL / whole.takenUpL).toBeCloseTo(1, 9);
  }
});
