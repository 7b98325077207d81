/** Discount rate and carbon values of public appraisal. */
import { constant } from './constant.ts';

const aGuide = 'Shown as a guide beside the carbon price, which is an input in the workbook’s own currency.';

export const economicConstants = [
  constant({
    id: 'discount-rate.public-sector',
    name: 'Discount rate of public-sector appraisal, United Kingdom',
    value: 3.5,
    printed: '3.5',
    unit: '%',
    conditions: 'real, years 0–30',
    source: { authors: 'HM Treasury', title: 'Green Book', locator: 'discount rate' },
    evidence: 'read',
    kind: 'discount-rate',
    unusedBecause: 'Shown as a guide beside the workbook’s own rate, which is an input.',
    guideFor: 'accounting.discountRatePercent'
  }),
  constant({
    id: 'carbon-value.united-states-2025',
    name: 'Social cost of carbon, emission year 2025, United States',
    value: 210,
    printed: '210',
    unit: 'USD(2020)/t',
    conditions: '2 % discount rate',
    source: {
      authors: 'US EPA',
      title: 'Report on the social cost of greenhouse gases',
      year: 2023,
      locator: 'December 2023, emission year 2025'
    },
    evidence: 'read',
    kind: 'carbon-value',
    unusedBecause: aGuide,
    guideFor: 'accounting.carbonPricePerTonne'
  }),
  constant({
    id: 'carbon-value.united-kingdom-2030',
    name: 'Carbon value for appraisal, 2030, United Kingdom',
    value: 280,
    printed: '280',
    unit: 'GBP(2020)/t',
    conditions: 'central series',
    source: {
      authors: 'UK government',
      title: 'Valuation of greenhouse gas emissions: for policy appraisal and evaluation',
      year: 2021,
      locator: 'central, 2030'
    },
    evidence: 'memory',
    kind: 'carbon-value',
    unusedBecause: aGuide,
    guideFor: 'accounting.carbonPricePerTonne'
  })
];
