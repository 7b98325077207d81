/**
 * What cases of set 2026-2 gave before there was a later one: an old file keeps its answers to the last digit, with nitrous
 * oxide and with flow as needed as well. The figures were written down by the version whose newest set this was.
 */
import { describe, expect, it } from 'vitest';
import { estimateCase, floorOfCase } from '#lib/calc/case/estimate-case.ts';
import type { CaseGiven } from '#lib/calc/case/conditions.ts';
import { referenceSet2026Second } from '#lib/calc/reference/reference-set-2026-2.ts';
import { plain } from '#lib/calc/working/plain.ts';
import { randomConditions, seededRandom, under } from '../../../fixtures/circle-cases.ts';

/** Liquid, taken up, spilled (mL), nitrous oxide, CO2 absorbed (L) and the floor (mL) of the first cases that a fixed seed draws. */
const answers: readonly (readonly number[])[] = [
  [
    6.082680585998463, 5.214727533060789, 0.4820751791597882, 3.613578910728923, 17.629755078742583,
    5.600614129602899
  ],
  [16.26501979244113, 0.7877739983991885, 14.753676967700816, 0, 0, 3.5123276476945664],
  [
    9.77090337686676, 4.595976926828961, 4.7115630047762425, 50.69337938553185, 49.999215702665666,
    5.14015302650828
  ],
  [3.0390711040330625, 1.4488651027032364, 1.0914524319766195, 0, 1.1096964629108836, 0.8741149038453251],
  [
    19.52017416414303, 3.52733191232234, 14.862762841268797, 65.05771792532035, 5.369076780548455,
    3.5847113049824118
  ],
  [14.522471380623552, 4.145817441723435, 9.775596530377857, 0, 5.573315186531003, 5.0585208810835365],
  [10.817759569214484, 7.9128038485943435, 1.2595014162667295, 6.199301846977324, 26.244731459927223, 0],
  [44.16331769194034, 6.255662221429221, 36.095552654628655, 0, 4.8466757484900045, 4.531055117884198],
  [
    0.5405973463331797, 0.32945803282610525, 0.012199244855534313, 0.3786847411654888, 2.1707684243641094,
    1.0600320348671148
  ],
  [44.73792767878834, 12.22998010918589, 27.940193671663906, 0, 16.457086402790665, 9.566844462846937],
  [
    1.839704456249668, 1.6128853749932772, 0.04611652804086633, 0.5921588698867709, 4.3200846427782835,
    6.095821956491729
  ],
  [62.80504533591956, 28.429954489858844, 32.904342422103205, 0, 72.00057840482387, 29.680523886743085]
];

/** Every other case has nitrous oxide, every third one flow as needed. */
const drawn = (random: () => number, i: number): CaseGiven => {
  const given = under(randomConditions(random), {
    nitrousOxidePercent: i % 2 === 0 ? 50 : 0,
    canFlowAsNeeded: i % 3 === 0,
    leakMlPerMin: 80
  });
  const phases = given.conditions.phases.map((phase) => ({ ...phase, flowAsNeeded: i % 3 === 0 }));
  return { ...under(given, { phases }), reference: referenceSet2026Second };
};

describe('a case of set 2026-2', () => {
  const random = seededRandom(20262);
  it.each(answers.map((figures, i) => [i, figures, drawn(random, i)] as const))(
    'number %i keeps its answer to the last digit',
    (_, figures, given) => {
      const { liquidMl, takenUpMl, spilledMl, nitrousOxideL, co2AbsorbedL } = estimateCase(plain, given);
      expect([
        liquidMl,
        takenUpMl,
        spilledMl,
        nitrousOxideL,
        co2AbsorbedL,
        floorOfCase(plain, given)
      ]).toEqual(figures);
    }
  );
});
