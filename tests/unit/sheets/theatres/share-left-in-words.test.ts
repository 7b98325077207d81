import { expect, test } from 'vitest';
import { shareLeftInWords } from '#lib/sheets/theatres/share-left-in-words.ts';

test.each([
  ['nothing is said', {}, 2, 'in proportion'],
  ['one of two is said', { day: 20.5 }, 2, 'the other 79.5'],
  ['all is said for one of two', { day: 100 }, 2, 'none'],
  ['one of three is said', { day: 20 }, 3, 'in proportion'],
  ['all is said for two of three', { day: 20, main: 80 }, 3, 'none']
])('an empty share where %s', (_, shares, groups, words) => {
  expect(shareLeftInWords(shares, groups, 'en-GB')).toBe(words);
});
