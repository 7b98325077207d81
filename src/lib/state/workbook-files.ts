/** The open workbook as a file, and a file as a workbook: the sheets' way to the bytes. */
import { readWorkbookFile, workbookFileName, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import type { ParsedWorkbook } from '#lib/workbook/parse-workbook.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A workbook as the file that a user keeps or shares. */
export function fileOf(workbook: Workbook): { readonly name: string; readonly content: Blob } {
  const bytes = writeWorkbookFile(workbook) as Uint8Array<ArrayBuffer>;
  return { name: workbookFileName(workbook.title), content: new Blob([bytes], { type: 'application/json' }) };
}

/** A file that a user chose, read as a workbook or refused with its issues. */
export async function workbookFrom(file: File): Promise<ParsedWorkbook> {
  return readWorkbookFile(new Uint8Array(await file.arrayBuffer()));
}
