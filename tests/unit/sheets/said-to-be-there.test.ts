/** Sentences of the sheets that point elsewhere: “below”, “above”, “beside”, “see …”. Each has its place, and the thing is there. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const sheets = fileURLToPath(new URL('../../../src/lib/sheets', import.meta.url));
const library = path.join(sheets, '..');

/** A source without its comments and styles, its white space made even. */
const textOf = (file: string): string =>
  readFileSync(path.join(library, file), 'utf8')
    .replace(/\/\*[\s\S]*?\*\/|<!--[\s\S]*?-->|<style>[\s\S]*<\/style>/g, '')
    .replace(/(^|\s)\/\/.*$/gm, '')
    .replace(/\s+/g, ' ');

interface Pointer {
  readonly file: string;
  /** The sentence, or the part of it that points. */
  readonly says: string;
  /** What stands there, as its source has it. */
  readonly there: string;
  /** The file it stands in, where it is another one. */
  readonly in?: string;
  /** Where that file's part is put beside the sentence, as the source has it. */
  readonly by?: { readonly file: string; readonly order: readonly [string, string] };
}

const pointers: readonly Pointer[] = [
  {
    file: 'sheets/case-mix/CaseMixSheet.svelte',
    says: 'under the scenario chosen below',
    there: 'value={desk.chosenId}',
    in: 'sheets/frame/BottomLine.svelte'
  },
  {
    file: 'sheets/case/CaseSheet.svelte',
    says: 'are in the table below',
    there: "['oxygenL', 'Oxygen, L']"
  },
  {
    file: 'sheets/emissions/Ledger.svelte',
    says: 'on Prices, on Machines, and below',
    there: 'consumablesKgCo2ePerCase: siteFields.consumablesKgCo2ePerCase'
  },
  {
    file: 'sheets/emissions/Intensity.svelte',
    says: 'Drawn below',
    there: '<ChartFigure'
  },
  {
    file: 'sheets/flow-plans/AgentsAtFlows.svelte',
    says: 'Compared below, by agent and flow',
    there: '<ChartFigure {data}'
  },
  {
    file: 'sheets/flow-plans/AgentsAtFlows.svelte',
    says: 'The case that is drawn above',
    there: '<ChartFigure',
    in: 'sheets/flow-plans/FlowUseFigure.svelte',
    by: { file: 'sheets/flow-plans/FlowUseFigure.svelte', order: ['<ChartFigure', '<AgentsAtFlows'] }
  },
  {
    file: 'sheets/flow-plans/FlowUseFigure.svelte',
    says: 'Case group drawn below',
    there: '<ChartFigure'
  },
  {
    file: 'sheets/frame/sheet-list.ts',
    says: 'beside the limits that are on record',
    there: '<LimitsOnRecord',
    in: 'sheets/theatre-air/TheatreAirSheet.svelte'
  },
  {
    file: 'sheets/payback/PaybackSheet.svelte',
    says: 'stand beside it, as the social view',
    there: '...(hasShadow ? socialFigures : [])'
  },
  {
    file: 'sheets/prices/PricesSheet.svelte',
    says: 'Emissions says what that likely means',
    there: '<Reconciliation',
    in: 'sheets/emissions/EmissionsSheet.svelte'
  },
  {
    file: 'sheets/report/report-words.ts',
    says: 'stands beside the cash, in the social view alone',
    there: 'In the social view, which counts the prices put on carbon'
  },
  {
    file: 'sheets/scenarios/ScenariosSheet.svelte',
    says: 'say below where the hospital is',
    there: 'jurisdiction: siteFields.jurisdiction'
  },
  {
    file: 'sheets/theatre-air/TheatreAirSheet.svelte',
    says: 'Drawn below',
    there: '<ChartFigure data={course}'
  },
  {
    file: 'sheets/uncertainty/RunControl.svelte',
    says: 'give at least one cell a range below',
    there: '<RangesTable',
    in: 'sheets/uncertainty/UncertaintySheet.svelte',
    by: { file: 'sheets/uncertainty/UncertaintySheet.svelte', order: ['<RunControl', '<RangesTable'] }
  },
  {
    file: 'sheets/uncertainty/RunControl.svelte',
    says: 'what stands below is of before',
    there: 'data-result',
    in: 'sheets/uncertainty/UncertaintySheet.svelte',
    by: { file: 'sheets/uncertainty/UncertaintySheet.svelte', order: ['<RunControl', 'data-result'] }
  },
  {
    file: 'sheets/uncertainty/UncertaintySheet.svelte',
    says: '“Over the model’s error”, below, draws it',
    there: 'fields={samplingFields}'
  },
  {
    file: 'sheets/uncertainty/UncertaintySheet.svelte',
    says: '“Over the model’s error”',
    there: "'Over the model’s error'",
    in: 'workbook/fields.ts'
  },
  {
    file: 'sheets/evidence/PublishedComparison.svelte',
    says: '“Over where gas is spilled” on Uncertainty draws between the two',
    there: "'Over where gas is spilled'",
    in: 'workbook/fields.ts'
  }
];

/** Words that point to another place of a sheet. Those of another sense are listed below it. */
const pointing =
  /\b(?:shown|drawn|stands?|compared|chosen|say|named|listed|range|table|”,) (?:below|above|beside)\b|\bsee (?:the|“)/gi;
const ofAnotherSense = [
  'at the end, stand above it',
  'Lines below the sum',
  'and what stands beside the total',
  'are in the table below'
];

describe('a sentence of a sheet that points elsewhere', () => {
  test('is one of those that are held to their place', () => {
    const files = readdirSync(sheets, { recursive: true, encoding: 'utf8' }).filter((file) =>
      /\.(svelte|ts)$/.test(file)
    );
    const unheld = files.flatMap((name) => {
      const file = `sheets/${name.replaceAll(path.sep, '/')}`;
      const text = textOf(file);
      return [...text.matchAll(pointing)].flatMap(({ index, 0: words }) => {
        const around = text.slice(Math.max(0, index - 60), index + words.length + 60);
        const held =
          ofAnotherSense.some((other) => around.includes(other)) ||
          pointers.some((pointer) => pointer.file === file && around.includes(pointer.says.slice(0, 24)));
        return held ? [] : [`${file}: ${around}`];
      });
    });
    expect(unheld).toEqual([]);
  });

  test.each(pointers)('$says: it is there ($file)', ({ file, says, there, in: elsewhere = file, by }) => {
    const text = textOf(file);
    expect(text).toContain(says);
    expect(textOf(elsewhere)).toContain(there);
    // What is said to stand below comes later in the same source, what stands above earlier.
    const [near, far] =
      by === undefined
        ? elsewhere === file
          ? [text.indexOf(says), text.lastIndexOf(there)]
          : [0, 0]
        : by.order.map((part) => textOf(by.file).indexOf(part));
    if (/\bbelow\b/.test(says)) expect(far).toBeGreaterThanOrEqual(near!);
    if (by !== undefined) expect(near).toBeGreaterThan(-1);
  });
});
