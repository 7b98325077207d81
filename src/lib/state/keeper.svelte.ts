/** Keeps the workbook on the desk in the browser: autosave, the tab that writes, and what was open last. */
import type { LastVisit } from '#lib/files/last-visit.ts';
import type { WorkbookHead } from '#lib/storage/shelf.ts';
import type { TabLock, TabLockEvents } from '#lib/storage/tab-lock.ts';
import type { UnsavedDraft, UnsavedDrafts } from '#lib/storage/unsaved-drafts.ts';
import { readWorkbookFile, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import type { OpenedWorkbook, StoreFailure, WorkbookStore } from '#lib/storage/workbook-store.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { Desk } from './desk.svelte.ts';

/** How long after the last edit a workbook is saved: within the second that is promised, with time to write. */
const restMs = 400;

const readsAlong =
  'This workbook is open for writing in another tab; here it is shown as that tab saves it and cannot be changed.';

/** What a reader of a workbook with an unknown reference set is told. */
const unknownReference = (sentence: string): string =>
  `${sentence} It is shown with the newest set and cannot be changed; Evidence can move it to that set.`;

const fileText = (workbook: Workbook): string => new TextDecoder().decode(writeWorkbookFile(workbook));

export type SaveState =
  /** The demo or an empty workbook as it came: there is nothing to save yet. */
  'untouched' | 'pending' | 'saving' | 'saved' | 'failed';

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
  #lock: TabLock | null = null;
  #saved: Workbook | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #saving: Promise<void> = Promise.resolve();
  /** The last message of a failure; null once it holds no longer. */
  #told: Desk['message'] = null;

  constructor(needs: KeeperNeeds) {
    this.#needs = needs;
    this.#desk = needs.desk;
    this.store = needs.store;
  }

  /** Brings back what was open last; the demo stays where there is none, or where it cannot be opened. */
  async start(): Promise<void> {
    this.#saved = this.#desk.workbook;
    await this.#recover();
    const id = this.#needs.lastVisit.open();
    if (id !== null) {
      const failure = await this.openStored(id);
      if (failure !== null && failure.reason !== 'missing') this.#tell(failure);
    }
    this.ready = true;
  }

  /** Saves what a page that was left could not save any more: in its workbook, or beside it where that has moved on. */
  async #recover(): Promise<void> {
    for (const draft of this.#needs.drafts.all()) {
      const parsed = readWorkbookFile(new TextEncoder().encode(draft.text));
      if (parsed.kind === 'refused') this.#needs.drafts.drop(draft.id);
      else if ((await this.#putBack(draft, parsed.workbook)) === 'done') this.#needs.drafts.drop(draft.id);
    }
  }

  async #putBack({ id, revision, text }: UnsavedDraft, workbook: Workbook): Promise<'done' | 'failed'> {
    const stored = id === null ? null : await this.store.open(id);
    if (stored?.kind === 'failed' && stored.reason !== 'missing') return 'failed';
    const there = stored?.kind === 'done' ? stored.value : null;
    if (there !== null && fileText(there.parsed.workbook) === text) return 'done';
    const result =
      there !== null && id !== null && there.head.revision === revision
        ? await this.store.save(id, workbook, revision)
        : await this.store.create(workbook);
    if (result.kind === 'failed') return 'failed';
    this.#needs.lastVisit.setOpen(result.value.id);
    return 'done';
  }

  /** The page is being left: what is not saved yet is put where that takes no time, and saved if there is any. */
  leave(): void {
    const { workbook } = this.#desk;
    if (this.ready && workbook !== this.#saved && this.#desk.readOnly === null)
      this.#needs.drafts.keep({
        id: this.head?.id ?? null,
        revision: this.head?.revision ?? null,
        text: fileText(workbook)
      });
    void this.flush();
  }

  /** Opens a stored workbook; says why where it cannot. */
  async openStored(id: string): Promise<StoreFailure | null> {
    await this.flush();
    const opened = await this.store.open(id);
    if (opened.kind === 'failed') return opened;
    await this.#take(opened.value);
    return null;
  }

  /** Opens an old version as it was: it becomes the newest version with the first edit. */
  async openVersion(id: string, revision: number): Promise<StoreFailure | null> {
    await this.flush();
    const opened = await this.store.openVersion(id, revision);
    if (opened.kind === 'failed') return opened;
    await this.#take(opened.value);
    return null;
  }

  /** Puts a workbook on the desk that is not stored yet: from a file it is stored at once, demo and blank with an edit. */
  async openFresh(workbook: Workbook, { store }: { store: boolean }): Promise<void> {
    await this.flush();
    this.#letGo();
    this.head = null;
    this.#desk.readOnly = null;
    this.#saved = store ? null : workbook;
    this.state = store ? 'pending' : 'untouched';
    this.#needs.lastVisit.setOpen(null);
    this.#desk.open(workbook);
    if (store) await this.flush();
  }

  /** Shows a workbook that names a reference set which this version does not have: read only, until it is moved. */
  async openUnknownReference(workbook: Workbook, sentence: string): Promise<void> {
    await this.openFresh(workbook, { store: false });
    this.#desk.readOnly = unknownReference(sentence);
  }

  /** Takes over the workbook moved to another reference set, as one step of undo; from then on it can be changed. */
  moveTo(workbook: Workbook): void {
    this.#desk.readOnly = null;
    this.#desk.apply(workbook);
  }

  async #take({ head, parsed }: OpenedWorkbook): Promise<void> {
    this.#letGo();
    this.#desk.open(parsed.workbook);
    this.#saved = parsed.workbook;
    this.head = head;
    this.state = 'saved';
    this.#needs.lastVisit.setOpen(head.id);
    this.#desk.readOnly = parsed.kind === 'unknown-reference' ? unknownReference(parsed.sentence) : null;
    await this.#lockUp(head.id);
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
    this.#desk.readOnly = readsAlong;
    this.canTakeOver = true;
  }

  /** Makes this tab the one that writes; the other is told and reads along. */
  async takeOver(): Promise<void> {
    const id = this.head?.id;
    if (this.#lock === null || id === undefined) return;
    await this.#lock.takeOver();
    await this.#reload(id);
    this.#desk.readOnly = null;
    this.canTakeOver = false;
  }

  async #reload(id: string): Promise<void> {
    const opened = await this.store.open(id);
    if (opened.kind === 'failed') {
      this.#tell(opened);
      return;
    }
    const { head, parsed } = opened.value;
    if (head.revision === this.head?.revision) return;
    const { readOnly, message } = this.#desk;
    this.#desk.open(parsed.workbook);
    this.#desk.readOnly = readOnly;
    this.#desk.message = message;
    this.#saved = parsed.workbook;
    this.head = head;
  }

  #letGo(): void {
    this.canTakeOver = false;
    this.#lock?.release();
    this.#lock = null;
  }

  /** To be told of each change of the workbook on the desk. */
  changed(): void {
    if (!this.ready || this.#desk.readOnly !== null || this.#desk.workbook === this.#saved) return;
    this.state = 'pending';
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.flush(), restMs);
  }

  /** Saves at once what is not saved yet. */
  flush(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#saving = this.#saving.then(() => this.#save());
    return this.#saving;
  }

  async #save(): Promise<void> {
    const { workbook } = this.#desk;
    if (workbook === this.#saved || this.#desk.readOnly !== null) return;
    this.state = 'saving';
    const { head } = this;
    const result =
      head === null
        ? await this.store.create(workbook)
        : await this.store.save(head.id, workbook, head.revision);
    if (result.kind === 'failed') {
      this.state = 'failed';
      this.#tell(result);
      return;
    }
    this.#needs.drafts.drop(head?.id ?? null);
    // What was said of a save that failed holds no longer.
    if (this.#told !== null && this.#desk.message === this.#told) this.#desk.message = null;
    this.#told = null;
    this.#saved = workbook;
    this.head = result.value;
    this.state = this.#desk.workbook === workbook ? 'saved' : 'pending';
    this.#needs.lastVisit.setOpen(result.value.id);
    if (head === null) {
      // Something is there to be kept now, so the browser is asked not to clear it when room runs short.
      void this.#needs.keepStorage();
      await this.#lockUp(result.value.id);
    } else this.#lock?.tellSaved(result.value.revision);
  }

  #tell(failure: StoreFailure): void {
    this.#told = {
      tone: 'error',
      sentence: failure.sentence,
      ...(failure.reason === 'conflict'
        ? { action: { label: 'Save mine as a copy', run: () => void this.#saveAsCopy() } }
        : {})
    };
    this.#desk.message = this.#told;
  }

  async #saveAsCopy(): Promise<void> {
    this.#letGo();
    this.head = null;
    this.#saved = null;
    this.#desk.message = null;
    await this.flush();
  }
}
