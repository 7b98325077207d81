/** What a year is divided by to be held against another: its cases, their hours and their MAC-hours. */
import type { CaseRow } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { hours, perYear, rowCases, rowMinutes, total } from './consumption.ts';

const rowMacHours = perYear(
  'year.row-mac-hours',
  'MAC-hours of a case group in a year',
  'h',
  'MAC-hours a case'
);
const casesTotal = total('year.anaesthetics', 'Anaesthetics in a year', '1');
const minutesTotal = total('year.anaesthetic-minutes', 'Minutes of anaesthesia in a year', 'min');
const macHoursTotal = total('year.mac-hours', 'MAC-hours of agents in a year', 'h');

/** Cases of a row that are done in one way. */
export interface CasesOfYear {
  readonly row: CaseRow;
  readonly sharePercent: Quantity;
  /** Of one of them, of its agent; null: it is given none. */
  readonly macHours: Quantity | null;
}

/** `hours` are of all the cases; `macHours` of those that are given an agent. */
export interface Anaesthesia {
  readonly cases: Quantity;
  readonly hours: Quantity;
  readonly macHours: Quantity;
}

export function anaesthesiaOf(r: Reckoner, done: readonly CasesOfYear[]): Anaesthesia {
  const counted = done.map(({ row, sharePercent, macHours }) => ({
    casesPerYear: r.cell(row.casesPerYear, '1', 'caseMix', row.id, 'casesPerYear'),
    sharePercent,
    minutes: r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes'),
    macHours
  }));
  return {
    cases: r.apply(casesTotal, {
      parts: counted.map(({ casesPerYear, sharePercent }) =>
        r.apply(rowCases, { casesPerYear, sharePercent })
      )
    }),
    hours: r.apply(hours, {
      minutes: r.apply(minutesTotal, {
        parts: counted.map(({ casesPerYear, sharePercent, minutes }) =>
          r.apply(rowMinutes, { casesPerYear, sharePercent, perCase: minutes })
        )
      })
    }),
    macHours: r.apply(macHoursTotal, {
      parts: counted.flatMap(({ casesPerYear, sharePercent, macHours }) =>
        macHours === null ? [] : [r.apply(rowMacHours, { casesPerYear, sharePercent, perCase: macHours })]
      )
    })
  };
}

const over = (id: string, yields: string, by: { readonly words: string; readonly unit: '1' | 'h' }) =>
  formula<{ co2eKg: number; amount: number }>({
    id,
    yields,
    words: `emissions over ${by.words}`,
    expression: 'E / n',
    inputs: {
      co2eKg: { symbol: 'E', unit: 'kg CO2e', words: 'emissions' },
      amount: { symbol: 'n', unit: by.unit, words: by.words }
    },
    unit: by.unit === '1' ? 'kg CO2e' : `kg CO2e/${by.unit}`,
    source: 'definition',
    compute: ({ co2eKg, amount }) => co2eKg / amount
  });

export const emissionsOfACase = over('year.emissions-of-a-case', 'Emissions for a case', {
  words: 'cases',
  unit: '1'
});
export const emissionsOfAnHour = over('year.emissions-of-an-hour', 'Emissions for an hour of anaesthesia', {
  words: 'hours of anaesthesia',
  unit: 'h'
});
/** A MAC-hour is an hour at an end-tidal fraction of one MAC for the age: hours, weighed by depth. */
export const emissionsOfAMacHour = over('year.emissions-of-a-mac-hour', 'Emissions of agent for a MAC-hour', {
  words: 'MAC-hours of the agent',
  unit: 'h'
});

const change = (id: string, unit: string) =>
  formula<{ now: number; then: number }>({
    id,
    yields: 'Change against today',
    words: 'what the scenario emits beyond today, for the same, as a share of what today does',
    expression: '(b - a) / a * 100',
    inputs: {
      now: { symbol: 'a', unit, words: 'today' },
      then: { symbol: 'b', unit, words: 'the scenario' }
    },
    unit: '%',
    source: 'definition',
    compute: ({ now, then }) => ((then - now) / now) * 100
  });

export const changeForACase = change('year.change-for-a-case', 'kg CO2e');
export const changeForAnHour = change('year.change-for-an-hour', 'kg CO2e/h');
