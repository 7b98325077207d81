/** Whose figures the charts show, to go with a picture or a file that leaves the page. */
import { getContext, setContext } from 'svelte';

export interface Provenance {
  /** Title of the workbook. */
  readonly title: string;
  readonly invented: boolean;
  readonly locale: string;
}

const key = Symbol('provenance of the charts');

/** Gives the charts of this component, and of those within, what they say of their figures. */
export const giveProvenance = (now: () => Provenance): void => void setContext(key, now);

/** What was given; null for a chart that stands by itself, as in a test. */
export const provenance = (): (() => Provenance) | null => getContext<() => Provenance>(key) ?? null;

/** Workbook, day and whether the figures are invented, in one line. */
export function provenanceLine({ title, invented, locale }: Provenance, day: Date | number): string {
  const date = new Intl.DateTimeFormat(locale, { dateStyle: 'long' }).format(day);
  return `${title} · ${date}${invented ? ' · invented figures, evidence for nothing' : ''} · planning support, not clinical guidance`;
}
