/** What was open last, remembered for the tab and, for the next visit, by the browser. */
export interface LastVisit {
  /** The id of the stored workbook that was open last; null where none was. */
  open(): string | null;
  setOpen(id: string | null): void;
}

const openKey = 'vapour-ledger last open';

/**
 * A browser that refuses is let be: nothing is lost but the convenience.
 * @param storages of the tab and of the browser, asked for each time: where they are refused, asking throws.
 */
export function lastVisit(storages: {
  readonly ofTab: () => Storage;
  readonly ofBrowser: () => Storage;
}): LastVisit {
  return {
    open() {
      try {
        return storages.ofTab().getItem(openKey) ?? storages.ofBrowser().getItem(openKey);
      } catch {
        return null;
      }
    },
    setOpen(id) {
      try {
        for (const storage of [storages.ofTab(), storages.ofBrowser()])
          if (id === null) storage.removeItem(openKey);
          else storage.setItem(openKey, id);
      } catch {
        // The workbook itself is in the database, or its failure is told there.
      }
    }
  };
}
