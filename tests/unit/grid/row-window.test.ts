import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowsAndGaps, rowsInSight } from '#lib/grid/row-window.ts';

describe('rows drawn of a long grid', () => {
  it('gaps stand for the rows left out, and the row with the cursor is always there', () => {
    expect(rowsAndGaps({ count: 100, start: 10, end: 12, pinned: 50 })).toEqual([
      { kind: 'gap', from: 0, rows: 10 },
      { kind: 'row', row: 10 },
      { kind: 'row', row: 11 },
      { kind: 'gap', from: 12, rows: 38 },
      { kind: 'row', row: 50 },
      { kind: 'gap', from: 51, rows: 49 }
    ]);
    expect(rowsAndGaps({ count: 3, start: 0, end: 3, pinned: 0 }).map(({ kind }) => kind)).toEqual([
      'row',
      'row',
      'row'
    ]);
    expect(rowsAndGaps({ count: 0, start: 0, end: 40, pinned: 0 })).toEqual([]);
  });

  it('rows and gaps stand for every row once, in order', () => {
    const window = fc.record({
      count: fc.nat(60),
      start: fc.integer({ min: -5, max: 70 }),
      end: fc.integer({ min: -5, max: 70 }),
      pinned: fc.integer({ min: -1, max: 60 })
    });
    fc.assert(
      fc.property(window, (given) => {
        let next = 0;
        const drawn: number[] = [];
        for (const item of rowsAndGaps(given)) {
          if (item.kind === 'row') {
            expect(item.row).toBe(next);
            drawn.push(item.row);
            next += 1;
          } else {
            expect(item.from).toBe(next);
            expect(item.rows).toBeGreaterThan(0);
            next += item.rows;
          }
        }
        expect(next).toBe(given.count);
        if (given.pinned >= 0 && given.pinned < given.count) expect(drawn).toContain(given.pinned);
        for (let row = Math.max(0, given.start); row < Math.min(given.end, given.count); row += 1) {
          expect(drawn).toContain(row);
        }
      })
    );
  });

  it('what is in sight is drawn, wherever the scroll stands', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60_000, noNaN: true }),
        fc.integer({ min: 0, max: 2000 }),
        (scrolledPx, heightPx) => {
          const rowPx = 30.4;
          const { start, end } = rowsInSight({ scrolledPx, heightPx, rowPx });
          expect(start).toBeLessThanOrEqual(Math.floor(scrolledPx / rowPx));
          expect(end).toBeGreaterThan((scrolledPx + heightPx) / rowPx);
          expect(end - start).toBeLessThan(heightPx / rowPx + 24);
        }
      )
    );
  });

  it('while the grid goes on by the page, little more than what is in sight is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 60_000, noNaN: true }),
        fc.integer({ min: 0, max: 2000 }),
        (scrolledPx, heightPx) => {
          const rowPx = 30.4;
          const { start, end } = rowsInSight({ scrolledPx, heightPx, rowPx, paging: true });
          expect(start).toBeLessThanOrEqual(Math.floor(scrolledPx / rowPx));
          expect(end).toBeGreaterThan((scrolledPx + heightPx) / rowPx);
          expect(end - start).toBeLessThanOrEqual(Math.ceil(heightPx / rowPx) + 1);
        }
      )
    );
  });
});
