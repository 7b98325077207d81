import type { Quantity, Reckoner } from './reckoner.ts';

const bare = <T>(value: T): Quantity<T> => value as unknown as Quantity<T>;

/** The reckoner of bulk runs: a quantity is its bare value, nothing is recorded. */
export const plain: Reckoner = {
  records: false,
  cell: (value) => bare(value),
  constant: (constant) => bare(constant.value),
  fallback: (constant) => bare(constant.value),
  assumption: (value) => bare(value),
  apply: (formula, inputs) => bare(formula.compute(inputs as never)),
  result: (value) => bare(value),
  value: (quantity) => quantity as never
};
