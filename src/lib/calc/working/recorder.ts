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

/** What a leaf says in place of “the cell at this path”: another cell, or an assumption in words. */
export type LeafInstead = { readonly path: string } | { readonly words: string };

/**
 * A recorder for an input in which some cells hold another value than the workbook does, as in a what-if: it says where
 * those values are from.
 * @param instead what takes the place of the cell at a path; null: the cell is as the workbook has it.
 */
export function recorderOver(instead: (path: string) => LeafInstead | null): Reckoner {
  return {
    ...recorder,
    cell: (value, unit, ...parts) => {
      const path = parts.join('.');
      const other = instead(path);
      if (other !== null && 'words' in other) return recorder.assumption(value, unit, other.words);
      return wrap({ kind: 'cell', value, unit, path: other?.path ?? path });
    }
  };
}
