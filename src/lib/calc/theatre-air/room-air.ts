/** Concentration in the air of a room in which something escapes: a well-mixed room, with less than perfect mixing. */
import { formula } from '../working/formula.ts';

const wellMixed = 'mass balance of a well-mixed room';

/** Air changes that act where people breathe. */
export const actingAirChanges = formula<{ airChangesPerH: number; mixingPercent: number }>({
  id: 'theatre-air.acting-air-changes',
  yields: 'Air changes that act',
  words: 'air changes times the share of them that reaches the air that is breathed',
  expression: 'n * k / 100',
  inputs: {
    airChangesPerH: { symbol: 'n', unit: '1/h', words: 'air changes' },
    mixingPercent: { symbol: 'k', unit: '%', words: 'mixing' }
  },
  unit: '1/h',
  source: wellMixed,
  compute: ({ airChangesPerH, mixingPercent }) => (airChangesPerH * mixingPercent) / 100
});

/** ppm = 60 000 · G / (n · V): L/min to m3/h, and parts to a million. */
export const steadyConcentration = formula<{
  escapingLPerMin: number;
  airChangesPerH: number;
  roomVolumeM3: number;
}>({
  id: 'theatre-air.steady',
  yields: 'Concentration in the room, steady',
  words:
    'what escapes a minute over the air that passes through the room; 60 000 turns L/min over m³/h into ppm',
  expression: '60000 * G / (n * V)',
  inputs: {
    escapingLPerMin: { symbol: 'G', unit: 'L/min', words: 'escapes into the room' },
    airChangesPerH: { symbol: 'n', unit: '1/h', words: 'air changes that act' },
    roomVolumeM3: { symbol: 'V', unit: 'm3', words: 'room volume' }
  },
  unit: 'ppm',
  source: wellMixed,
  compute: ({ escapingLPerMin, airChangesPerH, roomVolumeM3 }) =>
    (60_000 * escapingLPerMin) / (airChangesPerH * roomVolumeM3)
});

/** C(t) = C∞ (1 − e^(−n t)), from clean air. */
export const buildUp = formula<{ steadyPpm: number; airChangesPerH: number; minutes: number }>({
  id: 'theatre-air.build-up',
  yields: 'Concentration in the room, so many minutes after the start',
  words: 'the steady concentration, approached by the air changes from clean air',
  expression: 'C * (1 - exp(-n * t / 60))',
  inputs: {
    steadyPpm: { symbol: 'C', unit: 'ppm', words: 'steady concentration' },
    airChangesPerH: { symbol: 'n', unit: '1/h', words: 'air changes that act' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes since the start' }
  },
  unit: 'ppm',
  source: wellMixed,
  compute: ({ steadyPpm, airChangesPerH, minutes }) =>
    steadyPpm * (1 - Math.exp((-airChangesPerH * minutes) / 60))
});

/** C(t) = C(end) e^(−n t), once nothing escapes any more. */
export const clearance = formula<{ endPpm: number; airChangesPerH: number; minutes: number }>({
  id: 'theatre-air.clearance',
  yields: 'Concentration in the room, so many minutes after the end',
  words: 'the concentration at the end, carried off by the air changes',
  expression: 'C * exp(-n * t / 60)',
  inputs: {
    endPpm: { symbol: 'C', unit: 'ppm', words: 'concentration at the end' },
    airChangesPerH: { symbol: 'n', unit: '1/h', words: 'air changes that act' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes since the end' }
  },
  unit: 'ppm',
  source: wellMixed,
  compute: ({ endPpm, airChangesPerH, minutes }) => endPpm * Math.exp((-airChangesPerH * minutes) / 60)
});

/** Minutes of anaesthesia of a case group in a year in one kind of theatres. */
export const minutesInRoom = formula<{ casesPerYear: number; sharePercent: number; minutes: number }>({
  id: 'theatre-air.minutes-in-room',
  yields: 'Minutes of a case group in a year',
  words: 'cases a year times the share of them that is done here in this way times their minutes',
  expression: 'n * a / 100 * t',
  inputs: {
    casesPerYear: { symbol: 'n', unit: '1', words: 'cases a year' },
    sharePercent: { symbol: 'a', unit: '%', words: 'share of the cases' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of a case' }
  },
  unit: 'min',
  source: 'definition',
  compute: ({ casesPerYear, sharePercent, minutes }) => ((casesPerYear * sharePercent) / 100) * minutes
});

/** Mean over all hours of anaesthesia in these theatres, whatever is given in them. */
export const meanConcentration = formula<{
  steadyPpm: readonly number[];
  minutes: readonly number[];
  otherMinutes: readonly number[];
}>({
  id: 'theatre-air.mean',
  yields: 'Concentration in the room, mean of the hours of anaesthesia',
  words:
    'steady concentration of each case group times its minutes, over the minutes of all case groups done there; times between cases are left out, which makes it higher than the mean of a working day',
  expression: 'dot(C, t) / (sum(t) + sum(u))',
  inputs: {
    steadyPpm: { symbol: 'C', unit: 'ppm', words: 'steady concentration of a case group' },
    minutes: { symbol: 't', unit: 'min', words: 'its minutes in a year' },
    otherMinutes: { symbol: 'u', unit: 'min', words: 'minutes of a case group that is not given it' }
  },
  unit: 'ppm',
  source: 'definition',
  compute: ({ steadyPpm, minutes, otherMinutes }) => {
    let parts = 0;
    let all = 0;
    steadyPpm.forEach((ppm, index) => (parts += ppm * (minutes[index] ?? 0)));
    for (const each of minutes) all += each;
    for (const each of otherMinutes) all += each;
    return parts / all;
  }
});
