/** What set 2026-2 does that the first did not, by figures worked out beside it. */
import { describe, expect, it } from 'vitest';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { caseCourse } from '#lib/calc/case/case-course.ts';
import { modelCase } from '#lib/calc/case/case-model.ts';
import type { CaseConditions } from '#lib/calc/case/conditions.ts';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { take } from '#lib/calc/reference/reference-set.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { caseOf } from '../../../fixtures/circle-cases.ts';

const hold = { vaporiser: 'hold', dialPercent: null } as const;
const of = (
  conditions: Partial<Omit<CaseConditions, 'agent'>>,
  reference: ReferenceSet = referenceSet2026Second
) => ({
  ...caseOf({ agent: 'sevoflurane', ...conditions }, [
    { ...hold, minutes: 20, flowLPerMin: 4 },
    { ...hold, minutes: null, flowLPerMin: 1 }
  ]),
  reference
});
const model = (conditions: Partial<Omit<CaseConditions, 'agent'>>, reference?: ReferenceSet) =>
  modelCase(plain, of(conditions, reference));

describe('gas exchange under anaesthesia', () => {
  const value = (id: string) => take(referenceSet2026Second, id).value;
  const perSizeOf = (perSurface: number) => (perSurface * value('body.standard-surface')) / 70 ** 0.75;

  it('has the oxygen coefficient that follows from its two measurements, to one decimal', () => {
    const mean = (value('gas-exchange.oxygen.calorimetry') + value('gas-exchange.oxygen.collected-gas')) / 2;
    expect(value('body.oxygen-consumption.coefficient')).toBe(Number(perSizeOf(mean).toFixed(1)));
  });

  it('has a CO2 coefficient between a quotient of 0.8 and what was measured', () => {
    const co2 = value('body.co2-production.coefficient');
    expect(co2).toBeGreaterThan(perSizeOf(0.8 * value('gas-exchange.oxygen.calorimetry')));
    expect(co2).toBeLessThan(perSizeOf(value('gas-exchange.co2.before-insufflation')));
  });

  it('gives an adult of 70 kg 181 to 185 mL/min oxygen and 145 to 170 mL/min CO2, as two studies have it', () => {
    const { oxygenMlPerMin, phases } = model({});
    expect(plain.value(oxygenMlPerMin)).toBeGreaterThan(181 * 0.92);
    expect(plain.value(oxygenMlPerMin)).toBeLessThan(185 * 1.08);
    expect(plain.value(phases[0]!.breathing[0]!.co2MlPerMin)).toBeGreaterThan(145 * 0.92);
    expect(plain.value(phases[0]!.breathing[0]!.co2MlPerMin)).toBeLessThan(170 * 1.08);
  });
});

describe('from child to adult', () => {
  const at = (weightKg: number, reference?: ReferenceSet) => {
    const { oxygenMlPerMin, phases, agent } = model({ weightKg }, reference);
    return [
      plain.value(oxygenMlPerMin),
      plain.value(phases[0]!.breathing[0]!.co2MlPerMin),
      agent!.circle.lungVolumeL
    ] as const;
  };

  it.each([25, 60, 30 * 1.7 ** 2])('nothing steps at %f kg', (weightKg) => {
    const below = at(weightKg - 1e-6);
    at(weightKg + 1e-6).forEach((figure, i) => expect(figure / below[i]!).toBeCloseTo(1, 6));
  });

  it('the first set steps at 25 kg, and keeps its step', () => {
    expect(at(25, referenceSet2026)[0] / at(25 - 1e-6, referenceSet2026)[0]).toBeLessThan(0.8);
  });

  it('the bridge leads from 144.8 to 161.7 mL/min oxygen and never falls', () => {
    expect(at(25)[0]).toBeCloseTo(144.8, 1);
    expect(at(60)[0]).toBeCloseTo(161.7, 1);
    const along = Array.from({ length: 36 }, (_, i) => at(25 + i)[0]);
    expect(along).toEqual([...along].sort((a, b) => a - b));
  });
});

describe('insufflation as a course in time', () => {
  const insufflated = (kind: CaseConditions['pneumoperitoneum'], minutes: number, from: number) => ({
    ...caseOf({ agent: 'sevoflurane', pneumoperitoneum: kind, minutes }, [
      { ...hold, minutes: from, flowLPerMin: 2 },
      { ...hold, minutes: null, flowLPerMin: 2 }
    ]),
    reference: referenceSet2026Second
  });
  const resting = model({}).phases[0]!.breathing[0]!;
  /** Each part of the case, phase by phase: its minutes, the mean rise, and the rise of ventilation at both ends. */
  const parts = (...of: Parameters<typeof insufflated>) =>
    modelCase(plain, insufflated(...of)).phases.flatMap(({ breathing }) =>
      breathing.map(({ minutes, co2MlPerMin, ventilationLPerMin, change }) => {
        const rise = (litres: unknown) => Number(litres) / plain.value(resting.ventilationLPerMin) - 1;
        return {
          minutes: plain.value(minutes),
          mean: plain.value(co2MlPerMin) / plain.value(resting.co2MlPerMin) - 1,
          from: rise(change?.fromLPerMin ?? ventilationLPerMin),
          until: rise(change?.untilLPerMin ?? ventilationLPerMin)
        };
      })
    );
  const expectParts = (got: ReturnType<typeof parts>, expected: readonly (readonly number[])[]) => {
    expect(got).toHaveLength(expected.length);
    got.forEach(({ minutes, mean, from, until }, i) =>
      [minutes, mean, from, until].forEach((figure, at) => expect(figure).toBeCloseTo(expected[i]![at]!, 12))
    );
  };

  it('begins after 8 min, grows evenly, and stays at 25 % from 20 min in the peritoneum', () => {
    expectParts(parts('intraperitoneal', 120, 14), [
      [8, 0, 0, 0],
      [6, 0.0625, 0, 0.125],
      [6, 0.1875, 0.125, 0.25],
      [100, 0.25, 0.25, 0.25]
    ]);
  });

  it('goes on to 63 % at 90 min outside the peritoneum', () => {
    expectParts(parts('extraperitoneal', 180, 30), [
      [8, 0, 0, 0],
      [22, 0.19, 0, 0.38],
      [30, 0.42, 0.38, 0.46],
      [30, 0.545, 0.46, 0.63],
      [90, 0.63, 0.63, 0.63]
    ]);
  });

  it('has the same CO2 in a case however the plan is cut', () => {
    const total = (from: number) =>
      parts('extraperitoneal', 100, from).reduce((sum, { minutes, mean }) => sum + minutes * mean, 0);
    expect(total(17)).toBeCloseTo(total(64), 10);
  });

  it('is the same in the first minutes of a case however long the case goes on', () => {
    const [short, long] = [30, 60].map((minutes) => {
      const { minutes: at, endTidalPercent } = caseCourse(insufflated('extraperitoneal', minutes, 10));
      return endTidalPercent[at.findLastIndex((minute) => minute <= 30 + 1e-9)];
    });
    expect(short).toBeCloseTo(long!, 6);
  });

  it('jumps where a figure of one’s own lets it begin only after its plateau', () => {
    const own = new Map(referenceSet2026Second.constants);
    own.set('insufflation.begins', { ...own.get('insufflation.begins')!, value: 25 });
    const given = {
      ...insufflated('intraperitoneal', 60, 10),
      reference: { ...referenceSet2026Second, constants: own }
    };
    const rises = modelCase(plain, given).phases.flatMap(({ breathing }) =>
      breathing.map(({ minutes, change }) => [plain.value(minutes), change])
    );
    expect(rises).toEqual([
      [10, null],
      [15, null],
      [35, null]
    ]);
  });

  it('is balanced to rounding, phase by phase', () => {
    const { liquidMl, takenUpMl, spilledMl, leftMl } = estimateCase(
      plain,
      of({ pneumoperitoneum: 'extraperitoneal' })
    );
    expect(liquidMl).toBeCloseTo(Number(takenUpMl) + Number(spilledMl) + Number(leftMl), 9);
  });
});

describe('obesity', () => {
  it('lets lean tissue grow by lean weight, gives the rest of the weight to fat, and makes the lung smaller', () => {
    const slim = model({ weightKg: 30 * 1.7 ** 2 }).agent!.circle;
    const obese = model({ weightKg: 130 }).agent!.circle;
    const lean = (weightKg: number) => {
      const index = weightKg / 1.7 ** 2;
      return (9270 * weightKg * (1 / (6680 + 216 * index) + 1 / (8780 + 244 * index))) / 2;
    };
    const grown = lean(130) / lean(30 * 1.7 ** 2);
    expect(obese.tissues[0]!.volumeL / slim.tissues[0]!.volumeL).toBeCloseTo(grown, 10);
    expect(obese.tissues[1]!.volumeL / slim.tissues[1]!.volumeL).toBeCloseTo(grown, 10);
    expect(obese.tissues[2]!.volumeL - slim.tissues[2]!.volumeL).toBeCloseTo(
      130 - 30 * 1.7 ** 2 - (lean(130) - lean(30 * 1.7 ** 2)),
      10
    );
    expect(obese.lungVolumeL).toBeLessThan(slim.lungVolumeL);
  });

  it('is not looked at in the first set', () => {
    const [one, two] = [70, 140].map((weightKg) => model({ weightKg }, referenceSet2026).agent!.circle);
    one!.tissues.forEach(({ volumeL }, i) => expect(two!.tissues[i]!.volumeL).toBeCloseTo(2 * volumeL, 10));
  });
});
