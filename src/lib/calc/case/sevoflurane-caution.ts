/** What the US prescribing information of sevoflurane says about low flow. */

export type SevofluraneCaution = 'outside' | 'within' | 'exceeds' | 'not-recommended';

/**
 * Where an exposure stands: at 1 to below 2 L/min not more than 2 MAC-hours; below 1 L/min not recommended; from 2 L/min
 * the clause does not apply. Newer statements contest it for absorbents without strong base (ASA 2023; Anesth Analg
 * 2021;132:993): local policy decides.
 */
export function sevofluraneCaution({
  flowLPerMin,
  macHours
}: {
  flowLPerMin: number;
  macHours: number;
}): SevofluraneCaution {
  if (flowLPerMin >= 2) return 'outside';
  if (flowLPerMin < 1) return macHours > 0 ? 'not-recommended' : 'within';
  return macHours > 2 ? 'exceeds' : 'within';
}
