import type { CaseCells, CaseConditions } from '../case/conditions.ts';
import type { Agent, BodyModel, Phase, SolubilityGroup } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { plain } from '../working/plain.ts';
import { minuteVentilation } from '../case/absorbent-use.ts';
import { estimateCase } from '../case/estimate-case.ts';
import { take } from '../reference/reference-set.ts';
import { modelCase } from '../case/case-model.ts';
import { emptyOutcome, solveCircleSystem } from '../case/circle-system.ts';
import { solveNitrousOxide } from '../case/nitrous-oxide.ts';
import type { CircleCase, CirclePhase } from '../case/circle-system.ts';

/** What a published study did: its patient, its agent, and how gas and vapour were given. */
export interface Experiment {
  readonly reference: ReferenceSet;
  readonly bodyModel: BodyModel;
  /** Share of the spilled gas that leaves as inspired gas; null: all of it, as no study says where it spilled. */
  readonly spillShareInspiredFraction?: number | null;
  /** The reference set's own where left out. */
  readonly solubilityGroup?: SolubilityGroup;
  readonly agent: Agent;
  /** 70 kg where a study gives none. */
  readonly weightKg?: number;
  /** The published default where a study gives none. */
  readonly circuitVolumeL?: number;
  /** Share of the gas that leaves the circuit, %; 0 where a study gives none. Only some reference sets follow it. */
  readonly nitrousOxidePercent?: number;
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
  /** Leaves the circuit while the case goes on: by the exhaust, as nothing leaks. */
  readonly spilledMl: number;
  readonly minutesToTarget: number;
  /** Mean end-tidal and inspired percentage from a minute to the end, and the highest end-tidal one. */
  readonly meanEndTidalPercent: number;
  readonly meanInspiredPercent: number;
  readonly peakEndTidalPercent: number;
  /** End-tidal over inspired fraction at the end. */
  readonly washIn: number;
}

/** An adult on a machine without leak, on which flows are as given. */
const conditions: Omit<CaseConditions, 'agent' | 'bodyModel'> = {
  macSet: 'mapleson',
  solubilityGroup: 'of-the-set',
  minutes: 60,
  ageYears: 40,
  weightKg: 70,
  technique: 'volatile',
  targetMac: 1,
  nitrousOxidePercent: 0,
  inspiredOxygenPercent: 40,
  pneumoperitoneum: 'none',
  circuitVolumeL: null,
  leakMlPerMin: 0,
  sampleMlPerMin: 0,
  sampleReturned: true,
  minimumFlowLPerMin: 0,
  canFlowAsNeeded: false,
  spillShareInspiredFraction: null,
  capacityLPerKg: 120,
  theatreTemperatureC: 20,
  ambientPressureKPa: 101.325,
  // The experiment's own phases stand in its place.
  phases: [
    {
      name: 'Experiment',
      minutes: null,
      flowLPerMin: 1,
      flowAsNeeded: false,
      vaporiser: 'off',
      dialPercent: null
    }
  ]
};
const cells: CaseCells = {
  row: 'experiment',
  plan: 'experiment',
  machine: 'experiment',
  absorbent: 'experiment'
};

/** Hours that a kilogram of soda lime lasts an adult of 70 kg on a circle, no agent given, at one flow. */
export function sodaLimeHoursPerKg(reference: ReferenceSet, flowLPerMin: number): number {
  const { absorbentHoursPerKg } = estimateCase(plain, {
    conditions: {
      ...conditions,
      technique: 'intravenous',
      agent: null,
      targetMac: null,
      bodyModel: 'eger',
      capacityLPerKg: take(reference, 'absorbent.soda-lime.capacity').value,
      phases: [
        {
          name: 'Experiment',
          minutes: null,
          flowLPerMin,
          flowAsNeeded: false,
          vaporiser: 'off',
          dialPercent: null
        }
      ]
    },
    cells,
    reference
  });
  return absorbentHoursPerKg ?? Infinity;
}

/** An adult of 70 kg, or another patient, without an agent. */
const withoutAgent = (
  reference: ReferenceSet,
  changed: Partial<Pick<CaseConditions, 'weightKg' | 'minutes' | 'pneumoperitoneum'>> = {}
) =>
  modelCase(plain, {
    conditions: {
      ...conditions,
      technique: 'intravenous',
      agent: null,
      targetMac: null,
      bodyModel: 'eger',
      ...changed
    },
    cells,
    reference
  });

/** What a patient of this weight breathes in a minute, dead space and all. */
export function minuteVolumeLPerMin({
  reference,
  weightKg
}: {
  reference: ReferenceSet;
  weightKg: number;
}): number {
  const { phases, constants } = withoutAgent(reference, { weightKg });
  return minuteVentilation.compute({
    alveolarLPerMin: plain.value(phases[0]!.breathing[0]!.ventilationLPerMin),
    deadSpacePercent: constants.deadSpace.value
  });
}

/** Rise of CO2 elimination after some minutes of extraperitoneal insufflation, %: ventilation follows it. */
export function insufflationRisePercent(reference: ReferenceSet, minutes: number): number {
  const [resting] = withoutAgent(reference).phases[0]!.breathing;
  const last = withoutAgent(reference, {
    minutes,
    pneumoperitoneum: 'extraperitoneal'
  }).phases[0]!.breathing.at(-1)!;
  const reached = plain.value(last.change?.untilLPerMin ?? last.ventilationLPerMin);
  return 100 * (reached / plain.value(resting!.ventilationLPerMin) - 1);
}

/** Injection has no dial; a limit this high is never met. */
const INJECTION_FRACTION = 0.99;

/** The patient of an experiment on its circuit, as the solver takes it, and the vapour that its liquid gives. */
export function experimentCase(experiment: Experiment): { circle: CircleCase; vapourPerLiquid: number } {
  const {
    agent,
    reference,
    bodyModel,
    spillShareInspiredFraction = null,
    solubilityGroup = 'of-the-set',
    weightKg = 70,
    circuitVolumeL = null,
    nitrousOxidePercent = 0,
    targetPercent,
    phases
  } = experiment;
  const model = modelCase(plain, {
    conditions: {
      ...conditions,
      agent,
      weightKg,
      circuitVolumeL,
      bodyModel,
      spillShareInspiredFraction,
      solubilityGroup,
      nitrousOxidePercent
    },
    cells,
    reference
  });
  if (model.agent === null) throw new Error('An experiment needs a volatile agent.');
  const { circle, vapourPerLiquid } = model.agent;
  const ownPhases = phases.map(({ minutes, flow, vaporiser, dialPercent }): CirclePhase => ({
    minutes,
    flowLPerMin: flow === 'closed' ? circle.oxygenUptakeLPerMin : flow,
    vaporiser,
    dialFraction: dialPercent === null ? INJECTION_FRACTION : dialPercent / 100
  }));
  return {
    circle: {
      ...circle,
      targetFraction: targetPercent / 100,
      phases: ownPhases,
      beside:
        model.nitrousOxide === null
          ? undefined
          : solveNitrousOxide(
              { ...model.nitrousOxide.circle, phases: ownPhases },
              {
                heldPercent: nitrousOxidePercent,
                drawnInPercent: plain.value(model.nitrousOxide.drawnInPercent)
              }
            ).beside
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
    spilledMl: (1000 * outcome.spilledL) / vapourPerLiquid,
    minutesToTarget: outcome.minutesToTarget,
    meanEndTidalPercent: (100 * endTidalMin) / counted,
    meanInspiredPercent: (100 * inspiredMin) / counted,
    peakEndTidalPercent: 100 * peak,
    washIn: lastEndTidal / lastInspired
  };
}
