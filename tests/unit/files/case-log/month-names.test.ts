import { expect, test } from 'vitest';
import { monthNamed } from '#lib/files/case-log/month-names.ts';

test.each([
  ['MAR', 3],
  ['März', 3],
  ['févr.', 2],
  ['Sept', 9],
  ['Okt', 10],
  ['dicembre', 12],
  ['maj', 5],
  ['stycznia', 1],
  ['cases', null]
])('%s', (name, month) => {
  expect(monthNamed(name)).toBe(month);
});

test('no name stands for two months in two languages', () => {
  const months = Array.from({ length: 12 }, (_, index) => index);
  for (const language of ['en', 'de', 'fr', 'es', 'it', 'nl', 'pt', 'sv', 'da', 'nb', 'fi', 'pl'])
    for (const month of ['long', 'short'] as const)
      for (const index of months) {
        const name = new Intl.DateTimeFormat(language, { month, timeZone: 'UTC' }).format(
          Date.UTC(2025, index, 1)
        );
        expect([language, name, monthNamed(name)]).toEqual([language, name, index + 1]);
      }
});
