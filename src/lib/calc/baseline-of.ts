import type { EstimateInput, Scenario } from './input.ts';

/** The scenario that stands for today's practice. */
export const baselineOf = ({ scenarios }: Pick<EstimateInput, 'scenarios'>): Scenario => {
  const today = scenarios.find(({ baseline }) => baseline);
  if (today === undefined)
    throw new Error('The input has no baseline; a workbook is checked before it gets here.');
  return today;
};
