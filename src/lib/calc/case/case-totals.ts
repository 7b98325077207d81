import { formula } from '../working/formula.ts';

const totalOf = (id: string, yields: string, unit: string) =>
  formula<{ parts: readonly number[] }>({
    id,
    yields,
    words: 'sum over the phases',
    expression: 'sum(x)',
    inputs: { parts: { symbol: 'x', unit, words: 'each phase’s part' } },
    unit,
    source: 'definition',
    compute: ({ parts }) => {
      let sum = 0;
      for (let i = 0; i < parts.length; i++) sum += parts[i]!;
      return sum;
    }
  });

export const constantDialTotal = totalOf('case.constant-dial-total', 'Published formula for a case', 'mL');
export const constantDialVapourAddedTotal = totalOf(
  'case.constant-dial-vapour-added-total',
  'Published formula for a case, the vapour added',
  'mL'
);
export const oxygenTotal = totalOf('case.oxygen', 'Oxygen of a case', 'L');
export const airTotal = totalOf('case.air', 'Air of a case', 'L');
export const nitrousOxideTotal = totalOf('case.nitrous-oxide', 'Nitrous oxide of a case', 'L');
export const co2AbsorbedTotal = totalOf('case.co2-absorbed', 'CO2 absorbed in a case', 'L');

/** Fresh gas flow over the whole case: each phase's flow counts by its minutes. */
export const meanFlow = formula<{ flowsLPerMin: readonly number[]; minutes: readonly number[] }>({
  id: 'case.mean-flow',
  yields: 'Mean fresh gas flow of a case',
  words: 'each phase’s flow times its minutes, summed, over all minutes',
  expression: 'dot(F, t) / sum(t)',
  inputs: {
    flowsLPerMin: { symbol: 'F', unit: 'L/min', words: 'each phase’s fresh gas flow' },
    minutes: { symbol: 't', unit: 'min', words: 'each phase’s minutes' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ flowsLPerMin, minutes }) => {
    let litres = 0;
    let total = 0;
    for (let i = 0; i < minutes.length; i++) {
      litres += flowsLPerMin[i]! * minutes[i]!;
      total += minutes[i]!;
    }
    return litres / total;
  }
});

/** Depth times time: one MAC-hour is an hour at the end-tidal fraction of one MAC for the patient's age. */
export const macHours = formula<{ endTidalMin: number; macFraction: number }>({
  id: 'case.mac-hours',
  yields: 'MAC-hours of a case',
  words: 'end-tidal fraction summed over time, over the fraction of one MAC, in hours',
  expression: 'E / M / 60',
  inputs: {
    endTidalMin: { symbol: 'E', unit: 'min', words: 'end-tidal fraction summed over time' },
    macFraction: {
      symbol: 'M',
      unit: '1',
      words: 'one MAC at this age and pressure',
      testRange: [0.005, 0.1]
    }
  },
  unit: 'h',
  source: 'definition',
  compute: ({ endTidalMin, macFraction }) => endTidalMin / macFraction / 60
});
