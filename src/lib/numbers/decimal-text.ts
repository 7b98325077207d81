/** A decimal number held exactly, as whole digits and a count of decimals: 12.50 is 1250 with two. */
export interface ExactDecimal {
  readonly digits: bigint;
  readonly decimals: number;
}

/**
 * Reads plain decimal text, the form in which money is stored: `-12.50`, `3`, also `1.5e-7` as a program prints it.
 * Throws TypeError for anything else: such text comes from a program, never from a person.
 */
export function exactDecimal(text: string): ExactDecimal {
  const match = /^([+-]?)(\d+)(?:\.(\d*))?(?:e([+-]?\d{1,3}))?$/i.exec(text);
  if (match === null) throw new TypeError(`“${text}” is not plain decimal text`);
  const [, sign, whole = '', fraction = '', exponent = '0'] = match;
  const size = BigInt(whole + fraction);
  const digits = sign === '-' ? -size : size;
  const decimals = fraction.length - Number(exponent);
  return decimals >= 0 ? { digits, decimals } : { digits: digits * 10n ** BigInt(-decimals), decimals: 0 };
}

/** The plain text of an exact decimal, with all its decimals: 1250 with two is `12.50`. */
export function decimalText({ digits, decimals }: ExactDecimal): string {
  const size = (digits < 0n ? -digits : digits).toString().padStart(decimals + 1, '0');
  const sign = digits < 0n ? '-' : '';
  if (decimals === 0) return sign + size;
  return `${sign}${size.slice(0, -decimals)}.${size.slice(-decimals)}`;
}
