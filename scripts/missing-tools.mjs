import { findBrowser } from './browser.mjs';
import { canInstallDebianPackages } from './debian-package.mjs';
import { findOffice } from './office.mjs';

/** Where SOFFICE names one, none is installed in its place. */
const canInstallOffice = () => !process.env['SOFFICE'] && canInstallDebianPackages();

/**
 * The programs that a run of the tests would install on this computer. LibreOffice counts only where it can be
 * installed without a question; elsewhere the test that needs it is skipped, and says so.
 *
 * @param {{ office: boolean, browser: boolean }} needed
 * @param {{ findOffice: () => string | null, findBrowser: () => Promise<string | null>, canInstall: () => boolean }}
 *   [computer]
 * @returns {Promise<string[]>} for each a text that names it
 */
export async function missingTools(
  needed,
  computer = { findOffice, findBrowser, canInstall: canInstallOffice }
) {
  const missing = [];
  if (needed.office && computer.canInstall() && !computer.findOffice())
    missing.push('LibreOffice (libreoffice-calc, or let SOFFICE name one)');
  if (needed.browser && !(await computer.findBrowser()))
    missing.push('a Chromium (or let CHROMIUM_PATH name one)');
  return missing;
}
