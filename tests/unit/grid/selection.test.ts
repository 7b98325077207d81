import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Place } from '#lib/grid/moves.ts';
import {
  blockBetween,
  clampSelection,
  coversWholeRows,
  everything,
  holds,
  isOneCell,
  movingCorner,
  onePlace,
  placesOf,
  roundInside,
  rowsOf,
  stretched,
  wholeColumns,
  wholeRows
} from '#lib/grid/selection.ts';

const at = (row: number, column: number): Place => ({ row, column });
const extent = { rows: 6, columns: 4 };
const place = fc.record({ row: fc.integer({ min: 0, max: 5 }), column: fc.integer({ min: 0, max: 3 }) });

describe('a selection', () => {
  it('stretches from the cursor, and shrinks back again', () => {
    let selection = onePlace(at(2, 2));
    expect(isOneCell(selection.block)).toBe(true);
    selection = stretched(selection, at(4, 1));
    expect(selection).toEqual({ active: at(2, 2), block: { top: 2, left: 1, bottom: 4, right: 2 } });
    expect(movingCorner(selection)).toEqual(at(4, 1));
    expect(stretched(selection, at(2, 2)).block).toEqual(onePlace(at(2, 2)).block);
  });

  it('the corner that moves is the one it was stretched to', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        expect(movingCorner(stretched(onePlace(from), to))).toEqual(to);
      })
    );
  });

  it('takes whole rows, whole columns, everything', () => {
    expect(wholeRows({ from: 3, to: 1 }, extent)).toEqual({
      active: at(3, 0),
      block: { top: 1, left: 0, bottom: 3, right: 3 }
    });
    expect(coversWholeRows(wholeRows({ from: 3, to: 1 }, extent).block, extent)).toBe(true);
    expect(wholeColumns({ from: 1, to: 2 }, extent).block).toEqual({ top: 0, left: 1, bottom: 5, right: 2 });
    expect(coversWholeRows(wholeColumns({ from: 1, to: 2 }, extent).block, extent)).toBe(false);
    expect(everything(at(2, 2), extent)).toEqual({
      active: at(2, 2),
      block: { top: 0, left: 0, bottom: 5, right: 3 }
    });
  });

  it('is cut back to a grid that has shrunk', () => {
    const selection = { active: at(5, 3), block: { top: 1, left: 2, bottom: 5, right: 3 } };
    expect(clampSelection(selection, { rows: 3, columns: 3 })).toEqual({
      active: at(2, 2),
      block: { top: 1, left: 2, bottom: 2, right: 2 }
    });
    expect(clampSelection(selection, { rows: 0, columns: 4 }).active).toEqual(at(0, 3));
  });

  it('Enter and Tab inside a block visit each of its cells once, and Shift goes the same way back', () => {
    fc.assert(
      fc.property(place, place, fc.constantFrom('rows' as const, 'columns' as const), (one, other, along) => {
        const block = blockBetween(one, other);
        const cells = placesOf(block);
        const key = ({ row, column }: Place) => `${row},${column}`;
        const seen = new Set<string>();
        let now = one;
        for (let step = 0; step < cells.length; step += 1) {
          expect(holds(block, now)).toBe(true);
          seen.add(key(now));
          const next = roundInside(block, now, { along, back: false });
          expect(roundInside(block, next, { along, back: true })).toEqual(now);
          now = next;
        }
        expect(seen.size).toBe(cells.length);
        expect(now).toEqual(one);
      })
    );
    expect(
      roundInside({ top: 0, left: 0, bottom: 1, right: 1 }, at(0, 1), { along: 'rows', back: false })
    ).toEqual(at(1, 0));
    expect(
      roundInside({ top: 0, left: 0, bottom: 1, right: 1 }, at(1, 0), { along: 'columns', back: false })
    ).toEqual(at(0, 1));
  });

  it('lists its rows and its cells in reading order', () => {
    expect(rowsOf({ top: 2, left: 0, bottom: 4, right: 0 })).toEqual([2, 3, 4]);
    expect(placesOf({ top: 1, left: 1, bottom: 2, right: 2 })).toEqual([
      at(1, 1),
      at(1, 2),
      at(2, 1),
      at(2, 2)
    ]);
  });
});
