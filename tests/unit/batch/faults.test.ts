/** One workbook or one file that goes wrong: a clean line on it, and the rest is still done. */
import { describe, expect, test, vi } from 'vitest';
import { runBatch } from '#lib/batch/run-batch.ts';
import { tableIds } from '#lib/files/tables/tables.ts';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

// A fault of this program, which no workbook is known to bring about: one title stands for it.
vi.mock('#lib/workbook/core-input.ts', async (original) => {
  const { coreInput } = await original<typeof import('#lib/workbook/core-input.ts')>();
  return {
    coreInput: (workbook: Workbook) => {
      if (workbook.title === 'faulty') throw new TypeError('x is\nnot \u001b[31mdefined');
      return coreInput(workbook);
    }
  };
});

interface Run {
  readonly args: readonly string[];
  readonly titles?: Readonly<Record<string, string>>;
  readonly write?: (path: string) => void;
}

async function run({ args, titles = {}, write = () => undefined }: Run) {
  const out: string[] = [];
  const errors: string[] = [];
  const written: string[] = [];
  const status = await runBatch(args, {
    readFile: (path) =>
      Object.hasOwn(titles, path)
        ? Promise.resolve(writeWorkbookFile({ ...demoWorkbook(), title: titles[path] as string }))
        : Promise.reject(fault('ENOENT', `no such file or directory, open '/somewhere/${path}'`)),
    writeFile: async (path) => {
      await Promise.resolve();
      write(path);
      written.push(path);
    },
    out: (line) => out.push(line),
    error: (line) => errors.push(line)
  });
  return { status, out, errors, written };
}

const fault = (code: string, words: string) => Object.assign(new Error(`${code}: ${words}`), { code });

test('a fault in the core is said in one line, and the other files are done', async () => {
  const { status, out, errors } = await run({
    args: ['a.json', 'b.json', 'c.json'],
    titles: { 'a.json': 'North', 'b.json': 'faulty', 'c.json': 'South' }
  });
  expect(status).toBe(2);
  expect(out.map((line) => (JSON.parse(line) as { title: string }).title)).toEqual(['North', 'South']);
  expect(errors).toEqual([
    'b.json: workbook: it cannot be estimated, because of a fault in this program (x is\\u000anot \\u001b[31mdefined). Please report it with the file.'
  ]);
});

test.each([
  ['ENOSPC', 'the disk is full'],
  ['ENOTDIR', 'a part of the path is a file, not a folder'],
  ['EISDIR', 'a folder has that name'],
  ['ENAMETOOLONG', 'the name is too long for this disk'],
  ['EODD', 'EODD: strange']
])(
  'a file that cannot be written (%s) is said in one line, and all others are written',
  async (code, words) => {
    const { status, out, errors, written } = await run({
      args: ['--csv', 'c', 'a.json', 'b.json'],
      titles: { 'a.json': 'North', 'b.json': 'South' },
      write: (path) => {
        if (path === 'c/North – Case mix, invented figures.csv')
          throw fault(code, `strange, open '/somewhere/${path}'`);
      }
    });
    expect(status).toBe(2);
    expect(out).toHaveLength(2);
    expect(errors).toEqual([
      `a.json: c/North – Case mix, invented figures.csv: it cannot be written: ${words}.`
    ]);
    expect(written).toHaveLength(2 * tableIds.length - 1);
  }
);

test('a file that is not there is said without the path of the machine', async () => {
  const { status, errors } = await run({ args: ['none.json'] });
  expect([status, errors]).toEqual([
    2,
    ['none.json: file: it cannot be read: there is no such file or folder.']
  ]);
});

describe('hostile values', () => {
  const hostile = 'a\u001b[2J\u009b31m\nother.json: title: forged\u202e\u2028';

  test('reach neither standard error …', async () => {
    const { errors } = await run({ args: [hostile] });
    expect(errors).toHaveLength(1);
    expect(errors[0]).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}]/u);
    expect(errors[0]).toContain('a\\u001b[2J\\u009b31m\\u000aother.json');
  });

  test('… nor standard output, where they are the same to a program', async () => {
    const { out } = await run({ args: ['a.json'], titles: { 'a.json': hostile } });
    expect(out[0]).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}]/u);
    expect((JSON.parse(out[0] ?? '') as { title: string }).title).toBe(hostile);
  });
});

describe('arguments', () => {
  test.each(['constructor', 'toString', '__proto__'])('%s is a file as any other', async (file) => {
    const { status, out, errors } = await run({ args: [file, 'a.json'], titles: { 'a.json': 'North' } });
    expect([status, out.length]).toEqual([2, 1]);
    expect(errors).toEqual([`${file}: file: it cannot be read: there is no such file or folder.`]);
  });

  test('an option takes no option for its value', async () => {
    const { status, errors } = await run({ args: ['--csv', '--xlsx', 'x', 'a.json'] });
    expect([status, errors[0]]).toEqual([2, '--csv needs a value after it.']);
  });
});
