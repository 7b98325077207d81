/**
 * The whole calculation, from cells to figures, as quantities. Run with the plain reckoner it is the estimate; run with
 * the recorder, the same code gives any one figure's working. Figures are made on demand and kept, so that asking for
 * one computes only what it needs.
 */
import type { CaseResult, CaseUse } from '../case/case-result.ts';
import type { CaseGiven, CaseSources } from '../case/conditions.ts';
import { givenOf } from '../case/conditions.ts';
import { estimateCase, floorOfCase } from '../case/estimate-case.ts';
import type { FailedCell } from '../estimate-types.ts';
import { baselineOf } from '../baseline-of.ts';
import { theatresTogether } from '../fleet/share-of-cases.ts';
import { fleetOf, periodOf } from '../fleet/standing.ts';
import type { CaseRow, EstimateInput, Payment, Scenario } from '../input.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { recordedCase } from '../known-cases/recorded-case.ts';
import { consumablePrices } from '../money/consumable-prices.ts';
import { costOfToday } from '../money/cost-of-ownership.ts';
import { investment } from '../money/investment.ts';
import { monitorCost } from '../money/monitor-cost.ts';
import { timeFactors } from '../money/time-factors.ts';
import type { WaysOfMove } from '../money/ways-to-pay.ts';
import { isPaidFor, waysOfMove } from '../money/ways-to-pay.ts';
import { kept, once } from '../working/kept.ts';
import { plain } from '../working/plain.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { vapourOfYear } from '../year/vapour.ts';
import type { EmittingSide } from './against.ts';
import { Against } from './against.ts';
import { sourcesOfCases } from './case-sources.ts';
import { casesWithShares } from './cases-with-shares.ts';
import { intensities } from './intensity.ts';
import { reconciled } from './reconciliation.ts';
import { withModelError } from './model-error.ts';
import { pricedCase } from './priced-case.ts';
import { scenarioCases } from './scenario-cases.ts';
import { scenarioMonitoring } from './scenario-monitoring.ts';
import { scenarioYears } from './scenario-year.ts';
import { theatreAir } from './theatre-air.ts';
import { yearParts } from './year-parts.ts';

/** How many years of the appraisal lie in a period. */
const yearsWithin = (fromYear: number, nextFromYear: number | undefined, appraisalYears: number): number =>
  Math.max(0, Math.min((nextFromYear ?? Infinity) - 1, appraisalYears) - fromYear + 1);

export type Reckoning = ReturnType<typeof reckon>;

/** Cases of a row that follow a scenario, in theatres where one machine stands. */
export interface CasesDone<C extends CaseUse> {
  readonly row: CaseRow;
  /** Share of the row's cases that is done there, by one technique. */
  readonly sharePercent: number;
  /** Share of these that follows the scenario's plan. */
  readonly adoptionPercent: number;
  readonly result: C;
}

/**
 * The calculation over one input, with all that an estimate tells of its cases. Nothing is computed until it is asked
 * for.
 * @param memo where results of cases are kept over edits; a recorder takes the values from there, and records a case
 *   once somebody looks at how it came about.
 */
export function reckon(r: Reckoner, input: EstimateInput, memo?: CaseMemo) {
  const reckoning = reckonWith(r, input, (sources) => {
    const run = (): CaseResult => estimateCase(r, givenOf(sources));
    if (memo === undefined) return run();
    const known = memo.result(sources, plainCase);
    return r.records ? recordedCase(known, run) : known;
  });
  return { ...reckoning, intensity: intensities(r, reckoning) };
}

const plainCase = (given: CaseGiven): CaseResult => estimateCase(plain, given);

/**
 * The calculation over one input, with as much of each case as is given it. Nothing is computed until it is asked for.
 * @param modelled the model's figures of a case
 */
export function reckonWith<C extends CaseUse>(
  r: Reckoner,
  input: EstimateInput,
  modelled: (sources: CaseSources) => C
) {
  const { accounting, site } = input;
  const today = baselineOf(input);

  const prices = once(() => consumablePrices(r, input));
  const fleet = fleetOf(r, input, today);
  const sources = sourcesOfCases(input, today);
  const cases = scenarioCases(r, input, {
    today,
    fleet,
    sources,
    modelled: withModelError(r, input.modelError, modelled)
  });
  const partsIn = yearParts(r, input, { cases, sources });
  const {
    yearIn,
    fateIn,
    fateByGroupIn,
    ledgerIn,
    absorbentUnder,
    reconciliation,
    estimatedToday,
    purchasedToday
  } = scenarioYears(r, input, { today, fleet, sources, partsIn, prices });
  const monitoring = scenarioMonitoring(r, input, { today, fleet, cases });
  const settled = (scenario: Scenario) => {
    const periods = fleet.periods(scenario);
    return periods.at(-1) ?? periods[0];
  };
  const settledYear = (scenario: Scenario) => yearIn(scenario, settled(scenario));

  /** The case that tells of a row: one that keeps its technique, where any does. */
  const caseOf = (scenario: Scenario, row: CaseRow) => cases.ownCases(scenario, row)[0].one;
  const casesOf = (scenario: Scenario) => cases.rowsOf(scenario).map((row) => caseOf(scenario, row));

  /** By period, in order of time: the cases of every row wherever they are done. */
  const casesDone = (scenario: Scenario): readonly (readonly CasesDone<C>[])[] =>
    fleet.periods(scenario).map(({ standings }) =>
      cases.rowsOf(scenario).flatMap((row) =>
        standings.flatMap((standing) => {
          const share = cases.shareIn(standing, row);
          if (share === 'none') return [];
          const inPercent = share === 'all' ? 100 : r.value(share);
          return cases.casesIn(scenario, row, standing).following.map(({ one, percent }) => ({
            row,
            sharePercent: percent === null ? inPercent : (inPercent * r.value(percent)) / 100,
            adoptionPercent: r.value(standing.adoptionPercent),
            result: one.result
          }));
        })
      )
    );

  const factors = once(() => timeFactors(r, accounting));
  const sideOf = kept((scenario: Scenario): EmittingSide => {
    const { cost, figures } = settledYear(scenario);
    const periods = fleet.periods(scenario);
    return {
      cost,
      costIn: (year) => yearIn(scenario, periodOf(periods, year)).cost,
      co2eKg: figures.co2eKg.total,
      emitting: periods.map((period, index) => ({
        co2eKg: yearIn(scenario, period).figures.co2eKg.total,
        years: yearsWithin(period.fromYear, periods[index + 1]?.fromYear, accounting.appraisalYears)
      })),
      investment: investment(r, {
        scenario,
        arrivals: fleet.arrivals(scenario),
        renewals: fleet.renewals(scenario),
        theatres: () =>
          r.apply(theatresTogether, {
            parts: input.theatreGroups.map(({ id, theatres }) =>
              r.cell(theatres, '1', 'theatreGroups', id, 'theatres')
            )
          }),
        monitors:
          scenario === today
            ? []
            : monitoring
                .toBuy(scenario)
                .map(({ year, missing }) => ({ year, cost: monitorCost(r, missing) })),
        accounting
      })
    };
  });
  const yearsOfToday = once(() => costOfToday(r, { baseline: sideOf(today), factors: factors() }));
  const footprintTonnes = (): Quantity | null => {
    const { departmentFootprintTonnes: footprint } = site;
    if (footprint === null || !(footprint > 0)) return null;
    return r.cell(footprint, 't CO2e', 'site', 'departmentFootprintTonnes');
  };

  return {
    today,
    cases: casesOf,
    casesDone,
    caseOf,
    /** The cases of the settled year by the machine and the way in which they are done, with their shares. */
    casesOfYear: (scenario: Scenario) =>
      settled(scenario).standings.flatMap((standing) => {
        const { following, rest } = casesWithShares(r, cases, { scenario, standing });
        return [...following, ...rest];
      }),
    pricedCase: kept((scenario: Scenario) =>
      kept((row: CaseRow) =>
        pricedCase(r, input, {
          scenario,
          one: caseOf(scenario, row),
          sources,
          prices: prices()
        })
      )
    ),
    /** Liquid that the case would use if nothing spilled, mL. */
    floorOf: (scenario: Scenario, row: CaseRow): Quantity =>
      floorOfCase(r, givenOf(sources.sourcesOf(caseOf(scenario, row)))),
    year: (scenario: Scenario) => settledYear(scenario).figures,
    against: kept(
      (scenario: Scenario) =>
        new Against(r, {
          today: sideOf(today),
          scenario: sideOf(scenario),
          factors: factors(),
          accounting,
          costOfToday: yearsOfToday,
          footprintTonnes: footprintTonnes()
        })
    ),
    waysToPay: kept((scenario: Scenario): readonly WaysOfMove[] =>
      fleet
        .arrivals(scenario)
        .filter(isPaidFor)
        .map((arrival) =>
          waysOfMove(r, {
            arrival,
            scenarioId: scenario.id,
            absorbentPerYear: absorbentUnder(scenario, arrival.move.terms.payment as Payment),
            accounting
          })
        )
    ),
    monitoring: monitoring.needs,
    monitoringFigures: monitoring.figures,
    monitoringGaps: monitoring.gaps,
    placing: monitoring.placing,
    vapour: (scenario: Scenario) =>
      vapourOfYear(
        r,
        cases
          .rowsOf(scenario)
          .flatMap((row) => cases.ownCases(scenario, row))
          .map(({ one: { row, result }, percent }) => ({ row, result, percent }))
      ),
    /** Where the mass of each agent goes in the settled year. */
    agentFate: kept((scenario: Scenario) => fateIn(scenario, settled(scenario))),
    agentFateByGroup: kept((scenario: Scenario) => fateByGroupIn(scenario, settled(scenario))),
    ledger: kept((scenario: Scenario) => ledgerIn(scenario, settled(scenario))),
    theatreAir: kept((scenario: Scenario) => {
      const period = settled(scenario);
      return theatreAir(r, input, { scenario, period, cases, sources, parts: partsIn(scenario, period) });
    }),
    reconciliation: once(() =>
      reconciled(r, input, {
        ratio: reconciliation,
        estimated: estimatedToday,
        purchased: purchasedToday,
        usedKg: settledYear(today).figures.nitrousOxideKg,
        lostKg: settledYear(today).emitting.nitrousOxideLostKg
      })
    ),
    failed: (scenario: Scenario): readonly FailedCell[] => cases.failedIn(scenario)
  };
}
