/** Times at which a scenario stands ahead and does not stay there, in words: none of them is a payback. */
import type { AheadForATime, FallCause } from '#lib/calc/estimate-types.ts';
import { formatNumber } from '#lib/numbers/format-number.ts';
import { defaultLocale } from '#lib/numbers/locale-marks.ts';
import { listInWords } from './figure-text.ts';

const untilWhat: Readonly<Record<FallCause, string>> = {
  replacement: 'until machines are replaced',
  'later-purchase': 'until more is bought',
  payment: 'until machines are paid for again',
  'yearly-cost': 'until its yearly cost has used that up'
};

/** `from 2.4 to 4 years, until machines are replaced`; '' where there is no such time. */
export function aheadInWords(times: readonly AheadForATime[], locale: string = defaultLocale()): string {
  const number = (years: number): string => formatNumber(years, { locale });
  const years = (count: number): string => `${number(count)}\u00a0${count === 1 ? 'year' : 'years'}`;
  return listInWords(
    times.map(({ fromYears, untilYears, cause }) => {
      const from = fromYears === 0 ? 'from the start' : `from ${number(fromYears)}`;
      return `${from} to ${years(untilYears)}, ${untilWhat[cause]}`;
    })
  );
}

/** Whether nothing is invested and nothing saved in any year, so that there is nothing to pay back. */
export const nothingAtStake = (netCashFlow: readonly string[]): boolean =>
  netCashFlow.every((net) => Number(net) === 0);
