import { describe, expect, it } from 'vitest';
import { useAgainstFlow, type UseAgainstFlow } from '#lib/charts/use-against-flow.ts';

const given: UseAgainstFlow = {
  caseName: 'Hernia repair',
  agent: 'sevoflurane',
  curve: [
    { flowLPerMin: 6, liquidMl: 50 },
    { flowLPerMin: 0.5, liquidMl: 11 }
  ],
  constantDial: [{ flowLPerMin: 6, liquidMl: 48 }],
  floorMl: 7.25,
  plans: [
    {
      name: 'Usual practice',
      flowLPerMin: 2.5,
      liquidMl: 26,
      paths: { flow: 'today.cases.hernia.meanFlowLPerMin', liquid: 'today.cases.hernia.liquidMl' }
    },
    { name: 'Low flow', flowLPerMin: 1, liquidMl: 15 }
  ]
};

describe('use against fresh gas flow', () => {
  const chart = useAgainstFlow(given);

  it('draws the floor as a line across', () => {
    expect(chart.marks).toEqual([
      { kind: 'level', axis: 'y', at: 7.25, label: 'Floor: if nothing spilled', tone: 'floor' }
    ]);
    expect(chart.summary).toContain('No flow goes below 7.25\u00a0mL');
  });

  it('marks each plan by its name, at its flow and its use', () => {
    const plans = chart.series.find(({ drawn }) => drawn === 'points');
    expect(plans?.points).toEqual([
      { x: 1, y: 15, label: 'Low flow' },
      { x: 2.5, y: 26, label: 'Usual practice' }
    ]);
  });

  it('joins the curve in the order of the flows', () => {
    const curve = chart.series.find(({ label }) => label === 'Circle-system balance');
    expect(curve?.points.map(({ x }) => x)).toEqual([0.5, 6]);
  });

  it('holds in its table each use and the floor, with where the figures come from', () => {
    const usual = chart.table.rows.find(({ cells }) => cells[0]?.text === 'Usual practice');
    expect(usual?.cells.map(({ value }) => value)).toEqual(['Usual practice', 2.5, 26]);
    expect(usual?.cells[2]?.path).toBe('today.cases.hernia.liquidMl');
    expect(chart.table.rows.map(({ cells }) => cells[0]?.text)).toContain('Floor: if nothing spilled');
    expect(chart.table.rows).toHaveLength(6);
  });

  it('leaves out what is not known', () => {
    const bare = useAgainstFlow({ ...given, constantDial: [], floorMl: null, plans: [] });
    expect(bare.marks).toEqual([]);
    expect(bare.series.map(({ label }) => label)).toEqual(['Circle-system balance']);
    expect(bare.table.rows.map(({ cells }) => cells[0]?.text)).not.toContain('Floor: if nothing spilled');
    expect(bare.empty).toBeNull();
  });

  it('says what to do where there is nothing to draw', () => {
    const none = useAgainstFlow({ ...given, curve: [], constantDial: [], plans: [], floorMl: null });
    expect(none.empty).toBe(
      'Nothing to draw for Hernia repair: it has no vapour. Choose a case with an inhaled agent.'
    );
    expect(none.summary).toBe(none.empty);
  });
});
