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

/**
 * The places around a spot, `gap` away from it: right and left of it, then above and below, where the label may slide
 * along as far as `area` asks.
 */
export function placesAround(
  { x, y }: Spot,
  {
    width,
    height,
    gap,
    area
  }: { readonly width: number; readonly height: number; readonly gap: number; readonly area: Box }
): Box[] {
  const right = x + gap;
  const left = x - gap - width;
  const [above, level, below] = [y - gap - height, y - height / 2, y + gap];
  const middle = Math.max(area.left, Math.min(area.left + area.width - width, x - width / 2));
  return [
    { left: right, top: above },
    { left: right, top: level },
    { left: right, top: below },
    { left, top: above },
    { left, top: level },
    { left, top: below },
    { left: middle, top: above },
    { left: middle, top: below }
  ].map((corner) => ({ ...corner, width, height }));
}
