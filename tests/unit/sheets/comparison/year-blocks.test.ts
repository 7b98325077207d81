import { describe, expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import { yearBlocks } from '#lib/sheets/comparison/year-blocks.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

const { scenarios } = estimate(coreInput({ ...departmentWorkbook(), referenceSet: '2026-1' }));
const [today, , , closed] = scenarios as [ScenarioEstimate, ...ScenarioEstimate[]] & { 3: ScenarioEstimate };

const costNames = {
  agents: 'Agents',
  gases: 'Gases',
  absorbent: 'Absorbent',
  drugs: 'Drugs',
  capture: 'Capture',
  service: 'Service',
  electricity: 'Electricity',
  other: 'Other',
  carbon: 'Carbon price',
  recovery: 'Recovery',
  total: 'Cost a year'
};
const co2eNames = {
  agents: 'Agents',
  nitrousOxide: 'Nitrous oxide used',
  nitrousOxideLost: 'Nitrous oxide lost',
  gases: 'Oxygen',
  absorbent: 'Absorbent',
  electricity: 'Electricity',
  intravenous: 'Intravenous drugs',
  manufacture: 'Manufacture',
  total: 'Emissions a year'
};
const blocksOf = (of: readonly ScenarioEstimate[]) =>
  yearBlocks({
    scenarios: of,
    agentName: (agent) => agent,
    costNames,
    co2eNames,
    currency: 'EUR',
    locale: 'en-GB'
  });
const [quantities, money, emissions] = blocksOf(scenarios) as [
  ReturnType<typeof blocksOf>[number],
  ReturnType<typeof blocksOf>[number],
  ReturnType<typeof blocksOf>[number]
];
const row = (block: typeof money, key: string) =>
  [...block.changing, ...block.same].find((each) => each.key === key);

describe('a year of each scenario', () => {
  it('stands in three blocks, what changes apart from what is the same for all', () => {
    expect([quantities, money, emissions].map(({ title }) => title)).toEqual([
      'Quantities',
      'Money, EUR',
      'Emissions, t CO₂e'
    ]);
    expect(money.changing.map(({ key }) => key)).toEqual([
      'agents',
      'gases',
      'absorbent',
      'service',
      'total',
      'yearlySaving'
    ]);
    // Electricity differs in the last digits only, by the order of adding up.
    expect(money.same.map(({ key }) => key)).toEqual([
      'electricity',
      'drugs',
      'capture',
      'other',
      'carbon',
      'recovery'
    ]);
    expect(money.nothing).toEqual(['Drugs', 'Capture', 'Other', 'Carbon price', 'Recovery']);
    expect(emissions.same.map(({ key }) => key)).toContain('nitrousOxideLost');
    expect(emissions.nothing).toEqual(['Absorbent', 'Manufacture']);
  });

  it('leaves no line out', () => {
    expect([...money.changing, ...money.same].map(({ key }) => key).sort()).toEqual(
      [...Object.keys(costNames), 'yearlySaving'].sort()
    );
  });

  it('has the change from today beside each figure but today’s own', () => {
    const cells = row(money, 'agents')?.cells;
    expect(cells?.map(({ text }) => text)).toEqual(['35,545', '25,233', '15,627', '11,253']);
    expect(cells?.map(({ change }) => change)).toEqual([
      null,
      '\u221210,312',
      '\u221219,918',
      '\u221224,292'
    ]);
    expect(row(money, 'service')?.cells.map(({ change }) => change)).toEqual([null, 'same', '+200', '+600']);
  });

  it('writes a row with one number of decimals, by its largest figure', () => {
    expect(row(quantities, 'desflurane.litres')?.cells.map(({ text }) => text)).toEqual([
      '22.8',
      '15.5',
      '3.4',
      '2.3'
    ]);
    expect(row(money, 'electricity')?.cells[0]?.text).toBe('88.43');
  });

  it('gives each figure its path, and today none for what is counted against it', () => {
    expect(row(emissions, 'total')?.cells[3]?.path).toBe('closed.perYear.co2eKg.total');
    expect(row(quantities, 'sevoflurane.litres')?.cells[0]?.path).toBe(
      'today.perYear.agents.sevoflurane.liquidMl'
    );
    expect(row(emissions, 'co2eAvoidedKg')?.cells.map(({ path, text }) => [path, text])).toEqual([
      [null, '–'],
      ['habit.againstBaseline.co2eAvoidedKg', '35.1'],
      ['circle.againstBaseline.co2eAvoidedKg', '85.7'],
      ['closed.againstBaseline.co2eAvoidedKg', '94.0']
    ]);
  });

  it('keeps totals and savings in sight where nothing changes', () => {
    const [, alike] = blocksOf([today, { ...today, id: 'copy' }]);
    expect(alike?.changing.map(({ key }) => key)).toEqual(['total', 'yearlySaving']);
  });

  it('has a dash, and no change, where a scenario gives no such agent', () => {
    const { desflurane, ...others } = closed.perYear.agents;
    expect(desflurane).toBeDefined();
    const without = { ...closed, perYear: { ...closed.perYear, agents: others } };
    const [first] = blocksOf([today, without]);
    expect(first?.changing.find(({ key }) => key === 'desflurane.litres')?.cells[1]).toEqual({
      scenarioId: 'closed',
      path: null,
      text: '–',
      change: null
    });
  });

  it('has the social view beside the cash only where something but cash was given a value', () => {
    expect(row(money, 'shadow.yearlySaving')).toBeUndefined();
    const priced = {
      ...closed,
      perYear: { ...closed.perYear, cost: { ...closed.perYear.cost, carbon: '100' } },
      againstBaseline: { ...closed.againstBaseline, shadow: { yearlySaving: '23000', npv: '0' } }
    };
    const [, block] = blocksOf([today, priced]);
    expect(block?.changing.find(({ key }) => key === 'shadow.yearlySaving')?.cells[1]).toMatchObject({
      text: '23,000',
      path: 'closed.againstBaseline.shadow.yearlySaving'
    });
  });

  it('has the share of the footprint only where a footprint is given', () => {
    const bare = scenarios.map((each) => ({
      ...each,
      againstBaseline: { ...each.againstBaseline, departmentSharePercent: null }
    }));
    expect(row(emissions, 'departmentSharePercent')).toBeDefined();
    expect(blocksOf(bare)[2]?.changing.map(({ key }) => key)).not.toContain('departmentSharePercent');
  });
});
