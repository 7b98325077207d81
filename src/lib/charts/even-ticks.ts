/**
 * Round values for the marks of an axis from `low` to `high`, at most `most` of them (2 or more), all within it: multiples
 * of 1, 2 or 5 times a power of ten. Empty where the axis has no length.
 */
export function evenTicks({
  low,
  high,
  most
}: {
  readonly low: number;
  readonly high: number;
  readonly most: number;
}): number[] {
  if (!(high > low)) return [];
  let power = Math.floor(Math.log10((high - low) / most));
  for (;;) {
    for (const factor of [1, 2, 5]) {
      // A power of ten below one is divided by, not multiplied with: 3 / 10 is 0.3, 3 · 0.1 is not.
      const tick = (count: number): number =>
        power < 0 ? (count * factor) / 10 ** -power : count * factor * 10 ** power;
      const first = Math.ceil(low / tick(1));
      const last = Math.floor(high / tick(1));
      if (last - first + 1 <= most) {
        return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => tick(first + index) + 0);
      }
    }
    power += 1;
  }
}
