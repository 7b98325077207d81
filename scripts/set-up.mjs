import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fingerprint } from './fingerprint.mjs';
import { projectFolder, toolScript } from './project-folder.mjs';
import { runCommand } from './run-command.mjs';

/** The folder that the built app lies in. */
export const buildFolder = path.join(projectFolder, 'build');

/** What the built app is made from. */
const buildSources = [
  'src',
  'static',
  'package.json',
  'package-lock.json',
  'scripts/third-party-notices.mjs',
  'LICENSE',
  'svelte.config.js',
  'vite.config.ts'
];

// Kept in the built folder, so that it goes when the build goes; the server hands out no hidden files.
const buildStamp = path.join(buildFolder, '.built-from');

/** A step of the set-up that failed; its message says what to do. */
export class SetUpError extends Error {}

/**
 * Installs what the lock file names, unless it is there. All that is printed goes to standard error.
 *
 * @param {{ mayInstall?: boolean }} [options]
 * @throws {SetUpError} where it cannot or may not be installed
 */
export async function setUpDependencies({ mayInstall = true } = {}) {
  if (areDependenciesInstalled(projectFolder)) return;
  if (!mayInstall) {
    throw new SetUpError(
      'The dependencies of the lock file are not all installed, and --no-install was given. Run npm ci, or the ' +
        'command without --no-install.'
    );
  }
  console.error('Installing the dependencies from the lock file (once, and after each change of it) …');
  // npm names its own script to what it runs; only a direct `node scripts/…` has to find it by name.
  const npm = process.env['npm_execpath'];
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const status = npm
    ? await runCommand(process.execPath, [npm, ...args], { output: 'to-errors' })
    : await runCommand('npm', args, { output: 'to-errors', shell: process.platform === 'win32' });
  if (status !== 0) {
    throw new SetUpError(
      'The dependencies could not be installed; npm says why above. The first run needs a network connection.'
    );
  }
}

/**
 * Whether npm's own record of what it installed (written last, once all is in place) has everything that the lock
 * file names. Optional packages do not count: most of them are for other systems.
 *
 * @param {string} folder the project's
 */
export function areDependenciesInstalled(folder) {
  const record = path.join(folder, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const locked = JSON.parse(readFileSync(path.join(folder, 'package-lock.json'), 'utf8')).packages;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  return Object.entries(locked).every(
    ([place, { version, integrity, optional }]) =>
      place === '' ||
      optional ||
      (installed[place]?.version === version && installed[place]?.integrity === integrity)
  );
}

/**
 * Builds the app unless the build is there and made from the present sources. The dependencies must be installed.
 *
 * @throws {SetUpError} where it does not build
 */
export async function setUpBuild() {
  const sources = fingerprint(buildSources);
  if (existsSync(buildStamp) && readFileSync(buildStamp, 'utf8') === sources) return;
  console.error('Building the app …');
  const status = await runCommand(process.execPath, [toolScript('vite'), 'build'], { output: 'on-failure' });
  if (status !== 0) throw new SetUpError('The app could not be built; the message above says where.');
  writeFileSync(buildStamp, sources);
}

/**
 * Prints why the set-up failed and makes the process end with a failure; anything else is a defect, thrown on.
 *
 * @param {unknown} error
 */
export function reportSetUpError(error) {
  if (!(error instanceof SetUpError)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
