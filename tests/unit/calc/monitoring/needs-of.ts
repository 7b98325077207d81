import { monitoringStandards } from '#lib/calc/input.ts';
import type { MonitoringStandard } from '#lib/calc/input.ts';
import type { MonitoredCase } from '#lib/calc/monitoring/circumstance.ts';
import { monitoringNeeds } from '#lib/calc/monitoring/monitoring-needs.ts';

/** Every standard, WHO-WFSA at its first level. */
export const facilityLevels = monitoringStandards.map((standard): [MonitoringStandard, number | null] => [
  standard,
  standard === 'who-wfsa' ? 1 : null
]);

/** The list for one case as short lines: level, item, `?` where it may be triggered, and the layer on top of a standard. */
export function needsOf(
  standard: MonitoringStandard,
  row: MonitoredCase,
  facilityLevel: number | null = null
): string[] {
  const needs = monitoringNeeds({
    standard,
    facilityLevel,
    places: [{ group: { id: 'main', monitors: {} }, theatres: 1, builtIn: [], cases: [row] }],
    prices: []
  });
  return needs.map(
    ({ level, item, applies, layer }) =>
      `${level} ${item}${applies === 'yes' ? '' : ' ?'}${layer === 'standard' ? '' : ` (${layer})`}`
  );
}
