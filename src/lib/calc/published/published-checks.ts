/**
 * What others measured or printed, each beside the model's own figure for the same conditions. One computation for the
 * Evidence sheet and for the tests. Nothing in the model is fitted to these rows.
 */
import type { Agent, BodyModel, SolubilityGroup } from '../input.ts';
import { agents, bodyModels } from '../input.ts';
import type { Constant, Evidence } from '../reference/constant.ts';
import { take } from '../reference/reference-set.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { recorder } from '../working/recorder.ts';
import type { Quantity } from '../working/reckoner.ts';
import { absorbentMass, co2AbsorbedInPhase } from '../case/absorbent-use.ts';
import { inspiredOxygenFraction } from '../case/carrier-gas.ts';
import { emptyOutcome, REACHED_SHARE, solveCircleSystem } from '../case/circle-system.ts';
import {
  experimentCase,
  insufflationRisePercent,
  minuteVolumeLPerMin,
  runExperiment,
  sodaLimeHoursPerKg
} from './experiment.ts';
import type { Experiment, ExperimentPhase } from './experiment.ts';
import { vapourPerLiquid } from '../case/liquid-and-vapour.ts';
import { co2Production, oxygenUptake } from '../case/physiology.ts';
import { macAtAge, targetFractionWithNitrousOxide } from '../case/target-fraction.ts';

export type CheckArea =
  | 'liquid to vapour'
  | 'constant dial'
  | 'MAC and age'
  | 'wash-in'
  | 'circuit'
  | 'uptake'
  | 'measured use'
  | 'difference between flows'
  | 'dial mode'
  | 'concentration ratio'
  | 'time to target'
  | 'induction by mask'
  | 'absorbent'
  | 'capture'
  | 'gas exchange'
  | 'oxygen';

/**
 * What a row's published figure is: only a measurement can tell how far off the model is, and of those not one whose
 * conditions are not all told, nor one that the model has taken its own figures from. The remark of a row says which.
 */
export type CheckKind =
  'measurement' | 'measurement not counted' | 'formula' | 'rule of thumb' | 'own arithmetic';

export interface PublishedCheck {
  readonly id: string;
  readonly area: CheckArea;
  readonly kind: CheckKind;
  /** What rows of one colour share in a chart: the agent, or `none`. */
  readonly group: Agent | 'none';
  /** The conditions, in words. */
  readonly given: string;
  readonly published: number;
  /** True where nobody printed the figure: this project computed it from a formula that somebody published. */
  readonly computedHere: boolean;
  /** Spread as published; an empty string where none is. */
  readonly spread: string;
  readonly unit: string;
  /** How far the model may be off, in words. */
  readonly tolerance: string;
  readonly toleranceReason: string;
  /** The tolerance as bounds of the model's figure. */
  readonly accepted: { readonly low: number; readonly high: number };
  readonly source: string;
  readonly evidence: Evidence;
  /** False where the figure is reported and not held against the tolerance; `remark` says why. */
  readonly asserted: boolean;
  readonly model: Readonly<Record<BodyModel, number>>;
  /** Where the model is off, the likely cause; an empty string where there is nothing to say. */
  readonly remark: string;
}

/** Where the model's figure lies: inside the accepted bounds or not, to the precision of the figures. */
export const isAccepted = ({ accepted }: PublishedCheck, figure: number): boolean =>
  figure >= accepted.low * (1 - 1e-12) && figure <= accepted.high * (1 + 1e-12);

interface Setting {
  readonly reference: ReferenceSet;
  readonly bodyModel: BodyModel;
  readonly spillShareInspiredFraction: number | null;
  readonly solubilityGroup: SolubilityGroup;
}

type Row = Omit<
  PublishedCheck,
  'model' | 'tolerance' | 'accepted' | 'asserted' | 'remark' | 'spread' | 'computedHere' | 'kind'
> & {
  /** Where left out: own arithmetic if computed here, a formula in the areas of formulas, else a measurement. */
  readonly kind?: CheckKind;
  readonly computedHere?: true;
  readonly spread?: string;
  readonly tolerance: Tolerance;
  readonly reported?: true;
  readonly remark?: string | ((setting: Setting) => string);
  readonly model: (setting: Setting) => number;
};

type Tolerance =
  | { readonly percent: number }
  | { readonly by: number }
  | { readonly low: number; readonly high: number; readonly words: string }
  | { readonly atLeast: true };

const common = {
  biro: 'Biro P. Acta Anaesthesiol Scand 2014;58:968-72, doi 10.1111/aas.12374',
  nickalls: 'Nickalls RWD, Mapleson WW. Br J Anaesth 2003;91:170-4',
  washIn: 'US prescribing information of desflurane (wash-in of 8 volunteers)',
  desfluraneClosed:
    'Closed-circle desflurane in 30 adults, probably Anaesthesia 1996;51:33-6 (citation from memory)',
  horwitz: 'Horwitz M, Jakobsson JG. Minerva Anestesiol 2016;82:180-5',
  sevofluraneDial: 'J Clin Anesth 2002;14:267-70',
  desfluraneDial:
    'Low-flow anaesthesia with desflurane: kinetics during clinical procedures (abstract; journal not shown)',
  earlyMinimalFlow:
    'Minimal flow anesthesia can be initiated early … (abstract; title cut short, journal not shown)',
  lerou: 'Lerou JGC, Verheijen R, Booij LHDJ. Br J Anaesth 2002;88:24-37',
  injection:
    'French three-group study of liquid injection; its group at 7.1 L/min is left out, as it contradicts mass balance'
} as const;

const hold = (
  minutes: number,
  flow: ExperimentPhase['flow'],
  dialPercent: number | null
): ExperimentPhase => ({
  minutes,
  flow,
  dialPercent,
  vaporiser: 'hold'
});
const dial = (minutes: number, flow: number, dialPercent: number): ExperimentPhase => ({
  minutes,
  flow,
  dialPercent,
  vaporiser: 'dial'
});

/** End-tidal percentage of one MAC at 40 years. */
const oneMac = (reference: ReferenceSet, agent: Agent): number => take(reference, `${agent}.mac40`).value;
const vapourOf = (reference: ReferenceSet, agent: Agent): number =>
  vapourPerLiquid.compute({
    densityGPerMl: take(reference, `${agent}.liquid-density`).value,
    gasConstant: take(reference, 'gas-constant').value,
    temperatureC: 20,
    zeroCelsiusK: take(reference, 'zero-celsius').value,
    molarMassGPerMol: take(reference, `${agent}.molar-mass`).value,
    pressureKPa: take(reference, 'standard-atmosphere').value
  });

/**
 * Liquid, mL, that the engine's own vaporiser gives off in an hour at a fixed dial, into a flow that leaves it: a case
 * run from its first minute to its last. Published formulas count that mixture.
 */
const dialLiquid = (setting: Setting, agent: Agent, mixtureLPerMin: number, percent: number): number =>
  runExperiment({
    ...setting,
    agent,
    targetPercent: percent,
    phases: [dial(60, mixtureLPerMin * (1 - percent / 100), percent)]
  }).liquidMl;

const liquidToVapour: readonly Row[] = (
  [
    ['vap-1', 'sevoflurane', 184],
    ['vap-2', 'isoflurane', 195],
    ['vap-3', 'desflurane', 210]
  ] as const
).map(([id, agent, published]) => ({
  id,
  area: 'liquid to vapour',
  group: agent,
  given: `vapour from a millilitre of liquid ${agent}, 20 °C, 101.325 kPa`,
  published,
  unit: 'mL/mL',
  tolerance: { percent: 1.5 },
  toleranceReason: 'published densities differ by as much',
  source: common.biro,
  evidence: 'read',
  model: ({ reference }) => vapourOf(reference, agent)
}));

const constantDialRows: readonly Row[] = [
  {
    id: 'dial-1',
    area: 'constant dial',
    group: 'isoflurane',
    given: 'isoflurane 1.4 % in 6 L/min that leave the vaporiser',
    published: 85,
    unit: 'mL vapour/min',
    tolerance: { percent: 2 },
    toleranceReason: 'printed as about 85',
    source: 'Anaesth Intensive Care 1998;26:371-6, doi 10.1177/0310057X9802600405',
    evidence: 'read',
    model: (setting) =>
      (dialLiquid(setting, 'isoflurane', 6, 1.4) / 60) * vapourOf(setting.reference, 'isoflurane')
  },
  {
    id: 'dial-2',
    area: 'constant dial',
    group: 'sevoflurane',
    given: 'sevoflurane 2 %, 1 L/min of mixture, 60 min, by the formula P F T M / (2412 d)',
    published: (2 * 1 * 60 * 200.05) / (2412 * 1.52),
    computedHere: true,
    unit: 'mL',
    tolerance: { percent: 0.5 },
    toleranceReason: 'the formula holds at 21 °C, the core at 20 °C',
    source: 'Dion P. Can J Anaesth 1992;39:633 (formula read second-hand, figure computed)',
    evidence: 'second-hand',
    model: (setting) => dialLiquid(setting, 'sevoflurane', 1, 2)
  },
  ...agents.map((agent): Row => ({
    id: `dial-3-${agent}`,
    area: 'constant dial',
    group: agent,
    kind: 'rule of thumb',
    given: `rule of thumb for any agent, 3 mL per % and L/min in an hour: ${agent} 1 % in 1 L/min of mixture`,
    published: 3,
    unit: 'mL',
    tolerance: { low: 3 / 1.16, high: 3 / 0.9, words: 'the rule within −10 to +16 % of the core' },
    toleranceReason: 'the rule itself errs by agent',
    source: 'Dhulkhed et al. Indian J Anaesth 2013;57:455-63, doi 10.4103/0019-5049.120141',
    evidence: 'read',
    model: (setting) => dialLiquid(setting, agent, 1, 1)
  }))
];

/** MAC in oxygen by age band; the middle of each band, or the mean age where it is printed, stands for it. */
const macByAge: readonly Row[] = (
  [
    [25, '18 to 30', 7.25, 'second-hand', ''],
    [48, '31 to 65', 6, 'second-hand', ''],
    [75, 'over 65', 5.17, 'read', 'SD 0.6']
  ] as const
).map(([ageYears, band, published, evidence, spread]) => ({
  id: `mac-3-${ageYears}`,
  area: 'MAC and age',
  kind: 'measurement',
  group: 'desflurane',
  given: `one MAC of desflurane in oxygen, ${band} years (${ageYears} taken)`,
  published,
  spread,
  unit: '%',
  tolerance: { percent: 7 },
  toleranceReason: 'bands of age; SD 0.6 in the oldest',
  source: 'Gold MI et al. Anesthesiology 1993;79:710-4, doi 10.1097/00000542-199310000-00012',
  evidence,
  model: ({ reference }) =>
    macAtAge.compute({
      mac40Percent: take(reference, 'desflurane.mac40').value,
      slopePerYear: take(reference, 'mac.age-slope').value,
      ageYears
    })
}));

const macRows: readonly Row[] = (
  [
    ['mac-1', 95, 0.25, 0.01],
    ['mac-2', 5, 1, 0.02]
  ] as const
).map(([id, ageYears, published, by]) => ({
  id,
  area: 'MAC and age',
  group: 'isoflurane',
  given: `isoflurane beside 67 % nitrous oxide for 1.2 MAC in all, ${ageYears} years`,
  published,
  unit: '%',
  tolerance: { by },
  toleranceReason: 'printed precision',
  source: common.nickalls,
  evidence: 'read',
  model: ({ reference }) => {
    const macFraction = (id: string) =>
      macAtAge.compute({
        mac40Percent: take(reference, id).value,
        slopePerYear: take(reference, 'mac.age-slope').value,
        ageYears
      }) / 100;
    return (
      100 *
      targetFractionWithNitrousOxide.compute({
        targetMac: 1.2,
        nitrousOxidePercent: 67,
        nitrousOxideMacFraction: macFraction('nitrous-oxide.mac40'),
        macFraction: macFraction('isoflurane.mac40')
      })
    );
  }
}));

const washIn: readonly Row[] = (
  [
    ['fafi-1', 'desflurane', 0.91, 0.04, common.washIn, 'read'],
    ['fafi-2', 'isoflurane', 0.74, 0.04, common.washIn, 'read'],
    ['fafi-3', 'sevoflurane', 0.85, 0.04, 'Yasuda N et al. Anesth Analg 1991;72:316-24', 'memory'],
    ['fafi-4', 'halothane', 0.58, 0.05, common.washIn, 'read']
  ] as const
).map(([id, agent, published, by, source, evidence]) => ({
  id,
  area: 'wash-in',
  group: agent,
  given: `end-tidal over inspired ${agent} after 30 min of constant inspired concentration`,
  published,
  unit: '1',
  tolerance: { by },
  toleranceReason: 'spread between subjects',
  source,
  evidence,
  // A flow so high that what is inspired is what the dial says.
  model: (setting) =>
    runExperiment({ ...setting, agent, targetPercent: 1, phases: [dial(30, 10_000, 1)] }).washIn
}));

const circuit: readonly Row[] = (
  [
    [0.5, 51],
    [1, 76],
    [2, 94],
    [8, 100]
  ] as const
).map(([flowLPerMin, published]) => ({
  id: `circ-1-${flowLPerMin}`,
  area: 'circuit',
  group: 'none',
  given: `share washed into a 7 L circuit in 10 min by ${flowLPerMin} L/min, no patient`,
  published,
  computedHere: true,
  unit: '%',
  tolerance: { by: 1 },
  toleranceReason: 'exponential, printed to the whole percent',
  source: "Miller's Anesthesia, 6th ed., ch. 5 (range 50 to 100 % read, points computed)",
  evidence: 'second-hand',
  model: (setting) => {
    // The solver with a patient who breathes and takes up next to nothing.
    const dialFraction = 1e-6;
    const { circle } = experimentCase({
      ...setting,
      agent: 'sevoflurane',
      targetPercent: 1,
      circuitVolumeL: 7,
      phases: [dial(10, flowLPerMin, 100 * dialFraction)]
    });
    const outcome = emptyOutcome();
    const noPatient = { alveolarVentilationLPerMin: 1e-9, oxygenUptakeLPerMin: 0, tissues: [] };
    solveCircleSystem({ ...circle, ...noPatient, targetFraction: dialFraction }, outcome);
    return (100 * outcome.leftInCircuitL) / (7 * dialFraction);
  }
}));

const closed = (setting: Setting, agent: Agent, targetPercent: number, minutes: number) =>
  runExperiment({ ...setting, agent, targetPercent, phases: [hold(minutes, 'closed', null)] });

const runsLow =
  'The model runs low on late uptake, as every uptake model of this kind does; a leak that the published figure includes adds to it.';

const uptake: readonly Row[] = [
  {
    id: 'up-1',
    area: 'uptake',
    group: 'isoflurane',
    given: 'isoflurane, closed circuit, end-tidal 1.3 MAC, 70 kg: liquid from 60 to 120 min',
    published: 4.02,
    unit: 'mL',
    tolerance: { percent: 20 },
    toleranceReason:
      'fit of three exponentials to 12 patients; the first hour differs by how the circuit was filled',
    source: 'Pal SK et al. Br J Anaesth 2001;86:645-9',
    evidence: 'read',
    model: (setting) => {
      const targetPercent = 1.3 * oneMac(setting.reference, 'isoflurane');
      const until = (minutes: number) => closed(setting, 'isoflurane', targetPercent, minutes).liquidMl;
      return until(120) - until(60);
    }
  },
  ...(
    [
      [30, 10.1],
      [60, 14.8],
      [120, 25.4],
      [180, 35.8]
    ] as const
  ).map(([minutes, published]): Row => ({
    id: `up-2-${minutes}-min`,
    area: 'uptake',
    group: 'desflurane',
    given: `desflurane, closed circuit, end-expired 8 %: liquid in ${minutes} min`,
    published,
    unit: 'mL',
    tolerance: { percent: minutes < 120 ? 20 : minutes === 120 ? 25 : 35 },
    toleranceReason: 'the published use includes leak',
    source: common.desfluraneClosed,
    evidence: 'read',
    model: (setting) => closed(setting, 'desflurane', 8, minutes).liquidMl,
    ...(minutes >= 120 ? { remark: runsLow } : {})
  })),
  {
    id: 'up-3',
    area: 'uptake',
    group: 'sevoflurane',
    given: 'sevoflurane, closed circuit, end-expired 1.8 %: liquid from 5 to 60 min',
    published: 4.63,
    spread: 'SD 0.94',
    unit: 'mL',
    tolerance: { percent: 35 },
    toleranceReason: 'SD 0.94 of 8 adults',
    source: 'De Cooman S et al. BMC Res Notes 2014;7:469, doi 10.1186/1756-0500-7-469',
    evidence: 'read',
    model: (setting) => {
      const until = (minutes: number) => closed(setting, 'sevoflurane', 1.8, minutes).liquidMl;
      return until(60) - until(5);
    },
    remark: runsLow
  },
  ...(
    [
      ['sevoflurane', 5],
      ['isoflurane', 6.5],
      ['desflurane', 10.2]
    ] as const
  ).map(([agent, published]): Row => ({
    id: `up-4-${agent}`,
    area: 'uptake',
    group: agent,
    given: `${agent}, 1 MAC, 70 kg: uptake in 60 min by the square-root-of-time model`,
    published,
    computedHere: true,
    unit: 'mL',
    tolerance: { percent: 30 },
    toleranceReason: 'two models of the same thing',
    source:
      'Lowe HJ, Ernst EA. The Quantitative Practice of Anesthesia, 1981 (formula from memory, figure computed)',
    evidence: 'memory',
    model: (setting) => closed(setting, agent, oneMac(setting.reference, agent), 60).takenUpMl
  })),
  ...(
    [
      ['first', 6.92, '2.16', 0],
      ['second', 4.57, '0.66', 60]
    ] as const
  ).map(([hour, published, sd, from]): Row => ({
    id: `up-7-${hour}-hour`,
    area: 'uptake',
    kind: 'measurement not counted',
    group: 'sevoflurane',
    given: `sevoflurane, closed circuit, liquid into the absorber, end-tidal not below 1 % (1.5 % run): ${hour} hour`,
    published,
    spread: `SD ${sd}`,
    unit: 'mL',
    tolerance: { percent: 35 },
    toleranceReason: `SD ${sd} of 14 patients`,
    source: 'Chinese Journal of Clinical Anesthesiology (abstract; year not shown)',
    evidence: 'read',
    reported: true,
    remark: `Not counted: the abstract names no mean end-tidal share, on which the use depends. ${runsLow}`,
    model: (setting) => {
      const until = (minutes: number) =>
        minutes === 0 ? 0 : closed(setting, 'sevoflurane', 1.5, minutes).liquidMl;
      return until(from + 60) - until(from);
    }
  })),
  ...(
    [
      ['sevoflurane', 1, 2, 6.5, 5.7],
      ['sevoflurane', 2, 2, 7.2, 5.7],
      ['desflurane', 1, 5, 3.1, 2.5],
      ['desflurane', 2, 5, 3.1, 1.9]
    ] as const
  ).map(([agent, flow, percent, published, withLess]): Row => ({
    id: flow === 1 ? `up-5-${agent}` : `up-5-${agent}-${flow}`,
    area: 'uptake',
    group: agent,
    given: `${agent}, dial ${percent} %, ${flow} L/min throughout: uptake at 120 min for each per cent end-tidal, by mass balance from the measured concentrations`,
    published,
    computedHere: true,
    unit: 'mL vapour/min',
    tolerance: { percent: 40 },
    toleranceReason: `oxygen uptake of 180 mL/min is assumed; 5 % less from the vaporiser would give ${withLess}`,
    source: agent === 'sevoflurane' ? common.sevofluraneDial : common.desfluraneDial,
    evidence: 'computed',
    ...(agent === 'sevoflurane' && flow === 2 ? { reported: true as const } : {}),
    model: (setting) => {
      const until = (minutes: number) =>
        runExperiment(
          { ...setting, agent, targetPercent: percent, phases: [dial(minutes, flow, percent)] },
          minutes - 0.1
        );
      const liquidMlPerMin = (until(121).takenUpMl - until(119).takenUpMl) / 2;
      return (liquidMlPerMin * vapourOf(setting.reference, agent)) / until(120).meanEndTidalPercent;
    },
    remark: 'The model runs low on late uptake, as every uptake model of this kind does.'
  }))
];

/**
 * The experiment with the end-tidal target at which the mean inspired percentage after the first minute is as wanted:
 * the two are so nearly proportional that a few rounds of the rule of three find it.
 */
function holdingInspired(inspiredPercent: number, at: (targetPercent: number) => Experiment): Experiment {
  let targetPercent = inspiredPercent;
  for (let round = 0; round < 6; round++)
    targetPercent *= inspiredPercent / runExperiment(at(targetPercent), 1).meanInspiredPercent;
  return at(targetPercent);
}

const measuredUse: readonly Row[] = [
  ...(
    [
      ['use-1-high', '4.4 L/min', 78, [hold(60, 4.4, 18)]],
      ['use-1-low', '4.4 L/min for 10 min, then 1 L/min', 26, [hold(10, 4.4, 18), hold(50, 1, 18)]]
    ] as const
  ).map(([id, flows, published, phases]): Row => ({
    id,
    area: 'measured use',
    group: 'desflurane',
    given: `desflurane 4 to 6 % (5 % held), ${flows}: liquid in the first hour`,
    published,
    unit: 'mL/h',
    tolerance: { percent: 30 },
    toleranceReason: 'clinical dosing is not fully described',
    source: 'Turk Anest Reanim Dern Derg 2008;36:222-9',
    evidence: 'read',
    model: (setting) => runExperiment({ ...setting, agent: 'desflurane', targetPercent: 5, phases }).liquidMl
  })),
  ...(
    [
      [0.48, 5.85, '1.3'],
      [2, 10.75, '1.1']
    ] as const
  ).map(([flow, published, sd]): Row => ({
    id: `use-2-${flow}`,
    area: 'measured use',
    group: 'isoflurane',
    given: `isoflurane, alveolar 0.92 %, ${flow} L/min, liquid injected: first hour`,
    published,
    spread: `SD ${sd}`,
    unit: 'mL/h',
    tolerance: { percent: 20 },
    toleranceReason: `SD ${sd} of 20 patients`,
    source: common.injection,
    evidence: 'read',
    model: (setting) =>
      runExperiment({ ...setting, agent: 'isoflurane', targetPercent: 0.92, phases: [hold(60, flow, null)] })
        .liquidMl
  })),
  ...(
    [
      [0.48, 138, 11.32, '6.73'],
      [2, 125.5, 19.2, '7.12']
    ] as const
  ).map(([flow, minutes, published, sd]): Row => ({
    id: `use-2b-${flow}`,
    area: 'measured use',
    group: 'isoflurane',
    given: `isoflurane, alveolar 0.92 %, ${flow} L/min, liquid injected: whole case of ${minutes} min`,
    published,
    spread: `SD ${sd}`,
    unit: 'mL',
    tolerance: { percent: 25 },
    toleranceReason: `SD ${sd} of 20 patients; their cases differ in length (SD ${flow === 2 ? 45 : 88} min)`,
    source: common.injection,
    evidence: 'read',
    model: (setting) =>
      runExperiment({
        ...setting,
        agent: 'isoflurane',
        targetPercent: 0.92,
        phases: [hold(minutes, flow, null)]
      }).liquidMl
  })),
  {
    id: 'use-3',
    area: 'measured use',
    group: 'sevoflurane',
    given:
      'sevoflurane audit, end-tidal 2.4 %: 7.07 L/min at induction, 1.41 L/min after, mean 1.73 L/min: liquid in the first hour',
    published: 16.7,
    unit: 'mL/h',
    tolerance: { percent: 35 },
    toleranceReason: 'an audit of mixed practice',
    source: 'Setlhare AR et al. J Coll Med S Afr 2025;3(1):a170, doi 10.4102/jcmsa.v3i1.170',
    evidence: 'read',
    model: (setting) => {
      const inductionMin = (60 * (1.73 - 1.41)) / (7.07 - 1.41);
      return runExperiment({
        ...setting,
        agent: 'sevoflurane',
        targetPercent: 2.4,
        phases: [hold(inductionMin, 7.07, 8), hold(60 - inductionMin, 1.41, 8)]
      }).liquidMl;
    },
    remark:
      'The model lies high: it holds the target from the first minutes of one hour to the last, an audit’s cases have induction and emergence below it and run longer than an hour.'
  },
  {
    id: 'use-4',
    area: 'measured use',
    group: 'sevoflurane',
    given:
      'sevoflurane, inspired 3 %, one minute at 10 L/min, then at 0.15 to 0.30 L/min (run closed): liquid in an hour',
    published: 9.2,
    spread: 'SD 2.8',
    unit: 'mL/h',
    tolerance: { percent: 35 },
    toleranceReason: 'SD 2.8 of 51 patients',
    source: 'Gloucester series, Anaesth Intensive Care',
    evidence: 'read',
    model: (setting) =>
      runExperiment(
        holdingInspired(3, (targetPercent) => ({
          ...setting,
          agent: 'sevoflurane',
          targetPercent,
          phases: [hold(1, 10, 8), hold(59, 'closed', 8)]
        }))
      ).liquidMl
  }
];

const CHILD_KG = 15;
const howLongIsNotTold =
  'Not counted: how long it took is not in the abstract, and at a fixed dial the use goes by the minutes.';
const inductionLiquid = (setting: Setting, phases: readonly ExperimentPhase[]): number =>
  runExperiment({ ...setting, agent: 'sevoflurane', weightKg: CHILD_KG, targetPercent: 5, phases }).liquidMl;

/** What one flow uses more than another, all else alike: what a plan for less flow is judged by. */
const differences: readonly Row[] = [
  {
    id: 'diff-1',
    area: 'difference between flows',
    group: 'isoflurane',
    given: 'isoflurane, alveolar 0.92 %, first hour: 2.0 less 0.48 L/min',
    published: 4.9,
    spread: 'SE 0.39',
    unit: 'mL/h',
    tolerance: { percent: 20 },
    toleranceReason: '10.75 (SD 1.12) less 5.85 (SD 1.32), 20 patients each',
    source: common.injection,
    evidence: 'read',
    reported: true,
    remark: `The model spills what is inspired; gas that leaves on the expiratory side holds less agent, so the saving of a soluble agent is overstated.`,
    model: (setting) => {
      const at = (flow: number) =>
        runExperiment({
          ...setting,
          agent: 'isoflurane',
          targetPercent: 0.92,
          phases: [hold(60, flow, null)]
        }).liquidMl;
      return at(2) - at(0.48);
    }
  },
  {
    id: 'diff-2',
    area: 'difference between flows',
    group: 'desflurane',
    given: 'desflurane 4 to 6 % (5 % held), first hour: 4.4 L/min less 1 L/min after 10 min at 4.4',
    published: 52,
    unit: 'mL/h',
    tolerance: { percent: 20 },
    toleranceReason: '78 less 26, 30 patients each',
    source: 'Turk Anest Reanim Dern Derg 2008;36:222-9',
    evidence: 'read',
    model: (setting) => {
      const at = (phases: readonly ExperimentPhase[]) =>
        runExperiment({ ...setting, agent: 'desflurane', targetPercent: 5, phases }).liquidMl;
      return at([hold(60, 4.4, 18)]) - at([hold(10, 4.4, 18), hold(50, 1, 18)]);
    }
  },
  {
    id: 'diff-4',
    area: 'difference between flows',
    kind: 'measurement not counted',
    group: 'isoflurane',
    given:
      'isoflurane beside 60 % nitrous oxide (1 MAC in all run), first 2 h: medium-flow less low-flow circle (2 less 1 L/min run)',
    published: 10.6,
    spread: 'SE 1.8',
    unit: 'mL',
    tolerance: { percent: 35 },
    toleranceReason: '18.5 (SD 5.4) less 7.9 (SD 2.2), 10 patients each, weighed',
    source: 'Pedersen FM et al. Acta Anaesthesiol Scand 1993;37:509-12',
    evidence: 'read',
    reported: true,
    remark:
      'Not counted: neither the flows nor the target are in the abstract, and the difference depends on both.',
    model: (setting) => {
      const at = (flow: number) =>
        runExperiment({
          ...setting,
          agent: 'isoflurane',
          nitrousOxidePercent: 60,
          targetPercent:
            oneMac(setting.reference, 'isoflurane') *
            (1 - 60 / take(setting.reference, 'nitrous-oxide.mac40').value),
          phases: [hold(120, flow, null)]
        }).liquidMl;
      return at(2) - at(1);
    }
  }
];

/** Children of 15 kg who fall asleep by mask: no abstract tells how long it took. */
const inductionByMask: readonly Row[] = [
  ...(
    [
      [6, 8.96, '1.11'],
      [1, 4.17, '0.70']
    ] as const
  ).map(([flow, published, sd]): Row => ({
    id: `ind-1-${flow}`,
    area: 'induction by mask',
    kind: 'measurement not counted',
    group: 'sevoflurane',
    given: `sevoflurane, child of 1 to 5 years: circle primed with 8 % at 6 L/min for 30 s, then ${flow} L/min, 5 % after loss of the lash reflex (1 min of 8 % and 3.5 min of 5 % run): whole induction`,
    published,
    spread: `SD ${sd}`,
    unit: 'mL',
    tolerance: { percent: 35 },
    toleranceReason: `SD ${sd} of 25 patients`,
    source: 'Paediatr Anaesth 2019;29:304-9, doi 10.1111/pan.13582',
    evidence: 'read',
    reported: true,
    remark: howLongIsNotTold,
    model: (setting) => inductionLiquid(setting, [dial(0.5, 6, 8), dial(1, flow, 8), dial(3.5, flow, 5)])
  })),
  ...(
    [
      ['6 L/min', 9.2, null],
      ['the minute volume', 5.8, 1],
      ['half the minute volume', 3.8, 0.5]
    ] as const
  ).map(([flow, published, share], i): Row => ({
    id: `ind-2-${i + 1}`,
    area: 'induction by mask',
    kind: 'measurement not counted',
    group: 'sevoflurane',
    given: `sevoflurane, child of 10 to 20 kg, dial 8 %, fresh gas ${flow} (3 min run)`,
    published,
    unit: 'mL',
    tolerance: { percent: 35 },
    toleranceReason: '15 patients; no spread is in the abstract',
    source: 'AANA J, June 2020 (abstract)',
    evidence: 'read',
    reported: true,
    remark: howLongIsNotTold,
    model: (setting) =>
      inductionLiquid(setting, [
        dial(3, share === null ? 6 : share * minuteVolumeLPerMin({ ...setting, weightKg: CHILD_KG }), 8)
      ])
  }))
];

/** Constant flow and dial for two hours: what is inspired and what is end-tidal in the last minute. */
const dialMode: readonly Row[] = (
  [
    ['dialm-1', 'sevoflurane', 2, 1.45, 1.28, 10, common.sevofluraneDial, 'SD 0.10 / 0.12 of 28 patients'],
    ['dialm-3', 'desflurane', 5, 4.54, 4.37, 6, common.desfluraneDial, '28 patients; no spread is printed']
  ] as const
).flatMap(([id, agent, percent, inspired, endTidal, within, source, why]) =>
  (
    [
      ['inspired', inspired],
      ['end-tidal', endTidal]
    ] as const
  ).map(([side, published]): Row => ({
    id: `${id}-${side}`,
    area: 'dial mode',
    group: agent,
    given: `${agent}, dial ${percent} %, 1 L/min throughout: ${side} at 120 min`,
    published,
    unit: '%',
    tolerance: { percent: within },
    toleranceReason: why,
    source,
    evidence: 'read',
    reported: true,
    remark:
      'The vaporiser’s own error comes on top, and the model’s uptake late in a case runs low, which leaves more agent in the circuit.',
    model: (setting) => {
      const result = runExperiment(
        { ...setting, agent, targetPercent: percent, phases: [dial(120, 1, percent)] },
        119
      );
      return side === 'inspired' ? result.meanInspiredPercent : result.meanEndTidalPercent;
    }
  }))
);

/** Constant flow and dial from the start, until the end-tidal fraction counts as at one MAC. */
const minutesToMac = (
  setting: Setting,
  agent: Agent,
  {
    flowLPerMin,
    dialPercent,
    circuitVolumeL
  }: { flowLPerMin: number; dialPercent: number; circuitVolumeL?: number }
): number =>
  runExperiment({
    ...setting,
    agent,
    ...(circuitVolumeL === undefined ? {} : { circuitVolumeL }),
    targetPercent: oneMac(setting.reference, agent),
    phases: [dial(60, flowLPerMin, dialPercent)]
  }).minutesToTarget;

const timeRow = (
  id: string,
  agent: Agent,
  flowLPerMin: number,
  dialPercent: number,
  published: number,
  sd: string,
  percent: number,
  more: Partial<Row> = {}
): Row => ({
  id,
  area: 'time to target',
  group: agent,
  given: `${agent}, dial ${dialPercent} %, ${flowLPerMin} L/min from the start, 70 kg: minutes to 1 MAC (95 % of it)`,
  published,
  spread: `SD ${sd}`,
  unit: 'min',
  tolerance: { percent },
  toleranceReason: agent === 'desflurane' ? 'smaller circuits reach it sooner' : `SD ${sd}`,
  source: common.horwitz,
  evidence: 'read',
  model: (setting) => minutesToMac(setting, agent, { flowLPerMin, dialPercent }),
  ...more
});

const isofluraneByThrees = (setting: Setting) =>
  ({
    ...setting,
    agent: 'isoflurane',
    weightKg: 74,
    targetPercent: oneMac(setting.reference, 'isoflurane')
  }) as const;
const threes = [dial(3, 3, 3), dial(3, 1.5, 3)] as const;

const timeToTarget: readonly Row[] = [
  timeRow('time-1-0.5', 'sevoflurane', 0.5, 6, 15.2, '2.4', 25),
  timeRow('time-1-1', 'sevoflurane', 1, 6, 6.2, '1.3', 25),
  timeRow('time-2-0.5', 'desflurane', 0.5, 18, 8.5, '1.7', 55),
  timeRow('time-2-1', 'desflurane', 1, 18, 3.7, '0.7', 55, {
    reported: true,
    remark: (setting) => {
      const atFour = minutesToMac(setting, 'desflurane', {
        flowLPerMin: 1,
        dialPercent: 18,
        circuitVolumeL: 4
      });
      return `The model is later than its tolerance allows with the published default circuit. The likely cause is the circuit’s volume, which the study does not give: with 4 L the model comes to ${atFour.toFixed(1)} min.`;
    }
  }),
  {
    id: 'time-3-mean',
    area: 'time to target',
    group: 'isoflurane',
    given:
      'isoflurane, dial 3 %: 3 L/min for 3 min, 1.5 L/min for 3 min, then 0.5 L/min; 74 kg: mean end-tidal from 3 to 60 min',
    published: 0.95,
    spread: '0.8 to 1.1',
    unit: '%',
    tolerance: { low: 0.75, high: 1.15, words: '0.05 % beyond the published window' },
    toleranceReason: 'window of 58 adults, nitrous oxide beside it',
    source: common.lerou,
    evidence: 'read',
    model: (setting) =>
      runExperiment({ ...isofluraneByThrees(setting), phases: [...threes, dial(54, 0.5, 3)] }, 3)
        .meanEndTidalPercent
  },
  {
    id: 'time-3-peak',
    area: 'time to target',
    group: 'isoflurane',
    given: 'the same: highest end-tidal of the first 10 min',
    published: 0.96,
    spread: '0.8 to 1.2, at 3.45 min',
    unit: '%',
    tolerance: { low: 0.8, high: 1.2, words: 'the published window' },
    toleranceReason: 'window of 58 adults',
    source: common.lerou,
    evidence: 'read',
    reported: true,
    model: (setting) =>
      runExperiment({ ...isofluraneByThrees(setting), phases: [...threes, dial(4, 0.5, 3)] })
        .peakEndTidalPercent,
    remark:
      'The model peaks lower, and at about 6 min instead of 3.45: nitrous oxide, which draws isoflurane into the lung in the first minutes, is not in it. Reported, not asserted.'
  }
];

/** A fixed dial beside nitrous oxide: how soon the end-tidal fraction comes to a figure below it. */
const besideNitrousOxide: readonly Row[] = (
  [
    [4, 8.3, '1.1'],
    [6, 5.2, '1.2']
  ] as const
).map(([flow, published, sd]) => ({
  id: `time-4-${flow}`,
  area: 'time to target',
  group: 'desflurane',
  given: `desflurane, dial 4 %, 50 % nitrous oxide, ${flow} L/min from the start: minutes to an end-tidal 3.5 %`,
  published,
  spread: `SD ${sd}`,
  unit: 'min',
  tolerance: { percent: 50 },
  toleranceReason: `SD ${sd} of 25 patients; the circuit is not described`,
  source: common.earlyMinimalFlow,
  evidence: 'read',
  reported: true,
  remark: ({ reference }) =>
    reference.constants.has('nitrous-oxide.drawn-in-share')
      ? 'The model is later than measured, as it comes near 3.5 % slowly. Uptake of nitrous oxide concentrates the agent and draws more of it into the lung; sets before 2026-3, without that, are later still.'
      : 'The model is later than measured: uptake of nitrous oxide concentrates the agent and draws more of it into the lung, which this reference set does not follow.',
  model: (setting) =>
    runExperiment({
      ...setting,
      agent: 'desflurane',
      nitrousOxidePercent: 50,
      targetPercent: 3.5 / REACHED_SHARE,
      phases: [dial(60, flow, 4)]
    }).minutesToTarget
}));

/** What of the fresh gas reaches the patient: the less, the more is taken up from a small flow. */
const concentrationRatio: readonly Row[] = ([0.5, 1, 3] as const).map((flow) => ({
  id: `ratio-1-${flow}`,
  area: 'concentration ratio',
  group: 'desflurane',
  given: `desflurane, ${flow} L/min: end-tidal over fresh gas; the abstract names no time, 60 min at a dial of 6 % are run`,
  published: 0.8,
  spread: 'no dependence on flow',
  unit: '1',
  tolerance: { percent: 20 },
  toleranceReason: 'the time and the dial are not in the abstract: it is reported, whatever the model gives',
  source: 'Coetzee JF, Stewart LJ. Br J Anaesth 2002;88:46-55',
  evidence: 'read',
  reported: true,
  remark: 'The model lets it fall with the flow, as uptake takes a larger share of a smaller flow.',
  model: (setting) =>
    runExperiment({ ...setting, agent: 'desflurane', targetPercent: 6, phases: [dial(60, flow, 6)] }, 59.9)
      .meanEndTidalPercent / 6
}));

const others: readonly Row[] = [
  {
    id: 'abs-1',
    area: 'absorbent',
    group: 'none',
    given: '600 g soda lime at 300 mL/min CO2, all of it absorbed: lasts at least',
    published: 240,
    unit: 'min',
    tolerance: { atLeast: true },
    toleranceReason: 'a lower bound, 12 L of CO2 for 100 g',
    source: 'Jorgensen B, Jorgensen S. Acta Anaesthesiol Scand 1977;21:437-44',
    evidence: 'read',
    model: ({ reference }) =>
      0.6 /
      absorbentMass.compute({
        co2L: 0.3,
        capacityLPerKg: take(reference, 'absorbent.soda-lime.capacity').value
      })
  },
  ...[42.7, 62.3].map((published): Row => ({
    id: `abs-2-${published}`,
    area: 'absorbent',
    group: 'none',
    given: `1 L (0.85 kg) soda lime at 4.4 L/min, 70 kg: lasts, ${published === 42.7 ? 'one' : 'the other'} of two machines`,
    published,
    unit: 'h',
    tolerance: { low: 0.8 * 42.7, high: 1.2 * 62.3, words: '20 % beyond the range of the two machines' },
    toleranceReason: 'two machines, to 1 % inspired CO2',
    source: 'Baum J et al. Anaesthesiol Reanim 1993;18:108-13',
    evidence: 'read',
    reported: true,
    remark:
      'It goes by CO2 production: that of an awake adult, as the first set has it, uses the lime up in half the time.',
    model: ({ reference }) => 0.85 * sodaLimeHoursPerKg(reference, 4.4)
  })),
  ...(
    [
      ['soda lime', 138, 7.7],
      ['the better of two limes without strong base', 123, 6.8],
      ['the other', 91, 5.1]
    ] as const
  ).map(([lime, capacityLPerKg, published], i): Row => ({
    id: `abs-4-${i + 1}`,
    area: 'absorbent',
    group: 'none',
    given: `1 kg of ${lime} (${capacityLPerKg} L/kg), 300 mL/min CO2, fresh gas 0.5 L/min, minute volume 8.4 L/min: lasts`,
    published,
    computedHere: true,
    unit: 'h',
    tolerance: { percent: 15 },
    toleranceReason: 'a check of units: what each takes up is entered as it was measured',
    source: 'Japanese grants database, project 15790834, report for 2003 (official summary of results)',
    evidence: 'computed',
    model: () =>
      1 /
      absorbentMass.compute({
        co2L: co2AbsorbedInPhase.compute({
          co2MlPerMin: 300,
          minutes: 60,
          spillLPerMin: 0.5,
          minuteVentilationLPerMin: 8.4
        }),
        capacityLPerKg
      })
  })),
  {
    id: 'abs-3',
    area: 'absorbent',
    // A range and no figure: it takes no part in how far off the model is.
    kind: 'rule of thumb',
    group: 'none',
    given:
      'soda lime used at 0.5 L/min for 65 % of the time and 4.4 L/min for the rest, over that at 4.4 L/min throughout',
    published: 2,
    spread: 'two to four times',
    unit: '1',
    tolerance: { low: 2, high: 4, words: '2 to 4, as printed' },
    toleranceReason: 'clinical, minimal flow for 50 to 80 % of the time',
    source: 'Baum J et al. Anaesthesiol Reanim 1993;18:108-13',
    evidence: 'read',
    remark:
      'The less CO2 is eliminated, the larger the share of it that 4.4 L/min carries out past the absorber, and so the ratio.',
    model: ({ reference }) =>
      0.35 + (0.65 * sodaLimeHoursPerKg(reference, 4.4)) / sodaLimeHoursPerKg(reference, 0.5)
  },
  ...(
    [
      [
        'oxygen',
        'oxygen consumption',
        183,
        '181 by this study, 185 by another',
        oxygenUptake,
        'Briesenick L et al. Anesth Analg 2023, doi 10.1213/ane.0000000000006343'
      ],
      [
        'co2',
        'carbon dioxide production',
        157.5,
        '145 to 170',
        co2Production,
        'Br J Anaesth 2003;91:793-6, doi 10.1093/bja/aeg270'
      ]
    ] as const
  ).map(([gas, what, published, spread, formula, source]): Row => ({
    id: `vco2-1-${gas}`,
    area: 'gas exchange',
    group: 'none',
    given: `${what} of an anaesthetised adult of 70 kg and 1.845 m2; the middle of the range`,
    published,
    computedHere: true,
    spread,
    unit: 'mL/min',
    tolerance:
      gas === 'oxygen'
        ? { low: 0.92 * 181, high: 1.08 * 185, words: '8 % beyond the range' }
        : { low: 0.92 * 145, high: 1.08 * 170, words: '8 % beyond the range' },
    toleranceReason:
      gas === 'oxygen'
        ? '98 mL/min/m2 by this study, 100 by one of 40 orthopaedic patients'
        : 'from a quotient of 0.8 to the measured 92 (SD 21) mL/min/m2',
    source,
    evidence: 'computed',
    reported: true,
    remark: 'The first set has the rate of an awake adult, a third more.',
    model: ({ reference }) =>
      formula.compute({
        coefficient: take(
          reference,
          gas === 'oxygen' ? 'body.oxygen-consumption.coefficient' : 'body.co2-production.coefficient'
        ).value,
        weightKg: 70,
        exponent: take(reference, 'body.size-exponent').value
      })
  })),
  ...(
    [
      [30, 38],
      [60, 46],
      [90, 63]
    ] as const
  ).map(([minute, published]): Row => ({
    id: `vco2-2-${minute}`,
    area: 'gas exchange',
    kind: 'measurement not counted',
    group: 'none',
    given: `retroperitoneal insufflation: rise of carbon dioxide elimination after ${minute} min`,
    published,
    unit: '%',
    tolerance: { by: 15 },
    toleranceReason: '10 patients',
    source: 'Br J Anaesth 2003;91:793-6, doi 10.1093/bja/aeg270',
    evidence: 'read',
    reported: true,
    remark:
      'Not counted: from set 2026-2 on the model takes its course from this very study, so that the row tells only whether it follows it. The first set has the highest rise of another study from the first minute.',
    model: ({ reference }) => insufflationRisePercent(reference, minute)
  })),
  {
    id: 'o2-1',
    area: 'oxygen',
    group: 'none',
    given: '50 % oxygen in 1 L/min fresh gas, 70 kg, after 180 min: inspired oxygen',
    published: 35.4,
    spread: 'SD 4.0',
    unit: '%',
    tolerance: { by: 4 },
    toleranceReason: 'SD 4.0',
    source: 'Kim et al. Anesth Pain Med 2020;15(4), doi 10.17085/apm.20055',
    evidence: 'read',
    model: ({ reference }) =>
      100 *
      inspiredOxygenFraction({
        freshOxygenFraction: 0.5,
        flowLPerMin: 1,
        oxygenMlPerMin: oxygenUptake.compute({
          coefficient: take(reference, 'body.oxygen-consumption.coefficient').value,
          weightKg: 70,
          exponent: take(reference, 'body.size-exponent').value
        })
      })
  }
];

/** Share of the delivered desflurane that leaves a circuit without leak by its exhaust, %, over 100 min at 6 %. */
function shareAtExhaust(setting: Setting, flowLPerMin: number, washInMinutes: number): number {
  const maintenance = hold(100 - washInMinutes, flowLPerMin, 18);
  const { spilledMl, liquidMl } = runExperiment({
    ...setting,
    agent: 'desflurane',
    targetPercent: 6,
    phases: washInMinutes > 0 ? [hold(washInMinutes, 4, 18), maintenance] : [maintenance]
  });
  return (100 * spilledMl) / liquidMl;
}

/** What an adsorber at the exhaust can get at. Reported: target and wash-in are not known of the study. */
const captureRows: readonly Row[] = (
  [
    ['cap-1', 0.5, 62, '7 patients, 70 to 130 min'],
    ['cap-2', 3, 86, '6 patients, the same']
  ] as const
).map(([id, flow, published, patients]) => ({
  id,
  area: 'capture',
  group: 'desflurane',
  given: `desflurane, ${flow} L/min: share of what was delivered that zeolite at the exhaust held`,
  published,
  unit: '%',
  tolerance: { by: 10 },
  toleranceReason: `${patients}; no spread is known, so it is the order of the two that is held`,
  source:
    'Jänchen J, Brückner JB, Stach H. Eur J Anaesthesiol 1998;15:324-9, doi 10.1046/j.1365-2346.1998.00299.x',
  evidence: 'read',
  reported: true,
  remark: (setting) =>
    `All that leaves by the exhaust is taken as caught. The record of the study gives neither its target nor its wash-in: 6 %, 100 min and 10 min at 4 L/min are taken. Without the wash-in the model gives ${shareAtExhaust(setting, flow, 0).toFixed(0)} %.`,
  model: (setting) => shareAtExhaust(setting, flow, 10)
}));

const rows: readonly Row[] = [
  ...liquidToVapour,
  ...constantDialRows,
  ...macRows,
  ...macByAge,
  ...washIn,
  ...circuit,
  ...uptake,
  ...measuredUse,
  ...differences,
  ...dialMode,
  ...concentrationRatio,
  ...timeToTarget,
  ...besideNitrousOxide,
  ...inductionByMask,
  ...captureRows,
  ...others
];

/** Areas whose published figures are worked out by a formula that the source prints, and measured by nobody. */
const areasOfFormulas: ReadonlySet<CheckArea> = new Set([
  'liquid to vapour',
  'constant dial',
  'MAC and age',
  'circuit'
]);

const kindOf = ({ kind, area, computedHere }: Row): CheckKind =>
  kind ?? (computedHere === true ? 'own arithmetic' : areasOfFormulas.has(area) ? 'formula' : 'measurement');

function bounds(published: number, tolerance: Tolerance): { low: number; high: number; words: string } {
  if ('percent' in tolerance) {
    const { percent } = tolerance;
    return {
      low: published * (1 - percent / 100),
      high: published * (1 + percent / 100),
      words: `${percent} %`
    };
  }
  if ('by' in tolerance)
    return {
      low: published - tolerance.by,
      high: published + tolerance.by,
      words: `${tolerance.by}, absolute`
    };
  if ('atLeast' in tolerance) return { low: published, high: Infinity, words: 'at least as published' };
  return tolerance;
}

/**
 * Every row with the model's figure for each body model, computed now from the given reference set. Takes some
 * milliseconds.
 * @param spillShareInspiredFraction share of the spilled gas that leaves as inspired gas; null: all of it
 * @param solubilityGroup by which solubility in blood; a set that offers no choice takes its own
 */
export function publishedChecks(
  reference: ReferenceSet,
  spillShareInspiredFraction: number | null = null,
  solubilityGroup: SolubilityGroup = 'of-the-set'
): readonly PublishedCheck[] {
  return rows.map((whole) => {
    const { tolerance, reported, remark = '', spread = '', model, ...row } = whole;
    const { words, low, high } = bounds(row.published, tolerance);
    const figures = Object.fromEntries(
      bodyModels.map((bodyModel) => [
        bodyModel,
        model({ reference, bodyModel, spillShareInspiredFraction, solubilityGroup })
      ])
    ) as Record<BodyModel, number>;
    return {
      ...row,
      kind: kindOf(whole),
      computedHere: row.computedHere === true,
      spread,
      tolerance: words,
      accepted: { low, high },
      asserted: reported !== true,
      model: figures,
      remark:
        typeof remark === 'string'
          ? remark
          : remark({ reference, bodyModel: 'eger', spillShareInspiredFraction, solubilityGroup })
    };
  });
}

/** Constants that are told apart from others by having been read. */
class ReadConstants extends Map<string, Constant> {
  readonly read = new Map<string, Constant>();

  override get(id: string): Constant | undefined {
    const constant = super.get(id);
    if (constant !== undefined) this.read.set(id, constant);
    return constant;
  }
}

/**
 * The model's figure in one of the checks, with its working: computed anew, with the conditions and every constant that
 * the run read.
 */
export function recordedCheck(
  id: string,
  {
    reference,
    bodyModel,
    spillShareInspiredFraction = null,
    solubilityGroup = 'of-the-set'
  }: Pick<Setting, 'reference' | 'bodyModel'> & Partial<Setting>
): Quantity {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`There is no published check “${id}”.`);
  const constants = new ReadConstants(reference.constants);
  const value = row.model({
    reference: { ...reference, constants },
    bodyModel,
    spillShareInspiredFraction,
    solubilityGroup
  });
  const { low, high } = bounds(row.published, row.tolerance);
  const inputs: Record<string, Quantity<unknown>> = {
    conditions: recorder.assumption(
      row.given,
      '1',
      'The conditions as published. Where a study gives none, an adult of 40 years and 70 kg is taken.'
    ),
    ...(spillShareInspiredFraction === null
      ? {}
      : {
          'spilled as inspired gas': recorder.assumption(
            spillShareInspiredFraction,
            '1',
            'Share of the spilled gas; the rest leaves as it is breathed out. No study says where its circle spilled.'
          )
        }),
    ...(solubilityGroup === 'of-the-set'
      ? {}
      : {
          'solubility in blood': recorder.assumption(
            solubilityGroup,
            '1',
            'The group of partition coefficients that this column is for, where the set offers the choice.'
          )
        }),
    'body model': recorder.assumption(bodyModel, '1', 'The set of compartments that this column is for.')
  };
  for (const constant of constants.read.values()) inputs[constant.id] = recorder.constant(constant);
  return recorder.result(value, inputs, () => ({
    id: 'published-check',
    yields: 'The model under the published conditions',
    words:
      'Computed now by the same code as every case of the workbook, from the conditions of the study and the constants below. Nothing in the model is fitted to the published figure.',
    unit: row.unit,
    source: `${row.computedHere === true ? 'figure computed here by a published formula' : 'published figure'}: ${row.source}`,
    report: [
      {
        words: row.computedHere === true ? 'figure by the published formula' : 'published figure',
        value: row.published,
        unit: row.unit
      },
      { words: 'lowest figure accepted', value: low, unit: row.unit },
      { words: 'highest figure accepted', value: high, unit: row.unit }
    ].filter((line) => Number.isFinite(line.value))
  }));
}
