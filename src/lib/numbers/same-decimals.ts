/** Numbers that stand in one row or column: all with the same number of decimals, so that digits line up. */
import { formatDecimals, formatMoney, notGiven, type MoneyLook, type NumberLook } from './format-number.ts';

/**
 * The decimals that leave the largest of `values` as many significant figures as asked for, none of them before the
 * point: of 353 and 0.024 to three figures, none; of 26 and 7.61, one. null is not looked at; 0 for nothing but zeros.
 */
export function sameDecimals(
  values: readonly (number | null)[],
  { figures = 3 }: { readonly figures?: number } = {}
): number {
  const largest = Math.max(0, ...values.map((value) => (Number.isFinite(value) ? Math.abs(value ?? 0) : 0)));
  if (largest === 0 || values.every((value) => Number.isInteger(value ?? 0))) return 0;
  // 99.97 to three figures is 100.
  const place = Math.floor(Math.log10(Number(largest.toPrecision(figures))));
  return Math.max(0, figures - 1 - place);
}

/** Each of `values` with the same decimals; null is `–`. */
export function formatAlike(
  values: readonly (number | null)[],
  { figures = 3, ...look }: NumberLook & { readonly figures?: number } = {}
): readonly string[] {
  const decimals = sameDecimals(values, { figures });
  return values.map((value) => (value === null ? notGiven : formatDecimals(value, { ...look, decimals })));
}

/** Amounts of one row or column: all in whole units where the largest is a thousand or more, else all to the cent. */
export function formatMoneyAlike(amounts: readonly string[], look: MoneyLook): readonly string[] {
  const sizes = amounts.map((amount) => Math.abs(Number(amount)));
  const whole = sizes.some((size) => size >= 999.995) || sizes.every((size) => size === 0);
  return amounts.map((amount) => formatMoney(amount, { ...look, whole, cents: !whole }));
}
