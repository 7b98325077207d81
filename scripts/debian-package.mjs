import { existsSync } from 'node:fs';
import { runCommand } from './run-command.mjs';

/** @returns {boolean} whether packages can be installed without a question: as root, on a system with apt */
export function canInstallDebianPackages() {
  return process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
}

/**
 * Installs packages where that needs no question.
 *
 * @param {readonly string[]} packages
 * @returns {Promise<boolean>} whether apt says that they are installed; false too where it cannot be used
 */
export async function installDebianPackages(packages) {
  if (!canInstallDebianPackages()) return false;
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  console.error(`Installing ${packages.join(' and ')} with apt …`);
  // Lists that are out of date may still do: only the installation decides.
  await runCommand('apt-get', ['update', '-qq'], { output: 'on-failure', env });
  const args = ['install', '-qq', '-y', '--no-install-recommends', ...packages];
  return (await runCommand('apt-get', args, { output: 'on-failure', env })) === 0;
}
