import { expect, it } from 'vitest';
import { unitInWords } from '#lib/sheets/working/working-figures.ts';

it.each([
  ['kg/m2', 'kg/m²'],
  ['m2', 'm²'],
  ['m^3', 'm³'],
  ['currency/m3', 'EUR/m³'],
  ['kg CO2e', 'kg CO₂e'],
  ['1', '']
])('the unit %s is read as “%s”', (unit, words) => expect(unitInWords(unit, 'EUR')).toBe(words));
