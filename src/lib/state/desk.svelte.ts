/** What lies on the desk: the open workbook with its history, the estimate that follows it, and what was asked of it. */
import { CaseMemo } from '#lib/calc/case-memo.ts';
import { estimate } from '#lib/calc/estimate.ts';
import type { Estimate, ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import type { EstimateInput } from '#lib/calc/input.ts';
import { defaultLocale } from '#lib/numbers/locale-marks.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { CellText } from '#lib/workbook/edit-cells.ts';
import { editCells, keptSentences } from '#lib/workbook/edit-cells.ts';
import type { RowsChanged } from '#lib/workbook/edit-rows.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A sentence for the user, until the next one or until it is dismissed. */
export interface Message {
  readonly tone: 'note' | 'error';
  readonly sentence: string;
  /** A way back or onward, e.g. “Undo”. */
  readonly action?: { readonly label: string; readonly run: () => void };
}

const undoSteps = 500;

export class Desk {
  /** Replaced whole at each action, never written into: history and comparison rest on that. */
  workbook: Workbook = $state.raw(demoWorkbook());
  locale: string = $state(defaultLocale());
  message: Message | null = $state.raw(null);
  /** Path of the figure whose working is shown; null where none is. */
  asked: string | null = $state(null);
  /** Why the workbook can be read but not changed, e.g. as another tab holds it; null where it can be. */
  readOnly: string | null = $state(null);
  #past: readonly Workbook[] = $state.raw([]);
  #future: readonly Workbook[] = $state.raw([]);
  #chosenId: string | null = $state(null);
  readonly #memo = new CaseMemo();

  readonly input: EstimateInput = $derived(coreInput(this.workbook));
  readonly estimate: Estimate = $derived(estimate(this.input, this.#memo));
  /** Sentences of the cells whose text could not be taken, by path. */
  readonly sentences: Readonly<Record<string, string>> = $derived(keptSentences(this.workbook, this.locale));
  readonly canUndo: boolean = $derived(this.#past.length > 0);
  readonly canRedo: boolean = $derived(this.#future.length > 0);

  readonly baselineId: string = $derived(
    this.workbook.scenarios.find((scenario) => scenario.baseline)?.id ?? ''
  );
  /** The scenario that the bottom line speaks of: the user's choice, else the last one that is not today. */
  readonly chosenId: string = $derived.by(() => {
    const others = this.workbook.scenarios.filter((scenario) => !scenario.baseline);
    return (
      others.find((scenario) => scenario.id === this.#chosenId)?.id ?? others.at(-1)?.id ?? this.baselineId
    );
  });
  readonly today: ScenarioEstimate = $derived(this.scenario(this.baselineId));
  readonly chosen: ScenarioEstimate = $derived(this.scenario(this.chosenId));

  choose(scenarioId: string): void {
    this.#chosenId = scenarioId;
  }

  scenario(id: string): ScenarioEstimate {
    const found = this.estimate.scenarios.find((scenario) => scenario.id === id);
    if (found === undefined) throw new Error(`The estimate has no scenario “${id}”.`);
    return found;
  }

  scenarioName(id: string): string {
    return this.workbook.scenarios.find((scenario) => scenario.id === id)?.name ?? id;
  }

  /** Puts a workbook in place of the present one as one step of undo. */
  apply(workbook: Workbook): void {
    if (workbook === this.workbook) return;
    if (this.readOnly !== null) {
      this.message = {
        tone: 'error',
        sentence: 'Nothing was changed: this workbook is shown read-only here.'
      };
      return;
    }
    this.#past = [...this.#past.slice(-(undoSteps - 1)), this.workbook];
    this.#future = [];
    this.workbook = workbook;
  }

  /**
   * Puts texts into cells as one step of undo; what cannot be read stays in its cell with a sentence.
   * @param onto the workbook to write on, where rows were added for the texts in the same action
   */
  edit(texts: readonly CellText[], onto: Workbook = this.workbook): void {
    if (texts.length === 0 && onto === this.workbook) return;
    const { workbook, refused } = editCells(onto, texts, this.locale);
    this.apply(workbook);
    const first = refused[0];
    if (first !== undefined)
      this.message = {
        tone: 'error',
        sentence:
          refused.length === 1
            ? `${first.sentence} The last good value stays in force.`
            : `${refused.length} of ${texts.length} cells could not be taken and keep their text; the last good values stay in force. The first: ${first.sentence}`
      };
    else if (this.message?.tone === 'error') this.message = null;
  }

  /** Takes over a change of rows, or says why it was not made. Returns whether it was. */
  applyRows(changed: RowsChanged): boolean {
    if ('sentence' in changed) {
      this.message = { tone: 'error', sentence: changed.sentence };
      return false;
    }
    this.apply(changed.workbook);
    return true;
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (before === undefined) return;
    this.#future = [this.workbook, ...this.#future];
    this.#past = this.#past.slice(0, -1);
    this.workbook = before;
  }

  redo(): void {
    const [after, ...rest] = this.#future;
    if (after === undefined) return;
    this.#past = [...this.#past, this.workbook];
    this.#future = rest;
    this.workbook = after;
  }

  /** Opens another workbook: its own history begins. */
  open(workbook: Workbook): void {
    this.#past = [];
    this.#future = [];
    this.#chosenId = null;
    this.asked = null;
    this.message = null;
    this.workbook = workbook;
  }

  /** Shows the working of a figure. */
  ask(path: string): void {
    this.asked = path;
  }
}

export const desk = new Desk();
