import { formatForEditing } from '#lib/numbers/format-number.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { agentOptions, techniqueOptions } from '#lib/workbook/fields.ts';
import type { ReadTable } from '../read/read-table.ts';
import { columnsOf } from '../tables/tables.ts';
import { rangeColumns } from '../tables/range-columns.ts';
import type { CaseGroup, GroupedCases, MeanAndSpread } from './group-cases.ts';

/**
 * Grouped cases as a table that is imported into the case mix as one from a file is: with the same preview, added to the
 * rows or in place of them. Means are rounded to a decimal, the third figure of most; ranges lie around what is rounded.
 */
export function caseMixTable({ groups }: GroupedCases, workbook: Workbook, locale: string): ReadTable {
  const headerOf = new Map(
    [...columnsOf('caseMix', workbook.currency), ...rangeColumns(workbook.currency)].map(
      ({ key, header }) => [key, header]
    )
  );
  const cells: readonly (readonly [string, (group: CaseGroup) => string])[] = [
    ['name', (group) => group.name],
    ['casesPerYear', (group) => tenths(group.casesPerYear)],
    ['minutes', (group) => tenths(group.minutes.mean)],
    ['ageYears', (group) => tenths(group.ageYears?.mean)],
    ['weightKg', (group) => tenths(group.weightKg?.mean)],
    [
      'technique',
      (group) => techniqueOptions.find(({ id }) => id === group.technique)?.label ?? group.technique
    ],
    ['agent', (group) => agentOptions.find(({ id }) => id === group.agent)?.label ?? ''],
    ['measuredMlPerCase', (group) => tenths(group.liquidMl?.mean)],
    ...(['minutes', 'ageYears', 'weightKg'] as const).flatMap((field) => [
      [`${field}.low`, (group: CaseGroup) => lowEnd(group[field], least[field])] as const,
      [`${field}.high`, (group: CaseGroup) => highEnd(group[field])] as const
    ])
  ];
  // A column that no group fills is left out: new rows then get start values, and the preview says so.
  const rows = groups.map((group) => cells.map(([, textOf]) => textOf(group)));
  const filled = cells.map((_, column) => rows.some((row) => row[column] !== ''));
  const kept = <T>(row: readonly T[]): readonly T[] => row.filter((_, column) => filled[column]);
  return {
    headers: kept(cells.map(([key]) => headerOf.get(key) ?? key)),
    rows: rows.map((row, index) => ({ line: index + 1, texts: kept(row) }))
  };

  function tenths(value: number | undefined): string {
    return value === undefined ? '' : formatForEditing(Math.floor(value * 10 + 0.5) / 10, { locale });
  }

  // Rounded outwards, so that the rounded mean stays between the ends.
  function lowEnd(figure: MeanAndSpread | null, atLeast: number): string {
    if (figure === null || figure.low === null) return '';
    return formatForEditing(Math.max(Math.min(atLeast, figure.mean), Math.floor(figure.low * 10) / 10), {
      locale
    });
  }
  function highEnd(figure: MeanAndSpread | null): string {
    return figure === null || figure.high === null
      ? ''
      : formatForEditing(Math.ceil(figure.high * 10) / 10, { locale });
  }
}

/** What no case goes below, however far the spread of a few cases reaches. */
const least = { minutes: 0.1, ageYears: 0, weightKg: 1 } as const;
