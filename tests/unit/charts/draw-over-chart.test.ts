/** What is written on the canvas, taken from a context that only listens. */
import { describe, expect, it } from 'vitest';
import type { ChartData } from '#lib/charts/chart-data.ts';
import type { ChartLook } from '#lib/charts/chart-look.ts';
import { cumulativeCashFlow } from '#lib/charts/cumulative-cash-flow.ts';
import { drawOver, drawUnder, type Plot } from '#lib/charts/draw-over-chart.ts';
import { modelAgainstPublished } from '#lib/charts/model-against-published.ts';
import { useAgainstFlow } from '#lib/charts/use-against-flow.ts';

interface Written {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

const look: ChartLook = {
  paper: 'white',
  ink: 'black',
  inkSoft: 'grey',
  inkFaint: 'silver',
  raised: 'white',
  grid: 'silver',
  axis: 'grey',
  agents: {
    sevoflurane: 'gold',
    isoflurane: 'purple',
    desflurane: 'blue',
    halothane: 'red',
    enflurane: 'orange'
  },
  series: ['c1', 'c2', 'c3', 'c4', 'c5', 'c6', 'c7', 'c8'],
  fontFamily: 'sans-serif',
  fontPx: 13,
  pixelRatio: 1
};
const area = { left: 50, right: 550, top: 20, bottom: 320 };
const letterPx = 7;

/** A plot of 0 to `most` both ways, which notes what is written and which lines are drawn across. */
function listening(most: { x: number; y: number }): { plot: Plot; written: Written[]; lines: Written[] } {
  const written: Written[] = [];
  const lines: Written[] = [];
  const ctx = new Proxy({} as CanvasRenderingContext2D, {
    get: (_, name) => {
      if (name === 'measureText') return (text: string) => ({ width: text.length * letterPx });
      if (name === 'fillText') return (text: string, x: number, y: number) => written.push({ text, x, y });
      if (name === 'moveTo') return (x: number, y: number) => lines.push({ text: '', x, y });
      return () => undefined;
    },
    set: () => true
  });
  const plot: Plot = {
    ctx,
    area,
    x: (value) => area.left + (value / most.x) * (area.right - area.left),
    y: (value) => area.bottom - (value / most.y) * (area.bottom - area.top),
    valueAtX: (pixel) => ((pixel - area.left) / (area.right - area.left)) * most.x,
    bar: () => null
  };
  return { plot, written, lines };
}

const flows: ChartData = useAgainstFlow({
  caseName: 'Hernia repair',
  agent: 'sevoflurane',
  curve: [0.25, 2, 4, 6, 8].map((flowLPerMin) => ({ flowLPerMin, liquidMl: 7 + 7 * flowLPerMin })),
  constantDial: [0.25, 8].map((flowLPerMin) => ({ flowLPerMin, liquidMl: 7.6 * flowLPerMin })),
  floorMl: 7,
  plans: [0.4, 0.5, 1, 2.5].map((flowLPerMin) => ({
    name: `Plan at ${flowLPerMin}`,
    flowLPerMin,
    liquidMl: 7 + 7 * flowLPerMin
  }))
});

describe('drawn around the data', () => {
  it('is the floor, at its height', () => {
    const { plot, lines } = listening({ x: 8, y: 70 });
    drawUnder(plot, { data: flows, look, namesAtEnds: true, labelsBeside: true });
    expect(lines).toContainEqual({ text: '', x: area.left, y: Math.round(plot.y(7)) + 0.5 });
  });

  it('are the names of all lines, plans and marks, none over another', () => {
    const { plot, written } = listening({ x: 8, y: 70 });
    drawOver(plot, { data: flows, look, namesAtEnds: true, labelsBeside: true });
    const expected = [
      'Circle-system balance',
      'Published formula',
      'Floor: if nothing spilled',
      ...[0.4, 0.5, 1, 2.5].map((flow) => `Plan at ${flow}`)
    ];
    expect(written.map(({ text }) => text).sort()).toEqual(expected.sort());
    for (const [index, one] of written.entries()) {
      for (const other of written.slice(index + 1)) {
        const apart =
          one.x + one.text.length * letterPx <= other.x ||
          other.x + other.text.length * letterPx <= one.x ||
          Math.abs(one.y - other.y) >= 13;
        expect(apart, `${one.text} and ${other.text}`).toBe(true);
      }
    }
  });

  it('leaves the names of lines to the key where the page is narrow', () => {
    const { plot, written } = listening({ x: 8, y: 70 });
    drawOver(plot, { data: flows, look, namesAtEnds: false, labelsBeside: true });
    expect(written.map(({ text }) => text)).not.toContain('Circle-system balance');
  });

  it('is the payback, written at the point', () => {
    const data = cumulativeCashFlow({
      currency: 'EUR',
      paybackLimitYears: 5,
      scenarios: [
        {
          name: 'New',
          place: 0,
          isChosen: true,
          cashFlow: ['-10', '4', '4', '4'],
          savings: ['0', '4', '4', '4'],
          paybackYears: 2.5,
          aheadForATime: [],
          worthAtEnd: '0',
          band: null
        }
      ]
    });
    const { plot, written } = listening({ x: 8, y: 70 });
    drawOver(plot, { data, look, namesAtEnds: true, labelsBeside: true });
    const at = written.find(({ text }) => text === '2.5\u00a0years');
    expect(Math.abs((at?.x ?? NaN) - plot.x(2.5))).toBeLessThan(80);
    expect(written.map(({ text }) => text)).toContain('Limit, 5\u00a0years');
  });
});

it('writes no number of a square chart over a point, its own or another’s', () => {
  const checks = Array.from({ length: 12 }, (_, i) => ({
    what: `Row ${i + 1}`,
    group: i % 2 === 0 ? 'Sevoflurane' : 'Desflurane',
    published: 10 + (i % 4),
    model: 10 + i / 3,
    source: 'A 2000'
  }));
  const data = modelAgainstPublished({ quantity: 'Liquid', unit: 'mL', scale: 'linear', checks });
  const { plot, written } = listening({ x: data.x.most!, y: data.y.most! });
  drawOver(plot, { data, look, namesAtEnds: false, labelsBeside: false });
  const numbers = written.filter(({ text }) => /^\d+$/.test(text));
  expect(numbers).toHaveLength(checks.length);
  for (const { text, x, y } of numbers)
    for (const { published, model } of checks) {
      const beside = plot.x(published) < x - 4 || plot.x(published) > x + text.length * letterPx + 4;
      expect(beside || Math.abs(plot.y(model) - y) > look.fontPx / 2 + 4).toBe(true);
    }
});
