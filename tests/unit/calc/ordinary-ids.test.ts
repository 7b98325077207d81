/**
 * An id is whatever its owner calls a thing. `constructor` is a word that every JavaScript object knows as something
 * else, and a case group of that name gets it for an id.
 */
import { describe, expect, test } from 'vitest';
import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import { explain } from '#lib/calc/estimate/explain.ts';
import { figurePaths } from '#lib/calc/estimate/figure-paths.ts';
import { mapColumns } from '#lib/workbook/match-headings.ts';
import { readCsv } from '#lib/files/read/csv-in.ts';
import { writeTableCsv } from '#lib/files/write/csv-out.ts';
import { importColumns, previewImport } from '#lib/files/import/preview-import.ts';
import { tableIds } from '#lib/files/tables/tables.ts';
import { readWorkbookFile, writeWorkbookFile } from '#lib/files/read/workbook-file.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import { editCells } from '#lib/workbook/edit-cells.ts';
import { freshId } from '#lib/workbook/edit-rows.ts';
import { fieldAt } from '#lib/workbook/field-at.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

const demo = demoWorkbook();
/** The same text with every mention of an id put in another's place. */
const renamed = (text: string, from: string, to: string) =>
  text.replace(new RegExp(`(?<=[".])${from}(?=[".:])`, 'g'), to);

/** The demo with `constructor` for an id; the scenarios have a plan of one case group’s own and agents switched. */
function withId(id: string): Workbook {
  const given = writeCell(demo, 'scenarios.closed.flowPlanByCase.lap-chole', 'low');
  const text = renamed(new TextDecoder().decode(writeWorkbookFile(given)), id, 'constructor');
  const parsed = readWorkbookFile(new TextEncoder().encode(text));
  if (parsed.kind !== 'workbook') throw new Error(JSON.stringify(parsed));
  return parsed.workbook;
}

describe.each(['lap-chole', 'usual', 'closed', 'm-closed', 'soda-lime', 'open-abdomen'])(
  '“constructor” in place of the id %s',
  (id) => {
    test('changes no figure', () => {
      const own = estimate(coreInput(writeCell(demo, 'scenarios.closed.flowPlanByCase.lap-chole', 'low')));
      const other = JSON.stringify(estimate(coreInput(withId(id))));
      expect(JSON.parse(other)).toEqual(JSON.parse(renamed(JSON.stringify(own), id, 'constructor')));
    });

    test('goes out as tables and comes back unchanged', () => {
      const workbook = withId(id);
      for (const table of tableIds) {
        const read = readCsv(writeTableCsv(table, workbook, 'en-GB'));
        if (read.kind === 'refused') throw new Error(read.sentence);
        if (read.table.rows.length === 0) continue;
        const mapping = mapColumns(read.table.headers, importColumns(table, workbook));
        const preview = previewImport(workbook, {
          table,
          file: read.table,
          mapping,
          mode: 'replace',
          locale: 'en-GB'
        });
        expect([table, preview.refusedCells, preview.refusedRows]).toEqual([table, [], []]);
        expect(preview.workbook).toEqual(workbook);
      }
    });
  }
);

test('its figures can be explained, and a figure that is none is refused as any other', () => {
  const input = coreInput(withId('closed'));
  const paths = figurePaths(estimate(input)).filter((path) => path.startsWith('constructor.'));
  expect(paths.length).toBeGreaterThan(100);
  for (const path of paths.filter((_, index) => index % 25 === 0))
    expect(explain(input, path)).toHaveProperty('value');
  expect(() => explain(input, 'today.cases.lap-chole.constructor')).toThrow(/constructor/);
});

test('a cell that is empty is empty under that id too, and can be filled and emptied', () => {
  const workbook = withId('lap-colon');
  const path = 'scenarios.closed.flowPlanByCase.constructor';
  expect(readCell(workbook, path)).toBeUndefined();
  const filled = editCells(workbook, [{ path, text: 'low' }], 'en-GB').workbook;
  expect(readCell(filled, path)).toBe('low');
  const emptied = editCells(filled, [{ path, text: '' }], 'en-GB').workbook;
  expect(emptied.scenarios).toEqual(workbook.scenarios);
});

test('no path of that name is a cell', () => {
  for (const path of [
    'constructor',
    'toString',
    'site.constructor',
    'caseMix.lap-chole.constructor',
    'flowPlans.usual.phases.0.constructor',
    'accounting.customWarming.constructor',
    'constructor.prototype.name'
  ])
    expect(fieldAt(path)).toBeUndefined();
});

test('a row that is called Constructor gets the id', () => {
  expect(freshId('Constructor', [])).toBe('constructor');
});
