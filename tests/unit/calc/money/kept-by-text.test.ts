import { expect, test } from 'vitest';
import { keptByText } from '#lib/calc/money/kept-by-text.ts';

test('makes once for a text, and again after it had to start afresh', () => {
  const made: string[] = [];
  const kept = keptByText<number>(2);
  const ask = (text: string) =>
    kept(text, () => {
      made.push(text);
      return text.length;
    });
  expect([ask('a'), ask('bb'), ask('a')]).toEqual([1, 2, 1]);
  expect(made).toEqual(['a', 'bb']);
  expect(ask('ccc')).toBe(3);
  expect(ask('a')).toBe(1);
  expect(made).toEqual(['a', 'bb', 'ccc', 'a']);
});

test('keeps nothing where the making throws', () => {
  const kept = keptByText<number>(2);
  const refuse = () =>
    kept('a', () => {
      throw new RangeError('refused');
    });
  expect(refuse).toThrow('refused');
  expect(refuse).toThrow('refused');
});
