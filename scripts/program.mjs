import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';

/**
 * The first of the candidates that is there and starts. Some systems put a stub in a program's place that only says
 * how to install it, so being there is not enough.
 *
 * @param {readonly string[]} candidates names to look for on the PATH, or whole paths
 * @returns {string | null} its path
 */
export function findProgram(candidates) {
  return candidates.flatMap(placesOf).find(starts) ?? null;
}

/** @param {string} program @returns {boolean} whether it is there and can say its version */
export function starts(program) {
  if (!existsSync(program)) return false;
  // On Windows these programs open a window instead of answering.
  if (process.platform === 'win32') return true;
  return spawnSync(program, ['--version'], { stdio: 'ignore', timeout: 30_000 }).status === 0;
}

/** @param {string} candidate @returns {string[]} */
function placesOf(candidate) {
  if (path.isAbsolute(candidate)) return [candidate];
  const file = process.platform === 'win32' ? `${candidate}.exe` : candidate;
  return (process.env['PATH'] ?? '')
    .split(path.delimiter)
    .filter(Boolean)
    .map((folder) => path.join(folder, file));
}
