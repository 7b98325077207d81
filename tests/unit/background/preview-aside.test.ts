import { describe, expect, test } from 'vitest';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import type { ImportMode, ImportRequest } from '#lib/files/import/import-request.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { previewAside } from '#lib/background/preview-aside.ts';
import type { PreviewTask } from '#lib/background/preview-import-worker.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const demo = demoWorkbook();

/** A request with so many rows that a worker is asked, the demo's first group among them. */
function request(rows: number, mode: ImportMode = 'append'): ImportRequest {
  const headers = ['Case group', 'Minutes', 'Id'];
  return {
    table: 'caseMix',
    file: {
      headers,
      rows: Array.from({ length: rows }, (_, index) => ({
        line: index + 2,
        texts: index === 0 ? ['', '80', 'lap-chole'] : [`Group ${index}`, '1h15', '']
      }))
    },
    mapping: mapColumns(headers, importColumns('caseMix', demo)),
    mode,
    locale: 'en-GB'
  };
}

/** A worker that works as the real one does, on copies; or that never answers. */
function worker({ answers = true } = {}) {
  const told = { opened: 0, ended: 0 };
  const open = (): Worker => {
    told.opened++;
    const own = {
      onmessage: null as ((event: { data: unknown }) => void) | null,
      postMessage: (task: PreviewTask) => {
        if (!answers) return;
        const { workbook, request } = structuredClone(task);
        const result = structuredClone(previewImport(workbook, request));
        own.onmessage?.({ data: { kind: 'reply', reply: { kind: 'result', result } } });
      },
      terminate: () => told.ended++
    };
    return own as unknown as Worker;
  };
  return { open, told };
}

const { signal } = new AbortController();

describe('a preview of a large table', () => {
  test.each(['append', 'replace'] as const)(
    'is worked out in a worker, the same as on the page: %s',
    async (mode) => {
      const { open, told } = worker();
      const wanted = request(1000, mode);
      const outcome = await previewAside(demo, wanted, { signal, open });
      if (outcome.kind !== 'result') throw new Error(outcome.kind);
      expect(outcome.result).toEqual(previewImport(demo, wanted));
      expect(told).toEqual({ opened: 1, ended: 1 });
    }
  );

  test('shares with the workbook all that the import leaves alone', async () => {
    const { open } = worker();
    const outcome = await previewAside(demo, request(1000), { signal, open });
    if (outcome.kind !== 'result') throw new Error(outcome.kind);
    const { workbook } = outcome.result;
    expect(workbook.machines).toBe(demo.machines);
    expect(workbook.accounting).toBe(demo.accounting);
    for (const [place, row] of demo.caseMix.entries()) expect(workbook.caseMix[place]).toBe(row);
  });

  test('is the very workbook where the file says what is there already', async () => {
    const { open } = worker();
    const [first] = demo.caseMix;
    if (first === undefined) throw new Error('The demo has no case.');
    const many = { ...demo, caseMix: Array.from({ length: 1000 }, (_, n) => ({ ...first, id: `g-${n}` })) };
    const rows = many.caseMix.map(({ id }, n) => ({ line: n + 2, texts: [id] }));
    const wanted = { ...request(0, 'replace'), file: { headers: ['Id'], rows }, mapping: ['id'] };
    const outcome = await previewAside(many, wanted, { signal, open });
    expect(outcome.kind === 'result' && outcome.result.workbook).toBe(many);
  });

  test('can be cancelled, which ends the worker', async () => {
    const { open, told } = worker({ answers: false });
    const stop = new AbortController();
    const outcome = previewAside(demo, request(1000), { signal: stop.signal, open });
    stop.abort();
    expect(await outcome).toEqual({ kind: 'cancelled' });
    expect(told).toEqual({ opened: 1, ended: 1 });
  });

  test('says what to do where the browser starts no worker', async () => {
    const open = (): Worker => {
      throw new Error('Refused to create a worker');
    };
    expect(await previewAside(demo, request(1000), { signal, open })).toEqual({
      kind: 'failed',
      sentence: expect.stringContaining('Use a current browser, or ask whoever looks after this computer.')
    });
  });
});

test('a preview of a small table needs no worker', async () => {
  const { open, told } = worker();
  const outcome = await previewAside(demo, request(20), { signal, open });
  expect(outcome.kind).toBe('result');
  expect(told.opened).toBe(0);
});
