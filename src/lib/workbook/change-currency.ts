/** Another currency for a workbook: what becomes of its amounts is for the user to say, and never guessed. */
import { readCell, writeCell } from '#lib/calc/cell-path.ts';
import { decimalText, exactDecimal } from '#lib/numbers/decimal-text.ts';
import { numericCells } from './numeric-cells.ts';
import type { SourceNote } from './source-note.ts';
import type { Workbook } from './workbook.ts';

/** What is done with the amounts: multiplied by a rate (new units for one old one), left as they are, or put to 0. */
export type AmountsBecome =
  | { readonly kind: 'converted'; readonly rate: string }
  | { readonly kind: 'kept' }
  | { readonly kind: 'cleared' };

/** Paths of the cells that hold an amount other than 0. */
export const amountCells = (workbook: Workbook): readonly string[] =>
  numericCells(workbook).flatMap(({ path, field, value }) =>
    field.kind === 'money' && value !== 0 ? [path] : []
  );

/** How many amounts other than 0 a workbook holds, those of purchases avoided with them. */
export const countOfAmounts = (workbook: Workbook): number =>
  amountCells(workbook).length +
  workbook.scenarios
    .flatMap(({ avoidedPurchases }) => avoidedPurchases)
    .filter(({ unitPrice }) => Number(unitPrice) !== 0).length;

/** As many decimals as a cell of money takes. */
const mostDecimals = 10;

/**
 * amount × rate, exactly, or to ten decimals where there are more; with two decimals or as many as it needs.
 * @param amount decimal text, as in a workbook
 * @param rate decimal text above 0
 */
export function convertedAmount(amount: string, rate: string): string {
  const [a, r] = [exactDecimal(amount), exactDecimal(rate)];
  let digits = a.digits * r.digits;
  let decimals = a.decimals + r.decimals;
  if (decimals > mostDecimals) {
    const unit = 10n ** BigInt(decimals - mostDecimals);
    const half = digits < 0n ? -unit / 2n : unit / 2n;
    digits = (digits + half) / unit;
    decimals = mostDecimals;
  }
  const [whole = '0', part = ''] = decimalText({ digits, decimals }).split('.');
  return `${whole}.${part.replace(/0+$/, '').padEnd(2, '0')}`;
}

/**
 * The workbook in another currency. Converted amounts take their ranges along and say in their notes what they were;
 * cleared ones lose both.
 * @param day on which it is done, for the notes
 */
export function withCurrency(
  workbook: Workbook,
  { to, become, day }: { readonly to: string; readonly become: AmountsBecome; readonly day: string }
): Workbook {
  const from = workbook.currency;
  const renamed: Workbook = { ...workbook, currency: to };
  if (become.kind === 'kept') return renamed;
  const now = (amount: string): string =>
    become.kind === 'cleared' ? '0' : convertedAmount(amount, become.rate);
  const ranges = { ...workbook.ranges };
  const notes: Record<string, SourceNote> = { ...workbook.notes };
  let changed: Workbook = renamed;
  for (const path of amountCells(workbook)) {
    const amount = String(readCell(workbook, path));
    changed = writeCell(changed, path, now(amount));
    const range = ranges[path];
    const note = notes[path];
    if (become.kind === 'cleared') {
      delete ranges[path];
      delete notes[path];
      continue;
    }
    const rate = Number(become.rate);
    if (range !== undefined)
      ranges[path] = {
        low: Math.min(Number((range.low * rate).toPrecision(12)), Number(now(amount))),
        high: Math.max(Number((range.high * rate).toPrecision(12)), Number(now(amount)))
      };
    notes[path] = {
      text: [`Converted from ${amount} ${from} at ${become.rate}`, note?.text ?? '']
        .filter((part) => part !== '')
        .join('. '),
      date: note?.date ?? day,
      grade: note?.grade ?? null
    };
  }
  return {
    ...changed,
    ranges,
    ...(Object.keys(notes).length === 0 && workbook.notes === undefined ? {} : { notes }),
    scenarios: changed.scenarios.map((scenario) => ({
      ...scenario,
      avoidedPurchases: scenario.avoidedPurchases.map((purchase) => ({
        ...purchase,
        unitPrice: now(purchase.unitPrice)
      }))
    }))
  };
}
