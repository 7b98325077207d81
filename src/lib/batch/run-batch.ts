import { warningsOfCells } from '#lib/calc/estimate/warnings-of-cells.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explain, NoSuchFigureError } from '#lib/calc/estimate/explain.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { workingText } from '#lib/calc/working/working-text.ts';
import { tableFileName, writeTableCsv } from '#lib/files/write/csv-out.ts';
import { tableIds } from '#lib/files/tables/tables.ts';
import { readWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { cellsNotInForce, notInForceInWords } from '#lib/workbook/not-in-force.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { fileFault } from './file-fault.ts';
import { printable } from './printable.ts';

/** The world outside, so that a test can stand in for it. */
export interface BatchWorld {
  readFile(path: string): Promise<Uint8Array>;
  /** Puts a whole file in place, or leaves what was there. */
  writeFile(path: string, bytes: Uint8Array): Promise<void>;
  /** A line on standard output. */
  out(line: string): void;
  /** A line on standard error. */
  error(line: string): void;
}

const usage = `Usage: npm run --silent batch -- [options] FILE…
Prints one estimate as JSON for each workbook, one a line.
  --working PATH   print instead how one figure came about, e.g. today.perYear.cost.total
  --xlsx DIR       write each workbook, with live formulas, as a spreadsheet into DIR as well
  --csv DIR        write each grid as CSV into DIR as well
  --help           this text
A workbook that cannot be read prints nothing; its issues, and files that cannot be written, go to standard error as
“file: path: sentence”, the rest is still done, and the exit status is 2. Cells whose text is not in force are named there
too, in “warnings” and in “notInForce” of the estimate, and on the first sheet or in the last column of the other files.`;

/** Files of the batch command are written alike on every computer, whatever its language. */
const batchLocale = 'en-GB';

interface Wanted {
  readonly files: readonly string[];
  readonly working: string | null;
  readonly xlsxDir: string | null;
  readonly csvDir: string | null;
  readonly help: boolean;
}

function readArguments(args: readonly string[]): Wanted | { readonly sentence: string } {
  const files: string[] = [];
  const options = new Map<string, string | null>([
    ['--working', null],
    ['--xlsx', null],
    ['--csv', null]
  ]);
  let help = false;
  for (let index = 0; index < args.length; index++) {
    const arg = args[index] as string;
    if (arg === '--help') help = true;
    else if (options.has(arg)) {
      const value = args[++index];
      if (value === undefined || value.startsWith('--'))
        return { sentence: `${arg} needs a value after it.` };
      options.set(arg, value);
    } else if (arg.startsWith('--'))
      return { sentence: `${arg} is no option; allowed are ${[...options.keys()].join(', ')}, --help.` };
    else files.push(arg);
  }
  if (files.length === 0 && !help) return { sentence: 'No workbook was named.' };
  return {
    files,
    working: options.get('--working') ?? null,
    xlsxDir: options.get('--xlsx') ?? null,
    csvDir: options.get('--csv') ?? null,
    help
  };
}

/**
 * The batch command: estimates of workbooks, one JSON line each. What goes wrong with one workbook, a fault of this
 * program included, is said in a line and stops no other.
 * @returns the exit status: 0, or 2 where a file could not be read, estimated or written, or an argument makes no sense.
 */
export async function runBatch(args: readonly string[], outside: BatchWorld): Promise<number> {
  const world: BatchWorld = { ...outside, error: (line) => outside.error(printable(line)) };
  const wanted = readArguments(args);
  if ('sentence' in wanted) {
    world.error(wanted.sentence);
    outside.error(usage);
    return 2;
  }
  if (wanted.help) {
    world.out(usage);
    return 0;
  }
  let status = 0;
  const written = withoutOverwriting(world);
  for (const file of wanted.files) {
    try {
      const workbook = await open(file, world);
      if (workbook === null || !(await answer(file, workbook, wanted, written))) status = 2;
    } catch (error) {
      world.error(
        `${file}: workbook: it cannot be estimated, because of a fault in this program (${error instanceof Error ? error.message : String(error)}). Please report it with the file.`
      );
      status = 2;
    }
  }
  return status;
}

/** Two workbooks of one title get two files: the second is numbered. Files of earlier runs are written anew. */
function withoutOverwriting(world: BatchWorld): BatchWorld {
  const taken = new Set<string>();
  return {
    ...world,
    writeFile: (path, bytes) => {
      const dot = path.lastIndexOf('.');
      let free = path;
      for (let number = 2; taken.has(free.toLowerCase()); number++)
        free = `${path.slice(0, dot)} ${number}${path.slice(dot)}`;
      taken.add(free.toLowerCase());
      return world.writeFile(free, bytes);
    }
  };
}

async function open(file: string, world: BatchWorld): Promise<Workbook | null> {
  let bytes: Uint8Array;
  try {
    bytes = await world.readFile(file);
  } catch (error) {
    world.error(`${file}: file: it cannot be read: ${fileFault(error)}.`);
    return null;
  }
  const parsed = readWorkbookFile(bytes);
  if (parsed.kind === 'workbook') {
    for (const note of parsed.notes) world.error(`${file}: since it was saved: ${note}`);
    return parsed.workbook;
  }
  if (parsed.kind === 'unknown-reference') world.error(`${file}: referenceSet: ${parsed.sentence}`);
  else for (const { path, sentence } of parsed.issues) world.error(`${file}: ${path}: ${sentence}`);
  return null;
}

async function answer(file: string, workbook: Workbook, wanted: Wanted, world: BatchWorld): Promise<boolean> {
  const input = coreInput(workbook);
  const apart = cellsNotInForce(workbook, batchLocale);
  for (const { path, sentence } of apart) world.error(`${file}: ${path}: not in force: ${sentence}`);
  if (wanted.working !== null) {
    try {
      const said = apart.length === 0 ? '' : `\n${notInForceInWords(apart)}`;
      world.out(`${workingText(explain(input, wanted.working), input.currency)}${said}`);
      return true;
    } catch (error) {
      if (!(error instanceof NoSuchFigureError)) throw error;
      world.error(`${file}: ${wanted.working}: ${error.message}`);
      return false;
    }
  }
  const estimated = estimate(input);
  const notInForce = apart.map(({ path, text, inForce, sentence }) => ({ path, text, inForce, sentence }));
  const warnings = [...(apart.length === 0 ? [] : [notInForceInWords(apart)]), ...estimated.warnings];
  // As JSON may write any sign as an escape, the line stays the same to a program and harmless to a terminal.
  world.out(printable(JSON.stringify({ ...estimated, warnings, notInForce })));
  let isWritten = true;
  const write = async (path: string, bytes: Uint8Array): Promise<void> => {
    try {
      await world.writeFile(path, bytes);
    } catch (error) {
      world.error(`${file}: ${path}: it cannot be written: ${fileFault(error)}.`);
      isWritten = false;
    }
  };
  if (wanted.csvDir !== null)
    for (const table of tableIds)
      await write(
        `${wanted.csvDir}/${tableFileName(workbook, table)}`,
        writeTableCsv(table, workbook, batchLocale)
      );
  if (wanted.xlsxDir !== null) {
    const { writeWorkbookXlsx, xlsxFileName } = await import('#lib/files/xlsx/xlsx-out.ts');
    const bytes = await writeWorkbookXlsx({
      workbook,
      reckoning: reckon(recorder, input),
      cautions: estimated.cautions,
      warnings: warningsOfCells(input),
      workingOf,
      citation
    });
    await write(`${wanted.xlsxDir}/${xlsxFileName(workbook.title)}`, bytes);
  }
  return isWritten;
}
