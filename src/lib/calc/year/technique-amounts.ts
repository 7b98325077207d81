/**
 * What intravenous anaesthesia takes: propofol that is given, and drawn up and not given, and sensors of processed EEG. Of
 * a case or of a year.
 */
import type { CaseRow, IntravenousSupply } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** Propofol that one patient gets for maintenance; induction is the same by every technique, and left out. */
export const propofolOfCase = formula<{ mgPerKgPerH: number; weightKg: number; minutes: number }>({
  id: 'case.propofol',
  yields: 'Propofol given in a case',
  words: 'Dose an hour for each kilogram, times weight, times hours; induction is left out.',
  expression: 'D * w * t / 60 / 1000',
  inputs: {
    mgPerKgPerH: { symbol: 'D', unit: 'mg/(kg h)', words: 'propofol an hour for each kilogram' },
    weightKg: { symbol: 'w', unit: 'kg', words: 'weight' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes' }
  },
  unit: 'g',
  source: 'definition',
  compute: ({ mgPerKgPerH, weightKg, minutes }) => (((mgPerKgPerH * weightKg) / 60) * minutes) / 1000
});

/** Propofol that a patient of a row gets where the case is intravenous. */
export const propofolOf = (
  r: Reckoner,
  { propofolMgPerKgPerH }: Pick<IntravenousSupply, 'propofolMgPerKgPerH'>,
  { id, weightKg, minutes }: Pick<CaseRow, 'id' | 'weightKg' | 'minutes'>
): Quantity =>
  r.apply(propofolOfCase, {
    mgPerKgPerH: r.cell(propofolMgPerKgPerH, 'mg/(kg h)', 'intravenous', 'propofolMgPerKgPerH'),
    weightKg: r.cell(weightKg, 'kg', 'caseMix', id, 'weightKg'),
    minutes: r.cell(minutes, 'min', 'caseMix', id, 'minutes')
  });

export const propofolDrawnUp = formula<{ givenG: number; wastedPercent: number }>({
  id: 'year.propofol-drawn-up',
  yields: 'Propofol drawn up',
  words: 'What patients get over the share of what is drawn up that they get.',
  expression: 'm / (1 - w / 100)',
  inputs: {
    givenG: { symbol: 'm', unit: 'g', words: 'propofol given' },
    wastedPercent: { symbol: 'w', unit: '%', words: 'share drawn up and not given' }
  },
  unit: 'g',
  source: 'definition',
  compute: ({ givenG, wastedPercent }) => givenG / (1 - wastedPercent / 100)
});

export const propofolWasted = formula<{ drawnUpG: number; givenG: number }>({
  id: 'year.propofol-wasted',
  yields: 'Propofol drawn up and not given',
  words: 'What is drawn up less what patients get.',
  expression: 'M - m',
  inputs: {
    drawnUpG: { symbol: 'M', unit: 'g', words: 'propofol drawn up' },
    givenG: { symbol: 'm', unit: 'g', words: 'propofol given' }
  },
  unit: 'g',
  source: 'definition',
  compute: ({ drawnUpG, givenG }) => drawnUpG - givenG
});

export const eegSensors = formula<{ cases: number; sensorPercent: number }>({
  id: 'year.eeg-sensors',
  yields: 'Sensors of processed EEG',
  words: 'Intravenous cases, times the share of them in which a sensor is used.',
  expression: 'n * s / 100',
  inputs: {
    cases: { symbol: 'n', unit: '1', words: 'intravenous cases' },
    sensorPercent: { symbol: 's', unit: '%', words: 'share of them with a sensor' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ cases, sensorPercent }) => (cases * sensorPercent) / 100
});

/** What is drawn up, wasted and stuck on for some intravenous cases. */
export interface TechniqueAmounts {
  readonly propofolDrawnUpG: Quantity;
  readonly propofolWastedG: Quantity;
  readonly eegSensors: Quantity;
}

/**
 * @param propofolGivenG what patients get in these cases
 * @param intravenousCases how many they are
 */
export function techniqueAmounts(
  r: Reckoner,
  { propofolWastedPercent, eegSensorCasesPercent }: IntravenousSupply,
  {
    propofolGivenG,
    intravenousCases
  }: { readonly propofolGivenG: Quantity; readonly intravenousCases: Quantity }
): TechniqueAmounts {
  const propofolDrawnUpG = r.apply(propofolDrawnUp, {
    givenG: propofolGivenG,
    wastedPercent: r.cell(propofolWastedPercent, '%', 'intravenous', 'propofolWastedPercent')
  });
  return {
    propofolDrawnUpG,
    propofolWastedG: r.apply(propofolWasted, { drawnUpG: propofolDrawnUpG, givenG: propofolGivenG }),
    eegSensors: r.apply(eegSensors, {
      cases: intravenousCases,
      sensorPercent: r.cell(eegSensorCasesPercent, '%', 'intravenous', 'eegSensorCasesPercent')
    })
  };
}
