import { cpSync, mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { projectFolder } from './project-folder.mjs';

/** What is not copied: what tools make anew, and what is large. */
const left = new Set([
  'node_modules',
  '.git',
  '.cache',
  'build',
  'coverage',
  'test-results',
  'playwright-report'
]);

/**
 * A copy of the project with the same dependencies, in which sources can be changed while the project stays as it is.
 * It goes when the process ends.
 *
 * @returns {string} its folder
 */
export function copyProject() {
  const copy = realpathSync(mkdtempSync(path.join(os.tmpdir(), 'vapour-ledger-copy-')));
  const remove = () => rmSync(copy, { recursive: true, force: true });
  process.once('exit', remove);
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, () => process.exit(1));
  cpSync(projectFolder, copy, {
    recursive: true,
    filter: (source) => !left.has(path.relative(projectFolder, source))
  });
  symlinkSync(path.join(projectFolder, 'node_modules'), path.join(copy, 'node_modules'), 'junction');
  return copy;
}
