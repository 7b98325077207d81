import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that the project lies in, so that every command works from anywhere. */
export const projectFolder = fileURLToPath(new URL('..', import.meta.url));

/**
 * The script behind an installed tool's command. Run with Node itself it needs no shell, on no system.
 *
 * @param {string} packageName
 * @param {string} [command] where it differs from the package's name
 */
export function toolScript(packageName, command = packageName) {
  const folder = path.join(projectFolder, 'node_modules', packageName);
  const { bin } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  return path.join(folder, typeof bin === 'string' ? bin : bin[command]);
}
