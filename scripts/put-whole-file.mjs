/** Files that are whole or not there: whoever reads a folder never meets half a file, even after a crash. */
import { randomUUID } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';

/**
 * Puts bytes in place as a file: written beside it first, and given its name when they are safe on the disk. On an error
 * what was there stays, and nothing is left behind.
 * @param {string} place its folders are made where they lack
 * @param {Uint8Array} bytes
 */
export async function putWholeFile(place, bytes) {
  const folder = path.dirname(place);
  await mkdir(folder, { recursive: true });
  const aside = path.join(folder, `.${randomUUID()}.part`);
  try {
    const file = await open(aside, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(aside, place);
  } catch (error) {
    await rm(aside, { force: true });
    throw error;
  }
}
