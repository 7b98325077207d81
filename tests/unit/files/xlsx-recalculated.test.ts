/** The gate of the spreadsheet: LibreOffice opens it, recalculates every formula, and has to find the tool's figures. */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import { reckon } from '#lib/calc/reckoning/reckoning.ts';
import { citation } from '#lib/calc/working/citation.ts';
import { recorder, workingOf } from '#lib/calc/working/recorder.ts';
import { newestReferenceSet } from '#lib/calc/reference/reference-sets.ts';
import { writeCell } from '#lib/calc/cell-path.ts';
import { cashLineTitles } from '#lib/calc/line-names.ts';
import { workbookSheets } from '#lib/files/xlsx/xlsx-out.ts';
import type { Sheet, SheetCell } from '#lib/files/xlsx/sheet.ts';
import { writeSheets } from '#lib/files/xlsx/write-sheets.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import { demoWorkbook } from '#lib/workbook/demo.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { everyBranch } from '../../fixtures/every-branch.ts';
import { nastyNames, randomWorkbook } from '../../fixtures/random-workbook.ts';
import type { CellTexts } from '../../fixtures/recalculated.ts';
import { findOffice, hangsAfterMs, recalculated } from '../../fixtures/recalculated.ts';

const office = findOffice();

const sheetsOf = (workbook: Workbook): readonly Sheet[] =>
  workbookSheets({
    workbook,
    reckoning: reckon(recorder, coreInput(workbook)),
    cautions: estimate(coreInput(workbook)).cautions,
    warnings: [],
    workingOf,
    citation
  });

/** The sheets with every stored result spoilt: what is right afterwards has been computed anew. */
const spoilt = (sheets: readonly Sheet[]): readonly Sheet[] =>
  sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) =>
      row.map((cell) => (cell?.kind === 'formula' ? { ...cell, result: -987654321 } : cell))
    )
  }));

/** The sheets with another number in the cell of a row and a column, each found by its text. */
function typedInto(
  sheets: readonly Sheet[],
  { sheet, row, column, value }: { sheet: string; row: string; column: string; value: number }
): readonly Sheet[] {
  let typed = 0;
  const textOf = (cell: SheetCell | null | undefined) => (cell?.kind === 'text' ? cell.text : '');
  const changed = sheets.map((each) => {
    if (each.name !== sheet) return each;
    const at = each.rows[0]?.findIndex((cell) => textOf(cell).startsWith(column)) ?? -1;
    const rows = each.rows.map((cells) =>
      cells.some((cell) => textOf(cell).startsWith(row))
        ? cells.map((cell, index) => {
            if (index !== at || cell?.kind !== 'number') return cell;
            typed++;
            return { ...cell, value };
          })
        : cells
    );
    return { ...each, rows };
  });
  if (typed !== 1) throw new Error(`${typed} cells of ${sheet} are in row ${row} and column ${column}.`);
  return changed;
}

const changes = [
  {
    path: 'agents.sevoflurane.bottlePrice',
    value: '141.25',
    at: { sheet: 'Agents', row: 'Sevoflurane', column: 'Bottle price' }
  },
  {
    path: 'caseMix.lap-chole.casesPerYear',
    value: 777,
    at: { sheet: 'Case mix', row: 'Laparoscopic cholecystectomy', column: 'Cases' }
  },
  {
    path: 'scenarios.closed.adoptionPercent',
    value: 55,
    at: { sheet: 'Scenarios', row: 'Closed-circuit A', column: 'Adoption' }
  },
  {
    path: 'scenarios.circle.capturePercent',
    value: 25,
    at: { sheet: 'Scenarios', row: 'Circle system B', column: 'Capture' }
  },
  {
    path: 'machines.m-closed.unitPrice',
    value: '31999.99',
    at: { sheet: 'Machines', row: 'Closed-circuit ventilator A', column: 'Price' }
  },
  {
    path: 'machines.m-circle.servicePerUnitPerYear',
    value: '975',
    at: { sheet: 'Machines', row: 'Low-flow circle system B', column: 'Service' }
  },
  {
    path: 'accounting.discountRatePercent',
    value: 5.25,
    at: { sheet: 'Settings', row: 'Discount rate', column: 'Value' }
  },
  {
    path: 'accounting.agentGrowthPercent',
    value: 2,
    at: { sheet: 'Settings', row: 'Agent prices grow', column: 'Value' }
  },
  {
    path: 'accounting.carbonPricePerTonne',
    value: '120',
    at: { sheet: 'Settings', row: 'Carbon price (', column: 'Value' }
  },
  {
    path: 'site.electricityKgCo2ePerKWh',
    value: 0.05,
    at: { sheet: 'Settings', row: 'Electricity, emissions', column: 'Value' }
  },
  {
    path: 'absorbents.alkali-free.pricePerKg',
    value: '12.5',
    at: { sheet: 'Absorbents', row: 'Alkali-free lime', column: 'Price' }
  },
  {
    path: 'gases.nitrousOxideBoughtKgPerYear',
    value: 60,
    at: { sheet: 'Settings', row: 'Nitrous oxide bought', column: 'Value' }
  }
] as const;

/** Growth of 0 is left out of the formulas, so the growth that is changed starts above. */
const grownDemo: Workbook = writeCell(demoWorkbook(), 'accounting.agentGrowthPercent', 1);
const changedDocument = changes.reduce<Workbook>(
  (workbook, { path, value }) => writeCell(workbook, path, value),
  grownDemo
);
const changedSheets = () =>
  changes.reduce<readonly Sheet[]>(
    (sheets, { at, value }) => typedInto(sheets, { ...at, value: Number(value) }),
    sheetsOf(grownDemo)
  );

const hostile: Workbook = {
  ...demoWorkbook(),
  title: '=1+1',
  caseMix: nastyNames.map((name, index) => ({
    ...(demoWorkbook().caseMix[0] as Workbook['caseMix'][number]),
    id: `row-${index}`,
    name
  })),
  ranges: {}
};

/** Published constants with figures of the user's own in their place, within what is plausible. */
const overridden: Workbook = {
  ...(everyBranch[1] as Workbook),
  overrides: ['machine.power', 'warming.AR6.100.sevoflurane', 'sevoflurane.metabolised'].map((id) => {
    const published = newestReferenceSet.constants.get(id);
    if (published === undefined) throw new Error(`There is no constant ${id}.`);
    return { constant: id, value: published.value * 1.05, unit: published.unit, reason: 'Measured here' };
  })
};

const random = fc.sample(randomWorkbook({ rows: 4 }), 8);
const allBranches = [...everyBranch, overridden];

describe.runIf(office !== null)('the spreadsheet, recalculated', () => {
  const sheets = new Map<string, readonly Sheet[]>();
  let computed: ReadonlyMap<string, CellTexts> = new Map();

  beforeAll(async () => {
    sheets.set('demo', sheetsOf(demoWorkbook()));
    sheets.set('changed', changedSheets());
    sheets.set('hostile', sheetsOf(hostile));
    allBranches.forEach((workbook, index) => sheets.set(`branch${index}`, sheetsOf(workbook)));
    random.forEach((workbook, index) => sheets.set(`random${index}`, sheetsOf(workbook)));
    const files = new Map<string, Uint8Array>();
    for (const [name, of] of sheets) files.set(name, await writeSheets(spoilt(of), { title: name }));
    computed = recalculated(office ?? '', files);
  }, hangsAfterMs);

  const cells = (file: string, sheet: string): readonly (readonly string[])[] =>
    computed.get(file)?.get(sheet) ?? [];
  /** The values of a line in all scenarios. */
  const line = (file: string, sheet: string, title: string) =>
    cells(file, sheet)
      .find((row) => row[0] === title)
      ?.slice(2)
      .map((text) => (text === '' ? null : Number(text)));

  /** Differences of the spreadsheet's totals from an estimate, each in its own unit. */
  function totals(file: string, given: Estimate) {
    const years = given.scenarios.map((scenario) => scenario.perYear);
    const compare = (title: string, sheet: string, wanted: readonly number[]) => {
      const found = line(file, sheet, title);
      expect(found, `${file}: ${title}`).toHaveLength(wanted.length);
      return Math.max(...wanted.map((value, index) => Math.abs(value - (found?.[index] ?? NaN))));
    };
    return {
      costs: [
        compare(
          'Total cost',
          'Year',
          years.map((year) => Number(year.cost.total))
        ),
        compare(
          'Agents, all',
          'Year',
          years.map((year) => Number(year.cost.agents))
        ),
        compare(
          cashLineTitles.gases,
          'Year',
          years.map((year) => Number(year.cost.gases))
        ),
        compare(
          'Carbon price',
          'Year',
          years.map((year) => Number(year.cost.carbon))
        ),
        compare(
          'Service',
          'Year',
          years.map((year) => Number(year.cost.service))
        )
      ],
      emissions: [
        compare(
          'Total emissions',
          'Year',
          years.map((year) => year.co2eKg.total)
        ),
        compare(
          'Agents',
          'Year',
          years.map((year) => year.co2eKg.agents)
        ),
        compare(
          'Nitrous oxide lost from the pipes',
          'Year',
          years.map((year) => year.co2eKg.nitrousOxideLost)
        )
      ],
      against: given.scenarios.flatMap(({ againstBaseline: figures }, index) => {
        if (index === 0) return [];
        const found = (title: string) => line(file, 'Results', title)?.[index] ?? null;
        const perTonne = figures.costPerTonneAvoided;
        return [
          [found('Saving of a year'), Number(figures.yearlySaving)],
          [found('Net present value'), Number(figures.npv)],
          [found('Investment'), Number(figures.investment)],
          [found('Payback'), figures.simplePaybackYears],
          [found('Payback, discounted'), figures.discountedPaybackYears],
          [found('Cost per tonne avoided'), perTonne === null ? null : Number(perTonne)],
          [found('Emissions avoided over the appraisal'), figures.co2eAvoidedOverAppraisalKg],
          [found('Saving of a year, social view'), Number(figures.shadow.yearlySaving)],
          [found('Net present value, social view'), Number(figures.shadow.npv)],
          [found('Internal rate of return'), figures.irrPercent]
        ] as const;
      })
    };
  }

  test.each([
    ['as it was saved', 'demo', demoWorkbook()],
    ['with twelve inputs changed in the spreadsheet', 'changed', changedDocument]
  ])('%s, gives the tool’s totals to the cent and the gram', (_, file, workbook) => {
    const { costs, emissions, against } = totals(file, estimate(coreInput(workbook)));
    expect(Math.max(...costs)).toBeLessThan(0.005);
    expect(Math.max(...emissions)).toBeLessThan(0.0005);
    expect(against).toHaveLength(30);
    // Where there is no figure, words stand in its place.
    for (const [found, wanted] of against)
      if (wanted === null) expect(found).toBeNaN();
      else expect(found).toBeCloseTo(wanted, 4);
  });

  test.each(allBranches.map((workbook, index) => [index, workbook] as const))(
    'with every kind of outlay, growth, shadow price and own figure (%i), it gives them too',
    (index, workbook) => {
      const file = `branch${index}`;
      const given = estimate(coreInput(workbook));
      const { costs, emissions, against } = totals(file, given);
      expect(Math.max(...costs)).toBeLessThan(0.005);
      expect(Math.max(...emissions)).toBeLessThan(0.0005);
      for (const [found, wanted] of against)
        if (wanted !== null && Number.isFinite(wanted) && found !== null && !Number.isNaN(found))
          expect(Math.abs(found - wanted)).toBeLessThan(Math.max(0.005, 1e-9 * Math.abs(wanted)));
    }
  );

  test('a payback that does not last is none there either, and each reason for none has its words', () => {
    const names = cells('branch0', 'Results')[0]?.slice(2) ?? [];
    const row = cells('branch0', 'Results').find(([title]) => title === 'Payback') ?? [];
    const paybackOf = (name: string) => row[2 + names.indexOf(name)];
    expect(paybackOf('Loses money, ahead for a time')).toBe('not within the appraisal');
    expect(paybackOf('Twin of today')).toBe('nothing to pay back');
    expect(paybackOf('Saves at once')).toBe('0');
    const from = cells('branch0', 'Cash flow').findIndex(([title]) => title?.startsWith('Loses money'));
    const at = (title: string) =>
      cells('branch0', 'Cash flow')
        .slice(from)
        .find(([each]) => each === title)
        ?.slice(2)
        .filter((text) => text !== '');
    // Ahead from the purchases avoided at the end of year 2 until the yearly cost has used them up.
    expect(at('Comes back to 0, at')).toEqual(['2']);
    expect(at('Falls below 0, at')).toHaveLength(2);
  });

  test('own figures act in the spreadsheet, and stand beside what was published', () => {
    const index = allBranches.length - 1;
    const emissions = (file: string) => line(file, 'Year', 'Total emissions')?.[0] ?? NaN;
    expect(Math.abs(emissions(`branch${index}`) - emissions('branch1'))).toBeGreaterThan(1);
    const reasons = cells(`branch${index}`, 'Constants').map((row) => row[7]);
    expect(reasons).toContain('Measured here');
  });

  test('changing inputs has changed the answer, so the formulas are alive', () => {
    const [before, after] = ['demo', 'changed'].map((file) => line(file, 'Results', 'Net present value'));
    expect(Math.abs((after?.[3] ?? 0) - (before?.[3] ?? 0))).toBeGreaterThan(1000);
  });

  test('every formula of every workbook gives the result that the tool stored with it', () => {
    let formulas = 0;
    const wrong: string[] = [];
    for (const [file, of] of sheets) {
      if (file === 'changed') continue;
      // A difference of two large sums keeps the rounding of the sums, on whatever sheet these stand; the program takes
      // what is as small beside them for 0.
      const results = of.flatMap(({ rows }) =>
        rows.flat().map((cell) => (cell?.kind === 'formula' ? Number(cell.result) || 0 : 0))
      );
      const rounding = 1e-12 * results.reduce((most, result) => Math.max(most, Math.abs(result)), 1);
      for (const { name, rows } of of) {
        rows.forEach((row, rowIndex) =>
          row.forEach((cell, column) => {
            if (cell?.kind !== 'formula') return;
            formulas++;
            const text = cells(file, name)[rowIndex]?.[column] ?? '';
            const wanted = cell.result;
            // A spreadsheet's own search gives up on rates of millions of percent, and the cell says so.
            const givesUp = text === 'not found by the spreadsheet' && Number(wanted) > 1e8;
            const same =
              givesUp ||
              (typeof wanted === 'string'
                ? text === wanted
                : text !== '' && Math.abs(Number(text) - wanted) <= 1e-9 * Math.abs(wanted) + rounding);
            if (!same)
              wrong.push(
                `${file}, ${name} ${rowIndex + 1}/${column + 1}: ${text}, not ${wanted}: =${cell.formula}`
              );
          })
        );
      }
    }
    expect(wrong).toEqual([]);
    expect(formulas).toBeGreaterThan(5000);
  });

  test('names that look like formulas are texts', () => {
    const names = cells('hostile', 'Case mix')
      .slice(1)
      .map((row) => row[0]);
    for (const name of nastyNames.filter((each) => /^[=+\-@]/.test(each))) expect(names).toContain(name);
    expect(cells('hostile', 'Read me')[0]?.[0]).toBe('=1+1');
  });
});
