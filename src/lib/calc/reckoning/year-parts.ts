/** A scenario's year taken apart: the cases that follow its plan, and those that stay as today. */
import type { CaseUse } from '../case/case-result.ts';
import type { CaseRow, EstimateInput, Machine, Scenario } from '../input.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption, RowResult } from '../year/consumption.ts';
import { consumption, restOfCases } from '../year/consumption.ts';
import { captureOf, powerOf } from './amounts.ts';
import type { SourcesOfCases } from './case-sources.ts';
import type { ScenarioCases } from './scenario-cases.ts';

/** A part of a scenario's year that runs on one machine with one capture. */
export interface YearPart {
  readonly machine: Machine;
  readonly use: Consumption;
  readonly capturePercent: Quantity;
}

/** The parts of a scenario's year; the first is that of the cases on its own plan. */
export function yearParts(
  r: Reckoner,
  input: EstimateInput,
  { today, sources, cases }: { today: Scenario; sources: SourcesOfCases; cases: ScenarioCases<CaseUse> }
): (scenario: Scenario) => readonly [YearPart, ...YearPart[]] {
  const part = (of: Scenario, rows: readonly (readonly [CaseRow, Quantity])[]): YearPart => {
    const machine = sources.machineOf(of);
    const results = rows.map(([row, sharePercent]): RowResult => {
      const { agent, result } = cases.caseOf(of, row);
      return { row, agent, result, sharePercent };
    });
    return {
      machine,
      use: consumption(r, { rows: results, powerW: powerOf(r, input, machine) }),
      capturePercent: captureOf(r, of)
    };
  };
  return kept((scenario) => {
    const everyCase = r.assumption(
      100,
      '%',
      'Every case of a group whose plan, machine and agent are those of today.'
    );
    const adopted = r.cell(scenario.adoptionPercent, '%', 'scenarios', scenario.id, 'adoptionPercent');
    const splits = (row: CaseRow) =>
      scenario !== today &&
      scenario.adoptionPercent < 100 &&
      (!cases.sameAsToday(scenario, row) || scenario.capturePercent !== today.capturePercent);
    const rows = cases.rowsOf(scenario);
    const own = part(
      scenario,
      rows.map((row) => [row, splits(row) ? adopted : everyCase])
    );
    const split = rows.filter(splits);
    if (split.length === 0) return [own];
    const rest = r.apply(restOfCases, { adoptionPercent: adopted });
    return [
      own,
      part(
        today,
        split.map((row) => [row, rest])
      )
    ];
  });
}
