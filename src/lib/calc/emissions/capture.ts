/**
 * What a capture device at the exhaust gets hold of, and what becomes of that.
 *
 * It sits where the scavenging takes gas off, so it gets a share c of what is spilled there: neither what leaks, nor what
 * the body takes up and breathes out later and elsewhere, nor what circuit and lung hold at the end. The share of what is
 * delivered that it gets so falls as the flow falls, with one c for all flows, and no second figure is needed: of
 * desflurane 62 % was adsorbed at 0.5 L/min and 86 % at 3 L/min (Jänchen et al. 1998), and with c = 100 % and ten minutes
 * of wash-in, of which the record of the study says nothing, the model of the first set gives 61 % and 88 % (rows cap-1
 * and cap-2 of the published checks; without wash-in 39 % at 0.5 L/min). Nothing is fitted to that. Of what is caught a
 * share q is lost again, from canisters in storage or where they are emptied.
 */
import { formula } from '../working/formula.ts';

export const liquidAtExhaust = formula<{
  liquidMl: number;
  takenUpMl: number;
  leftMl: number;
  leakPercent: number;
}>({
  id: 'emissions.liquid-at-exhaust',
  yields: 'Agent that leaves a case by the exhaust',
  words:
    'liquid used less what is taken up and what is left in circuit and lung, as far as it does not leak; never below 0',
  expression: '(1 - l / 100) * max(0, V - U - o)',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    takenUpMl: { symbol: 'U', unit: 'mL', words: 'liquid agent taken up' },
    leftMl: { symbol: 'o', unit: 'mL', words: 'left in circuit and lung' },
    leakPercent: { symbol: 'l', unit: '%', words: 'share of what is spilled that leaks', testRange: [0, 100] }
  },
  unit: 'mL',
  source: 'mass balance of the circuit',
  compute: ({ liquidMl, takenUpMl, leftMl, leakPercent }) =>
    (1 - leakPercent / 100) * Math.max(0, liquidMl - takenUpMl - leftMl)
});

const capturedShare = { symbol: 'c', unit: '%', words: 'share of it that is captured' } as const;
const lostShare = {
  symbol: 'q',
  unit: '%',
  words: 'share of what is caught that is lost again',
  testRange: [0, 100]
} as const;
const atExhaust = { symbol: 'X', unit: 'mL', words: 'liquid agent that leaves by the exhaust' } as const;
const density = { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' } as const;

/** Inputs of capture in a formula, once for what is vented and what is caught. */
export const captureInputs = {
  atExhaustMl: atExhaust,
  capturePercent: capturedShare,
  caughtLostPercent: lostShare
};

interface Caught {
  readonly deliveredKg: number;
  readonly metabolisedKg: number;
  readonly atExhaustMl: number;
  readonly densityGPerMl: number;
  readonly capturePercent: number;
  readonly caughtLostPercent: number;
}

const delivered = { symbol: 'D', unit: 'kg', words: 'delivered' } as const;
const metabolised = { symbol: 'M', unit: 'kg', words: 'metabolised' } as const;

/** What stays caught. */
export const caughtMass = formula<Caught>({
  id: 'emissions.caught-mass',
  yields: 'Agent that stays caught, as mass',
  words:
    'what leaves by the exhaust, times the share of it that is captured, less what of that is lost again; never more than is delivered and not metabolised',
  expression: 'min(D - M, c / 100 * (1 - q / 100) * X * d / 1000)',
  inputs: { deliveredKg: delivered, metabolisedKg: metabolised, ...captureInputs, densityGPerMl: density },
  unit: 'kg',
  source: 'definition',
  compute: ({ deliveredKg, metabolisedKg, atExhaustMl, densityGPerMl, capturePercent, caughtLostPercent }) =>
    Math.min(
      deliveredKg - metabolisedKg,
      ((capturePercent / 100) * (1 - caughtLostPercent / 100) * atExhaustMl * densityGPerMl) / 1000
    )
});

/** What is caught first and then lost again: vented, in the end. */
export const caughtAndLostMass = formula<Caught>({
  id: 'emissions.caught-and-lost-mass',
  yields: 'Agent caught and lost again, as mass',
  words:
    'what leaves by the exhaust, times the share of it that is captured, times the share of that which is lost again; never more than is delivered and not metabolised',
  expression: 'min(D - M, c / 100 * q / 100 * X * d / 1000)',
  inputs: { deliveredKg: delivered, metabolisedKg: metabolised, ...captureInputs, densityGPerMl: density },
  unit: 'kg',
  source: 'definition',
  compute: ({ deliveredKg, metabolisedKg, atExhaustMl, densityGPerMl, capturePercent, caughtLostPercent }) =>
    Math.min(
      deliveredKg - metabolisedKg,
      ((capturePercent / 100) * (caughtLostPercent / 100) * atExhaustMl * densityGPerMl) / 1000
    )
});
