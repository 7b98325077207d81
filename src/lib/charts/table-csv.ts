/**
 * A chart's table as CSV (RFC 4180), figures in full with a decimal point.
 *
 * A text that a spreadsheet program would take for a formula (one that begins with = + - @, also after blanks, or after a
 * sign at which a program may split it) gets an apostrophe before it, so that a name typed by somebody else never runs.
 * Numbers stay numbers, negative ones included. That figures are invented, or that cells
 * behind them are not in force, is said in a column of its own.
 */
import type { ChartTable, TableCell } from './chart-data.ts';

export function tableCsv(
  { columns, rows }: ChartTable,
  { invented = false, notInForce = '' }: { readonly invented?: boolean; readonly notInForce?: string } = {}
): string {
  const remark = [...(invented ? ['invented'] : []), ...(notInForce === '' ? [] : [notInForce])].join('; ');
  // In each row, so that a row that is copied elsewhere keeps it.
  const mark = (text: string): string[] => (remark === '' ? [] : [field(text, false)]);
  const lines = [
    [...columns.map(({ title }) => field(title, false)), ...mark('Figures')],
    ...rows.map(({ cells }) => [
      ...cells.map((cell, index) => cellField(cell, columns[index]?.numeric ?? false)),
      ...mark(remark)
    ])
  ];
  return lines.map((line) => `${line.join(',')}\r\n`).join('');
}

function cellField({ value }: TableCell, numeric: boolean): string {
  return value === null ? '' : field(String(value), numeric || typeof value === 'number');
}

const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

function field(text: string, mayBeNumber: boolean): string {
  if (mayBeNumber && plainNumber.test(text)) return text;
  const harmless = text.replace(/^(?=[\t\r])|(^|[;,\t|\r\n])(?=[^\S\t\r\n]*[=+\-@])/g, "$1'");
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
