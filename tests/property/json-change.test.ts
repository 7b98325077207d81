import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeBetween, changed } from '#lib/storage/json-change.ts';
import { randomWorkbook } from '../fixtures/random-workbook.ts';

/** As a file has it. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test('a change leads from one document to the other, also after it was kept as a text', () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
      const [from, to] = [plain(one), plain(other)];
      const change = changeBetween(from, to);
      if (change === null) expect(from).toEqual(to);
      else expect(changed(from, plain(change) as typeof change)).toEqual(to);
    }),
    { numRuns: 500 }
  );
});

test('so it does between workbooks, either way', () => {
  fc.assert(
    fc.property(randomWorkbook(), randomWorkbook(), (one, other) => {
      const there = changeBetween(one, other);
      const back = changeBetween(other, one);
      if (there === null || back === null) return;
      expect(changed(one, there)).toEqual(plain(other));
      expect(changed(changed(one, there), back)).toEqual(plain(one));
    }),
    { numRuns: 50 }
  );
});
