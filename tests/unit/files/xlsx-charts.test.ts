/** The charts of a spreadsheet are drawn from its cells: those that hold the figures that the chart speaks of. */
import { readXlsx } from 'hucre/xlsx';
import { describe, expect, test } from 'vitest';
import { cashLineTitles, co2eLineTitles } from '#lib/calc/line-names.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { auditSheets } from '../../fixtures/spreadsheet-audit.ts';
import { lowFlow, scenarioOf, today, wholeWorkbook } from '../../fixtures/whole-workbook.ts';

const workbook = wholeWorkbook({
  // A name that looks like a formula and holds signs of the format is a name all the same.
  scenarios: [today, { ...lowFlow, name: '=1+1 <low> & “slow”' }]
});
const sheets = auditSheets(workbook);
const charts = sheets.find(({ name }) => name === 'Charts')?.charts ?? [];

/** What the cells of a range on a sheet show. */
function shownIn(range: string): readonly (number | string | boolean)[] {
  const [, sheet, from, row, to] = /^'(.+)'!\$([A-Z]+)\$(\d+):\$([A-Z]+)\$\3$/.exec(range) ?? [];
  const cells = sheets.find(({ name }) => name === sheet)?.rows[Number(row) - 1] ?? [];
  const place = (letters = ''): number =>
    [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return cells.slice(place(from), place(to) + 1).map((cell) => {
    if (cell === null) throw new Error(`There is nothing in ${range}.`);
    return cell.kind === 'text' ? cell.text : cell.kind === 'formula' ? cell.result : cell.value;
  });
}

describe('the charts of a spreadsheet', () => {
  const [flow, cost, co2e] = charts;
  const { againstBaseline } = scenarioOf(workbook, lowFlow);
  const perYear = [today, lowFlow].map((scenario) => scenarioOf(workbook, scenario).perYear);

  test('draw the cumulative cash flow of each scenario over the years', () => {
    expect(charts).toHaveLength(3);
    expect(shownIn(flow?.categories ?? '')).toEqual(againstBaseline.years.map(({ year }) => year));
    expect(flow?.series.map(({ name }) => name)).toEqual(['=1+1 <low> & “slow”']);
    const drawn = shownIn(flow?.series[0]?.values ?? '').map(Number);
    againstBaseline.years.forEach(({ cumulative }, year) =>
      expect(drawn[year]).toBeCloseTo(Number(cumulative), 6)
    );
  });

  test('draw each line of cost and of emissions over the scenarios', () => {
    for (const [chart, titles, of] of [
      [cost, cashLineTitles, ({ cost: lines }: (typeof perYear)[number]) => lines],
      [co2e, co2eLineTitles, ({ co2eKg }: (typeof perYear)[number]) => co2eKg]
    ] as const) {
      expect(shownIn(chart?.categories ?? '')).toEqual([today.name, '=1+1 <low> & “slow”']);
      expect(chart?.series.map(({ name }) => name)).toEqual(Object.values(titles));
      Object.keys(titles).forEach((line, at) => {
        const drawn = shownIn(chart?.series[at]?.values ?? '').map(Number);
        perYear.forEach((year, place) =>
          expect(drawn[place]).toBeCloseTo(Number((of(year) as unknown as Record<string, unknown>)[line]), 6)
        );
      });
    }
  });

  test('stand in the file, each with its title and its cells', async () => {
    const read = await readXlsx(await writeSheets(sheets, { title: 'Charts' }));
    const written = read.sheets.find(({ name }) => name === 'Charts')?.charts ?? [];
    expect(written.map(({ title }) => title)).toEqual(charts.map(({ title }) => title));
    expect(written.map(({ series }) => series?.map(({ valuesRef }) => valuesRef))).toEqual(
      charts.map(({ series }) => series.map(({ values }) => values))
    );
    expect(written[0]?.series?.map(({ name }) => name)).toEqual(['=1+1 <low> & “slow”']);
  });
});
