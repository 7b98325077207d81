/** A scenario's year taken apart: by the machine that cases are done with, and whether they follow its plan. */
import type { CaseUse } from '../case/case-result.ts';
import type { ShareOfCases } from '../fleet/share-of-cases.ts';
import type { Period, Standing } from '../fleet/standing.ts';
import type { EstimateInput, Machine, Payment, Scenario } from '../input.ts';
import { kept, once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption, RowResult } from '../year/consumption.ts';
import { consumption, partByTechnique, partOfCases, restOfCases } from '../year/consumption.ts';
import { powerOf } from './amounts.ts';
import type { CaseReckoning, ScenarioCases } from './scenario-cases.ts';

/** A part of a scenario's year that runs on one machine. */
export interface YearPart {
  readonly machine: Machine;
  /** Whether its cases follow the scenario's plan. */
  readonly follows: boolean;
  readonly use: Consumption;
  /** What is paid for the machine in these years; null: it is owned. */
  readonly payment: Payment | null;
}

type ShareThere = Exclude<ShareOfCases, 'none'>;

/** The parts of a scenario's year in a period; the first is of the cases that follow where its machine has come. */
export function yearParts(
  r: Reckoner,
  input: EstimateInput,
  cases: ScenarioCases<CaseUse>
): (scenario: Scenario, period: Period) => readonly [YearPart, ...YearPart[]] {
  const part = (
    standing: Standing,
    follows: boolean,
    rows: readonly (readonly [CaseReckoning<CaseUse>, Quantity])[]
  ): YearPart => ({
    machine: standing.machine,
    follows: follows && standing.moved,
    payment: standing.payment,
    use: consumption(r, {
      rows: rows.map(([{ row, agent, result }, sharePercent]): RowResult => ({
        row,
        agent,
        result,
        sharePercent
      })),
      powerW: powerOf(r, input, standing.machine),
      intravenous: input.intravenous
    })
  });
  const partsIn = (scenario: Scenario, standing: Standing): readonly YearPart[] => {
    const everyCase = once(() =>
      r.assumption(100, '%', 'Every case of a group that is done in one way alone.')
    );
    const adopted = standing.adoptionPercent;
    const rest = once(() => r.apply(restOfCases, { adoptionPercent: adopted }));
    const partOf = (there: ShareThere, sharePercent: Quantity): Quantity =>
      there === 'all' ? sharePercent : r.apply(partOfCases, { therePercent: there, sharePercent });
    const followingOf = kept((there: ShareThere) => partOf(there, adopted));
    const restOf = kept((there: ShareThere) => partOf(there, rest()));
    const rows = cases.rowsOf(scenario).flatMap((row) => {
      const there = cases.shareIn(standing, row);
      return there === 'none' ? [] : [{ there, ...cases.casesIn(scenario, row, standing) }];
    });
    const own = part(
      standing,
      true,
      rows.flatMap(({ there, following, rest: others }) => {
        const sharePercent = others !== null ? followingOf(there) : there === 'all' ? everyCase() : there;
        return following.map(
          ({ one, percent }) =>
            [
              one,
              percent === null
                ? sharePercent
                : r.apply(partByTechnique, { sharePercent, techniquePercent: percent })
            ] as const
        );
      })
    );
    if (rows.every(({ rest: others }) => others === null)) return [own];
    return [
      own,
      part(
        standing,
        false,
        rows.flatMap(({ there, rest: others }) => (others === null ? [] : [[others, restOf(there)] as const]))
      )
    ];
  };
  return (scenario, { standings }) =>
    standings.flatMap((standing) => partsIn(scenario, standing)) as [YearPart, ...YearPart[]];
}
