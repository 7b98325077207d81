/** How much of the spread of a figure over the draws one input makes by itself. */

const bins = 20;

/** The numbers of the draws in order of an input: made once for it, whatever figures are held against it. */
export const drawsInOrder = (order: Float64Array): readonly number[] =>
  [...order.keys()].sort((a, b) => (order[a] as number) - (order[b] as number) || a - b);

/**
 * The first-order share of the variance of a figure: the variance, over bins of the input, of the figure's mean in the
 * bin, over its variance over all draws; less what as many bins give by chance, and never below 0.
 * Sobol IM, Mathematics and Computers in Simulation 55 (2001), 271 (from memory), by bins of draws already made.
 * @param values the figure in every draw; draws in which it is no finite number are left out
 * @param inOrder the draws in order of the input, as `drawsInOrder` gives them
 * @returns 0 to 1; 0 where the figure does not vary
 */
export function varianceShare(values: Float64Array, inOrder: readonly number[]): number {
  const draws = inOrder.filter((draw) => Number.isFinite(values[draw]));
  const count = draws.length;
  const groups = Math.min(bins, Math.floor(count / 2));
  if (groups < 2) return 0;
  const mean = draws.reduce((sum, draw) => sum + (values[draw] as number), 0) / count;
  let total = 0;
  let between = 0;
  for (let group = 0; group < groups; group += 1) {
    const from = Math.floor((group * count) / groups);
    const to = Math.floor(((group + 1) * count) / groups);
    let sum = 0;
    for (let at = from; at < to; at += 1) {
      const off = (values[draws[at] as number] as number) - mean;
      sum += off;
      total += off * off;
    }
    between += (sum * sum) / (to - from);
  }
  if (!(total > 0)) return 0;
  const byChance = (groups - 1) / (count - 1);
  return Math.max(0, (between / total - byChance) / (1 - byChance));
}
