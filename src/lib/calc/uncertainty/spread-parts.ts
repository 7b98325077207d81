/** What makes a spread: the body model and the model's own error, or cells with ranges. What they make together is neither's. */
export const spreadParts = ['model', 'cells'] as const;
export type SpreadPart = (typeof spreadParts)[number];
