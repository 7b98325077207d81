/**
 * From the conditions of a case to its model: the patient's gas exchange, the phases as they will be
 * run, and, where a volatile agent is given, target, lung and tissues. Nothing is solved here but nitrous oxide, where
 * the reference set follows it, as the agent's circle is given its course.
 */
import type { Agent, VaporiserMode } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { caseConstants } from './case-constants.ts';
import type { CaseConstants } from './case-constants.ts';
import { bloodGasChosen, macChosen } from './chosen-groups.ts';
import { childOrAdult } from './child-or-adult.ts';
import type { CirclePhase, CircleCase } from './circle-system.ts';
import type { CaseGiven } from './conditions.ts';
import { circuitOf, gasInBody } from './gas-in-body.ts';
import type { TissueModel } from './gas-in-body.ts';
import { circleTissues, LEAST_FOLLOWED_PERCENT, modelNitrousOxide } from './nitrous-oxide.ts';
import type { NitrousOxideModel } from './nitrous-oxide.ts';
import { flowAsRun, gasLost, leastFlowAsNeeded, neededFlow } from './fresh-gas-flow.ts';
import { vapourPerLiquid } from './liquid-and-vapour.ts';
import { cutPhase, restOfCase } from './phase-minutes.ts';
import { risesInPhase } from './insufflation.ts';
import {
  alveolarVentilation,
  cardiacOutput,
  childCo2Production,
  childOxygenUptake,
  co2Production,
  co2UnderPneumoperitoneum,
  meanOfEvenChange,
  gasExchangeBetween,
  oxygenUptake
} from './physiology.ts';
import {
  macAtAge,
  macAtPressure,
  targetFraction,
  targetFractionWithNitrousOxide
} from './target-fraction.ts';

/** A time within a phase over which CO2 elimination, and ventilation with it, stays as it is or changes evenly. */
export interface BreathingModel {
  readonly minutes: Quantity;
  /** CO2 eliminated and what is breathed for it, means of the time. */
  readonly co2MlPerMin: Quantity;
  readonly ventilationLPerMin: Quantity;
  /** What is breathed at its beginning and at its end; null where it stays as it is. */
  readonly change: { readonly fromLPerMin: Quantity; readonly untilLPerMin: Quantity } | null;
}

export interface PhaseModel {
  readonly name: string;
  /** Its place in the plan. */
  readonly index: number;
  readonly minutes: Quantity;
  readonly plannedFlowLPerMin: number;
  /** Where the flow follows the need, what is needed without vapour; the run then gives its mean. */
  readonly flowLPerMin: Quantity;
  /** Given where the flow follows the need: its least, and what is lost however little comes in. */
  readonly asNeeded: { readonly leastLPerMin: Quantity; readonly lostLPerMin: Quantity } | null;
  /** Planned as needed, and the machine cannot. */
  readonly isAsNeededRefused: boolean;
  /** How CO2 is eliminated and breathed out: one piece, or several where insufflation bends its course. */
  readonly breathing: readonly BreathingModel[];
  readonly vaporiser: VaporiserMode;
  /** Setting or limit, %; null where the vaporiser is off or no agent is given. */
  readonly dialPercent: Quantity | null;
  /** The plan's own dial where it is above the vaporiser's maximum and so was not taken. */
  readonly refusedDialPercent: number | null;
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
  readonly spillShareInspired: Quantity;
  readonly tissues: readonly TissueModel[];
  readonly circle: CircleCase;
}

export interface CaseModel {
  readonly constants: CaseConstants;
  readonly isChild: boolean;
  readonly isCut: boolean;
  readonly oxygenMlPerMin: Quantity;
  readonly neededFlowLPerMin: Quantity;
  readonly phases: readonly PhaseModel[];
  readonly agent: AgentModel | null;
  /** Null where none or but a trace of it is given, and in a set that does not follow it. */
  readonly nitrousOxide: NitrousOxideModel | null;
}

/** The model of a case with a breathing system (a regional one has none) that `checkCase` has let pass. */
export function modelCase(r: Reckoner, given: CaseGiven): CaseModel {
  const { conditions, cells, reference } = given;
  const constants = caseConstants(reference);
  const isChild = conditions.weightKg < constants.childWeightLimit.value;
  const weightKg = r.cell(conditions.weightKg, 'kg', 'caseMix', cells.row, 'weightKg');
  const exponent = r.constant(constants.sizeExponent);
  const gasExchange = (
    child: Parameters<typeof childOrAdult>[1]['child'],
    adult: Parameters<typeof childOrAdult>[1]['adult']
  ) => childOrAdult(r, { constants, weightKg, child, adult, between: gasExchangeBetween });
  const oxygenMlPerMin = gasExchange(
    (kg) =>
      r.apply(childOxygenUptake, {
        slope: r.constant(constants.childOxygenSlope),
        weightKg: kg,
        intercept: r.constant(constants.childOxygenIntercept)
      }),
    (kg) => r.apply(oxygenUptake, { coefficient: r.constant(constants.oxygenUptake), weightKg: kg, exponent })
  );
  const restingCo2 = gasExchange(
    (kg) =>
      r.apply(childCo2Production, {
        slope: r.constant(constants.childCo2Slope),
        weightKg: kg,
        intercept: r.constant(constants.childCo2Intercept)
      }),
    (kg) =>
      r.apply(co2Production, { coefficient: r.constant(constants.co2Production), weightKg: kg, exponent })
  );
  const neededFlowLPerMin = flowNeededBy(r, given, oxygenMlPerMin);
  const { phases, isCut } = modelPhases(r, given, constants, {
    neededLPerMin: neededFlowLPerMin,
    oxygenMlPerMin,
    restingCo2
  });
  const isVolatile = conditions.technique === 'volatile' && conditions.agent !== null;
  const isFollowed =
    constants.nitrousOxide !== null && conditions.nitrousOxidePercent >= LEAST_FOLLOWED_PERCENT;
  const patient: Patient | null =
    isVolatile || isFollowed
      ? {
          constants,
          weightKg,
          oxygenMlPerMin,
          cardiacOutputLPerMin: r.apply(cardiacOutput, {
            coefficient: r.constant(constants.cardiacOutput),
            weightKg,
            exponent
          }),
          phases
        }
      : null;
  const nitrousOxide =
    patient === null || constants.nitrousOxide === null || !isFollowed
      ? null
      : modelNitrousOxide(r, given, constants.nitrousOxide, {
          constants,
          weightKg,
          cardiacOutputLPerMin: patient.cardiacOutputLPerMin,
          circle: {
            alveolarVentilationLPerMin: r.value(phases[0]!.breathing[0]!.ventilationLPerMin),
            oxygenUptakeLPerMin: r.value(oxygenMlPerMin) / 1000,
            phases: circlePhases(r, phases)
          }
        });
  return {
    constants,
    isChild,
    isCut,
    oxygenMlPerMin,
    neededFlowLPerMin,
    phases,
    agent:
      patient === null || conditions.technique !== 'volatile' || conditions.agent === null
        ? null
        : modelAgent(r, given, conditions.agent, { ...patient, nitrousOxide }),
    nitrousOxide
  };
}

/**
 * CO2 eliminated in a phase and the ventilation that keeps arterial CO2: the same in every phase, but for the course
 * of insufflation where the set has one.
 */
function breathing(r: Reckoner, { conditions }: CaseGiven, constants: CaseConstants, restingCo2: Quantity) {
  const { pneumoperitoneum } = conditions;
  const withRise = (risePercent: Quantity) =>
    r.apply(co2UnderPneumoperitoneum, { co2MlPerMin: restingCo2, risePercent });
  const ventilation = (co2MlPerMin: Quantity) =>
    r.apply(alveolarVentilation, {
      factor: r.constant(constants.alveolarFactor),
      co2MlPerMin,
      arterialMmHg: r.constant(constants.arterialCo2)
    });
  const steady = (minutes: Quantity, co2MlPerMin: Quantity, ventilationLPerMin: Quantity) => ({
    minutes,
    co2MlPerMin,
    ventilationLPerMin,
    change: null
  });
  const course = constants.insufflation;
  if (pneumoperitoneum === 'none' || course === null) {
    const co2MlPerMin =
      pneumoperitoneum === 'none' ? restingCo2 : withRise(r.constant(constants.co2Rise[pneumoperitoneum]));
    const throughout = ventilation(co2MlPerMin);
    return (minutes: Quantity): readonly BreathingModel[] => [steady(minutes, co2MlPerMin, throughout)];
  }
  const earlier: Quantity[] = [];
  return (minutes: Quantity): readonly BreathingModel[] => {
    const rises = risesInPhase(
      r,
      pneumoperitoneum,
      { course, plateauRise: constants.co2Rise },
      { minutes, earlier: [...earlier] }
    );
    earlier.push(minutes);
    return rises.map(({ minutes: ofPiece, fromPercent, untilPercent }): BreathingModel => {
      const from = withRise(fromPercent);
      if (fromPercent === untilPercent) return steady(ofPiece, from, ventilation(from));
      const until = withRise(untilPercent);
      const co2MlPerMin = r.apply(meanOfEvenChange, { fromMlPerMin: from, untilMlPerMin: until });
      return {
        minutes: ofPiece,
        co2MlPerMin,
        ventilationLPerMin: ventilation(co2MlPerMin),
        change: { fromLPerMin: ventilation(from), untilLPerMin: ventilation(until) }
      };
    });
  };
}

/** What a machine gives at least, and what its circuit loses. */
function flowsOfMachine(r: Reckoner, { conditions, cells }: CaseGiven) {
  const id = cells.machine;
  return {
    minimumLPerMin: r.cell(conditions.minimumFlowLPerMin, 'L/min', 'machines', id, 'minimumFlowLPerMin'),
    losses: {
      leakMlPerMin: r.cell(conditions.leakMlPerMin, 'mL/min', 'machines', id, 'leakMlPerMin'),
      sampleMlPerMin: r.cell(conditions.sampleMlPerMin, 'mL/min', 'machines', id, 'sampleMlPerMin'),
      sampleReturned: r.cell(conditions.sampleReturned ? 1 : 0, '1', 'machines', id, 'sampleReturned')
    }
  };
}

function flowNeededBy(r: Reckoner, given: CaseGiven, oxygenMlPerMin: Quantity): Quantity {
  const { minimumLPerMin, losses } = flowsOfMachine(r, given);
  return r.apply(neededFlow, { minimumLPerMin, oxygenMlPerMin, ...losses });
}

/** How the flow follows the need in a phase that is planned so. */
function flowAsNeeded(
  r: Reckoner,
  given: CaseGiven,
  oxygenMlPerMin: Quantity
): NonNullable<PhaseModel['asNeeded']> {
  const { minimumLPerMin, losses } = flowsOfMachine(r, given);
  return {
    leastLPerMin: r.apply(leastFlowAsNeeded, { minimumLPerMin, oxygenMlPerMin }),
    lostLPerMin: r.apply(gasLost, losses)
  };
}

/** The plan's phases that fall into the case, each with its minutes, its flow and its dial. */
function modelPhases(
  r: Reckoner,
  { conditions, cells, reference }: CaseGiven,
  constants: CaseConstants,
  {
    neededLPerMin,
    oxygenMlPerMin,
    restingCo2
  }: { neededLPerMin: Quantity; oxygenMlPerMin: Quantity; restingCo2: Quantity }
): { phases: readonly PhaseModel[]; isCut: boolean } {
  const { agent } = conditions;
  const breathingOf = breathing(r, { conditions, cells, reference }, constants, restingCo2);
  let fixedMinutes = 0;
  for (const { minutes } of conditions.phases) fixedMinutes += minutes ?? 0;
  const isCut = fixedMinutes > conditions.minutes;
  const maximum = agent === null ? null : constants.agents[agent].vaporiserMaximum;
  const phases: PhaseModel[] = [];
  for (let index = 0; index < conditions.phases.length; index++) {
    const { name, flowLPerMin, flowAsNeeded: isPlanned, vaporiser, dialPercent } = conditions.phases[index]!;
    const minutes = minutesOfPhase(r, { conditions, cells }, index, isCut);
    if (r.value(minutes) <= 0) continue;
    const place = String(index);
    // A fixed dial gives its share of whatever flow is set: it cannot follow one that follows it.
    const isAsNeeded = isPlanned && vaporiser !== 'dial' && conditions.canFlowAsNeeded;
    const isRefused =
      vaporiser !== 'off' && maximum !== null && dialPercent !== null && dialPercent > maximum.value;
    phases.push({
      name,
      index,
      minutes,
      breathing: breathingOf(minutes),
      plannedFlowLPerMin: flowLPerMin,
      flowLPerMin: isAsNeeded
        ? neededLPerMin
        : r.apply(flowAsRun, {
            plannedLPerMin: r.cell(
              flowLPerMin,
              'L/min',
              'flowPlans',
              cells.plan,
              'phases',
              place,
              'flowLPerMin'
            ),
            neededLPerMin
          }),
      asNeeded: isAsNeeded ? flowAsNeeded(r, { conditions, cells, reference }, oxygenMlPerMin) : null,
      isAsNeededRefused: isPlanned && !isAsNeeded,
      vaporiser: maximum === null ? 'off' : vaporiser,
      dialPercent:
        maximum === null || vaporiser === 'off' || isAsNeeded
          ? null
          : dialPercent === null || isRefused
            ? r.constant(maximum)
            : r.cell(dialPercent, '%', 'flowPlans', cells.plan, 'phases', place, 'dialPercent'),
      refusedDialPercent: isRefused && !isAsNeeded ? dialPercent : null
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
  readonly cardiacOutputLPerMin: Quantity;
  readonly phases: readonly PhaseModel[];
}

function modelAgent(
  r: Reckoner,
  given: CaseGiven,
  agent: Agent,
  patient: Patient & { readonly nitrousOxide: NitrousOxideModel | null }
): AgentModel {
  const { conditions } = given;
  const { constants, weightKg, oxygenMlPerMin, cardiacOutputLPerMin, phases, nitrousOxide } = patient;
  const ofAgent = constants.agents[agent];
  const pressureKPa = r.cell(conditions.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa');
  const macFraction = macFractionOf(r, given, constants, agent, pressureKPa);
  const bloodGas = r.constant(bloodGasChosen(given, constants, agent) ?? ofAgent.bloodGas);
  const { tissues, lungVolumeL } = gasInBody(r, constants, {
    weightKg,
    bloodGas,
    body: ofAgent.bodies[conditions.bodyModel]
  });
  const { circuitVolumeL, spillShareInspired } = circuitOf(r, given, constants);
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
    spillShareInspired,
    tissues,
    circle: {
      bloodGas: r.value(bloodGas),
      cardiacOutputLPerMin: r.value(cardiacOutputLPerMin),
      alveolarVentilationLPerMin: r.value(phases[0]!.breathing[0]!.ventilationLPerMin),
      oxygenUptakeLPerMin: r.value(oxygenMlPerMin) / 1000,
      lungVolumeL: r.value(lungVolumeL),
      circuitVolumeL: r.value(circuitVolumeL),
      spillShareInspiredFraction: r.value(spillShareInspired),
      tissues: circleTissues(r, tissues),
      targetFraction: r.value(target),
      phases: nitrousOxide === null ? circlePhases(r, phases) : nitrousOxide.phases,
      beside: nitrousOxide?.beside
    }
  };
}

/** The phases as the circle system takes them: one for each part that is breathed alike. */
function circlePhases(r: Reckoner, phases: readonly PhaseModel[]): readonly CirclePhase[] {
  const all: CirclePhase[] = [];
  for (const { breathing: parts, flowLPerMin, asNeeded, vaporiser, dialPercent } of phases)
    for (const { minutes, ventilationLPerMin, change } of parts)
      all.push({
        minutes: r.value(minutes),
        flowLPerMin: r.value(asNeeded === null ? flowLPerMin : asNeeded.leastLPerMin),
        ...(asNeeded === null ? {} : { lostLPerMin: r.value(asNeeded.lostLPerMin) }),
        alveolarVentilationLPerMin: r.value(change === null ? ventilationLPerMin : change.fromLPerMin),
        endVentilationLPerMin: r.value(change === null ? ventilationLPerMin : change.untilLPerMin),
        vaporiser,
        // Vapour that is injected meets no limit.
        dialFraction: dialPercent !== null ? r.value(dialPercent) / 100 : vaporiser === 'hold' ? 1 : 0
      });
  return all;
}

function macFractionOf(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  constants: CaseConstants,
  gas: Agent | 'nitrous-oxide',
  ambientKPa: Quantity
): Quantity {
  const chosen = macChosen({ conditions }, constants, gas);
  const mac40 = gas === 'nitrous-oxide' ? constants.nitrousOxideMac40 : constants.agents[gas].mac40;
  return r.apply(macAtPressure, {
    macPercent:
      chosen?.kind === 'in-band'
        ? r.constant(chosen.mac)
        : r.apply(macAtAge, {
            mac40Percent: r.constant(chosen?.mac40 ?? mac40),
            slopePerYear: r.constant(chosen?.slope ?? constants.macSlope),
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
    nitrousOxideMacFraction: macFractionOf(r, given, constants, 'nitrous-oxide', ambientKPa),
    macFraction
  });
}
