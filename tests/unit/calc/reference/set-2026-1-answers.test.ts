/**
 * What cases of set 2026-1 gave before there was another set: an old file keeps its answers to the last digit. The figures
 * were written down by the version that had this set alone.
 */
import { describe, expect, it } from 'vitest';
import { estimateCase, floorOfCase } from '#lib/calc/case/estimate-case.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { randomConditions, seededRandom } from '../../../fixtures/circle-cases.ts';

/** Liquid, taken up, spilled (mL), CO2 absorbed (L) and the floor (mL) of the first cases that a fixed seed draws. */
const answers: readonly (readonly number[])[] = [
  [43.21704672430227, 4.7822326190020945, 35.75107811346444, 22.750182440382748, 13.148794462771788],
  [114.55061958412504, 15.739409894253937, 98.01559599801703, 2.2390239806465, 16.534341244720263],
  [8.664514008808908, 7.944256743910286, 0.00414307142876292, 49.86385009367083, 23.026397265419323],
  [10.912459013591597, 9.705854647758827, 0.9265572708466963, 93.41728114044986, 10.599664064141727],
  [184.2897342672494, 32.681611247622726, 151.01476935934627, 13.39043043792718, 59.14623022814747],
  [96.04879754650557, 25.760335831124195, 69.50701313012192, 21.299093690311054, 28.06749347061523],
  [5.893244191546165, 1.949315050666893, 3.7550057371526044, 8.1145872350545, 2.1581553763177905],
  [17.45222381060551, 7.938825182760877, 8.600003013281912, 41.18133296339638, 8.858586984862455],
  [10.356385116047665, 6.411442377478794, 2.8248126787555066, 17.294731902027376, 7.829387120308059],
  [88.3871721765832, 5.101208601664233, 82.07268389607214, 7.025168323034806, 5.145307176804211],
  [23.443820307992624, 1.0856693023381248, 22.349160668027004, 72.03561533283643, 19.62738893624032],
  [14.547322230115022, 4.801771438889233, 9.535526566562522, 12.675845537922722, 5.338282772043114]
];

describe('a case of set 2026-1', () => {
  const random = seededRandom(20261);
  it.each(answers.map((figures, i) => [i, figures, randomConditions(random)] as const))(
    'number %i keeps its answer to the last digit',
    (_, figures, given) => {
      const { liquidMl, takenUpMl, spilledMl, co2AbsorbedL } = estimateCase(plain, given);
      expect([liquidMl, takenUpMl, spilledMl, co2AbsorbedL, floorOfCase(plain, given)]).toEqual(figures);
    }
  );
});
