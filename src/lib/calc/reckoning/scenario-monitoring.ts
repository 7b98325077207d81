/** What is asked for in a scenario, what of it theatres lack, and what that costs. */
import type { CaseUse } from '../case/case-result.ts';
import type { EstimateInput, MonitorItem, Scenario } from '../input.ts';
import type { MissingMonitor } from '../money/monitor-cost.ts';
import { costOfGap } from '../money/monitor-cost.ts';
import type { Decimal } from '../money/decimal.ts';
import { gapsOf } from '../monitoring/gaps.ts';
import type { UnpricedNeed } from '../monitoring/monitoring-needs.ts';
import { monitoringNeeds } from '../monitoring/monitoring-needs.ts';
import { monitorsToBuy } from '../monitoring/monitors-to-buy.ts';
import { deviceFor, theatresLacking } from '../monitoring/theatres-missing.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { SourcesOfCases } from './case-sources.ts';
import { monitoringQuestion } from './monitoring-of-scenario.ts';
import type { ScenarioCases } from './scenario-cases.ts';

export interface NeedFigures {
  readonly theatresMissing: Quantity | null;
  readonly cost: Quantity<Decimal> | null;
}

export interface ScenarioMonitoring {
  readonly needs: (scenario: Scenario) => readonly UnpricedNeed[];
  /** By rule: theatres that lack the item and the cost. */
  readonly figures: (scenario: Scenario) => Readonly<Record<string, NeedFigures>>;
  readonly gaps: (scenario: Scenario) => Quantity;
  /** Required monitors that the scenario lacks, with what today lacks of each already. */
  readonly toBuy: (scenario: Scenario) => readonly MissingMonitor[];
}

export function scenarioMonitoring(
  r: Reckoner,
  input: EstimateInput,
  { today, sources, cases }: { today: Scenario; sources: SourcesOfCases; cases: ScenarioCases<CaseUse> }
): ScenarioMonitoring {
  const asked = kept((scenario: Scenario) =>
    monitoringQuestion(input, {
      machine: sources.machineOf(scenario),
      cases: cases.rowsOf(scenario).map((row) => cases.caseOf(scenario, row))
    })
  );
  const needs = kept((scenario: Scenario): readonly UnpricedNeed[] => monitoringNeeds(asked(scenario)));

  const lackingIn = (scenario: Scenario, item: MonitorItem): Quantity => {
    const { id, monitors, units } = sources.machineOf(scenario);
    return theatresLacking(r, item, {
      theatres: input.site.theatres,
      stock: input.monitors,
      builtIn: { items: monitors, units },
      machine: id
    });
  };

  return {
    needs,
    figures: (scenario) =>
      Object.fromEntries(
        needs(scenario).map(({ rule, item, theatresMissing, unitPrice }) => {
          const device = deviceFor(item);
          const lacking = device === null || theatresMissing === null ? null : lackingIn(scenario, device);
          const cost =
            lacking === null || unitPrice === null
              ? null
              : costOfGap(r, { item, theatres: lacking, unitPrice });
          return [rule, { theatresMissing: lacking, cost }];
        })
      ),
    gaps: (scenario) => gapsOf(r, needs(scenario), (item) => lackingIn(scenario, item)),
    toBuy: (scenario) => {
      const lackedToday = new Set(monitorsToBuy(asked(today)).toBuy.map(({ item }) => item));
      return monitorsToBuy(asked(scenario)).toBuy.map(({ item, unitPrice }) => ({
        item,
        unitPrice,
        theatresMissing: lackingIn(scenario, item),
        missingToday: lackedToday.has(item) ? lackingIn(today, item) : null
      }));
    }
  };
}
