/** What lies on the desk: the open workbook with its history, the estimate that follows it, and what was asked of it. */
import { CaseMemo } from '#lib/calc/known-cases/case-memo.ts';
import type { CaseSources } from '#lib/calc/case/conditions.ts';
import { casesLacking } from '#lib/calc/reckoning/cases-ahead.ts';
import type { estimate } from '#lib/calc/estimate/estimate.ts';
import { ladderInOrder } from '#lib/calc/estimate/estimate.ts';
import type { Estimate, LadderStep, ScenarioEstimate } from '#lib/calc/estimate-types.ts';
import { explainer } from '#lib/calc/estimate/explain.ts';
import type { ConstantUse } from '#lib/calc/estimate/constant-uses.ts';
import { constantUses } from '#lib/calc/estimate/constant-uses.ts';
import { warningsBesideCautions } from '#lib/calc/estimate/estimate-warnings.ts';
import type { MovedFigure } from '#lib/calc/estimate/figures-of-move.ts';
import { figuresOfMove } from '#lib/calc/estimate/figures-of-move.ts';
import type {
  ChangedOrder,
  LastingCut,
  WarmingChoice,
  YearUnderChoice
} from '#lib/calc/estimate/under-every-set.ts';
import {
  changedOrders,
  explainUnder,
  lastingCut,
  underEverySet
} from '#lib/calc/estimate/under-every-set.ts';
import type { EstimateInput, Lever } from '#lib/calc/input.ts';
import type { Capacity } from '#lib/calc/fleet/capacity.ts';
import { capacityOf } from '#lib/calc/fleet/capacity.ts';
import { fleetWarnings } from '#lib/calc/fleet/fleet-warnings.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { undecidedNumber } from '#lib/numbers/undecided-number.ts';
import type { AmountsBecome } from '#lib/workbook/change-currency.ts';
import { countOfAmounts, withCurrency } from '#lib/workbook/change-currency.ts';
import { workbookFields } from '#lib/workbook/fields.ts';
import { readText } from '#lib/workbook/read-text.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { CellText, EditedWorkbook } from '#lib/workbook/edit-cells.ts';
import { editCells, keptSentences } from '#lib/workbook/edit-cells.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import type { RowsChanged } from '#lib/workbook/edit-rows.ts';
import type { NotInForce } from '#lib/workbook/not-in-force.ts';
import { cellsNotInForce } from '#lib/workbook/not-in-force.ts';
import { cellName, cellPlace } from '#lib/workbook/cell-name.ts';
import { rangeFollowedInWords } from '#lib/workbook/range-follows.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { dayOf } from '#lib/workbook/source-notes.ts';
import { offeredPair } from '#lib/workbook/warming-pairs.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { KeptSteps } from '#lib/storage/kept-steps.ts';
import type { CasesPort } from '#lib/background/cases-worker.ts';
import type { AheadRun } from '#lib/background/solve-ahead.ts';
import { solveAhead } from '#lib/background/solve-ahead.ts';
import { UndoSteps } from './undo-steps.svelte.ts';

/** A sentence for the user, until the next one or until it is dismissed. */
export interface Message {
  readonly tone: 'note' | 'error';
  readonly sentence: string;
  /** True where the grid that was written in tells it to a screen reader. */
  readonly toldByGrid?: boolean;
  /** A way back or onward, e.g. “Undo”. */
  readonly action?: { readonly label: string; readonly run: () => void };
  /** The kept cells that it is about, which the sheet names as well: it goes once all of them are in force. */
  readonly cells?: readonly string[];
}

/** Numbers of one edit that could be read in two ways; nothing is written until one is chosen. */
export interface NumberQuestion {
  /** The first of them, as it was typed, where it was to go, and how many more there are. */
  readonly text: string;
  readonly cell: string;
  readonly more: number;
  /** The first of them in either reading, as numbers are written here. */
  readonly thousands: string;
  readonly decimals: string;
  readonly answer: (reading: 'thousands' | 'decimals' | 'neither') => void;
}

/** Asked before a workbook gets another currency: what becomes of its amounts. */
export interface CurrencyQuestion {
  readonly from: string;
  readonly to: string;
  /** How many amounts other than 0 there are. */
  readonly amounts: number;
  /** Does it, or says why it was not done; null leaves the workbook as it is. */
  readonly answer: (become: AmountsBecome | null) => void;
}

/** A figure whose working is shown. */
export interface Asked {
  /** As in the estimate, or of a cell; where the figure is in neither, a name of its own. */
  readonly path: string;
  /** The workbook when it was asked: what the sheet showed then holds until it is edited. */
  readonly of: Workbook;
  /** As the sheet shows it, and how it was rounded where that is not the usual way. */
  readonly shown?: string;
  readonly rounding?: string;
  /** Whose figure it is, where its path does not tell. */
  readonly whose?: string;
  /** How it came about, where that is not for the estimate to say. */
  readonly working?: () => Working;
}

/** Cases that are solved on the page, within a frame; more are solved in workers. */
const solvedAtOnce = 500;

/** How far the cases of the last change are solved in the background. */
export interface Solving {
  readonly done: number;
  readonly of: number;
  /** True where nothing can be shown until then, as another workbook is being opened. */
  readonly opening: boolean;
}

/** What a desk is made with. */
export interface DeskNeeds {
  /** What lies on it first. */
  readonly workbook: Workbook;
  /** How numbers are read and shown, as a BCP 47 tag. */
  readonly locale: string;
  /** Where the many cases of a large workbook are solved, and how many of these are opened at once. */
  readonly openPort: () => CasesPort;
  readonly workers: number;
  /** The clock by which notes of what comes in are dated. */
  readonly now: () => Date;
  /** The core. */
  readonly estimateOf: typeof estimate;
}

export class Desk {
  #workbook: Workbook;
  #input: EstimateInput;
  #solving: Solving | null = $state.raw(null);
  locale: string;
  message: Message | null = $state.raw(null);
  /** What is asked of the user before an edit is made; null where nothing is. */
  question: NumberQuestion | null = $state.raw(null);
  currencyQuestion: CurrencyQuestion | null = $state.raw(null);
  /** The figure whose working is shown; null where none is. */
  asked: Asked | null = $state.raw(null);
  /** Why the workbook can be read but not changed, e.g. as another tab holds it; null where it can be. */
  readOnly: string | null = $state(null);
  readonly #steps = new UndoSteps();
  #chosenId: string | null = $state(null);
  #openings = $state(0);
  readonly #memo = new CaseMemo();
  readonly #needs: DeskNeeds;
  #run: AheadRun | null = null;

  constructor(needs: DeskNeeds) {
    this.#needs = needs;
    this.#workbook = $state.raw(needs.workbook);
    this.#input = $state.raw(coreInput(needs.workbook));
    this.locale = $state(needs.locale);
  }

  /** Replaced whole at each action, never written into: history and comparison rest on that. */
  get workbook(): Workbook {
    return this.#workbook;
  }

  /** What the estimate is of: the workbook or, while many cases of a change are being solved, the workbook before it. */
  get input(): EstimateInput {
    return this.#input;
  }

  /** Null where the estimate is of the workbook as it stands. */
  get solving(): Solving | null {
    return this.#solving;
  }

  readonly estimate: Estimate = $derived.by(() => this.#needs.estimateOf(this.#input, this.#memo));
  /** How a figure of the estimate came about, by its path; kept until an edit, as figures share most of their steps. */
  readonly explain: (path: string) => Working = $derived.by(() =>
    explainer(this.#input, recorder, this.#memo)
  );
  /** The published figures that act in the workbook, each with where it does; traces every kind of figure when called. */
  readonly constantUses: () => ReadonlyMap<string, readonly ConstantUse[]> = $derived.by(() => {
    const input = this.#input;
    return () => constantUses(input);
  });
  /** The year under every way to count warming, for the sheet that sets them side by side. */
  readonly underEverySet: readonly YearUnderChoice[] = $derived.by(() =>
    underEverySet(this.#input, this.#memo)
  );
  /** The orders of scenarios that depend on how warming is counted. */
  readonly changedOrders: readonly ChangedOrder[] = $derived.by(() => changedOrders(this.underEverySet));
  /** What the estimate warns of, but for what is said as a caution or a restriction. */
  readonly warnings: readonly string[] = $derived.by(() => warningsBesideCautions(this.estimate));
  /** Where the machines that come and the theatres disagree. */
  readonly fleetWarnings: readonly string[] = $derived.by(() => fleetWarnings(this.#input));
  /** How much of the staffed hours of each group of theatres its cases take. */
  readonly capacities: readonly Capacity[] = $derived.by(() => capacityOf(this.#input));
  /** Sentences of the cells whose text could not be taken, by path. */
  readonly sentences: Readonly<Record<string, string>> = $derived.by(() =>
    keptSentences(this.workbook, this.locale)
  );
  /** The cells whose text is not in force, for whatever shows a figure. */
  readonly notInForce: readonly NotInForce[] = $derived.by(() =>
    cellsNotInForce(this.workbook, this.locale, this.sentences)
  );
  get canUndo(): boolean {
    return this.#steps.canUndo;
  }

  get canRedo(): boolean {
    return this.#steps.canRedo;
  }

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

  /** The chosen scenario's levers one after the other, in an order of the reader's. */
  ladder(order: readonly Lever[]): readonly LadderStep[] {
    return ladderInOrder(this.#input, { scenarioId: this.chosenId, order, memo: this.#memo });
  }

  /** How a scenario's emissions of a year, counted otherwise, came about. */
  explainUnder(choice: WarmingChoice, scenarioId: string): Working {
    return explainUnder(this.#input, { choice, scenarioId, memo: this.#memo });
  }

  /** What a scenario's lasting cut of agents is worth, in both ways of counting. */
  lastingCut(scenarioId: string): LastingCut {
    const cut = lastingCut(plain, this.#input, { scenarioId, memo: this.#memo });
    return { asOnePulseKg: plain.value(cut.asOnePulseKg), asPulsesKg: plain.value(cut.asPulsesKg) };
  }

  explainLastingCut(scenarioId: string, figure: keyof LastingCut): Working {
    return workingOf(lastingCut(recorder, this.#input, { scenarioId, memo: this.#memo })[figure]);
  }

  /** What going over to another reference set does to the figures; every case is run twice. */
  figuresOfMove(moved: Workbook): readonly MovedFigure[] {
    return figuresOfMove(this.#input, coreInput(moved));
  }

  /** The user's choice of a scenario; null where there was none. */
  get choice(): string | null {
    return this.#chosenId;
  }

  /** How many workbooks were opened: what changed since belongs to another one where this differs. */
  get openings(): number {
    return this.#openings;
  }

  choose(scenarioId: string): void {
    this.#chosenId = scenarioId;
  }

  scenario(id: string): ScenarioEstimate {
    const found = this.estimate.scenarios.find((scenario) => scenario.id === id);
    if (found === undefined) throw new Error(`The estimate has no scenario “${id}”.`);
    return found;
  }

  /** A note for figures that come in now, from where the words say. */
  sourceFrom(text: string): SourceNote {
    return { text, date: dayOf(this.#needs.now()), grade: null };
  }

  scenarioName(id: string): string {
    return this.workbook.scenarios.find((scenario) => scenario.id === id)?.name ?? id;
  }

  /** Puts a workbook in place of the present one as one step of undo. Returns false, and says so, where it may not. */
  apply(workbook: Workbook): boolean {
    if (workbook === this.workbook) return true;
    if (this.readOnly !== null) {
      this.message = {
        tone: 'error',
        sentence: 'Nothing was changed: this workbook is shown read-only here.'
      };
      return false;
    }
    this.#steps.add(this.workbook);
    this.#put(workbook, { opening: false });
    return true;
  }

  /**
   * Puts texts into cells as one step of undo; what cannot be read stays in its cell with a sentence.
   * @param onto the workbook to write on, where rows were added for the texts in the same action
   * @param byGrid where a grid, which says itself what it could not take, is written in
   * @param byHand where the texts were typed or come from elsewhere: a number among them that could be read in two ways
   * is asked about, once for all of them, before anything is written
   * @returns false where it waits for the answer
   */
  edit(
    texts: readonly CellText[],
    onto: Workbook = this.workbook,
    { byGrid = false, byHand = false }: { readonly byGrid?: boolean; readonly byHand?: boolean } = {}
  ): boolean {
    if (byHand && this.readOnly === null && this.#asks(texts, onto, byGrid)) return false;
    this.#edit(texts, onto, byGrid);
    return true;
  }

  #asks(texts: readonly CellText[], onto: Workbook, byGrid: boolean): boolean {
    const readings = texts.map(({ path, text }) => {
      const kind = fieldAt(path)?.kind;
      return kind === 'number' || kind === 'money' ? undecidedNumber(text.trim(), this.locale) : null;
    });
    const at = readings.findIndex((read) => read !== null);
    const [first, read] = [texts[at], readings[at]];
    if (first === undefined || read === null || read === undefined) return false;
    this.question = {
      ...read,
      text: first.text,
      cell: cellName(onto, first.path),
      more: readings.filter((each) => each !== null).length - 1,
      answer: (reading) => {
        this.question = null;
        if (reading === 'neither') {
          this.message = { tone: 'note', sentence: 'Nothing was written.' };
          return;
        }
        const meant = texts.map((cell, index) => ({
          ...cell,
          text: readings[index]?.[reading] ?? cell.text
        }));
        this.#edit(meant, onto, byGrid);
      }
    };
    return true;
  }

  #edit(texts: readonly CellText[], onto: Workbook, byGrid: boolean): void {
    if (texts.length === 0 && onto === this.workbook) return;
    const [only] = texts;
    const offer =
      only !== undefined && texts.length === 1 && this.readOnly === null
        ? offeredPair(onto, only, this.locale)
        : null;
    if (offer !== null) {
      const { sentence, label } = offer;
      this.message = { tone: 'error', sentence, action: { label, run: () => void this.edit(offer.texts) } };
      return;
    }
    if (only?.path === 'currency' && this.readOnly === null && this.#asksOfCurrency(onto, only.text)) return;
    const edited = editCells(onto, texts, this.locale, this.workbook);
    if (!this.apply(edited.workbook)) return;
    this.#tell(edited, byGrid);
  }

  /** Asks what becomes of the amounts where another currency is given; false where there are none, or it is no currency. */
  #asksOfCurrency(workbook: Workbook, text: string): boolean {
    const read = readText(text, { field: workbookFields.currency, workbook, locale: this.locale });
    const amounts = countOfAmounts(workbook);
    if (!('value' in read) || read.value === workbook.currency || amounts === 0) return false;
    const to = String(read.value);
    this.currencyQuestion = {
      from: workbook.currency,
      to,
      amounts,
      answer: (become) => {
        this.currencyQuestion = null;
        if (become === null) {
          this.message = { tone: 'note', sentence: `The currency stays ${workbook.currency}.` };
          return;
        }
        const day = dayOf(this.#needs.now());
        const edited = editCells(withCurrency(workbook, { to, become, day }), [], this.locale);
        if (!this.apply(edited.workbook)) return;
        this.message = {
          tone: 'note',
          sentence: `Prices are in ${to} now; their amounts were ${become.kind === 'converted' ? `multiplied by ${become.rate}` : become.kind}.`,
          action: { label: 'Undo', run: () => this.undo() }
        };
      }
    };
    return true;
  }

  /** Says what an edit could not take, or else what went along with it. */
  #tell({ workbook, refused, followed, notesGone, inForceNow }: EditedWorkbook, byGrid: boolean): void {
    const first = refused[0];
    const along = [
      ...followed.map((each) => rangeFollowedInWords(workbook, each, this.locale)),
      ...notesGone.map(
        (path) => `The note of ${cellName(workbook, path)} told of the earlier value and is gone.`
      ),
      ...inForceNow.map((path) => `The text of ${cellName(workbook, path)} is in force now.`)
    ];
    const more = along.length > 3 ? ` And ${along.length - 3} more.` : '';
    const alongInWords = along.length === 0 ? '' : ` ${along.slice(0, 3).join(' ')}${more}`;
    if (first !== undefined) {
      const why = `${cellPlace(workbook, first.path)}: ${first.sentence}`;
      const isNew = this.notInForce.some(({ path, rowLeftOut }) => path === first.path && rowLeftOut);
      const instead = isNew
        ? 'The row is left out of every figure until it is mended.'
        : 'The last good value stays in force.';
      this.message = {
        tone: 'error',
        toldByGrid: byGrid,
        // One that was not even kept is to be read in the strip: nothing else shows it.
        ...(refused.every(({ path }) => path in workbook.keptTexts)
          ? { cells: refused.map(({ path }) => path) }
          : {}),
        sentence: `${refused.length === 1 ? why : `${refused.length} cells were not taken. The first, ${why}`} ${instead}${alongInWords}`
      };
    } else if (along.length > 0)
      this.message = {
        tone: 'note',
        sentence: alongInWords.trim(),
        action: { label: 'Undo', run: () => this.undo() }
      };
    else if (this.message?.tone === 'error') this.message = null;
  }

  /** Takes over a change of rows, or says why it was not made. Returns whether it was. */
  applyRows(changed: RowsChanged): boolean {
    if ('sentence' in changed) {
      this.message = { tone: 'error', sentence: changed.sentence };
      return false;
    }
    // What is there now may be what a kept text lacked, such as an agent on Prices.
    const edited = editCells(changed.workbook, [], this.locale);
    const isTaken = edited.inForceNow.length > 0;
    if (!this.apply(isTaken ? edited.workbook : changed.workbook)) return false;
    if (isTaken) this.#tell(edited, false);
    return true;
  }

  undo(): void {
    this.#step('back');
  }

  redo(): void {
    this.#step('forward');
  }

  #step(way: 'back' | 'forward'): void {
    const workbook = this.#steps.take(way, this.workbook);
    if (workbook === 'unreadable')
      this.message = {
        tone: 'error',
        sentence: `The ${way === 'back' ? 'earlier' : 'later'} steps that were kept with this workbook could not be read, so they are gone. The workbook is as it was.`
      };
    else if (workbook !== null) this.#put(workbook, { opening: false });
  }

  /** The steps of undo and redo, to be kept with the workbook. */
  stepsToKeep(): KeptSteps {
    return this.#steps.toKeep(this.workbook);
  }

  /** Opens another workbook, with the scenario that was chosen in it and the steps that were kept with it. */
  open(workbook: Workbook, choice: string | null = null, steps: KeptSteps | null = null): void {
    this.#openings += 1;
    this.#steps.begin(steps);
    this.#chosenId = choice;
    this.asked = null;
    this.question = null;
    this.currencyQuestion = null;
    this.message = null;
    this.#put(workbook, { opening: true });
  }

  /**
   * The estimate follows at once where few cases are new. Where many are, they are solved in the background and what is
   * shown stays until then; but not over a change of what there is to be shown.
   */
  #put(workbook: Workbook, { opening }: { opening: boolean }): void {
    const before = this.#input;
    const input = coreInput(workbook);
    const cases = this.#solving === null && !isLargeChange(before, input) ? [] : this.#casesLacking(input);
    this.#run?.cancel();
    this.#run = null;
    this.#solving = null;
    this.#workbook = workbook;
    if (this.message?.cells?.every((path) => !(path in workbook.keptTexts)) === true) this.message = null;
    const stays = hasSameEntries(before, input);
    if (cases.length <= solvedAtOnce || (!stays && !opening)) this.#input = input;
    if (cases.length <= solvedAtOnce) return;
    const show = (done: number): void => {
      this.#solving = { done, of: cases.length, opening: opening && !stays };
    };
    const run = solveAhead(
      { reference: workbook, input, cases, memo: this.#memo },
      {
        workers: this.#needs.workers,
        openPort: this.#needs.openPort,
        onProgress: (done) => {
          if (this.#run === run) show(done);
        }
      }
    );
    this.#run = run;
    show(0);
    const settle = (): void => {
      if (this.#run !== run) return;
      this.#run = null;
      this.#solving = null;
      this.#input = input;
    };
    // Whatever is still missing, the estimate solves itself.
    run.solved.then(settle, settle);
  }

  /** Has the cases of another workbook than the open one solved aside, where there are many, for an estimate to find them. */
  async solveCasesOf(workbook: Workbook, memo: CaseMemo): Promise<void> {
    const input = coreInput(workbook);
    const cases = casesLacking(input, memo);
    if (cases.length <= solvedAtOnce) return;
    const { workers, openPort } = this.#needs;
    await solveAhead(
      { reference: workbook, input, cases, memo },
      { workers, openPort, onProgress: () => undefined }
    ).solved;
  }

  /** None where the core breaks over the workbook: the estimate then says so to whoever reads it. */
  #casesLacking(input: EstimateInput): readonly CaseSources[] {
    try {
      return casesLacking(input, this.#memo);
    } catch {
      return [];
    }
  }

  /** Shows the working of a figure. */
  ask(path: string, more: Omit<Asked, 'path' | 'of'> = {}): void {
    this.asked = { path, of: this.workbook, ...more };
  }
}

/** Whether an edit may have made more new cases than are solved at once, told without looking at each. */
function isLargeChange(before: EstimateInput, after: EstimateInput): boolean {
  const { scenarios, caseMix } = after;
  if (scenarios.length * caseMix.length <= solvedAtOnce) return false;
  const changedRows = caseMix.filter((row, index) => row !== before.caseMix[index]).length;
  return (
    changedRows * scenarios.length > solvedAtOnce ||
    scenarios !== before.scenarios ||
    after.flowPlans !== before.flowPlans ||
    after.machines !== before.machines ||
    after.absorbents !== before.absorbents ||
    after.site !== before.site ||
    after.accounting !== before.accounting ||
    after.reference !== before.reference
  );
}

/** Whether the same scenarios, cases, plans and machines stand in both, in the same order. */
function hasSameEntries(before: EstimateInput, after: EstimateInput): boolean {
  const lists = ['scenarios', 'caseMix', 'flowPlans', 'machines', 'absorbents'] as const;
  return lists.every(
    (list) =>
      before[list].length === after[list].length &&
      before[list].every(({ id }, index) => id === after[list][index]?.id)
  );
}
