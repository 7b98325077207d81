/** What a lasting change of a short-lived gas is worth against CO2 that is emitted once. */
import { formula } from '../working/formula.ts';

export const cutPerYear = formula<{ todayKg: number; scenarioKg: number; years: number }>({
  id: 'emissions.cut-per-year',
  yields: 'Agent that is vented less, a year',
  words: 'vented today less vented in the scenario',
  expression: '(a - b) / y',
  inputs: {
    todayKg: { symbol: 'a', unit: 'kg', words: 'vented today in the time' },
    scenarioKg: { symbol: 'b', unit: 'kg', words: 'vented in the scenario in the time' },
    years: { symbol: 'y', unit: 'year', words: 'the time' }
  },
  unit: 'kg/year',
  source: 'definition',
  compute: ({ todayKg, scenarioKg, years }) => (todayKg - scenarioKg) / years
});

/** CO2 emitted once that changes temperature as the lasting cut does (CGTP). */
export const cutAsOnePulse = formula<{ cutsKgPerYear: readonly number[]; potentials: readonly number[] }>({
  id: 'emissions.cut-as-one-pulse',
  yields: 'Lasting cut, as CO2 that is emitted once',
  words: 'of each agent what is vented less a year times the potential of a lasting change',
  expression: 'dot(d, C)',
  inputs: {
    cutsKgPerYear: { symbol: 'd', unit: 'kg/year', words: 'agent that is vented less, a year' },
    potentials: { symbol: 'C', unit: 'kg CO2e/(kg/year)', words: 'potential of a lasting change' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ cutsKgPerYear, potentials }) =>
    cutsKgPerYear.reduce((sum, cut, index) => sum + cut * (potentials[index] ?? 0), 0)
});

/** The same cut counted as a pulse each year (GWP), over the years of the horizon. */
export const cutAsPulses = formula<{
  cutsKgPerYear: readonly number[];
  potentials: readonly number[];
  years: number;
}>({
  id: 'emissions.cut-as-pulses',
  yields: 'Lasting cut, as a pulse each year',
  words:
    'of each agent what is vented less a year times its warming potential, over the years of the horizon',
  expression: 'dot(d, G) * y',
  inputs: {
    cutsKgPerYear: { symbol: 'd', unit: 'kg/year', words: 'agent that is vented less, a year' },
    potentials: { symbol: 'G', unit: 'kg CO2e/kg', words: 'warming potential' },
    years: { symbol: 'y', unit: 'year', words: 'years of the horizon' }
  },
  unit: 'kg CO2e',
  source: 'definition',
  compute: ({ cutsKgPerYear, potentials, years }) =>
    cutsKgPerYear.reduce((sum, cut, index) => sum + cut * (potentials[index] ?? 0), 0) * years
});
