import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonFault } from '#lib/files/read/json-fault.ts';
import { readWorkbookFile, workbookFileName, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { parseWorkbook } from '#lib/workbook/parse-workbook.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

test('the random workbooks are ones that the program accepts', () => {
  fc.assert(
    fc.property(randomWorkbook(), (workbook) => {
      expect(parseWorkbook(workbook)).toEqual({ kind: 'workbook', workbook, notes: [] });
    }),
    { numRuns: 200 }
  );
});

test('a workbook that is saved and opened is the same workbook', () => {
  fc.assert(
    fc.property(randomWorkbook(), (workbook) => {
      expect(readWorkbookFile(writeWorkbookFile(workbook))).toEqual({
        kind: 'workbook',
        workbook,
        notes: []
      });
    }),
    { numRuns: 200 }
  );
});

test('saving what was opened gives the same bytes', () => {
  fc.assert(
    fc.property(randomWorkbook(), (workbook) => {
      const bytes = writeWorkbookFile(workbook);
      const opened = readWorkbookFile(bytes);
      if (opened.kind !== 'workbook') throw new Error('The file was refused.');
      const again = writeWorkbookFile(opened.workbook);
      expect(new TextDecoder().decode(again)).toBe(new TextDecoder().decode(bytes));
    }),
    { numRuns: 100 }
  );
});

test('a workbook file cut off anywhere is refused, and said to be cut off', () => {
  fc.assert(
    fc.property(
      randomWorkbook({ rows: 2 }),
      fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
      (workbook, share) => {
        // The last byte is a line break, without which the file is still whole.
        const whole = writeWorkbookFile(workbook).slice(0, -1);
        let end = Math.floor(share * whole.length);
        // A cut inside a letter is told as bytes that are no UTF-8; this property is about cuts between letters.
        while (end > 0 && ((whole[end] ?? 0) & 0xc0) === 0x80) end--;
        const read = readWorkbookFile(whole.slice(0, end));
        if (read.kind !== 'refused') throw new Error('A part was taken for the whole.');
        expect(read.issues[0]?.sentence).toMatch(
          end === 0 ? /is empty/ : /^The file is cut off: it ends at line \d+, column \d+/
        );
      }
    ),
    { numRuns: 300 }
  );
});

test('a fault is found in a text exactly where the platform finds it to be no JSON', () => {
  const nearlyJson = fc
    .tuple(
      fc.json(),
      fc.nat(),
      fc.constantFrom(
        ...['', ',', ':', '"', '{', ']', '0', '-', 'e', '\\', '\\u0', ' ', 'tru', '.', "'"],
        ...['\n', '\r', '\t', '\f', '\u0001', '\u00a0', '\u2028', '\ufeff', '/', '// ', '/**/']
      )
    )
    .map(([json, at, put]) => {
      const cut = at % (json.length + 1);
      return json.slice(0, cut) + put + json.slice(cut + (at % 2));
    });
  fc.assert(
    fc.property(nearlyJson, (text) => {
      let parses = true;
      try {
        JSON.parse(text);
      } catch {
        parses = false;
      }
      expect(jsonFault(text) === null, text).toBe(parses);
    }),
    { numRuns: 2000 }
  );
});

test('no bytes make the reader throw', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(readWorkbookFile(bytes).kind).toBe('refused');
    })
  );
});

test('every title gives a file name that any system takes', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (title) => {
      const name = workbookFileName(title);
      expect(name).toMatch(/^[^\p{Cc}<>:"/\\|?*. ][^\p{Cc}<>:"/\\|?*]*\.json$/u);
      expect(name).not.toMatch(/^(con|nul)\./i);
      expect([...name].length).toBeLessThanOrEqual(85);
    })
  );
});
