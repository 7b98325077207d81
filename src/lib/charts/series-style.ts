import type { Dash, Marker, SeriesColour, SeriesStyle } from './chart-data.ts';

const dashes: readonly Dash[] = ['solid', 'dashed', 'dotted', 'dash-dot'];
const markers: readonly Marker[] = ['circle', 'square', 'triangle', 'diamond', 'cross', 'star'];

/** The place of today among the scenarios: ink, the colour of what is not a scenario of change. */
export const todaysPlace = 7;

/** The style of the series number `index`, 0 first: colour, dash and marker change together. */
export function seriesStyle(index: number): SeriesStyle {
  return {
    colour: ((index % 8) + 1) as SeriesColour,
    dash: dashes[index % dashes.length] ?? 'solid',
    marker: markers[index % markers.length] ?? 'circle'
  };
}
