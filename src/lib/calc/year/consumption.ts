import type { Agent, CaseRow, IntravenousSupply } from '../input.ts';
import type { CaseUse } from '../case/case-result.ts';
import { formula } from '../working/formula.ts';
import { once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { propofolOf } from './technique-amounts.ts';

/** Agent used and taken up over a year. */
export interface AgentUse {
  readonly liquidMl: Quantity;
  readonly takenUpMl: Quantity;
  /** The spill in it that nobody measured: of the case groups without a measured use. Made when it is asked for. */
  readonly unmeasuredSpillMl: () => Quantity;
  /** What of it leaves by the exhaust, where capture can get at it. Made when it is asked for, as is the next. */
  readonly atExhaustMl: () => Quantity;
  /** The part of that which nobody measured. */
  readonly unmeasuredAtExhaustMl: () => Quantity;
}

/** What a year's cases use up, or one share of them, on one machine. */
export interface Consumption {
  readonly agents: Readonly<Partial<Record<Agent, AgentUse>>>;
  readonly oxygenM3: Quantity;
  readonly airM3: Quantity;
  readonly nitrousOxideL: Quantity;
  readonly absorbentKg: Quantity;
  readonly electricityKWh: Quantity;
  readonly intravenousCases: Quantity;
  /** Hours of intravenous anaesthesia. */
  readonly intravenousH: Quantity;
  readonly propofolGivenG: Quantity;
  readonly regionalCases: Quantity;
  /** General anaesthetics a year, the ones that go through recovery after a machine was used. */
  readonly generalAnaesthetics: Quantity;
}

/** A case-mix row with the result of one of its cases. */
export interface RowResult {
  readonly row: CaseRow;
  readonly agent: Agent | null;
  readonly result: CaseUse;
  /** Share of the row's cases that is counted, 0–100 %. */
  readonly sharePercent: Quantity;
  /** Agent that leaves one of its cases by the exhaust. */
  readonly atExhaustMl: () => Quantity;
}

interface PerCase {
  casesPerYear: number;
  sharePercent: number;
  perCase: number;
}

/** What a case group makes in a year of something that each of its cases makes. */
export const perYear = (id: string, yields: string, unit: string, perCaseWords: string) =>
  formula<PerCase>({
    id,
    yields,
    words: `${perCaseWords} times cases a year times the share of them that is counted here`,
    expression: 'n * a / 100 * x',
    inputs: {
      casesPerYear: { symbol: 'n', unit: '1', words: 'cases a year' },
      sharePercent: { symbol: 'a', unit: '%', words: 'share of the cases' },
      perCase: { symbol: 'x', unit, words: perCaseWords }
    },
    unit,
    source: 'definition',
    compute: ({ casesPerYear, sharePercent, perCase }) => ((casesPerYear * sharePercent) / 100) * perCase
  });

/** The case groups’ parts of a year, added up. */
export const total = (id: string, yields: string, unit: string) =>
  formula<{ parts: readonly number[] }>({
    id,
    yields,
    words: 'sum over the case groups',
    expression: 'sum(x)',
    inputs: { parts: { symbol: 'x', unit, words: 'each case group’s part' } },
    unit,
    source: 'definition',
    compute: ({ parts }) => {
      let sum = 0;
      for (let i = 0; i < parts.length; i++) sum += parts[i]!;
      return sum;
    }
  });

const rowLiquid = perYear(
  'year.row-liquid',
  'Liquid agent of a case group in a year',
  'mL',
  'liquid agent a case'
);
const rowTakenUp = perYear(
  'year.row-taken-up',
  'Agent taken up in a case group in a year',
  'mL',
  'agent taken up a case'
);
const rowSpilled = perYear(
  'year.row-spilled',
  'Agent spilled in a case group in a year',
  'mL',
  'agent spilled a case'
);
const rowAtExhaust = perYear(
  'year.row-at-exhaust',
  'Agent of a case group that leaves by the exhaust in a year',
  'mL',
  'agent that leaves by the exhaust a case'
);
const rowOxygen = perYear('year.row-oxygen', 'Oxygen of a case group in a year', 'L', 'oxygen a case');
const rowAir = perYear('year.row-air', 'Air of a case group in a year', 'L', 'air a case');
const rowNitrousOxide = perYear(
  'year.row-nitrous-oxide',
  'Nitrous oxide of a case group in a year',
  'L',
  'nitrous oxide a case'
);
const rowAbsorbent = perYear(
  'year.row-absorbent',
  'Absorbent of a case group in a year',
  'kg',
  'absorbent a case'
);
export const rowMinutes = perYear(
  'year.row-minutes',
  'Minutes of a case group in a year',
  'min',
  'minutes a case'
);

export const rowCases = formula<{ casesPerYear: number; sharePercent: number }>({
  id: 'year.row-cases',
  yields: 'Cases of a case group that are counted here',
  words: 'cases a year times the share of them that is counted here',
  expression: 'n * a / 100',
  inputs: {
    casesPerYear: { symbol: 'n', unit: '1', words: 'cases a year' },
    sharePercent: { symbol: 'a', unit: '%', words: 'share of the cases' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ casesPerYear, sharePercent }) => (casesPerYear * sharePercent) / 100
});

const liquidTotal = total('year.liquid', 'Liquid agent in a year', 'mL');
const takenUpTotal = total('year.taken-up', 'Agent taken up in a year', 'mL');
const unmeasuredSpillTotal = total(
  'year.unmeasured-spill',
  'Agent spilled in a year by case groups without a measured use',
  'mL'
);
const atExhaustTotal = total('year.at-exhaust', 'Agent that leaves by the exhaust in a year', 'mL');
const unmeasuredAtExhaustTotal = total(
  'year.unmeasured-at-exhaust',
  'Agent that leaves by the exhaust in a year, of case groups without a measured use',
  'mL'
);
const oxygenTotal = total('year.oxygen-litres', 'Oxygen in a year', 'L');
const airTotal = total('year.air-litres', 'Air in a year', 'L');
const nitrousOxideTotal = total('year.nitrous-oxide-litres', 'Nitrous oxide in a year', 'L');
const absorbentTotal = total('year.absorbent', 'Absorbent in a year', 'kg');
const minutesTotal = total('year.minutes', 'Minutes with the machine in use in a year', 'min');
const intravenousTotal = total(
  'year.intravenous-minutes',
  'Minutes of intravenous anaesthesia in a year',
  'min'
);
const casesTotal = total('year.general-anaesthetics', 'General anaesthetics in a year', '1');
const intravenousCasesTotal = total('year.intravenous-cases', 'Intravenous anaesthetics in a year', '1');
const regionalCasesTotal = total('year.regional-cases', 'Regional anaesthetics in a year', '1');
const rowPropofol = perYear(
  'year.row-propofol',
  'Propofol given in a case group in a year',
  'g',
  'propofol given a case'
);
const propofolTotal = total('year.propofol', 'Propofol given in a year', 'g');

export const cubicMetres = formula<{ litres: number }>({
  id: 'year.cubic-metres',
  yields: 'Volume in cubic metres',
  words: 'litres divided by 1000',
  expression: 'V / 1000',
  inputs: { litres: { symbol: 'V', unit: 'L', words: 'volume' } },
  unit: 'm3',
  source: 'definition',
  compute: ({ litres }) => litres / 1000
});

export const electricity = formula<{ minutes: number; powerW: number }>({
  id: 'year.electricity',
  yields: 'Electricity',
  words: 'hours with the machine in use times its power; standby between cases is left out',
  expression: 't / 60 * p / 1000',
  inputs: {
    minutes: { symbol: 't', unit: 'min', words: 'minutes with the machine in use' },
    powerW: { symbol: 'p', unit: 'W', words: 'electrical power' }
  },
  unit: 'kWh',
  source: 'definition',
  compute: ({ minutes, powerW }) => ((minutes / 60) * powerW) / 1000
});

export const hours = formula<{ minutes: number }>({
  id: 'year.hours',
  yields: 'Hours',
  words: 'minutes divided by 60',
  expression: 't / 60',
  inputs: { minutes: { symbol: 't', unit: 'min', words: 'minutes' } },
  unit: 'h',
  source: 'definition',
  compute: ({ minutes }) => minutes / 60
});

/**
 * What a year's cases use up on one machine: for every quantity Σ over rows of cases a year × share × quantity per case.
 * @param rows case-mix rows with the result of one case each, all on the same machine
 * @param powerW electrical power of the machine
 * @param intravenous what intravenous cases take
 */
export function consumption(
  r: Reckoner,
  {
    rows,
    powerW,
    intravenous
  }: { rows: readonly RowResult[]; powerW: Quantity; intravenous: IntravenousSupply }
): Consumption {
  const liquid: Partial<Record<Agent, Quantity[]>> = {};
  const takenUp: Partial<Record<Agent, Quantity[]>> = {};
  const spilled: Partial<Record<Agent, (() => Quantity)[]>> = {};
  const atExhaust: Partial<Record<Agent, { isMeasured: boolean; ml: () => Quantity }[]>> = {};
  const oxygen: Quantity[] = [];
  const air: Quantity[] = [];
  const nitrousOxide: Quantity[] = [];
  const absorbent: Quantity[] = [];
  const machineMinutes: Quantity[] = [];
  const intravenousMinutes: Quantity[] = [];
  const intravenousCases: Quantity[] = [];
  const propofol: Quantity[] = [];
  const regionalCases: Quantity[] = [];
  const cases: Quantity[] = [];
  for (const { row, agent, result, sharePercent, atExhaustMl } of rows) {
    const casesPerYear = r.cell(row.casesPerYear, '1', 'caseMix', row.id, 'casesPerYear');
    const casesHere = r.apply(rowCases, { casesPerYear, sharePercent });
    if (row.technique === 'regional') {
      regionalCases.push(casesHere);
      continue;
    }
    const times = (perCase: Quantity) => ({ casesPerYear, sharePercent, perCase });
    if (agent !== null) {
      (liquid[agent] ??= []).push(r.apply(rowLiquid, times(result.liquidMl)));
      (takenUp[agent] ??= []).push(r.apply(rowTakenUp, times(result.takenUpMl)));
      (atExhaust[agent] ??= []).push({
        isMeasured: row.measuredMlPerCase !== null,
        ml: once(() => r.apply(rowAtExhaust, times(atExhaustMl())))
      });
      if (row.measuredMlPerCase === null)
        (spilled[agent] ??= []).push(() => r.apply(rowSpilled, times(result.spilledMl)));
    }
    oxygen.push(r.apply(rowOxygen, times(result.oxygenL)));
    air.push(r.apply(rowAir, times(result.airL)));
    if (row.nitrousOxidePercent > 0) nitrousOxide.push(r.apply(rowNitrousOxide, times(result.nitrousOxideL)));
    absorbent.push(r.apply(rowAbsorbent, times(result.absorbentKg)));
    const minutes = r.apply(rowMinutes, times(r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes')));
    machineMinutes.push(minutes);
    if (row.technique === 'intravenous') {
      intravenousMinutes.push(minutes);
      intravenousCases.push(casesHere);
      propofol.push(r.apply(rowPropofol, times(propofolOf(r, intravenous, row))));
    }
    cases.push(casesHere);
  }
  const agents: Partial<Record<Agent, AgentUse>> = {};
  for (const agent of Object.keys(liquid) as Agent[])
    agents[agent] = {
      liquidMl: r.apply(liquidTotal, { parts: liquid[agent] ?? [] }),
      takenUpMl: r.apply(takenUpTotal, { parts: takenUp[agent] ?? [] }),
      unmeasuredSpillMl: once(() =>
        spilled[agent] === undefined
          ? r.assumption(0, 'mL', 'The use of every case group was measured.')
          : r.apply(unmeasuredSpillTotal, { parts: spilled[agent].map((of) => of()) })
      ),
      atExhaustMl: once(() =>
        r.apply(atExhaustTotal, { parts: (atExhaust[agent] ?? []).map(({ ml }) => ml()) })
      ),
      unmeasuredAtExhaustMl: once(() =>
        r.apply(unmeasuredAtExhaustTotal, {
          parts: (atExhaust[agent] ?? []).flatMap(({ isMeasured, ml }) => (isMeasured ? [] : [ml()]))
        })
      )
    };
  return {
    agents,
    oxygenM3: r.apply(cubicMetres, { litres: r.apply(oxygenTotal, { parts: oxygen }) }),
    airM3: r.apply(cubicMetres, { litres: r.apply(airTotal, { parts: air }) }),
    nitrousOxideL: r.apply(nitrousOxideTotal, { parts: nitrousOxide }),
    absorbentKg: r.apply(absorbentTotal, { parts: absorbent }),
    electricityKWh: r.apply(electricity, {
      minutes: r.apply(minutesTotal, { parts: machineMinutes }),
      powerW
    }),
    intravenousCases: r.apply(intravenousCasesTotal, { parts: intravenousCases }),
    propofolGivenG: r.apply(propofolTotal, { parts: propofol }),
    regionalCases: r.apply(regionalCasesTotal, { parts: regionalCases }),
    intravenousH: r.apply(hours, { minutes: r.apply(intravenousTotal, { parts: intravenousMinutes }) }),
    generalAnaesthetics: r.apply(casesTotal, { parts: cases })
  };
}

const sumOfParts = (unit: string) =>
  formula<{ parts: readonly number[] }>({
    id: `year.parts-${unit}`,
    yields: 'All parts of the year',
    words:
      'cases that follow the scenario’s plan and cases that do not, on each machine that stands in the theatres, added up',
    expression: 'sum(x)',
    inputs: { parts: { symbol: 'x', unit, words: 'each part' } },
    unit,
    source: 'definition',
    compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
  });
const sums = {
  mL: sumOfParts('mL'),
  m3: sumOfParts('m3'),
  kg: sumOfParts('kg'),
  kWh: sumOfParts('kWh'),
  h: sumOfParts('h'),
  g: sumOfParts('g'),
  L: sumOfParts('L'),
  '1': sumOfParts('1')
};

/** The parts of a year added up; a part alone stays as it is. */
export function together(r: Reckoner, unit: keyof typeof sums, parts: readonly Quantity[]): Quantity {
  const [only] = parts;
  return parts.length === 1 && only !== undefined ? only : r.apply(sums[unit], { parts });
}

/** Share of the cases that does not follow the scenario's plan. */
export const restOfCases = formula<{ adoptionPercent: number }>({
  id: 'year.rest-of-cases',
  yields: 'Share of the cases that does not follow',
  words: '100 % less the adoption',
  expression: '100 - a',
  inputs: { adoptionPercent: { symbol: 'a', unit: '%', words: 'adoption', testRange: [0, 100] } },
  unit: '%',
  source: 'definition',
  compute: ({ adoptionPercent }) => 100 - adoptionPercent
});

/** Share of the cases that is done in some of the theatres, and in one of two ways there. */
export const partOfCases = formula<{ therePercent: number; sharePercent: number }>({
  id: 'year.part-of-cases',
  yields: 'Share of the cases that is counted here',
  words: 'the share that is done in these theatres times the share of them that does it in this way',
  expression: 't * a / 100',
  inputs: {
    therePercent: { symbol: 't', unit: '%', words: 'share done in these theatres', testRange: [0, 100] },
    sharePercent: { symbol: 'a', unit: '%', words: 'share of these', testRange: [0, 100] }
  },
  unit: '%',
  source: 'definition',
  compute: ({ therePercent, sharePercent }) => (therePercent * sharePercent) / 100
});

/** Share of the cases that is done by one technique, of those that do it in one way. */
export const partByTechnique = formula<{ sharePercent: number; techniquePercent: number }>({
  id: 'year.part-by-technique',
  yields: 'Share of the cases that is counted here',
  words: 'the share of the cases that follows here times the share of them that is done by this technique',
  expression: 'a * q / 100',
  inputs: {
    sharePercent: { symbol: 'a', unit: '%', words: 'share that follows here', testRange: [0, 100] },
    techniquePercent: { symbol: 'q', unit: '%', words: 'share of these', testRange: [0, 100] }
  },
  unit: '%',
  source: 'definition',
  compute: ({ sharePercent, techniquePercent }) => (sharePercent * techniquePercent) / 100
});

/** Recovery minutes saved in a year. */
export const recoveryMinutes = formula<{ minutesPerCase: number; generalAnaesthetics: number }>({
  id: 'year.recovery-minutes',
  yields: 'Recovery minutes saved in a year',
  words: 'minutes saved per case times the general anaesthetics that follow the plan',
  expression: 't * n',
  inputs: {
    minutesPerCase: { symbol: 't', unit: 'min', words: 'recovery minutes saved per case' },
    generalAnaesthetics: { symbol: 'n', unit: '1', words: 'general anaesthetics' }
  },
  unit: 'min',
  source: 'definition',
  compute: ({ minutesPerCase, generalAnaesthetics }) => minutesPerCase * generalAnaesthetics
});

/** Mass of nitrous oxide from its volume, by the ideal gas law. */
export const nitrousOxideMass = formula<{
  volumeL: number;
  pressureKPa: number;
  molarMassGPerMol: number;
  gasConstant: number;
  temperatureC: number;
  zeroCelsiusK: number;
}>({
  id: 'year.nitrous-oxide-mass',
  yields: 'Nitrous oxide, as mass',
  words: 'ideal gas at ambient pressure and theatre temperature',
  expression: 'V * P * M / (R * (T + T_0)) / 1000',
  inputs: {
    volumeL: { symbol: 'V', unit: 'L', words: 'volume' },
    pressureKPa: { symbol: 'P', unit: 'kPa', words: 'ambient pressure' },
    molarMassGPerMol: { symbol: 'M', unit: 'g/mol', words: 'molar mass' },
    gasConstant: { symbol: 'R', unit: 'J/(mol K)', words: 'molar gas constant' },
    temperatureC: { symbol: 'T', unit: '°C', words: 'theatre temperature', testRange: [10, 35] },
    zeroCelsiusK: { symbol: 'T_0', unit: 'K', words: 'zero of the Celsius scale', testRange: [273, 274] }
  },
  unit: 'kg',
  source: 'ideal gas law',
  compute: ({ volumeL, pressureKPa, molarMassGPerMol, gasConstant, temperatureC, zeroCelsiusK }) =>
    (volumeL * pressureKPa * molarMassGPerMol) / (gasConstant * (temperatureC + zeroCelsiusK)) / 1000
});

/** Nitrous oxide bought and not used: lost from the pipes, whatever plan is followed. */
export const nitrousOxideLost = formula<{ boughtKg: number; usedKg: number }>({
  id: 'year.nitrous-oxide-lost',
  yields: 'Nitrous oxide lost from the piped supply',
  words: 'bought less what today’s cases use; never below 0, and the same wherever the supply stays as it is',
  expression: 'max(0, B - N)',
  inputs: {
    boughtKg: { symbol: 'B', unit: 'kg', words: 'nitrous oxide bought' },
    usedKg: { symbol: 'N', unit: 'kg', words: 'nitrous oxide used today' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ boughtKg, usedKg }) => Math.max(0, boughtKg - usedKg)
});

export const nitrousOxideLostOfSupply = formula<{ usedKg: number; lossPercent: number }>({
  id: 'year.nitrous-oxide-lost-of-supply',
  yields: 'Nitrous oxide lost from the supply',
  words: 'what has to be bought beyond what the cases use, where a share of all that is bought is lost',
  expression: 'N * p / (100 - p)',
  inputs: {
    usedKg: { symbol: 'N', unit: 'kg', words: 'nitrous oxide used' },
    lossPercent: { symbol: 'p', unit: '%', words: 'share lost of what is bought', testRange: [0, 95] }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ usedKg, lossPercent }) => (usedKg * lossPercent) / (100 - lossPercent)
});
