/** Where gas leaves the circuit, and a flow that follows the need: against a general-purpose library, and by hand. */
import { describe, expect, test } from 'vitest';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { caseCourse } from '#lib/calc/case/case-course.ts';
import { emptyOutcome, solveCircleSystem } from '#lib/calc/case/circle-system.ts';
import type { CircleCase, CircleOutcome, CirclePhase } from '#lib/calc/case/circle-system.ts';
import type { CaseConditions } from '#lib/calc/case/conditions.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { circleByOdex } from '../../../fixtures/circle-by-odex.ts';
import { caseOf, circleOf, randomConditions, seededRandom, under } from '../../../fixtures/circle-cases.ts';

const solved = (given: CircleCase): CircleOutcome => {
  const outcome = emptyOutcome();
  solveCircleSystem(given, outcome);
  return outcome;
};

describe('against a general-purpose library at tolerance 1e-9', () => {
  const random = seededRandom(828);
  /** Any case with a share of its own, every third of them with flow as needed, every other one breathed unevenly. */
  const cases = Array.from({ length: 90 }, (_, i): CircleCase => {
    const given = circleOf(randomConditions(random));
    const rest = given.alveolarVentilationLPerMin;
    const lostLPerMin = 0.4 * random();
    const phases = given.phases.map((phase, j): CirclePhase => ({
      ...phase,
      ...(i % 2 === 0
        ? {}
        : {
            alveolarVentilationLPerMin: (j % 2 === 0 ? 1 : 1.4) * rest,
            endVentilationLPerMin: (j % 2 === 0 ? 1.4 : 1) * rest
          }),
      ...(i % 3 === 0 && phase.vaporiser !== 'dial'
        ? {
            lostLPerMin,
            flowLPerMin: given.oxygenUptakeLPerMin,
            dialFraction: phase.vaporiser === 'hold' ? 1 : 0
          }
        : {})
    }));
    return { ...given, phases, spillShareInspiredFraction: i % 5 === 0 ? 0 : random() };
  });

  test('90 random cases agree within 0.2 %, and their vapour adds up', () => {
    for (const given of cases) {
      const ours = solved(given);
      const reference = circleByOdex(given);
      expect(Math.abs(ours.deliveredL / reference.deliveredL - 1)).toBeLessThan(0.002);
      expect(Math.abs(ours.takenUpL / reference.takenUpL - 1)).toBeLessThan(0.002);
      expect(Math.abs(ours.spilledL - reference.spilledL) / reference.deliveredL).toBeLessThan(0.002);
      expect(Math.abs(ours.balanceErrorL)).toBeLessThan(1e-9 * ours.deliveredL);
    }
  }, 300_000);

  test('among them are some in which more leaves than is breathed out', () => {
    const beyond = cases.filter(({ spillShareInspiredFraction: share = 1, phases, ...given }) =>
      phases.some(({ flowLPerMin }) => (1 - share) * flowLPerMin > 1.5 * given.alveolarVentilationLPerMin)
    );
    expect(beyond.length).toBeGreaterThan(5);
  });
});

const hold = { vaporiser: 'hold', dialPercent: null } as const;
const figures = (given: Partial<CaseConditions>, flowLPerMin: number) => {
  const result = estimateCase(
    plain,
    caseOf({ minutes: 60, ...given, agent: 'isoflurane' }, [{ ...hold, minutes: null, flowLPerMin }])
  );
  return {
    liquidMl: plain.value(result.liquidMl),
    takenUpMl: plain.value(result.takenUpMl),
    spilledMl: plain.value(result.spilledMl)
  };
};

describe('the share that is spilled as inspired gas', () => {
  test('of 1 is a circuit whose gas mixes first, which is what an empty cell means', () => {
    expect(figures({ spillShareInspiredFraction: 1 }, 2)).toEqual(
      figures({ spillShareInspiredFraction: null }, 2)
    );
  });

  test('the smaller it is, the less agent is spilled, while patients take up what they do at the target', () => {
    const shares = [1, 0.66, 0.33, 0].map((spillShareInspiredFraction) =>
      figures({ spillShareInspiredFraction }, 2)
    );
    shares.slice(1).forEach(({ spilledMl, takenUpMl }, i) => {
      expect(spilledMl).toBeLessThan(shares[i]!.spilledMl);
      expect(takenUpMl / shares[i]!.takenUpMl).toBeCloseTo(1, 2);
    });
  });

  test('of dead space alone makes less of the step to a low flow, as was measured for a soluble agent', () => {
    const saving = (spillShareInspiredFraction: number | null) =>
      figures({ spillShareInspiredFraction }, 2).liquidMl -
      figures({ spillShareInspiredFraction }, 0.48).liquidMl;
    expect(saving(0.33)).toBeLessThan(0.9 * saving(null));
  });

  test('never lets more be inspired than the vaporiser gives of the gas that leaves', () => {
    const random = seededRandom(4);
    for (let i = 0; i < 60; i++) {
      const dialPercent = 0.5 + 4 * random();
      const flowLPerMin = 0.5 + 12 * random();
      const given = caseOf(
        { agent: 'isoflurane', minutes: 240, spillShareInspiredFraction: i % 4 === 0 ? 0 : random() },
        [{ minutes: null, flowLPerMin, vaporiser: 'dial', dialPercent }]
      );
      const circle = circleOf(given);
      const vapour = (flowLPerMin * dialPercent) / (100 - dialPercent);
      // Uptake is greatest while the tissues are empty: it is at most λ Q Σ q_k F_A.
      const carry =
        circle.bloodGas *
        circle.cardiacOutputLPerMin *
        circle.tissues.reduce((sum, { outputShare }) => sum + outputShare, 0);
      const { inspiredPercent, endTidalPercent } = caseCourse(given);
      let bound = 0;
      inspiredPercent.forEach((inspired, at) => {
        const uptake = (carry * endTidalPercent[at]!) / 100;
        bound = Math.max(
          bound,
          (100 * vapour) / (flowLPerMin + vapour - circle.oxygenUptakeLPerMin - uptake)
        );
        expect(inspired).toBeLessThanOrEqual(bound * (1 + 1e-6));
      });
    }
  });
});

/** Vapour of a millilitre of desflurane at 20 °C and standard pressure, mL: 1.465 g/mL, 168.04 g/mol. */
const desfluraneVapourMl = (1.465 / 168.04) * 8.314462618 * 293.15 * (1000 / 101.325);

describe('flow as needed', () => {
  const phases = [{ ...hold, minutes: null, flowLPerMin: 0.5, flowAsNeeded: true }];
  const closed = {
    agent: 'desflurane',
    minutes: 120,
    circuitVolumeL: 5,
    leakMlPerMin: 30,
    sampleMlPerMin: 200,
    sampleReturned: true,
    canFlowAsNeeded: true
  } as const;
  const result = estimateCase(plain, caseOf(closed, phases));
  const number = plain.value;

  test('spills no more than the leak takes with it, and comes close to the floor', () => {
    // 30 mL/min for two hours at the target, as vapour: 3.6 L at no more than the first overpressure.
    const vapourPerMl = desfluraneVapourMl;
    expect(number(result.spilledMl)).toBeGreaterThan((3600 * result.targetFraction) / vapourPerMl);
    expect(number(result.spilledMl)).toBeLessThan((1.3 * 3600 * result.targetFraction) / vapourPerMl);
  });

  test('is what the patient and the leak take, less what the vapour fills: gas in is gas out', () => {
    const vapourPerMl = desfluraneVapourMl;
    const inL = number(result.meanFlowLPerMin) * 120 + (number(result.liquidMl) * vapourPerMl) / 1000;
    const oxygenL = 0.01 * 70 ** 0.75 * 120;
    const outL = oxygenL + (number(result.takenUpMl) * vapourPerMl) / 1000 + 0.03 * 120;
    // More than the leak leaves only at first: the half litre of vapour that fills circuit and lung makes room.
    expect(inL).toBeGreaterThanOrEqual(outL - 1e-9);
    expect(inL - outL).toBeLessThan(1);
  });

  test('meets no limit of a dial: the target is reached within two minutes at any flow', () => {
    expect(number(result.minutesToTarget)).toBeLessThan(2);
    expect(result.warnings).toEqual([]);
  });

  test('uses less than the least flow that is set by hand', () => {
    const set = estimateCase(plain, caseOf(closed, [{ ...hold, minutes: null, flowLPerMin: 0.5 }]));
    expect(number(result.liquidMl)).toBeLessThan(0.8 * number(set.liquidMl));
  });

  test('on a machine that cannot is the flow that stands beside it, and that is said', () => {
    const refused = estimateCase(plain, caseOf({ ...closed, canFlowAsNeeded: false }, phases));
    const set = estimateCase(plain, caseOf(closed, [{ ...hold, minutes: null, flowLPerMin: 0.5 }]));
    expect(number(refused.liquidMl)).toBe(number(set.liquidMl));
    expect(refused.warnings.map(({ code }) => code)).toEqual(['flow-as-needed-refused']);
  });

  test('never falls below what the machine gives at least, and then spills', () => {
    const raised = estimateCase(plain, caseOf({ ...closed, minimumFlowLPerMin: 1 }, phases));
    expect(number(raised.meanFlowLPerMin)).toBeCloseTo(1, 9);
    expect(number(raised.spilledMl)).toBeGreaterThan(2 * number(result.spilledMl));
  });

  test('without an agent is what the patient consumes and the leak', () => {
    const { meanFlowLPerMin } = estimateCase(
      plain,
      under(caseOf(closed, phases), { agent: null, technique: 'intravenous', targetMac: null })
    );
    expect(number(meanFlowLPerMin)).toBeCloseTo(0.01 * 70 ** 0.75 + 0.03, 9);
  });

  test('follows the phase before it: a start at a set flow, then as needed, then a flush', () => {
    const plan = estimateCase(
      plain,
      caseOf(closed, [
        { ...hold, minutes: 3, flowLPerMin: 6 },
        { ...hold, minutes: null, flowLPerMin: 0.5, flowAsNeeded: true },
        { vaporiser: 'off', dialPercent: null, minutes: 2, flowLPerMin: 8 }
      ])
    );
    expect(plan.phases.map(({ flowLPerMin }) => flowLPerMin > 1)).toEqual([true, false, true]);
    // Start and flush spill what a closed circuit would have kept.
    expect(number(plan.spilledMl)).toBeGreaterThan(3 * number(result.spilledMl));
  });

  test('is told in the course as it goes, above its least and below the losses', () => {
    const { flowLPerMin } = caseCourse(caseOf(closed, phases));
    const least = 0.01 * 70 ** 0.75;
    for (const flow of flowLPerMin) expect(flow).toBeGreaterThanOrEqual(least - 1e-12);
    expect(flowLPerMin.at(-1)).toBeGreaterThan(least + 0.01);
  });
});
