/**
 * The steps back and forward of the open workbook. Those of this visit hold the workbook as it was; those kept from an
 * earlier one, which lie beyond them, hold what to change, and are tried when they are taken.
 */
import { changeBetween, changed, type JsonChange } from '#lib/storage/json-change.ts';
import { asManyAsKept, type KeptSteps } from '#lib/storage/kept-steps.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

type Step = { readonly workbook: Workbook } | { readonly change: JsonChange };

const mostSteps = 500;

export class UndoSteps {
  /** The last step last; the next step first. */
  #past: readonly Step[] = $state.raw([]);
  #future: readonly Step[] = $state.raw([]);

  readonly canUndo: boolean = $derived.by(() => this.#past.length > 0);
  readonly canRedo: boolean = $derived.by(() => this.#future.length > 0);

  /** Begins anew, with steps that were kept. */
  begin(kept: KeptSteps | null): void {
    this.#past = (kept?.past ?? []).map((change) => ({ change }));
    this.#future = (kept?.future ?? []).map((change) => ({ change }));
  }

  /** Another workbook is to come in place of this one. */
  add(present: Workbook): void {
    this.#past = [...this.#past.slice(-(mostSteps - 1)), { workbook: present }];
    this.#future = [];
  }

  /**
   * The workbook a step away from the present one, and the step taken; null where there is none, `unreadable` where one
   * that was kept leads to no sound workbook: it and those beyond it are dropped.
   */
  take(way: 'back' | 'forward', present: Workbook): Workbook | null | 'unreadable' {
    const step = way === 'back' ? this.#past.at(-1) : this.#future[0];
    if (step === undefined) return null;
    const workbook = 'workbook' in step ? step.workbook : soundAfter(present, step.change);
    if (way === 'back') {
      this.#past = workbook === null ? [] : this.#past.slice(0, -1);
      if (workbook !== null) this.#future = [{ workbook: present }, ...this.#future];
    } else {
      this.#future = workbook === null ? [] : this.#future.slice(1);
      if (workbook !== null) this.#past = [...this.#past, { workbook: present }];
    }
    return workbook ?? 'unreadable';
  }

  /** The steps from the present workbook as they can be kept, the nearest as far as there is room. */
  toKeep(present: Workbook): KeptSteps {
    return {
      past: [...asManyAsKept(changesFrom(present, [...this.#past].reverse()), 'past')].reverse(),
      future: asManyAsKept(changesFrom(present, this.#future), 'future')
    };
  }
}

type Known = { readonly to: Workbook; readonly change: JsonChange };
/** By the workbook that a step leads from: at the next save most steps are the same. */
const known = new WeakMap<Workbook, Known>();

function changeOnce(from: Workbook, to: Workbook): JsonChange {
  const before = known.get(from);
  if (before?.to === to) return before.change;
  const change = changeBetween(from, to) ?? { in: {} };
  known.set(from, { to, change });
  return change;
}

/** What each step changes, from the nearest on; made one by one, as many will not be asked for. */
function* changesFrom(present: Workbook, steps: readonly Step[]): Generator<JsonChange> {
  let from = present;
  for (const step of steps) {
    if ('change' in step) yield step.change;
    else {
      yield changeOnce(from, step.workbook);
      from = step.workbook;
    }
  }
}

function soundAfter(present: Workbook, change: JsonChange): Workbook | null {
  try {
    const parsed = parseWorkbook(changed(present, change));
    return parsed.kind === 'workbook' ? parsed.workbook : null;
  } catch {
    return null;
  }
}
