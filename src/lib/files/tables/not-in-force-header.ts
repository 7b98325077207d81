/** Heading of the column that names, in a table that is written, the cells whose text is not in force. */
export const notInForceHeader = 'Not in force';
