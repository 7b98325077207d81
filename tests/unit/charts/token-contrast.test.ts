/** WCAG 2.2, success criteria 1.4.3 (text 4.5:1) and 1.4.11 (what must be seen to use or read the page 3:1), level AA. */
import { describe, expect, it } from 'vitest';
import { contrast } from './colour-science.ts';
import { themes, tokenColour } from './token-colours.ts';

const grounds = ['--paper', '--paper-raised', '--paper-sunk'];
const series = [1, 2, 3, 4, 5, 6, 7, 8].map((index) => `--series-${index}`);

const text: [string, string[]][] = [
  ['--ink', [...grounds, '--input-wash', '--computed-wash', '--wrong-wash', '--selection']],
  ['--ink-soft', [...grounds, '--input-wash', '--computed-wash', '--wrong-wash']],
  ['--ink-faint', [...grounds, '--input-wash', '--computed-wash']],
  ['--input', [...grounds, '--input-wash', '--selection']],
  ['--computed', [...grounds, '--computed-wash', '--selection']],
  ['--wrong', [...grounds, '--wrong-wash', '--selection']]
];
const shapes: [string, string[]][] = [
  ['--edge', [...grounds, '--input-wash']],
  ['--focus', [...grounds, '--input-wash', '--computed-wash', '--wrong-wash']],
  ['--chart-axis', grounds],
  ...series.map((token): [string, string[]] => [token, ['--paper', '--paper-raised']])
];

describe.each(themes)('the %s theme', (theme) => {
  it.each(text)('%s is readable on its grounds', (token, over) => {
    for (const ground of over) {
      const ratio = contrast(tokenColour(token, theme), tokenColour(ground, theme));
      expect(ratio, `${token} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  it.each(shapes)('%s is seen on its grounds', (token, over) => {
    for (const ground of over) {
      const ratio = contrast(tokenColour(token, theme), tokenColour(ground, theme));
      expect(ratio, `${token} on ${ground}`).toBeGreaterThanOrEqual(3);
    }
  });

  it('the main button is readable', () => {
    expect(contrast(tokenColour('--paper', theme), tokenColour('--input', theme))).toBeGreaterThanOrEqual(
      4.5
    );
  });
});

it('contrast is as WCAG defines it: 21 for black on white, 1 for a colour on itself', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#3c9c8e', '#3c9c8e')).toBe(1);
});
