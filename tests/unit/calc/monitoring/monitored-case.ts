import type { MonitoredCase } from '#lib/calc/monitoring/circumstance.ts';

/** An adult with a tube, a volatile agent in oxygen and air, ventilated, with a blocker, at 2 L/min. */
export const ventilatedAdult: MonitoredCase = {
  caseId: 'adult',
  technique: 'volatile',
  agent: 'isoflurane',
  nitrousOxidePercent: 0,
  pneumoperitoneum: 'none',
  neuromuscularBlock: true,
  airway: 'tracheal-tube',
  lowestFlowLPerMin: 2
};

export const intravenousLaparoscopy: MonitoredCase = {
  ...ventilatedAdult,
  caseId: 'laparoscopy',
  technique: 'intravenous',
  agent: null,
  pneumoperitoneum: 'intraperitoneal'
};

export const intravenousSupraglottic: MonitoredCase = {
  ...ventilatedAdult,
  caseId: 'short',
  technique: 'intravenous',
  agent: null,
  neuromuscularBlock: false,
  airway: 'supraglottic'
};

export const spinal: MonitoredCase = {
  ...ventilatedAdult,
  caseId: 'spinal',
  technique: 'regional',
  agent: null,
  neuromuscularBlock: false,
  airway: 'none',
  lowestFlowLPerMin: null
};
