/** Emissions for a case, an hour and a MAC-hour: of a scenario's year, of each agent in it, and of a case of each group. */
import type { CaseResult } from '../case/case-result.ts';
import type { LedgerEntry } from '../emissions/ledger.ts';
import type { Agent, CaseRow, Scenario } from '../input.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { hours } from '../year/consumption.ts';
import type { CasesOfYear } from '../year/intensity.ts';
import {
  anaesthesiaOf,
  changeForACase,
  changeForAnHour,
  emissionsOfACase,
  emissionsOfAMacHour,
  emissionsOfAnHour
} from '../year/intensity.ts';
import type { CaseWithShare } from './cases-with-shares.ts';
import type { PricedCase } from './priced-case.ts';
import type { CaseReckoning } from './scenario-cases.ts';
import type { YearFigures } from './scenario-year.ts';

/** null: there is none to divide by. */
export interface IntensityFigures {
  readonly co2eKgPerCase: Quantity | null;
  readonly co2eKgPerHour: Quantity | null;
  readonly agentCo2eKgPerMacHour: Quantity | null;
}

export interface ScenarioIntensity {
  readonly year: IntensityFigures;
  readonly changePercent: IntensityFigures;
  readonly agents: Readonly<Partial<Record<Agent, IntensityFigures>>>;
  readonly cases: Readonly<Record<string, IntensityFigures>>;
}

/**
 * The year’s figures take all lines of the total, those lost from pipes among them, over all anaesthetics and their hours;
 * for a MAC-hour agents alone, as no other line makes depth that is counted in them.
 */
export function intensities(
  r: Reckoner,
  {
    today,
    year,
    ledger,
    casesOfYear,
    cases,
    pricedCase
  }: {
    readonly today: Scenario;
    readonly year: (scenario: Scenario) => YearFigures;
    readonly ledger: (scenario: Scenario) => readonly LedgerEntry[];
    readonly casesOfYear: (scenario: Scenario) => readonly CaseWithShare<CaseResult>[];
    readonly cases: (scenario: Scenario) => readonly CaseReckoning<CaseResult>[];
    readonly pricedCase: (scenario: Scenario) => (row: CaseRow) => PricedCase;
  }
): (scenario: Scenario) => ScenarioIntensity {
  const unlessNone = (amount: Quantity, of: (amount: Quantity) => Quantity): Quantity | null =>
    r.value(amount) > 0 ? of(amount) : null;
  const counted = ({
    one: { row, agent, result },
    sharePercent
  }: CaseWithShare<CaseResult>): CasesOfYear => ({
    row,
    sharePercent,
    macHours: agent === null ? null : result.macHours
  });
  const over = (
    done: readonly CaseWithShare<CaseResult>[],
    { co2eKg, agentCo2eKg }: { co2eKg: Quantity; agentCo2eKg: Quantity }
  ): IntensityFigures => {
    const of = anaesthesiaOf(r, done.map(counted));
    return {
      co2eKgPerCase: unlessNone(of.cases, (amount) => r.apply(emissionsOfACase, { co2eKg, amount })),
      co2eKgPerHour: unlessNone(of.hours, (amount) => r.apply(emissionsOfAnHour, { co2eKg, amount })),
      agentCo2eKgPerMacHour: unlessNone(of.macHours, (amount) =>
        r.apply(emissionsOfAMacHour, { co2eKg: agentCo2eKg, amount })
      )
    };
  };
  const yearOf = kept((scenario: Scenario): IntensityFigures => {
    const { co2eKg } = year(scenario);
    return over(casesOfYear(scenario), { co2eKg: co2eKg.total, agentCo2eKg: co2eKg.agents });
  });
  const change = (by: typeof changeForACase, now: Quantity | null, then: Quantity | null): Quantity | null =>
    now === null || then === null || r.value(now) === 0 ? null : r.apply(by, { now, then });

  return kept((scenario: Scenario): ScenarioIntensity => {
    const ofYear = yearOf(scenario);
    const ofToday = yearOf(today);
    const done = casesOfYear(scenario);
    const agents: Partial<Record<Agent, IntensityFigures>> = {};
    for (const { kind, subject, co2eKg } of ledger(scenario)) {
      if (kind !== 'agents' || co2eKg === null) continue;
      const given = done.filter(({ one }) => one.agent === subject);
      agents[subject as Agent] = over(given, { co2eKg, agentCo2eKg: co2eKg });
    }
    const priced = pricedCase(scenario);
    const ofCase = ({ row, agent, result }: CaseReckoning<CaseResult>): IntensityFigures => {
      const { co2eKg, agentCo2eKg } = priced(row);
      const lasting = r.apply(hours, { minutes: r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes') });
      return {
        co2eKgPerCase: co2eKg,
        co2eKgPerHour: unlessNone(lasting, (amount) => r.apply(emissionsOfAnHour, { co2eKg, amount })),
        agentCo2eKgPerMacHour:
          agent === null
            ? null
            : unlessNone(result.macHours, (amount) =>
                r.apply(emissionsOfAMacHour, { co2eKg: agentCo2eKg, amount })
              )
      };
    };
    return {
      year: ofYear,
      changePercent: {
        co2eKgPerCase: change(changeForACase, ofToday.co2eKgPerCase, ofYear.co2eKgPerCase),
        co2eKgPerHour: change(changeForAnHour, ofToday.co2eKgPerHour, ofYear.co2eKgPerHour),
        agentCo2eKgPerMacHour: change(
          changeForAnHour,
          ofToday.agentCo2eKgPerMacHour,
          ofYear.agentCo2eKgPerMacHour
        )
      },
      agents,
      cases: Object.fromEntries(cases(scenario).map((one) => [one.row.id, ofCase(one)]))
    };
  });
}
