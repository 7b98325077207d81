/** What the chart of ranges writes at the ends of a bar: values as they were entered, and what the model itself is off by. */
import { expect, test } from 'vitest';
import { constantPath } from '#lib/calc/reference/ranged-constant.ts';
import { drawnSpillShares } from '#lib/calc/what-if/spill-spread.ts';
import { swingsForChart } from '#lib/sheets/parts/uncertainty-words.ts';
import { departmentWorkbook } from '../../../fixtures/department.ts';

const figuresAt = (npv: number) => ({ yearlySaving: 1, co2eAvoidedKg: 1, npv, paybackYears: 1 });
const endsOf = (path: string, atLow: number, atHigh: number): readonly string[] =>
  swingsForChart(
    [
      {
        paths: [path],
        outcomes: [
          { values: [atLow], figures: figuresAt(1) },
          { values: [atHigh], figures: figuresAt(2) }
        ]
      }
    ],
    { figure: 'npv', workbook: departmentWorkbook(), locale: 'en-GB', path: String }
  ).flatMap(({ low, high }) => [low, high]);

test('the model’s own error has three figures, as nobody entered it', () => {
  expect(endsOf('modelError.spillFactor', 0.4232262141879193, 1.5767737858120807)).toEqual(['0.423', '1.58']);
});

test('where gas is spilled is a share', () => {
  expect(endsOf('modelError.spillShare', 0, drawnSpillShares.length - 1)).toEqual(['0.33', '1']);
});

test('a published figure has its unit', () => {
  expect(endsOf(constantPath('warming.AR6.100.sevoflurane'), 75.8, 314)).toEqual([
    '75.8\u00a0kg CO₂e/kg',
    '314\u00a0kg CO₂e/kg'
  ]);
});
