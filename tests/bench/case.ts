import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { emptyOutcome, solveCircleSystem } from '#lib/calc/case/circle-system.ts';
import type { CircleCase } from '#lib/calc/case/circle-system.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { circleByOdex } from '../fixtures/circle-by-odex.ts';
import type { ReferenceOutcome } from '../fixtures/circle-by-odex.ts';
import { circleOf, seededRandom, typicalConditions } from '../fixtures/circle-cases.ts';
import type { BenchRow } from './bench-row.ts';
import { solveByRungeKutta } from './runge-kutta.ts';
import type { RungeKuttaOutcome } from './runge-kutta.ts';

/** Seconds that `run` takes for each of `of`, the best of several rounds: what disturbs a run only ever slows it. */
function secondsEach<T>(of: readonly T[], run: (one: T) => void, rounds = 60): number {
  for (let warm = 0; warm < 20; warm++) of.forEach(run);
  let best = Infinity;
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    for (const one of of) run(one);
    best = Math.min(best, performance.now() - start);
  }
  return best / 1000 / of.length;
}

const largestError = (
  got: { deliveredL: number; takenUpL: number; spilledL: number },
  reference: ReferenceOutcome
): number =>
  Math.max(
    Math.abs(got.deliveredL / reference.deliveredL - 1),
    Math.abs(got.takenUpL / reference.takenUpL - 1),
    Math.abs(got.spilledL / reference.spilledL - 1)
  );

/** Longest fixed step, min, with which the yardstick is as accurate as the solver. */
function stepOfEqualAccuracy(
  circles: readonly CircleCase[],
  references: readonly ReferenceOutcome[],
  error: number
): number {
  const outcome: RungeKuttaOutcome = { deliveredL: 0, takenUpL: 0, spilledL: 0 };
  for (let stepMin = 0.5; ; stepMin /= 1.1) {
    const worst = Math.max(
      ...circles.map((circle, i) => {
        solveByRungeKutta(circle, stepMin, outcome);
        return largestError(outcome, references[i]!);
      })
    );
    if (worst <= error) return stepMin;
  }
}

export async function bench(): Promise<BenchRow[]> {
  const random = seededRandom(1);
  const given: CaseGiven[] = Array.from({ length: 500 }, () => typicalConditions(random));
  const circles = given.map(circleOf);
  const outcome = emptyOutcome();

  const sample = circles.slice(0, 100);
  const references = sample.map((circle) => circleByOdex(circle));
  const error = Math.max(
    ...sample.map((circle, i) => {
      solveCircleSystem(circle, outcome);
      return largestError(outcome, references[i]!);
    })
  );
  const stepMin = stepOfEqualAccuracy(sample, references, error);
  const yardstick: RungeKuttaOutcome = { deliveredL: 0, takenUpL: 0, spilledL: 0 };

  const solving = secondsEach(circles, (circle) => solveCircleSystem(circle, outcome));
  const prepared = secondsEach(given, (one) => solveCircleSystem(circleOf(one), outcome));
  const fixedStep = secondsEach(sample, (circle) => solveByRungeKutta(circle, stepMin, yardstick));
  const estimating = secondsEach(given, (one) => estimateCase(plain, one));
  const steps = circles.reduce((sum, circle) => {
    solveCircleSystem(circle, outcome);
    return sum + outcome.steps;
  }, 0);

  return [
    {
      name: 'typical two-hour cases solved, preparation included',
      value: 1 / prepared,
      unit: 'cases/s',
      target: 'at least 50 000',
      met: 1 / prepared >= 50_000
    },
    {
      name: 'the solver against the classical method with fixed steps, at equal accuracy',
      value: fixedStep / solving,
      unit: 'times as fast',
      target: 'at least 5',
      met: fixedStep / solving >= 5
    },
    {
      name: 'largest error of 100 cases against a library at tolerance 1e-9',
      value: 100 * error,
      unit: '%',
      target: 'at most 0.2',
      met: error <= 0.002
    },
    {
      name: 'steps for a two-hour case',
      value: steps / circles.length,
      unit: 'steps',
      target: 'at most 30',
      met: steps / circles.length <= 30
    },
    {
      name: 'a plan that 500 different cases use is edited: all of them estimated anew, on one core',
      value: 500 * 1000 * estimating,
      unit: 'ms',
      target: 'at most 16',
      met: 500 * estimating <= 0.016
    }
  ];
}
