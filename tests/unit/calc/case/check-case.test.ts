import { expect, test } from 'vitest';
import type { CaseConditions, CaseGiven } from '#lib/calc/case/conditions.ts';
import type { Phase } from '#lib/calc/input.ts';
import { checkCase } from '#lib/calc/case/check-case.ts';
import { caseCourse } from '#lib/calc/case/case-course.ts';
import { estimateCase } from '#lib/calc/case/estimate-case.ts';
import { flowCurve } from '#lib/calc/case/flow-curve.ts';
import { OutOfRangeError } from '#lib/calc/case/out-of-range-error.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { caseOf, under } from '../../../fixtures/circle-cases.ts';

const sound = caseOf({ agent: 'sevoflurane' }, [
  { minutes: 5, flowLPerMin: 6, vaporiser: 'hold', dialPercent: null },
  { minutes: null, flowLPerMin: 1, vaporiser: 'dial', dialPercent: 3 }
]);

const withRow = (row: Partial<CaseConditions>): CaseGiven => under(sound, row);
const withPhase = (phase: Partial<Phase>): CaseGiven => {
  const [first, second] = sound.conditions.phases;
  return under(sound, { phases: [first!, { ...second!, ...phase }] });
};
const withSite = withRow;

const refused: readonly (readonly [string, CaseGiven, string, string])[] = [
  [
    'a flow of 0',
    withPhase({ flowLPerMin: 0 }),
    'flowPlans.plan.phases.1.flowLPerMin',
    'Fresh gas flow: 0 L/min was given; allowed is above 0 to 20 L/min.'
  ],
  [
    'a negative flow',
    withPhase({ flowLPerMin: -1 }),
    'flowPlans.plan.phases.1.flowLPerMin',
    'Fresh gas flow: -1 L/min was given; allowed is above 0 to 20 L/min.'
  ],
  [
    'a dial of 100 %',
    withPhase({ dialPercent: 100 }),
    'flowPlans.plan.phases.1.dialPercent',
    'Dial: 100 % was given; allowed is above 0 to below 100 %.'
  ],
  [
    'a fixed dial without a setting',
    withPhase({ dialPercent: null }),
    'flowPlans.plan.phases.1.dialPercent',
    'Dial: none was given; allowed is above 0 to below 100 %.'
  ],
  [
    'a weight of 0',
    withRow({ weightKg: 0 }),
    'caseMix.case.weightKg',
    'Weight: 0 kg was given; allowed is 1 to 300 kg.'
  ],
  [
    'an age below 1',
    withRow({ ageYears: 0.5 }),
    'caseMix.case.ageYears',
    'Age: 0.5 years was given; allowed is 1 to 120 years; the published MAC formula is not valid below 1 year.'
  ],
  [
    'no target',
    withRow({ targetMac: null }),
    'caseMix.case.targetMac',
    'Target: none was given; allowed is above 0 to 3 MAC.'
  ],
  [
    'a length of 0',
    withRow({ minutes: 0 }),
    'caseMix.case.minutes',
    'Minutes: 0 min was given; allowed is 0.1 to 1440 min.'
  ],
  [
    'nitrous oxide that leaves no room for the oxygen',
    withRow({ nitrousOxidePercent: 70 }),
    'caseMix.case.nitrousOxidePercent',
    'Nitrous oxide: 70 % was given; allowed is 0 to 60 % beside 40 % oxygen.'
  ],
  [
    'a pressure below 50 kPa',
    withSite({ ambientPressureKPa: 49 }),
    'site.ambientPressureKPa',
    'Ambient pressure: 49 kPa was given; allowed is 50 to 110 kPa.'
  ],
  [
    'a pressure above 110 kPa',
    withSite({ ambientPressureKPa: 111 }),
    'site.ambientPressureKPa',
    'Ambient pressure: 111 kPa was given; allowed is 50 to 110 kPa.'
  ],
  [
    'what is not a number',
    withSite({ ambientPressureKPa: NaN }),
    'site.ambientPressureKPa',
    'Ambient pressure: none was given; allowed is 50 to 110 kPa.'
  ],
  [
    'no agent',
    under(sound, { agent: null }),
    'caseMix.case.agent',
    'Agent: none was given; allowed is one of sevoflurane, isoflurane, desflurane, halothane, enflurane.'
  ]
];

test.each(refused)('%s is refused with its place and a sentence', (_, given, path, message) => {
  const attempts = [
    () => checkCase(given),
    () => estimateCase(plain, given),
    () => caseCourse(given),
    () => flowCurve(given)
  ];
  for (const attempt of attempts.slice(0, path.endsWith('flowLPerMin') ? 3 : 4)) {
    try {
      attempt();
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(OutOfRangeError);
      expect(error).toMatchObject({ path, message });
    }
  }
});

test('what a technique does not use is not asked for', () => {
  const regional = withRow({ technique: 'regional', targetMac: null, ageYears: 0 });
  expect(() => checkCase(under(regional, { agent: null }))).not.toThrow();
  const intravenous = withRow({ technique: 'intravenous', targetMac: null, ageYears: 0.2 });
  expect(() => checkCase(under(intravenous, { agent: null }))).not.toThrow();
});
