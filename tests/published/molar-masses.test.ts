/**
 * Molar masses against the molecular formulas and the standard atomic weights (IUPAC, abridged to five figures, from
 * memory). Tolerance 0.03 %: the printed masses carry four or five figures.
 */
import { describe, expect, it } from 'vitest';
import { referenceSet2026 } from '#lib/calc/reference/reference-set-2026-1.ts';
import { take } from '#lib/calc/reference/reference-set.ts';

const weights = { C: 12.011, H: 1.008, F: 18.998, O: 15.999, Cl: 35.453, Br: 79.904, N: 14.007, Ca: 40.078 };
type Formula = Partial<Record<keyof typeof weights, number>>;

const formulas: Record<string, Formula> = {
  sevoflurane: { C: 4, H: 3, F: 7, O: 1 },
  isoflurane: { C: 3, H: 2, Cl: 1, F: 5, O: 1 },
  desflurane: { C: 3, H: 2, F: 6, O: 1 },
  halothane: { C: 2, H: 1, Br: 1, Cl: 1, F: 3 },
  enflurane: { C: 3, H: 2, Cl: 1, F: 5, O: 1 },
  'nitrous-oxide': { N: 2, O: 1 },
  'carbon-dioxide': { C: 1, O: 2 },
  'calcium-hydroxide': { Ca: 1, O: 2, H: 2 }
};

describe('molar mass', () => {
  it.each(Object.entries(formulas))('of %s follows from its formula', (subject, formula) => {
    const expected = Object.entries(formula).reduce(
      (sum, [element, count]) => sum + weights[element as keyof typeof weights] * count,
      0
    );
    const recorded = take(referenceSet2026, `${subject}.molar-mass`).value;
    expect(Math.abs(recorded / expected - 1)).toBeLessThan(0.0003);
  });

  it('is checked for every record of the kind', () => {
    const recorded = [...referenceSet2026.constants.values()].filter(({ kind }) => kind === 'molar-mass');
    expect(recorded.map(({ id }) => id.replace('.molar-mass', '')).sort()).toEqual(
      Object.keys(formulas).sort()
    );
  });
});
