/** What of the gas that leaves a circuit gets into the room: all of the leak, and of the rest what is not scavenged. */
import { formula } from '../working/formula.ts';

/** Mean fresh gas flow of a case from the gases that it used. */
export const meanFreshGas = formula<{
  oxygenL: number;
  airL: number;
  nitrousOxideL: number;
  minutes: number;
}>({
  id: 'theatre-air.mean-fresh-gas',
  yields: 'Fresh gas flow, mean of the case',
  words: 'oxygen, air and nitrous oxide of the case, over its minutes',
  expression: '(O + A + N) / t',
  inputs: {
    oxygenL: { symbol: 'O', unit: 'L', words: 'oxygen' },
    airL: { symbol: 'A', unit: 'L', words: 'air' },
    nitrousOxideL: { symbol: 'N', unit: 'L', words: 'nitrous oxide' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the case' }
  },
  unit: 'L/min',
  source: 'definition',
  compute: ({ oxygenL, airL, nitrousOxideL, minutes }) => (oxygenL + airL + nitrousOxideL) / minutes
});

/** Vapour of a liquid. */
export const vapourOfLiquid = formula<{ liquidMl: number; vapourPerLiquid: number }>({
  id: 'theatre-air.vapour',
  yields: 'Vapour',
  words: 'liquid times the vapour that a millilitre of it gives',
  expression: 'V * v / 1000',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid' },
    vapourPerLiquid: { symbol: 'v', unit: 'mL/mL', words: 'vapour per liquid', testRange: [100, 300] }
  },
  unit: 'L',
  source: 'definition',
  compute: ({ liquidMl, vapourPerLiquid }) => (liquidMl * vapourPerLiquid) / 1000
});

/** The part of the spilled gas that leaves through the leak, which no scavenging reaches; 0 where nothing is spilled. */
export const leakShare = formula<{ leakMlPerMin: number; spillLPerMin: number }>({
  id: 'theatre-air.leak-share',
  yields: 'Share of the spilled gas that leaks',
  words: 'leak of the circuit over all gas that leaves it; never above all of it, and none where none leaves',
  expression: 'S > 0 ? 100 * min(1, l / 1000 / S) : 0',
  inputs: {
    leakMlPerMin: { symbol: 'l', unit: 'mL/min', words: 'leak of the machine' },
    spillLPerMin: { symbol: 'S', unit: 'L/min', words: 'gas spilled' }
  },
  unit: '%',
  source: 'mass balance of the circuit',
  compute: ({ leakMlPerMin, spillLPerMin }) =>
    spillLPerMin > 0 ? 100 * Math.min(1, leakMlPerMin / 1000 / spillLPerMin) : 0
});

/** What escapes into the room a minute, mean of the case: leak · F_S + (spill − leak) · F_S · (1 − scavenging). */
export const escapingGas = formula<{
  spilledL: number;
  minutes: number;
  leakPercent: number;
  scavengingPercent: number;
}>({
  id: 'theatre-air.escaping',
  yields: 'Escapes into the room',
  words:
    'what is spilled over the minutes of the case: of the part that leaks all, of the rest what the scavenging does not take',
  expression: 'X / t * (l / 100 + (1 - l / 100) * (1 - s / 100))',
  inputs: {
    spilledL: { symbol: 'X', unit: 'L', words: 'spilled in the case, as gas' },
    minutes: { symbol: 't', unit: 'min', words: 'minutes of the case' },
    leakPercent: { symbol: 'l', unit: '%', words: 'share of it that leaks', testRange: [0, 100] },
    scavengingPercent: { symbol: 's', unit: '%', words: 'scavenging', testRange: [0, 100] }
  },
  unit: 'L/min',
  source: 'mass balance of the circuit',
  compute: ({ spilledL, minutes, leakPercent, scavengingPercent }) =>
    (spilledL / minutes) * (leakPercent / 100 + (1 - leakPercent / 100) * (1 - scavengingPercent / 100))
});

/** What patients give off in a recovery room, mean of the hours in which it is open. */
export const givenOffInRecovery = formula<{
  takenUpL: number;
  metabolisedPercent: number;
  givenOffPercent: number;
  hoursPerYear: number;
}>({
  id: 'theatre-air.given-off-in-recovery',
  yields: 'Given off in the recovery room',
  words:
    'what patients took up in a year less what the body metabolises, the share of it that is breathed out there, over the minutes that the room is open',
  expression: 'U * (1 - m / 100) * g / 100 / (60 * h)',
  inputs: {
    takenUpL: { symbol: 'U', unit: 'L', words: 'taken up in a year, as vapour' },
    metabolisedPercent: { symbol: 'm', unit: '%', words: 'metabolised share' },
    givenOffPercent: { symbol: 'g', unit: '%', words: 'share breathed out in the recovery room' },
    hoursPerYear: { symbol: 'h', unit: 'h', words: 'hours a year that it is open' }
  },
  unit: 'L/min',
  source: 'mass balance of the patients',
  compute: ({ takenUpL, metabolisedPercent, givenOffPercent, hoursPerYear }) =>
    (takenUpL * (1 - metabolisedPercent / 100) * givenOffPercent) / 100 / (60 * hoursPerYear)
});
