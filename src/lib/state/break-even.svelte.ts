/** The break-even questions of a scenario, answered in a worker whenever the workbook has come to rest. */
import { coreInput } from '#lib/workbook/core-input.ts';
import { freshId } from '#lib/workbook/edit-rows.ts';
import { crossChecks } from '#lib/workbook/cross-checks.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { limits } from '#lib/workbook/workbook.ts';
import type { TurningInput } from '#lib/calc/money/turning-inputs.ts';
import type { Answer, Question, Unasked } from '#lib/calc/what-if/questions.ts';
import { explainAnswer, explainTurning } from '#lib/calc/what-if/explain-answers.ts';
import { isOwnCell, questionSubjects, withAnswer } from '#lib/calc/what-if/questions.ts';
import type { Working } from '#lib/calc/working/working.ts';
import type { Desk } from './desk.svelte.ts';
import type { Ask, WhatIfPort } from '#lib/background/what-if-messages.ts';

/** How long after the last edit the questions are asked anew. */
const restMs = 500;

/** Of which scenario, and compared with what; without `comparedWith`, with today. */
type Asked = Omit<Extract<Ask, { kind: 'questions' }>, 'kind' | 'workbook'>;

export class BreakEvenQuestions {
  /** Answers so far. */
  answers: readonly (Answer | Unasked)[] = $state.raw([]);
  /** Cells that turn the answer; null while they are looked for. */
  turning: readonly TurningInput[] | null = $state.raw(null);
  /** How many cells have been looked at, of how many. */
  lookedAt: { readonly done: number; readonly of: number } | null = $state.raw(null);
  /** True while what is shown may be out of date. */
  pending: boolean = $state(true);
  failure: string | null = $state(null);
  readonly #openPort: () => WhatIfPort;
  #port: WhatIfPort | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asked: { readonly workbook: Workbook; readonly given: Asked } | null = null;

  constructor(openPort: () => WhatIfPort) {
    this.#openPort = openPort;
  }

  /**
   * Asks about a scenario, once nothing has changed for a moment. The answers so far go at once: they are of another
   * workbook, scenario or limit than the words around them.
   */
  ask(workbook: Workbook, given: Asked): void {
    this.stop();
    this.pending = true;
    this.failure = null;
    this.answers = [];
    [this.turning, this.lookedAt] = [null, null];
    this.#asked = { workbook, given };
    this.#timer = setTimeout(() => this.#post(workbook, given), restMs);
  }

  /**
   * How an answer was found.
   * @param unit of the value that was found, e.g. `currency`, `L/min`.
   */
  explain(answer: Extract<Answer, { kind: 'found' }>, unit: string): Working {
    const { workbook, given } = this.#lastAsked();
    return explainAnswer(coreInput(workbook), answer, { discounted: given.discounted, unit });
  }

  /** How a cell that turns the answer by itself was found. */
  explainTurning(cell: TurningInput, unit: string): Working {
    const { workbook, given } = this.#lastAsked();
    return explainTurning(coreInput(workbook), cell, { ...given, unit });
  }

  #lastAsked(): { readonly workbook: Workbook; readonly given: Asked } {
    if (this.#asked === null) throw new Error('Nothing was asked, so there is no answer to explain.');
    return this.#asked;
  }

  /** Ends what is being solved. */
  stop(): void {
    clearTimeout(this.#timer);
    // A worker that is idle is kept: starting one takes longer than a question.
    if (!this.#busy) return;
    this.#port?.close();
    this.#port = null;
    this.#busy = false;
  }

  #busy = false;

  #post(workbook: Workbook, given: Asked): void {
    const port = (this.#port ??= this.#openPort());
    this.#busy = true;
    port.onreply = (reply) => {
      if (reply.kind === 'answer') {
        this.answers = [...this.answers, reply.answer];
        this.pending = this.answers.length < questionSubjects.length;
      } else if (reply.kind === 'looked-at') this.lookedAt = { done: reply.done, of: reply.of };
      else {
        this.#busy = false;
        this.pending = false;
        if (reply.kind === 'turning') this.turning = reply.cells;
      }
    };
    port.onfail = (sentence) => {
      this.#busy = false;
      this.pending = false;
      this.failure = sentence;
    };
    port.post({ kind: 'questions', workbook, ...given });
  }
}

/**
 * Takes an answer over into the workbook, as one step of undo.
 * @param names of the new scenario and of its copy of a machine or plan.
 * @returns whether it was taken over; if not, the desk's message says why.
 */
export function takeOver(
  desk: Desk,
  { question, value, names }: { question: Question; value: number; names: { scenario: string; part: string } }
): boolean {
  const { workbook } = desk;
  const list = question.path.split('.')[0];
  const isFull =
    isOwnCell(question) &&
    (workbook.scenarios.length >= limits.scenarios ||
      (list === 'machines' && workbook.machines.length >= limits.machines) ||
      (list === 'flowPlans' && workbook.flowPlans.length >= limits.flowPlans));
  const refuse = (sentence: string): boolean => {
    desk.message = { tone: 'error', sentence };
    return false;
  };
  if (isFull)
    return refuse(
      'The workbook has no room for another scenario, machine or plan: delete one that is not needed.'
    );
  const parts = list === 'machines' ? workbook.machines : workbook.flowPlans;
  const { document, scenarioId } = withAnswer(workbook, question, {
    value,
    as: {
      scenario: freshId(
        names.scenario,
        workbook.scenarios.map(({ id }) => id)
      ),
      part: freshId(
        names.part,
        parts.map(({ id }) => id)
      ),
      scenarioName: names.scenario.slice(0, 200),
      partName: names.part.slice(0, 200)
    }
  });
  const [issue] = crossChecks(document, desk.locale);
  if (issue !== undefined) return refuse(issue.sentence);
  desk.apply(document);
  desk.choose(scenarioId);
  return true;
}
