/** What is said where a workbook was saved by an older version and now says something else; '' where nothing differs. */
export const movedOnInWords = (notes: readonly string[]): string =>
  notes.length === 0
    ? ''
    : ['It was saved by an older version, and some figures differ from then:', ...notes].join(' ');
