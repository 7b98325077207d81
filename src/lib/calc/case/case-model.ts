/**
 * From the conditions of a case to its model: the patient's gas exchange, the phases as they will be
 * run, and, where a volatile agent is given, target, lung and tissues. Nothing is solved here.
 */
import type { Agent, VaporiserMode } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { caseConstants } from './case-constants.ts';
import type { CaseConstants } from './case-constants.ts';
import type { CirclePhase, CircleCase, Tissue } from './circle-system.ts';
import type { CaseGiven } from './conditions.ts';
import { flowAsRun, neededFlow } from './fresh-gas-flow.ts';
import { vapourPerLiquid } from './liquid-and-vapour.ts';
import { cutPhase, restOfCase } from './phase-minutes.ts';
import {
  alveolarVentilation,
  cardiacOutput,
  childCo2Production,
  childOxygenUptake,
  co2Production,
  co2UnderPneumoperitoneum,
  lungVolume,
  oxygenUptake,
  tissueVolume
} from './physiology.ts';
import {
  macAtAge,
  macAtPressure,
  targetFraction,
  targetFractionWithNitrousOxide
} from './target-fraction.ts';

export interface PhaseModel {
  readonly name: string;
  /** Its place in the plan. */
  readonly index: number;
  readonly minutes: Quantity;
  readonly plannedFlowLPerMin: number;
  readonly flowLPerMin: Quantity;
  readonly vaporiser: VaporiserMode;
  /** Setting or limit, %; null where the vaporiser is off or no agent is given. */
  readonly dialPercent: Quantity | null;
  /** The plan's own dial where it is above the vaporiser's maximum and so was not taken. */
  readonly refusedDialPercent: number | null;
}

export interface TissueModel {
  readonly volumeL: Quantity;
  readonly sharePercent: Quantity;
  readonly tissueBlood: Quantity;
}

/** What a volatile agent adds. */
export interface AgentModel {
  readonly agent: Agent;
  readonly vapourPerLiquid: Quantity;
  readonly macFraction: Quantity;
  readonly targetFraction: Quantity;
  readonly vaporiserMaximumPercent: number;
  readonly bloodGas: Quantity;
  readonly cardiacOutputLPerMin: Quantity;
  readonly lungVolumeL: Quantity;
  readonly circuitVolumeL: Quantity;
  readonly tissues: readonly TissueModel[];
  readonly circle: CircleCase;
}

export interface CaseModel {
  readonly constants: CaseConstants;
  readonly isChild: boolean;
  readonly isCut: boolean;
  readonly oxygenMlPerMin: Quantity;
  readonly co2MlPerMin: Quantity;
  readonly ventilationLPerMin: Quantity;
  readonly neededFlowLPerMin: Quantity;
  readonly phases: readonly PhaseModel[];
  readonly agent: AgentModel | null;
}

/** The model of a case with a breathing system (a regional one has none) that `checkCase` has let pass. */
export function modelCase(r: Reckoner, given: CaseGiven): CaseModel {
  const { conditions, cells, reference } = given;
  const constants = caseConstants(reference);
  const isChild = conditions.weightKg < constants.childWeightLimit.value;
  const weightKg = r.cell(conditions.weightKg, 'kg', 'caseMix', cells.row, 'weightKg');
  const exponent = r.constant(constants.sizeExponent);
  const oxygenMlPerMin = isChild
    ? r.apply(childOxygenUptake, {
        slope: r.constant(constants.childOxygenSlope),
        weightKg,
        intercept: r.constant(constants.childOxygenIntercept)
      })
    : r.apply(oxygenUptake, { coefficient: r.constant(constants.oxygenUptake), weightKg, exponent });
  const restingCo2 = isChild
    ? r.apply(childCo2Production, {
        slope: r.constant(constants.childCo2Slope),
        weightKg,
        intercept: r.constant(constants.childCo2Intercept)
      })
    : r.apply(co2Production, { coefficient: r.constant(constants.co2Production), weightKg, exponent });
  const co2MlPerMin =
    conditions.pneumoperitoneum === 'none'
      ? restingCo2
      : r.apply(co2UnderPneumoperitoneum, {
          co2MlPerMin: restingCo2,
          risePercent: r.constant(constants.co2Rise[conditions.pneumoperitoneum])
        });
  const ventilationLPerMin = r.apply(alveolarVentilation, {
    factor: r.constant(constants.alveolarFactor),
    co2MlPerMin,
    arterialMmHg: r.constant(constants.arterialCo2)
  });
  const neededFlowLPerMin = flowNeededBy(r, given, oxygenMlPerMin);
  const { phases, isCut } = modelPhases(r, given, constants, neededFlowLPerMin);
  return {
    constants,
    isChild,
    isCut,
    oxygenMlPerMin,
    co2MlPerMin,
    ventilationLPerMin,
    neededFlowLPerMin,
    phases,
    agent:
      conditions.technique !== 'volatile' || conditions.agent === null
        ? null
        : modelAgent(r, given, conditions.agent, {
            constants,
            weightKg,
            oxygenMlPerMin,
            ventilationLPerMin,
            cardiacOutputLPerMin: r.apply(cardiacOutput, {
              coefficient: r.constant(constants.cardiacOutput),
              weightKg,
              exponent
            }),
            phases
          })
  };
}

function flowNeededBy(r: Reckoner, { conditions, cells }: CaseGiven, oxygenMlPerMin: Quantity): Quantity {
  const id = cells.machine;
  return r.apply(neededFlow, {
    minimumLPerMin: r.cell(conditions.minimumFlowLPerMin, 'L/min', 'machines', id, 'minimumFlowLPerMin'),
    oxygenMlPerMin,
    leakMlPerMin: r.cell(conditions.leakMlPerMin, 'mL/min', 'machines', id, 'leakMlPerMin'),
    sampleMlPerMin: r.cell(conditions.sampleMlPerMin, 'mL/min', 'machines', id, 'sampleMlPerMin'),
    sampleReturned: r.cell(conditions.sampleReturned ? 1 : 0, '1', 'machines', id, 'sampleReturned')
  });
}

/** The plan's phases that fall into the case, each with its minutes, its flow and its dial. */
function modelPhases(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  constants: CaseConstants,
  neededLPerMin: Quantity
): { phases: readonly PhaseModel[]; isCut: boolean } {
  const { agent } = conditions;
  let fixedMinutes = 0;
  for (const { minutes } of conditions.phases) fixedMinutes += minutes ?? 0;
  const isCut = fixedMinutes > conditions.minutes;
  const maximum = agent === null ? null : constants.agents[agent].vaporiserMaximum;
  const phases: PhaseModel[] = [];
  for (let index = 0; index < conditions.phases.length; index++) {
    const { name, flowLPerMin, vaporiser, dialPercent } = conditions.phases[index]!;
    const minutes = minutesOfPhase(r, { conditions, cells }, index, isCut);
    if (r.value(minutes) <= 0) continue;
    const place = String(index);
    const isRefused =
      vaporiser !== 'off' && maximum !== null && dialPercent !== null && dialPercent > maximum.value;
    phases.push({
      name,
      index,
      minutes,
      plannedFlowLPerMin: flowLPerMin,
      flowLPerMin: r.apply(flowAsRun, {
        plannedLPerMin: r.cell(flowLPerMin, 'L/min', 'flowPlans', cells.plan, 'phases', place, 'flowLPerMin'),
        neededLPerMin
      }),
      vaporiser: maximum === null ? 'off' : vaporiser,
      dialPercent:
        maximum === null || vaporiser === 'off'
          ? null
          : dialPercent === null || isRefused
            ? r.constant(maximum)
            : r.cell(dialPercent, '%', 'flowPlans', cells.plan, 'phases', place, 'dialPercent'),
      refusedDialPercent: isRefused ? dialPercent : null
    });
  }
  return { phases, isCut };
}

/** A phase's own minutes, or the rest of the case; less where the case is shorter than the plan. */
function minutesOfPhase(
  r: Reckoner,
  { conditions, cells }: Pick<CaseGiven, 'conditions' | 'cells'>,
  index: number,
  isCut: boolean
): Quantity {
  const ownMinutes = (i: number): Quantity | null => {
    const { minutes } = conditions.phases[i]!;
    return minutes === null
      ? null
      : r.cell(minutes, 'min', 'flowPlans', cells.plan, 'phases', String(i), 'minutes');
  };
  const own = ownMinutes(index);
  if (own !== null && !isCut) return own;
  const caseMinutes = r.cell(conditions.minutes, 'min', 'caseMix', cells.row, 'minutes');
  const others: Quantity[] = [];
  for (let i = 0; i < (own === null ? conditions.phases.length : index); i++) {
    const other = ownMinutes(i);
    if (other !== null) others.push(other);
  }
  if (own === null)
    return others.length === 0 ? caseMinutes : r.apply(restOfCase, { caseMinutes, otherMinutes: others });
  if (others.length === 0)
    others.push(r.assumption(0, 'min', 'No phase with minutes of its own stands before it.'));
  return r.apply(cutPhase, { plannedMinutes: own, caseMinutes, earlierMinutes: others });
}

interface Patient {
  readonly constants: CaseConstants;
  readonly weightKg: Quantity;
  readonly oxygenMlPerMin: Quantity;
  readonly ventilationLPerMin: Quantity;
  readonly cardiacOutputLPerMin: Quantity;
  readonly phases: readonly PhaseModel[];
}

function modelAgent(r: Reckoner, given: CaseGiven, agent: Agent, patient: Patient): AgentModel {
  const { conditions, cells } = given;
  const { constants, weightKg, oxygenMlPerMin, ventilationLPerMin, cardiacOutputLPerMin, phases } = patient;
  const ofAgent = constants.agents[agent];
  const pressureKPa = r.cell(conditions.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa');
  const macFraction = macFractionOf(r, given, constants, ofAgent.mac40, pressureKPa);
  const standardKg = r.constant(constants.standardWeight);
  const bloodGas = r.constant(ofAgent.bloodGas);
  const tissues = ofAgent.bodies[conditions.bodyModel].map(({ volume, share, tissueBlood }) => ({
    volumeL: r.apply(tissueVolume, { volumeL: r.constant(volume), weightKg, standardKg }),
    sharePercent: r.constant(share),
    tissueBlood: r.constant(tissueBlood)
  }));
  const lungVolumeL = r.apply(lungVolume, {
    residualL: r.constant(constants.residualCapacity),
    tissueL: r.constant(constants.lungTissue),
    bloodGas,
    weightKg,
    standardKg
  });
  const circuitVolumeL =
    conditions.circuitVolumeL === null
      ? r.fallback(constants.circuitVolume, 'machines', cells.machine, 'circuitVolumeL')
      : r.cell(conditions.circuitVolumeL, 'L', 'machines', cells.machine, 'circuitVolumeL');
  const target = targetOf(r, given, constants, macFraction, pressureKPa);
  return {
    agent,
    vapourPerLiquid: r.apply(vapourPerLiquid, {
      densityGPerMl: r.constant(ofAgent.liquidDensity),
      gasConstant: r.constant(constants.gasConstant),
      temperatureC: r.cell(conditions.theatreTemperatureC, '°C', 'site', 'theatreTemperatureC'),
      zeroCelsiusK: r.constant(constants.zeroCelsius),
      molarMassGPerMol: r.constant(ofAgent.molarMass),
      pressureKPa
    }),
    macFraction,
    targetFraction: target,
    vaporiserMaximumPercent: ofAgent.vaporiserMaximum.value,
    bloodGas,
    cardiacOutputLPerMin,
    lungVolumeL,
    circuitVolumeL,
    tissues,
    circle: {
      bloodGas: r.value(bloodGas),
      cardiacOutputLPerMin: r.value(cardiacOutputLPerMin),
      alveolarVentilationLPerMin: r.value(ventilationLPerMin),
      oxygenUptakeLPerMin: r.value(oxygenMlPerMin) / 1000,
      lungVolumeL: r.value(lungVolumeL),
      circuitVolumeL: r.value(circuitVolumeL),
      tissues: tissues.map(({ volumeL, sharePercent, tissueBlood }): Tissue => ({
        volumeL: r.value(volumeL),
        outputShare: r.value(sharePercent) / 100,
        tissueBlood: r.value(tissueBlood)
      })),
      targetFraction: r.value(target),
      phases: phases.map(({ minutes, flowLPerMin, vaporiser, dialPercent }): CirclePhase => ({
        minutes: r.value(minutes),
        flowLPerMin: r.value(flowLPerMin),
        vaporiser,
        dialFraction: dialPercent === null ? 0 : r.value(dialPercent) / 100
      }))
    }
  };
}

function macFractionOf(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  constants: CaseConstants,
  mac40: CaseConstants['nitrousOxideMac40'],
  ambientKPa: Quantity
): Quantity {
  return r.apply(macAtPressure, {
    macPercent: r.apply(macAtAge, {
      mac40Percent: r.constant(mac40),
      slopePerYear: r.constant(constants.macSlope),
      ageYears: r.cell(conditions.ageYears, 'y', 'caseMix', cells.row, 'ageYears')
    }),
    standardKPa: r.constant(constants.standardAtmosphere),
    ambientKPa
  });
}

function targetOf(
  r: Reckoner,
  given: CaseGiven,
  constants: CaseConstants,
  macFraction: Quantity,
  ambientKPa: Quantity
): Quantity {
  const { conditions, cells } = given;
  const targetMac = r.cell(conditions.targetMac ?? 0, '1', 'caseMix', cells.row, 'targetMac');
  if (conditions.nitrousOxidePercent === 0) return r.apply(targetFraction, { targetMac, macFraction });
  return r.apply(targetFractionWithNitrousOxide, {
    targetMac,
    nitrousOxidePercent: r.cell(
      conditions.nitrousOxidePercent,
      '%',
      'caseMix',
      cells.row,
      'nitrousOxidePercent'
    ),
    nitrousOxideMacFraction: macFractionOf(r, given, constants, constants.nitrousOxideMac40, ambientKPa),
    macFraction
  });
}
