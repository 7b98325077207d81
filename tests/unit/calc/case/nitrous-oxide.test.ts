/** Nitrous oxide as a gas that is taken up: against a general-purpose library, and what follows for the use of it. */
import { describe, expect, test } from 'vitest';
import { modelCase } from '#lib/calc/case/case-model.ts';
import { emptyOutcome, solveCircleSystem } from '#lib/calc/case/circle-system.ts';
import type { CaseConditions, CaseGiven } from '#lib/calc/case/conditions.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { referenceSet2026Third } from '#lib/calc/reference/reference-set-2026-3.ts';
import { withOverrides } from '#lib/calc/reference/reference-set.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { twoGasesByOdex } from '../../../fixtures/circle-by-odex.ts';
import { caseOf, randomConditions, seededRandom, under } from '../../../fixtures/circle-cases.ts';

const hold = { vaporiser: 'hold', dialPercent: null } as const;
const washIn = { ...hold, minutes: 10, flowLPerMin: 6 };
const of = (
  conditions: Partial<CaseConditions>,
  phases: Parameters<typeof caseOf>[1],
  reference: ReferenceSet = referenceSet2026Third
): CaseGiven => ({
  ...caseOf({ agent: 'sevoflurane', nitrousOxidePercent: 60, ...conditions } as never, phases),
  reference
});
const figures = (given: CaseGiven) => {
  const result = estimateCase(plain, given);
  return {
    liquidMl: plain.value(result.liquidMl),
    spilledMl: plain.value(result.spilledMl),
    minutesToTarget: plain.value(result.minutesToTarget) ?? NaN,
    nitrousOxideL: plain.value(result.nitrousOxideL),
    oxygenL: plain.value(result.oxygenL),
    meanFlowLPerMin: plain.value(result.meanFlowLPerMin),
    co2AbsorbedL: plain.value(result.co2AbsorbedL),
    warnings: result.warnings.map(({ code }) => code)
  };
};
const gasOf = (given: CaseGiven) => {
  const { nitrousOxide } = modelCase(plain, given);
  if (nitrousOxide === null) throw new Error('No nitrous oxide is followed here.');
  return nitrousOxide;
};

describe('against both gases solved at once by a library', () => {
  const random = seededRandom(1128);
  const differences = (given: CaseGiven) => {
    const { agent, nitrousOxide } = modelCase(plain, given);
    if (agent === null || nitrousOxide === null) throw new Error('Two gases were wanted.');
    const reference = twoGasesByOdex(agent.circle, nitrousOxide.circle, 1);
    const ours = emptyOutcome();
    solveCircleSystem(agent.circle, ours);
    return {
      agentDelivered: ours.deliveredL / reference.agent.deliveredL - 1,
      agentTakenUp: ours.takenUpL / reference.agent.takenUpL - 1,
      given: nitrousOxide.outcome.deliveredL / reference.nitrousOxide.deliveredL - 1,
      takenUp: nitrousOxide.outcome.takenUpL / reference.nitrousOxide.takenUpL - 1
    };
  };
  /** Any case with nitrous oxide beside an agent that is wanted, on flows that the patient's oxygen leaves something of. */
  const cases = Array.from({ length: 40 }, (_, i): CaseGiven => {
    const drawn = under(randomConditions(random), {
      nitrousOxidePercent: 10 + 60 * random(),
      targetMac: 1 + 0.5 * random(),
      ...(i % 4 === 0 ? { spillShareInspiredFraction: random() } : {})
    });
    const phases = drawn.conditions.phases.map((phase) => ({
      ...phase,
      flowLPerMin: phase.flowLPerMin + 0.4
    }));
    return { ...under(drawn, { phases }), reference: referenceSet2026Third };
  });

  test('volumes of 40 random cases agree within 1 % where the flow is set', () => {
    for (const given of cases)
      for (const difference of Object.values(differences(given)))
        expect(Math.abs(difference)).toBeLessThan(0.01);
  }, 300_000);

  test('and within 3 % where it follows the need', () => {
    for (const given of cases) {
      const phases = given.conditions.phases.map((phase) => ({ ...phase, flowAsNeeded: true }));
      const asNeeded = under(given, { phases, canFlowAsNeeded: true, leakMlPerMin: 100 });
      for (const difference of Object.values(differences(asNeeded)))
        expect(Math.abs(difference)).toBeLessThan(0.03);
    }
  }, 300_000);
});

describe('flowmeters that are set', () => {
  const phases = [washIn, { ...hold, minutes: null, flowLPerMin: 0.5 }];
  const followed = figures(of({}, phases));
  const notFollowed = figures(of({}, phases, referenceSet2026Second));

  test('give what they give, taken up or not', () => {
    expect(followed.nitrousOxideL).toBe(notFollowed.nitrousOxideL);
    expect(gasOf(of({}, phases)).outcome.deliveredL).toBeCloseTo(followed.nitrousOxideL, 9);
  });

  test('leave less to spill by what is taken up, and so less agent is lost', () => {
    const { takenUpL } = gasOf(of({}, phases)).outcome;
    expect(takenUpL).toBeGreaterThan(10);
    expect(followed.liquidMl).toBeLessThan(0.95 * notFollowed.liquidMl);
    expect(followed.co2AbsorbedL).toBeGreaterThan(notFollowed.co2AbsorbedL);
  });

  test('bring the agent to its target sooner beside nitrous oxide, as more is drawn into the lung', () => {
    const dial = [{ vaporiser: 'dial', dialPercent: 4, minutes: null, flowLPerMin: 4 } as const];
    const minutes = (reference: ReferenceSet) =>
      figures(of({ agent: 'desflurane', targetMac: 1, nitrousOxidePercent: 50 }, dial, reference))
        .minutesToTarget;
    const less = withOverrides(referenceSet2026Third, [
      { constant: 'nitrous-oxide.drawn-in-share', value: 0, unit: '%', reason: 'test' }
    ]);
    expect(minutes(referenceSet2026Third)).toBeLessThan(minutes(less));
    expect(minutes(less)).toBeLessThan(minutes(referenceSet2026Second));
  });

  test('below what is taken up are told of', () => {
    const starved = [washIn, { ...hold, minutes: null, flowLPerMin: 0.2 }];
    expect(figures(of({}, starved)).warnings).toContain('nitrous-oxide-short');
    expect(followed.warnings).not.toContain('nitrous-oxide-short');
  });
});

describe('flow that follows the need', () => {
  const phases = [{ ...hold, minutes: null, flowLPerMin: 0.5, flowAsNeeded: true }];
  const machine = { canFlowAsNeeded: true, leakMlPerMin: 100 };
  const given = of(machine, phases);

  test('uses what fills, what is taken up and what is lost', () => {
    const { outcome } = gasOf(given);
    const { nitrousOxideL, oxygenL, meanFlowLPerMin } = figures(given);
    expect(nitrousOxideL).toBeCloseTo(
      outcome.takenUpL + outcome.spilledL + outcome.leftInCircuitL + outcome.leftInLungL,
      9
    );
    // A leak of 0.1 L/min at 60 % for two hours, and what leaves while the circuit fills.
    expect(outcome.spilledL).toBeGreaterThan(0.9 * 0.6 * 0.1 * 120);
    expect(outcome.leftInCircuitL).toBeCloseTo(0.6 * 7, 1);
    expect(meanFlowLPerMin).toBeCloseTo((nitrousOxideL + oxygenL) / 120, 6);
  });

  test('counts several times what a share of the flow comes to', () => {
    expect(figures(given).nitrousOxideL).toBeGreaterThan(
      4 * figures(of(machine, phases, referenceSet2026Second)).nitrousOxideL
    );
  });

  test('is the same without an agent, but for its vapour', () => {
    const intravenous = of({ ...machine, technique: 'intravenous', agent: null, targetMac: null }, phases);
    const [without, with_] = [figures(intravenous), figures(given)];
    expect(without.nitrousOxideL).toBe(with_.nitrousOxideL);
    expect(without.meanFlowLPerMin / with_.meanFlowLPerMin).toBeCloseTo(1, 1);
  });
});

test('a case without nitrous oxide has the bits of the set before', () => {
  const random = seededRandom(3);
  for (let i = 0; i < 50; i++) {
    const given = randomConditions(random);
    expect(estimateCase(plain, { ...given, reference: referenceSet2026Third })).toEqual(
      estimateCase(plain, { ...given, reference: referenceSet2026Second })
    );
  }
});
