import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draggedFill, fillDown, fillOver, fillRight } from '#lib/grid/fill.ts';
import { blockBetween, holds, placesOf } from '#lib/grid/selection.ts';

const block = (top: number, left: number, bottom: number, right: number) => ({ top, left, bottom, right });

describe('filling', () => {
  it('down: the first row over the rest; one row alone takes from the row above', () => {
    expect(fillDown(block(1, 0, 3, 0))).toEqual([
      { from: { row: 1, column: 0 }, to: { row: 2, column: 0 } },
      { from: { row: 1, column: 0 }, to: { row: 3, column: 0 } }
    ]);
    expect(fillDown(block(2, 1, 2, 2))).toEqual([
      { from: { row: 1, column: 1 }, to: { row: 2, column: 1 } },
      { from: { row: 1, column: 2 }, to: { row: 2, column: 2 } }
    ]);
    expect(fillDown(block(0, 0, 0, 3))).toEqual([]);
  });

  it('right: the first column over the rest; one column alone takes from the one before', () => {
    expect(fillRight(block(0, 1, 0, 3)).map(({ from, to }) => [from.column, to.column])).toEqual([
      [1, 2],
      [1, 3]
    ]);
    expect(fillRight(block(0, 2, 1, 2)).map(({ from }) => from)).toEqual([
      { row: 0, column: 1 },
      { row: 1, column: 1 }
    ]);
    expect(fillRight(block(0, 0, 3, 0))).toEqual([]);
  });

  it('repeats a source of several rows, upwards as well', () => {
    expect(fillOver(block(0, 0, 1, 0), block(0, 0, 4, 0)).map(({ from }) => from.row)).toEqual([0, 1, 0]);
    expect(fillOver(block(3, 0, 4, 0), block(0, 0, 4, 0)).map(({ from }) => from.row)).toEqual([4, 3, 4]);
  });

  it('a dragged handle grows the block the way that leads farther, and never both', () => {
    const source = block(2, 2, 3, 3);
    expect(draggedFill(source, { row: 6, column: 4 })).toEqual(block(2, 2, 6, 3));
    expect(draggedFill(source, { row: 4, column: 7 })).toEqual(block(2, 2, 3, 7));
    expect(draggedFill(source, { row: 0, column: 2 })).toEqual(block(0, 2, 3, 3));
    expect(draggedFill(source, { row: 3, column: 0 })).toEqual(block(2, 0, 3, 3));
    expect(draggedFill(source, { row: 2, column: 3 })).toEqual(source);
  });

  it('writes every cell outside the source once, from inside it', () => {
    const place = fc.record({ row: fc.nat(6), column: fc.nat(6) });
    fc.assert(
      fc.property(place, place, place, (one, other, drop) => {
        const source = blockBetween(one, other);
        const target = draggedFill(source, drop);
        const fills = fillOver(source, target);
        expect(fills.every(({ from, to }) => holds(source, from) && !holds(source, to))).toBe(true);
        expect(fills.map(({ to }) => to)).toEqual(placesOf(target).filter((each) => !holds(source, each)));
      })
    );
  });
});
