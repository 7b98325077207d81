import type { MonitoringLevel, MonitoringNeed } from '../estimate-types.ts';
import type { CaseUse } from '../case/case-result.ts';
import type { Agent, CaseRow, EstimateInput, Machine } from '../input.ts';
import { amount, text } from '../money/decimal.ts';
import { costOfMonitor } from '../money/monitor-cost.ts';
import type { MonitoringQuestion, UnpricedNeed } from '../monitoring/monitoring-needs.ts';

/** Strictest first. */
export const levelOrder: readonly MonitoringLevel[] = [
  'required',
  'caution',
  'recommended',
  'suggested',
  'available'
];

/** What is asked of the chosen standard, of laparoscopy and of low flow, with these cases on this machine. */
export function monitoringQuestion(
  input: EstimateInput,
  {
    machine,
    cases
  }: {
    machine: Machine;
    cases: readonly { readonly row: CaseRow; readonly agent: Agent | null; readonly result: CaseUse }[];
  }
): MonitoringQuestion {
  const { site, monitors } = input;
  return {
    standard: site.monitoringStandard,
    facilityLevel: site.facilityLevel,
    theatres: site.theatres,
    stock: monitors,
    builtIn: { items: machine.monitors, units: machine.units },
    // A group without a case in the year asks for nothing.
    cases: cases
      .filter(({ row }) => row.casesPerYear > 0)
      .map(({ row, agent, result }) => ({
        caseId: row.id,
        technique: row.technique,
        agent,
        nitrousOxidePercent: row.nitrousOxidePercent,
        pneumoperitoneum: row.pneumoperitoneum,
        neuromuscularBlock: row.neuromuscularBlock,
        airway: row.airway,
        lowestFlowLPerMin: result.lowestFlowLPerMin
      }))
  };
}

/** The need with its cost: theatres that lack the item times its price; null where one of them is not known. */
export function pricedNeed({ unitPrice, ...need }: UnpricedNeed): MonitoringNeed {
  const cost =
    unitPrice === null || need.theatresMissing === null
      ? null
      : text(costOfMonitor.compute({ theatres: need.theatresMissing, unitPrice: amount(unitPrice) }));
  return { ...need, cost };
}
