import { installDebianPackages } from './debian-package.mjs';
import { findProgram, starts } from './program.mjs';

const candidates = [
  'soffice',
  'libreoffice',
  '/Applications/LibreOffice.app/Contents/MacOS/soffice',
  'C:\\Program Files\\LibreOffice\\program\\soffice.exe'
];

/**
 * LibreOffice, by which a test recalculates the exported spreadsheet: the one that SOFFICE names, else one that is
 * there.
 *
 * @returns {string | null} its path
 */
export function findOffice() {
  const wanted = process.env['SOFFICE'];
  if (wanted) return starts(wanted) ? wanted : null;
  return findProgram(candidates);
}

/**
 * Finds LibreOffice or, where SOFFICE names none, installs Debian's package as root with apt.
 *
 * @returns {Promise<string | null>} its path; null where there is none to be had
 */
export async function setUpOffice() {
  const found = findOffice();
  if (found || process.env['SOFFICE']) return found;
  return (await installDebianPackages(['libreoffice-calc'])) ? findProgram(candidates) : null;
}
