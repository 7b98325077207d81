/** Where a year's vapour goes if every case follows the scenario's own plan. */
import type { CaseUse } from '../case/case-result.ts';
import type { CaseRow } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { rowCases } from './consumption.ts';

/** Liquid agent of a year, by where its vapour went. */
export interface VapourOfYear {
  readonly takenUpMl: Quantity;
  readonly spilledMl: Quantity;
  readonly leftMl: Quantity;
  readonly togetherMl: Quantity;
}

const overCases = (id: string, yields: string, words: string) =>
  formula<{ casesPerYear: readonly number[]; perCase: readonly number[] }>({
    id,
    yields,
    words: `Of each case group, its cases a year times ${words}, added up: as if every case followed the scenario’s own plan.`,
    expression: 'dot(n, x)',
    inputs: {
      casesPerYear: { symbol: 'n', unit: '1', words: 'cases a year' },
      perCase: { symbol: 'x', unit: 'mL', words }
    },
    unit: 'mL',
    source: 'definition',
    compute: ({ casesPerYear, perCase }) =>
      perCase.reduce((sum, each, index) => sum + each * (casesPerYear[index] ?? 0), 0)
  });

const takenUp = overCases(
  'year.vapour-taken-up',
  'Agent taken up by patients in a year',
  'agent taken up a case'
);
const spilled = overCases('year.vapour-spilled', 'Agent spilled in a year', 'agent spilled a case');
const left = overCases(
  'year.vapour-left',
  'Agent left in circuits and lungs in a year',
  'agent left in circuit and lung a case'
);

const together = formula<{ takenUpMl: number; spilledMl: number; leftMl: number }>({
  id: 'year.vapour-together',
  yields: 'Agent that became vapour in a year',
  words: 'taken up, spilled and left in circuit and lung, added up',
  expression: 'u + s + l',
  inputs: {
    takenUpMl: { symbol: 'u', unit: 'mL', words: 'taken up' },
    spilledMl: { symbol: 's', unit: 'mL', words: 'spilled' },
    leftMl: { symbol: 'l', unit: 'mL', words: 'left in circuit and lung' }
  },
  unit: 'mL',
  source: 'definition',
  compute: ({ takenUpMl, spilledMl, leftMl }) => takenUpMl + spilledMl + leftMl
});

/**
 * Σ over rows of cases a year × the figure of a case. Where a row's liquid was measured, what went where is by that
 * measurement from reference set 2026-2 on; in the first set it is still the model's own, and the sum then is not the
 * liquid of the year. Use scaled to purchases is not looked at.
 */
export function vapourOfYear(
  r: Reckoner,
  rows: readonly {
    readonly row: CaseRow;
    readonly result: CaseUse;
    /** Share of the row's cases; null: all of them. */
    readonly percent: Quantity | null;
  }[]
): VapourOfYear {
  const casesPerYear = rows.map(({ row, percent }) => {
    const all = r.cell(row.casesPerYear, '1', 'caseMix', row.id, 'casesPerYear');
    return percent === null ? all : r.apply(rowCases, { casesPerYear: all, sharePercent: percent });
  });
  const sum = (of: typeof takenUp, key: 'takenUpMl' | 'spilledMl' | 'leftMl') =>
    r.apply(of, { casesPerYear, perCase: rows.map(({ result }) => result[key]) });
  const parts = {
    takenUpMl: sum(takenUp, 'takenUpMl'),
    spilledMl: sum(spilled, 'spilledMl'),
    leftMl: sum(left, 'leftMl')
  };
  return { ...parts, togetherMl: r.apply(together, parts) };
}
