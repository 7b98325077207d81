import type { MonitoringNeed } from '../estimate-types.ts';
import type { CaseUse } from '../case/case-result.ts';
import type { Standing } from '../fleet/standing.ts';
import type { EstimateInput } from '../input.ts';
import { amount, text } from '../money/decimal.ts';
import { costOfMonitor } from '../money/monitor-cost.ts';
import type { MonitoredCase } from '../monitoring/circumstance.ts';
import type { MonitoredPlace, MonitoringQuestion, UnpricedNeed } from '../monitoring/monitoring-needs.ts';
import type { CaseReckoning } from './scenario-cases.ts';

/** Theatres where one machine stands, with what monitoring asks of them. */
export interface StandingPlace extends MonitoredPlace {
  readonly standing: Standing;
}

export interface CasesOfPlace {
  readonly standing: Standing;
  /** Those that follow and those that do not. */
  readonly cases: readonly CaseReckoning<CaseUse>[];
}

/** What is asked of the chosen standard, of laparoscopy and of low flow, with these cases on these machines. */
export function monitoringQuestion(
  input: Pick<EstimateInput, 'site' | 'monitorPrices'>,
  places: readonly CasesOfPlace[],
  value: (theatres: Standing['theatres']) => number
): MonitoringQuestion<StandingPlace> {
  return {
    standard: input.site.monitoringStandard,
    facilityLevel: input.site.facilityLevel,
    prices: input.monitorPrices,
    places: places.map(({ standing, cases }) => ({
      standing,
      group: standing.group,
      theatres: value(standing.theatres),
      builtIn: standing.machine.monitors,
      // A group without a case in the year asks for nothing.
      cases: cases.filter(({ row }) => row.casesPerYear > 0).map(monitoredCase)
    }))
  };
}

const monitoredCase = ({ row, agent, result }: CaseReckoning<CaseUse>): MonitoredCase => ({
  caseId: row.id,
  technique: row.technique,
  agent,
  nitrousOxidePercent: row.nitrousOxidePercent,
  pneumoperitoneum: row.pneumoperitoneum,
  neuromuscularBlock: row.neuromuscularBlock,
  airway: row.airway,
  lowestFlowLPerMin: result.lowestFlowLPerMin
});

/** The need with its cost: theatres that lack the item times its price; null where one of them is not known. */
export function pricedNeed({ unitPrice, places: _, ...need }: UnpricedNeed): MonitoringNeed {
  const cost =
    unitPrice === null || need.theatresMissing === null
      ? null
      : text(costOfMonitor.compute({ theatres: need.theatresMissing, unitPrice: amount(unitPrice) }));
  return { ...need, cost };
}
