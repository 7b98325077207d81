import type { CaseGiven } from '../case/case-given.ts';
import type { CaseRow, FlowPlan, Machine } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';

const rowPart = (row: CaseRow): string =>
  `${row.minutes},${row.ageYears},${row.weightKg},${row.technique},${row.targetMac},${row.nitrousOxidePercent},${row.inspiredOxygenPercent},${row.pneumoperitoneum}`;

const planPart = (plan: FlowPlan): string =>
  plan.phases.map((p) => `${p.name},${p.minutes},${p.flowLPerMin},${p.vaporiser},${p.dialPercent}`).join(';');

const machinePart = (machine: Machine): string =>
  `${machine.circuitVolumeL},${machine.leakMlPerMin},${machine.sampleMlPerMin},${machine.sampleReturned},${machine.minimumFlowLPerMin}`;

/** Text of an object's figures, made once for each object: unchanged rows and plans keep their identity over edits. */
function once<T extends object>(make: (of: T) => string): (of: T) => string {
  const known = new WeakMap<T, string>();
  return (of) => {
    let text = known.get(of);
    if (text === undefined) {
      text = make(of);
      known.set(of, text);
    }
    return text;
  };
}

const rowText = once(rowPart);
const planText = once(planPart);
const machineText = once(machinePart);

/** A set has no text that would tell it from another, so sets are numbered as they come. */
let referenceCount = 0;
const referenceText = once<ReferenceSet>(() => `${++referenceCount}`);

/** Values by everything that a case's result depends on: cases with the same figures share one. */
export class ByCase<T> {
  /** By everything but the row, then by the row: most of a scenario's rows share a shelf. The last used comes last. */
  readonly #shelves = new Map<string, Map<string, T>>();
  readonly #limit: number;
  #size = 0;
  #last: { readonly given: CaseGiven; readonly shelf: Map<string, T> } | null = null;

  /** @param limit how many are kept; beyond, those that were not asked for longest make room for new ones. */
  constructor(limit = Infinity) {
    this.#limit = limit;
  }

  get(given: CaseGiven): T | undefined {
    return this.#shelfOf(given).get(rowText(given.row));
  }

  set(given: CaseGiven, value: T): void {
    const shelf = this.#shelfOf(given);
    this.#size -= shelf.size;
    shelf.set(rowText(given.row), value);
    this.#size += shelf.size;
    for (const [oldest, { size }] of this.#shelves) {
      if (this.#size <= this.#limit || this.#shelves.size === 1) return;
      this.#shelves.delete(oldest);
      this.#size -= size;
    }
  }

  #shelfOf(given: CaseGiven): Map<string, T> {
    const { plan, machine, agent, absorbent, site, bodyModel, reference } = given;
    const last = this.#last;
    if (
      last !== null &&
      last.given.plan === plan &&
      last.given.machine === machine &&
      last.given.agent === agent &&
      last.given.absorbent === absorbent &&
      last.given.site === site &&
      last.given.bodyModel === bodyModel &&
      last.given.reference === reference
    )
      return last.shelf;
    const key = `${referenceText(reference)}|${planText(plan)}|${machineText(machine)}|${agent}|${absorbent.capacityLPerKg}|${site.theatreTemperatureC},${site.ambientPressureKPa}|${bodyModel}`;
    const shelf = this.#shelves.get(key) ?? new Map<string, T>();
    this.#shelves.delete(key);
    this.#shelves.set(key, shelf);
    this.#last = { given, shelf };
    return shelf;
  }
}
