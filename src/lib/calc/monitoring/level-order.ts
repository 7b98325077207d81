import type { MonitoringLevel } from '../estimate-types.ts';

/** Strictest first. */
export const levelOrder: readonly MonitoringLevel[] = [
  'required',
  'caution',
  'recommended',
  'suggested',
  'available'
];
