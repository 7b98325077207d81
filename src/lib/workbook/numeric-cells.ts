/** The cells that hold a number, and what each may hold: those that can be given a range. */
import { readCell } from '#lib/calc/cell-path.ts';
import type { Range } from '#lib/calc/input.ts';
import type { Field } from './field.ts';
import { isTooNearZero } from './field.ts';
import { fieldAt } from './field-at.ts';
import { allowedRange } from './range-around.ts';
import { rangedConstantAt } from './ranged-constants.ts';
import { rowsInForce } from './rows-in-force.ts';
import type { Workbook } from './workbook.ts';

export interface NumericCell {
  readonly path: string;
  readonly field: Extract<Field, { kind: 'number' | 'money' }>;
  readonly value: number;
}

/** How the tool is set rather than what is not known: these take no range. */
export const isSetting = (path: string): boolean => settings.test(path);
const settings =
  /^(sampling\.|priceYear$|site\.(facilityLevel|lawfulSharePercent|baseYear)$|accounting\.(appraisalYears|paybackLimitYears)$|scenarios\.[^.]+\.(moves\.\d+\.(year|theatres|payment\.termYears)|spares|nitrousOxideSupplyYear)$)/;

/** What is printed on a bottle or in a machine's data sheet: known, and so not what might turn out otherwise. */
export const isReadOff = (path: string): boolean => readOff.test(path);
const readOff =
  /^(agents\.[^.]+\.bottleMl|machines\.[^.]+\.(circuitVolumeL|sampleMlPerMin|minimumFlowLPerMin))$/;

/** Every cell with a number in it, in the order of the workbook; empty cells, settings, cells beside the answer, and rows that no figure rests on yet are left out. */
export function numericCells(workbook: Workbook): NumericCell[] {
  const cells: NumericCell[] = [];
  const visit = (value: unknown, path: string): void => {
    if (Array.isArray(value)) {
      (value as readonly unknown[]).forEach((entry, index) =>
        visit(entry, `${path}.${keyOf(entry) ?? index}`)
      );
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, entry] of Object.entries(value)) visit(entry, path === '' ? key : `${path}.${key}`);
    } else {
      const cell = numericCell(path, value);
      if (cell !== null) cells.push(cell);
    }
  };
  const { ranges: _, keptTexts: __, overrides: ___, notes: ____, ...figures } = rowsInForce(workbook);
  visit(figures, '');
  return cells;
}

/** The cell, or published figure, at a path where it holds a number that may have a range; null for any other. */
export function numericCellAt(workbook: Workbook, path: string): NumericCell | null {
  const published = rangedConstantAt(workbook, path);
  return published === null
    ? numericCell(path, readCell(workbook, path))
    : { path, field: published.field, value: published.value };
}

function numericCell(path: string, value: unknown): NumericCell | null {
  if ((typeof value !== 'number' && typeof value !== 'string') || value === '' || isSetting(path))
    return null;
  const field = fieldAt(path);
  if ((field?.kind !== 'number' && field?.kind !== 'money') || field.besideTheAnswer === true) return null;
  const number = Number(value);
  return Number.isFinite(number) ? { path, field, value: number } : null;
}

/** Paths of the cells that hold whole numbers. */
export const wholeCells = (workbook: Workbook): ReadonlySet<string> =>
  new Set(
    numericCells(workbook).flatMap(({ path, field }) =>
      field.kind === 'number' && field.whole ? [path] : []
    )
  );

const keyOf = (entry: unknown): string | undefined => {
  const { id, agent, item } = (entry ?? {}) as { id?: string; agent?: string; item?: string };
  return id ?? agent ?? item;
};

/** A fifth either way of the cell's value, within what its field allows: the range of a cell that was given none. */
export function assumedRange({ field, value }: NumericCell): Range {
  const { low, high } = allowedRange(field);
  const reach = Math.abs(value) * 0.2;
  return {
    low: Math.max(low, notTooNearZero(value - reach)),
    high: Math.min(high ?? Infinity, notTooNearZero(value + reach))
  };
}

const notTooNearZero = (value: number): number => (isTooNearZero(value) ? 0 : value);
