/** Short sentences for results that are not plain numbers. */
import type { AgainstBaseline, MonitoringNeed } from '#lib/calc/estimate-types.ts';
import { openGaps } from '#lib/calc/monitoring/gaps.ts';
import { yearsInWords as saidYears } from '#lib/numbers/years-in-words.ts';
import { nothingAtStake } from '#lib/charts/ahead-in-words.ts';

/** A payback in years, or why there is none. */
export function yearsInWords(years: number | null, locale: string): string {
  if (years === null) return 'not within the appraisal';
  if (years === 0) return 'at once';
  return saidYears(years, locale);
}

/** A payback against today, or why there is none. */
export function paybackInWords(
  { simplePaybackYears, discountedPaybackYears, years }: AgainstBaseline,
  { locale, discounted = false }: { locale: string; discounted?: boolean }
): string {
  if (nothingAtStake(years.map(({ net }) => net))) return 'nothing to pay back';
  return yearsInWords(discounted ? discountedPaybackYears : simplePaybackYears, locale);
}

export const dueAtStart = 'Due at the start';

/** What the sum of all that is bought is called in a table of `runs`: where none buys later, it is due at the start. */
export const outlayName = (runs: readonly Pick<AgainstBaseline, 'investment' | 'years'>[]): string =>
  runs.every(({ investment, years }) => Number(years[0]?.investment ?? 0) === Number(investment))
    ? dueAtStart
    : 'Investment in all';

/** The open gaps in a few words. */
export function gapsInWords(needs: readonly MonitoringNeed[]): string {
  const { missing, unknown } = openGaps(needs);
  const gaps = missing.length === 1 ? '1 gap' : `${missing.length} gaps`;
  const open = unknown.length === 0 ? '' : `, ${unknown.length} not known`;
  return missing.length === 0 && unknown.length === 0 ? 'no gap' : `${gaps}${open}`;
}
