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
 * there, else Debian's package as root with apt.
 *
 * @returns {Promise<string | null>} its path; null where there is none to be had
 */
export async function setUpOffice() {
  const wanted = process.env['SOFFICE'];
  if (wanted) return starts(wanted) ? wanted : null;
  const found = findProgram(candidates);
  if (found) return found;
  return (await installDebianPackages(['libreoffice-calc'])) ? findProgram(candidates) : null;
}
