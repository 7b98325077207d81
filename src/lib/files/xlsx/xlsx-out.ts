/**
 * The whole workbook as a spreadsheet with live formulas, for whoever checks and changes the figures there. To be loaded
 * when it is asked for (`await import`): the library behind it is larger than the rest of a page.
 */
import type { Caution } from '#lib/calc/estimate-types.ts';
import type { Source } from '#lib/calc/reference/constant.ts';
import { cellsNotInForce, countOfNotInForce } from '#lib/workbook/not-in-force.ts';
import { rowsInForce } from '#lib/workbook/rows-in-force.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellReader } from '#lib/workbook/cell-reader.ts';
import { fileName } from '../write/file-name.ts';
import { entryNameReader } from '../tables/table-cells.ts';
import { FormulaSheets } from './formula-sheets.ts';
import { inputSheets } from './input-sheets.ts';
import type { RecordedReckoning } from './ledger-sheets.ts';
import { ledgerSheets } from './ledger-sheets.ts';
import { isFixedInSpreadsheet } from './fixed-cells.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { writeSheets } from './write-sheets.ts';

export interface XlsxGiven extends RecordedReckoning {
  readonly workbook: Workbook;
  /** Of the estimate: they stand on the first sheet and on “Results”. */
  readonly cautions: readonly Caution[];
  /** What else a reader must know of the machines that come, on the first sheet. */
  readonly warnings: readonly string[];
  /** A source in one line. */
  readonly citation: (source: Source) => string;
}

/**
 * The bytes of an XLSX file: inputs on sheets of their own, each case's use as values of the circle-system model, and
 * everything after them (the year, cost, emissions, cash flow, payback) as formulas that hold the tool's results until
 * they are recalculated.
 */
export async function writeWorkbookXlsx(given: XlsxGiven): Promise<Uint8Array> {
  return writeSheets(workbookSheets(given), {
    title: given.workbook.title,
    invented: given.workbook.invented
  });
}

/** The name under which the spreadsheet is saved. */
export function xlsxFileName(title: string): string {
  return fileName(title, '.xlsx');
}

/** The sheets, in the order in which they stand. */
export function workbookSheets({
  workbook: given,
  citation,
  cautions,
  warnings,
  ...recorded
}: XlsxGiven): readonly Sheet[] {
  // Only what the figures rest on stands in a spreadsheet: a row that takes part in nothing is named on the first sheet.
  const workbook = rowsInForce(given);
  const inputs = inputSheets(workbook);
  const formulas = new FormulaSheets({
    inputAddresses: inputs.addresses,
    inputValue: cellReader(workbook),
    nameOf: entryNameReader(workbook),
    citation,
    currency: workbook.currency
  });
  const ledger = ledgerSheets(workbook, { ...recorded, cautions }, formulas);
  const baseline = workbook.scenarios.find((scenario) => scenario.baseline)?.id ?? '';
  const follows = (path: string): boolean => formulas.follows(path) && !isFixedInSpreadsheet(path, baseline);
  return [
    readMe(given, { cautions, warnings }),
    ...ledger,
    ...inputs.sheets(follows),
    ...formulas.sheets(follows)
  ];
}

const note = (text: string): SheetCell => ({ kind: 'text', text, look: 'note' });
function readMe(workbook: Workbook, { cautions, warnings }: Pick<XlsxGiven, 'cautions' | 'warnings'>): Sheet {
  // The file is written alike on every computer, whatever its language.
  const apart = cellsNotInForce(workbook, 'en-GB');
  const sentences = [
    ...(apart.length === 0
      ? []
      : [
          `${countOfNotInForce(apart)} in the tool: what was typed there could not be taken, and no figure rests on it.`,
          ...apart.map(({ sentence }) => `Not in force: ${sentence}`)
        ]),
    ...(workbook.invented
      ? [
          'Every figure in this workbook is invented: it shows what the tool does and is evidence for nothing.'
        ]
      : []),
    ...cautions.map((caution) => `Caution: ${caution.sentence} (${caution.source})`),
    ...warnings,
    'Planning support for a purchase, not clinical guidance: it is no dosing aid. Local policy, the manufacturer’s instructions, the law and the responsible clinician come first, and monitoring standards differ by country.',
    'Tinted cells are those from which the results follow: change one, and every formula that depends on it is computed anew. Each has a name of its own in formulas, such as input.accounting.discountRatePercent.',
    'Grey cells are fixed at what they were when the file was saved, and locked, without a password: each row says which they are. Where one is changed all the same, the check at the end of its row counts it and the check at the head of its sheet turns red, because the results do not follow.',
    'Sheet “Cases” holds what one anaesthetic of each group uses, as values: they come from the tool’s circle-system model, which a spreadsheet cannot run. Change minutes, age, weight, technique, agent, flows or a machine’s leak in the tool, and save the file again.',
    'Everything after that is formulas: “Year” adds up the cases, prices them and counts their emissions; “Cash flow” compares each scenario with today year by year; “Results” sums it up, and “Charts” draws it. “Steps” has one row for each step in between, in words and as a formula.',
    'Fixed, among others, and to be changed in the tool: which cases follow a scenario’s plan where its adoption is 100 %, price growth that is 0, in which years machines are bought and replaced, whether they come to all theatres or to a part, how many monitors are missing, and the number of years.',
    'All sums are cash. A carbon price and the value of recovery minutes stand beside them, and together with the cash they make the social view: nobody is billed for either.',
    '“none” in place of a number means that there is no such figure. Payback is the time from which the sum stays at or above 0 to the end of the years looked at; an earlier time at which it comes back to 0 and does not stay there stands on “Cash flow” alone.'
  ];
  return {
    name: 'Read me',
    frozenRows: 0,
    widthsCh: [100],
    rows: [
      [{ kind: 'text', text: workbook.title, look: 'title' }],
      [
        note(
          `Prices in ${workbook.currency} of ${workbook.priceYear}. Reference set ${workbook.referenceSet}. Written by Vapour Ledger.`
        )
      ],
      [],
      ...sentences.map((sentence) => [note(sentence)])
    ]
  };
}
