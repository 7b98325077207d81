/**
 * Metrics of temperature instead of warming summed over time: a sensitivity, not for inventories. Records of their own, as
 * a published set is closed.
 */
import type { Constant } from './constant.ts';
import { constant } from './constant.ts';
import { ipccAr6 } from './sources.ts';

export const temperatureMetrics = ['GTP', 'CGTP'] as const;
export type TemperatureMetric = (typeof temperatureMetrics)[number];

/** By subject: over 50 and over 100 years. Nitrous oxide lives long: a pulse serves there, and no CGTP is given. */
const values: Readonly<Record<TemperatureMetric, Readonly<Record<string, readonly [number, number]>>>> = {
  GTP: {
    desflurane: [1260, 521],
    isoflurane: [122, 98.4],
    sevoflurane: [43.5, 35.4],
    enflurane: [150, 120],
    halothane: [9.95, 8.14],
    'nitrous-oxide': [290, 233]
  },
  CGTP: {
    desflurane: [249_000, 308_000],
    isoflurane: [54_900, 65_100],
    sevoflurane: [20_000, 23_600],
    enflurane: [66_500, 78_900],
    halothane: [4610, 5460]
  }
};
const horizons = [50, 100] as const;
export type MetricHorizon = (typeof horizons)[number];

const record = (metric: TemperatureMetric, years: MetricHorizon, subject: string, value: number): Constant =>
  constant({
    id: `metric.${metric}.${years}.${subject}`,
    name:
      metric === 'GTP'
        ? `Temperature potential of ${subject.replaceAll('-', ' ')} after ${years} years, of a pulse (GTP, AR6)`
        : `Temperature potential of ${subject} after ${years} years, of a lasting change (CGTP, AR6)`,
    value,
    printed: String(value),
    unit: metric === 'GTP' ? 'kg CO2e/kg' : 'kg CO2e/(kg/year)',
    conditions:
      metric === 'GTP'
        ? 'temperature in that year after a pulse, against a pulse of CO2; not for inventories'
        : 'a lasting change by 1 kg a year against a single pulse of CO2; not for inventories',
    source: ipccAr6,
    evidence: 'read',
    kind: `temperature-metric.${metric}`
  });

export const temperatureMetricRecords: readonly Constant[] = temperatureMetrics.flatMap((metric) =>
  Object.entries(values[metric]).flatMap(([subject, of]) =>
    horizons.map((years, index) => record(metric, years, subject, of[index] ?? NaN))
  )
);

const byId = new Map(temperatureMetricRecords.map((each) => [each.id, each]));

/** null: none is given. */
export const temperatureMetric = (
  metric: TemperatureMetric,
  years: MetricHorizon,
  subject: string
): Constant | null => byId.get(`metric.${metric}.${years}.${subject}`) ?? null;
