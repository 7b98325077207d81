/** All that a workbook could do, as alternatives of which one is chosen: today, every scenario, every twin. */
import type { Against } from '../reckoning/against.ts';
import type { EstimateInput, Scenario } from '../input.ts';
import type { YearFactors } from '../money/time-factors.ts';
import type { Reckoner } from '../working/reckoner.ts';
import type { Alternative } from './alternatives.ts';
import type { LeverRuns } from './lever-runs.ts';
import { baselineOf } from '../baseline-of.ts';
import { twinIdOf } from './levers.ts';
import type { MoneyRow } from './money-increments.ts';
import { moneyIncrements } from './money-increments.ts';
import type { TonnesRow } from './tonnes-increments.ts';
import { tonnesIncrements } from './tonnes-increments.ts';

export interface Increments {
  readonly money: readonly MoneyRow[];
  readonly tonnes: readonly TonnesRow[];
}

/** Today first, then the scenarios in their order, then their twins. */
export function alternativesOf(
  input: EstimateInput,
  runsOf: (scenario: Scenario) => LeverRuns
): Alternative[] {
  const today = baselineOf(input);
  const others = input.scenarios.filter((scenario) => scenario !== today);
  const whole = [today, ...others].map((scenario) => ({ id: scenario.id, run: runsOf(scenario).whole() }));
  const twins = others.flatMap((scenario) => {
    const run: Against | undefined = runsOf(scenario).twin?.();
    return run === undefined ? [] : [{ id: twinIdOf(scenario.id), run }];
  });
  return [...whole, ...twins];
}

/** The two lists: by outlay, which step pays; by tonnes, what a further tonne costs. They are never one. */
export function incrementsOf(
  r: Reckoner,
  input: EstimateInput,
  { runsOf, factors }: { runsOf: (scenario: Scenario) => LeverRuns; factors: readonly YearFactors[] }
): Increments {
  const alternatives = alternativesOf(input, runsOf);
  const { paybackLimitYears } = input.accounting;
  return {
    money: moneyIncrements(r, alternatives, { factors, paybackLimitYears }),
    tonnes: tonnesIncrements(r, alternatives)
  };
}
