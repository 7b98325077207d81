import { describe, expect, it } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { StepFigures } from '#lib/calc/estimate-types.ts';
import { openingAnswer } from '#lib/sheets/report/opening-answer.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const ofDemo = estimate(coreInput(demoWorkbook())).scenarios.find(({ id }) => id === 'closed')!;
const years = [{ net: '-100' }, { net: '30' }] as (typeof ofDemo.againstBaseline)['years'];
const figures = (change: Partial<StepFigures>): StepFigures => ({
  yearlySaving: '1200',
  co2eAvoidedKg: 9000,
  investment: '5000',
  npv: '3000',
  simplePaybackYears: 4.2,
  discountedPaybackYears: 5,
  irrPercent: 20,
  ...change
});
interface Given {
  readonly whole?: Partial<StepFigures>;
  readonly twin?: Partial<StepFigures> | null;
  readonly adds?: Partial<StepFigures> | null;
  readonly lawful?: Partial<StepFigures> | null;
  readonly lacksMonitors?: boolean;
  readonly years?: typeof years;
}
function answer(given: Given): string {
  const against = (change: Partial<StepFigures>) => ({
    ...ofDemo.againstBaseline,
    ...figures(change),
    years: given.years ?? years
  });
  const { whole = {}, twin = null, adds = null, lawful = null } = given;
  const { word, because } = openingAnswer(
    {
      againstBaseline: against(whole),
      againstLawful: lawful === null ? null : figures(lawful),
      withoutMachine: twin === null ? null : against(twin),
      machineAdds: adds === null ? null : figures(adds)
    },
    {
      look: { currency: 'EUR', locale: 'en-GB' },
      paybackLimitYears: 5,
      appraisalYears: 10,
      lacksMonitors: given.lacksMonitors ?? false
    }
  );
  return `${word}: ${because}`.replaceAll('\u00a0', ' ');
}

describe('the answer that the report opens with', () => {
  it('is yes where the whole pays within the limit, and no machine is bought', () => {
    expect(answer({})).toBe('Yes: against today’s practice it pays for itself within the limit of 5 years.');
    expect(answer({ whole: { investment: '-10', simplePaybackYears: 0 } })).toBe(
      'Yes: against today’s practice it takes no more money and pays.'
    );
  });

  it('is yes of a purchase only where the machine pays as well, against the same practice without it', () => {
    expect(answer({ twin: {}, adds: { npv: '10', simplePaybackYears: 5 } })).toMatch(
      /^Yes: .*within the limit of 5 years, and so does the machine, against the same agents and plan without it\. The machine by itself saves €1,200 and avoids 9 t CO₂e a year for €5,000 more\.$/
    );
  });

  it('is not for the money alone where the whole pays and the machine in it does not', () => {
    const said = answer({ twin: {}, adds: { npv: '-93692', simplePaybackYears: null } });
    expect(said).toMatch(/^Not for the money alone: against today’s practice it pays for itself/);
    expect(said).toContain(
      'the same agents and plan on today’s machines are worth €93,692 more over 10 years.'
    );
    // Worth as much, but back too late.
    expect(answer({ twin: {}, adds: { npv: '0', simplePaybackYears: 5.1 } })).toContain(
      'what it costs beyond the same agents and plan on today’s machines does not come back within the limit.'
    );
  });

  it('says what the machine buys in addition', () => {
    expect(
      answer({
        twin: {},
        adds: { npv: '-1', yearlySaving: '1360', co2eAvoidedKg: 1780, investment: '105000' }
      })
    ).toMatch(/The machine by itself saves €1,360 and avoids 1\.78 t CO₂e a year for €105,000 more\.$/);
  });

  it('is not within the limit as entered where the money comes back later, and says whether today’s machines would do', () => {
    const late = { simplePaybackYears: 6.2 };
    expect(answer({ whole: late })).toBe(
      'Not within the limit as entered: against today’s practice it is paid back after 6.2 years, and the limit is 5 years.'
    );
    expect(answer({ whole: { ...late, npv: '-2000' } })).toContain(
      'the limit is 5 years; its net present value is €2,000 below 0.'
    );
    expect(answer({ whole: late, twin: {}, adds: late })).toContain(
      'on today’s machines do pay for themselves'
    );
    expect(answer({ whole: late, twin: late, adds: late })).not.toContain('do pay for themselves');
  });

  it('is no where nothing comes back, or where it is worth less than what it is held against', () => {
    expect(answer({ whole: { simplePaybackYears: null, npv: '-5' } })).toBe(
      'No: against today’s practice it is not paid back within the appraisal of 10 years.'
    );
    expect(answer({ whole: { npv: '-2000' } })).toMatch(
      /^No: .*within the limit of 5 years, but .*€2,000 below 0/
    );
    expect(answer({ whole: { npv: '-2000', investment: '0' } })).toMatch(/^No: .*no more money, but/);
  });

  it('is judged against lawful practice where that is not today’s, and says what is saved beyond it', () => {
    const said = answer({ lawful: { npv: '-5', simplePaybackYears: null, yearlySaving: '100' } });
    expect(said).toMatch(/^No: against lawful practice it is not paid back/);
    expect(said).toMatch(
      /Beyond what the law asks for already it saves €100\.00 and avoids 9 t CO₂e a year\.$/
    );
    expect(answer({ lawful: {} })).toMatch(/^Yes: against lawful practice/);
  });

  it('says that required monitors come first, unless the answer is no', () => {
    expect(answer({ lacksMonitors: true })).toMatch(/Required monitors that theatres lack come first\.$/);
    expect(answer({ lacksMonitors: true, whole: { npv: '-1', simplePaybackYears: null } })).not.toContain(
      'monitors'
    );
  });

  it('finds no difference where nothing is at stake', () => {
    expect(answer({ years: [{ net: '0' }, { net: '0.00' }] as typeof years })).toMatch(
      /^No difference in money: it costs and saves the same as today/
    );
  });
});
