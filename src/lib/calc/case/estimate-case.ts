import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { absorbentMass, co2AbsorbedInPhase, minuteVentilation, spillOf } from './absorbent-use.ts';
import {
  airOfPhase,
  freshOxygenFraction,
  nitrousOxideAsNeeded,
  nitrousOxideOfPhase,
  oxygenOfPhase
} from './carrier-gas.ts';
import { modelCase } from './case-model.ts';
import type { AgentModel, CaseModel, PhaseModel } from './case-model.ts';
import type { NitrousOxideModel } from './nitrous-oxide.ts';
import type { CaseResult, CaseUse, CaseWarning, PhaseAsRun } from './case-result.ts';
import {
  airTotal,
  co2AbsorbedTotal,
  constantDialTotal,
  constantDialVapourAddedTotal,
  macHours,
  meanFlow,
  nitrousOxideTotal,
  oxygenTotal
} from './case-totals.ts';
import { agentWarnings, childWarning, nitrousOxideWarnings, planWarnings } from './case-warnings.ts';
import { checkCase } from './check-case.ts';
import { circleInputs, circleReport, solvedOfNitrousOxide } from './circle-report.ts';
import type { CircleFigure } from './circle-report.ts';
import { emptyOutcome, solveCircleSystem, solveFloor } from './circle-system.ts';
import type { CircleOutcome } from './circle-system.ts';
import type { CaseGiven } from './conditions.ts';
import { constantDial, constantDialVapourAdded, dialAsFraction } from './constant-dial.ts';
import { flowClassOf, meanFlowAsNeeded, meanFlowWithNitrousOxide } from './fresh-gas-flow.ts';
import {
  liquidDelivered,
  liquidFloor,
  liquidLeft,
  liquidSpilled,
  liquidTakenUp
} from './liquid-and-vapour.ts';

// Written over by each case and read before the next, so that a bulk run allocates nothing for them.
const outcome = emptyOutcome();
const floorOutcome = emptyOutcome();

/**
 * One anaesthetic on one plan and machine: agent, carrier gases and absorbent used, how the target was held, and what a
 * reader must know about it.
 *
 * A volatile anaesthetic is solved as a circle system (`circle-system.ts`); an intravenous one uses gas and absorbent
 * but no agent; a regional one has no breathing system and uses nothing here. A measured use of the row is not looked at:
 * this is the model's own figure.
 * A phase below the flow that is needed is computed at that flow and flagged.
 * @throws OutOfRangeError where an input is outside what the model allows.
 */
export function estimateCase(r: Reckoner, given: CaseGiven): CaseResult {
  checkCase(given);
  if (given.conditions.technique === 'regional') return withoutBreathingSystem(r);
  const planned = modelCase(r, given);
  const { use, oxygenFractions, model } = useOf(r, given, planned);
  const held = model.agent === null ? nothingHeld(r) : holding(r, model, model.agent);
  const phases = phasesAsRun(r, model, oxygenFractions);
  const massKg = r.value(use.absorbentKg);
  // Field by field, as spreading objects into one costs as much as solving the case.
  return {
    method: use.method,
    liquidMl: use.liquidMl,
    takenUpMl: use.takenUpMl,
    spilledMl: use.spilledMl,
    leftMl: use.leftMl,
    oxygenL: use.oxygenL,
    airL: use.airL,
    nitrousOxideL: use.nitrousOxideL,
    co2AbsorbedL: use.co2AbsorbedL,
    absorbentKg: use.absorbentKg,
    lowestFlowLPerMin: use.lowestFlowLPerMin,
    constantDialMl: held.constantDialMl,
    constantDialVapourAddedMl: held.constantDialVapourAddedMl,
    minutesToTarget: held.minutesToTarget,
    minutesBelowTarget: held.minutesBelowTarget,
    targetFraction: held.targetFraction,
    macHours: held.macHours,
    meanFlowLPerMin: r.apply(meanFlow, {
      flowsLPerMin: model.phases.map(({ flowLPerMin }) => flowLPerMin),
      minutes: model.phases.map(({ minutes }) => minutes)
    }),
    neededFlowLPerMin: r.value(model.neededFlowLPerMin),
    absorbentHoursPerKg: massKg > 0 ? given.conditions.minutes / 60 / massKg : null,
    phases,
    warnings: warningsOf(r, given, model, phases)
  };
}

/**
 * What such an anaesthetic uses, without how it came about: the same figures as `estimateCase` gives, to the last bit.
 * @throws OutOfRangeError as `estimateCase`.
 */
export function useOfCase(r: Reckoner, given: CaseGiven): CaseUse {
  checkCase(given);
  if (given.conditions.technique === 'regional') return useWithoutBreathingSystem(r);
  return useOf(r, given, modelCase(r, given)).use;
}

/**
 * The floor of such a case, liquid mL: what would be used if nothing spilled and the target were held throughout, whatever
 * the plan (`solveFloor`). 0 where no volatile agent is given.
 * @throws OutOfRangeError as `estimateCase`.
 */
export function floorOfCase(r: Reckoner, given: CaseGiven): Quantity {
  checkCase(given);
  const { technique, agent: isGiven } = given.conditions;
  const model = technique === 'volatile' && isGiven !== null ? modelCase(r, given) : null;
  if (model === null || model.agent === null) return r.assumption(0, 'mL', noAgent);
  const { agent } = model;
  solveFloor(agent.circle, floorOutcome);
  return r.apply(liquidFloor, {
    vapourL: solvedBy(r, model, agent)('vapour-floor', floorOutcome.deliveredL, floorOutcome),
    vapourPerLiquid: agent.vapourPerLiquid
  });
}

/**
 * Solves the case; how the target was held is then read from `outcome`, before the next case is solved. `model` is the
 * planned one with the flows that came of it.
 */
function useOf(
  r: Reckoner,
  given: CaseGiven,
  planned: CaseModel
): { use: CaseUse; oxygenFractions: readonly number[]; model: CaseModel } {
  const of = planned.agent === null ? withoutAgent(r) : agentUse(r, planned, planned.agent);
  const nitrousOxide =
    planned.nitrousOxide === null ? null : nitrousOxideUse(r, planned, planned.nitrousOxide);
  const model = withFlowsThatCame(r, planned, of.vapour ?? nitrousOxide ?? []);
  const gas = carrierGas(r, given, model, nitrousOxide);
  const { co2AbsorbedL, absorbentKg } = absorbentUse(r, given, model, of.vapour, nitrousOxide);
  let lowestFlowLPerMin = Infinity;
  for (const { flowLPerMin } of model.phases)
    lowestFlowLPerMin = Math.min(lowestFlowLPerMin, r.value(flowLPerMin));
  return {
    use: {
      method: of.method,
      liquidMl: of.liquidMl,
      takenUpMl: of.takenUpMl,
      spilledMl: of.spilledMl,
      leftMl: of.leftMl,
      oxygenL: gas.oxygenL,
      airL: gas.airL,
      nitrousOxideL: gas.nitrousOxideL,
      co2AbsorbedL,
      absorbentKg,
      lowestFlowLPerMin
    },
    oxygenFractions: gas.oxygenFractions,
    model
  };
}

/** A model whose phases of flow as needed have the mean flow that the run gave; without a run they keep theirs. */
function withFlowsThatCame(
  r: Reckoner,
  model: CaseModel,
  run: readonly Pick<PhaseVapour, 'flowLPerMin'>[]
): CaseModel {
  if (run.length === 0 || model.phases.every(({ asNeeded }) => asNeeded === null)) return model;
  let at = 0;
  const phases = model.phases.map((phase): PhaseModel => {
    const parts = run.slice(at, (at += phase.breathing.length));
    if (phase.asNeeded === null) return phase;
    const flows = parts.flatMap(({ flowLPerMin }) => flowLPerMin ?? []);
    return {
      ...phase,
      flowLPerMin: r.apply(meanFlow, {
        flowsLPerMin: flows,
        minutes: phase.breathing.map(({ minutes }) => minutes)
      })
    };
  });
  return { ...model, phases };
}

/** Vapour that came in and was taken up in one phase, or one part of it that is breathed alike, L. */
interface PhaseVapour {
  readonly deliveredL: Quantity;
  readonly takenUpL: Quantity;
  /** Mean flow where it followed the need; null where it was set. */
  readonly flowLPerMin: Quantity | null;
}

type AgentUse = Pick<CaseUse, 'method' | 'liquidMl' | 'takenUpMl' | 'spilledMl' | 'leftMl'> & {
  readonly vapour: readonly PhaseVapour[] | null;
};

/** Wraps a figure of the solved case. */
function solvedBy(r: Reckoner, model: CaseModel, agent: AgentModel) {
  const inputs = r.records ? circleInputs(model, agent) : {};
  return <T>(figure: CircleFigure, value: T, from: CircleOutcome = outcome): Quantity<T> =>
    r.result(value, inputs, () => circleReport(figure, from));
}

function agentUse(r: Reckoner, model: CaseModel, agent: AgentModel): AgentUse {
  solveCircleSystem(agent.circle, outcome);
  const solved = solvedBy(r, model, agent);
  const { vapourPerLiquid } = agent;
  // Asked first, as hardly any case has such a phase.
  const parts = model.phases.some(({ asNeeded }) => asNeeded !== null) ? partsOf(model) : null;
  return {
    method: 'circle-system',
    liquidMl: r.apply(liquidDelivered, {
      vapourL: solved('vapour-delivered', outcome.deliveredL),
      vapourPerLiquid
    }),
    takenUpMl: r.apply(liquidTakenUp, {
      vapourL: solved('vapour-taken-up', outcome.takenUpL),
      vapourPerLiquid
    }),
    spilledMl: r.apply(liquidSpilled, {
      vapourL: solved('vapour-spilled', outcome.spilledL),
      vapourPerLiquid
    }),
    leftMl: r.apply(liquidLeft, {
      vapourL: solved('vapour-left', outcome.leftInCircuitL + outcome.leftInLungL),
      vapourPerLiquid
    }),
    vapour: agent.circle.phases.map((_, i) => ({
      deliveredL: solved('vapour-delivered-in-phase', partOf(outcome.deliveredByPhaseL, i)),
      takenUpL: solved('vapour-taken-up-in-phase', partOf(outcome.takenUpByPhaseL, i)),
      flowLPerMin:
        parts?.[i]?.isAsNeeded === true
          ? r.apply(meanFlowAsNeeded, {
              freshGasL: solved('fresh-gas-in-phase', outcome.freshGasByPhaseL[i]!),
              minutes: parts[i].minutes
            })
          : null
    }))
  };
}

/** Nitrous oxide of one phase, or one part of it that is breathed alike, L. */
interface PhaseNitrousOxide {
  /** What was given where the flow followed the need; null where it was set. */
  readonly givenL: Quantity | null;
  readonly takenUpL: Quantity;
  /** Mean of all gas, where the flow followed the need and no agent was given; null where it was set. */
  readonly flowLPerMin: Quantity | null;
}

function nitrousOxideUse(
  r: Reckoner,
  model: CaseModel,
  nitrousOxide: NitrousOxideModel
): readonly PhaseNitrousOxide[] {
  const { outcome: of } = nitrousOxide;
  const solved = solvedOfNitrousOxide(r, model, nitrousOxide);
  return partsOf(model).map(({ minutes, isAsNeeded }, i) => {
    const givenL = isAsNeeded ? solved('nitrous-oxide-in-phase', partOf(of.deliveredByPhaseL, i)) : null;
    return {
      givenL,
      takenUpL: solved('nitrous-oxide-taken-up-in-phase', partOf(of.takenUpByPhaseL, i)),
      flowLPerMin:
        givenL === null
          ? null
          : r.apply(meanFlowWithNitrousOxide, {
              freshGasL: solved('fresh-gas-in-phase', of.freshGasByPhaseL[i]!),
              nitrousOxideL: givenL,
              minutes
            })
    };
  });
}

/** Parts of phases that are breathed alike, in the order in which they are solved. */
const partsOf = (model: CaseModel) =>
  model.phases.flatMap(({ breathing, asNeeded }) =>
    breathing.map(({ minutes }) => ({ minutes, isAsNeeded: asNeeded !== null }))
  );

/** What phase i adds to a running total. */
const partOf = (totals: Float64Array, i: number): number => totals[i]! - (i === 0 ? 0 : totals[i - 1]!);

type Held = Pick<
  CaseResult,
  | 'constantDialMl'
  | 'constantDialVapourAddedMl'
  | 'minutesToTarget'
  | 'minutesBelowTarget'
  | 'targetFraction'
  | 'macHours'
>;

/** How the target was held in the case that was solved just now. */
function holding(r: Reckoner, model: CaseModel, agent: AgentModel): Held {
  const solved = solvedBy(r, model, agent);
  return {
    ...constantDialOf(r, model, agent),
    minutesToTarget: solved(
      'minutes-to-target',
      Number.isNaN(outcome.minutesToTarget) ? null : outcome.minutesToTarget
    ),
    minutesBelowTarget: solved('minutes-below-target', outcome.minutesBelowTarget),
    targetFraction: agent.circle.targetFraction,
    macHours: r.apply(macHours, {
      endTidalMin: solved('end-tidal-minutes', outcome.endTidalByPhaseMin[agent.circle.phases.length - 1]!),
      macFraction: agent.macFraction
    })
  };
}

/** The published formula, phase by phase: at the target where it is held, at the dial where that is fixed. */
function constantDialOf(
  r: Reckoner,
  model: CaseModel,
  agent: AgentModel
): Pick<Held, 'constantDialMl' | 'constantDialVapourAddedMl'> {
  const asPrinted: Quantity[] = [];
  const vapourAdded: Quantity[] = [];
  for (const { vaporiser, minutes, flowLPerMin, dialPercent } of model.phases) {
    if (vaporiser === 'off') continue;
    const dialFraction =
      vaporiser === 'dial' && dialPercent !== null
        ? r.apply(dialAsFraction, { dialPercent })
        : agent.targetFraction;
    const of = { flowLPerMin, dialFraction, minutes, vapourPerLiquid: agent.vapourPerLiquid };
    asPrinted.push(r.apply(constantDial, of));
    vapourAdded.push(r.apply(constantDialVapourAdded, of));
  }
  if (asPrinted.length === 0) {
    const none = r.assumption(0, 'mL', 'The vaporiser is off in every phase.');
    return { constantDialMl: none, constantDialVapourAddedMl: none };
  }
  return {
    constantDialMl: r.apply(constantDialTotal, { parts: asPrinted }),
    constantDialVapourAddedMl: r.apply(constantDialVapourAddedTotal, { parts: vapourAdded })
  };
}

const noAgent = 'No volatile agent is given.';
const noBreathingSystem = 'Regional anaesthesia without a breathing system.';

function withoutAgent(r: Reckoner): AgentUse {
  const none = r.assumption(0, 'mL', noAgent);
  return { method: 'none', liquidMl: none, takenUpMl: none, spilledMl: none, leftMl: none, vapour: null };
}

function nothingHeld(r: Reckoner): Held {
  const none = r.assumption(0, 'mL', noAgent);
  return {
    constantDialMl: none,
    constantDialVapourAddedMl: none,
    minutesToTarget: r.assumption(null, 'min', noAgent),
    minutesBelowTarget: r.assumption(0, 'min', noAgent),
    targetFraction: 0,
    macHours: r.assumption(0, 'h', noAgent)
  };
}

function useWithoutBreathingSystem(r: Reckoner): CaseUse {
  const { method, liquidMl, takenUpMl, spilledMl, leftMl } = withoutAgent(r);
  const noGas = r.assumption(0, 'L', noBreathingSystem);
  return {
    method,
    liquidMl,
    takenUpMl,
    spilledMl,
    leftMl,
    oxygenL: noGas,
    airL: noGas,
    nitrousOxideL: noGas,
    co2AbsorbedL: noGas,
    absorbentKg: r.assumption(0, 'kg', noBreathingSystem),
    lowestFlowLPerMin: null
  };
}

const withoutBreathingSystem = (r: Reckoner): CaseResult => ({
  ...useWithoutBreathingSystem(r),
  ...nothingHeld(r),
  meanFlowLPerMin: r.assumption(0, 'L/min', noBreathingSystem),
  neededFlowLPerMin: 0,
  absorbentHoursPerKg: null,
  phases: [],
  warnings: []
});

function carrierGas(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  { phases, oxygenMlPerMin, constants }: CaseModel,
  followed: readonly PhaseNitrousOxide[] | null
): Pick<CaseUse, 'oxygenL' | 'airL' | 'nitrousOxideL'> & { oxygenFractions: readonly number[] } {
  const ofRow = (name: 'inspiredOxygenPercent' | 'nitrousOxidePercent') =>
    r.cell(conditions[name], '%', 'caseMix', cells.row, name);
  const inspiredPercent = ofRow('inspiredOxygenPercent');
  const nitrousOxidePercent = ofRow('nitrousOxidePercent');
  const airOxygenPercent = r.constant(constants.airOxygen);
  const oxygen: Quantity[] = [];
  const air: Quantity[] = [];
  const nitrousOxide: Quantity[] = [];
  const oxygenFractions: number[] = [];
  let at = 0;
  for (const { minutes, flowLPerMin, breathing } of phases) {
    const given = followed?.slice(at, (at += breathing.length)).flatMap(({ givenL }) => givenL ?? []) ?? [];
    const oxygenFraction = r.apply(freshOxygenFraction, { inspiredPercent, flowLPerMin, oxygenMlPerMin });
    // What the flowmeters give is used, taken up or not; where the flow follows the need, what was needed is.
    const nitrousOxideL =
      given.length > 0
        ? r.apply(nitrousOxideAsNeeded, { parts: given })
        : r.apply(nitrousOxideOfPhase, { nitrousOxidePercent, flowLPerMin, oxygenMlPerMin, minutes });
    const airL = r.apply(airOfPhase, {
      flowLPerMin,
      minutes,
      oxygenFraction,
      nitrousOxideL,
      airOxygenPercent
    });
    oxygen.push(r.apply(oxygenOfPhase, { flowLPerMin, minutes, airL, nitrousOxideL }));
    air.push(airL);
    nitrousOxide.push(nitrousOxideL);
    oxygenFractions.push(r.value(oxygenFraction));
  }
  return {
    oxygenL: r.apply(oxygenTotal, { parts: oxygen }),
    airL: r.apply(airTotal, { parts: air }),
    nitrousOxideL: r.apply(nitrousOxideTotal, { parts: nitrousOxide }),
    oxygenFractions
  };
}

function absorbentUse(
  r: Reckoner,
  { conditions, cells }: CaseGiven,
  { phases, oxygenMlPerMin, constants }: CaseModel,
  vapour: readonly PhaseVapour[] | null,
  nitrousOxide: readonly PhaseNitrousOxide[] | null
): Pick<CaseUse, 'co2AbsorbedL' | 'absorbentKg'> {
  const deadSpacePercent = r.constant(constants.deadSpace);
  const parts: Quantity[] = [];
  for (const { flowLPerMin, breathing } of phases)
    for (const { minutes, co2MlPerMin, ventilationLPerMin } of breathing) {
      const minuteVentilationLPerMin = r.apply(minuteVentilation, {
        alveolarLPerMin: ventilationLPerMin,
        deadSpacePercent
      });
      const ofVapour = vapour?.[parts.length];
      const ofNitrousOxide = nitrousOxide?.[parts.length];
      const spillLPerMin = spillOf(r, {
        flowLPerMin: ofVapour?.flowLPerMin ?? ofNitrousOxide?.flowLPerMin ?? flowLPerMin,
        oxygenMlPerMin,
        minutes,
        vapour: ofVapour === undefined ? null : { vapourL: ofVapour.deliveredL, takenUpL: ofVapour.takenUpL },
        nitrousOxideTakenUpL: ofNitrousOxide?.takenUpL ?? null
      });
      parts.push(
        r.apply(co2AbsorbedInPhase, { co2MlPerMin, minutes, spillLPerMin, minuteVentilationLPerMin })
      );
    }
  const co2AbsorbedL = r.apply(co2AbsorbedTotal, { parts });
  return {
    co2AbsorbedL,
    absorbentKg: r.apply(absorbentMass, {
      co2L: co2AbsorbedL,
      capacityLPerKg: r.cell(
        conditions.capacityLPerKg,
        'L/kg',
        'absorbents',
        cells.absorbent,
        'capacityLPerKg'
      )
    })
  };
}

function phasesAsRun(
  r: Reckoner,
  model: CaseModel,
  oxygenFractions: readonly number[]
): readonly PhaseAsRun[] {
  return model.phases.map(({ name, minutes, plannedFlowLPerMin, flowLPerMin, asNeeded }, i) => {
    const flow = r.value(flowLPerMin);
    return {
      name,
      minutes: r.value(minutes),
      plannedFlowLPerMin: asNeeded === null ? plannedFlowLPerMin : flow,
      flowLPerMin: flow,
      flowClass: flowClassOf(flow),
      oxygenFraction: oxygenFractions[i]!
    };
  });
}

function warningsOf(
  r: Reckoner,
  given: CaseGiven,
  model: CaseModel,
  phases: readonly PhaseAsRun[]
): readonly CaseWarning[] {
  const oxygenMlPerMin = r.value(model.oxygenMlPerMin);
  const warnings = planWarnings(given, model, phases, {
    neededFlowLPerMin: r.value(model.neededFlowLPerMin),
    oxygenMlPerMin
  });
  if (model.isChild) warnings.push(childWarning(given, model));
  if (model.nitrousOxide !== null) warnings.push(...nitrousOxideWarnings(model.nitrousOxide));
  if (model.agent !== null)
    warnings.push(...agentWarnings(given, model, outcome, r.value(model.agent.macFraction)));
  return warnings;
}
