/** What a recording run left behind: its workings, taken apart for the tests. */
import { explainer } from '#lib/calc/estimate/explain.ts';
import { estimate } from '#lib/calc/estimate/estimate.ts';
import type { Estimate } from '#lib/calc/estimate-types.ts';
import { figurePaths } from '#lib/calc/estimate/figure-paths.ts';
import { readCell } from '#lib/calc/cell-path.ts';
import type { Formula } from '#lib/calc/working/formula.ts';
import type { MethodWorking, StepWorking, Working } from '#lib/calc/working/working.ts';
import { coreInput } from '#lib/workbook/core-input.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** A formula whose inputs are known by name alone. */
export type AnyFormula = Formula<Record<string, unknown>, unknown>;

export interface Recorded {
  readonly estimate: Estimate;
  /** Every figure's path with its working. */
  readonly figures: readonly { readonly path: string; readonly working: Working }[];
  readonly steps: readonly StepWorking[];
  readonly methods: readonly MethodWorking[];
  readonly leaves: readonly Working[];
}

/** The workings and all that they lead back to, each once. */
export function allUnder(workings: readonly Working[]): Working[] {
  const seen = new Set(workings);
  // A set hands out what is added to it while it is gone through.
  for (const working of seen)
    if (working.kind === 'step' || working.kind === 'method')
      for (const input of Object.values<Working | readonly Working[]>(working.inputs))
        if (Array.isArray(input)) for (const each of input as readonly Working[]) seen.add(each);
        else seen.add(input as Working);
  return [...seen];
}

/** All figures of a workbook, with every step that leads to them, each once. */
export function recordAll(workbook: Workbook): Recorded {
  const input = coreInput(workbook);
  const given = estimate(input);
  const explain = explainer(input);
  const figures = figurePaths(given).map((path) => ({ path, working: explain(path) }));
  const all = allUnder(figures.map(({ working }) => working));
  return {
    estimate: given,
    figures,
    steps: all.filter((working) => working.kind === 'step'),
    methods: all.filter((working) => working.kind === 'method'),
    leaves: all.filter((working) => working.kind !== 'step' && working.kind !== 'method')
  };
}

export const formulaOf = (step: StepWorking): AnyFormula => step.formula as unknown as AnyFormula;

/** The bare values that went into a step, by the names that its formula gives them. */
export function valuesInto(step: StepWorking): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(step.inputs).map(([name, input]) => [
      name,
      Array.isArray(input)
        ? (input as readonly Working[]).map(({ value }) => value)
        : (input as Working).value
    ])
  );
}

/** A value as bits: numbers told apart to the last one and by sign, decimals by all their digits. */
export const bits = (value: unknown): string =>
  typeof value === 'number' ? (Object.is(value, -0) ? '-0' : String(value)) : JSON.stringify(value);

/** Steps whose value is not what their formula makes of their recorded inputs, in words. */
export function notReplayed(steps: readonly StepWorking[]): string[] {
  return steps.flatMap((step) => {
    const again = formulaOf(step).compute(valuesInto(step));
    return bits(again) === bits(step.value)
      ? []
      : [`${formulaOf(step).id}: recorded ${bits(step.value)}, replayed ${bits(again)}`];
  });
}

/** Figures whose working ends in another value than the estimate shows, in words. */
export function notTheEstimates({ estimate: given, figures }: Recorded): string[] {
  return figures.flatMap(({ path, working }) => {
    const shown = shownAt(given, path);
    const { value } = working;
    const root = typeof value === 'object' && value !== null ? amountText(value) : value;
    return Object.is(root, shown) ? [] : [`${path}: working ${String(root)}, estimate ${String(shown)}`];
  });
}

/** The figure of the estimate at a path; a rule of monitoring is found by its id, which holds a dot. */
function shownAt(given: Estimate, path: string): unknown {
  const [scenario, room, ...rest] = path.split('.');
  if (scenario === 'increments' && (room === 'money' || room === 'tonnes')) return readCell(given, path);
  if (scenario === 'reconciliation' && (room === 'agents' || room === 'nitrousOxide'))
    return readCell(given, path);
  if (room !== 'monitoring') return readCell(given.scenarios, path);
  const needs = given.scenarios.find(({ id }) => id === scenario)?.monitoring;
  const need = needs?.find(({ rule }) => rule === rest.slice(0, -1).join('.'));
  return readCell(need, rest.at(-1) ?? '');
}

const amountText = (amount: object): string =>
  'toFixed' in amount ? (amount as { toFixed(): string }).toFixed() : String(amount);
