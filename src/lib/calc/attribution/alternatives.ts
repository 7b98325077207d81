/** Alternatives of which one is chosen, and those among them that are the same. */
import type { Run } from './run.ts';

export interface Alternative {
  readonly id: string;
  /** Against today's practice; that of today is 0 throughout. */
  readonly run: Run;
}

/** An alternative with the ids of others that are the same. */
export interface Distinct {
  readonly alternative: Alternative;
  readonly sameAs: readonly string[];
}

/** Figures further apart than this, as a share of the largest, are told apart: the last digits hang on the way of adding up. */
const toldApart = 1e-9;

/**
 * The alternatives, those that are the same in all of the given figures taken together under the first of them.
 * @param figuresOf the figures by which they are compared, as many for each alternative.
 */
export function distinctBy(
  alternatives: readonly Alternative[],
  figuresOf: (alternative: Alternative) => readonly number[]
): Distinct[] {
  const given = alternatives.map((alternative) => ({ alternative, figures: figuresOf(alternative) }));
  const largest = (place: number): number =>
    Math.max(...given.map(({ figures }) => Math.abs(figures[place] as number)));
  const reach = (given[0]?.figures ?? []).map((_, place) => toldApart * largest(place));
  const found: { alternative: Alternative; figures: readonly number[]; sameAs: string[] }[] = [];
  for (const one of given) {
    const known = found.find(({ figures }) =>
      figures.every(
        (figure, place) => Math.abs(figure - (one.figures[place] as number)) <= (reach[place] as number)
      )
    );
    if (known === undefined) found.push({ ...one, sameAs: [] });
    else known.sameAs.push(one.alternative.id);
  }
  return found.map(({ alternative, sameAs }) => ({ alternative, sameAs }));
}
