/** The colours and the type of a chart, read from the app's tokens: a canvas knows nothing of custom properties. */
import { agentColours, type AgentColour, type SeriesColour } from './chart-data.ts';

export interface ChartLook {
  readonly paper: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly inkFaint: string;
  readonly raised: string;
  readonly grid: string;
  readonly axis: string;
  /** Series 1 to 8, 0 first. */
  readonly series: readonly string[];
  readonly agents: Readonly<Record<AgentColour, string>>;
  readonly fontFamily: string;
  readonly fontPx: number;
  /** Device pixels for one pixel of the page: more on paper and in a saved picture. */
  readonly pixelRatio: number;
}

/**
 * Reads the tokens as they hold at `probe`, an element in the page: with the class `light-set` the light ones, whatever
 * the theme.
 */
export function readChartLook(probe: HTMLElement, pixelRatio: number): ChartLook {
  const style = getComputedStyle(probe);
  const colour = (token: string): string => {
    probe.style.color = `var(${token})`;
    return style.color;
  };
  return {
    paper: colour('--paper'),
    ink: colour('--ink'),
    inkSoft: colour('--ink-soft'),
    inkFaint: colour('--ink-faint'),
    raised: colour('--paper-raised'),
    grid: colour('--chart-grid'),
    axis: colour('--chart-axis'),
    series: [1, 2, 3, 4, 5, 6, 7, 8].map((index) => colour(`--series-${index}`)),
    agents: Object.fromEntries(
      agentColours.map((agent) => [agent, colour(`--agent-${agent}`)])
    ) as ChartLook['agents'],
    fontFamily: style.fontFamily,
    fontPx: 13,
    pixelRatio
  };
}

/** A colour of a series as it is drawn. */
export function colourIn(look: ChartLook, colour: SeriesColour): string {
  return typeof colour === 'number' ? (look.series[colour - 1] ?? look.ink) : look.agents[colour];
}
