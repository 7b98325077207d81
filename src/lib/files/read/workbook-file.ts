import type { ParsedWorkbook } from '#lib/workbook/parse-workbook.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { checkShape } from '#lib/workbook/workbook.ts';
import { decodeUtf8 } from './decode-utf8.ts';
import { fileName } from '../write/file-name.ts';
import { jsonFault } from './json-fault.ts';

/** The largest workbook file that is read, in bytes: 20 MB. A full workbook of 2 000 rows is about a twentieth. */
export const workbookFileLimit = 20_000_000;

/** Why so many bytes are too many for a workbook's file, read or written; null where they are not. */
export function tooLargeForWorkbook(bytes: number): string | null {
  return bytes > workbookFileLimit
    ? `The file has ${(bytes / 1e6).toFixed(1)} MB; a workbook has at most ${workbookFileLimit / 1e6} MB.`
    : null;
}

const refused = (sentence: string, place = 'file'): ParsedWorkbook => ({
  kind: 'refused',
  issues: [{ path: place, sentence }]
});

/**
 * A workbook from the bytes of its file: JSON in UTF-8, with or without a byte order mark.
 * @returns the workbook, or what is wrong: with the file (path `file`) or with a value in it. Never throws.
 */
export function readWorkbookFile(bytes: Uint8Array): ParsedWorkbook {
  const tooLarge = tooLargeForWorkbook(bytes.length);
  if (tooLarge !== null) return refused(tooLarge);
  const decoded = decodeUtf8(bytes);
  if ('sentence' in decoded)
    return refused(`${decoded.sentence} A workbook is a JSON file that this program has saved.`);
  if (decoded.text.trim() === '') return refused('The file is empty.');
  let document: unknown;
  let hasUnsafeName = false;
  try {
    document = decoded.text.includes(unsafeName)
      ? JSON.parse(decoded.text, (name: string, value: unknown) => {
          hasUnsafeName ||= name === unsafeName;
          return value;
        })
      : JSON.parse(decoded.text);
  } catch {
    return refused(faultSentence(decoded.text));
  }
  if (hasUnsafeName)
    return refused(`“${unsafeName}” was given as a name; no field, id or path is called so.`);
  return parseWorkbook(document);
}

/** A name that a copied object loses without a word, so it is met here. */
const unsafeName = '__proto__';

function faultSentence(text: string): string {
  const fault = jsonFault(text);
  if (fault === null) return 'The file is too deeply nested to be a workbook.';
  const where = `line ${fault.line}, column ${fault.column}`;
  if (fault.cutOff)
    return `The file is cut off: it ends at ${where}, where ${fault.wanted} is due. Fetch or save it again.`;
  return `The file is not a workbook: at ${where}, ${fault.found === '' ? 'nothing' : `“${fault.found}”`} was given where ${fault.wanted} is due.`;
}

/**
 * The bytes of a workbook's file: JSON in UTF-8, indented, its fields in the order of the schema, so that the same
 * workbook always gives the same bytes and two versions can be compared line by line.
 */
export function writeWorkbookFile(workbook: Workbook): Uint8Array {
  const shaped = checkShape(workbook);
  // A document that is open has passed this check; one that has not is still better saved than lost.
  const document = 'workbook' in shaped ? shaped.workbook : workbook;
  return new TextEncoder().encode(`${JSON.stringify(document, null, 2)}\n`);
}

/** The name under which a workbook is saved. */
export function workbookFileName(title: string): string {
  return fileName(title, '.json');
}
