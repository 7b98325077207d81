import { describe, expect, test } from 'vitest';
import { estimateCase, floorOfCase } from '#lib/calc/case/estimate-case.ts';
import type { CaseConditions, CaseGiven } from '#lib/calc/case/conditions.ts';
import type { CaseResult } from '#lib/calc/case/case-result.ts';
import type { Phase } from '#lib/calc/input.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { caseOf, under } from '../../../fixtures/circle-cases.ts';

const hold = (minutes: number | null, flowLPerMin: number): Omit<Phase, 'name'> => ({
  minutes,
  flowLPerMin,
  flowAsNeeded: false,
  vaporiser: 'hold',
  dialPercent: null
});
const usual = [hold(10, 6), hold(null, 2)];

const given = (
  conditions: Partial<CaseConditions> = {},
  phases: readonly Omit<Phase, 'name'>[] = usual
): CaseGiven => {
  const { technique = 'volatile', agent = 'sevoflurane' } = conditions;
  return under(caseOf({ agent: 'sevoflurane' }, phases), {
    ...conditions,
    agent: technique === 'volatile' ? agent : null
  });
};
const estimate = (of: CaseGiven): CaseResult => estimateCase(plain, of);
const number = plain.value;
const codes = (result: CaseResult) => result.warnings.map(({ code }) => code);
const sentence = (result: CaseResult, code: string) =>
  result.warnings.find((warning) => warning.code === code)?.sentence ?? '';

describe('a volatile anaesthetic', () => {
  const result = estimate(given({ minutes: 75 }));

  test('is solved as a circle system, and its parts add up', () => {
    expect(result.method).toBe('circle-system');
    const parts = number(result.takenUpMl) + number(result.spilledMl) + number(result.leftMl);
    expect(parts / number(result.liquidMl)).toBeCloseTo(1, 12);
    expect(number(floorOfCase(plain, given({ minutes: 75 })))).toBeLessThan(number(result.liquidMl));
    expect(result.warnings).toEqual([]);
  });

  test('has its target, its MAC-hours and its mean flow', () => {
    expect(result.targetFraction).toBeCloseTo(0.018, 12);
    expect(number(result.macHours)).toBeGreaterThan(1.2);
    expect(number(result.macHours)).toBeLessThan(1.27);
    expect(number(result.meanFlowLPerMin)).toBeCloseTo((10 * 6 + 65 * 2) / 75, 12);
  });

  test('has the published formula beside it as printed, flow times dial, phase by phase', () => {
    // 190 L off the flowmeters, at the target, 182.77 mL vapour per mL liquid.
    expect(number(result.constantDialMl)).toBeCloseTo((190_000 * 0.018) / 182.77, 2);
  });

  test('has the same with the vapour added to the flow', () => {
    expect(number(result.constantDialVapourAddedMl) / number(result.constantDialMl)).toBeCloseTo(
      1 / 0.982,
      9
    );
  });

  test('reports its phases as they were run', () => {
    expect(
      result.phases.map(({ minutes, flowLPerMin, flowClass }) => [minutes, flowLPerMin, flowClass])
    ).toEqual([
      [10, 6, 'very high'],
      [65, 2, 'medium']
    ]);
  });

  test('uses oxygen, air and nothing else, as the oxygen balance says', () => {
    const consumed = 0.01 * 70 ** 0.75;
    const litres = [10 * 6, 65 * 2];
    const minutes = [10, 65];
    const oxygen = litres.reduce(
      (sum, l, i) => sum + 0.4 * (l - minutes[i]! * consumed) + minutes[i]! * consumed,
      0
    );
    const air = (190 - oxygen) / (1 - 0.2095);
    expect(number(result.airL)).toBeCloseTo(air, 9);
    expect(number(result.oxygenL)).toBeCloseTo(190 - air, 9);
    expect(number(result.nitrousOxideL)).toBe(0);
  });

  test('uses the absorbent that the spill leaves to do', () => {
    // VCO2 = 8 W^0.75; the spill carries its share of the minute ventilation away; 120 L CO2 a kilogram.
    const co2 = 0.008 * 70 ** 0.75;
    const ventilation = (0.863 * co2 * 1000) / 40 / 0.67;
    const spill = (flow: number) => flow - 0.01 * 70 ** 0.75;
    const absorbed = [
      [10, 6],
      [65, 2]
    ].reduce((sum, [t, f]) => sum + co2 * t! * (1 - Math.min(1, spill(f!) / ventilation)), 0);
    // The vapour adds a little to the spill.
    expect(number(result.co2AbsorbedL) / absorbed).toBeGreaterThan(0.97);
    expect(number(result.co2AbsorbedL)).toBeLessThan(absorbed);
    expect(number(result.absorbentKg)).toBeCloseTo(number(result.co2AbsorbedL) / 120, 12);
    expect(result.absorbentHoursPerKg).toBeCloseTo(75 / 60 / number(result.absorbentKg), 9);
  });

  test('with the vaporiser off throughout uses none, and says that the target was missed', () => {
    const off = estimate(given({}, [{ ...hold(null, 2), vaporiser: 'off' }]));
    expect(number(off.liquidMl)).toBe(0);
    expect(number(off.constantDialMl)).toBe(0);
    expect(number(off.constantDialVapourAddedMl)).toBe(0);
    expect(number(off.minutesToTarget)).toBeNull();
    expect(codes(off)).toEqual(['target-not-reached']);
  });

  test('by a fixed dial gives off what the published formula says at that dial, once the vapour is added', () => {
    const dial = estimate(given({ minutes: 60 }, [{ ...hold(null, 2), vaporiser: 'dial', dialPercent: 3 }]));
    expect(number(dial.constantDialMl)).toBeCloseTo((120_000 * 0.03) / 182.77, 2);
    expect(number(dial.liquidMl)).toBeCloseTo(number(dial.constantDialVapourAddedMl), 6);
  });

  test('at altitude holds a larger share and gets more vapour from a millilitre', () => {
    const low = given();
    const high = under(low, { ambientPressureKPa: 70 });
    expect(estimate(high).targetFraction).toBeCloseTo((0.018 * 101.325) / 70, 12);
    // The same partial pressure: nearly the same liquid.
    expect(number(estimate(high).liquidMl) / number(estimate(low).liquidMl)).toBeCloseTo(1, 1);
  });

  test('beside nitrous oxide needs less agent, and the gas itself', () => {
    const mixed = estimate(given({ nitrousOxidePercent: 50, inspiredOxygenPercent: 50 }));
    expect(mixed.targetFraction).toBeCloseTo((1 - 50 / 104) * 0.018, 12);
    expect(number(mixed.airL)).toBeCloseTo(0, 9);
    const carrier = number(mixed.oxygenL) + number(mixed.nitrousOxideL);
    expect(carrier).toBeCloseTo(10 * 6 + 110 * 2, 9);
  });

  test('under pneumoperitoneum breathes out more CO2', () => {
    const open = number(estimate(given({}, [hold(null, 0.4)])).co2AbsorbedL);
    const insufflated = estimate(given({ pneumoperitoneum: 'extraperitoneal' }, [hold(null, 0.4)]));
    expect(number(insufflated.co2AbsorbedL) / open).toBeGreaterThan(1.7);
  });

  test('has an answer for each body model', () => {
    const used = (['eger', 'reference-adult', 'two-fat'] as const).map((bodyModel) =>
      number(estimate(given({ bodyModel }, [hold(null, 0.5)])).liquidMl)
    );
    expect(new Set(used).size).toBe(3);
    expect(Math.max(...used) / Math.min(...used)).toBeLessThan(1.3);
  });
});

describe('other techniques', () => {
  test('an intravenous one uses gas and absorbent, but no agent', () => {
    const result = estimate(given({ technique: 'intravenous', targetMac: null }));
    expect(result.method).toBe('none');
    expect(number(result.liquidMl)).toBe(0);
    expect(number(result.minutesToTarget)).toBeNull();
    expect(number(result.oxygenL)).toBeGreaterThan(0);
    expect(number(result.absorbentKg)).toBeGreaterThan(0);
    expect(result.phases).toHaveLength(2);
  });

  test('a regional one uses nothing', () => {
    const result = estimate(given({ technique: 'regional', targetMac: null }));
    expect(result.method).toBe('none');
    for (const figure of [result.liquidMl, result.oxygenL, result.airL, result.absorbentKg])
      expect(number(figure)).toBe(0);
    expect(result.phases).toEqual([]);
    expect(result.absorbentHoursPerKg).toBeNull();
  });
});

describe('warnings', () => {
  test('a flow below the need is raised to it, and both are named', () => {
    const base = given({ weightKg: 70 }, [hold(5, 6), hold(null, 0.3)]);
    const leaky = under(base, { leakMlPerMin: 100, sampleMlPerMin: 200, sampleReturned: false });
    const result = estimate(leaky);
    const need = 0.01 * 70 ** 0.75 + 0.3;
    expect(result.neededFlowLPerMin).toBeCloseTo(need, 12);
    expect(result.phases[1]).toMatchObject({
      plannedFlowLPerMin: 0.3,
      flowLPerMin: result.neededFlowLPerMin
    });
    expect(codes(result)).toContain('flow-raised-to-need');
    expect(codes(result)).not.toContain('oxygen-not-held');
    expect(sentence(result, 'flow-raised-to-need')).toMatch(
      /“Phase 2” at 0\.3 L\/min: less than the 0\.542 L\/min/
    );
  });

  test('a returned sample needs no gas; the machine’s least flow does', () => {
    const base = given({}, [hold(null, 0.3)]);
    const returned = under(base, { sampleMlPerMin: 200, sampleReturned: true });
    expect(estimate(returned).neededFlowLPerMin).toBeCloseTo(0.01 * 70 ** 0.75, 12);
    const least = under(returned, { minimumFlowLPerMin: 0.5 });
    expect(estimate(least).phases[0]?.flowLPerMin).toBe(0.5);
  });

  test('a flow below the oxygen consumption cannot hold inspired oxygen', () => {
    expect(codes(estimate(given({}, [hold(null, 0.2)])))).toEqual(
      expect.arrayContaining(['flow-raised-to-need', 'oxygen-not-held'])
    );
  });

  test('a case shorter than its plan is cut from the plan’s end', () => {
    const result = estimate(given({ minutes: 12 }, [hold(10, 6), hold(null, 1), hold(5, 8)]));
    expect(result.phases.map(({ minutes }) => minutes)).toEqual([10, 2]);
    expect(result.phases.map(({ flowLPerMin }) => flowLPerMin)).toEqual([6, 8]);
    expect(sentence(result, 'case-shorter-than-plan')).toMatch(/12 min.*15 min.*cut from its end/);
    expect(estimate(given({ minutes: 4 })).phases.map(({ minutes }) => minutes)).toEqual([4]);
    expect(codes(estimate(given({ minutes: 10 })))).toEqual([]);
  });

  test('a dial above the maximum is taken at the maximum', () => {
    const phase = (dialPercent: number | null) => [
      { ...hold(null, 2), vaporiser: 'dial' as const, dialPercent }
    ];
    const over = estimate(given({}, phase(9)));
    expect(sentence(over, 'dial-above-maximum')).toMatch(
      /“Phase 1” at 9 %: above the vaporiser’s maximum of 8 %/
    );
    expect(number(over.liquidMl)).toBe(number(estimate(given({}, phase(8))).liquidMl));
  });

  test('a target that the vaporiser cannot give is told before one that was not reached in time', () => {
    const tooHigh = [{ ...hold(null, 6), dialPercent: 1.5 }];
    expect(codes(estimate(given({}, tooHigh)))).toEqual(['target-above-vaporiser']);
    const slow = estimate(given({ minutes: 5, agent: 'isoflurane' }, [hold(null, 0.5)]));
    expect(codes(slow)).toEqual(['target-not-reached']);
    expect(sentence(slow, 'target-not-reached')).toMatch(/1\.17 % isoflurane was not reached in 5 min/);
  });

  test('a target that sags after it was reached is told with its minutes', () => {
    const sagging = estimate(given({ agent: 'isoflurane' }, [hold(6, 6), hold(null, 0.25)]));
    expect(number(sagging.minutesBelowTarget)).toBeGreaterThan(1);
    expect(sentence(sagging, 'target-sagged')).toMatch(/below 95 % of it for \d/);
    const coasting = estimate(
      given({ agent: 'isoflurane' }, [hold(null, 2), { ...hold(10, 2), vaporiser: 'off' }])
    );
    expect(number(coasting.minutesBelowTarget)).toBeGreaterThan(5);
    expect(codes(coasting)).not.toContain('target-sagged');
  });

  test('nitrous oxide that comes to the target alone leaves none to the agent', () => {
    const result = estimate(given({ targetMac: 0.5, nitrousOxidePercent: 60 }));
    expect(result.targetFraction).toBe(0);
    expect(number(result.liquidMl)).toBe(0);
    expect(number(result.minutesToTarget)).toBe(0);
    expect(codes(result)).toEqual(['nitrous-oxide-target']);
  });

  test('that nitrous oxide spares less in a child than is counted is said, and only there', () => {
    const child = { weightKg: 30, ageYears: 8 };
    expect(codes(estimate(given({ ...child, nitrousOxidePercent: 60 })))).toEqual(['child-nitrous-oxide']);
    expect(codes(estimate(given(child)))).toEqual([]);
    expect(codes(estimate(given({ ageYears: 12, nitrousOxidePercent: 60 })))).toEqual([]);
  });

  test('a child’s own lines are used below 25 kg, and the step against the adult formula is said', () => {
    const child = estimate(given({ weightKg: 17, ageYears: 4 }));
    expect(child.neededFlowLPerMin).toBeCloseTo((5 * 17 + 19.8) / 1000, 12);
    expect(sentence(child, 'child-formula')).toMatch(
      /105 mL\/min.*adult formula gives 83\.7.*145 against 112 mL\/min/
    );
    expect(codes(estimate(given({ weightKg: 25 })))).toEqual([]);
  });
});

test('extreme but valid cases compute', () => {
  for (const row of [
    { weightKg: 3, ageYears: 1 },
    { weightKg: 200 },
    { minutes: 720 },
    { weightKg: 3, ageYears: 1, minutes: 720, agent: 'halothane' as const }
  ]) {
    const base = given(row);
    // 3 000 m above the sea.
    const result = estimate(under(base, { ambientPressureKPa: 70.1 }));
    expect(number(result.liquidMl)).toBeGreaterThan(0);
    expect(number(result.minutesToTarget)).toBeLessThan(5);
  }
});

test('every leaf of the working names its cell, its constant or its assumption', () => {
  const leaves = new Set<string>();
  const walk = (working: ReturnType<typeof workingOf>): void => {
    if (working.kind === 'step' || working.kind === 'method')
      for (const input of Object.values(working.inputs)) [input].flat().forEach(walk);
    else if (working.kind === 'cell') leaves.add(working.path);
    else if (working.kind === 'constant') leaves.add(working.constant.id);
    else if (working.kind === 'default') leaves.add(`${working.path} → ${working.constant.id}`);
  };
  const result = estimateCase(recorder, given({ pneumoperitoneum: 'intraperitoneal' }));
  walk(workingOf(result.liquidMl));
  walk(workingOf(result.absorbentKg));
  expect([...leaves]).toEqual(
    expect.arrayContaining([
      'caseMix.case.minutes',
      'caseMix.case.weightKg',
      'caseMix.case.ageYears',
      'caseMix.case.targetMac',
      'flowPlans.plan.phases.0.minutes',
      'flowPlans.plan.phases.1.flowLPerMin',
      'machines.machine.leakMlPerMin',
      'machines.machine.circuitVolumeL → circuit.volume',
      'site.theatreTemperatureC',
      'site.ambientPressureKPa',
      'absorbents.lime.capacityLPerKg',
      'sevoflurane.blood-gas',
      'body.eger.fat.volume',
      'pneumoperitoneum.intraperitoneal.co2-rise'
    ])
  );
});
