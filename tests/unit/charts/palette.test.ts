/** The chart palette keeps its series apart for every eye, on every ground. */
import { describe, expect, it } from 'vitest';
import { colourDistance, lab, linearRgb, seenWith, visions, type Lab } from './colour-science.ts';
import { themes, tokenColour, type Theme } from './token-colours.ts';

const all = [1, 2, 3, 4, 5, 6, 7, 8];

function pairs(indices: readonly number[]): [number, number][] {
  return indices.flatMap((one, at) => indices.slice(at + 1).map((other): [number, number] => [one, other]));
}

function closest(
  theme: Theme,
  vision: string,
  indices: readonly number[]
): { distance: number; pair: string } {
  const matrix = visions[vision];
  if (matrix === undefined) throw new Error(vision);
  const seen = (index: number): Lab =>
    lab(seenWith(matrix, linearRgb(tokenColour(`--series-${index}`, theme))));
  return pairs(indices)
    .map(([a, b]) => ({ distance: colourDistance(seen(a), seen(b)), pair: `${a} and ${b}` }))
    .reduce((least, next) => (next.distance < least.distance ? next : least));
}

describe.each(themes)('series colours, %s', (theme) => {
  // A difference of some 2 is just noticed side by side. Lines and points are told apart from afar, and a chart of
  // lines has at most four colours; stacked bars have up to eight, each with a pattern and a gap.
  it.each(Object.keys(visions))('the first four stay far apart with %s', (vision) => {
    const { distance, pair } = closest(theme, vision, [1, 2, 3, 4]);
    expect(distance, `series ${pair}`).toBeGreaterThanOrEqual(20);
  });

  it.each(Object.keys(visions))('all eight stay apart with %s', (vision) => {
    const { distance, pair } = closest(theme, vision, all);
    expect(distance, `series ${pair}`).toBeGreaterThanOrEqual(13);
  });

  it('neighbours in a stack differ in grey, too', () => {
    for (const index of all.slice(1)) {
      const lightness = (each: number): number => lab(linearRgb(tokenColour(`--series-${each}`, theme)))[0];
      const step = Math.abs(lightness(index) - lightness(index - 1));
      expect(step, `series ${index - 1} and ${index}`).toBeGreaterThanOrEqual(9);
    }
  });
});

/**
 * Sharma, Wu & Dalal, "The CIEDE2000 color-difference formula", Color Research & Application 30 (2005) 21, doi
 * 10.1002/col.20070, table 1, pairs 1, 7, 17, 18, 20 and 25 (from memory).
 */
it.each<[Lab, Lab, number]>([
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[50, 2.5, 0], [61, -5, 29], 22.8977],
  [[50, 2.5, 0], [58, 24, 15], 19.4535],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644]
])('the colour distance of %j and %j is the published one', (one, other, published) => {
  expect(colourDistance(one, other)).toBeCloseTo(published, 4);
  expect(colourDistance(other, one)).toBeCloseTo(published, 4);
});
