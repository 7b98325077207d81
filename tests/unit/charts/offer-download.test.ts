import { expect, it } from 'vitest';
import { fileNameFrom } from '#lib/charts/offer-download.ts';

it.each([
  ['Yearly cost by line', 'yearly-cost-by-line.csv'],
  ['Use against fresh gas flow: Opération/àpieds', 'use-against-fresh-gas-flow-operation-apieds.csv'],
  ['../../etc', 'etc.csv'],
  ['Χειρουργείο 2', 'χειρουργειο-2.csv'],
  ['…', 'chart.csv']
])('“%s” is saved as %s', (title, name) => {
  expect(fileNameFrom(title, 'csv')).toBe(name);
});
