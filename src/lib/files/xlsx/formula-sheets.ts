/**
 * From the working of a figure to cells with formulas. The core records how each number came about; here each of its
 * steps becomes a cell, so that the spreadsheet follows the calculation and there is no second one to disagree with it.
 */
import type { Constant, Source } from '#lib/calc/reference/constant.ts';
import type { StepWorking, Working } from '#lib/calc/working/working.ts';
import { spreadsheetFormula } from './formula-text.ts';
import type { Sheet, SheetCell } from './sheet.ts';
import { checkHeaders } from '../tables/added-headers.ts';
import { countOfDiffering, differsFormula } from './check-formula.ts';
import { cellAddress, columnLetters } from './sheet.ts';

export const stepsSheet = 'Steps';
export const constantsSheet = 'Constants';
export const otherInputsSheet = 'Other inputs';

/** The most references that are put into one call of a function; a spreadsheet takes 255. */
const mostReferences = 100;

/** A value as a spreadsheet holds it: decimals become its binary numbers, exact to about 15 digits. */
export const asNumber = (value: unknown): number => Number(String(value));

/** A number in a formula. */
const literal = (value: number): string => (value < 0 ? `(${value})` : String(value));

/** Steps of a single case belong to the circle-system solution: the sheet holds their values. */
const isOfOneCase = (step: StepWorking): boolean => step.formula.id.startsWith('case.');

export class FormulaSheets {
  readonly #placed = new Map<Working, string>();
  readonly #stepByFormula = new Map<string, string>();
  readonly #steps: (SheetCell | null)[][] = [];
  readonly #constants = new Map<string, number>();
  readonly #constantRows: (SheetCell | null)[][] = [];
  readonly #otherInputs = new Map<string, string>();
  /** Cells of the document and constants that a formula takes, and those behind a value that no formula makes. */
  readonly #taken = new Set<string>();
  readonly #behindValues = new Set<string>();
  readonly #constantsBehindValues = new Set<string>();
  readonly #walked = new Set<Working>();
  #usedFor = '';
  readonly #otherInputRows: (SheetCell | null)[][] = [];

  /**
   * @param given where the cells of the document stand; the document's value at a path (a leaf that says otherwise was
   *   set by the core, and is written out); what an entry of the document is called, by a path into it; how a source is
   *   cited
   */
  constructor(
    private readonly given: {
      readonly inputAddresses: ReadonlyMap<string, string>;
      readonly inputValue: (path: string) => unknown;
      readonly nameOf: (path: string) => string | null;
      readonly citation: (source: Source) => string;
      readonly currency: string;
    }
  ) {}

  /** Says that a figure stands in a cell, so that whatever needs it refers to that cell. False where it has one. */
  place(figure: Working, address: string): boolean {
    if (this.#placed.has(figure)) return false;
    if (figure.kind !== 'step' && figure.kind !== 'method') return false;
    this.#placed.set(figure, address);
    return true;
  }

  /**
   * The cell of a figure at its own address: its formula, or a reference to where it stands already.
   * @param usedFor what the figure is of, e.g. scenario and year: steps that are made for it are named by that
   */
  cellOf(figure: Working, address: string, look?: SheetCell['look'], usedFor = ''): SheetCell {
    this.#usedFor = usedFor;
    const more = look === undefined ? {} : { look };
    const result = asNumber(figure.value);
    const elsewhere = this.#placed.get(figure);
    if (elsewhere !== undefined && elsewhere !== address)
      return { kind: 'formula', formula: elsewhere, result, ...more };
    if (figure.kind === 'step' && !isOfOneCase(figure) && figure.formula.expression !== null)
      return {
        kind: 'formula',
        formula: this.#formulaOf(figure, figure.formula.expression),
        result,
        ...more
      };
    if (figure.kind === 'step' || figure.kind === 'method') {
      this.#walkBehind(figure);
      return { kind: 'number', value: result, ...more };
    }
    const reference = this.reference(figure);
    return /^\(?-?[\d.]/.test(reference)
      ? { kind: 'number', value: result, ...more }
      : { kind: 'formula', formula: reference, result, ...more };
  }

  /** The cell (or number) by which a formula takes a figure; makes the steps that lead to it. */
  reference(figure: Working): string {
    const placed = this.#placed.get(figure);
    if (placed !== undefined) return placed;
    switch (figure.kind) {
      case 'cell':
        return this.#inputReference(figure.path, figure.value);
      case 'constant':
      case 'default':
        return this.#constantReference(figure.constant);
      case 'assumption':
        return literal(asNumber(figure.value));
      case 'method':
        return this.#addStep(figure, null);
      case 'step':
        return isOfOneCase(figure) || figure.formula.expression === null
          ? this.#addStep(figure, null)
          : this.#addStep(figure, this.#formulaOf(figure, figure.formula.expression));
    }
  }

  /** Whether the results follow from a cell of the document as it is changed in the spreadsheet; once all are written. */
  follows(path: string): boolean {
    return this.#taken.has(path) && !this.#behindValues.has(path);
  }

  /**
   * The sheets of steps, constants and other inputs, once every figure is in its cell.
   * @param follows whether the results follow from a cell of the document
   */
  sheets(follows: (path: string) => boolean): readonly Sheet[] {
    const headed = (
      name: string,
      columns: readonly (readonly [string, number])[],
      rows: readonly (SheetCell | null)[][]
    ): Sheet => ({
      name,
      frozenRows: 1,
      widthsCh: columns.map(([, width]) => width),
      rows: [columns.map(([text]): SheetCell => ({ kind: 'text', text, look: 'heading' })), ...rows]
    });
    /** With a check behind the rows of what is fixed among their values, which stand in the second column. */
    const checked = (sheet: Sheet, isFixed: (row: number) => boolean): Sheet => {
      const [head = [], ...rows] = sheet.rows;
      const checks = columnLetters(head.length);
      const written = rows.map((row, index) => {
        const value = row[1];
        if (!isFixed(index) || value?.kind !== 'number')
          return [...row, ...Array.from({ length: head.length - row.length }, () => null), null];
        return [
          ...row.map((cell, column) => (column === 1 ? { ...value, look: 'fixed' as const } : cell)),
          ...Array.from({ length: head.length - row.length }, () => null),
          {
            kind: 'formula',
            formula: countOfDiffering([differsFormula(`B${index + 2}`, value.value)]),
            result: 0
          } as const
        ];
      });
      const last = rows.length + 1;
      return {
        ...sheet,
        widthsCh: [...sheet.widthsCh, 16],
        rows: [
          [
            ...head,
            {
              kind: 'formula',
              formula: `IF(SUM(${checks}2:${checks}${last})=0,"${checkHeaders.asSaved}","${checkHeaders.changed}")`,
              result: checkHeaders.asSaved,
              look: 'heading'
            }
          ],
          ...written
        ],
        locked: true,
        alerts: [
          { cells: `${checks}1`, when: `${checks}1<>"${checkHeaders.asSaved}"` },
          { cells: `${checks}2:${checks}${last}`, when: `AND(ISNUMBER(${checks}2),${checks}2<>0)` }
        ]
      };
    };
    const otherPaths = [...this.#otherInputs.keys()];
    const constants = [...this.#constants.keys()];
    return [
      ...(this.#otherInputRows.length === 0
        ? []
        : [
            checked(
              headed(
                otherInputsSheet,
                [
                  ['Input', 60],
                  ['Value', 16]
                ],
                this.#otherInputRows
              ),
              (row) => !follows(otherPaths[row] ?? '')
            )
          ]),
      checked(
        headed(
          constantsSheet,
          [
            ['Constant', 64],
            ['Value', 16],
            ['Unit', 18],
            ['Conditions', 50],
            ['Source', 70],
            ['Evidence', 16],
            ['Published value', 16],
            ['Reason for another', 40]
          ],
          this.#constantRows
        ),
        (row) => this.#constantsBehindValues.has(constants[row] ?? '')
      ),
      headed(
        stepsSheet,
        [
          ['What', 56],
          ['Value', 18],
          ['Unit', 18],
          ['In words', 90],
          ['Of', 40],
          ['First used for', 40]
        ],
        this.#steps
      )
    ];
  }

  #formulaOf(step: StepWorking, expression: string): string {
    const inputs = step.formula.inputs as Readonly<Record<string, { readonly symbol: string }>>;
    const cells = new Map<string, string>();
    for (const [name, { symbol }] of Object.entries(inputs)) {
      const input = step.inputs[name] as Working | readonly Working[];
      cells.set(
        symbol,
        Array.isArray(input)
          ? this.#references(input as readonly Working[])
          : this.reference(input as Working)
      );
    }
    return spreadsheetFormula(expression, cells);
  }

  /** A list as a function takes it: neighbours as a range; where there are too many, sums of parts get steps of their own. */
  #references(figures: readonly Working[]): string {
    let runs = asRanges(
      figures.map((figure) => ({ reference: this.reference(figure), sum: asNumber(figure.value) }))
    );
    while (runs.length > mostReferences) {
      const parts: Summand[] = [];
      for (let at = 0; at < runs.length; at += mostReferences)
        parts.push(this.#addPartOfSum(runs.slice(at, at + mostReferences)));
      runs = asRanges(parts);
    }
    return runs.map(({ reference }) => reference).join(',');
  }

  #addPartOfSum(summands: readonly Summand[]): Summand {
    const reference = cellAddress(stepsSheet, { row: this.#steps.length + 1, column: 1 });
    const sum = summands.reduce((total, each) => total + each.sum, 0);
    const formula = `SUM(${summands.map((each) => each.reference).join(',')})`;
    this.#steps.push([
      { kind: 'text', text: 'Part of a long sum' },
      { kind: 'formula', formula, result: sum }
    ]);
    return { reference, sum };
  }

  #addStep(figure: Working & { kind: 'step' | 'method' }, formula: string | null): string {
    if (formula === null) this.#walkBehind(figure);
    const known = formula === null ? undefined : this.#stepByFormula.get(formula);
    const place = known ?? cellAddress(stepsSheet, { row: this.#steps.length + 1, column: 1 });
    this.#placed.set(figure, place);
    if (known !== undefined) return known;
    if (formula !== null) this.#stepByFormula.set(formula, place);
    const { yields, words, unit } = figure.kind === 'step' ? figure.formula : figure.method;
    const result = asNumber(figure.value);
    this.#steps.push([
      { kind: 'text', text: yields },
      formula === null ? { kind: 'number', value: result } : { kind: 'formula', formula, result },
      { kind: 'text', text: unit === '1' ? '' : unit.replace(/\bcurrency\b/, this.given.currency) },
      {
        kind: 'text',
        text: formula === null ? `${words} (a value, computed by the tool)` : words,
        look: 'note'
      },
      { kind: 'text', text: this.#subjects(figure), look: 'note' },
      { kind: 'text', text: this.#usedFor, look: 'note' }
    ]);
    return place;
  }

  /** Notes the leaves of a figure whose value no formula makes: a change of them is not followed. */
  #walkBehind(figure: Working): void {
    if (this.#walked.has(figure)) return;
    this.#walked.add(figure);
    switch (figure.kind) {
      case 'cell':
        this.#behindValues.add(figure.path);
        return;
      case 'default':
        this.#behindValues.add(figure.path);
        this.#constantsBehindValues.add(figure.constant.id);
        return;
      case 'constant':
        this.#constantsBehindValues.add(figure.constant.id);
        return;
      case 'assumption':
        return;
      default:
        for (const input of Object.values(figure.inputs).flat() as readonly Working[])
          this.#walkBehind(input);
    }
  }

  /** The case groups, machines, agents … whose cells a step takes directly. */
  #subjects(figure: Working & { kind: 'step' | 'method' }): string {
    const names = new Set<string>();
    for (const input of Object.values(figure.inputs).flat() as readonly Working[])
      if (input.kind === 'cell' || input.kind === 'default') {
        const name = this.given.nameOf(input.path);
        if (name !== null) names.add(name);
      }
    return [...names].slice(0, 3).join(', ');
  }

  #inputReference(path: string, value: unknown): string {
    const number = asNumber(value);
    const inDocument = this.given.inputValue(path);
    if (inDocument === undefined || asNumber(inDocument) !== number) {
      this.#behindValues.add(path);
      return literal(number);
    }
    this.#taken.add(path);
    const known = this.given.inputAddresses.get(path) ?? this.#otherInputs.get(path);
    if (known !== undefined) return known;
    const added = cellAddress(otherInputsSheet, { row: this.#otherInputRows.length + 1, column: 1 });
    this.#otherInputs.set(path, added);
    const name = this.given.nameOf(path);
    this.#otherInputRows.push([
      { kind: 'text', text: name === null ? path : `${name}: ${path.split('.').slice(2).join('.')}` },
      { kind: 'number', value: number, look: 'input' }
    ]);
    return added;
  }

  #constantReference(constant: Constant): string {
    const known = this.#constants.get(constant.id);
    const row = known ?? this.#constantRows.length + 1;
    if (known === undefined) {
      this.#constants.set(constant.id, row);
      const { override } = constant;
      this.#constantRows.push([
        { kind: 'text', text: constant.name },
        { kind: 'number', value: constant.value, look: 'input' },
        { kind: 'text', text: constant.unit === '1' ? '' : constant.unit },
        { kind: 'text', text: constant.conditions, look: 'note' },
        { kind: 'text', text: this.given.citation(constant.source), look: 'note' },
        { kind: 'text', text: constant.evidence, look: 'note' },
        override === undefined ? null : { kind: 'number', value: override.publishedValue },
        override === undefined ? null : { kind: 'text', text: override.reason, look: 'note' }
      ]);
    }
    return cellAddress(constantsSheet, { row, column: 1 });
  }
}

/** A cell or a range, and what it adds up to. */
interface Summand {
  readonly reference: string;
  readonly sum: number;
}

const address = /^('(?:[^']|'')+'!)\$([A-Z]+)\$(\d+)$/;

/** Cells with their neighbours below or beside them put together as ranges. */
function asRanges(cells: readonly Summand[]): Summand[] {
  interface Run {
    first: string;
    last: string;
    sheet: string;
    column: number;
    row: number;
    down: boolean | null;
    sum: number;
  }
  const runs: Run[] = [];
  for (const { reference, sum } of cells) {
    const [, sheet = '', letters = '', digits = '0'] = address.exec(reference) ?? [];
    const [column, row] = [columnNumber(letters), Number(digits)];
    const run = runs.at(-1);
    const sameSheet = run !== undefined && sheet !== '' && run.sheet === sheet;
    const below = sameSheet && run.column === column && row === run.row + 1 && run.down !== false;
    const beside = sameSheet && run.row === row && column === run.column + 1 && run.down !== true;
    if (run !== undefined && (below || beside))
      Object.assign(run, { last: reference, column, row, down: below, sum: run.sum + sum });
    else runs.push({ first: reference, last: reference, sheet, column, row, down: null, sum });
  }
  return runs.map(({ first, last, sheet, sum }) => ({
    reference: first === last ? first : `${first}:${last.slice(sheet.length)}`,
    sum
  }));
}

const columnNumber = (letters: string): number =>
  [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);
