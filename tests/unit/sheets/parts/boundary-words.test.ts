import { describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { leftOutOfBoundary as alwaysLeftOut, scavengingPumpsLeftOut } from '#lib/calc/line-names.ts';
import { boundaryOf } from '#lib/sheets/parts/boundary-words.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { hernia, neck, wholeWorkbook } from '../../../fixtures/whole-workbook.ts';

const base = wholeWorkbook();
/** Its pumps are not given. */
const leftOutOfBoundary = [...alwaysLeftOut, scavengingPumpsLeftOut];
const notMade = [
  'making agents, which depends on the route of synthesis and may not be small',
  'making machines',
  'circuits, filters and other consumables, and their waste, beyond what intravenous and regional drugs come with'
];
function boundary(changes: Partial<Workbook> = {}) {
  const input = coreInput(wholeWorkbook(changes));
  return boundaryOf(
    input,
    estimate(input).scenarios.flatMap(({ ledger }) => ledger)
  );
}

describe('the boundary of a year’s emissions', () => {
  test('says which year, set and horizon are counted', () => {
    const accounting = { ...base.accounting, warmingSet: 'AR6', warmingHorizonYears: 20 } as const;
    expect(boundary({ accounting, priceYear: 2031 }).counted).toMatch(
      /figures of 2031 and reference set 2026-1\. Warming: IPCC AR6 \(2021\), 20 years\.$/
    );
  });

  test('says which year today stands for, and how the activity is known', () => {
    expect(boundary({ site: { ...base.site, baseYear: 2025, casesKnownBy: 'records' } }).known).toMatch(
      /^Today stands for the base year 2025\. How the activity is known: cases from records, durations not given/
    );
  });

  test('names every line of the total under its class, in both standards', () => {
    expect(boundary().within).toEqual([
      'direct (scope 1; category 1): agents; nitrous oxide used; nitrous oxide lost from the pipes',
      'other indirect (scope 3.1; category 4): oxygen; absorbent; intravenous drugs',
      'energy indirect (scope 2; category 2): electricity, by location'
    ]);
  });

  test('names what stands beside the total', () => {
    expect(boundary().beside).toBe('agent lost at filling; electricity, by contract; medical air');
  });

  test('names as left out what is missing for want of a figure, and no longer once it is given', () => {
    const gases = { ...base.gases, nitrousOxideBoughtKgPerYear: null };
    const absorbents = base.absorbents.map((each) => ({ ...each, kgCo2ePerKg: null }));
    expect(boundary({ gases, absorbents }).leftOut).toEqual([
      'nitrous oxide lost from the pipes, as no purchase is given',
      'making the absorbent “Soda lime”, as no factor is given',
      'regional drugs and material, as no factor is given',
      ...notMade,
      ...leftOutOfBoundary
    ]);
    expect(boundary({ regional: { pricePerCase: '0', kgCo2ePerCase: 1 } }).leftOut).toEqual([
      ...notMade,
      ...leftOutOfBoundary
    ]);
  });

  test('does not name as left out what no case needs', () => {
    expect(boundary({ caseMix: [hernia, neck] }).leftOut).toEqual([...notMade, ...leftOutOfBoundary]);
  });

  test('names what is made without a figure, and nothing of it once each has one, be it 0', () => {
    const agents = base.agents.map((each, index) => ({
      ...each,
      manufactureKgCo2ePerKg: index === 0 ? 0 : null
    }));
    const machines = base.machines.map((each) => ({ ...each, manufactureKgCo2ePerUnit: 900 }));
    const site = { ...base.site, consumablesKgCo2ePerCase: 0 };
    const some = boundary({ agents, machines, site });
    expect(some.leftOut.slice(-leftOutOfBoundary.length - 1)).toEqual([
      'making agents, which depends on the route of synthesis and may not be small: of desflurane no figure is given',
      ...leftOutOfBoundary
    ]);
    expect(some.within[1]).toBe(
      'other indirect (scope 3.1 and scope 3.2; category 4): oxygen; absorbent; intravenous drugs; making agents; making machines; making consumables'
    );
    expect(some.mapping).toMatch(/in the year of purchase/);
    expect(boundary().mapping).not.toMatch(/in the year of purchase/);
  });

  test('names the scavenging pumps as left out until power and hours of every group are given', () => {
    const known = { scavengingPumpKW: 0.75, scavengingPumpHoursPerWeek: 168 };
    const [group] = base.theatreGroups;
    const half = { ...group!, ...known, scavengingPumpHoursPerWeek: null };
    expect(boundary({ theatreGroups: [half] }).leftOut).toContain(scavengingPumpsLeftOut);
    expect(boundary({ theatreGroups: [{ ...group!, ...known }] }).leftOut).not.toContain(
      scavengingPumpsLeftOut
    );
  });

  test('says that the classes are a mapping of our own', () => {
    expect(boundary().mapping).toMatch(/mapping is our own/);
  });
});
