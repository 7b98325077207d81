import type { CaseResult } from './case/case-result.ts';
import type { Absorbent, Agent, BodyModel, CaseRow, FlowPlan, Machine, Site } from './input.ts';
import type { ReferenceSet } from './reference/reference-set.ts';

/** Everything that one case's result depends on. */
export interface CaseGiven {
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  readonly agent: Agent | null;
  readonly absorbent: Absorbent;
  readonly site: Site;
  readonly bodyModel: BodyModel;
  readonly reference: ReferenceSet;
}

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

/**
 * Results of cases by what they depend on, so that an edit computes only what it changes and identical cases are
 * computed once. Holds plain results only; kept over edits, emptied when it has grown far beyond a workbook's size.
 */
export class CaseMemo {
  /** By everything but the row, then by the row: a scenario's rows share most of what they depend on. */
  #shelves = new Map<string, Map<string, CaseResult>>();
  #size = 0;
  #reference: ReferenceSet | null = null;
  #last: { readonly given: CaseGiven; readonly shelf: Map<string, CaseResult> } | null = null;
  /** Cases that were computed, not found, since the memo was made. */
  computed = 0;

  result(given: CaseGiven, compute: (given: CaseGiven) => CaseResult): CaseResult {
    if (this.#reference !== given.reference || this.#size > 500_000) {
      this.#shelves = new Map();
      this.#size = 0;
      this.#last = null;
      this.#reference = given.reference;
    }
    const shelf = this.#shelfOf(given);
    const key = rowText(given.row);
    let result = shelf.get(key);
    if (result === undefined) {
      result = compute(given);
      this.computed++;
      this.#size++;
      shelf.set(key, result);
    }
    return result;
  }

  #shelfOf(given: CaseGiven): Map<string, CaseResult> {
    const { plan, machine, agent, absorbent, site, bodyModel } = given;
    const last = this.#last;
    if (
      last !== null &&
      last.given.plan === plan &&
      last.given.machine === machine &&
      last.given.agent === agent &&
      last.given.absorbent === absorbent &&
      last.given.site === site &&
      last.given.bodyModel === bodyModel
    )
      return last.shelf;
    const key = `${planText(plan)}|${machineText(machine)}|${agent}|${absorbent.capacityLPerKg}|${site.theatreTemperatureC},${site.ambientPressureKPa}|${bodyModel}`;
    let shelf = this.#shelves.get(key);
    if (shelf === undefined) {
      shelf = new Map();
      this.#shelves.set(key, shelf);
    }
    this.#last = { given, shelf };
    return shelf;
  }
}
