/**
 * One workbook, several tabs: the first writes, the others are told and read along, and any of them may take over. The
 * store's check of the revision stands behind this: should both ever write, the later one is told, not the earlier lost.
 */

/** What one tab may do with a workbook, from opening to closing it. */
export interface TabLock {
  /** Whether this tab writes; else it reads along. */
  readonly writes: boolean;
  /**
   * Makes this tab the one that writes. The tab that did is asked to save and to let go; one that does not answer
   * within a few seconds (asleep in the background) loses its turn.
   */
  takeOver(): Promise<void>;
  /** Tells the tabs that read along that there is a newer version to show. */
  tellSaved(revision: number): void;
  /** Lets go; to be called when the workbook is closed. A closed or crashed tab lets go by itself. */
  release(): void;
}

/** What the tab is told; each may come at any time until `release`. */
export interface TabLockEvents {
  /** Another tab takes over: save what is pending, and report failures elsewhere. Once it settles this tab reads along. */
  readonly lettingGo: () => Promise<void>;
  /** This tab reads along from now on. */
  readonly readsAlong: () => void;
  /** The tab that writes has saved. */
  readonly saved: (revision: number) => void;
  /** The tab that wrote has closed the workbook: taking over is free now. */
  readonly freed: () => void;
}

export interface TabLockPlatform {
  /** null where the browser has none (pages served without encryption): tabs then ask each other. */
  readonly locks: Pick<LockManager, 'request'> | null;
  readonly channel: (name: string) => TabChannel;
}

/** A BroadcastChannel, as little as is needed of it. */
export interface TabChannel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
  close(): void;
}

type TabMessage =
  | { readonly kind: 'let-go' | 'let-go-done' | 'freed' | 'who-writes' | 'i-write' }
  | { readonly kind: 'saved'; readonly revision: number };

/** How long a tab is waited for: to say that it writes, and to save and let go. */
const answerMs = 300;
const letGoMs = 4000;

const browserPlatform = (): TabLockPlatform => ({
  locks: 'locks' in navigator ? navigator.locks : null,
  channel: (name) => new BroadcastChannel(name)
});

/** Opens a workbook in this tab: to write where no other tab does, else to read along. */
export async function tabLock(
  workbookId: string,
  events: TabLockEvents,
  { locks, channel: openChannel }: TabLockPlatform = browserPlatform()
): Promise<TabLock> {
  const name = `vapour-ledger ${workbookId}`;
  const channel = openChannel(name);
  const say = (message: TabMessage) => channel.postMessage(message);
  let writes = false;
  let takingOver: Promise<void> | null = null;
  let letLockGo: () => void = () => undefined;
  let heard: (kind: TabMessage['kind']) => void = () => undefined;

  /** Resolves to true when a message of this kind comes in, to false when none has. */
  const hear = (kind: TabMessage['kind'], withinMs: number): Promise<boolean> =>
    new Promise((resolve) => {
      const timer = setTimeout(() => resolve(false), withinMs);
      heard = (incoming) => {
        if (incoming !== kind) return;
        clearTimeout(timer);
        resolve(true);
      };
    });

  /** Takes the platform's lock and keeps it until `letLockGo`; false where another tab has it. */
  const takeLock = (manager: NonNullable<typeof locks>, options: LockOptions): Promise<boolean> =>
    new Promise((resolve) => {
      manager
        .request(name, options, (lock) => {
          resolve(lock !== null);
          return lock === null ? undefined : new Promise<void>((letGo) => (letLockGo = letGo));
        })
        // The lock was stolen: another tab waited for this one in vain.
        .catch(() => stopWriting());
    });

  function stopWriting(): void {
    letLockGo();
    if (!writes) return;
    writes = false;
    events.readsAlong();
  }

  async function takeOver(): Promise<void> {
    if (writes) return;
    const free = locks !== null && (await takeLock(locks, { ifAvailable: true }));
    if (!free) {
      say({ kind: 'let-go' });
      await hear('let-go-done', letGoMs);
      if (locks !== null) await takeLock(locks, { steal: true });
    }
    writes = true;
  }

  async function letOthersWrite(): Promise<void> {
    // A save that failed has told the user so where it failed; it must not keep the other tab waiting.
    await events.lettingGo().catch(() => undefined);
    stopWriting();
    say({ kind: 'let-go-done' });
  }

  channel.onmessage = ({ data }: MessageEvent<TabMessage>) => {
    heard(data.kind);
    switch (data.kind) {
      case 'let-go':
        if (!writes) return;
        void letOthersWrite();
        return;
      case 'who-writes':
        if (writes) say({ kind: 'i-write' });
        return;
      case 'saved':
        // Without locks two tabs may have started at once: the one that hears of the other's save steps back.
        if (writes) stopWriting();
        events.saved(data.revision);
        return;
      case 'freed':
        if (!writes) events.freed();
        return;
      case 'i-write':
      case 'let-go-done':
        // Answers: whoever asked has heard them above.
        return;
    }
  };

  if (locks !== null) writes = await takeLock(locks, { ifAvailable: true });
  else {
    say({ kind: 'who-writes' });
    writes = !(await hear('i-write', answerMs));
  }

  return {
    get writes() {
      return writes;
    },
    takeOver: () => (takingOver ??= takeOver().finally(() => (takingOver = null))),
    tellSaved: (revision) => say({ kind: 'saved', revision }),
    release() {
      if (writes) say({ kind: 'freed' });
      writes = false;
      letLockGo();
      channel.onmessage = null;
      channel.close();
    }
  };
}
