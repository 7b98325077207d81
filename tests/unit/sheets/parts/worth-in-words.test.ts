import { describe, expect, it } from 'vitest';
import { isToldApart, worthInWords } from '#lib/sheets/parts/worth-in-words.ts';

const input = (path: string, worth: number, noise: number) => ({ paths: [path], worth, noise });
const words = (worthOfAll: number, inputs: readonly ReturnType<typeof input>[] = []) =>
  worthInWords(
    { options: ['today', 'a', 'b'], best: 'b', worthOfAll, inputs },
    {
      optionName: (id) => id.toUpperCase(),
      nameOf: ([path = '']) => `the ${path}`,
      look: { currency: 'EUR', locale: 'en-GB', appraisalYears: 10 }
    }
  );

describe('what knowing more is worth, in words', () => {
  it('says that nothing has to be known better where one option is best in every draw', () => {
    expect(words(0)).toBe(
      'By net present value B is the best of 3 options in every draw: no figure with a range has to be known better before the choice.'
    );
  });

  it('names the worth of all and the figure to measure first, the one that is worth most', () => {
    const said = words(5000, [input('price', 900, 100), input('flow', 3000, 200)]);
    expect(said).toContain('would be worth €5,000 over 10\u00a0years');
    expect(said).toContain('the flow deserves a measurement first: to know it alone is worth €3,000.');
  });

  it('names no figure that chance would make as much of', () => {
    expect(words(5000, [input('price', 100, 100), input('flow', 90, 200)])).toMatch(
      /No single figure by itself is told apart from worth nothing\.$/
    );
    // More than chance, though another has a larger figure that is chance.
    expect(words(5000, [input('price', 300, 400), input('flow', 90, 20)])).toContain('the flow deserves');
  });

  it('takes what is no more than chance for nothing', () => {
    expect(isToldApart(input('a', 2, 2))).toBe(false);
    expect(isToldApart(input('a', 2.1, 2))).toBe(true);
  });
});
