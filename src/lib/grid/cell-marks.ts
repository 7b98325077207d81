/** The marks that a cell may carry beside its text, and what they mean. `GridRow` draws the same signs. */
export const cellMarks = {
  /** No sign that means something else to a clinician: a dagger beside a patient group reads as “deceased”. */
  note: '*',
  range: '↔',
  kept: '✗'
} as const;
export type CellMark = keyof typeof cellMarks;

export const markWords: Readonly<Record<CellMark, string>> = {
  note: 'a note goes with this figure: it stands below the grid while the cell is selected',
  range: 'has a range, used on Uncertainty',
  kept: 'not taken: kept as typed, the last good value counts'
};
