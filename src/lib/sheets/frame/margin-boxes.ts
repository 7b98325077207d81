/** What a stylesheet says for the margins of each printed page. */

/** A text as CSS writes it between quotes: nothing in it ends the string, or the rule. */
export const cssString = (text: string): string =>
  `"${text.replaceAll(/[\p{Cc}"\\<]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `)}"`;

export function marginBoxes({
  head,
  date,
  foot
}: {
  readonly head: string;
  readonly date: string;
  readonly foot: string;
}): string {
  const look = 'font-family: "Source Sans 3 Variable", sans-serif; font-size: 8pt; color: #333333;';
  // All the room goes to the box that has the words.
  const wide = `${look} width: 75%; text-align: left;`;
  const narrow = `${look} width: 25%; text-align: right;`;
  return `@media print { @page {
    @top-left { content: ${cssString(head)}; ${wide} }
    @top-right { content: ${cssString(date)}; ${narrow} }
    @bottom-left { content: ${cssString(foot)}; ${wide} }
    @bottom-right { content: "Page " counter(page) " of " counter(pages); ${narrow} }
  } }`;
}
