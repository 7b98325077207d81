/** The open workbook as a file, and a file as a workbook: the sheets' way to the bytes. */
import {
  readWorkbookFile,
  tooLargeForWorkbook,
  workbookFileName,
  writeWorkbookFile
} from '#lib/files/read/workbook-file.ts';
import { carriesWorkbook, fragmentOf, workbookOfFragment } from '#lib/files/share-link.ts';
import type { ParsedWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A workbook as the file that a user keeps or shares; or why it would be one that cannot be opened again. */
export function fileOf(
  workbook: Workbook
): { readonly name: string; readonly content: Blob } | { readonly sentence: string } {
  const bytes = writeWorkbookFile(workbook) as Uint8Array<ArrayBuffer>;
  const tooLarge = tooLargeForWorkbook(bytes.length);
  if (tooLarge !== null) return { sentence: `${tooLarge} Take rows out first.` };
  return { name: workbookFileName(workbook.title), content: new Blob([bytes], { type: 'application/json' }) };
}

/** Whether a file is a table by its name: such a one is taken into a workbook, and is none. */
export const isTableFile = (name: string): boolean => /\.(csv|tsv|txt|xlsx|xlsm|xls|ods)$/i.test(name);

/** A file that a user chose, read as a workbook or refused with its issues. */
export async function workbookFrom(file: File): Promise<ParsedWorkbook> {
  // A file far too large is refused before it is read.
  const tooLarge = tooLargeForWorkbook(file.size);
  if (tooLarge !== null) return refused(tooLarge);
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    return refused(
      'The file cannot be read: it was moved, is locked by another program, or is not on this computer yet. Close what has it open, fetch it, and choose it again.'
    );
  }
  return readWorkbookFile(bytes);
}

/** A link to this page that carries a workbook; or why none can. */
export async function linkOf(
  workbook: Workbook,
  page: URL
): Promise<{ readonly link: string } | { readonly sentence: string }> {
  const made = await fragmentOf(workbook);
  return 'sentence' in made ? made : { link: `${page.origin}${page.pathname}${made.fragment}` };
}

/** The workbook that the fragment of a link carries, or what is wrong with it; null where it carries none. */
export async function workbookFromLink(fragment: string): Promise<ParsedWorkbook | null> {
  return carriesWorkbook(fragment) ? workbookOfFragment(fragment) : null;
}

const refused = (sentence: string): ParsedWorkbook => ({
  kind: 'refused',
  issues: [{ path: 'file', sentence }]
});
