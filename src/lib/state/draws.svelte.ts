/** The uncertainty run of the workbook on the desk: started and cancelled by the user, its result kept over sheets. */
import type { RunSummary } from '#lib/calc/what-if/draws.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { Desk } from './desk.svelte.ts';
import type { SharedRun } from '#lib/background/draws-over-workers.ts';
import { drawOverWorkers } from '#lib/background/draws-over-workers.ts';
import type { WhatIfPort } from '#lib/background/what-if-messages.ts';

export type RunState =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'running';
      readonly done: number;
      readonly of: number;
      /** null until there is something to go by. */
      readonly secondsLeft: number | null;
    }
  | { readonly kind: 'cancelled'; readonly done: number; readonly of: number }
  | { readonly kind: 'failed'; readonly sentence: string }
  | { readonly kind: 'finished'; readonly seconds: number };

export interface RunResult {
  readonly summary: RunSummary;
  /** The workbook that was drawn from. */
  readonly workbook: Workbook;
}

/** Parts of a workbook that no figure depends on. */
const withoutFigures: readonly (keyof Workbook)[] = [
  'title',
  'keptTexts',
  'notes',
  'invented',
  'currency',
  'priceYear'
];

/** Whether two workbooks have the same figures: parts that were not edited are the same objects. */
const haveSameFigures = (a: Workbook, b: Workbook): boolean =>
  (Object.keys(b) as (keyof Workbook)[]).every((key) => withoutFigures.includes(key) || a[key] === b[key]);

export class UncertaintyRun {
  state: RunState = $state.raw({ kind: 'none' });
  /** The last finished run; kept while another one runs or was cancelled. */
  result: RunResult | null = $state.raw(null);
  readonly #desk: Desk;
  readonly #openPort: () => WhatIfPort;
  readonly #workers: number;
  #run: SharedRun | null = null;

  /** @param needs the desk whose workbook is drawn from, and how many workers share the draws. */
  constructor(needs: { readonly desk: Desk; readonly openPort: () => WhatIfPort; readonly workers: number }) {
    this.#desk = needs.desk;
    this.#openPort = needs.openPort;
    this.#workers = needs.workers;
  }

  /** True where the workbook has changed since the result was drawn. */
  readonly isStale: boolean = $derived.by(
    () => this.result !== null && !haveSameFigures(this.result.workbook, this.#desk.workbook)
  );

  start(): void {
    this.#run?.cancel();
    const { workbook } = this.#desk;
    const of = workbook.sampling.draws;
    const began = performance.now();
    const seconds = (): number => (performance.now() - began) / 1000;
    let shown = 0;
    /** When the first slice came, and how many draws it had: until then workers start and learn. */
    let first: { readonly at: number; readonly done: number } | null = null;
    this.state = { kind: 'running', done: 0, of, secondsLeft: null };
    const run = drawOverWorkers(workbook, {
      workers: this.#workers,
      openPort: this.#openPort,
      onProgress: (done) => {
        const now = seconds();
        first ??= { at: now, done };
        // Ten times a second is as much as anybody reads.
        if (this.#run !== run || (now - shown < 0.1 && done < of)) return;
        shown = now;
        const rate = (done - first.done) / (now - first.at);
        const isTelling = now - first.at > 1 || done > of / 10;
        this.state = {
          kind: 'running',
          done,
          of,
          secondsLeft: isTelling && rate > 0 ? (of - done) / rate : null
        };
      }
    });
    this.#run = run;
    run.summary.then(
      (summary) => {
        if (this.#run !== run) return;
        this.#run = null;
        this.result = { summary, workbook };
        this.state = { kind: 'finished', seconds: seconds() };
      },
      (error: unknown) => {
        if (this.#run !== run) return;
        this.#run = null;
        this.state = { kind: 'failed', sentence: error instanceof Error ? error.message : String(error) };
      }
    );
  }

  cancel(): void {
    if (this.state.kind !== 'running') return;
    this.#run?.cancel();
    this.#run = null;
    this.state = { kind: 'cancelled', done: this.state.done, of: this.state.of };
  }

  /** The band of a scenario's cumulative cash flow, for other sheets' charts; null where there is none that holds now. */
  bandOf(scenarioId: string): { readonly low: readonly number[]; readonly high: readonly number[] } | null {
    if (this.isStale) return null;
    return this.result?.summary.scenarios.find(({ id }) => id === scenarioId)?.cumulative ?? null;
  }
}
