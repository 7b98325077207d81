import { describe, expect, it } from 'vitest';
import { agentsAtFlows } from '#lib/charts/agents-at-flows.ts';

const rows = [
  { agent: 'Sevoflurane', flowLPerMin: 0.5, figures: { ml: 8, kg: 2.3 } },
  { agent: 'Sevoflurane', flowLPerMin: 2, figures: { ml: 20, kg: 5.9 } },
  { agent: 'Desflurane', flowLPerMin: 0.5, figures: { ml: 22, kg: 83 } }
].map((row, at) => ({ ...row, pathOf: (key: string) => `at-flow.${at}.${key}` }));

const drawn = {
  key: 'kg',
  title: 'Emissions of an hour',
  axisTitle: 'Emissions of an hour, kg CO₂e',
  figures: { kind: 'number', unit: 'kg CO₂e' }
} as const;
const columns = [
  { key: 'ml', title: 'Liquid agent, mL' },
  { key: 'kg', title: 'Emissions, kg CO₂e' }
];

describe('agents at flows', () => {
  const chart = agentsAtFlows({ caseName: 'Hernia repair', drawn, columns, rows });

  it('draws the chosen figure, one bar from 0 an agent and flow, each agent in its colour', () => {
    expect(chart.y.names).toEqual([
      'Sevoflurane, 0.5\u00a0L/min',
      'Sevoflurane, 2\u00a0L/min',
      'Desflurane, 0.5\u00a0L/min'
    ]);
    expect(chart.series.map(({ label, style, points }) => [label, style.colour, points])).toEqual([
      [
        'Sevoflurane',
        'sevoflurane',
        [
          { x: 2.3, y: 0, from: 0 },
          { x: 5.9, y: 1, from: 0 }
        ]
      ],
      ['Desflurane', 'desflurane', [{ x: 83, y: 2, from: 0 }]]
    ]);
    expect(chart.rowEnds).toEqual(['2.3\u00a0kg CO₂e', '5.9\u00a0kg CO₂e', '83\u00a0kg CO₂e']);
  });

  it('says between what the figure lies', () => {
    expect(chart.summary).toBe(
      'From 2.3\u00a0kg CO₂e (Sevoflurane, 0.5\u00a0L/min) to 83\u00a0kg CO₂e (Desflurane, 0.5\u00a0L/min).'
    );
  });

  it('holds in its table every figure, drawn or not, with where it comes from', () => {
    expect(chart.table.rows[2]?.cells.map(({ value, path }) => [value, path])).toEqual([
      ['Desflurane, 0.5\u00a0L/min', undefined],
      [22, 'at-flow.2.ml'],
      [83, 'at-flow.2.kg']
    ]);
  });

  it('says so where there is nothing to compare', () => {
    expect(agentsAtFlows({ caseName: 'Hernia repair', drawn, columns, rows: [] }).empty).toBe(
      'Nothing to compare for Hernia repair: it has no vapour, or no agent has a price.'
    );
  });
});
