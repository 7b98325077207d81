import type { Absorbent, Agent, BodyModel, CaseRow, Machine, Phase, Site } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { plain } from '../working/plain.ts';
import { modelCase } from '../case/case-model.ts';
import { emptyOutcome, solveCircleSystem } from '../case/circle-system.ts';
import type { CircleCase, CirclePhase } from '../case/circle-system.ts';

/** What a published study did: its patient, its agent, and how gas and vapour were given. */
export interface Experiment {
  readonly reference: ReferenceSet;
  readonly bodyModel: BodyModel;
  readonly agent: Agent;
  /** 70 kg where a study gives none. */
  readonly weightKg?: number;
  /** The published default where a study gives none. */
  readonly circuitVolumeL?: number;
  /** End-tidal percentage that was held. */
  readonly targetPercent: number;
  readonly phases: readonly ExperimentPhase[];
}

export interface ExperimentPhase {
  readonly minutes: number;
  /** L/min; 'closed': what the patient consumes. */
  readonly flow: number | 'closed';
  /** Setting of a fixed dial, or highest one where the target is held; null: liquid is injected as needed. */
  readonly dialPercent: number | null;
  readonly vaporiser: Phase['vaporiser'];
}

/** What a study's model says, vapour as mL liquid. */
export interface ExperimentResult {
  readonly liquidMl: number;
  readonly takenUpMl: number;
  readonly minutesToTarget: number;
  /** Mean end-tidal and inspired percentage from a minute to the end, and the highest end-tidal one. */
  readonly meanEndTidalPercent: number;
  readonly meanInspiredPercent: number;
  readonly peakEndTidalPercent: number;
  /** End-tidal over inspired fraction at the end. */
  readonly washIn: number;
}

const row: CaseRow = {
  id: 'experiment',
  name: 'Experiment',
  casesPerYear: 1,
  minutes: 60,
  ageYears: 40,
  weightKg: 70,
  technique: 'volatile',
  agent: null,
  targetMac: 1,
  nitrousOxidePercent: 0,
  inspiredOxygenPercent: 40,
  pneumoperitoneum: 'none',
  neuromuscularBlock: false,
  airway: 'tracheal-tube',
  measuredMlPerCase: null
};

/** A machine without leak, on which flows are as given. */
const machine: Machine = {
  id: 'experiment',
  name: 'Experiment',
  kind: 'circle',
  circuitVolumeL: null,
  leakMlPerMin: 0,
  sampleMlPerMin: 0,
  sampleReturned: true,
  minimumFlowLPerMin: 0,
  powerW: null,
  units: 0,
  unitPrice: '0',
  tradeInPerUnit: '0',
  installationPerUnit: '0',
  servicePerUnitPerYear: '0',
  lifeYears: 1,
  absorbent: 'experiment',
  monitors: []
};

const absorbent: Absorbent = {
  id: 'experiment',
  name: 'Experiment',
  capacityLPerKg: 120,
  pricePerKg: '0',
  kgCo2ePerKg: null
};

const site: Site = {
  theatreTemperatureC: 20,
  ambientPressureKPa: 101.325,
  theatres: 1,
  roomVolumeM3: 100,
  airChangesPerH: 20,
  scavengingPercent: 100,
  monitoringStandard: 'who-wfsa',
  facilityLevel: null,
  electricityPricePerKWh: '0',
  electricityKgCo2ePerKWh: 0,
  departmentFootprintTonnes: null
};

/** Injection has no dial; a limit this high is never met. */
const INJECTION_FRACTION = 0.99;

/** The patient of an experiment on its circuit, as the solver takes it, and the vapour that its liquid gives. */
export function experimentCase(experiment: Experiment): { circle: CircleCase; vapourPerLiquid: number } {
  const {
    agent,
    reference,
    bodyModel,
    weightKg = 70,
    circuitVolumeL = null,
    targetPercent,
    phases
  } = experiment;
  const model = modelCase(plain, {
    row: { ...row, agent, weightKg },
    plan: { id: 'experiment', name: 'Experiment', phases: [] },
    machine: { ...machine, circuitVolumeL },
    agent,
    absorbent,
    site,
    bodyModel,
    reference
  });
  if (model.agent === null) throw new Error('An experiment needs a volatile agent.');
  const { circle, vapourPerLiquid } = model.agent;
  return {
    circle: {
      ...circle,
      targetFraction: targetPercent / 100,
      phases: phases.map(({ minutes, flow, vaporiser, dialPercent }): CirclePhase => ({
        minutes,
        flowLPerMin: flow === 'closed' ? circle.oxygenUptakeLPerMin : flow,
        vaporiser,
        dialFraction: dialPercent === null ? INJECTION_FRACTION : dialPercent / 100
      }))
    },
    vapourPerLiquid: plain.value(vapourPerLiquid)
  };
}

/** Runs an experiment through the solver that cases go through. `fromMinute`: where the means begin. */
export function runExperiment(experiment: Experiment, fromMinute = 0): ExperimentResult {
  const { circle, vapourPerLiquid } = experimentCase(experiment);
  const outcome = emptyOutcome();
  let lastMinute = 0;
  let lastEndTidal = 0;
  let lastInspired = 0;
  let endTidalMin = 0;
  let inspiredMin = 0;
  let peak = 0;
  solveCircleSystem(circle, outcome, {
    add({ minute, endTidalFraction, inspiredFraction }) {
      // The course is dense enough for the trapezium rule; the part of a piece before fromMinute is left out.
      const span = Math.max(0, minute - Math.max(lastMinute, fromMinute));
      endTidalMin += (span * (endTidalFraction + lastEndTidal)) / 2;
      inspiredMin += (span * (inspiredFraction + lastInspired)) / 2;
      peak = Math.max(peak, endTidalFraction);
      lastMinute = minute;
      lastEndTidal = endTidalFraction;
      lastInspired = inspiredFraction;
    }
  });
  const counted = lastMinute - fromMinute;
  return {
    liquidMl: (1000 * outcome.deliveredL) / vapourPerLiquid,
    takenUpMl: (1000 * outcome.takenUpL) / vapourPerLiquid,
    minutesToTarget: outcome.minutesToTarget,
    meanEndTidalPercent: (100 * endTidalMin) / counted,
    meanInspiredPercent: (100 * inspiredMin) / counted,
    peakEndTidalPercent: 100 * peak,
    washIn: lastEndTidal / lastInspired
  };
}
