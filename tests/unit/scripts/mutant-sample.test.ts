import { describe, expect, test } from 'vitest';
import { inWords, keyOf, sampleOf, survivorsAfter } from '../../../scripts/mutant-sample.mjs';

const text = ['const a = 1 + 2;', 'const b = sum(', '  a,', '  3', ');', 'const c = 1 + 2;'].join('\n');
const at = (startLine: number, startColumn: number, endLine: number, endColumn: number) => ({
  start: { line: startLine, column: startColumn },
  end: { line: endLine, column: endColumn }
});
const mutant = (id: string, location: ReturnType<typeof at>, replacement: string) => ({
  id,
  fileName: '/x/money/sums.ts',
  mutatorName: 'M',
  replacement,
  location
});
const first = mutant('1', at(0, 10, 0, 15), '1 - 2');
const second = mutant('2', at(5, 10, 5, 15), '1 - 2');
const call = mutant('3', at(1, 10, 4, 1), 'undefined');
const texts = new Map([['/x/money/sums.ts', text]]);

test('a mutant is told in words: its file, the code on one line, and what it becomes', () => {
  expect(inWords(first, text)).toEqual({ file: 'sums.ts', mutator: 'M', code: '1 + 2', becomes: '1 - 2' });
  expect(inWords(call, text).code).toBe('sum( a, 3 )');
});

test('mutants of the same words are told apart by their place', () => {
  expect(inWords(first, text)).toEqual(inWords(second, text));
  expect(keyOf(first)).not.toBe(keyOf(second));
});

describe('a sample of mutants', () => {
  const many = Array.from({ length: 200 }, (_, index) => mutant(`${index}`, at(0, 10, 0, 15), `${index}`));
  const ids = (wanted: { count: number; seed: number }, of = many, in_ = texts) =>
    sampleOf(of, in_, wanted).map(({ id }) => id);

  test('has as many as were asked for, or all, none twice', () => {
    expect(new Set(ids({ count: 20, seed: 1 })).size).toBe(20);
    expect(ids({ count: Infinity, seed: 1 })).toHaveLength(200);
    expect(ids({ count: 20, seed: 1 }, [first, second, call])).toHaveLength(3);
  });

  test('is the same for a seed, and another for another', () => {
    expect(ids({ count: 20, seed: 1 })).toEqual(ids({ count: 20, seed: 1 }, [...many].reverse()));
    expect(ids({ count: 20, seed: 1 })).not.toEqual(ids({ count: 20, seed: 2 }));
  });

  test('stays the same where lines shift and files move', () => {
    const shifted = many.map((one) => ({ ...one, fileName: '/y/sums.ts', location: at(1, 10, 1, 15) }));
    expect(ids({ count: 20, seed: 1 }, shifted, new Map([['/y/sums.ts', `\n${text}`]]))).toEqual(
      ids({ count: 20, seed: 1 })
    );
  });
});

test('survivors are listed anew where they were run; the others, and every reason, stay', () => {
  const words = (code: string) => ({ file: 'a.ts', mutator: 'M', code, becomes: 'x' });
  const listed = [
    { ...words('killed since'), reason: 'Was hard.' },
    { ...words('not run'), reason: 'Equal.' },
    { ...words('survives again'), reason: 'Known.' }
  ];
  const run = {
    survived: [words('survives again'), words('new'), words('new')],
    killed: [words('killed since'), words('other')]
  };
  expect(survivorsAfter(listed, run)).toEqual([
    { ...words('new'), reason: '' },
    { ...words('not run'), reason: 'Equal.' },
    { ...words('survives again'), reason: 'Known.' }
  ]);
});
