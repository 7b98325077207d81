/** Yearly cost in cash by line and scenario. */
import type { CashLine, CostLines } from '#lib/calc/estimate-types.ts';
import { cashLineTitles } from '#lib/calc/line-names.ts';
import { savingInWords } from '#lib/numbers/change-in-words.ts';
import type { ChartData } from './chart-data.ts';
import { figureText, listInWords } from './figure-text.ts';
import { linesByScenario } from './lines-by-scenario.ts';
import { seriesStyle } from './series-style.ts';

export interface YearlyCost {
  readonly currency: string;
  /** The baseline first. */
  readonly scenarios: readonly { readonly id: string; readonly name: string; readonly cost: CostLines }[];
}

/** Colours are the same for the same line in the chart of tonnes. */
const lines: readonly { readonly key: CashLine; readonly colour: number }[] = [
  { key: 'agents', colour: 0 },
  { key: 'gases', colour: 1 },
  { key: 'absorbent', colour: 2 },
  { key: 'service', colour: 3 },
  { key: 'electricity', colour: 4 },
  { key: 'other', colour: 5 },
  { key: 'drugs', colour: 6 },
  { key: 'capture', colour: 7 }
];

export function yearlyCost({ currency, scenarios }: YearlyCost): ChartData {
  const figures = { kind: 'money', currency } as const;
  const [baseline, ...others] = scenarios;
  const against = (total: string, base: string): string =>
    // Amounts are read here to compare totals in a sentence; the ledger itself is exact, in the core.
    savingInWords(Number(base) - Number(total), { currency }).text;

  return linesByScenario({
    title: 'Yearly cost by line',
    summary:
      baseline === undefined
        ? ''
        : `${baseline.name} costs ${figureText(Number(baseline.cost.total), figures)} a year` +
          (others.length === 0
            ? '.'
            : `; against it ${listInWords(others.map(({ name, cost }) => `${name} ${against(cost.total, baseline.cost.total)}`))}.`),
    empty: 'Nothing to draw: no scenario costs anything yet. Fill in the case mix and the prices.',
    figures,
    axisTitle: `Cost a year, ${currency}`,
    unit: `${currency} a year`,
    lines: lines.map(({ key, colour }) => ({ label: cashLineTitles[key], style: seriesStyle(colour) })),
    scenarios: scenarios.map(({ id, name, cost }) => ({
      name,
      parts: lines.map(({ key }) => cost[key]),
      paths: [...lines.map(({ key }) => `${id}.perYear.cost.${key}`), `${id}.perYear.cost.total`]
    }))
  });
}
