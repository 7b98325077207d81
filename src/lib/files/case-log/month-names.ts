/** Months by their names in the languages that logs come in, as the platform's own tables spell them. */
const languages = ['en', 'de', 'fr', 'es', 'it', 'nl', 'pt', 'sv', 'da', 'nb', 'fi', 'pl'];

const folded = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[\p{M}.]/gu, '')
    .toLowerCase();

let known: ReadonlyMap<string, number> | null = null;

/** The month (1 to 12) that a name or its short form stands for, such as `MAR`, `März`, `févr.`; null for none. */
export function monthNamed(name: string): number | null {
  known ??= new Map(
    languages.flatMap((language) =>
      (['long', 'short'] as const).flatMap((month) => {
        // With a day, as the name is written in a date: some languages inflect it.
        const format = new Intl.DateTimeFormat(language, { day: 'numeric', month, timeZone: 'UTC' });
        const alone = new Intl.DateTimeFormat(language, { month, timeZone: 'UTC' });
        return Array.from({ length: 12 }, (_, index) => index).flatMap((index) => {
          const day = new Date(Date.UTC(2025, index, 1));
          const inDate = format.formatToParts(day).find(({ type }) => type === 'month')?.value ?? '';
          return [inDate, alone.format(day)].map((each) => [folded(each), index + 1] as const);
        });
      })
    )
  );
  return known.get(folded(name)) ?? null;
}
