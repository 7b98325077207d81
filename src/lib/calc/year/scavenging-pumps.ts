/** What the pumps of anaesthetic gas scavenging draw in a year, hour by hour whether gas is given or not. */
import type { Scenario, TheatreGroup } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

export const weeksPerYear = 365 / 7;

/** E = n · P · h · 365 / 7: kW over the hours of a week, for the weeks of a year. */
export const pumpElectricity = formula<{ theatres: number; powerKW: number; hoursPerWeek: number }>({
  id: 'year.scavenging-pumps',
  yields: 'Electricity of scavenging pumps in a year',
  words: 'theatres times the power of scavenging in one, times the hours of a week, for 365/7 weeks',
  expression: 'n * P * h * 365 / 7',
  inputs: {
    theatres: { symbol: 'n', unit: '1', words: 'theatres' },
    powerKW: { symbol: 'P', unit: 'kW', words: 'power of scavenging in one theatre' },
    hoursPerWeek: {
      symbol: 'h',
      unit: 'h',
      words: 'hours a week in which the pumps run',
      testRange: [0, 168]
    }
  },
  unit: 'kWh',
  source: 'definition',
  compute: ({ theatres, powerKW, hoursPerWeek }) => theatres * powerKW * hoursPerWeek * weeksPerYear
});

const hoursThen = formula<{ todayH: number; asked: number }>({
  id: 'year.scavenging-hours',
  yields: 'Hours a week in which the pumps run',
  words: 'the hours of the scenario, and never more than today’s',
  expression: 'min(a, b)',
  inputs: {
    todayH: { symbol: 'a', unit: 'h', words: 'hours a week today', testRange: [0, 168] },
    asked: { symbol: 'b', unit: 'h', words: 'hours a week in the scenario', testRange: [0, 168] }
  },
  unit: 'h',
  source: 'definition',
  compute: ({ todayH, asked }) => Math.min(todayH, asked)
});

const allPumps = formula<{ parts: readonly number[] }>({
  id: 'year.all-scavenging-pumps',
  yields: 'Electricity of all scavenging pumps in a year',
  words: 'sum over the theatre groups',
  expression: 'sum(x)',
  inputs: { parts: { symbol: 'x', unit: 'kWh', words: 'each group’s part' } },
  unit: 'kWh',
  source: 'definition',
  compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
});

export const withPumps = formula<{ machinesKWh: number; pumpsKWh: number }>({
  id: 'year.electricity-with-pumps',
  yields: 'Electricity in a year',
  words: 'that of the machines in use and that of the scavenging pumps',
  expression: 'm + p',
  inputs: {
    machinesKWh: { symbol: 'm', unit: 'kWh', words: 'machines in use' },
    pumpsKWh: { symbol: 'p', unit: 'kWh', words: 'scavenging pumps' }
  },
  unit: 'kWh',
  source: 'definition',
  compute: ({ machinesKWh, pumpsKWh }) => machinesKWh + pumpsKWh
});

/** Of the groups of which power and hours are given; null: of none. */
export function electricityOfPumps(
  r: Reckoner,
  theatreGroups: readonly TheatreGroup[],
  scenario: Scenario
): Quantity | null {
  const asked = scenario.scavengingPumpHoursPerWeek;
  const parts = theatreGroups.flatMap(
    ({ id, theatres, scavengingPumpKW: powerKW, scavengingPumpHoursPerWeek: hours }) => {
      if (powerKW === null || hours === null) return [];
      const cell = (value: number, unit: string, key: string) =>
        r.cell(value, unit, 'theatreGroups', id, key);
      const todayH = cell(hours, 'h', 'scavengingPumpHoursPerWeek');
      return [
        r.apply(pumpElectricity, {
          theatres: cell(theatres, '1', 'theatres'),
          powerKW: cell(powerKW, 'kW', 'scavengingPumpKW'),
          hoursPerWeek:
            asked === null
              ? todayH
              : r.apply(hoursThen, {
                  todayH,
                  asked: r.cell(asked, 'h', 'scenarios', scenario.id, 'scavengingPumpHoursPerWeek')
                })
        })
      ];
    }
  );
  const [only] = parts;
  if (only === undefined) return null;
  return parts.length === 1 ? only : r.apply(allPumps, { parts });
}
