/**
 * The decimal arithmetic of all money: 28 significant digits, half to even. The one import of decimal.js; a number
 * enters as its shortest decimal form, so that 0.1 is a tenth.
 */
import { Decimal as Library } from 'decimal.js';
import { keptByText } from './kept-by-text.ts';

export const Decimal = Library.clone({ precision: 28, rounding: Library.ROUND_HALF_EVEN });
export type Decimal = Library;

/** Thrown where a text is no amount of money. */
export class NotAnAmountError extends Error {
  constructor(given: string) {
    super(
      `“${given}” is no amount: a decimal number such as 118.00 is needed, with a point and without a currency.`
    );
    this.name = 'NotAnAmountError';
  }
}

const decimalText = /^[+-]?\d+(\.\d+)?(e[+-]?\d+)?$/i;

/** What-if runs read the same few prices in every draw. */
const keptAmounts = keptByText<Decimal>(1000);

/**
 * The amount that a decimal text stands for, e.g. `118.00`.
 * @throws NotAnAmountError for anything else, `NaN` and `Infinity` included.
 */
export function amount(given: string): Decimal {
  return keptAmounts(given, () => {
    if (!decimalText.test(given)) throw new NotAnAmountError(given);
    return new Decimal(given);
  });
}

/** The amount as plain decimal text, unrounded: money crosses every border in this form. */
export function text(given: Decimal): string {
  return given.toFixed();
}
