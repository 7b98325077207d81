/** A scenario's year taken apart: by the machine that cases are done with, and whether they follow its plan. */
import type { CaseUse } from '../case/case-result.ts';
import type { Period, Standing } from '../fleet/standing.ts';
import type { EstimateInput, Machine, Payment, Scenario } from '../input.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption, RowResult } from '../year/consumption.ts';
import { consumption } from '../year/consumption.ts';
import { powerOf } from './amounts.ts';
import type { SourcesOfCases } from './case-sources.ts';
import type { CaseWithShare } from './cases-with-shares.ts';
import { casesWithShares } from './cases-with-shares.ts';
import { atExhaustOf } from './leak-of-case.ts';
import type { CaseReckoning, ScenarioCases } from './scenario-cases.ts';

/** A part of a scenario's year that runs on one machine. */
export interface YearPart {
  readonly machine: Machine;
  /** Id of the theatre group in which it is. */
  readonly theatreGroup: string;
  /** Whether its cases follow the scenario's plan. */
  readonly follows: boolean;
  readonly use: Consumption;
  /** What is paid for the machine in these years; null: it is owned. */
  readonly payment: Payment | null;
}

/** The parts of a scenario's year in a period; the first is of the cases that follow where its machine has come. */
export function yearParts(
  r: Reckoner,
  input: EstimateInput,
  { cases, sources }: { cases: ScenarioCases<CaseUse>; sources: SourcesOfCases }
): (scenario: Scenario, period: Period) => readonly [YearPart, ...YearPart[]] {
  // A case is met in many years and scenarios, and what leaves it by the exhaust asks for its model.
  const atExhaust = kept((one: CaseReckoning<CaseUse>): Quantity => atExhaustOf(r, sources, one));
  const part = (standing: Standing, follows: boolean, done: readonly CaseWithShare<CaseUse>[]): YearPart => ({
    machine: standing.machine,
    theatreGroup: standing.group.id,
    follows: follows && standing.moved,
    payment: standing.payment,
    use: consumption(r, {
      rows: done.map(({ one, sharePercent }): RowResult => ({
        row: one.row,
        agent: one.agent,
        result: one.result,
        sharePercent,
        atExhaustMl: () => atExhaust(one)
      })),
      powerW: powerOf(r, input, standing.machine),
      intravenous: input.intravenous
    })
  });
  const partsIn = (scenario: Scenario, standing: Standing): readonly YearPart[] => {
    const { following, rest } = casesWithShares(r, cases, { scenario, standing });
    const own = part(standing, true, following);
    return rest.length === 0 ? [own] : [own, part(standing, false, rest)];
  };
  return (scenario, { standings }) =>
    standings.flatMap((standing) => partsIn(scenario, standing)) as [YearPart, ...YearPart[]];
}
