/** Results of cases that are kept over edits: a changed cell that a case depends on is never answered from before it. */
import { describe, expect, test } from 'vitest';
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import { writeCell } from '#lib/calc/cell-path.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { FlowPlan } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { hernia, hip, low, neck, usual, wholeWorkbook } from '../fixtures/whole-workbook.ts';

// Below what leak, gas sample and patient need, so that these decide the flow.
const dialled: FlowPlan = {
  ...low,
  phases: low.phases.map((phase) => ({
    ...phase,
    flowLPerMin: phase.minutes === null ? 0.4 : phase.flowLPerMin,
    vaporiser: 'dial' as const,
    dialPercent: 2
  }))
};
const laparoscopy = { ...hernia, pneumoperitoneum: 'intraperitoneal' as const, nitrousOxidePercent: 30 };
const workbook = wholeWorkbook({ caseMix: [laparoscopy, neck, hip], flowPlans: [usual, dialled] });

const textOf = (of: Workbook, memo?: CaseMemo): string => JSON.stringify(estimate(coreInput(of), memo));
const before = textOf(workbook);

const edits: readonly (readonly [string, string, unknown])[] = [
  ['minutes', 'caseMix.hernia.minutes', 61],
  ['age', 'caseMix.hernia.ageYears', 51],
  ['weight', 'caseMix.hernia.weightKg', 79],
  ['technique', 'caseMix.hernia.technique', 'intravenous'],
  ['agent', 'caseMix.hernia.agent', 'desflurane'],
  ['target', 'caseMix.hernia.targetMac', 0.9],
  ['nitrous oxide', 'caseMix.hernia.nitrousOxidePercent', 31],
  ['inspired oxygen', 'caseMix.hernia.inspiredOxygenPercent', 41],
  ['pneumoperitoneum', 'caseMix.hernia.pneumoperitoneum', 'none'],
  ['minutes of a phase', 'flowPlans.low.phases.0.minutes', 6],
  ['fresh gas flow', 'flowPlans.low.phases.1.flowLPerMin', 1.5],
  ['vaporiser', 'flowPlans.low.phases.1.vaporiser', 'off'],
  ['dial', 'flowPlans.low.phases.1.dialPercent', 2.1],
  ['circuit volume', 'machines.old.circuitVolumeL', 8],
  ['leak', 'machines.old.leakMlPerMin', 130],
  ['gas sample', 'machines.old.sampleMlPerMin', 210],
  ['return of the gas sample', 'machines.old.sampleReturned', true],
  ['least flow', 'machines.old.minimumFlowLPerMin', 1.5],
  ['absorbent', 'machines.old.absorbent', 'alkali-free'],
  ['capacity of the absorbent', 'absorbents.soda-lime.capacityLPerKg', 121],
  ['theatre temperature', 'site.theatreTemperatureC', 21],
  ['ambient pressure', 'site.ambientPressureKPa', 100],
  ['body model', 'accounting.bodyModel', 'two-fat'],
  ['set of MAC', 'accounting.macSet', 'textbook'],
  ['group of solubilities', 'accounting.solubilityGroup', 'patients'],
  [
    'constants',
    'overrides',
    [{ constant: 'sevoflurane.liquid-density', value: 1.5, unit: 'g/mL', reason: 'A test.' }]
  ]
];

describe('a case on a low plan with a dial is told apart from one that differs only in its', () => {
  test.each(edits)('%s', (_, path, value) => {
    const edited = writeCell(workbook, path, value);
    const memo = new CaseMemo();
    expect(textOf(workbook, memo)).toBe(before);
    const fresh = textOf(edited);
    expect(fresh).not.toBe(before);
    expect(textOf(edited, memo)).toBe(fresh);
  });
});

test('a group of another name, count or measured use needs no new case', () => {
  const memo = new CaseMemo();
  textOf(workbook, memo);
  const known = memo.computed;
  for (const [path, value] of [
    ['caseMix.hernia.name', 'Another name'],
    ['caseMix.hernia.casesPerYear', 300],
    ['caseMix.hernia.measuredMlPerCase', 12]
  ] as const) {
    const edited = writeCell(workbook, path, value);
    expect(textOf(edited, memo)).toBe(textOf(edited));
  }
  expect(memo.computed).toBe(known);
});
