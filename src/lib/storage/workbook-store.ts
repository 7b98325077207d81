/** Named workbooks in the browser, with their history: every answer is a result, no call ever rejects. */
import type { ParsedWorkbook } from '#lib/workbook/parse-workbook.ts';
import { refuse } from '#lib/workbook/field.ts';
import { workbookFields } from '#lib/workbook/fields.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { keptVersions } from './kept-versions.ts';
import { stepsInText, stepsToText, type KeptSteps } from './kept-steps.ts';
import { randomId } from './random-id.ts';
import type { Shelf, ShelfChange, VersionHead, WorkbookHead } from './shelf.ts';
import { readWorkbookFile, tooLargeForWorkbook, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';

export type Stored<T> = { readonly kind: 'done'; readonly value: T } | StoreFailure;

export interface StoreFailure {
  readonly kind: 'failed';
  /**
   * `refused`: the browser keeps nothing for this page; `full`: no room; `missing`: no such workbook or version;
   * `conflict`: saved elsewhere since it was opened; `unreadable`: it is there, but no workbook; `title`: not allowed.
   */
  readonly reason: 'refused' | 'full' | 'missing' | 'conflict' | 'unreadable' | 'title';
  readonly sentence: string;
}

export interface OpenedWorkbook {
  readonly head: WorkbookHead;
  readonly parsed: Exclude<ParsedWorkbook, { kind: 'refused' }>;
  /** The steps of undo that were kept with it; null where there are none, `unreadable` where they cannot be read. */
  readonly steps: KeptSteps | null | 'unreadable';
}

export interface WorkbookStore {
  /** Workbooks that are not in the bin, the last saved first. */
  list(): Promise<Stored<readonly WorkbookHead[]>>;
  /** Workbooks in the bin, the last deleted first. They stay until they are removed: clocks are sometimes wrong. */
  bin(): Promise<Stored<readonly WorkbookHead[]>>;
  open(id: string): Promise<Stored<OpenedWorkbook>>;
  /** Puts a workbook away under a new id, with the steps of undo that lead to it. */
  create(workbook: Workbook, steps?: KeptSteps | null): Promise<Stored<WorkbookHead>>;
  /**
   * Saves a new version. `basedOn` is the revision that was opened or last saved: where the store has moved on since,
   * nothing is written and the reason is `conflict`. Where there is no room for the steps of undo, they are left out.
   */
  save(
    id: string,
    workbook: Workbook,
    basedOn: number,
    steps?: KeptSteps | null
  ): Promise<Stored<WorkbookHead>>;
  rename(id: string, title: string): Promise<Stored<WorkbookHead>>;
  /** A copy with a title of its own, without the history. */
  duplicate(id: string): Promise<Stored<WorkbookHead>>;
  /** Into the bin. */
  delete(id: string): Promise<Stored<WorkbookHead>>;
  /** Out of the bin. */
  undelete(id: string): Promise<Stored<WorkbookHead>>;
  /** For good, with its history: room in the browser comes of this alone. */
  remove(id: string): Promise<Stored<null>>;
  /** Removes all that lies in the bin. */
  emptyBin(): Promise<Stored<null>>;
  /** Versions that can be opened, the newest first. */
  history(id: string): Promise<Stored<readonly VersionHead[]>>;
  openVersion(id: string, revision: number): Promise<Stored<OpenedWorkbook>>;
  /** Makes an old version the newest one: what was saved in between stays in the history. */
  restore(id: string, revision: number): Promise<Stored<WorkbookHead>>;
}

/**
 * @param openShelf opens the storage; called again after it has failed
 * @param now the time of a save
 * @param newId an id that no other workbook has
 */
export function workbookStore({
  openShelf,
  now = () => new Date(),
  newId = randomId
}: {
  readonly openShelf: () => Promise<Shelf>;
  readonly now?: () => Date;
  readonly newId?: () => string;
}): WorkbookStore {
  let opening: Promise<Shelf> | null = null;

  /** Runs a step on the open shelf; what the platform throws becomes a failure with its sentence. */
  async function onShelf<T>(
    step: (shelf: Shelf) => Promise<Stored<T>>,
    attempt: 'first' | 'second' = 'first'
  ): Promise<Stored<T>> {
    try {
      opening ??= openShelf();
      return await step(await opening);
    } catch (error) {
      opening = null;
      // The browser may close a connection behind the page's back; a new one is worth one attempt.
      if (attempt === 'first' && nameOf(error) === 'InvalidStateError') return onShelf(step, 'second');
      return platformFailure(error);
    }
  }

  async function read(shelf: Shelf, id: string, revision?: number): Promise<Stored<OpenedWorkbook>> {
    const head = await shelf.head(id);
    const text = head && (await shelf.text(id, revision ?? head.revision));
    if (head === undefined || text === undefined) return missing;
    const parsed = readWorkbookFile(new TextEncoder().encode(text));
    if (parsed.kind !== 'refused') {
      const kept = revision === undefined ? await shelf.steps(id) : undefined;
      const steps =
        kept === undefined
          ? null
          : stepsInText(kept, { revision: head.revision, version: parsed.workbook.version });
      return done({ head, parsed, steps });
    }
    return {
      kind: 'failed',
      reason: 'unreadable',
      sentence: `“${head.title}” cannot be opened: ${parsed.issues[0]?.sentence ?? ''} Its history may hold a sound version.`
    };
  }

  async function write(
    shelf: Shelf,
    {
      id,
      workbook,
      before,
      steps = null
    }: { id: string; workbook: Workbook; before: WorkbookHead | null; steps?: KeptSteps | null }
  ): Promise<Stored<WorkbookHead>> {
    const bytes = writeWorkbookFile(workbook);
    const tooLarge = tooLargeForWorkbook(bytes.length);
    // What is stored has to be what can be opened again.
    if (tooLarge !== null)
      return {
        kind: 'failed',
        reason: 'refused',
        sentence: `The last changes are not saved. ${tooLarge} Undo the last change, or take rows out.`
      };
    const revision = (before?.revision ?? 0) + 1;
    const savedAt = now().toISOString();
    const all = [...(before?.versions ?? []), { revision, savedAt, title: workbook.title }];
    const versions = keptVersions(all);
    const head: WorkbookHead = { id, title: workbook.title, savedAt, revision, versions, deletedAt: null };
    const change: ShelfChange = {
      head,
      expected: before?.revision ?? null,
      text: { revision, text: new TextDecoder().decode(bytes) },
      dropped: all.filter((version) => !versions.includes(version)).map((version) => version.revision)
    };
    const kept = steps === null ? null : stepsToText(steps, { revision, version: workbook.version });
    let written: boolean;
    try {
      written = await shelf.put({ ...change, steps: kept });
    } catch (error) {
      // The workbook goes before the way back.
      if (kept === null || nameOf(error) !== 'QuotaExceededError') throw error;
      written = await shelf.put({ ...change, steps: null });
    }
    return written ? done(head) : conflict;
  }

  /** Changes a head without a new version. */
  const mark = (id: string, deletedAt: string | null) =>
    onShelf(async (shelf) => {
      const before = await shelf.head(id);
      if (before === undefined) return missing;
      const head = { ...before, deletedAt };
      const written = await shelf.put({ head, expected: before.revision, text: null, dropped: [] });
      return written ? done(head) : conflict;
    });

  const heads = (shown: (head: WorkbookHead) => string | null) =>
    onShelf(async (shelf) => {
      const rest = (await shelf.heads()).filter((head) => shown(head) !== null);
      return done(rest.sort((a, b) => (shown(b) ?? '').localeCompare(shown(a) ?? '')));
    });

  return {
    list: () => heads((head) => (head.deletedAt === null ? head.savedAt : null)),
    bin: () => heads((head) => head.deletedAt),
    open: (id) => onShelf((shelf) => read(shelf, id)),
    openVersion: (id, revision) => onShelf((shelf) => read(shelf, id, revision)),
    create: (workbook, steps = null) =>
      onShelf((shelf) => write(shelf, { id: newId(), workbook, before: null, steps })),
    save: (id, workbook, basedOn, steps = null) =>
      onShelf(async (shelf) => {
        const before = await shelf.head(id);
        if (before === undefined) return missing;
        return before.revision === basedOn ? write(shelf, { id, workbook, before, steps }) : conflict;
      }),
    rename: (id, title) =>
      onShelf(async (shelf) => {
        const sentence = refuse(workbookFields.title, title);
        if (sentence !== null) return { kind: 'failed', reason: 'title', sentence };
        const opened = await read(shelf, id);
        if (opened.kind === 'failed') return opened;
        const { head, parsed, steps } = opened.value;
        const kept = steps === 'unreadable' ? null : steps;
        return write(shelf, { id, workbook: { ...parsed.workbook, title }, before: head, steps: kept });
      }),
    duplicate: (id) =>
      onShelf(async (shelf) => {
        const opened = await read(shelf, id);
        if (opened.kind === 'failed') return opened;
        const { workbook } = opened.value.parsed;
        const taken = new Set((await shelf.heads()).map(({ title }) => title));
        return write(shelf, {
          id: newId(),
          workbook: { ...workbook, title: titleOfCopy(workbook.title, taken) },
          before: null
        });
      }),
    delete: (id) => mark(id, now().toISOString()),
    undelete: (id) => mark(id, null),
    remove: (id) =>
      onShelf(async (shelf) => {
        await shelf.remove(id);
        return done(null);
      }),
    emptyBin: () =>
      onShelf(async (shelf) => {
        for (const { id, deletedAt } of await shelf.heads()) if (deletedAt !== null) await shelf.remove(id);
        return done(null);
      }),
    history: (id) =>
      onShelf(async (shelf) => {
        const head = await shelf.head(id);
        return head === undefined ? missing : done([...head.versions].reverse());
      }),
    restore: (id, revision) =>
      onShelf(async (shelf) => {
        const opened = await read(shelf, id, revision);
        if (opened.kind === 'failed') return opened;
        return write(shelf, { id, workbook: opened.value.parsed.workbook, before: opened.value.head });
      })
  };
}

const done = <T>(value: T): Stored<T> => ({ kind: 'done', value });

const missing: StoreFailure = {
  kind: 'failed',
  reason: 'missing',
  sentence: 'This workbook or version is no longer in the browser.'
};

const conflict: StoreFailure = {
  kind: 'failed',
  reason: 'conflict',
  sentence:
    'This workbook was saved in another tab since it was opened here, so nothing was overwritten. Save your version as a copy, or open the newer one.'
};

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '');

function platformFailure(error: unknown): StoreFailure {
  switch (nameOf(error)) {
    case 'QuotaExceededError':
      return {
        kind: 'failed',
        reason: 'full',
        sentence:
          'The browser has no room left, so the last changes are not saved. Save the workbook as a file; then, under Workbooks, delete those that you no longer need and empty the bin.'
      };
    case 'VersionError':
      return {
        kind: 'failed',
        reason: 'refused',
        sentence:
          'A newer release of this program looks after the stored workbooks. Save this one as a file, then reload the page.'
      };
    default:
      return {
        kind: 'failed',
        reason: 'refused',
        sentence:
          'The browser does not let this page keep data, as in some private windows. Save the workbook as a file before you leave.'
      };
  }
}

function titleOfCopy(title: string, taken: ReadonlySet<string>): string {
  for (let copy = 1; ; copy++) {
    const ending = copy === 1 ? ' (copy)' : ` (copy ${copy})`;
    const letters = [...title];
    while (letters.join('').length + ending.length > workbookFields.title.maxLength) letters.pop();
    const candidate = letters.join('') + ending;
    if (!taken.has(candidate)) return candidate;
  }
}
