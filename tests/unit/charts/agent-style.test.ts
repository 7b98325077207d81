/** An agent has one colour everywhere, and what is no agent never wears one. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { agentStyle, agentColourSource, styleBesideAgents } from '#lib/charts/agent-style.ts';
import { agentColours, type ChartData, type SeriesColour } from '#lib/charts/chart-data.ts';
import { caseCourse } from '#lib/charts/case-course.ts';
import { modelAgainstPublished } from '#lib/charts/model-against-published.ts';
import { useAgainstFlow } from '#lib/charts/use-against-flow.ts';
import { colourDistance, lab, linearRgb } from './colour-science.ts';
import { themes, tokenColour, type Theme } from './token-colours.ts';

const labOf = (colour: SeriesColour, theme: Theme) =>
  lab(linearRgb(tokenColour(typeof colour === 'number' ? `--series-${colour}` : `--agent-${colour}`, theme)));

const published = (groups: readonly string[]) =>
  modelAgainstPublished({
    quantity: 'Liquid used',
    unit: 'mL',
    scale: 'linear',
    checks: groups.map((group) => ({ what: group, group, published: 10, model: 11, source: 'A 2000' }))
  });

it.each([
  ['Sevoflurane', 'Isoflurane', 'Desflurane'],
  ['Desflurane', 'Isoflurane'],
  ['Desflurane', 'Sevoflurane', 'Enflurane', 'None']
])('agents keep their colour whatever stands beside them: %s', (...groups) => {
  for (const { label, style } of published(groups).series)
    if (label !== 'None') expect(style.colour, label).toBe(label.toLowerCase());
});

it('agents are told apart by their marker, too', () => {
  const markers = agentColours.map((agent) => agentStyle(agent).marker);
  expect(new Set(markers).size).toBe(agentColours.length);
});

const minutes = [0, 1];
const plan = {
  name: 'Plan',
  targetPercent: 2,
  minutes,
  flowLPerMin: minutes,
  vapourMlPerMin: minutes,
  dialPercent: minutes,
  inspiredPercent: minutes,
  endTidalPercent: minutes,
  minutesToTarget: 1
};
const uses = [{ flowLPerMin: 1, liquidMl: 2 }];
const charts: readonly [string, ChartData][] = [
  ['the course of a case', caseCourse({ caseName: 'A', agent: 'Sevoflurane', plans: [plan, plan, plan] })],
  [
    'use against flow',
    useAgainstFlow({
      caseName: 'A',
      agent: 'desflurane',
      curve: uses,
      constantDial: uses,
      floorMl: null,
      plans: [{ ...uses[0]!, name: 'B' }]
    })
  ],
  ['model against published', published(['None'])]
];

describe.each(themes)('in a chart about agents what is no agent wears the colour of none, %s', (theme) => {
  it.each(charts)('%s', (_, { series }) => {
    for (const { label, style } of series)
      for (const agent of agentColours) {
        // More than the eight series must stand apart from each other.
        const distance = colourDistance(labOf(style.colour, theme), labOf(agent, theme));
        expect(distance, `${label} against ${agent}`).toBeGreaterThanOrEqual(15);
      }
  });
});

it('three styles beside agents differ in colour and dash', () => {
  const styles = [0, 1, 2].map(styleBesideAgents);
  expect(new Set(styles.map(({ colour }) => colour)).size).toBe(3);
  expect(new Set(styles.map(({ dash }) => dash)).size).toBe(3);
});

it('the standard is cited with how well it is known', () => {
  expect(agentColourSource).toMatch(/ISO 5360:2016/);
  expect(agentColourSource).toMatch(/from memory/);
});

it('no chart gives an agent’s colour by itself: whatever stands for an agent has its style from one place', () => {
  const folder = new URL('../../../src/lib/charts/', import.meta.url);
  const sources = readdirSync(folder)
    .filter((file) => /\.(ts|svelte)$/.test(file) && file !== 'agent-style.ts')
    .map((file) => [file, readFileSync(new URL(file, folder), 'utf8')] as const);
  expect(sources.length).toBeGreaterThan(20);
  const named = new RegExp(
    `colour:\\s*['"](${agentColours.join('|')})['"]|--agent-(${agentColours.join('|')})`
  );
  expect(named.test(`style: { colour: 'desflurane' }`)).toBe(true);
  expect(sources.filter(([, source]) => named.test(source)).map(([file]) => file)).toEqual([]);
});

it('a series of any agent, in any order, is drawn in the colour of that agent and of no other', () => {
  for (const first of agentColours)
    for (const second of agentColours) {
      const { series } = published([first, second, 'A method']);
      for (const { label, style } of series)
        expect(style.colour).toEqual(agentColours.find((agent) => agent === label) ?? expect.any(Number));
    }
});
