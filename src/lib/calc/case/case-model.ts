/**
 * From a row, a plan and a machine to the model of one case: the patient's gas exchange, the phases as they will be
 * run, and, where a volatile agent is given, target, lung and tissues. Nothing is solved here.
 */
import type { Agent, CaseRow, FlowPlan, Machine, VaporiserMode } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { caseConstants } from './case-constants.ts';
import type { CaseConstants } from './case-constants.ts';
import type { CaseGiven } from './case-given.ts';
import type { CirclePhase, CircleCase, Tissue } from './circle-system.ts';
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
  const { row, machine, reference } = given;
  const constants = caseConstants(reference);
  const isChild = row.weightKg < constants.childWeightLimit.value;
  const weightKg = r.cell(row.weightKg, 'kg', 'caseMix', row.id, 'weightKg');
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
    row.pneumoperitoneum === 'none'
      ? restingCo2
      : r.apply(co2UnderPneumoperitoneum, {
          co2MlPerMin: restingCo2,
          risePercent: r.constant(constants.co2Rise[row.pneumoperitoneum])
        });
  const ventilationLPerMin = r.apply(alveolarVentilation, {
    factor: r.constant(constants.alveolarFactor),
    co2MlPerMin,
    arterialMmHg: r.constant(constants.arterialCo2)
  });
  const neededFlowLPerMin = flowNeededBy(r, machine, oxygenMlPerMin);
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
      row.technique !== 'volatile' || given.agent === null
        ? null
        : modelAgent(r, given, given.agent, {
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

function flowNeededBy(r: Reckoner, machine: Machine, oxygenMlPerMin: Quantity): Quantity {
  const { id } = machine;
  return r.apply(neededFlow, {
    minimumLPerMin: r.cell(machine.minimumFlowLPerMin, 'L/min', 'machines', id, 'minimumFlowLPerMin'),
    oxygenMlPerMin,
    leakMlPerMin: r.cell(machine.leakMlPerMin, 'mL/min', 'machines', id, 'leakMlPerMin'),
    sampleMlPerMin: r.cell(machine.sampleMlPerMin, 'mL/min', 'machines', id, 'sampleMlPerMin'),
    sampleReturned: r.cell(machine.sampleReturned ? 1 : 0, '1', 'machines', id, 'sampleReturned')
  });
}

/** The plan's phases that fall into the case, each with its minutes, its flow and its dial. */
function modelPhases(
  r: Reckoner,
  { row, plan, agent }: CaseGiven,
  constants: CaseConstants,
  neededLPerMin: Quantity
): { phases: readonly PhaseModel[]; isCut: boolean } {
  let fixedMinutes = 0;
  for (const { minutes } of plan.phases) fixedMinutes += minutes ?? 0;
  const isCut = fixedMinutes > row.minutes;
  const maximum = agent === null ? null : constants.agents[agent].vaporiserMaximum;
  const phases: PhaseModel[] = [];
  for (let index = 0; index < plan.phases.length; index++) {
    const { name, flowLPerMin, vaporiser, dialPercent } = plan.phases[index]!;
    const minutes = minutesOfPhase(r, row, plan, index, isCut);
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
        plannedLPerMin: r.cell(flowLPerMin, 'L/min', 'flowPlans', plan.id, 'phases', place, 'flowLPerMin'),
        neededLPerMin
      }),
      vaporiser: maximum === null ? 'off' : vaporiser,
      dialPercent:
        maximum === null || vaporiser === 'off'
          ? null
          : dialPercent === null || isRefused
            ? r.constant(maximum)
            : r.cell(dialPercent, '%', 'flowPlans', plan.id, 'phases', place, 'dialPercent'),
      refusedDialPercent: isRefused ? dialPercent : null
    });
  }
  return { phases, isCut };
}

/** A phase's own minutes, or the rest of the case; less where the case is shorter than the plan. */
function minutesOfPhase(r: Reckoner, row: CaseRow, plan: FlowPlan, index: number, isCut: boolean): Quantity {
  const ownMinutes = (i: number): Quantity | null => {
    const { minutes } = plan.phases[i]!;
    return minutes === null
      ? null
      : r.cell(minutes, 'min', 'flowPlans', plan.id, 'phases', String(i), 'minutes');
  };
  const own = ownMinutes(index);
  if (own !== null && !isCut) return own;
  const caseMinutes = r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes');
  const others: Quantity[] = [];
  for (let i = 0; i < (own === null ? plan.phases.length : index); i++) {
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
  const { row, machine, site, bodyModel } = given;
  const { constants, weightKg, oxygenMlPerMin, ventilationLPerMin, cardiacOutputLPerMin, phases } = patient;
  const ofAgent = constants.agents[agent];
  const pressureKPa = r.cell(site.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa');
  const macFraction = macFractionOf(r, row, constants, ofAgent.mac40, pressureKPa);
  const standardKg = r.constant(constants.standardWeight);
  const bloodGas = r.constant(ofAgent.bloodGas);
  const tissues = ofAgent.bodies[bodyModel].map(({ volume, share, tissueBlood }) => ({
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
    machine.circuitVolumeL === null
      ? r.fallback(constants.circuitVolume, 'machines', machine.id, 'circuitVolumeL')
      : r.cell(machine.circuitVolumeL, 'L', 'machines', machine.id, 'circuitVolumeL');
  const target = targetOf(r, row, constants, macFraction, pressureKPa);
  return {
    agent,
    vapourPerLiquid: r.apply(vapourPerLiquid, {
      densityGPerMl: r.constant(ofAgent.liquidDensity),
      gasConstant: r.constant(constants.gasConstant),
      temperatureC: r.cell(site.theatreTemperatureC, '°C', 'site', 'theatreTemperatureC'),
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
  row: CaseRow,
  constants: CaseConstants,
  mac40: CaseConstants['nitrousOxideMac40'],
  ambientKPa: Quantity
): Quantity {
  return r.apply(macAtPressure, {
    macPercent: r.apply(macAtAge, {
      mac40Percent: r.constant(mac40),
      slopePerYear: r.constant(constants.macSlope),
      ageYears: r.cell(row.ageYears, 'y', 'caseMix', row.id, 'ageYears')
    }),
    standardKPa: r.constant(constants.standardAtmosphere),
    ambientKPa
  });
}

function targetOf(
  r: Reckoner,
  row: CaseRow,
  constants: CaseConstants,
  macFraction: Quantity,
  ambientKPa: Quantity
): Quantity {
  const targetMac = r.cell(row.targetMac ?? 0, '1', 'caseMix', row.id, 'targetMac');
  if (row.nitrousOxidePercent === 0) return r.apply(targetFraction, { targetMac, macFraction });
  return r.apply(targetFractionWithNitrousOxide, {
    targetMac,
    nitrousOxidePercent: r.cell(row.nitrousOxidePercent, '%', 'caseMix', row.id, 'nitrousOxidePercent'),
    nitrousOxideMacFraction: macFractionOf(r, row, constants, constants.nitrousOxideMac40, ambientKPa),
    macFraction
  });
}
