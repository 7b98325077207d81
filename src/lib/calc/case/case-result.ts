import type { Quantity } from '../working/reckoner.ts';

/** How a case's agent use was found. */
export type CaseMethod = 'circle-system' | 'measured' | 'scaled-to-measured' | 'none';

/** Flow class of a phase, by the fresh gas flow in litres a minute. */
export type FlowClass = 'metabolic' | 'minimal' | 'low' | 'medium' | 'high' | 'very high';

/** A remark about a case that a reader must see. `code` is stable; `sentence` is for people. */
export interface CaseWarning {
  readonly code:
    | 'flow-raised-to-need'
    | 'flow-as-needed-refused'
    | 'oxygen-not-held'
    | 'target-not-reached'
    | 'target-sagged'
    | 'case-shorter-than-plan'
    | 'dial-above-maximum'
    | 'target-above-vaporiser'
    | 'sevoflurane-below-1-l-per-min'
    | 'sevoflurane-above-2-mac-hours'
    | 'child-formula'
    | 'nitrous-oxide-target'
    | 'child-nitrous-oxide'
    | 'nitrous-oxide-short'
    | 'chosen-group-not-held'
    | 'measured-below-uptake'
    | 'measured-without-spill'
    | 'measured-far-from-model';
  readonly sentence: string;
}

/** One phase as it was run. */
export interface PhaseAsRun {
  readonly name: string;
  readonly minutes: number;
  readonly plannedFlowLPerMin: number;
  /** The planned flow, or what patient, leak and sample need where that is more. */
  readonly flowLPerMin: number;
  readonly flowClass: FlowClass;
  /** Oxygen share of the fresh gas that holds the inspired target, never above what the carrier allows. */
  readonly oxygenFraction: number;
}

/**
 * What one anaesthetic on one plan and machine uses: all that the sums of a year need of it. Volumes of gas at theatre
 * temperature and ambient pressure; liquids in mL. `takenUpMl + spilledMl + leftMl = liquidMl` to rounding where the
 * method is `circle-system`. Where the liquid was measured they do so from reference set 2026-2 on; in the first set they
 * are then the model's own, unscaled, figures.
 */
export interface CaseUse {
  readonly method: CaseMethod;
  /** Liquid agent used. */
  readonly liquidMl: Quantity;
  readonly takenUpMl: Quantity;
  readonly spilledMl: Quantity;
  /** In circuit and lung at the end, lost at disconnection. */
  readonly leftMl: Quantity;
  readonly oxygenL: Quantity;
  readonly airL: Quantity;
  readonly nitrousOxideL: Quantity;
  readonly co2AbsorbedL: Quantity;
  readonly absorbentKg: Quantity;
  /** Lowest fresh gas flow of the phases as they are run; null where there is no breathing system. */
  readonly lowestFlowLPerMin: number | null;
}

/** A case's use, and how it came about. */
export interface CaseResult extends CaseUse {
  /** The published formula as printed, F · D, phase by phase: at the target where it is held, else at the dial. */
  readonly constantDialMl: Quantity;
  /** The same, with the vapour added to the flow. */
  readonly constantDialVapourAddedMl: Quantity;
  /** null: not reached. */
  readonly minutesToTarget: Quantity<number | null>;
  readonly minutesBelowTarget: Quantity;
  /** End-tidal fraction that was to be held; 0 where no agent is given. */
  readonly targetFraction: number;
  readonly macHours: Quantity;
  /** Mean fresh gas flow over the case. */
  readonly meanFlowLPerMin: Quantity;
  /** Least fresh gas flow that patient, leak and sample allow, or the machine gives. */
  readonly neededFlowLPerMin: number;
  /** Hours that a kilogram of absorbent lasts in such a case; null where none is used up. */
  readonly absorbentHoursPerKg: number | null;
  readonly phases: readonly PhaseAsRun[];
  readonly warnings: readonly CaseWarning[];
}

/** The figures of a result that a formula or the solver gave, and that so have a working. */
export const caseQuantities = [
  'liquidMl',
  'takenUpMl',
  'spilledMl',
  'leftMl',
  'constantDialMl',
  'constantDialVapourAddedMl',
  'minutesToTarget',
  'minutesBelowTarget',
  'macHours',
  'meanFlowLPerMin',
  'oxygenL',
  'airL',
  'nitrousOxideL',
  'co2AbsorbedL',
  'absorbentKg'
] as const satisfies readonly (keyof CaseResult)[];
