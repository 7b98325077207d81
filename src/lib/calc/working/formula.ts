/**
 * A formula of the core, as data: what it yields, how it is said, how it is written, and how it is computed.
 * The written form and the code stand side by side here, and a test evaluates the one against the other.
 */

/** What a formula takes for one of its inputs: how it is written and in which unit. */
export interface InputOfFormula {
  /** Symbol as it stands in `expression`, e.g. `V_d`. Letters, digits and underscores only. */
  readonly symbol: string;
  /** Unit, e.g. `mL/min`; `1` for a pure number. */
  readonly unit: string;
  /** What it is, in words, e.g. `vapour delivered`. */
  readonly words: string;
  /** Values in which the written form is tested against the code; 0.1 to 10 where not given. */
  readonly testRange?: readonly [number, number];
}

/**
 * One formula. `I` maps the names of its inputs (with units in their names) to what they are: a number,
 * a Decimal, or a list of either.
 */
export interface Formula<I, T = number> {
  /** Stable, e.g. `case.liquid-from-vapour`. */
  readonly id: string;
  /** What it yields, e.g. `Liquid agent used`. */
  readonly yields: string;
  /** The formula as one plain sentence. */
  readonly words: string;
  /**
   * The formula as written, in the symbols of its inputs, e.g. `V_d / v`. Operators + - * / ^, and the functions
   * min, max, abs, sum, dot, exp, log10, and `a > b ? c : d`. `null` where the step is not algebra (a lookup, a root search).
   */
  readonly expression: string | null;
  readonly inputs: { readonly [K in keyof I]: InputOfFormula };
  /** Unit of the result. */
  readonly unit: string;
  /** Where the formula is from: a citation, or `definition` for a plain book-keeping identity. */
  readonly source: string;
  /** True for a fit to data, whose numbers carry units of their own: left out of the test of dimensions. */
  readonly empirical?: true;
  readonly compute: (inputs: I) => T;
}

/** Checks and returns a formula; exists so that the types of `inputs` and `compute` are inferred together. */
export function formula<I, T = number>(definition: Formula<I, T>): Formula<I, T> {
  return definition;
}
