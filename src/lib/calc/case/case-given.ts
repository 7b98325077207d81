/** What one case is estimated from, and the check that it can be. */
import type { Absorbent, Agent, BodyModel, CaseRow, FlowPlan, Machine, Phase, Site } from '../input.ts';
import { agents } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { OutOfRangeError } from './out-of-range-error.ts';

/** A case on a plan and a machine, at a site. */
export interface CaseGiven {
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  /** The agent given, a scenario's switch applied; null where the technique is not volatile. */
  readonly agent: Agent | null;
  readonly absorbent: Absorbent;
  readonly site: Site;
  readonly bodyModel: BodyModel;
  readonly reference: ReferenceSet;
}

/** What the model asks of one quantity. `read` gives NaN where a value is needed and missing, null where none is needed. */
interface Bound<T> {
  readonly field: string;
  readonly quantity: string;
  readonly unit: string;
  readonly read: (of: T) => number | null;
  readonly from: number;
  readonly to: number;
  /** True where `from` itself is not allowed. */
  readonly above?: true;
  /** True where `to` itself is not allowed. */
  readonly below?: true;
  readonly why?: string;
}

const ofSite: readonly Bound<Site>[] = [
  {
    field: 'ambientPressureKPa',
    quantity: 'Ambient pressure',
    unit: 'kPa',
    read: (site) => site.ambientPressureKPa,
    from: 50,
    to: 110
  },
  {
    field: 'theatreTemperatureC',
    quantity: 'Theatre temperature',
    unit: '°C',
    read: (site) => site.theatreTemperatureC,
    from: 10,
    to: 35
  }
];

const ofRow: readonly Bound<CaseRow>[] = [
  {
    field: 'minutes',
    quantity: 'Minutes',
    unit: 'min',
    read: (row) => row.minutes,
    from: 0,
    above: true,
    to: 1440
  },
  { field: 'weightKg', quantity: 'Weight', unit: 'kg', read: (row) => row.weightKg, from: 1, to: 300 },
  {
    field: 'inspiredOxygenPercent',
    quantity: 'Inspired oxygen',
    unit: '%',
    read: (row) => row.inspiredOxygenPercent,
    from: 21,
    to: 100
  },
  {
    field: 'nitrousOxidePercent',
    quantity: 'Nitrous oxide',
    unit: '%',
    read: (row) => row.nitrousOxidePercent,
    from: 0,
    to: 79
  }
];

const ofVolatileRow: readonly Bound<CaseRow>[] = [
  {
    field: 'ageYears',
    quantity: 'Age',
    unit: 'years',
    read: (row) => row.ageYears,
    from: 1,
    to: 120,
    why: 'the published MAC formula is not valid below 1 year'
  },
  {
    field: 'targetMac',
    quantity: 'Target',
    unit: 'MAC',
    read: (row) => row.targetMac ?? NaN,
    from: 0,
    above: true,
    to: 3
  }
];

const ofMachine: readonly Bound<Machine>[] = [
  {
    field: 'circuitVolumeL',
    quantity: 'Circuit volume',
    unit: 'L',
    read: (machine) => machine.circuitVolumeL,
    from: 0.5,
    to: 30
  },
  {
    field: 'leakMlPerMin',
    quantity: 'Leak',
    unit: 'mL/min',
    read: (machine) => machine.leakMlPerMin,
    from: 0,
    to: 5000
  },
  {
    field: 'sampleMlPerMin',
    quantity: 'Gas sample',
    unit: 'mL/min',
    read: (machine) => machine.sampleMlPerMin,
    from: 0,
    to: 1000
  },
  {
    field: 'minimumFlowLPerMin',
    quantity: 'Least flow of the machine',
    unit: 'L/min',
    read: (machine) => machine.minimumFlowLPerMin,
    from: 0,
    to: 10
  }
];

const ofAbsorbent: readonly Bound<Absorbent>[] = [
  {
    field: 'capacityLPerKg',
    quantity: 'Absorbent capacity',
    unit: 'L/kg',
    read: (absorbent) => absorbent.capacityLPerKg,
    from: 1,
    to: 400
  }
];

const ofPhase: readonly Bound<Phase>[] = [
  {
    field: 'flowLPerMin',
    quantity: 'Fresh gas flow',
    unit: 'L/min',
    read: (phase) => phase.flowLPerMin,
    from: 0,
    above: true,
    to: 20
  },
  {
    field: 'minutes',
    quantity: 'Minutes of a phase',
    unit: 'min',
    read: (phase) => phase.minutes,
    from: 0,
    to: 1440
  },
  {
    field: 'dialPercent',
    quantity: 'Dial',
    unit: '%',
    read: ({ vaporiser, dialPercent }) =>
      vaporiser === 'dial' ? (dialPercent ?? NaN) : vaporiser === 'hold' ? dialPercent : null,
    from: 0,
    above: true,
    to: 100,
    below: true
  }
];

function check<T>(bounds: readonly Bound<T>[], of: T, ...place: readonly string[]): void {
  for (const bound of bounds) {
    const value = bound.read(of);
    const { from, to } = bound;
    if (value === null) continue;
    if (value >= from && value <= to && !(bound.above && value === from) && !(bound.below && value === to))
      continue;
    const allowed = `${bound.above ? 'above ' : ''}${from} to ${bound.below ? 'below ' : ''}${to}`;
    const unit = bound.unit === '' ? '' : ` ${bound.unit}`;
    throw new OutOfRangeError({
      quantity: bound.quantity,
      value: Number.isNaN(value) ? null : value,
      unit: bound.unit,
      allowed: `${allowed}${unit}${bound.why === undefined ? '' : `; ${bound.why}`}`,
      path: [...place, bound.field].join('.')
    });
  }
}

/**
 * Checks everything that the model needs to be within bounds.
 * @throws OutOfRangeError naming the quantity, the value, what is allowed and the cell.
 */
export function checkCase({ row, plan, machine, agent, absorbent, site }: CaseGiven): void {
  check(ofSite, site, 'site');
  check(ofRow, row, 'caseMix', row.id);
  if (row.inspiredOxygenPercent + row.nitrousOxidePercent > 100)
    throw new OutOfRangeError({
      quantity: 'Nitrous oxide',
      value: row.nitrousOxidePercent,
      unit: '%',
      allowed: `0 to ${100 - row.inspiredOxygenPercent} % beside ${row.inspiredOxygenPercent} % oxygen`,
      path: `caseMix.${row.id}.nitrousOxidePercent`
    });
  if (row.technique === 'regional') return;
  if (row.technique === 'volatile') {
    if (agent === null)
      throw new OutOfRangeError({
        quantity: 'Agent',
        value: null,
        unit: '',
        allowed: `one of ${agents.join(', ')}`,
        path: `caseMix.${row.id}.agent`
      });
    check(ofVolatileRow, row, 'caseMix', row.id);
  }
  check(ofMachine, machine, 'machines', machine.id);
  check(ofAbsorbent, absorbent, 'absorbents', absorbent.id);
  for (let i = 0; i < plan.phases.length; i++)
    check(ofPhase, plan.phases[i]!, 'flowPlans', plan.id, 'phases', String(i));
}
