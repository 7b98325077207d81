/** Tonnes of CO₂e a year by line and scenario. */
import type { Co2eLine, Co2eLines } from '#lib/calc/estimate-types.ts';
import { co2eLineTitles } from '#lib/calc/line-names.ts';
import { avoidedInWords } from '#lib/numbers/change-in-words.ts';
import type { ChartData } from './chart-data.ts';
import { figureText, listInWords } from './figure-text.ts';
import { linesByScenario } from './lines-by-scenario.ts';
import { seriesStyle } from './series-style.ts';

export interface YearlyTonnes {
  /** How warming is counted, e.g. `AR6, 100 years`: always said. */
  readonly warming: string;
  /** The baseline first. */
  readonly scenarios: readonly { readonly id: string; readonly name: string; readonly co2eKg: Co2eLines }[];
}

/** Colours are the same for the same line in the chart of cost. */
const lines: readonly { readonly key: Co2eLine; readonly colour: number }[] = [
  { key: 'agents', colour: 0 },
  { key: 'nitrousOxide', colour: 3 },
  { key: 'nitrousOxideLost', colour: 5 },
  { key: 'gases', colour: 1 },
  { key: 'absorbent', colour: 2 },
  { key: 'electricity', colour: 4 },
  { key: 'intravenous', colour: 6 },
  { key: 'manufacture', colour: 7 }
];

const figures = { kind: 'number', unit: 't' } as const;

export function yearlyTonnes({ warming, scenarios }: YearlyTonnes): ChartData {
  const [baseline, ...others] = scenarios;
  return linesByScenario({
    title: 'Emissions a year by line',
    summary:
      baseline === undefined
        ? ''
        : `${baseline.name} causes ${figureText(baseline.co2eKg.total / 1000, figures)} CO₂e a year` +
          (others.length === 0
            ? ''
            : `; against it ${listInWords(
                others.map(
                  ({ name, co2eKg }) => `${name} ${avoidedInWords(baseline.co2eKg.total - co2eKg.total).text}`
                )
              )}`) +
          ` (${warming}).`,
    empty: 'Nothing to draw: no scenario emits anything yet. Fill in the case mix and the flow plans.',
    figures,
    axisTitle: `CO₂e a year, t (${warming})`,
    unit: 't CO₂e a year',
    lines: lines.map(({ key, colour }) => ({ label: co2eLineTitles[key], style: seriesStyle(colour) })),
    scenarios: scenarios.map(({ id, name, co2eKg }) => ({
      name,
      parts: lines.map(({ key }) => co2eKg[key] / 1000),
      paths: [...lines.map(({ key }) => `${id}.perYear.co2eKg.${key}`), `${id}.perYear.co2eKg.total`]
    }))
  });
}
