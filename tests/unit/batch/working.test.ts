import { describe, expect, test } from 'vitest';
import { runBatch } from '#lib/batch/run-batch.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

async function run(args: readonly string[], files: Readonly<Record<string, Workbook>>) {
  const out: string[] = [];
  const errors: string[] = [];
  const status = await runBatch(args, {
    readFile: (path) => {
      const workbook = files[path];
      return workbook === undefined
        ? Promise.reject(new Error('no such file'))
        : Promise.resolve(writeWorkbookFile(workbook));
    },
    writeFile: () => Promise.reject(new Error('nothing is to be written')),
    out: (line) => out.push(line),
    error: (line) => errors.push(line)
  });
  return { status, out: out.join('\n'), errors: errors.join('\n') };
}

const demo = demoWorkbook();
const total = estimate(coreInput(demo)).scenarios[0]?.perYear.cost.total;

describe('batch --working', () => {
  test('prints how one figure came about, indented, from its value down to cells and citations', async () => {
    const { status, out, errors } = await run(['--working', 'today.perYear.cost.total', 'a.json'], {
      'a.json': demo
    });
    expect([status, errors]).toEqual([0, '']);
    const lines = out.split('\n');
    expect(lines[0]).toContain(`[1]`);
    expect(lines[0]).toContain(` = ${total} EUR`);
    expect(lines[1]).toMatch(/^ {2}= /);
    expect(out).toContain('118 EUR, cell agents.sevoflurane.bottlePrice');
    expect(out).toMatch(/cell caseMix\.lap-chole\.minutes/);
    expect(out).toMatch(/Biro P|Carpenter|Mapleson/);
    const deepest = Math.max(...lines.map((line) => line.search(/\S/)));
    expect(deepest).toBeGreaterThan(12);
    // Steps that several others use are written once and referred to.
    const numbered = [...out.matchAll(/\[(\d+)\] /g)].map((match) => match[1]);
    expect(new Set(numbered).size).toBe(numbered.length);
  });

  test('says what is allowed where a path leads nowhere, and does the other files', async () => {
    const { status, out, errors } = await run(
      ['--working', 'closed.perYear.cost.total', 'a.json', 'b.json'],
      {
        'a.json': { ...demo, ranges: {}, scenarios: demo.scenarios.filter(({ id }) => id === 'today') },
        'b.json': demo
      }
    );
    expect(status).toBe(2);
    expect(errors).toBe(
      'a.json: closed.perYear.cost.total: There is no figure at “closed.perYear.cost.total”; allowed is one that begins with today.'
    );
    expect(out).toMatch(/^\[1\] /);
  });

  test('shows a figure of the user’s own beside the published one', async () => {
    const reason = 'Metered in our theatres.';
    const { out } = await run(['--working', 'today.perYear.electricityKWh', 'a.json'], {
      'a.json': {
        ...demo,
        machines: demo.machines.map((machine) => ({ ...machine, powerW: null })),
        overrides: [{ constant: 'machine.power', value: 120, unit: 'W', reason }]
      }
    });
    expect(out).toContain('120 W');
    expect(out).toContain(`In place of the published 97: ${reason}`);
  });
});
