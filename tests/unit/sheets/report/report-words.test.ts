import { bringing } from '../../../fixtures/one-group.ts';
import { describe, expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { AgainstBaseline } from '#lib/calc/estimate-types.ts';
import { answerOf, assumptionsOf, questionOf } from '#lib/sheets/report/report-words.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = departmentWorkbook();
const changed = (id: string, change: Partial<Workbook['scenarios'][number]>): Workbook => ({
  ...demo,
  scenarios: demo.scenarios.map((scenario) => (scenario.id === id ? { ...scenario, ...change } : scenario))
});
const ofDemo = estimate(coreInput(demo)).scenarios.find(({ id }) => id === 'closed')!.againstBaseline;
/** The answer about other figures; where nothing else is said, the social view is that of the cash. */
const answer = (change: Partial<AgainstBaseline>, workbook = demo): string => {
  const against = { ...ofDemo, ...change };
  const { yearlySaving, npv } = against;
  return answerOf(workbook, 'closed', {
    against: { ...against, shadow: change.shadow ?? { yearlySaving, npv } },
    locale: 'en-GB'
  }).replaceAll('\u00a0', ' ');
};

/** Years of a cash flow in which everything is 0 but what is given. */
const years = (...given: readonly Partial<AgainstBaseline['years'][number]>[]): AgainstBaseline['years'] =>
  given.map((of, year) => ({
    ...ofDemo.years[0]!,
    year,
    investment: '0',
    saving: '0',
    net: '0',
    cumulative: '0',
    discounted: '0',
    cumulativeDiscounted: '0',
    ...of
  }));

describe('the question of the report', () => {
  it('asks for the machines that the scenario buys, or for a change with those in place', () => {
    expect(questionOf(demo, 'closed').replaceAll('\u00a0', ' ')).toBe(
      'Should the department buy 4 × Closed-circuit ventilator A and follow the flow plan “Closed circuit”, in place of today’s practice?'
    );
    expect(questionOf(demo, 'habit')).toBe(
      'Should the department go over to “Low flow, same machines” with the machines that it has?'
    );
  });

  it('counts what is bought year by year', () => {
    const phased = questionOf(
      changed('closed', bringing('m-closed', 'closed', { byYear: [2, 0, 1] })),
      'closed'
    );
    expect(phased).toContain(
      '3\u00a0×\u00a0Closed-circuit ventilator A, for 3 of the 4 theatres, over several years, and'
    );
    expect(
      questionOf(changed('closed', bringing('m-closed', 'closed', { byYear: [2] })), 'closed')
    ).not.toContain('several years');
  });
});

describe('the answer of the report', () => {
  it('says what a year does, when the money is back and what it is worth', () => {
    expect(
      answer({
        yearlySaving: '1200',
        co2eAvoidedKg: 9000,
        investment: '5000',
        simplePaybackYears: 4.2,
        npv: '3000',
        years: years({ investment: '5000' }, {})
      })
    ).toBe(
      'Against today’s practice Closed-circuit A saves €1,200 and avoids 9 t CO₂e a year. ' +
        'The €5,000 that it takes is paid back after 4.2 years, within the limit of 5 years. ' +
        'Its net present value over 10 years, at 3.5 % a year, is €3,000.'
    );
  });

  it('keeps the social view apart from the cash, and names it', () => {
    const { yearlySaving, npv } = ofDemo;
    expect(answer({ shadow: { yearlySaving, npv } })).not.toContain('social');
    expect(
      answer({ yearlySaving: '1200', npv: '-300', shadow: { yearlySaving: '5200', npv: '20000' } })
    ).toMatch(
      /saves €1,200 and .*is −€300\.00\. All of this is cash\. In the social view, which counts the prices put on carbon and recovery minutes as well, it saves €5,200 a year, and its net present value is €20,000\.$/
    );
  });

  it('names what falls due at the start where later purchases, or those avoided, make it another sum in all', () => {
    expect(
      answer({
        investment: '63000',
        simplePaybackYears: 6.97,
        years: years({ investment: '133000' }, {}, { investment: '-70000' })
      })
    ).toContain(
      '€133,000 falls due at the start; with what is bought and avoided later it takes €63,000 in all. ' +
        'The €63,000 that it takes is paid back after 7.0 years, past the limit of 5 years.'
    );
  });

  it('names a loss, a payback past the limit, one at once, one that never comes and a time ahead that does not last', () => {
    expect(answer({ yearlySaving: '-80', co2eAvoidedKg: -500 })).toContain(
      'costs €80.00 more and adds 500 kg'
    );
    expect(answer({ simplePaybackYears: 6 })).toContain('after 6 years, past the limit of 5 years.');
    expect(answer({ simplePaybackYears: 0 })).toContain('is paid back at once, within the limit of 5 years.');
    const aheadForATime = [{ fromYears: 2, untilYears: 4, cause: 'replacement' as const }];
    expect(answer({ simplePaybackYears: 6, aheadForATime })).toContain(
      'past the limit of 5 years. The sum stands ahead from 2 to 4 years, until machines are replaced.'
    );
    expect(answer({ simplePaybackYears: null })).toContain(
      'is not paid back within the appraisal of 10 years.'
    );
  });

  it('does not let a scenario that loses money pay back by purchases avoided', () => {
    const aheadForATime = [{ fromYears: 2, untilYears: 4.1, cause: 'yearly-cost' as const }];
    const losing = answer({
      yearlySaving: '-9764',
      investment: '-70000',
      simplePaybackYears: null,
      aheadForATime
    });
    expect(losing).toContain(
      'Its purchases come to €70,000 less than those of today’s practice. ' +
        'It does not pay for itself within the appraisal of 10 years. ' +
        'The sum stands ahead from 2 to 4.1 years, until its yearly cost has used that up.'
    );
    expect(losing).not.toContain('paid back');
  });

  it('says where nothing changes, nothing is invested, or less is bought than today', () => {
    const same = answer({
      yearlySaving: '0',
      co2eAvoidedKg: 0,
      investment: '0',
      simplePaybackYears: null,
      years: years({}, {})
    });
    expect(same).not.toContain('pay for itself');
    expect(same).toContain('costs the same and emits the same a year');
    expect(same).toContain('Nothing is invested beyond today’s practice.');
    expect(answer({ investment: '-7000' })).toContain('come to €7,000 less than those of today’s practice');
  });
});

describe('what the report assumes', () => {
  const about = (workbook: Workbook, heading: string): string =>
    assumptionsOf(workbook, 'closed', 'en-GB').find((each) => each.about === heading)?.sentence ?? '';

  it('tells measured use, growth, a carbon price and the residual value where they act', () => {
    expect(about(demo, 'Agent use')).toContain('No measured use');
    const [first, ...others] = demo.caseMix;
    const measured = { ...demo, caseMix: [{ ...first!, measuredMlPerCase: 20 }, ...others] };
    expect(about(measured, 'Agent use')).toContain(`In 1 of ${demo.caseMix.length} groups`);

    expect(about(demo, 'Prices')).toBe('Of 2026, in EUR; no price grows beyond inflation.');
    expect(about(demo, 'Perspective')).not.toContain('shadow');
    const accounting = {
      ...demo.accounting,
      agentGrowthPercent: 2,
      carbonPricePerTonne: '100',
      residualValue: 'straight-line' as const
    };
    expect(about({ ...demo, accounting }, 'Prices')).toContain('agents by 2\u00a0% a year beyond inflation');
    expect(about({ ...demo, accounting }, 'Perspective')).toContain(
      'shadow price of €100.00 a tonne of CO₂e stands beside the cash, in the social view alone.'
    );
    expect(about({ ...demo, accounting }, 'Horizon')).toContain('in a straight line');
  });

  it('names the other scenarios and the cases', () => {
    expect(about(demo, 'Comparators')).toContain(
      'Looked at as well: Low flow, same machines; Circle system B, minimal flow.'
    );
    const cases = demo.caseMix.reduce((sum, row) => sum + row.casesPerYear, 0);
    expect(about(demo, 'Cases')).toContain(`${cases.toLocaleString('en-GB')} anaesthetics a year`);
  });

  it('needs a scenario of the workbook', () => {
    expect(() => questionOf(demo, 'none')).toThrow('no scenario “none”');
  });
});
