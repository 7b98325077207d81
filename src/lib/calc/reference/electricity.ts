/** Carbon intensity of electricity by country. */
import { constant } from './constant.ts';
import type { Evidence, Source } from './constant.ts';

const ourWorldInData: Source = {
  authors: 'Our World in Data, from Ember',
  title: 'Carbon intensity of electricity',
  year: 2023,
  locator: 'by country, 2023'
};
const ukFactors: Source = {
  authors: 'UK government',
  title: 'Greenhouse gas conversion factors',
  year: 2024,
  locator: 'UK electricity'
};

const intensities2023: Readonly<Record<string, number>> = {
  Australia: 549,
  Austria: 111,
  Belgium: 138,
  Brazil: 98,
  Canada: 170,
  China: 582,
  Denmark: 152,
  Finland: 79,
  France: 56,
  Germany: 381,
  Hungary: 204,
  Ireland: 291,
  India: 713
};

const intensity = (country: string, value: number, year: number, source: Source, evidence: Evidence) =>
  constant({
    id: `electricity.${country.toLowerCase().replaceAll(' ', '-')}`,
    name: `Carbon intensity of electricity, ${country}, ${year}`,
    value,
    printed: String(value),
    unit: 'g CO2e/kWh',
    conditions: `${year}`,
    source,
    evidence,
    kind: 'electricity-intensity',
    unusedBecause: 'Shown as a guide beside the site’s own factor, which is an input.',
    guideFor: 'site.electricityKgCo2ePerKWh'
  });

export const electricityConstants = [
  ...Object.entries(intensities2023).map(([country, value]) =>
    intensity(country, value, 2023, ourWorldInData, 'read')
  ),
  intensity('United Kingdom', 207, 2024, ukFactors, 'second-hand')
];
