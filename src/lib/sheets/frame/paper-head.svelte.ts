/**
 * The line in the margin of every printed page: which workbook, which day, and whether its figures are invented. The
 * browser draws it from a page rule, which is the only thing on paper that comes again on each page.
 */
import { giveProvenance, provenanceLine } from '#lib/charts/provenance.ts';
import type { Provenance } from '#lib/charts/provenance.ts';

/** A text as a string of a style sheet: nothing in a title may end it. */
const quoted = (text: string): string =>
  `"${text.replace(/["\\\n\r\f\0]/g, (sign) => `\\${sign.codePointAt(0)?.toString(16) ?? ''} `)}"`;

/** The page rule. */
export const paperHeadRule = (provenance: Provenance, day: Date | number): string =>
  `@page { @top-left { content: ${quoted(provenanceLine(provenance, day))}; font: 8pt sans-serif; color: #333; white-space: nowrap; } }`;

/** Keeps the line, and what charts say of themselves, in step with the workbook for as long as the component stands. */
export function keepProvenance(now: () => Provenance): void {
  giveProvenance(now);
  const sheet = new CSSStyleSheet();
  $effect(() => sheet.replaceSync(paperHeadRule(now(), Date.now())));
  $effect(() => {
    document.adoptedStyleSheets.push(sheet);
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
    };
  });
}
