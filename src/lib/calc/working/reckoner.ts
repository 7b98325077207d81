import type { Constant } from '../reference/constant.ts';
import type { Formula } from './formula.ts';

declare const quantity: unique symbol;

/**
 * A number (or a Decimal) on its way through the core. Opaque on purpose: in a bulk run it is the bare value, in a
 * recording run a node that knows how it came about. Only a reckoner looks inside.
 */
export interface Quantity<T = number> {
  readonly [quantity]: T;
}

/** The inputs of a formula as quantities: a list stays a list. */
export type QuantitiesOf<I> = {
  readonly [K in keyof I]: I[K] extends readonly (infer E)[] ? readonly Quantity<E>[] : Quantity<I[K]>;
};

/** How a result that no formula gives (an iterative solution) was reached. */
export interface MethodReport {
  /** Stable, e.g. `case.circle-system`. */
  readonly id: string;
  readonly yields: string;
  /** The method in plain sentences: what is solved, with what, to which tolerance. */
  readonly words: string;
  readonly unit: string;
  readonly source: string;
  /** Figures that let a reader judge the run, e.g. steps taken, tolerance reached, balance error. */
  readonly report: readonly { readonly words: string; readonly value: number; readonly unit: string }[];
}

/**
 * Does the core's arithmetic. The core is written once over this interface; the plain reckoner passes bare values
 * through, the recording one keeps the working. Both run the same `compute`, so both give the same bits.
 */
export interface Reckoner {
  /** True where the working is kept: lets a caller skip making a report that nobody will read. */
  readonly records: boolean;
  /** A value that the user typed. The path's parts name its cell, e.g. `'caseMix', 'lap-chole', 'minutes'`. */
  cell<T>(value: T, unit: string, ...path: readonly string[]): Quantity<T>;
  /** A published constant. */
  constant(constant: Constant): Quantity;
  /** A published constant that stands in for a cell that was left empty. */
  fallback(constant: Constant, ...path: readonly string[]): Quantity;
  /** A modelling choice that no source gives: said in words wherever it acts. */
  assumption<T>(value: T, unit: string, words: string): Quantity<T>;
  /** Applies a formula. */
  apply<I, T>(formula: Formula<I, T>, inputs: QuantitiesOf<I>): Quantity<T>;
  /** Wraps one result of a method; `report` is called only where the working is kept. */
  result<T>(
    value: T,
    inputs: Readonly<Record<string, Quantity<unknown>>>,
    report: () => MethodReport
  ): Quantity<T>;
  /** The bare value. */
  value<T>(quantity: Quantity<T>): T;
}
