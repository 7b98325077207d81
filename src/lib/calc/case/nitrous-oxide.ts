/**
 * Nitrous oxide as a gas of its own in the circle, from the reference sets that follow it: it fills circuit and lung, is
 * taken up by the tissues, and what is taken up leaves less to spill and draws more inspired gas into the lung.
 *
 * It obeys the same balance as an agent (`circle-system.ts`) with its own solubilities. Where the flow is set, what the
 * flowmeter gives is steady, and the rest of the flow is its carrier: a vaporiser with a fixed dial. Where the flow follows
 * the need, it is given as it takes to hold its share. What agent vapour adds to the gas is small beside it and neglected
 * here; so nitrous oxide is solved first, and the agent is then given its course.
 *
 * How much more the lung draws in follows from the uptake, and the uptake from that: it is solved without, and then with
 * what came of it. Against both gases solved at once, volumes are then within 1 % where the flow is set, and within
 * 3 % where it follows the need (a test).
 */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { NitrousOxideConstants, CaseConstants } from './case-constants.ts';
import { nitrousOxideOfPhase } from './carrier-gas.ts';
import { emptyOutcome, solveCircleSystem } from './circle-system.ts';
import type { CircleCase, CircleOutcome, CirclePhase, GasBeside, Tissue } from './circle-system.ts';
import type { CaseGiven } from './conditions.ts';
import { circuitOf, gasInBody } from './gas-in-body.ts';
import type { TissueModel } from './gas-in-body.ts';

/** A share below this is a trace that changes no figure, and is not followed. */
export const LEAST_FOLLOWED_PERCENT = 1e-6;
/** One round more where what is given follows what is taken up, too. */
const ROUNDS = { flowIsSet: 2, flowFollows: 3 } as const;
/** Shortest span over which uptake is taken as steady: so many minutes, and so large a share of the time gone by. */
const LEAST_SPAN_MIN = 0.1;
const LEAST_SPAN_SHARE = 0.05;
/** Times this close are the same. */
const ROUNDING_MIN = 1e-6;

export interface NitrousOxideModel {
  readonly heldPercent: Quantity;
  readonly cardiacOutputLPerMin: Quantity;
  readonly bloodGas: Quantity;
  readonly lungVolumeL: Quantity;
  readonly circuitVolumeL: Quantity;
  readonly spillShareInspired: Quantity;
  readonly tissues: readonly TissueModel[];
  /** Share of what is taken up in whose place more is inspired, %. */
  readonly drawnInPercent: Quantity;
  /** Nitrous oxide as the solver has it, what the lung draws in for it aside. */
  readonly circle: CircleCase;
  readonly outcome: CircleOutcome;
  /** Minutes of a set flow in which less comes in than is taken up of oxygen and nitrous oxide. */
  readonly minutesShort: number;
  /** What the agent's circle is given of it. */
  readonly beside: GasBeside;
  /** The phases of the agent's circle: where the flow follows the need, without what is given of nitrous oxide. */
  readonly phases: readonly CirclePhase[];
}

/** Nitrous oxide of a case on its phases, solved; `circle` is what the patient and the phases are for any gas. */
export function modelNitrousOxide(
  r: Reckoner,
  given: CaseGiven,
  { bodies, bloodGas: published, drawnInShare }: NitrousOxideConstants,
  {
    constants,
    weightKg,
    cardiacOutputLPerMin,
    circle
  }: {
    readonly constants: CaseConstants;
    readonly weightKg: Quantity;
    readonly cardiacOutputLPerMin: Quantity;
    readonly circle: Pick<CircleCase, 'alveolarVentilationLPerMin' | 'oxygenUptakeLPerMin' | 'phases'>;
  }
): NitrousOxideModel {
  const { conditions, cells } = given;
  const heldPercent = r.cell(
    conditions.nitrousOxidePercent,
    '%',
    'caseMix',
    cells.row,
    'nitrousOxidePercent'
  );
  const bloodGas = r.constant(published);
  const drawnInPercent = r.constant(drawnInShare);
  const { tissues, lungVolumeL } = gasInBody(r, constants, {
    weightKg,
    bloodGas,
    body: bodies[conditions.bodyModel]
  });
  const { circuitVolumeL, spillShareInspired } = circuitOf(r, given, constants);
  return {
    heldPercent,
    cardiacOutputLPerMin,
    bloodGas,
    lungVolumeL,
    circuitVolumeL,
    spillShareInspired,
    tissues,
    drawnInPercent,
    ...solveNitrousOxide(
      {
        ...circle,
        cardiacOutputLPerMin: r.value(cardiacOutputLPerMin),
        bloodGas: r.value(bloodGas),
        lungVolumeL: r.value(lungVolumeL),
        circuitVolumeL: r.value(circuitVolumeL),
        spillShareInspiredFraction: r.value(spillShareInspired),
        tissues: circleTissues(r, tissues)
      },
      { heldPercent: r.value(heldPercent), drawnInPercent: r.value(drawnInPercent) }
    )
  };
}

/** Tissues as the circle system takes them. */
export const circleTissues = (r: Reckoner, tissues: readonly TissueModel[]): readonly Tissue[] =>
  tissues.map(({ volumeL, sharePercent, tissueBlood }) => ({
    volumeL: r.value(volumeL),
    outputShare: r.value(sharePercent) / 100,
    tissueBlood: r.value(tissueBlood)
  }));

/**
 * Solves nitrous oxide for a patient and phases as an agent has them, total flows in L/min.
 * @param heldPercent the share that is to be held, above 0
 * @param drawnInPercent share of what is taken up in whose place more is inspired
 */
export function solveNitrousOxide(
  of: Omit<CircleCase, 'targetFraction' | 'beside'>,
  { heldPercent, drawnInPercent }: { heldPercent: number; drawnInPercent: number }
): Pick<NitrousOxideModel, 'circle' | 'outcome' | 'minutesShort' | 'beside' | 'phases'> {
  const givenAt = ({ flowLPerMin }: CirclePhase): number =>
    nitrousOxideOfPhase.compute({
      nitrousOxidePercent: heldPercent,
      flowLPerMin,
      oxygenMlPerMin: 1000 * of.oxygenUptakeLPerMin,
      minutes: 1
    });
  // The rest of the flow carries it. Where the flow follows the need, it comes on top of that.
  const withoutIt = (phase: CirclePhase): CirclePhase => ({
    ...phase,
    flowLPerMin: phase.flowLPerMin - givenAt(phase)
  });
  const circle: CircleCase = {
    ...of,
    targetFraction: heldPercent / 100,
    phases: of.phases.map((phase) => ({
      ...withoutIt(phase),
      vaporiser: phase.lostLPerMin === undefined ? 'dial' : 'hold',
      dialFraction: phase.lostLPerMin === undefined ? givenAt(phase) / phase.flowLPerMin : 1
    }))
  };
  const ends: number[] = [];
  for (const { minutes } of of.phases) ends.push((ends.at(-1) ?? 0) + minutes);
  const isEnd = (minute: number): boolean => ends.some((end) => Math.abs(minute - end) < ROUNDING_MIN);
  const outcome = emptyOutcome();
  let course = emptyCourse();
  const rounds = of.phases.every(({ lostLPerMin }) => lostLPerMin === undefined)
    ? ROUNDS.flowIsSet
    : ROUNDS.flowFollows;
  for (let round = 0; round < rounds; round++) {
    const next = emptyCourse();
    const last = { minute: 0, deliveredL: 0, takenUpL: 0 };
    const { untilMin, drawnInLPerMin } = course;
    const nothing = untilMin.map(() => 0);
    solveCircleSystem(
      { ...circle, beside: { untilMin, drawnInLPerMin, givenLPerMin: nothing, takenUpLPerMin: nothing } },
      outcome,
      null,
      (at) => {
        const span = at.minute - last.minute;
        // Steps crowd where the flow meets its least; a phase ends where it ends, as another flow begins there.
        if (span < LEAST_SPAN_MIN + LEAST_SPAN_SHARE * at.minute && !isEnd(at.minute)) return;
        if (span <= 0) return;
        const takenUp = (at.takenUpL - last.takenUpL) / span;
        next.untilMin.push(at.minute);
        next.givenLPerMin.push((at.deliveredL - last.deliveredL) / span);
        next.takenUpLPerMin.push(takenUp);
        // What a patient gives off is breathed out with the rest.
        next.drawnInLPerMin.push(Math.max(0, (drawnInPercent / 100) * takenUp));
        Object.assign(last, at);
      }
    );
    course = next;
  }
  return {
    circle,
    outcome,
    minutesShort: minutesShort(of, course),
    beside: course,
    phases: of.phases.map((phase) => (phase.lostLPerMin === undefined ? phase : withoutIt(phase)))
  };
}

function minutesShort(
  { phases, oxygenUptakeLPerMin }: Pick<CircleCase, 'phases' | 'oxygenUptakeLPerMin'>,
  { untilMin, takenUpLPerMin }: GasBeside
): number {
  let short = 0;
  let i = 0;
  let from = 0;
  let end = 0;
  for (const { minutes, flowLPerMin, lostLPerMin } of phases)
    for (end += minutes; i < untilMin.length && from < end; from = untilMin[i++]!)
      if (lostLPerMin === undefined && flowLPerMin < oxygenUptakeLPerMin + takenUpLPerMin[i]!)
        short += untilMin[i]! - from;
  return short;
}

const emptyCourse = () => ({
  untilMin: [] as number[],
  givenLPerMin: [] as number[],
  takenUpLPerMin: [] as number[],
  drawnInLPerMin: [] as number[]
});
