import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clampPlace, moved, tabbed, type Move, type Place } from '#lib/grid/moves.ts';

const extent = { rows: 10, columns: 4 };
const allFilled = { extent, pageRows: 3, filled: () => true };
const from = (row: number, column: number): Place => ({ row, column });

describe('a key moves the cursor', () => {
  it.each<[Move, Place, Place]>([
    ['up', from(5, 2), from(4, 2)],
    ['up', from(0, 2), from(0, 2)],
    ['down', from(5, 2), from(6, 2)],
    ['down', from(9, 2), from(9, 2)],
    ['left', from(5, 0), from(5, 0)],
    ['right', from(5, 2), from(5, 3)],
    ['row-start', from(5, 2), from(5, 0)],
    ['row-end', from(5, 2), from(5, 3)],
    ['grid-start', from(5, 2), from(0, 0)],
    ['grid-end', from(5, 2), from(9, 3)],
    ['page-down', from(5, 2), from(8, 2)],
    ['page-down', from(8, 2), from(9, 2)],
    ['page-up', from(5, 2), from(2, 2)],
    ['edge-down', from(5, 2), from(9, 2)],
    ['edge-left', from(5, 2), from(5, 0)]
  ])('%s', (move, start, end) => {
    expect(moved(start, move, allFilled)).toEqual(end);
  });

  it('an edge is the end of a run, the start of the next, or the border', () => {
    const filledRows = new Set([1, 2, 3, 6, 7]);
    const around = { extent, pageRows: 3, filled: ({ row }: Place) => filledRows.has(row) };
    const down = (row: number) => moved(from(row, 0), 'edge-down', around).row;
    const up = (row: number) => moved(from(row, 0), 'edge-up', around).row;
    expect([down(1), down(3), down(6), down(7), down(0), down(4)]).toEqual([3, 6, 7, 9, 1, 6]);
    expect([up(9), up(7), up(6), up(3), up(1)]).toEqual([7, 6, 3, 1, 0]);
  });

  it('never leads out of the grid', () => {
    const moves: Move[] = ['up', 'down', 'left', 'right', 'row-start', 'row-end', 'grid-start', 'grid-end'];
    moves.push('page-up', 'page-down', 'edge-up', 'edge-down', 'edge-left', 'edge-right');
    fc.assert(
      fc.property(
        fc.record({ rows: fc.integer({ min: 1, max: 8 }), columns: fc.integer({ min: 1, max: 5 }) }),
        fc.array(fc.constantFrom(...moves), { maxLength: 20 }),
        fc.array(fc.boolean(), { minLength: 40, maxLength: 40 }),
        (size, keys, full) => {
          const filled = ({ row, column }: Place) => full[row * size.columns + column] === true;
          let place = from(0, 0);
          for (const key of keys) {
            place = moved(place, key, { extent: size, pageRows: 2, filled });
            expect(clampPlace(place, size)).toEqual(place);
          }
        }
      )
    );
  });
});

describe('Tab', () => {
  it('goes on in reading order, and leaves the grid at either end', () => {
    expect(tabbed(from(0, 3), false, extent)).toEqual(from(1, 0));
    expect(tabbed(from(1, 0), true, extent)).toEqual(from(0, 3));
    expect(tabbed(from(9, 3), false, extent)).toBeNull();
    expect(tabbed(from(0, 0), true, extent)).toBeNull();
    expect(tabbed(from(0, 0), false, { rows: 0, columns: 4 })).toBeNull();
  });
});
