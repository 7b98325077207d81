/** Which inputs the answer hangs on, and how well these are known. */
import { fewestCarrying, sharesOf, widthOf } from '#lib/calc/uncertainty/weights.ts';
import type { ScenarioSwing } from '#lib/calc/what-if/draws.ts';
import { citation, evidenceWords } from '#lib/calc/working/citation.ts';
import { cellsName } from '#lib/workbook/cell-name.ts';
import { rangedConstantAt } from '#lib/workbook/ranged-constants.ts';
import type { SourceNote } from '#lib/workbook/source-note.ts';
import { gradeInWords, sourceNoteInWords, sourceNoteOf } from '#lib/workbook/source-notes.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

export interface WeightOfInput {
  /** The swing’s place among those of the run. */
  readonly place: number;
  /** Cells of the input: several where they vary together. */
  readonly paths: readonly string[];
  readonly name: string;
  /** Share of all swings of the net present value, 0 to 1. */
  readonly share: number;
  /** Grades of its cells, in words: `Invoiced`, or `3 × Measured, 1 × no grade`. */
  readonly grades: string;
  /** The note of an input of one cell; '' where it has none. */
  readonly note: string;
}

/** Four fifths: what the few inputs carry that a reader is to look at first. */
const mostOfIt = 0.8;

/** Inputs by their weight, the heaviest first; those that move nothing are left out. Notes are those of `workbook`. */
export function weightsOfInputs(
  swings: readonly ScenarioSwing[],
  { workbook, locale }: { readonly workbook: Workbook; readonly locale: string }
): readonly WeightOfInput[] {
  const widths = swings.map(({ outcomes }) => widthOf(outcomes.flatMap(({ figures }) => figures?.npv ?? [])));
  const shares = sharesOf(widths);
  return swings
    .map(({ paths }, place): WeightOfInput => {
      const notes = paths.map((path) => sourceNoteOf(workbook, path));
      const only = paths.length === 1 ? (notes[0] ?? null) : null;
      const published = rangedConstantAt(workbook, paths[0] ?? '')?.constant;
      if (published !== undefined)
        return {
          place,
          paths,
          name: cellsName(workbook, paths),
          share: shares[place] ?? 0,
          grades: 'Published',
          note: `${citation(published.source)} (${evidenceWords[published.evidence]})`
        };
      return {
        place,
        paths,
        name: cellsName(workbook, paths),
        share: shares[place] ?? 0,
        grades: gradesInWords(notes),
        note: only === null ? '' : sourceNoteInWords({ ...only, grade: null }, locale)
      };
    })
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}

function gradesInWords(notes: readonly (SourceNote | null)[]): string {
  const counts = new Map<string, number>();
  for (const note of notes) {
    const words = gradeInWords(note?.grade ?? null);
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  const [only] = counts.keys();
  return counts.size === 1
    ? (only ?? '')
    : [...counts].map(([words, count]) => `${count} × ${words}`).join(', ');
}

/** `7 cells carry four fifths of what is not known; 3 of them are assumed, 1 has no grade.` */
export function weightsInWords(weights: readonly WeightOfInput[], workbook: Workbook): string {
  const carrying = fewestCarrying(
    weights.map(({ share }) => share),
    mostOfIt
  );
  const cells = carrying.flatMap((at) => weights[at]?.paths ?? []);
  if (cells.length === 0) return 'No range moves the answer, so no cell carries more of it than another.';
  const isPublished = (path: string): boolean => rangedConstantAt(workbook, path) !== null;
  const grades = cells.flatMap((path) =>
    isPublished(path) ? [] : [sourceNoteOf(workbook, path)?.grade ?? null]
  );
  const count = (grade: SourceNote['grade']): number => grades.filter((each) => each === grade).length;
  const [assumed, estimated, none] = [count('assumed'), count('estimated'), count(null)];
  const are = (number: number, what: string): string[] =>
    number === 0
      ? []
      : [`${number === cells.length ? 'all' : number} ${number === 1 ? 'is' : 'are'} ${what}`];
  const weak = [
    ...are(assumed, 'assumed'),
    ...are(estimated, 'estimated'),
    ...(none === 0 ? [] : [`${none} ${none === 1 ? 'has' : 'have'} no grade`])
  ];
  const which =
    weak.length === 0
      ? `each of them is measured, invoiced${grades.length < cells.length ? ', quoted or published' : ' or quoted'}`
      : `of these, ${weak.join(', ')}`;
  return cells.length === 1
    ? `One cell carries four fifths of what is not known of the answer; its grade: ${isPublished(cells[0] ?? '') ? 'Published' : gradeInWords(grades[0] ?? null)}.`
    : `${cells.length} cells carry four fifths of what is not known of the answer; ${which}.`;
}
