/**
 * How much of what is not known of an answer each uncertain input carries: the width of its swing as a share of the
 * widths of all swings together. It leaves out what inputs do to each other, as swings do.
 */

/** From the lowest to the highest of the answers at an input's ends, in their unit; 0 where there is none to compare. */
export function widthOf(answers: readonly number[]): number {
  const finite = answers.filter(Number.isFinite);
  return finite.length < 2 ? 0 : Math.max(...finite) - Math.min(...finite);
}

/** Shares of the sum of widths (0 to 1), in their order; all 0 where nothing has width. */
export function sharesOf(widths: readonly number[]): number[] {
  const sum = widths.reduce((total, width) => total + width, 0);
  return widths.map((width) => (sum > 0 ? width / sum : 0));
}

/** Places of the fewest entries whose shares reach `atLeast` (0 to 1), the largest first; none where nothing has a share. */
export function fewestCarrying(shares: readonly number[], atLeast: number): number[] {
  const order = shares.map((_, place) => place).sort((a, b) => (shares[b] ?? 0) - (shares[a] ?? 0));
  const carrying: number[] = [];
  let sum = 0;
  for (const place of order) {
    // A billionth of slack: shares that make up the whole add up to a little less in binary numbers.
    if (sum >= atLeast - 1e-9 || !((shares[place] ?? 0) > 0)) break;
    carrying.push(place);
    sum += shares[place] ?? 0;
  }
  return carrying;
}
