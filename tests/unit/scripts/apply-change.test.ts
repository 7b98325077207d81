import { describe, expect, test } from 'vitest';
import { applyChange } from '../../../scripts/apply-change.mjs';

const sources = new Map([
  ['a.ts', 'const a = sum(first, [1, 2]);\nconst b = sum(second, { of: a });\n'],
  ['room/b.ts', 'export const c = /x$/.test(text) ? undefined : null;\n']
]);
const apply = (...edits: [string, string][]) => applyChange(sources, { rule: 'A rule.', edits });

describe('a change of the sources', () => {
  test('is made wherever its text stands, and nothing else is changed', () => {
    const made = apply(['? undefined : null', '? null : null']);
    expect(made).toEqual({
      changed: new Map([['room/b.ts', 'export const c = /x$/.test(text) ? null : null;\n']])
    });
    expect(sources.get('room/b.ts')).toContain('undefined');
  });

  test.each([
    'sum(second, { of: a })',
    'sum(\n  second,\n  { of: a }\n)',
    'sum( second, {of: a} )',
    'const  b =\n    sum(second, {\n of: a\n})'
  ])('finds its text however that is broken into lines: %j', (text) => {
    expect(apply([text, 'X'])).toMatchObject({
      changed: new Map([['a.ts', expect.stringContaining('X;\n')]])
    });
  });

  test('finds a text that was written on one line where it is now on several', () => {
    const broken = new Map([['a.ts', 'f(\n  g(\n    x,\n    [y]\n  )\n)']]);
    const edits: [string, string][] = [['g(x, [y])', 'g(y)']];
    expect(applyChange(broken, { rule: '', edits })).toEqual({
      changed: new Map([['a.ts', 'f(\n  g(y)\n)']])
    });
  });

  test('takes what is special in a pattern as it stands, in the text and in what is put', () => {
    expect(apply(['/x$/.test(text)', '$& $1'])).toEqual({
      changed: new Map([['room/b.ts', 'export const c = $& $1 ? undefined : null;\n']])
    });
  });

  test('may have several edits, each on what the ones before it left', () => {
    expect(apply(['first', 'third'], ['third, [1, 2]', 'fourth'], ['null', '0'])).toEqual({
      changed: new Map([
        ['a.ts', 'const a = sum(fourth);\nconst b = sum(second, { of: a });\n'],
        ['room/b.ts', 'export const c = /x$/.test(text) ? undefined : 0;\n']
      ])
    });
  });

  test('is not made where a text is gone, or stands more than once', () => {
    expect(apply(['fifth', ''])).toEqual({ problem: '“fifth” stands nowhere any more' });
    expect(apply(['first', ''], ['const', 'let'])).toEqual({
      problem: '“const” stands 3 times, in a.ts, room/b.ts'
    });
  });

  test('takes part of a word for another word only where it is so', () => {
    expect(apply(['firs t', ''])).toHaveProperty('problem');
  });
});
