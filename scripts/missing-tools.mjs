import { findBrowser } from './browser.mjs';
import { canInstallDebianPackages } from './debian-package.mjs';
import { findOffice } from './office.mjs';
import { findPostgres } from './postgres.mjs';

/** Where a variable names one (or says that there is none), none is installed in its place. */
const canInstallOffice = () => !process.env['SOFFICE'] && canInstallDebianPackages();
const canInstallPostgres = () => process.env['POSTGRES_BIN'] === undefined && canInstallDebianPackages();

/**
 * The programs that a run of the tests would install on this computer. LibreOffice and PostgreSQL count only where they
 * can be installed without a question; elsewhere the tests that need them are skipped, and say so.
 *
 * @param {{ office: boolean, postgres: boolean, browser: boolean }} needed
 * @param {{ findOffice: () => string | null, findPostgres: () => string | null,
 *   findBrowser: () => Promise<string | null>, canInstallOffice: () => boolean, canInstallPostgres: () => boolean }}
 *   [computer]
 * @returns {Promise<string[]>} for each a text that names it
 */
export async function missingTools(
  needed,
  computer = { findOffice, findPostgres, findBrowser, canInstallOffice, canInstallPostgres }
) {
  const missing = [];
  if (needed.office && computer.canInstallOffice() && !computer.findOffice())
    missing.push('LibreOffice (libreoffice-calc, or let SOFFICE name one)');
  if (needed.postgres && computer.canInstallPostgres() && !computer.findPostgres())
    missing.push('PostgreSQL (postgresql, or let POSTGRES_BIN name the folder of its programs)');
  if (needed.browser && !(await computer.findBrowser()))
    missing.push('a Chromium (or let CHROMIUM_PATH name one)');
  return missing;
}
