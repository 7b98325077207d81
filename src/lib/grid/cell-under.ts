/** From an element of the grid back to what it stands for: its numbers are in `data-` attributes. */
import type { Place } from './moves.ts';

export function numberIn(element: Element | null | undefined, attribute: string): number | null {
  const text = element?.getAttribute(attribute);
  return text === null || text === undefined ? null : Number(text);
}

/** The number that the nearest element with `attribute` carries, from `element` outwards. */
export function numberAbove(element: Element | null, attribute: string): number | null {
  return numberIn(element?.closest(`[${attribute}]`), attribute);
}

export function placeOf(element: Element | null): Place | null {
  const cell = element?.closest('[role=gridcell]');
  const row = numberIn(cell?.parentElement, 'data-row');
  const column = numberIn(cell, 'data-column');
  return row === null || column === null ? null : { row, column };
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The cell at a point of the window, or the nearest in sight where the point lies beside the cells. */
export function placeUnder(
  point: Point,
  { scroller, headerPx }: { readonly scroller: HTMLElement; readonly headerPx: number }
): Place | null {
  const box = scroller.getBoundingClientRect();
  const x = Math.max(box.left + 1, Math.min(point.x, box.left + scroller.clientWidth - 2));
  const y = Math.max(box.top + headerPx + 1, Math.min(point.y, box.top + scroller.clientHeight - 2));
  const under = document.elementFromPoint(x, y);
  const row = numberAbove(under, 'data-row-header');
  return row === null ? placeOf(under) : { row, column: 0 };
}
