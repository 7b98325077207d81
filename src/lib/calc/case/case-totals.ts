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
      for (const part of parts) sum += part;
      return sum;
    }
  });

export const constantDialTotal = totalOf('case.constant-dial-total', 'Constant-dial figure of a case', 'mL');
export const oxygenTotal = totalOf('case.oxygen', 'Oxygen of a case', 'L');
export const airTotal = totalOf('case.air', 'Air of a case', 'L');
export const nitrousOxideTotal = totalOf('case.nitrous-oxide', 'Nitrous oxide of a case', 'L');
export const co2AbsorbedTotal = totalOf('case.co2-absorbed', 'CO2 absorbed in a case', 'L');
