/** What is asked for in a scenario, what of it theatres lack, and what that costs, and when. */
import type { CaseUse } from '../case/case-result.ts';
import type { Fleet, Period } from '../fleet/standing.ts';
import type { EstimateInput, MonitorItem, Scenario } from '../input.ts';
import type { MissingMonitor } from '../money/monitor-cost.ts';
import { costOfGap, mostLacking } from '../money/monitor-cost.ts';
import type { Decimal } from '../money/decimal.ts';
import { gapsOf } from '../monitoring/gaps.ts';
import type { UnpricedNeed } from '../monitoring/monitoring-needs.ts';
import { monitoringNeeds } from '../monitoring/monitoring-needs.ts';
import { monitorsToBuy } from '../monitoring/monitors-to-buy.ts';
import type { Placing } from '../monitoring/placing.ts';
import { proposedPlacing } from '../monitoring/placing.ts';
import { deviceFor, theatresLacking, withoutBuiltIn } from '../monitoring/theatres-missing.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { StandingPlace } from './monitoring-of-scenario.ts';
import { monitoringQuestion } from './monitoring-of-scenario.ts';
import type { ScenarioCases } from './scenario-cases.ts';

export interface NeedFigures {
  readonly theatresMissing: Quantity | null;
  readonly cost: Quantity<Decimal> | null;
}

/** Required monitors that become due when machines come, or with the scenario's plan. */
export interface MonitorsDue {
  /** Years from the decision, 0 for now. */
  readonly year: number;
  readonly missing: readonly MissingMonitor[];
}

export interface ScenarioMonitoring {
  /** When all has settled. */
  readonly needs: (scenario: Scenario) => readonly UnpricedNeed[];
  /** By rule: theatres that lack the item and the cost. */
  readonly figures: (scenario: Scenario) => Readonly<Record<string, NeedFigures>>;
  readonly gaps: (scenario: Scenario) => Quantity;
  /** When all has settled. */
  readonly placing: (scenario: Scenario) => readonly Placing[];
  /** Required monitors that the scenario lacks, with what was lacking of each before, by the year of the need. */
  readonly toBuy: (scenario: Scenario) => readonly MonitorsDue[];
}

export function scenarioMonitoring(
  r: Reckoner,
  input: EstimateInput,
  { today, fleet, cases }: { today: Scenario; fleet: Fleet; cases: ScenarioCases<CaseUse> }
): ScenarioMonitoring {
  const asked = kept((scenario: Scenario) =>
    kept(({ standings }: Period) => {
      const rows = cases.rowsOf(scenario);
      const places = standings.map((standing) => ({
        standing,
        cases: rows.flatMap((row) => {
          if (cases.shareIn(standing, row) === 'none') return [];
          const { following, rest } = cases.casesIn(scenario, row, standing);
          return [...following.map(({ one }) => one), ...(rest === null ? [] : [rest])];
        })
      }));
      return monitoringQuestion(input, places, (theatres) => r.value(theatres));
    })
  );
  const settled = (scenario: Scenario) => {
    const periods = fleet.periods(scenario);
    return asked(scenario)(periods.at(-1) ?? periods[0]);
  };
  const needs = kept((scenario: Scenario): readonly UnpricedNeed[] => monitoringNeeds(settled(scenario)));

  const lacking = (item: MonitorItem, asking: readonly StandingPlace[]): Quantity =>
    theatresLacking(r, item, {
      needing: withoutBuiltIn(item, asking).map(({ standing }) => standing)
    });
  const toBuyIn = kept((scenario: Scenario) =>
    kept((period: Period) =>
      monitorsToBuy(asked(scenario)(period)).toBuy.map(({ item, unitPrice, asking }) => ({
        item,
        unitPrice,
        theatresMissing: lacking(item, asking)
      }))
    )
  );

  return {
    needs,
    placing: (scenario) => (input.theatreGroups.length === 1 ? [] : proposedPlacing(settled(scenario))),
    figures: (scenario) =>
      Object.fromEntries(
        needs(scenario).map(({ rule, item, places, theatresMissing, unitPrice }) => {
          const device = deviceFor(item);
          if (device === null || theatresMissing === null)
            return [rule, { theatresMissing: null, cost: null }];
          const all = settled(scenario).places;
          const theatres = lacking(
            device,
            places.flatMap((place) => all[place] ?? [])
          );
          return [
            rule,
            {
              theatresMissing: theatres,
              cost: unitPrice === null ? null : costOfGap(r, { item, theatres, unitPrice })
            }
          ];
        })
      ),
    gaps: (scenario) => {
      const all = settled(scenario).places;
      return gapsOf(r, needs(scenario), (item, places) =>
        lacking(
          item,
          places.flatMap((place) => all[place] ?? [])
        )
      );
    },
    toBuy: (scenario) => {
      const before = new Map<string, Quantity>(
        toBuyIn(today)(fleet.periods(today)[0]).map(({ item, theatresMissing }) => [item, theatresMissing])
      );
      return fleet.periods(scenario).map((period) => {
        const due = toBuyIn(scenario)(period).map((monitor) => ({
          ...monitor,
          missingBefore: before.get(monitor.item) ?? null
        }));
        for (const { item, theatresMissing, missingBefore } of due)
          before.set(
            item,
            missingBefore === null
              ? theatresMissing
              : r.apply(mostLacking, { before: missingBefore, now: theatresMissing })
          );
        return { year: period.fromYear - 1, missing: due };
      });
    }
  };
}
