import type { Quantity, Reckoner } from './reckoner.ts';
import type { Working } from './working.ts';

const wrap = <T>(working: Working): Quantity<T> => working as unknown as Quantity<T>;

/** The working of a quantity that the recorder made. */
export function workingOf(quantity: Quantity<unknown>): Working {
  return quantity as unknown as Working;
}

const valueOf = (input: Working | readonly Working[]): unknown =>
  Array.isArray(input) ? input.map((item: Working) => item.value) : (input as Working).value;

/** The reckoner that keeps the working: a quantity is a node holding its value, how it was made, and from what. */
export const recorder: Reckoner = {
  records: true,
  cell: (value, unit, ...path) => wrap({ kind: 'cell', value, unit, path: path.join('.') }),
  constant: (constant) => wrap({ kind: 'constant', value: constant.value, unit: constant.unit, constant }),
  fallback: (constant, ...path) =>
    wrap({ kind: 'default', value: constant.value, unit: constant.unit, constant, path: path.join('.') }),
  assumption: (value, unit, words) => wrap({ kind: 'assumption', value, unit, words }),
  apply: (formula, inputs) => {
    const workings = inputs as unknown as Record<string, Working | readonly Working[]>;
    const values: Record<string, unknown> = {};
    for (const key in workings) values[key] = valueOf(workings[key] as Working);
    const value = formula.compute(values as never);
    return wrap({ kind: 'step', value, unit: formula.unit, formula: formula as never, inputs: workings });
  },
  result: (value, inputs, report) => {
    const method = report();
    return wrap({ kind: 'method', value, unit: method.unit, method, inputs: inputs as never });
  },
  value: (quantity) => workingOf(quantity).value as never
};
