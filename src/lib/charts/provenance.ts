/** Whose figures the charts show, to go with a picture or a file that leaves the page. */
import { getContext, setContext } from 'svelte';

export interface Provenance {
  /** Title of the workbook. */
  readonly title: string;
  readonly invented: boolean;
  /** The cells that show a text which no figure rests on, as a sentence without its full stop; '' for none. */
  readonly notInForce: string;
  readonly locale: string;
}

const key = Symbol('provenance of the charts');

/** Gives the charts of this component, and of those within, what they say of their figures. */
export const giveProvenance = (now: () => Provenance): void => void setContext(key, now);

/** What was given; null for a chart that stands by itself, as in a test. */
export const provenance = (): (() => Provenance) | null => getContext<() => Provenance>(key) ?? null;

/** Workbook, day, whether the figures are invented and all that was entered is in force, in one line. */
export function provenanceLine(
  { title, invented, notInForce, locale }: Provenance,
  day: Date | number
): string {
  const date = new Intl.DateTimeFormat(locale, { dateStyle: 'long' }).format(day);
  return `${title} · ${date}${invented ? ' · invented figures, evidence for nothing' : ''}${notInForce === '' ? '' : ` · ${notInForce}`} · planning support, not clinical guidance`;
}
