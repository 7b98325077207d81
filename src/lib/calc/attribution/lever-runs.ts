/** The runs that a scenario is taken apart by: one of the whole model for each set of its levers, made when asked for. */
import type { Against } from '../reckoning/against.ts';
import type { FailedCell } from '../estimate-types.ts';
import type { EstimateInput, Lever, Scenario } from '../input.ts';
import { kept, once } from '../working/kept.ts';
import type { Reckoner } from '../working/reckoner.ts';
import type { Variant } from './levers.ts';
import { lawfulPracticeOf } from './lawful-practice.ts';
import { baselineOf } from '../baseline-of.ts';
import { bringsMachines, leversOf, twinLevers, variantOf } from './levers.ts';

/** What is asked of a reckoning: any scenario against today, whether the input holds it or not. */
export interface RunsFrom {
  readonly against: (scenario: Scenario) => Against;
  readonly failed: (scenario: Scenario) => readonly FailedCell[];
}

export interface LeverRuns {
  /** In the order of `levers`; of the baseline none. */
  readonly levers: readonly Lever[];
  /** The run with only these of the levers on. */
  readonly with: (on: readonly Lever[]) => Against;
  /** All on. */
  readonly whole: () => Against;
  /** Machine and adoption off; null where the scenario changes no machine. */
  readonly twin: (() => Against) | null;
  /** Today as the law allows it; null where nothing that today gives is restricted, or of today itself. */
  readonly lawful: (() => Against) | null;
}

/** Thrown where a case could not be computed in a run: its row would be missing from that run and not from others. */
export class RunFailedError extends Error {
  constructor({ path, sentence }: FailedCell) {
    super(`${path}: ${sentence}`);
    this.name = 'RunFailedError';
  }
}

/**
 * The runs of each scenario, all out of one reckoning, so that a case is solved once for all runs that have it in common.
 * @param start makes that reckoning over the reckoner it is given: in recorded runs, a cell of a variant is named as the
 *   cell of the workbook that its value is from.
 * @throws RunFailedError from a run in which a case could not be computed.
 */
export function leverRuns(
  r: Reckoner,
  input: EstimateInput,
  start: (r: Reckoner) => RunsFrom
): (scenario: Scenario) => LeverRuns {
  const variants = new Map<string, Variant & { readonly of: Scenario }>();
  const reckoning = start(r.records ? namingCells(r, variants) : r);
  const runOf = (scenario: Scenario): Against => {
    const run = reckoning.against(scenario);
    const [failed] = reckoning.failed(scenario);
    if (failed !== undefined) throw new RunFailedError(failed);
    return run;
  };
  const lawful = once((): (() => Against) | null => {
    const variant = lawfulPracticeOf(input);
    if (variant === null) return null;
    variants.set(variant.scenario.id, { ...variant, of: baselineOf(input) });
    return once(() => runOf(variant.scenario));
  });
  return kept((scenario: Scenario): LeverRuns => {
    const levers = leversOf(input, scenario);
    // By which levers are on, so that the order in which they are named makes no run of its own.
    const runs = kept((key: string): Against => {
      const variant = variantOf(
        input,
        scenario,
        levers.filter((_, place) => key[place] === '1')
      );
      variants.set(variant.scenario.id, { ...variant, of: scenario });
      return runOf(variant.scenario);
    });
    const withLevers = (on: readonly Lever[]): Against =>
      runs(levers.map((lever) => (on.includes(lever) ? '1' : '0')).join(''));
    return {
      levers,
      with: withLevers,
      whole: () => runOf(scenario),
      lawful: scenario.baseline ? null : lawful(),
      twin: bringsMachines(scenario) ? () => withLevers(twinLevers(input, scenario)) : null
    };
  });
}

/** The reckoner over cells of variants: each named by the cell of the workbook that its value is from. */
function namingCells(
  r: Reckoner,
  variants: ReadonlyMap<string, Variant & { readonly of: Scenario }>
): Reckoner {
  return {
    ...r,
    cell: (value, unit, ...parts) => {
      const [list, id = '', field = '', ...rest] = parts;
      const variant = list === 'scenarios' ? variants.get(id) : undefined;
      if (variant === undefined) return r.cell(value, unit, ...parts);
      const cell = variant.cells[field as keyof Scenario] ?? `scenarios.${variant.of.id}.${field}`;
      return r.cell(value, unit, ...cell.split('.'), ...rest);
    }
  };
}
