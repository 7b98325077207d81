import { expect, it } from 'vitest';
import { wrapWords } from '#lib/charts/wrap-words.ts';

it.each([
  ['Today', 10, ['Today']],
  ['Minimal flow on the present machines', 14, ['Minimal flow', 'on the present', 'machines']],
  ['A cholecystectomy', 8, ['A', 'cholecystectomy']],
  ['', 8, ['']]
])('“%s” in lines of %i', (text, most, lines) => {
  expect(wrapWords(text, most)).toEqual(lines);
});
