import type { Constant } from '../reference/constant.ts';
import type { Formula } from './formula.ts';
import type { MethodReport } from './reckoner.ts';

/** How one number came about: a step with its inputs, or a leaf that somebody typed, published or chose. */
export type Working = StepWorking | MethodWorking | CellLeaf | ConstantLeaf | FallbackLeaf | AssumptionLeaf;

/** A formula applied to inputs that have a working of their own. */
export interface StepWorking {
  readonly kind: 'step';
  readonly value: unknown;
  readonly unit: string;
  readonly formula: Formula<never, unknown>;
  readonly inputs: Readonly<Record<string, Working | readonly Working[]>>;
}

/** A result of an iterative method: what went in, and figures that let a reader judge the run. */
export interface MethodWorking {
  readonly kind: 'method';
  readonly value: unknown;
  readonly unit: string;
  readonly method: MethodReport;
  readonly inputs: Readonly<Record<string, Working>>;
}

export interface CellLeaf {
  readonly kind: 'cell';
  readonly value: unknown;
  readonly unit: string;
  /** Path of the cell in the workbook, e.g. `caseMix.lap-chole.minutes`. */
  readonly path: string;
}

export interface ConstantLeaf {
  readonly kind: 'constant';
  readonly value: number;
  readonly unit: string;
  readonly constant: Constant;
}

/** A published constant that stands in for an empty cell. */
export interface FallbackLeaf {
  readonly kind: 'default';
  readonly value: number;
  readonly unit: string;
  readonly constant: Constant;
  readonly path: string;
}

export interface AssumptionLeaf {
  readonly kind: 'assumption';
  readonly value: unknown;
  readonly unit: string;
  readonly words: string;
}
