/** A line of cost or of CO2e has one name wherever it is shown. */
import { describe, expect, test } from 'vitest';
import type { Co2eLine, CostLine } from '#lib/calc/estimate-types.ts';
import {
  cashLineTitles,
  co2eLineTitles,
  costLineTitles,
  reportingClasses,
  shadowLineTitles
} from '#lib/calc/line-names.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { yearlyCost } from '#lib/charts/yearly-cost.ts';
import { yearlyTonnes } from '#lib/charts/yearly-tonnes.ts';
import { workbookSheets } from '#lib/files/xlsx/xlsx-out.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';

const costLines = Object.keys(costLineTitles) as CostLine[];
const co2eLines = Object.keys(co2eLineTitles) as Co2eLine[];
const ofEach = <K extends string, V>(lines: readonly K[], value: V) =>
  Object.fromEntries([...lines, 'total'].map((line) => [line, value])) as Record<K | 'total', V>;
const sorted = (texts: Iterable<string>) => [...texts].sort();

describe('a line has one name', () => {
  test('in the chart of cost', () => {
    const chart = yearlyCost({
      currency: 'EUR',
      scenarios: [{ id: 'a', name: 'A', cost: ofEach(costLines, '1') }]
    });
    expect(sorted(chart.series.map(({ label }) => label))).toEqual(sorted(Object.values(cashLineTitles)));
  });

  test('in the chart of tonnes', () => {
    const chart = yearlyTonnes({
      warming: 'AR6, 100 years',
      scenarios: [{ id: 'a', name: 'A', co2eKg: ofEach(co2eLines, 1000) }]
    });
    expect(sorted(chart.series.map(({ label }) => label))).toEqual(sorted(Object.values(co2eLineTitles)));
  });

  test('in the spreadsheet', () => {
    const workbook = demoWorkbook();
    const reckoning = reckon(recorder, coreInput(workbook));
    const sheets = workbookSheets({ workbook, reckoning, cautions: [], warnings: [], workingOf, citation });
    const year = sheets.find(({ name }) => name === 'Year');
    const firstColumn = (year?.rows ?? []).flatMap(([cell]) => (cell?.kind === 'text' ? [cell.text] : []));
    const { agents: _, ...cash } = cashLineTitles;
    for (const titles of [cash, shadowLineTitles, co2eLineTitles])
      expect(firstColumn).toEqual(expect.arrayContaining(Object.values(titles)));
  });
});

test('emissions of gases are those of oxygen alone, and say so', () => {
  expect(co2eLineTitles.gases).toBe('Oxygen');
});

test('each line of CO2e has a reporting class', () => {
  expect(Object.keys(reportingClasses)).toEqual(co2eLines);
});
