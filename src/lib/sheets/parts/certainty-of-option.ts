/** How sure an option is, from draws that were made. */
import type { RunSummary, SpreadOfOption } from '#lib/calc/what-if/draws.ts';
import type { Option } from './option-list.ts';

export interface CertaintyOfOption {
  /** Share of the draws with payback within the user’s limit, 0 to 1. */
  readonly withinLimit: number;
  /** Share of the draws with a net present value above 0, 0 to 1. */
  readonly npvAboveZero: number;
  /** Where the two lie in the run. */
  readonly path: string;
}

/** null: today’s practice, and what was not drawn. */
export function certaintyOfOption(
  option: Pick<Option, 'scenarioId' | 'isTwin' | 'place'>,
  summary: RunSummary
): CertaintyOfOption | null {
  const scenario = summary.scenarios.find(({ id }) => id === option.scenarioId);
  if (option.place === null || scenario === undefined) return null;
  const drawn: Pick<SpreadOfOption, 'withinLimit' | 'npvAboveZero'> | null = option.isTwin
    ? scenario.withoutMachine
    : scenario;
  if (drawn === null) return null;
  return {
    withinLimit: drawn.withinLimit.probability,
    npvAboveZero: drawn.npvAboveZero.probability,
    path: option.isTwin ? `${scenario.id}.withoutMachine` : scenario.id
  };
}
