/** How agents look in charts: one colour and one marker each, the same everywhere, and never those of another agent. */
import { agentColours, type AgentColour, type SeriesStyle } from './chart-data.ts';
import { seriesStyle } from './series-style.ts';

/** Said where the colours are seen. The pairing of agents and colours is from memory; the shades are ours. */
export const agentColourSource =
  'Colours of the agents after ISO 5360:2016, Anaesthetic vaporizers: agent-specific filling systems (pairing from memory).';

const markers = {
  sevoflurane: 'circle',
  isoflurane: 'square',
  desflurane: 'triangle',
  halothane: 'diamond',
  enflurane: 'star'
} as const satisfies Record<AgentColour, SeriesStyle['marker']>;

/** Colours of the palette that no agent has: for what stands in a chart of agents and is none. */
const besideAgents = [3, 7, 4] as const;

/** The style of `group` where that is an agent's name, in capitals or not; else the style number `index` of those that are no agent's. */
export function agentStyle(group: string, index = 0): SeriesStyle {
  const agent = agentColours.find((each) => each === group.toLowerCase());
  return agent === undefined
    ? styleBesideAgents(index)
    : { colour: agent, dash: 'solid', marker: markers[agent] };
}

/** The style number `index`, 0 first, of what stands beside agents and is none: it wears the colour of none. */
export function styleBesideAgents(index: number): SeriesStyle {
  const { marker, dash } = seriesStyle(index);
  const { colour } = seriesStyle(besideAgents[index % besideAgents.length] ?? 0);
  return { colour, dash, marker: index === 0 ? 'cross' : marker };
}
