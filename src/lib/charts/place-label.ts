/** Finds a place for a label where it covers least. */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width &&
  b.left < a.left + a.width &&
  a.top < b.top + b.height &&
  b.top < a.top + a.height;

const holds = (box: Box, { x, y }: Spot): boolean =>
  x >= box.left && x <= box.left + box.width && y >= box.top && y <= box.top + box.height;

const inside = (box: Box, area: Box): boolean =>
  box.left >= area.left &&
  box.top >= area.top &&
  box.left + box.width <= area.left + area.width &&
  box.top + box.height <= area.top + area.height;

/**
 * The candidate that stays in `area`, covers none of `taken` (labels already there) and fewest of `ink` (spots on lines
 * and markers); the earlier of two that are as good. null where each would cover a label or leave the area.
 */
export function placeLabel(
  candidates: readonly Box[],
  { area, taken, ink }: { readonly area: Box; readonly taken: readonly Box[]; readonly ink: readonly Spot[] }
): Box | null {
  let best: { box: Box; covered: number } | null = null;
  for (const box of candidates) {
    if (!inside(box, area) || taken.some((other) => overlap(box, other))) continue;
    const covered = ink.filter((spot) => holds(box, spot)).length;
    if (best === null || covered < best.covered) best = { box, covered };
  }
  return best?.box ?? null;
}

/** The eight places around a spot, `gap` away from it: right and left of it first, then above and below. */
export function placesAround(
  { x, y }: Spot,
  { width, height, gap }: { readonly width: number; readonly height: number; readonly gap: number }
): Box[] {
  const lefts = { right: x + gap, left: x - gap - width, middle: x - width / 2 };
  const tops = { above: y - gap - height, below: y + gap, level: y - height / 2 };
  return [
    { left: lefts.right, top: tops.above },
    { left: lefts.right, top: tops.level },
    { left: lefts.right, top: tops.below },
    { left: lefts.left, top: tops.above },
    { left: lefts.left, top: tops.level },
    { left: lefts.left, top: tops.below },
    { left: lefts.middle, top: tops.above },
    { left: lefts.middle, top: tops.below }
  ].map(({ left, top }) => ({ left, top, width, height }));
}
