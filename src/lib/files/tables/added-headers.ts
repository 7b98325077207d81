/** Headings of columns that are written beside a table for its reader, and say nothing to an import. */

/** Of the column that names the cells whose text is not in force. */
export const notInForceHeader = 'Not in force';

/** Of the column of a spreadsheet that names what is fixed in it. */
export const fixedHeader = 'Fixed when saved';

/** What the heading of the column says that looks after fixed cells, as long as none was changed, and then. */
export const checkHeaders = { asSaved: 'Check: as saved', changed: 'Check: changed, not followed' } as const;

/** Whether a heading is one of these. */
export const isAddedHeader = (header: string): boolean =>
  [notInForceHeader, fixedHeader, checkHeaders.asSaved, checkHeaders.changed].includes(header);
