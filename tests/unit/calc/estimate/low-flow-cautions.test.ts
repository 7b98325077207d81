import { describe, expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { warningsBesideCautions } from '#lib/calc/estimate/estimate-warnings.ts';
import type { CaseRow, Scenario } from '#lib/calc/input.ts';
import { statements } from '#lib/calc/reference/statements.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

// Only names and structure are the department's; rows, plans and counts are made here.
const demo = departmentWorkbook();
const hold = { flowAsNeeded: false, vaporiser: 'hold', dialPercent: null } as const;
const plan = (id: string, flowLPerMin: number) => ({
  id,
  name: id,
  phases: [
    { name: 'Wash-in', minutes: 5, flowLPerMin: 6, ...hold },
    { name: 'Maintenance', minutes: null, flowLPerMin, ...hold }
  ]
});
const row = (id: string, more: Partial<CaseRow>): CaseRow => ({
  ...(demo.caseMix[0] as CaseRow),
  id,
  name: id,
  technique: 'volatile',
  agent: 'sevoflurane',
  targetMac: 1,
  measuredMlPerCase: null,
  ...more
});
const scenario = (id: string, flowPlan: string, more: Partial<Scenario> = {}): Scenario => ({
  ...(demo.scenarios[0] as Scenario),
  id,
  name: `${id} plan`,
  baseline: id === 'today',
  plans: { 'm-old': flowPlan },
  flowPlanByCase: {},
  agentSwitch: {},
  adoptionPercent: 100,
  ...more
});
const rows = [
  row('short', { minutes: 60, casesPerYear: 300 }),
  row('long', { minutes: 200, casesPerYear: 40 }),
  row('desflurane', { agent: 'desflurane', minutes: 60, casesPerYear: 500 }),
  row('none-this-year', { minutes: 60, casesPerYear: 0 })
];
const made = (scenarios: readonly Scenario[], more: Partial<typeof demo> = {}) =>
  estimate(
    coreInput({
      ...demo,
      ...more,
      caseMix: rows,
      flowPlans: [plan('two', 2), plan('one', 1), plan('half', 0.5)],
      // A machine without needs of its own, so that the plan's flows are the flows.
      machines: demo.machines.map((machine) => ({
        ...machine,
        leakMlPerMin: 0,
        sampleReturned: true,
        minimumFlowLPerMin: 0
      })),
      scenarios,
      ranges: {}
    })
  );

describe('the low-flow caution of sevoflurane', () => {
  const found = made([
    scenario('today', 'two'),
    scenario('minimal', 'half', { adoptionPercent: 80 }),
    scenario('low', 'one')
  ]);

  it('counts the case groups and cases that run below 1 L/min, of sevoflurane alone', () => {
    const [minimal] = found.cautions;
    expect(minimal).toMatchObject({
      id: 'sevoflurane-low-flow',
      level: 'caution',
      scenario: 'minimal',
      rows: ['short', 'long'],
      casesPerYear: 340
    });
    expect(minimal?.sentence).toMatch(
      /“minimal plan” runs sevoflurane below 1 L\/min, which the US label does not recommend, in 2 case groups \(340 cases a year\)\. Of these cases 80\u00a0% follow the plan\..*local policy decide\.$/
    );
    expect(minimal?.source).toContain('US prescribing information, sevoflurane');
    expect(minimal?.evidence).toBe('read');
  });

  it('counts the groups that run longer than the label allows at 1 to below 2 L/min', () => {
    const low = found.cautions.filter((caution) => caution.scenario === 'low');
    expect(low.map((caution) => caution.rows)).toEqual([['long']]);
    expect(low[0]?.sentence).toContain(
      'at 1 to below 2 L/min for longer than the 2 MAC-hours that the US label allows, in 1 case group (40 cases a year).'
    );
    expect(low[0]?.sentence).not.toContain('follow the plan');
  });

  it('is not raised where every plan keeps to the label', () => {
    expect(found.cautions.map((caution) => caution.scenario)).toEqual(['minimal', 'low']);
    expect(made([scenario('today', 'two')]).cautions).toEqual([]);
  });

  describe('where machines come to a part of the theatres', () => {
    const [group] = demo.theatreGroups;
    if (group === undefined) throw new Error('the demo has a theatre group');
    const four = { theatreGroups: [{ ...group, id: 'main', theatres: 4, machine: 'm-old' }] };
    const moves = (theatres: number, year = 0) => ({
      moves: [{ theatreGroup: 'main', machine: 'm-closed', year, theatres, payment: null }]
    });
    const told = (more: Partial<Scenario>) =>
      made([scenario('today', 'two'), scenario('part', 'two', more)], four).cautions.filter(
        (caution) => caution.scenario === 'part'
      );

    it('counts the cases that are done there, and no others', () => {
      const [caution] = told({ ...moves(1), plans: { 'm-closed': 'half', 'm-old': 'two' } });
      expect(caution?.rows).toEqual(['short', 'long']);
      expect(caution?.casesPerYear).toBe(85);
      expect(caution?.sentence).toContain('in 2 case groups (85 cases a year)');
    });

    it('counts those in the theatres whose machine stays, where it is their plan that goes below', () => {
      const [caution] = told({ ...moves(1), plans: { 'm-closed': 'two', 'm-old': 'half' } });
      expect(caution?.casesPerYear).toBe(255);
    });

    it('is raised for a plan that goes below until the machines come, too', () => {
      const [caution] = told({ ...moves(4, 3), plans: { 'm-closed': 'two', 'm-old': 'half' } });
      expect(caution?.casesPerYear).toBe(340);
    });

    it('names a case group once that is beyond one clause here and the other there', () => {
      const [caution] = told({ ...moves(1), plans: { 'm-closed': 'half', 'm-old': 'one' } });
      expect(caution?.rows).toEqual(['short', 'long']);
      expect(caution?.sentence).toMatch(
        /2 case groups \(85 cases a year\), and at 1 to below .* 1 case group \(30 cases a year\)/
      );
      expect(caution?.casesPerYear).toBe(115);
    });
  });

  it('stands among the warnings, first, and in the JSON', () => {
    const sentences = found.cautions.map(({ sentence }) => sentence);
    expect(found.warnings.slice(0, 2)).toEqual(sentences);
    expect(warningsBesideCautions(found)).toEqual(found.warnings.slice(2));
    expect(JSON.parse(JSON.stringify(found)).cautions).toHaveLength(2);
  });

  it('is never called anything but a caution in the monitoring list', () => {
    const needs = found.monitoring.filter(({ item }) => item === 'sevoflurane-flow-caution');
    expect(needs.map(({ level }) => level)).toEqual(['caution']);
  });
});

it('no statement of a missing exposure limit reads as an all-clear', () => {
  const missing = statements.filter(({ id }) => id.startsWith('missing.exposure-limit.'));
  expect(missing.length).toBeGreaterThan(0);
  for (const { statement } of missing) expect(statement).toMatch(/is no all-clear.*local law/);
});
