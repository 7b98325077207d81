/** What law and policy take out of a saving: dated, by jurisdiction, and never a policy. */
import { describe, expect, it } from 'vitest';
import { lawfulPracticeOf, restrictionsOfToday } from '#lib/calc/attribution/lawful-practice.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explain } from '#lib/calc/estimate/explain.ts';
import type { EstimateInput, Site } from '#lib/calc/input.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

const demo = departmentWorkbook();
const inputWith = (site: Partial<Site>, more: Partial<EstimateInput> = {}): EstimateInput => ({
  ...coreInput(demo),
  priceYear: 2026,
  ...more,
  site: { ...demo.site, ...site }
});
const inEurope = (site: Partial<Site> = {}) =>
  inputWith({ jurisdiction: 'european-union', lawfulAgentInstead: 'sevoflurane', ...site });
const idsOf = (input: EstimateInput) => restrictionsOfToday(input).map(({ id }) => id);

describe('which statements touch today’s practice', () => {
  it('says nothing where the jurisdiction is not given, or nothing was found for it', () => {
    expect(idsOf(inputWith({ jurisdiction: null }))).toEqual([]);
    expect(idsOf(inputWith({ jurisdiction: 'elsewhere' }))).toEqual([]);
  });

  it('takes those of the hospital’s own jurisdiction alone', () => {
    expect(idsOf(inEurope())).toEqual(['restriction.desflurane.european-union']);
    expect(idsOf(inputWith({ jurisdiction: 'scotland' }))).toEqual(['restriction.desflurane.scotland']);
  });

  it('tells what is in force in the price year from what comes within the appraisal, and leaves out what comes after', () => {
    const at = (priceYear: number, appraisalYears = 10) =>
      restrictionsOfToday(
        inputWith(
          { jurisdiction: 'european-union' },
          { priceYear, accounting: { ...demo.accounting, appraisalYears } }
        )
      ).map(({ inForce }) => inForce);
    expect(at(2026)).toEqual([true]);
    expect(at(2025)).toEqual([false]);
    expect(at(2024, 2)).toEqual([false]);
    expect(at(2024, 1)).toEqual([]);
  });

  it('is silent where today no longer gives the agent: by its own switch, in no case, or not as a vapour', () => {
    const scenarios = demo.scenarios.map((scenario) =>
      scenario.baseline ? { ...scenario, agentSwitch: { desflurane: 'sevoflurane' as const } } : scenario
    );
    expect(idsOf(inputWith({ jurisdiction: 'european-union' }, { scenarios }))).toEqual([]);
    const caseMix = demo.caseMix.map((row) =>
      row.agent === 'desflurane' ? { ...row, casesPerYear: 0 } : row
    );
    expect(idsOf(inputWith({ jurisdiction: 'european-union' }, { caseMix }))).toEqual([]);
  });
});

describe('lawful practice', () => {
  const figuresOf = (input: EstimateInput, id: string) => {
    const scenario = estimate(input).scenarios.find((each) => each.id === id);
    if (scenario === undefined) throw new Error(`There is no scenario ${id}.`);
    return scenario;
  };

  it('is today with the other agent, so that a scenario that does just this saves nothing beyond it', () => {
    const [today] = demo.scenarios;
    const scenarios = [
      ...demo.scenarios,
      { ...today!, id: 'obeys', baseline: false, agentSwitch: { desflurane: 'sevoflurane' as const } }
    ];
    const obeys = figuresOf({ ...inEurope(), scenarios }, 'obeys');
    expect(Number(obeys.againstBaseline.co2eAvoidedKg)).toBeGreaterThan(1000);
    expect(obeys.againstLawful?.co2eAvoidedKg).toBeCloseTo(0, 6);
    expect(Number(obeys.againstLawful?.yearlySaving)).toBeCloseTo(0, 6);
    const closed = figuresOf({ ...inEurope(), scenarios }, 'closed');
    expect(closed.againstLawful?.co2eAvoidedKg).toBeCloseTo(
      closed.againstBaseline.co2eAvoidedKg - obeys.againstBaseline.co2eAvoidedKg,
      6
    );
    expect(Number(closed.againstLawful?.npv)).toBeCloseTo(
      Number(closed.againstBaseline.npv) - Number(obeys.againstBaseline.npv),
      6
    );
  });

  it('leaves exempt cases as they are: with all of them exempt it is today', () => {
    const { againstBaseline, againstLawful } = figuresOf(inEurope({ lawfulSharePercent: 0 }), 'closed');
    expect(againstLawful?.co2eAvoidedKg).toBeCloseTo(againstBaseline.co2eAvoidedKg, 6);
    const part = figuresOf(inEurope({ lawfulSharePercent: 50 }), 'closed').againstLawful;
    const whole = figuresOf(inEurope(), 'closed').againstLawful;
    expect(part?.co2eAvoidedKg).toBeCloseTo(
      ((whole?.co2eAvoidedKg ?? NaN) + againstBaseline.co2eAvoidedKg) / 2,
      6
    );
  });

  it('is never taken from a policy, nor from a law that is not yet in force', () => {
    for (const jurisdiction of ['england', 'scotland'] as const)
      expect(lawfulPracticeOf(inputWith({ jurisdiction, lawfulAgentInstead: 'sevoflurane' }))).toBeNull();
    expect(lawfulPracticeOf({ ...inEurope(), priceYear: 2025 })).toBeNull();
    expect(figuresOf(inputWith({ jurisdiction: 'england' }), 'closed').againstLawful).toBeNull();
  });

  it('is none of today itself, which does not save against the law', () => {
    expect(figuresOf(inEurope(), 'today').againstLawful).toBeNull();
  });

  it('opens a working that ends in the figure and names the cell of the exempt share', () => {
    const input = inEurope({ lawfulSharePercent: 80 });
    const working = explain(input, 'closed.againstLawful.co2eAvoidedKg');
    expect(working.value).toBe(figuresOf(input, 'closed').againstLawful?.co2eAvoidedKg);
    expect(JSON.stringify(working)).toContain('site.lawfulSharePercent');
  });
});

describe('what is said', () => {
  const said = (input: EstimateInput) => estimate(input).restrictions[0]?.sentence;

  it('asks for the agent instead, or says why the one named will not do', () => {
    expect(said(inEurope({ lawfulAgentInstead: null }))).toMatch(/name on Scenarios the agent/);
    expect(said(inEurope({ lawfulAgentInstead: 'desflurane' }))).toMatch(/is restricted itself/);
    expect(said(inEurope({ lawfulAgentInstead: 'halothane' }))).toMatch(/is not on Prices/);
    expect(said(inEurope())).toMatch(/each saving is shown against lawful practice as well\.$/);
  });

  it('calls a policy a policy, and a law to come what it is', () => {
    expect(said(inputWith({ jurisdiction: 'england' }))).toMatch(/policy and not a law/);
    expect(said({ ...inEurope(), priceYear: 2025 })).toMatch(/after the price year 2025/);
  });

  it('is among the warnings of the estimate', () => {
    expect(estimate(inEurope()).warnings[0]).toBe(said(inEurope()));
    expect(estimate(inputWith({})).restrictions).toEqual([]);
  });
});
