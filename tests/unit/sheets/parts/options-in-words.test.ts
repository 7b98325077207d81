import { describe, expect, it } from 'vitest';
import type { MoneyIncrement } from '#lib/calc/estimate-types.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { optionsOf } from '#lib/sheets/parts/option-list.ts';
import {
  agentChangeInWords,
  machineInWords,
  nitrousOxideInWords,
  verdictInWords
} from '#lib/sheets/parts/options-in-words.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';
import { keepTwin } from '#lib/sheets/parts/keep-twin.ts';

const demo = departmentWorkbook();
const ofDemo = estimate(coreInput(demo));
const closedOfDemo = ofDemo.scenarios.find(({ id }) => id === 'closed')!;
/** Whole euros, as amounts from a thousand up are shown. */
const euros = (amount: string): string => `€${Math.round(Math.abs(Number(amount))).toLocaleString('en-GB')}`;
const look = { currency: 'EUR', locale: 'en-GB' };
const plain = (text: string | null | undefined): string => (text ?? '').replaceAll('\u00a0', ' ');

const step = {
  yearlySaving: '3234',
  co2eAvoidedKg: 3800,
  investment: '107000',
  npv: '-80100',
  simplePaybackYears: null,
  discountedPaybackYears: null,
  irrPercent: null
};
const twin = {
  ...ofDemo.scenarios[0]!.againstBaseline,
  yearlySaving: '19701',
  co2eAvoidedKg: 90_200,
  investment: '10800'
};

describe('what the machine adds', () => {
  const said = (change: Partial<typeof step>) =>
    plain(
      machineInWords({ withoutMachine: twin, machineAdds: { ...step, ...change } }, { name: 'A', look })[1]
    );

  it('says what the scenario does without it, and for how much', () => {
    const [first] = machineInWords({ withoutMachine: twin, machineAdds: step }, { name: 'A', look });
    expect(plain(first)).toMatch(
      /^Without the machine, A saves €19,701 and avoids 90.2 t CO₂e a year for €10,800:/
    );
  });

  it('says what it adds, for how much more, and whether that comes back', () => {
    expect(said({})).toBe(
      'The machine itself saves €3,234 and avoids 3.8 t CO₂e a year for €107,000 more; that is not paid back within the appraisal, and the net present value is €80,100 lower.'
    );
  });

  it('says so where it costs more a year, pays back, or takes less', () => {
    expect(said({ yearlySaving: '-7090' })).toMatch(/^The machine itself costs €7,090 more and avoids 3.8 t/);
    expect(said({ npv: '5000' as never, simplePaybackYears: 4 as never })).toMatch(
      /; that is paid back after 4 years, and the net present value is €5,000 higher\.$/
    );
    expect(said({ investment: '-2000' })).toMatch(/a year for €2,000 less; the net present value is/);
  });

  it('says nothing of a scenario that changes no machine', () => {
    expect(machineInWords({ withoutMachine: null, machineAdds: null }, { name: 'A', look })).toEqual([]);
  });
});

describe('the options', () => {
  const nameOf = (id: string): string => id.toUpperCase();

  it('are today, then each scenario after its twin, which has its colour', () => {
    const options = optionsOf(ofDemo, { baselineId: 'today', nameOf });
    expect(options.map(({ id, place }) => [id, place])).toEqual([
      ['today', null],
      ['habit', 0],
      ['circle:without-machine', 1],
      ['circle', 1],
      ['closed:without-machine', 2],
      ['closed', 2]
    ]);
    expect(options[4]?.name).toBe('CLOSED without the machine');
  });

  it('leave out a twin that is a scenario of the workbook already', () => {
    const kept = keepTwin(demo, 'closed');
    if (!('workbook' in kept)) throw new Error(kept.sentence);
    const options = optionsOf(estimate(coreInput(kept.workbook)), { baselineId: 'today', nameOf });
    expect(options.map(({ id }) => id)).not.toContain('closed:without-machine');
    expect(options.map(({ id }) => id)).toContain(kept.id);
  });
});

describe('the verdict', () => {
  const options = optionsOf(ofDemo, { baselineId: 'today', nameOf: (id) => id.toUpperCase() });
  const judged = (
    change: { money?: readonly MoneyIncrement[]; chosenId?: string; options?: typeof options } = {}
  ) =>
    verdictInWords(
      {
        options: change.options ?? options,
        increments: { money: [...(change.money ?? ofDemo.increments!.money)], tonnes: [] },
        chosenId: change.chosenId ?? 'closed'
      },
      { look, paybackLimitYears: 5, appraisalYears: 10 }
    ).map(plain);

  it('names the option of the highest net present value, whether its steps pass, and what the chosen one buys beyond it', () => {
    const [first, second, third] = judged();
    expect(first).toMatch(
      new RegExp(
        `^CLOSED without the machine has the highest net present value of all options, €[\\d,]+ over 10 years: it saves ${euros(closedOfDemo.withoutMachine!.yearlySaving)} and avoids [\\d.]+ t`
      )
    );
    expect(second).toBe('Each step up to it pays for itself within the limit of 5 years.');
    expect(third).toMatch(
      new RegExp(
        `^Compared with it, CLOSED saves ${euros(closedOfDemo.machineAdds!.yearlySaving)} and avoids [\\d.]+ t CO₂e a year for €[\\d,]+ more; that is not paid back`
      )
    );
  });

  it('speaks of the next dearer option where the step to the chosen one is taken', () => {
    expect(judged({ chosenId: 'habit' })[2]).toMatch(
      /^Compared with it, CIRCLE costs €[\d,]+ more and adds [\d.]+ t/
    );
  });

  it('says that no step pays where none is taken', () => {
    const money = ofDemo.increments!.money.map((row) =>
      row.option === 'today' ? row : { ...row, status: 'not-taken' as const, against: 'today' }
    );
    expect(judged({ money })[1]).toBe('No step from today’s practice pays for itself within 5 years.');
  });

  it('says that the last step that pays leads elsewhere than to the best', () => {
    const money = ofDemo.increments!.money.map((row) =>
      row.option === 'closed:without-machine' ? { ...row, status: 'not-taken' as const } : row
    );
    expect(judged({ money })[1]).toBe(
      'The last step that pays for itself within the limit of 5 years leads to CIRCLE without the machine.'
    );
  });

  it('lets today stay where nothing is worth more', () => {
    const poor = options.map((option) =>
      option.place === null ? option : { ...option, against: { ...option.against, npv: '-1' } }
    );
    expect(judged({ options: poor })[0]).toMatch(/^No option has a net present value above 0/);
  });
});

describe('what needs no machine', () => {
  const closed = ofDemo.scenarios.find(({ id }) => id === 'closed')!;
  it('is what the other agent does alone, where there is one', () => {
    const rung = closed.ladder![0]!;
    expect(rung.lever).toBe('agent');
    expect(plain(agentChangeInWords(closed.ladder, look))).toBe(
      `Another agent alone, on today’s machines and flows, saves ${euros(rung.yearlySaving)} and avoids ${(rung.co2eAvoidedKg / 1000).toFixed(1)} t CO₂e a year.`
    );
    expect(agentChangeInWords(closed.ladder!.slice(1), look)).toBeNull();
  });

  it('names the nitrous oxide that is lost alike in all, and only then', () => {
    expect(plain(nitrousOxideInWords(ofDemo.scenarios, 'en-GB'))).toBe(
      'No scenario touches the nitrous oxide lost from the supply, 40.4 t CO₂e a year.'
    );
    const less = {
      ...closed,
      perYear: { ...closed.perYear, co2eKg: { ...closed.perYear.co2eKg, nitrousOxideLost: 20_000 } }
    };
    expect(nitrousOxideInWords([ofDemo.scenarios[0]!, less], 'en-GB')).toBeNull();
  });
});
