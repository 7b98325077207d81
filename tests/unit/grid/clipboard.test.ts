import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { cellsToText, planPaste, textToCells } from '#lib/grid/clipboard.ts';
import { holds, placesOf } from '#lib/grid/selection.ts';

describe('cells to tab-separated text', () => {
  it('quotes only what would otherwise be cut', () => {
    expect(
      cellsToText([
        ['a', 'b\tc'],
        ['d "e"', '"f'],
        ['line\nbreak', '']
      ])
    ).toBe('a\t"b\tc"\nd "e"\t"""f"\n"line\nbreak"\t');
  });
});

describe('tab-separated text to cells', () => {
  it.each([
    [
      'a\tb\nc\td',
      [
        ['a', 'b'],
        ['c', 'd']
      ]
    ],
    [
      'a\tb\r\nc\td\r\n',
      [
        ['a', 'b'],
        ['c', 'd']
      ]
    ],
    ['a\rb', [['a'], ['b']]],
    ['a\n\nb', [['a'], [''], ['b']]],
    ['a\t', [['a', '']]],
    ['', [['']]],
    ['\n', [['']]],
    ['"a\tb"\tc', [['a\tb', 'c']]],
    ['"two\r\nlines"\tc\r\n', [['two\r\nlines', 'c']]],
    ['"say ""so"""', [['say "so"']]],
    ['""', [['']]],
    ['5" tube\t6" tube', [['5" tube', '6" tube']]],
    ['"open\tend', [['"open', 'end']]],
    ['"shut" late\tx', [['"shut" late', 'x']]],
    ['one\ttwo\nthree', [['one', 'two'], ['three']]]
  ])('%j', (text, cells) => {
    expect(textToCells(text)).toEqual(cells);
  });

  it('reads back what was written, whatever is in the cells', () => {
    const text = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: fc.constantFrom('"', '\t', '\n', '\r', 'a', ' ', '=', ',', 'ש', '🫁') })
    );
    const block = fc
      .record({ rows: fc.integer({ min: 1, max: 5 }), columns: fc.integer({ min: 1, max: 4 }) })
      .chain(({ rows, columns }) =>
        fc.array(fc.array(text, { minLength: columns, maxLength: columns }), {
          minLength: rows,
          maxLength: rows
        })
      );
    fc.assert(
      fc.property(block, (cells) => {
        expect(textToCells(cellsToText(cells))).toEqual(cells);
      })
    );
  });

  it('takes a large block in one go', () => {
    const cells = Array.from({ length: 20_000 }, (_, row) => [`${row}`, 'x', '"quoted"\ttext']);
    expect(textToCells(cellsToText(cells))).toEqual(cells);
  });
});

describe('where a paste lands', () => {
  const extent = { rows: 4, columns: 3 };
  const one = { top: 1, left: 1, bottom: 1, right: 1 };

  it('one cell fills the selection', () => {
    const selection = { top: 0, left: 0, bottom: 2, right: 1 };
    const plan = planPaste([['x']], { selection, extent, canGrow: false });
    expect(plan.writes).toEqual(placesOf(selection).map((place) => ({ ...place, text: 'x' })));
    expect(plan.block).toEqual(selection);
  });

  it('a block lands cell by cell from the cursor on', () => {
    const plan = planPaste(
      [
        ['a', 'b'],
        ['c', 'd']
      ],
      { selection: one, extent, canGrow: false }
    );
    expect(plan.writes).toEqual([
      { row: 1, column: 1, text: 'a' },
      { row: 1, column: 2, text: 'b' },
      { row: 2, column: 1, text: 'c' },
      { row: 2, column: 2, text: 'd' }
    ]);
    expect(plan).toMatchObject({ block: { top: 1, left: 1, bottom: 2, right: 2 }, left: 0 });
  });

  it('a block that fits a whole number of times is repeated', () => {
    const selection = { top: 0, left: 0, bottom: 3, right: 1 };
    const plan = planPaste([['a'], ['b']], { selection, extent, canGrow: false });
    expect(plan.writes.map(({ text }) => text)).toEqual(['a', 'a', 'b', 'b', 'a', 'a', 'b', 'b']);
  });

  it('a block that does not fit lands once, from the first selected cell', () => {
    const selection = { top: 0, left: 0, bottom: 2, right: 0 };
    const plan = planPaste([['a'], ['b']], { selection, extent, canGrow: false });
    expect(plan.block).toEqual({ top: 0, left: 0, bottom: 1, right: 0 });
  });

  it('grows the grid where it may; else what is left over is counted', () => {
    const cells = [
      ['a', 'b', 'c'],
      ['d', 'e', 'f'],
      ['g', 'h', 'i'],
      ['j', 'k', 'l']
    ];
    const grown = planPaste(cells, { selection: one, extent, canGrow: true });
    expect(grown.writes.at(-1)).toEqual({ row: 4, column: 2, text: 'k' });
    expect(grown).toMatchObject({ block: { top: 1, left: 1, bottom: 4, right: 2 }, left: 4 });
    const cut = planPaste(cells, { selection: one, extent, canGrow: false });
    expect(cut.writes).toHaveLength(6);
    expect(cut).toMatchObject({ block: { top: 1, left: 1, bottom: 3, right: 2 }, left: 6 });
  });

  it('short rows leave the cells beside them alone', () => {
    const plan = planPaste([['a', 'b'], ['c']], { selection: one, extent, canGrow: false });
    expect(plan.writes).toHaveLength(3);
    expect(plan.left).toBe(0);
  });

  it('writes no cell twice, none outside, and loses none uncounted', () => {
    const cells = fc.array(fc.array(fc.constant('x'), { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 6
    });
    const corner = fc.record({ row: fc.integer({ min: 0, max: 3 }), column: fc.integer({ min: 0, max: 2 }) });
    fc.assert(
      fc.property(cells, corner, fc.boolean(), (given, { row, column }, canGrow) => {
        const selection = { top: row, left: column, bottom: row, right: column };
        const plan = planPaste(given, { selection, extent, canGrow });
        expect(new Set(plan.writes.map((write) => `${write.row},${write.column}`)).size).toBe(
          plan.writes.length
        );
        for (const write of plan.writes) {
          expect(write.column).toBeLessThan(extent.columns);
          if (!canGrow) expect(write.row).toBeLessThan(extent.rows);
          expect(holds(plan.block, write)).toBe(true);
        }
        expect(plan.writes.length + plan.left).toBe(given.flat().length);
      })
    );
  });
});

it('a block from elsewhere goes on past the columns that take nothing', () => {
  const plan = planPaste([['a', 'b', 'c', 'd']], {
    selection: { top: 0, left: 1, bottom: 0, right: 1 },
    extent: { rows: 1, columns: 5 },
    canGrow: false,
    passedOver: [2]
  });
  expect(plan.writes.map(({ column, text }) => [column, text])).toEqual([
    [1, 'a'],
    [3, 'b'],
    [4, 'c']
  ]);
  expect([plan.left, plan.block.right]).toEqual([1, 4]);
});

describe('a text that another program would take for a formula', () => {
  test.each(["=1+cmd|'/C calc'!A0", '+x', '-2+cmd|x', '@SUM(1)', ' =1', '\uff1d1', "'=1", "''@x"])(
    '%s is copied as text, and is itself again when it is pasted here',
    (text) => {
      expect(cellsToText([[text]])).toBe(`'${text}`);
      expect(textToCells(cellsToText([[text, 'b']]))).toEqual([[text, 'b']]);
    }
  );

  test.each(['-5', '+1.5', '-1,234.5', '-3 %', 'a=b', "it's", '5-6'])('%s is none', (text) => {
    expect(cellsToText([[text]])).toBe(text);
    expect(textToCells(text)).toEqual([[text]]);
  });
});
