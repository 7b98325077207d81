/**
 * A line with every sign that a terminal would act on, or that ends a line or turns its direction, written as `\uXXXX`:
 * a name in a file must not be able to forge a line or to send a command.
 */
export function printable(line: string): string {
  return line.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, (sign) =>
    Array.from({ length: sign.length }, (_, at) => sign.charCodeAt(at))
      .map((unit) => `\\u${unit.toString(16).padStart(4, '0')}`)
      .join('')
  );
}
