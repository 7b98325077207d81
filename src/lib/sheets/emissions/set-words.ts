/** Ways to count warming, and what they change, in words. */
import type { ChangedOrder, WarmingChoice } from '#lib/calc/estimate/under-every-set.ts';
import { warmingSetOptions } from '#lib/workbook/fields.ts';

const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;

/** e.g. `IPCC AR6 (2021), 100 years`. */
export const choiceName = ({ set, years }: Pick<WarmingChoice, 'set' | 'years'>): string =>
  set === 'GTP'
    ? `Temperature after ${years} years, a pulse (GTP, AR6)`
    : `${warmingSetOptions.find(({ id }) => id === set)?.label ?? set}, ${years} years`;

/** The same for a chart, whose rows are as high as the longest name: the whole of it stands in the table above. */
export const shortChoiceName = (choice: Pick<WarmingChoice, 'set' | 'years'>): string =>
  choice.set === 'literature-2021' ? `AR6 corrected, ${choice.years} years` : choiceName(choice);

/** Every order of scenarios that is not the same by every way to count, one sentence each; one that says so, if all are. */
export function ordersInWords(
  orders: readonly ChangedOrder[],
  nameOf: (scenarioId: string) => string,
  inForce: string
): readonly string[] {
  if (orders.length === 0)
    return ['The order of the scenarios by emissions is the same by every way to count warming.'];
  return orders.map(
    ({ less, more, reversedUnder }) =>
      `“${nameOf(less)}” emits less than “${nameOf(more)}” by ${inForce}, and more by ${listed(reversedUnder.map(choiceName))}.`
  );
}
