import { expect, test } from 'vitest';
import { columnsMeant, mapColumns, unmetHeadings } from '#lib/workbook/match-headings.ts';

const columns = [
  { key: 'name', header: 'Case group' },
  { key: 'casesPerYear', header: 'Cases' },
  { key: 'minutes', header: 'Minutes' },
  { key: 'minutesLow', header: 'Price, low' },
  { key: 'minutesHigh', header: 'Price, high' }
];
const told = (headers: readonly string[]) => unmetHeadings(headers, columns, mapColumns(headers, columns));

test('a heading that could mean two columns fills neither, and both are named', () => {
  expect(mapColumns(['Price', 'Minutes'], columns)).toEqual([null, 'minutes']);
  expect(told(['Price', 'Minutes'])).toEqual([
    '“Price” could mean “Price, low” or “Price, high”, so it is left out until you choose.'
  ]);
  // Where one of them has its own heading, the other is what is meant.
  expect(mapColumns(['Price', 'Price, high'], columns)).toEqual(['minutesLow', 'minutesHigh']);
});

test('two headings of one column: the surer fills it, and of the other it is said', () => {
  expect(mapColumns(['Volume', 'Cases'], columns)).toEqual([null, 'casesPerYear']);
  expect(told(['Volume', 'Cases'])).toEqual([
    '“Volume” names “Cases”, which “Cases” fills already, so it is left out.'
  ]);
});

test('what no column is called is left to the user without a word', () => {
  expect(told(['Surgeon', 'Cases'])).toEqual([]);
  expect(columnsMeant('Surgeon', columns)).toEqual([]);
});

test('of headings that differ by their signs alone, the one that is written so names the column', () => {
  const alike = [
    { key: 'perCase', header: 'Cost / case' },
    { key: 'ofCase', header: 'Cost, case' }
  ];
  expect(mapColumns(['Cost, case', 'Cost / case'], alike)).toEqual(['ofCase', 'perCase']);
});
