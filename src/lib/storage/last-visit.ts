/** What was open last and which scenario was spoken of, remembered on this device. */
export interface LastVisit {
  /** The id of the stored workbook that was open last; null: none was, in this tab; undefined: nothing is known. */
  open(): string | null | undefined;
  setOpen(id: string | null): void;
  /** The scenario that was chosen in a workbook; null where none was. An id of null is the one that is not stored. */
  scenario(workbookId: string | null): string | null;
  setScenario(workbookId: string | null, scenarioId: string | null): void;
}

const openKey = 'vapour-ledger last open';
const scenarioKey = (workbookId: string | null): string => `vapour-ledger scenario of ${workbookId ?? ''}`;

/**
 * A browser that refuses is let be: nothing is lost but the convenience.
 * @param storages of the tab and of the browser, asked for each time: where they are refused, asking throws.
 */
export function lastVisit(storages: {
  readonly ofTab: () => Storage;
  readonly ofBrowser: () => Storage;
}): LastVisit {
  const attempt = <T>(step: () => T): T | null => {
    try {
      return step();
    } catch {
      return null;
    }
  };
  const read = (of: () => Storage, key: string) => attempt(() => of().getItem(key));
  const write = (of: () => Storage, key: string, text: string | null) =>
    attempt(() => (text === null ? of().removeItem(key) : of().setItem(key, text)));
  /** What is not stored belongs to its tab. */
  const place = (workbookId: string | null) => (workbookId === null ? storages.ofTab : storages.ofBrowser);
  return {
    open() {
      const inTab = read(storages.ofTab, openKey);
      return inTab === '' ? null : (inTab ?? read(storages.ofBrowser, openKey) ?? undefined);
    },
    setOpen(id) {
      write(storages.ofTab, openKey, id ?? '');
      write(storages.ofBrowser, openKey, id);
    },
    scenario: (workbookId) => read(place(workbookId), scenarioKey(workbookId)),
    setScenario: (workbookId, scenarioId) =>
      void write(place(workbookId), scenarioKey(workbookId), scenarioId)
  };
}
