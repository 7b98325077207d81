/** A scenario's year taken apart: by the machine that cases are done with, and whether they follow its plan. */
import type { CaseUse } from '../case/case-result.ts';
import type { Period, Standing } from '../fleet/standing.ts';
import type { CaseRow, EstimateInput, Machine, Scenario } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption, RowResult } from '../year/consumption.ts';
import { consumption, partOfCases, restOfCases } from '../year/consumption.ts';
import { powerOf } from './amounts.ts';
import type { CaseReckoning, ScenarioCases } from './scenario-cases.ts';

/** A part of a scenario's year that runs on one machine. */
export interface YearPart {
  readonly machine: Machine;
  /** Whether its cases follow the scenario's plan. */
  readonly follows: boolean;
  readonly use: Consumption;
}

/** The parts of a scenario's year in a period; the first is of the cases that follow where its machine has come. */
export function yearParts(
  r: Reckoner,
  input: EstimateInput,
  cases: ScenarioCases<CaseUse>
): (scenario: Scenario, period: Period) => readonly [YearPart, ...YearPart[]] {
  const part = (
    standing: Standing,
    follows: boolean,
    rows: readonly (readonly [CaseRow, CaseReckoning<CaseUse>, Quantity])[]
  ): YearPart => ({
    machine: standing.machine,
    follows: follows && standing.moved,
    use: consumption(r, {
      rows: rows.map(([row, { agent, result }, sharePercent]): RowResult => ({
        row,
        agent,
        result,
        sharePercent
      })),
      powerW: powerOf(r, input, standing.machine)
    })
  });
  const partsIn = (scenario: Scenario, standing: Standing): readonly [YearPart, ...YearPart[]] => {
    const there = standing.sharePercent;
    const everyCase = there ?? r.assumption(100, '%', 'Every case of a group that is done in one way alone.');
    const ofThese = (sharePercent: Quantity): Quantity =>
      there === null ? sharePercent : r.apply(partOfCases, { therePercent: there, sharePercent });
    const adopted = r.cell(scenario.adoptionPercent, '%', 'scenarios', scenario.id, 'adoptionPercent');
    const rows = cases.rowsOf(scenario).map((row) => ({ row, ...cases.casesIn(scenario, row, standing) }));
    const isSplit = rows.some(({ rest }) => rest !== null);
    const followingShare = isSplit ? ofThese(adopted) : everyCase;
    const own = part(
      standing,
      true,
      rows.map(({ row, following, rest }) => [row, following, rest === null ? everyCase : followingShare])
    );
    if (!isSplit) return [own];
    const restShare = ofThese(r.apply(restOfCases, { adoptionPercent: adopted }));
    return [
      own,
      part(
        standing,
        false,
        rows.flatMap(({ row, rest }) => (rest === null ? [] : [[row, rest, restShare] as const]))
      )
    ];
  };
  return (scenario, { standings: [first, ...others] }) => [
    ...partsIn(scenario, first),
    ...others.flatMap((standing) => partsIn(scenario, standing))
  ];
}
