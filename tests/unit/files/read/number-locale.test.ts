import { expect, test } from 'vitest';
import { numberLocale } from '#lib/files/read/number-locale.ts';

test.each([
  ['en-GB', ['0,25', '1,234'], 'de-DE'],
  ['en-GB', ['1.234,5'], 'de-DE'],
  ['de-DE', ['72.5', '1.234'], 'en-GB'],
  ['de-DE', ['1,234.5', 'Hip, left'], 'en-GB'],
  // Nothing decides, or everything: the user’s own way stands.
  ['en-GB', ['1,234', '1.234', '60'], 'en-GB'],
  ['de-DE', ['0,25', '0.25'], 'de-DE'],
  ['fr-FR', ['0,25'], 'fr-FR'],
  ['en-US', ['0.25'], 'en-US'],
  ['en-GB', ['12.05.2025', '08:30'], 'en-GB']
])('for %s, a file with %j is read as %s', (locale, cells, read) => {
  expect(numberLocale([cells], locale)).toBe(read);
});
