/** Keeps the workbook on the desk in the browser: autosave, the tab that writes, and what was open last. */
import { movedOnInWords } from '#lib/workbook/moved-on.ts';
import type { LastVisit } from '#lib/storage/last-visit.ts';
import type { KeptSteps } from '#lib/storage/kept-steps.ts';
import type { WorkbookHead } from '#lib/storage/shelf.ts';
import type { TabLock, TabLockEvents } from '#lib/storage/tab-lock.ts';
import type { UnsavedDraft, UnsavedDrafts } from '#lib/storage/unsaved-drafts.ts';
import { readWorkbookFile, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import type { OpenedWorkbook, Stored, StoreFailure, WorkbookStore } from '#lib/storage/workbook-store.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { Desk } from './desk.svelte.ts';

/** How long after the last edit a workbook is saved. */
const restMs = 400;
/** How long at most after the first edit, however fast one types: within the second that is promised, with time to write. */
const longestMs = 750;

const readsAlong =
  'This workbook is open for writing in another tab; here it is shown as that tab saves it and cannot be changed.';

const stepsUnreadable =
  'The steps of undo that were kept with this workbook could not be read, so they are gone. The workbook itself is whole.';

/** What a reader of a workbook with an unknown reference set is told. */
const unknownReference = (sentence: string): string =>
  `${sentence} It is shown with the newest set and cannot be changed; Evidence can move it to that set.`;

const takenOver =
  'Another tab took this workbook over before your last changes here were saved. They are still here, and can be saved as a copy.';

const fileText = (workbook: Workbook): string => new TextDecoder().decode(writeWorkbookFile(workbook));

const nobody: TabLockEvents = {
  lettingGo: async () => undefined,
  readsAlong: () => undefined,
  saved: () => undefined,
  freed: () => undefined
};

export type SaveState =
  /** The demo or an empty workbook as it came: there is nothing to save yet. */
  'untouched' | 'pending' | 'saving' | 'saved' | 'failed';

/** A workbook that could not be saved and was set aside. */
export interface SetAside {
  /** Of its draft. */
  readonly name: string;
  /** Of the stored workbook that it is a version of; null where it was not stored yet. */
  readonly id: string | null;
  readonly workbook: Workbook;
  /** ISO 8601; empty where it is not known. */
  readonly keptAt: string;
}

/** What is to lie on the desk. */
interface Placed {
  readonly workbook: Workbook;
  /** What the store knows of it; null where it is not stored yet. */
  readonly head: WorkbookHead | null;
  /** What is saved of it: the workbook itself, or nothing that counts. */
  readonly saved: Workbook | null;
  readonly state: SaveState;
  /** Why it can only be read; null where it can be changed. */
  readonly readOnly?: string | null;
  /** The steps of undo that were kept with it. */
  readonly steps?: KeptSteps | null;
}

/** What a keeper is made with. */
export interface KeeperNeeds {
  readonly desk: Desk;
  readonly store: WorkbookStore;
  readonly drafts: UnsavedDrafts;
  readonly lastVisit: LastVisit;
  /** Opens a workbook in this tab: to write where no other tab does, else to read along. */
  readonly openLock: (id: string, events: TabLockEvents) => Promise<TabLock>;
  /** Asks the browser to keep what is stored even when room runs short. */
  readonly keepStorage: () => Promise<unknown>;
  readonly now: () => Date;
  /** A name that no other draft has. */
  readonly newName: () => string;
}

export class Keeper {
  readonly store: WorkbookStore;
  readonly #needs: KeeperNeeds;
  readonly #desk: Desk;
  /** What the store knows of the open workbook; null where it is not stored yet. */
  head: WorkbookHead | null = $state.raw(null);
  state: SaveState = $state('untouched');
  /** True once what was open last is back on the desk. */
  ready: boolean = $state(false);
  /** True while another tab writes, and this one may ask to. */
  canTakeOver: boolean = $state(false);
  /** What could not be saved, the newest first, apart from what lies on the desk. */
  setAside: readonly SetAside[] = $state.raw([]);
  #lock: TabLock | null = null;
  /** The workbook on the desk as the store has it, or as it came; null where neither holds. */
  #saved: Workbook | null = $state.raw(null);
  /** Under which the workbook on the desk is set aside. */
  #draftName: string;
  /** Why the workbook can only be read, whatever other tabs do. */
  #ownReadOnly: string | null = null;
  #restTimer: ReturnType<typeof setTimeout> | undefined;
  #longestTimer: ReturnType<typeof setTimeout> | undefined;
  #saving: Promise<void> = Promise.resolve();
  /** The last message of a failure; null once it holds no longer. */
  #told: Desk['message'] = null;

  constructor(needs: KeeperNeeds) {
    this.#needs = needs;
    this.#desk = needs.desk;
    this.store = needs.store;
    this.#draftName = needs.newName();
    this.#saved = needs.desk.workbook;
  }

  get #isUnsaved(): boolean {
    return this.#desk.workbook !== this.#saved;
  }

  /** Whether changes lie here that only a copy can save, as another tab writes the workbook. */
  get holdsUnsaved(): boolean {
    return this.#desk.readOnly !== null && this.#isUnsaved;
  }

  /**
   * Brings back what was open last, with what was not saved of it; where nothing is known of a last visit (a browser
   * that was killed writes it too late), the workbook that was saved last. Else the demo stays.
   */
  async start(): Promise<void> {
    try {
      await this.#bringBack();
    } finally {
      this.ready = true;
    }
  }

  async #bringBack(): Promise<void> {
    const lastOpen = this.#needs.lastVisit.open();
    const { opened = lastOpen, left, sentence } = await this.#putDraftsBack(lastOpen);
    // What could not be put back of what was open last lies on the desk again, still not saved.
    const mine = opened === undefined ? left[0] : left.find(({ draft }) => draft.id === opened);
    if (mine !== undefined) await this.#resume(mine.draft, mine.workbook, mine.failure);
    else {
      const id = opened === undefined ? await this.#newest() : opened;
      const failure = id === null ? null : await this.#openStored(id);
      if (failure !== null && failure.reason !== 'missing') this.#tell(failure);
      if (id === null) {
        const scenario = this.#needs.lastVisit.scenario(null);
        if (scenario !== null) this.#desk.choose(scenario);
      }
    }
    const other = left.find((each) => each !== mine);
    if (sentence !== null) this.#desk.message ??= { tone: 'note', sentence };
    else if (other !== undefined)
      this.#desk.message ??= {
        tone: 'note',
        sentence: `Changes to “${other.workbook.title}” could not be saved yet: they are set aside under Workbooks.`
      };
  }

  async #newest(): Promise<string | null> {
    const list = await this.store.list();
    return list.kind === 'done' ? (list.value[0]?.id ?? null) : null;
  }

  /**
   * Saves what an earlier page could not: in its workbook, or beside it where that has moved on.
   * @returns the id under which what was open last is stored now, where that has changed; the drafts that still cannot
   *   be saved; and what the user is to be told
   */
  async #putDraftsBack(lastOpen: string | null | undefined): Promise<{
    opened?: string;
    left: readonly { draft: UnsavedDraft; workbook: Workbook; failure: StoreFailure }[];
    sentence: string | null;
  }> {
    const left: { draft: UnsavedDraft; workbook: Workbook; failure: StoreFailure }[] = [];
    let opened: string | undefined;
    let sentence: string | null = null;
    for (const draft of this.#needs.drafts.all()) {
      const workbook = workbookIn(draft);
      // What this release cannot read another one may: it stays where it is.
      if (workbook === null) continue;
      const result = await this.#putBack(draft, workbook);
      if (result === 'held') continue;
      if (result.kind === 'failed') {
        left.push({ draft, workbook, failure: result });
        continue;
      }
      this.#needs.drafts.drop(draft.name);
      if (draft.id === (lastOpen ?? null)) {
        opened ??= result.value.id;
        this.#needs.lastVisit.setOpen(opened);
      }
      if (draft.id !== null && result.value.id !== draft.id)
        sentence = `Changes to “${workbook.title}” that were not saved before are a workbook of their own now, as it was saved elsewhere since.`;
    }
    return { ...(opened === undefined ? {} : { opened }), left, sentence };
  }

  /** Stores a draft; `held` where another tab has its workbook open, and with it the draft. */
  async #putBack(
    { id, revision, text, steps }: UnsavedDraft,
    workbook: Workbook
  ): Promise<Stored<WorkbookHead> | 'held'> {
    if (id === null) return this.store.create(workbook, steps);
    // Where it is this tab's own, no other has it.
    const own = this.head?.id === id && this.#lock?.writes ? this.#lock : null;
    const lock = own ?? (await this.#needs.openLock(id, nobody));
    try {
      if (!lock.writes) return 'held';
      const stored = await this.store.open(id);
      if (stored.kind === 'failed')
        return stored.reason === 'missing' ? await this.store.create(workbook, steps) : stored;
      const { head, parsed } = stored.value;
      if (fileText(parsed.workbook) === text) return { kind: 'done', value: head };
      return head.revision === revision
        ? await this.store.save(id, workbook, revision, steps)
        : await this.store.create(workbook, steps);
    } finally {
      if (own === null) lock.release();
    }
  }

  /** Puts a draft on the desk that cannot be stored: the user goes on with it, and each edit tries again. */
  async #resume(draft: UnsavedDraft, workbook: Workbook, failure: StoreFailure): Promise<void> {
    const stored = draft.id === null ? null : await this.store.open(draft.id);
    const there = stored?.kind === 'done' ? stored.value.head : null;
    // Where the store has moved on, or cannot tell, the draft is saved beside it.
    const head = there?.revision === draft.revision ? there : null;
    await this.#place({ workbook, head, saved: null, state: 'failed', steps: draft.steps });
    // Under a name of this tab's own: the tab that kept it may still be there and write under the old one.
    if (this.#keepDraft()) this.#needs.drafts.drop(draft.name);
    this.#listSetAside();
    this.#tell(failure);
  }

  /** Opens what was set aside: saved where there is room now, else as it is. */
  async openSetAside(name: string): Promise<void> {
    if (!(await this.#makeRoom(() => this.openSetAside(name)))) return;
    const draft = this.#needs.drafts.all().find((each) => each.name === name);
    const workbook = draft && workbookIn(draft);
    if (draft === undefined || !workbook) return;
    const result = await this.#putBack(draft, workbook);
    if (result === 'held') await this.#resume(draft, workbook, inAnotherTab);
    else if (result.kind === 'failed') await this.#resume(draft, workbook, result);
    else {
      this.#needs.drafts.drop(name);
      await this.#openStored(result.value.id);
    }
  }

  /** Gives up what was set aside. */
  dropSetAside(name: string): void {
    this.#needs.drafts.drop(name);
    this.#listSetAside();
  }

  #listSetAside(): void {
    this.setAside = this.#needs.drafts.all().flatMap((draft) => {
      const workbook = draft.name === this.#draftName ? null : workbookIn(draft);
      return workbook === null ? [] : [{ name: draft.name, id: draft.id, workbook, keptAt: draft.keptAt }];
    });
  }

  /** Keeps what is not saved where that takes no time. Returns false where it is in this page alone. */
  #keepDraft(): boolean {
    const { workbook } = this.#desk;
    return (
      !this.#isUnsaved ||
      this.#needs.drafts.keep({
        name: this.#draftName,
        id: this.head?.id ?? null,
        revision: this.head?.revision ?? null,
        keptAt: this.#needs.now().toISOString(),
        text: fileText(workbook),
        steps: this.#desk.stepsToKeep()
      })
    );
  }

  /** Whether a user who leaves the page is to be asked: what could not be saved, or would be lost. */
  asksBeforeLeaving(): boolean {
    const isKept = this.#keepDraft();
    return this.#isUnsaved && (!isKept || this.state === 'failed');
  }

  /** The page is being left: what is not saved yet is kept where that takes no time, and saved if there is any. */
  leave(): void {
    if (this.ready) this.#keepDraft();
    void this.flush();
  }

  /**
   * Before another workbook comes onto the desk: saves what is not saved or, where that fails, sets it aside.
   * @param onward what the user wanted, for when he gives up what can be neither saved nor set aside
   * @returns whether there is room; if not, the desk's message asks
   */
  async #makeRoom(onward: () => Promise<unknown>): Promise<boolean> {
    await this.flush();
    if (this.#keepDraft()) return true;
    const { workbook } = this.#desk;
    this.#desk.message = {
      tone: 'error',
      sentence: `“${workbook.title}” is not saved, and this browser has no room to set it aside: save it as a file before you open another.`,
      action: {
        label: 'Open the other without saving',
        run: () => {
          this.#saved = this.#desk.workbook;
          void onward();
        }
      }
    };
    return false;
  }

  /** Opens a stored workbook; says why where it cannot. */
  async openStored(id: string): Promise<StoreFailure | null> {
    return (await this.#makeRoom(() => this.openStored(id))) ? this.#openStored(id) : unsaved;
  }

  async #openStored(id: string): Promise<StoreFailure | null> {
    return this.#take(await this.store.open(id));
  }

  /** Opens an old version as it was: it becomes the newest version with the first edit. */
  async openVersion(id: string, revision: number): Promise<StoreFailure | null> {
    if (!(await this.#makeRoom(() => this.openVersion(id, revision)))) return unsaved;
    return this.#take(await this.store.openVersion(id, revision));
  }

  /**
   * Puts a workbook on the desk that is not stored yet, and offers the way back: from a file it is stored at once, demo
   * and blank with an edit.
   */
  async openFresh(
    workbook: Workbook,
    { store, sentence, readOnly = null }: { store: boolean; sentence: string; readOnly?: string | null }
  ): Promise<void> {
    const again = () => this.openFresh(workbook, { store, sentence, readOnly });
    if (!(await this.#makeRoom(again))) return;
    const back = this.#wayBack();
    this.#needs.lastVisit.setScenario(null, null);
    this.#needs.lastVisit.setOpen(null);
    await this.#place({
      workbook,
      head: null,
      saved: store ? null : workbook,
      state: store ? 'pending' : 'untouched',
      readOnly
    });
    this.#desk.message = {
      tone: 'note',
      sentence,
      action: { label: 'Back to the one before', run: () => void back() }
    };
    if (store) await this.flush();
  }

  /** Brings what lies on the desk, saved or set aside, onto it again. */
  #wayBack(): () => Promise<unknown> {
    const { head } = this;
    const name = this.#draftName;
    const { workbook } = this.#desk;
    if (this.#isUnsaved) return () => this.openSetAside(name);
    if (head !== null) return () => this.openStored(head.id);
    return () => this.openFresh(workbook, { store: false, sentence: `“${workbook.title}”, as it was.` });
  }

  /** Shows a workbook that names a reference set which this version does not have: read only, until it is moved. */
  async openUnknownReference(workbook: Workbook, sentence: string): Promise<void> {
    await this.openFresh(workbook, {
      store: false,
      sentence: `Opened “${workbook.title}”.`,
      readOnly: unknownReference(sentence)
    });
  }

  /** Takes over the workbook moved to another reference set, as one step of undo; from then on it can be changed. */
  moveTo(workbook: Workbook): void {
    this.#ownReadOnly = null;
    this.#desk.readOnly = null;
    this.#desk.apply(workbook);
  }

  async #take(opened: Stored<OpenedWorkbook>): Promise<StoreFailure | null> {
    if (opened.kind === 'failed') return opened;
    const { head, parsed, steps } = opened.value;
    this.#needs.lastVisit.setOpen(head.id);
    await this.#place({
      workbook: parsed.workbook,
      head,
      saved: parsed.workbook,
      state: 'saved',
      steps: steps === 'unreadable' ? null : steps,
      readOnly: parsed.kind === 'unknown-reference' ? unknownReference(parsed.sentence) : null
    });
    const movedOn = parsed.kind === 'workbook' ? movedOnInWords(parsed.notes) : '';
    if (movedOn !== '') this.#desk.message = { tone: 'note', sentence: movedOn };
    else if (steps === 'unreadable') this.#desk.message = { tone: 'note', sentence: stepsUnreadable };
    const aside = this.setAside.find(({ id }) => id === head.id);
    if (aside !== undefined && !this.canTakeOver)
      this.#desk.message = {
        tone: 'note',
        sentence: 'Changes to this workbook that could not be saved were set aside.',
        action: { label: 'Open them', run: () => void this.openSetAside(aside.name) }
      };
    return null;
  }

  /** The one way in which a workbook comes onto the desk. */
  async #place({ workbook, head, saved, state, readOnly = null, steps = null }: Placed): Promise<void> {
    // A lock that is let go is not free at once: for the same workbook it stays.
    const lock = head !== null && head.id === this.head?.id ? this.#lock : null;
    if (lock === null) this.#letGo();
    this.#stopWaiting();
    this.#draftName = this.#needs.newName();
    this.head = head;
    this.#saved = saved;
    this.state = state;
    this.#ownReadOnly = readOnly;
    this.#desk.readOnly = readOnly;
    this.#desk.open(workbook, this.#needs.lastVisit.scenario(head?.id ?? null), steps);
    this.#listSetAside();
    if (lock !== null) {
      if (!lock.writes) this.#readAlong();
    } else if (head !== null) await this.#lockUp(head.id);
  }

  async #lockUp(id: string): Promise<void> {
    const lock = await this.#needs.openLock(id, {
      lettingGo: () => this.flush(),
      readsAlong: () => this.#readAlong(),
      saved: () => void this.#reload(id),
      // Nobody writes any more: this tab may, without being asked, as nothing can be overwritten.
      freed: () => void this.takeOver()
    });
    if (this.head?.id !== id) {
      lock.release();
      return;
    }
    this.#lock = lock;
    if (!lock.writes) this.#readAlong();
  }

  #readAlong(): void {
    this.#desk.readOnly = this.#isUnsaved ? takenOver : readsAlong;
    this.canTakeOver = true;
    if (!this.#isUnsaved) return;
    this.state = 'failed';
    this.#keepDraft();
  }

  /** Makes this tab the one that writes; the other is told and reads along. */
  async takeOver(): Promise<void> {
    const id = this.head?.id;
    if (this.#lock === null || id === undefined) return;
    await this.#lock.takeOver();
    await this.#reload(id);
    this.#desk.readOnly = this.#ownReadOnly;
    this.canTakeOver = false;
    // What this tab could not save before it may now, or is told that the workbook has moved on.
    await this.flush();
  }

  /** Shows what another tab has saved; what is not saved here is not given up for it. */
  async #reload(id: string): Promise<void> {
    const opened = await this.store.open(id);
    if (this.head?.id !== id) return;
    if (opened.kind === 'failed') {
      this.#tell(opened);
      return;
    }
    const { head, parsed, steps } = opened.value;
    if (head.revision === this.head.revision || this.#isUnsaved) return;
    const { message } = this.#desk;
    this.#saved = parsed.workbook;
    this.head = head;
    this.#desk.open(parsed.workbook, this.#desk.choice, steps === 'unreadable' ? null : steps);
    this.#desk.message = message;
  }

  #letGo(): void {
    this.canTakeOver = false;
    this.#lock?.release();
    this.#lock = null;
  }

  /** To be told of each change of the workbook on the desk. */
  changed(): void {
    if (!this.ready || this.#desk.readOnly !== null) return;
    if (!this.#isUnsaved) {
      // Undone to what is saved, or what was just put on the desk.
      this.#stopWaiting();
      if (this.state !== 'saving') this.#settle();
      return;
    }
    this.state = 'pending';
    clearTimeout(this.#restTimer);
    this.#restTimer = setTimeout(() => void this.flush(), restMs);
    this.#longestTimer ??= setTimeout(() => void this.flush(), longestMs);
  }

  /** To be told of each choice of a scenario, which the next visit begins with. */
  chose(): void {
    if (this.ready && this.#desk.choice !== null)
      this.#needs.lastVisit.setScenario(this.head?.id ?? null, this.#desk.choice);
  }

  #stopWaiting(): void {
    clearTimeout(this.#restTimer);
    clearTimeout(this.#longestTimer);
    this.#longestTimer = undefined;
  }

  /** Saves at once what is not saved yet. */
  flush(): Promise<void> {
    this.#stopWaiting();
    this.#saving = this.#saving.then(() => this.#save());
    return this.#saving;
  }

  async #save(): Promise<void> {
    const { workbook } = this.#desk;
    if (!this.#isUnsaved || this.#desk.readOnly !== null) return;
    this.state = 'saving';
    const { head } = this;
    const steps = this.#desk.stepsToKeep();
    const result =
      head === null
        ? await this.store.create(workbook, steps)
        : await this.store.save(head.id, workbook, head.revision, steps);
    if (result.kind === 'failed') {
      this.#fail(result);
      return;
    }
    this.#saved = workbook;
    this.head = result.value;
    if (this.#isUnsaved) this.state = 'pending';
    else this.#settle();
    this.#needs.lastVisit.setOpen(result.value.id);
    if (head === null) {
      this.chose();
      // Something is there to be kept now, so the browser is asked not to clear it when room runs short.
      void this.#needs.keepStorage();
      await this.#lockUp(result.value.id);
    } else this.#lock?.tellSaved(result.value.revision);
  }

  /** What lies on the desk is what is saved: nothing is left to keep, and what was said of a failure holds no longer. */
  #settle(): void {
    this.state = this.head === null ? 'untouched' : 'saved';
    this.#needs.drafts.drop(this.#draftName);
    if (this.#told !== null && this.#desk.message === this.#told) this.#desk.message = null;
    this.#told = null;
  }

  #fail(failure: StoreFailure): void {
    this.state = 'failed';
    this.#keepDraft();
    this.#tell(failure);
  }

  #tell(failure: StoreFailure): void {
    const label = { conflict: 'Save mine as a copy', missing: 'Keep it as a new workbook' };
    this.#told = {
      tone: 'error',
      sentence: failure.sentence,
      ...(failure.reason === 'conflict' || failure.reason === 'missing'
        ? { action: { label: label[failure.reason], run: () => void this.saveAnew() } }
        : {})
    };
    this.#desk.message = this.#told;
  }

  /** Saves what lies on the desk as a workbook of its own, which this tab writes. */
  async saveAnew(): Promise<void> {
    this.#letGo();
    this.head = null;
    this.#saved = null;
    this.#desk.readOnly = this.#ownReadOnly;
    this.#desk.message = null;
    await this.flush();
  }
}

const inAnotherTab: StoreFailure = {
  kind: 'failed',
  reason: 'conflict',
  sentence: 'This workbook is open in another tab, which may still save these changes.'
};

const unsaved: StoreFailure = {
  kind: 'failed',
  reason: 'full',
  sentence: 'The open workbook is not saved: save it as a file first.'
};

/** The workbook of a draft; null where this release cannot read it. */
function workbookIn({ text }: UnsavedDraft): Workbook | null {
  const parsed = readWorkbookFile(new TextEncoder().encode(text));
  return parsed.kind === 'refused' ? null : parsed.workbook;
}
