import type { CaseRow } from '../input.ts';
import { solveFloor } from './circle-system.ts';
import type { CircleCase, CircleOutcome } from './circle-system.ts';

interface KnownFloor {
  readonly circle: CircleCase;
  readonly minutes: number;
  readonly floorL: number;
}

/** Floors that were solved, by row; a few for each, as scenarios differ in machine and agent. */
const floors = new WeakMap<CaseRow, KnownFloor[]>();
const KEPT = 8;

const minutesOf = (circle: CircleCase): number => {
  let sum = 0;
  for (const { minutes } of circle.phases) sum += minutes;
  return sum;
};

function sameBut(a: CircleCase, b: CircleCase): boolean {
  if (
    a.targetFraction !== b.targetFraction ||
    a.circuitVolumeL !== b.circuitVolumeL ||
    a.lungVolumeL !== b.lungVolumeL ||
    a.bloodGas !== b.bloodGas ||
    a.cardiacOutputLPerMin !== b.cardiacOutputLPerMin ||
    a.alveolarVentilationLPerMin !== b.alveolarVentilationLPerMin ||
    a.tissues.length !== b.tissues.length
  )
    return false;
  for (let i = 0; i < a.tissues.length; i++) {
    const one = a.tissues[i]!;
    const other = b.tissues[i]!;
    if (
      one.volumeL !== other.volumeL ||
      one.outputShare !== other.outputShare ||
      one.tissueBlood !== other.tissueBlood
    )
      return false;
  }
  return true;
}

/**
 * The floor of a case, L vapour, as `solveFloor` gives it. It does not depend on the plan, so it is kept for the row, and
 * an edited plan does not pay for it again. Everything that it does depend on is compared, so a kept one is the same bits.
 */
export function floorOf(row: CaseRow, circle: CircleCase, outcome: CircleOutcome): number {
  const minutes = minutesOf(circle);
  let known = floors.get(row);
  if (known === undefined) floors.set(row, (known = []));
  for (const each of known) if (each.minutes === minutes && sameBut(each.circle, circle)) return each.floorL;
  solveFloor(circle, outcome);
  if (known.length >= KEPT) known.shift();
  known.push({ circle, minutes, floorL: outcome.deliveredL });
  return outcome.deliveredL;
}
