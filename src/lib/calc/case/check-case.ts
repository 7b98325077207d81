/** The check that a case can be computed from its conditions. */
import { agents } from '../input.ts';
import type { Limit } from '../limits.ts';
import {
  absorbentLimits,
  leastVolatileAgeYears,
  machineLimits,
  phaseLimits,
  rowLimits,
  siteLimits
} from '../limits.ts';
import type { CaseGiven } from './conditions.ts';
import { OutOfRangeError } from './out-of-range-error.ts';

/** NaN stands for a value that is needed and was not given. */
function check(limit: Limit, value: number, path: () => string, why?: string): void {
  const { from, to, unit } = limit;
  if (value >= from && value <= to && !(limit.above && value === from) && !(limit.below && value === to))
    return;
  const allowed = `${limit.above ? 'above ' : ''}${from} to ${limit.below ? 'below ' : ''}${to} ${unit}`;
  throw new OutOfRangeError({
    quantity: limit.quantity,
    value: Number.isNaN(value) ? null : value,
    unit,
    allowed: why === undefined ? allowed : `${allowed}; ${why}`,
    path: path()
  });
}

/** Puts each limit of a list to the value of its name; a value that is null needs none. */
function checkAll<Name extends string>(
  limits: Readonly<Record<Name, Limit>>,
  values: Readonly<Record<NoInfer<Name>, number | null>>,
  place: string
): void {
  for (const name in limits) {
    const value = values[name];
    if (value !== null) check(limits[name], value, () => `${place}.${name}`);
  }
}

const { ageYears: ageLimit, targetMac: targetLimit, ...limitsOfAllRows } = rowLimits;
const { dialPercent: dialLimit, ...limitsOfAllPhases } = phaseLimits;
const volatileAgeLimit: Limit = { ...ageLimit, from: leastVolatileAgeYears };

/**
 * Checks everything that the model needs to be within its limits.
 * @throws OutOfRangeError naming the quantity, the value, what is allowed and the cell.
 */
export function checkCase({ conditions, cells }: CaseGiven): void {
  const row = `caseMix.${cells.row}`;
  const { technique, agent, nitrousOxidePercent, inspiredOxygenPercent } = conditions;
  checkAll(siteLimits, conditions, 'site');
  checkAll(limitsOfAllRows, conditions, row);
  if (inspiredOxygenPercent + nitrousOxidePercent > 100)
    throw new OutOfRangeError({
      quantity: rowLimits.nitrousOxidePercent.quantity,
      value: nitrousOxidePercent,
      unit: '%',
      allowed: `0 to ${100 - inspiredOxygenPercent} % beside ${inspiredOxygenPercent} % oxygen`,
      path: `${row}.nitrousOxidePercent`
    });
  if (technique === 'regional') return;
  if (technique === 'volatile') {
    if (agent === null)
      throw new OutOfRangeError({
        quantity: 'Agent',
        value: null,
        unit: '',
        allowed: `one of ${agents.join(', ')}`,
        path: `${row}.agent`
      });
    const why = `the published MAC formula is not valid below ${leastVolatileAgeYears} year`;
    check(volatileAgeLimit, conditions.ageYears, () => `${row}.ageYears`, why);
    check(targetLimit, conditions.targetMac ?? NaN, () => `${row}.targetMac`);
  }
  checkAll(machineLimits, conditions, `machines.${cells.machine}`);
  checkAll(absorbentLimits, conditions, `absorbents.${cells.absorbent}`);
  conditions.phases.forEach((phase, index) => {
    const place = `flowPlans.${cells.plan}.phases.${index}`;
    checkAll(limitsOfAllPhases, phase, place);
    const { vaporiser, dialPercent } = phase;
    // A fixed dial needs a setting; where the target is held, one limits the dial.
    if (vaporiser === 'dial' || (vaporiser === 'hold' && dialPercent !== null))
      check(dialLimit, dialPercent ?? NaN, () => `${place}.dialPercent`);
  });
}
