import { decimalText, exactDecimal } from './decimal-text.ts';

export interface RoundedParts {
  /** Plain decimal text, in the order given. */
  readonly parts: readonly string[];
  /** The rounded sum, which is also the sum of the rounded parts. */
  readonly total: string;
}

/**
 * Rounds parts so that what is displayed adds up to the displayed total (largest remainders).
 *
 * Each part is rounded down to `decimals` places (negative: tens, hundreds …); what is then missing from the rounded
 * total (halves away from zero) goes, one last place each, to the parts with the largest remainders, the earlier first.
 * So no part moves by a whole last place. Parts are finite numbers or plain decimal text, and may be negative; the
 * arithmetic is exact on their decimal text. Throws TypeError for anything else.
 */
export function partsThatAddUp(
  parts: readonly (number | string)[],
  { decimals }: { readonly decimals: number }
): RoundedParts {
  const exact = parts.map((part) => exactDecimal(String(part)));
  const scale = Math.max(decimals, 0, ...exact.map((each) => each.decimals));
  const step = 10n ** BigInt(scale - decimals);
  const units = exact.map((each) => each.digits * 10n ** BigInt(scale - each.decimals));
  const sum = units.reduce((a, b) => a + b, 0n);

  const floors = units.map((each) => each / step - (each % step < 0n ? 1n : 0n));
  const total = roundHalfAway(sum, step);
  const missing = Number(total - floors.reduce((a, b) => a + b, 0n));
  const byRemainder = units
    .map((each, index) => ({ index, remainder: each - (floors[index] ?? 0n) * step }))
    .sort((a, b) => (a.remainder === b.remainder ? a.index - b.index : a.remainder < b.remainder ? 1 : -1));
  const raised = new Set(byRemainder.slice(0, missing).map(({ index }) => index));

  const text = (lastPlaces: bigint): string =>
    decimals >= 0
      ? decimalText({ digits: lastPlaces, decimals })
      : decimalText({ digits: lastPlaces * 10n ** BigInt(-decimals), decimals: 0 });
  return {
    parts: floors.map((floor, index) => text(raised.has(index) ? floor + 1n : floor)),
    total: text(total)
  };
}

function roundHalfAway(value: bigint, step: bigint): bigint {
  const size = value < 0n ? -value : value;
  const rounded = (2n * size + step) / (2n * step);
  return value < 0n ? -rounded : rounded;
}
