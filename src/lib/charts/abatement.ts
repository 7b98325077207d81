/**
 * What avoiding a tonne costs, scenario by scenario. Scenarios are alternatives and do not add up, so each is a rectangle
 * of its own from the origin: as wide as the tonnes that it avoids a year, as high as a tonne costs. One that saves money
 * with its tonnes has no such cost: a ratio below 0 ranks nothing.
 */
import type { ChartData } from './chart-data.ts';
import { moneyCell, nameCell, nameColumn, numberCell, numberColumn } from './chart-table.ts';
import { figureText, listInWords } from './figure-text.ts';
import { seriesStyle } from './series-style.ts';

export interface Abatement {
  readonly currency: string;
  readonly scenarios: readonly {
    readonly id: string;
    readonly name: string;
    readonly co2eAvoidedKg: number;
    /** null: no tonne is avoided, or money is saved with each. */
    readonly costPerTonneAvoided: string | null;
  }[];
}

export function abatement({ currency, scenarios }: Abatement): ChartData {
  const figures = { kind: 'money', currency } as const;
  const tonnes = { kind: 'number', unit: 't' } as const;
  const avoiding = scenarios.flatMap(({ name, co2eAvoidedKg, costPerTonneAvoided }, index) =>
    costPerTonneAvoided === null || co2eAvoidedKg <= 0
      ? []
      : [{ name, index, x: co2eAvoidedKg / 1000, y: Number(costPerTonneAvoided) }]
  );
  // The widest is drawn first, so that none is hidden.
  const drawn = avoiding.toSorted((a, b) => b.x - a.x);
  const others = scenarios.filter(({ co2eAvoidedKg }) => co2eAvoidedKg <= 0);
  const saving = scenarios.filter(
    ({ co2eAvoidedKg, costPerTonneAvoided }) => co2eAvoidedKg > 0 && costPerTonneAvoided === null
  );
  const sentences = avoiding.map(
    ({ name, x, y }) =>
      `${name} avoids ${figureText(x, tonnes)} a year and costs ${figureText(y, figures)} a tonne`
  );
  const saves =
    saving.length === 0
      ? ''
      : ` Money is saved with the tonnes by ${listInWords(saving.map(({ name, co2eAvoidedKg }) => `${name} (${figureText(co2eAvoidedKg / 1000, tonnes)} a year)`))}.`;
  const none =
    others.length === 0 ? '' : ` No tonne is avoided by ${listInWords(others.map(({ name }) => name))}.`;
  const empty =
    avoiding.length > 0
      ? null
      : saving.length > 0
        ? `Nothing to draw: no scenario pays for its tonnes.${saves}`
        : 'Nothing to draw: no scenario avoids emissions against the baseline.';

  return {
    title: 'Cost of a tonne avoided',
    summary: empty ?? `${listInWords(sentences)}.${saves}${none}`,
    empty,
    kind: 'plot',
    stacked: false,
    x: { title: 'CO₂e avoided a year, t', scale: 'linear', figures: tonnes, least: 0 },
    y: {
      title: `Cost of a tonne avoided, ${currency}`,
      scale: 'linear',
      figures,
      least: 0,
      most: 0
    },
    series: drawn.map(({ name, index, x, y }) => ({
      label: name,
      drawn: 'blocks',
      named: 'by-labels',
      style: seriesStyle(index),
      points: [{ x, y, label: name }]
    })),
    marks: [{ kind: 'level', axis: 'y', at: 0, label: '', tone: 'zero' }],
    table: {
      columns: [
        nameColumn('Scenario'),
        numberColumn('CO₂e avoided a year, t'),
        numberColumn(`Cost of a tonne avoided, ${currency}`)
      ],
      rows: scenarios.map(({ id, name, co2eAvoidedKg, costPerTonneAvoided }) => ({
        cells: [
          nameCell(name),
          numberCell(co2eAvoidedKg / 1000, `${id}.againstBaseline.co2eAvoidedKg`),
          moneyCell(costPerTonneAvoided, `${id}.againstBaseline.costPerTonneAvoided`)
        ]
      }))
    }
  };
}
