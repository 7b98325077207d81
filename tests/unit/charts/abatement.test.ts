import { expect, it } from 'vitest';
import { abatement } from '#lib/charts/abatement.ts';

const scenarios = [
  { id: 'a', name: 'Low flow', co2eAvoidedKg: 61_000, costPerTonneAvoided: '41.00' },
  { id: 'b', name: 'Closed circuit', co2eAvoidedKg: 99_000, costPerTonneAvoided: '95.00' },
  { id: 'c', name: 'More nitrous oxide', co2eAvoidedKg: -2000, costPerTonneAvoided: null }
];

it('draws each scenario as wide as its tonnes and as high as a tonne costs, the widest first', () => {
  const chart = abatement({ currency: 'EUR', scenarios });
  expect(chart.series.map(({ label, points }) => [label, points[0]?.x, points[0]?.y])).toEqual([
    ['Closed circuit', 99, 95],
    ['Low flow', 61, 41]
  ]);
});

it('puts no cost on the tonnes of a scenario that saves money, and says what it avoids', () => {
  const [first, ...others] = scenarios;
  const chart = abatement({
    currency: 'EUR',
    scenarios: [{ ...first!, costPerTonneAvoided: null }, ...others]
  });
  expect(chart.series.map(({ label }) => label)).toEqual(['Closed circuit']);
  expect(chart.summary).toBe(
    'Closed circuit avoids 99\u00a0t a year and costs €95.00 a tonne. ' +
      'Money is saved with the tonnes by Low flow (61\u00a0t a year). No tonne is avoided by More nitrous oxide.'
  );
});

it('says who pays for a tonne, and who avoids none', () => {
  expect(abatement({ currency: 'EUR', scenarios }).summary).toBe(
    'Low flow avoids 61\u00a0t a year and costs €41.00 a tonne and ' +
      'Closed circuit avoids 99\u00a0t a year and costs €95.00 a tonne. ' +
      'No tonne is avoided by More nitrous oxide.'
  );
});

it('keeps every scenario in the table, with its paths', () => {
  const { rows } = abatement({ currency: 'EUR', scenarios }).table;
  expect(rows[2]?.cells).toEqual([
    { text: 'More nitrous oxide', value: 'More nitrous oxide' },
    { text: '\u22122', value: -2, path: 'c.againstBaseline.co2eAvoidedKg' },
    { text: '–', value: null, path: 'c.againstBaseline.costPerTonneAvoided' }
  ]);
});

it('keeps a scenario its colour, whichever others there are', () => {
  const colourOf = (given: typeof scenarios): unknown =>
    abatement({ currency: 'EUR', scenarios: given }).series.find(({ label }) => label === 'Low flow')?.style
      .colour;
  expect(colourOf(scenarios)).toBe(colourOf(scenarios.slice(0, 1)));
});

it('has a sentence where no scenario avoids anything', () => {
  expect(abatement({ currency: 'EUR', scenarios: [] }).empty).toMatch(/no scenario avoids emissions/);
});
