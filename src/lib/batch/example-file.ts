/** The workbook that ships beside the app as an example: the demo, as a file. */
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

export const exampleFile = (): Uint8Array => writeWorkbookFile(demoWorkbook());
