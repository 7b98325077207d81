/** The sheets that a finance department reads: results, cash flow, the year by line, and the cases behind it. */
import type { CashLine, Caution, Co2eLine, ShadowLine } from '#lib/calc/estimate-types.ts';
import type { Agent, Scenario } from '#lib/calc/input.ts';
import { cashLineTitles, co2eLineTitles, shadowLineTitles } from '#lib/calc/line-names.ts';
import type { Against } from '#lib/calc/reckoning/against.ts';
import type { CaseResult } from '#lib/calc/case/case-result.ts';
import type { Reckoning } from '#lib/calc/reckoning/reckoning.ts';
import type { YearFigures } from '#lib/calc/reckoning/scenario-year.ts';
import { leastAvoidedKg } from '#lib/calc/limits.ts';
import type { Quantity } from '#lib/calc/working/reckoner.ts';
import type { Working } from '#lib/calc/working/working.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import type { FormulaSheets } from './formula-sheets.ts';
import { asNumber } from './formula-sheets.ts';
import type { CellLook, Sheet, SheetCell, SheetChart } from './sheet.ts';
import { cellAddress, columnLetters } from './sheet.ts';

/** The core's calculation, run with the recorder. */
export interface RecordedReckoning {
  readonly reckoning: Pick<Reckoning, 'cases' | 'floorOf' | 'year' | 'against'>;
  readonly workingOf: (quantity: Quantity<unknown>) => Working;
}

const resultsSheet = 'Results';
const cashFlowSheet = 'Cash flow';
const yearSheet = 'Year';
const casesSheet = 'Cases';

const agentTitle = (agent: Agent): string => agent.charAt(0).toUpperCase() + agent.slice(1);

const text = (given: string, look?: CellLook): SheetCell =>
  look === undefined ? { kind: 'text', text: given } : { kind: 'text', text: given, look };
const heading = (given: string): SheetCell => text(given, 'heading');

/** A figure that will stand at a place; its cell is made once all figures have their places. */
interface FigurePlace {
  readonly row: number;
  readonly column: number;
  readonly figure: Working;
  /** The sheet's words for what it is of: the heads of its row, its column and its block. */
  readonly usedFor: string;
}

/** A sheet in the making: words at once, figures when all of them have their places. */
class SheetDraft {
  readonly rows: (SheetCell | null)[][] = [];
  readonly figures: FigurePlace[] = [];
  readonly totals = new Set<number>();
  readonly names: { readonly name: string; readonly address: string }[] = [];
  /** What the rows that follow are of, and what each column of them is of. */
  about: { readonly block: string; readonly columns: readonly string[] } = { block: '', columns: [] };

  constructor(
    readonly name: string,
    private readonly formulas: FormulaSheets
  ) {}

  /** Adds a row; returns its index. */
  row(...cells: readonly (SheetCell | Working | null)[]): number {
    const row = this.rows.length;
    const [first] = cells;
    const title = first != null && !isFigure(first) && first.kind === 'text' ? first.text : '';
    this.rows.push(
      cells.map((cell, column) => (isFigure(cell) ? this.#take(cell, { row, column, title }) : cell))
    );
    return row;
  }

  address(row: number, column: number): string {
    return cellAddress(this.name, { row, column });
  }

  /** Cells of a row from one column to another, as a range on this sheet. */
  range(row: number, from: number, to: number): string {
    return `${this.address(row, from)}:$${columnLetters(to)}$${row + 1}`;
  }

  #take(figure: Working, { row, column, title }: { row: number; column: number; title: string }): null {
    this.formulas.place(figure, this.address(row, column));
    const { block, columns } = this.about;
    const usedFor = [block, columns[column] ?? '', title].filter((part) => part !== '').join(', ');
    this.figures.push({ row, column, figure, usedFor });
    return null;
  }

  finished(widthsCh: readonly number[], frozenRows: number): Sheet {
    for (const { row, column, figure, usedFor } of this.figures) {
      const cells = this.rows[row];
      const look = figure.unit.startsWith('currency') ? 'money' : 'amount';
      if (cells !== undefined)
        cells[column] = this.formulas.cellOf(figure, this.address(row, column), look, usedFor);
    }
    const { name, totals, rows, names } = this;
    return { name, widthsCh, frozenRows, frozenColumns: 2, totals, rows, names };
  }
}

const isFigure = (cell: SheetCell | Working | null): cell is Working => cell !== null && 'unit' in cell;

/** The four sheets and their charts, with formulas into the steps; figures of all of them are placed before any formula is written. */
export function ledgerSheets(
  workbook: Workbook,
  { reckoning, workingOf, cautions }: RecordedReckoning & { readonly cautions: readonly Caution[] },
  formulas: FormulaSheets
): readonly Sheet[] {
  const draft = (name: string) => new SheetDraft(name, formulas);
  const [results, cashFlow, year, cases] = [
    draft(resultsSheet),
    draft(cashFlowSheet),
    draft(yearSheet),
    draft(casesSheet)
  ];
  const { scenarios, currency } = workbook;

  fillCases(cases, scenarios, { reckoning, workingOf });
  const years = scenarios.map((scenario) => reckoning.year(scenario));
  const lines = fillYear(year, { scenarios, years, workingOf, currency });
  const compared = scenarios.filter((scenario) => !scenario.baseline);
  const blocks = new Map(
    compared.map((scenario) => [
      scenario.id,
      fillCashFlow(cashFlow, { scenario, figures: reckoning.against(scenario), workingOf, currency })
    ])
  );
  fillResults(results, { scenarios, reckoning, workingOf, currency, blocks });
  if (cautions.length > 0) results.row();
  // Without a wrapping look: the sentence runs over the empty cells beside it.
  for (const { sentence } of cautions) results.row(text(`Caution: ${sentence}`));

  const yearsAhead = workbook.accounting.appraisalYears;
  return [
    results.finished([36, 18, ...scenarios.map(() => 22)], 1),
    chartsSheet({ scenarios, currency, blocks, lines }),
    cashFlow.finished([34, 18, ...Array.from({ length: yearsAhead + 1 }, () => 13)], 0),
    year.finished([36, 18, ...scenarios.map(() => 22)], 1),
    cases.finished([26, 36, 24, 14, 18, ...caseColumns.map(() => 14)], 1)
  ];
}

/** Rows of a ledger, each by the name of its line, over the columns of the scenarios. */
interface LinesOfYear {
  readonly scenarios: string;
  readonly cost: readonly { readonly name: string; readonly values: string }[];
  readonly co2e: readonly { readonly name: string; readonly values: string }[];
}

/** What is drawn from the sheets beside it. */
function chartsSheet({
  scenarios,
  currency,
  blocks,
  lines
}: {
  scenarios: readonly Scenario[];
  currency: string;
  blocks: ReadonlyMap<string, CashFlowBlock>;
  lines: LinesOfYear;
}): Sheet {
  const flows = scenarios.flatMap(({ id, name }) => {
    const block = blocks.get(id);
    return block === undefined ? [] : [{ name, block }];
  });
  const [first] = flows;
  // Printed, a page has so many rows, and each chart one to itself.
  const rowsOfPage = 32;
  const place = (index: number) => ({
    from: { row: 2 + rowsOfPage * index, column: 0 },
    to: { row: 27 + rowsOfPage * index, column: 9 }
  });
  const ofYear = { kind: 'stacked-columns', categories: lines.scenarios } as const;
  const drawn: readonly Omit<SheetChart, 'from' | 'to'>[] = [
    ...(first === undefined
      ? []
      : [
          {
            kind: 'lines' as const,
            title: 'Cumulative cash flow against today, by year',
            unit: currency,
            categories: first.block.years,
            series: flows.map(({ name, block }) => ({ name, values: block.cumulative }))
          }
        ]),
    { ...ofYear, title: 'Cost of a year, by line', unit: `${currency} a year`, series: lines.cost },
    { ...ofYear, title: 'Emissions of a year, by line', unit: 'kg CO₂e a year', series: lines.co2e }
  ];
  return {
    name: 'Charts',
    widthsCh: Array.from({ length: 10 }, () => 13),
    frozenRows: 0,
    rows: [[text('Drawn from “Cash flow” and “Year”, and anew when a tinted cell is changed.')]],
    charts: drawn.map((chart, index) => ({ ...chart, ...place(index) }))
  };
}

const caseColumns = [
  ['liquidMl', 'Liquid used (mL)'],
  ['takenUpMl', 'Taken up (mL)'],
  ['spilledMl', 'Spilled (mL)'],
  ['leftMl', 'Left at the end (mL)'],
  ['floorMl', 'Floor (mL)'],
  ['oxygenL', 'Oxygen (L)'],
  ['airL', 'Air (L)'],
  ['nitrousOxideL', 'Nitrous oxide (L)'],
  ['absorbentKg', 'Absorbent (kg)']
] as const satisfies readonly (readonly [keyof CaseResult | 'floorMl', string])[];

function fillCases(
  sheet: SheetDraft,
  scenarios: readonly Scenario[],
  { reckoning, workingOf }: RecordedReckoning
): void {
  sheet.row(
    ...['Scenario', 'Case group', 'Flow plan', 'Agent', 'Found by'].map(heading),
    ...caseColumns.map(([, title]) => heading(title))
  );
  for (const scenario of scenarios)
    for (const { row, plan, agent, method, result } of reckoning.cases(scenario)) {
      sheet.about = { block: `${scenario.name}, ${row.name}`, columns: [] };
      sheet.row(
        text(scenario.name),
        text(row.name),
        text(plan.name),
        text(agent === null ? '' : agentTitle(agent)),
        text(method),
        ...caseColumns.map(([key]) =>
          workingOf(key === 'floorMl' ? reckoning.floorOf(scenario, row) : result[key])
        )
      );
    }
}

function fillYear(
  sheet: SheetDraft,
  {
    scenarios,
    years,
    workingOf,
    currency
  }: {
    scenarios: readonly Scenario[];
    years: readonly YearFigures[];
    workingOf: RecordedReckoning['workingOf'];
    currency: string;
  }
): LinesOfYear {
  const line = (
    title: string,
    unit: string,
    of: (year: YearFigures) => Quantity<unknown> | null | undefined
  ) => {
    const figures = years.map((year) => of(year) ?? null);
    return sheet.row(
      text(title),
      text(unit),
      ...figures.map((figure) => (figure === null ? null : workingOf(figure)))
    );
  };
  const block = (title: string) => {
    sheet.row();
    sheet.row(heading(title));
  };
  sheet.about = { block: '', columns: ['', '', ...scenarios.map(({ name }) => name)] };
  const heads = sheet.row(
    heading('A year of each scenario'),
    heading('Unit'),
    ...scenarios.map(({ name }) => heading(name))
  );
  sheet.row(heading('What is used'));
  const agents = [...new Set(years.flatMap((year) => Object.keys(year.agents) as Agent[]))];
  for (const agent of agents) {
    line(`${agentTitle(agent)}, liquid`, 'mL', (year) => year.agents[agent]?.liquidMl);
    line(`${agentTitle(agent)}, bottles`, 'bottles', (year) => year.agents[agent]?.bottles);
  }
  line('Oxygen', 'm³', (year) => year.oxygenM3);
  line('Air', 'm³', (year) => year.airM3);
  line('Nitrous oxide', 'kg', (year) => year.nitrousOxideKg);
  line('Absorbent', 'kg', (year) => year.absorbentKg);
  line('Electricity', 'kWh', (year) => year.electricityKWh);
  line('Intravenous cases', 'cases', (year) => year.intravenousCases);
  line('Propofol drawn up', 'g', (year) => year.propofolDrawnUpG);
  line('Propofol wasted', 'g', (year) => year.propofolWastedG);
  line('Sensors of processed EEG', 'sensors', (year) => year.eegSensors);
  line('Regional cases', 'cases', (year) => year.regionalCases);
  block('What it costs');
  for (const agent of agents) line(agentTitle(agent), currency, (year) => year.agents[agent]?.cost);
  const overScenarios = (row: number): string => sheet.range(row, 2, 1 + scenarios.length);
  const cost = (Object.entries(cashLineTitles) as [CashLine, string][]).map(([key, title]) => ({
    name: title,
    values: overScenarios(line(key === 'agents' ? 'Agents, all' : title, currency, (year) => year.cost[key]))
  }));
  sheet.totals.add(line('Total cost', currency, (year) => year.cost.total));
  block('Beside it, not cash');
  for (const [key, title] of Object.entries(shadowLineTitles) as [ShadowLine, string][])
    line(title, currency, (year) => year.cost[key]);
  block('What it emits');
  const co2e = (Object.entries(co2eLineTitles) as [Co2eLine, string][]).map(([key, title]) => ({
    name: title,
    values: overScenarios(line(title, 'kg CO₂e', (year) => year.co2eKg[key]))
  }));
  sheet.totals.add(line('Total emissions', 'kg CO₂e', (year) => year.co2eKg.total));
  return { scenarios: overScenarios(heads), cost, co2e };
}

/** Where the rows lie that the results look at. */
interface CashFlowBlock {
  readonly net: string;
  readonly years: string;
  readonly cumulative: string;
  /** The discounted investments of all years. */
  readonly investments: string;
  readonly payback: PaybackRows;
  readonly discountedPayback: PaybackRows;
  readonly changesOfSign: string;
  /** Whether they change it in the file as it is saved. */
  readonly doesChangeSign: boolean;
}

interface PaybackRows {
  /** What has come together at each year's end, what machines are worth at the last left out. */
  readonly sums: string;
  readonly lastSum: string;
  /** The same just before what falls at the year's end. */
  readonly justBefore: string;
  /** Times at which the sum comes back to 0. */
  readonly turns: string;
}

function fillCashFlow(
  sheet: SheetDraft,
  {
    scenario,
    figures: { years, sumsForPayback, sumsForDiscountedPayback, benefitCostRatio },
    workingOf,
    currency
  }: {
    scenario: Scenario;
    figures: Against;
    workingOf: RecordedReckoning['workingOf'];
    currency: string;
  }
): CashFlowBlock {
  const first = 2;
  const last = first + years.length - 1;
  const line = (title: string, of: (year: Against['years'][number]) => Quantity<unknown>) =>
    sheet.row(text(title), text(currency), ...years.map((year) => workingOf(of(year))));
  /** A row of formulas over the row above it, year by year; year 0 has none. */
  const derived = (
    title: string,
    words: string,
    start: SheetCell | null,
    of: (at: { before: number; column: number }) => SheetCell
  ) =>
    sheet.row(
      text(title, 'note'),
      text(words, 'note'),
      ...years.map((_, index) =>
        index === 0 ? start : of({ before: first + index - 1, column: first + index })
      )
    );
  const values = (of: (year: Against['years'][number]) => Quantity<unknown>) =>
    years.map((year) => asNumber(workingOf(of(year)).value));

  sheet.about = {
    block: `${scenario.name}, against today`,
    columns: ['', '', ...years.map(({ year }) => `year ${year}`)]
  };
  sheet.row(text(`${scenario.name}, against today`, 'title'));
  const yearRow = sheet.row(
    heading('Year'),
    heading('Unit'),
    ...years.map(({ year }): SheetCell => ({ kind: 'number', value: year, look: 'heading' }))
  );
  line('Investment beyond today’s', (year) => year.investment);
  for (const [key, title] of Object.entries(cashLineTitles) as [CashLine, string][])
    line(`Saved: ${title}`, (year) => year.savings[key]);
  line('Saving of the year', (year) => year.saving);
  const net = line('Net cash flow', (year) => year.net);
  sheet.totals.add(net);
  const cumulative = line('Cumulative cash flow', (year) => year.cumulative);
  line('Discounted cash flow', (year) => year.discounted);
  line('Cumulative, discounted', (year) => year.cumulativeDiscounted);
  const ratio = workingOf(benefitCostRatio);
  const invested = ratio.kind === 'step' || ratio.kind === 'method' ? ratio.inputs['investments'] : undefined;
  if (invested === undefined || Array.isArray(invested))
    throw new Error('A benefit-cost ratio is made of the investments of all years.');
  const investments = sheet.row(
    text('Investments of all years, discounted'),
    text(currency),
    invested as Working
  );

  /** Within a year what is saved comes in evenly; all else falls at its end. */
  const paybackRows = (ofPayback: Against['sumsForPayback'], discounted: string): PaybackRows => {
    const placed = (title: string, of: (year: Against['sumsForPayback'][number]) => Quantity<unknown>) =>
      sheet.row(text(title), text(currency), ...ofPayback.map((year) => workingOf(of(year))));
    const evenly = placed(`Saved evenly over the year${discounted}`, (year) => year.evenly);
    const sums = placed(`Sum for payback${discounted}, worth at the end left out`, (year) => year.sum);
    const number = (quantity: Quantity<unknown> | undefined) =>
      quantity === undefined ? 0 : asNumber(workingOf(quantity).value);
    const at = (index: number) => {
      const [before, here] = [number(ofPayback[index - 1]?.sum), ofPayback[index]];
      return { before, justBefore: before + number(here?.evenly), after: number(here?.sum) };
    };
    const justBefore = derived('Just before the year’s end', currency, null, ({ before, column }) => ({
      kind: 'formula',
      formula: `${sheet.address(sums, before)}+${sheet.address(evenly, column)}`,
      result: at(column - first).justBefore,
      look: 'money'
    }));
    const passing = (title: string, from: '<' | '>=', to: '<' | '>=') => {
      const is = (value: number, sign: '<' | '>=') => (sign === '<' ? value < 0 : value >= 0);
      return derived(title, 'years', null, ({ before: columnBefore, column }) => {
        const [before, middle, after] = [
          sheet.address(sums, columnBefore),
          sheet.address(justBefore, column),
          sheet.address(sums, column)
        ];
        const year = column - first;
        const values = at(year);
        const within = is(values.before, from) && is(values.justBefore, to);
        const atEnd = is(values.justBefore, from) && is(values.after, to);
        return {
          kind: 'formula',
          formula:
            `IF(AND(${before}${from}0,${middle}${to}0),${year - 1}+${before}/(${before}-${middle}),` +
            `IF(AND(${middle}${from}0,${after}${to}0),${year},""))`,
          result: within ? year - 1 + values.before / (values.before - values.justBefore) : atEnd ? year : '',
          look: 'amount'
        };
      });
    };
    const turns = passing(`Comes back to 0${discounted}, at`, '<', '>=');
    passing(`Falls below 0${discounted}, at`, '>=', '<');
    return {
      sums: sheet.range(sums, first, last),
      lastSum: sheet.address(sums, last),
      justBefore: sheet.range(justBefore, first, last),
      turns: sheet.range(turns, first, last)
    };
  };
  for (const [key, title] of Object.entries(shadowLineTitles) as [ShadowLine, string][])
    line(`Beside it, not cash: ${title}`, (year) => year.savings[key]);
  const payback = paybackRows(sumsForPayback, '');
  const discountedPayback = paybackRows(sumsForDiscountedPayback, ', discounted');

  const flows = values((year) => year.net);
  let sign = Math.sign(flows[0] ?? 0);
  const signs = sheet.rows.length;
  derived(
    'Sign so far',
    '',
    { kind: 'formula', formula: `SIGN(${sheet.address(net, first)})`, result: sign },
    ({ before, column }) => {
      const flow = sheet.address(net, column);
      sign = Math.sign(flows[column - first] ?? 0) || sign;
      return {
        kind: 'formula',
        formula: `IF(${flow}=0,${sheet.address(signs, before)},SIGN(${flow}))`,
        result: sign
      };
    }
  );
  sheet.row();
  return {
    net: sheet.range(net, first, last),
    years: sheet.range(yearRow, first, last),
    cumulative: sheet.range(cumulative, first, last),
    investments: sheet.address(investments, first),
    payback,
    discountedPayback,
    doesChangeSign: flows.some((flow) => flow > 0) && flows.some((flow) => flow < 0),
    changesOfSign: `SUMPRODUCT(--(${sheet.range(signs, first, last - 1)}*${sheet.range(signs, first + 1, last)}<0))`
  };
}

const none = 'none';
const notFound = 'not found by the spreadsheet';
const several = 'several rates fit';
const notWithin = 'not within the appraisal';
const nothingAvoided = 'nothing avoided';
const savesMoney = 'none, it saves money';
const nothingToPayBack = 'nothing to pay back';

function fillResults(
  sheet: SheetDraft,
  {
    scenarios,
    reckoning,
    workingOf,
    currency,
    blocks
  }: RecordedReckoning & {
    scenarios: readonly Scenario[];
    currency: string;
    blocks: ReadonlyMap<string, CashFlowBlock>;
  }
): void {
  const line = (title: string, unit: string, of: (scenario: Scenario) => SheetCell | Working | null) => {
    const row = sheet.row(text(title), text(unit), ...scenarios.map(of));
    scenarios.forEach(({ id, baseline }, index) => {
      if (!baseline)
        sheet.names.push({ name: resultName(id, title), address: sheet.address(row, 2 + index) });
    });
    return row;
  };
  const against = (scenario: Scenario) => reckoning.against(scenario);
  /** A figure of a scenario that is compared with today; the core may hold that there is none. */
  const figure =
    (of: (figures: Against) => Quantity<unknown>) =>
    (scenario: Scenario): SheetCell | Working | null => {
      if (scenario.baseline) return null;
      const working = workingOf(of(against(scenario)));
      return working.value === null ? text(none) : working;
    };
  const payback =
    (of: (figures: Against) => Quantity<number | null>, rows: 'payback' | 'discountedPayback') =>
    (scenario: Scenario): SheetCell | null => {
      const block = blocks.get(scenario.id);
      if (block === undefined) return null;
      const figures = against(scenario);
      const years = workingOf(of(figures)).value;
      const nothing = figures.years.every(({ net }) => asNumber(workingOf(net).value) === 0);
      const { sums, lastSum, justBefore, turns } = block[rows];
      const somethingSaved = `COUNTIF(${sums},">0")+COUNTIF(${justBefore},">0")>0`;
      return {
        kind: 'formula',
        formula:
          `IF(${lastSum}<0,"${notWithin}",IF(COUNT(${turns})>0,MAX(${turns}),` +
          `IF(${somethingSaved},0,"${nothingToPayBack}")))`,
        result: years !== null ? asNumber(years) : nothing ? nothingToPayBack : notWithin,
        look: 'amount'
      };
    };

  sheet.about = { block: '', columns: ['', '', ...scenarios.map(({ name }) => `${name}, against today`)] };
  sheet.row(heading('Against today'), heading('Unit'), ...scenarios.map(({ name }) => heading(name)));
  line(
    'Saving of a year',
    currency,
    figure((figures) => figures.yearlySaving)
  );
  line(
    'Emissions avoided in a year',
    'kg CO₂e',
    figure((figures) => figures.co2eAvoidedKg)
  );
  line(
    'Investment',
    currency,
    figure((figures) => figures.investment)
  );
  line(
    'Payback',
    'years',
    payback((figures) => figures.simplePaybackYears, 'payback')
  );
  line(
    'Payback, discounted',
    'years',
    payback((figures) => figures.discountedPaybackYears, 'discountedPayback')
  );
  const npv = line(
    'Net present value',
    currency,
    figure((figures) => figures.npv)
  );
  line('Internal rate of return', '%', (scenario) => {
    const block = blocks.get(scenario.id);
    return block === undefined ? null : internalRate(block, against(scenario).irrAllPercent);
  });
  const avoided = line(
    'Emissions avoided over the appraisal',
    'kg CO₂e',
    figure((figures) => figures.co2eAvoidedOverAppraisalKg)
  );
  line('Cost per tonne avoided', `${currency}/t CO₂e`, (scenario) => {
    if (scenario.baseline) return null;
    const column = 2 + scenarios.indexOf(scenario);
    const [value, kg] = [sheet.address(npv, column), sheet.address(avoided, column)];
    const perTonne = workingOf(against(scenario).costPerTonneAvoided).value;
    return {
      kind: 'formula',
      formula: `IF(${kg}<=${leastAvoidedKg},"${nothingAvoided}",IF(${value}>0,"${savesMoney}",-${value}/(${kg}/1000)))`,
      result:
        perTonne !== null
          ? asNumber(perTonne)
          : asNumber(workingOf(against(scenario).co2eAvoidedOverAppraisalKg).value) > leastAvoidedKg
            ? savesMoney
            : nothingAvoided,
      look: 'money'
    };
  });
  line(
    'Saving of a year, social view',
    currency,
    figure((figures) => figures.shadow.yearlySaving)
  );
  line(
    'Net present value, social view',
    currency,
    figure((figures) => figures.shadow.npv)
  );
  // What is saved is worth the net present value and what is invested together.
  line('Benefit-cost ratio', '', (scenario) => {
    const block = blocks.get(scenario.id);
    if (block === undefined) return null;
    const ratio = workingOf(against(scenario).benefitCostRatio).value;
    const value = sheet.address(npv, 2 + scenarios.indexOf(scenario));
    return {
      kind: 'formula',
      formula: `IF(${block.investments}>0,(${value}+${block.investments})/${block.investments},"${none}")`,
      result: ratio === null ? none : asNumber(ratio),
      look: 'amount'
    };
  });
  line('Cost of ownership, undiscounted', currency, (scenario) =>
    workingOf(against(scenario).totalCostOfOwnership)
  );
  line('Equivalent annual cost', currency, (scenario) => workingOf(against(scenario).equivalentAnnualCost));
}

/**
 * The internal rate by the spreadsheet's own function, started at the rate that the tool found. A spreadsheet gives one
 * of several rates without a word, so where the sum changes its sign more than once the search starts elsewhere as well:
 * at the other rates that the tool found, and, as figures may be changed, from below and from above. Where these part it
 * is said that several fit; a loss of more than all, which a search can run into, is no rate. It may give up on a rate
 * that is there, as on one of millions of percent; it then says so, which is not the same as there being none.
 */
function internalRate(block: CashFlowBlock, allPercent: readonly number[]): SheetCell {
  const [only, ...others] = allPercent;
  const found = (start: string): string => `IRR(${block.net}${start})`;
  const rate = found(only === undefined ? '' : `,${only / 100}`);
  const apart = [...others.map((percent) => percent / 100), -0.3, 5]
    .map((start) => found(`,${start}`))
    .map((other) => `ABS(IFERROR(IF(${other}>-1,${other},${rate}),${rate})-${rate})`)
    .join(',');
  const one = `IFERROR(IF(AND(${block.changesOfSign}>1,MAX(${apart})>0.000001),"${several}",${rate}*100),"${notFound}")`;
  return {
    kind: 'formula',
    formula: `IF(${block.changesOfSign}=0,"${none}",${one})`,
    // Flows that change their sign may have no rate all the same: no spreadsheet can tell that from one it does not find.
    result: allPercent.length > 1 ? several : (only ?? (block.doesChangeSign ? notFound : none)),
    look: 'amount'
  };
}

/** The name of a result in formulas: `result.closed.net_present_value`. */
export const resultName = (scenario: string, title: string): string =>
  `result.${scenario.replaceAll('-', '_')}.${title
    .toLowerCase()
    .replace(/[^a-z]+/g, '_')
    .replace(/^_|_$/g, '')}`;
