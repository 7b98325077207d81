/** Filling: which cell takes its text from which. Pure. */
import type { Place } from './moves.ts';
import { holds, type Block } from './selection.ts';

export interface Fill {
  readonly from: Place;
  readonly to: Place;
}

/** Repeats `source` over `target`, which holds it and grew from it; the source's own cells are left out. */
export function fillOver(source: Block, target: Block): Fill[] {
  const height = source.bottom - source.top + 1;
  const width = source.right - source.left + 1;
  const fills: Fill[] = [];
  for (let row = target.top; row <= target.bottom; row += 1) {
    for (let column = target.left; column <= target.right; column += 1) {
      if (holds(source, { row, column })) continue;
      fills.push({
        from: {
          row: source.top + modulo(row - source.top, height),
          column: source.left + modulo(column - source.left, width)
        },
        to: { row, column }
      });
    }
  }
  return fills;
}

const modulo = (value: number, by: number): number => ((value % by) + by) % by;

/** The block's first row over the rest of it; a block of one row takes from the row above. */
export function fillDown(block: Block): Fill[] {
  const top = block.top === block.bottom ? block.top - 1 : block.top;
  return top < 0 ? [] : fillOver({ ...block, top, bottom: top }, { ...block, top });
}

/** The block's first column over the rest of it; a block of one column takes from the column before. */
export function fillRight(block: Block): Fill[] {
  const left = block.left === block.right ? block.left - 1 : block.left;
  return left < 0 ? [] : fillOver({ ...block, left, right: left }, { ...block, left });
}

/**
 * What a drag of the fill handle from `source` to `place` covers: it grows one way only, the way that leads farther;
 * back inside the source it covers nothing more.
 */
export function draggedFill(source: Block, place: Place): Block {
  const down = place.row > source.bottom ? place.row - source.bottom : Math.min(0, place.row - source.top);
  const along =
    place.column > source.right ? place.column - source.right : Math.min(0, place.column - source.left);
  if (down === 0 && along === 0) return source;
  if (Math.abs(down) >= Math.abs(along)) {
    return down > 0 ? { ...source, bottom: place.row } : { ...source, top: place.row };
  }
  return along > 0 ? { ...source, right: place.column } : { ...source, left: place.column };
}
