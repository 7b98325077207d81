/** The shelf in the browser's database: heads and texts apart, so that a list reads no workbook. */
import type { DBSchema } from 'idb';
import { openDB } from 'idb';
import type { Shelf, WorkbookHead } from './shelf.ts';

interface Schema extends DBSchema {
  heads: { key: string; value: WorkbookHead };
  texts: { key: [string, number]; value: string };
}

/** Where the steps of undo lie among the texts of a workbook: saves are counted from 1. */
const placeOfSteps = 0;

/** Opens the database, and makes it where it is not there yet. Rejects where the browser refuses storage. */
export async function openIndexedDbShelf(name = 'vapour-ledger'): Promise<Shelf> {
  const database = await openDB<Schema>(name, 1, {
    upgrade(db) {
      db.createObjectStore('heads', { keyPath: 'id' });
      db.createObjectStore('texts');
    },
    // A newer release in another tab waits for this connection: its upgrade goes first.
    blocking: (_current, _wanted, event) => (event.target as IDBDatabase).close()
  });
  const versionsOf = (id: string) => IDBKeyRange.bound([id, 0], [id, Infinity]);
  return {
    heads: () => database.getAll('heads'),
    head: (id) => database.get('heads', id),
    text: (id, revision) => database.get('texts', [id, revision]),
    steps: (id) => database.get('texts', [id, placeOfSteps]),
    async put({ head, expected, text, dropped, steps }) {
      // Strict: the promise waits until the data is on the disk, not merely with the system.
      const transaction = database.transaction(['heads', 'texts'], 'readwrite', { durability: 'strict' });
      const heads = transaction.objectStore('heads');
      const texts = transaction.objectStore('texts');
      const there = await heads.get(head.id);
      if ((there?.revision ?? null) !== expected) {
        await transaction.done;
        return false;
      }
      const requests: Promise<unknown>[] = [heads.put(head)];
      if (text !== null) requests.push(texts.put(text.text, [head.id, text.revision]));
      for (const revision of dropped) requests.push(texts.delete([head.id, revision]));
      if (typeof steps === 'string') requests.push(texts.put(steps, [head.id, placeOfSteps]));
      else if (steps === null) requests.push(texts.delete([head.id, placeOfSteps]));
      // One failed request fails the whole transaction, and only the transaction's error names the cause.
      void Promise.allSettled(requests);
      await transaction.done;
      return true;
    },
    async remove(id) {
      const transaction = database.transaction(['heads', 'texts'], 'readwrite');
      await Promise.all([
        transaction.objectStore('heads').delete(id),
        transaction.objectStore('texts').delete(versionsOf(id)),
        transaction.done
      ]);
    }
  };
}

/**
 * Asks the browser to keep what is stored even when room runs short. To be called once something was saved; some
 * browsers ask the user.
 * @returns whether it is kept
 */
export async function keepStorage(): Promise<boolean> {
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist());
  } catch {
    return false;
  }
}
