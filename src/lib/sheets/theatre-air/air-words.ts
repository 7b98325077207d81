/** What Theatre air says in words. */
import type { AirLimit } from '#lib/calc/reference/exposure-limit-terms.ts';

export const substanceName = (subject: string): string =>
  subject.charAt(0).toUpperCase() + subject.slice(1).replaceAll('-', ' ');

/** Over which time a limit holds, and what it is held against. */
export function averagingInWords({ averaging, averagingEvidence, limit }: AirLimit): string {
  const said = limit.conditions === '' ? '' : `${limit.conditions}; `;
  const recalled = averagingEvidence === 'memory' ? ' (8 h, from memory)' : '';
  return `${said}held against the ${averaging === 'working-day' ? 'mean' : 'highest case group'}${recalled}`;
}

/** A list of cells that are empty, as a sentence. */
export const missingInWords = (where: string, missing: readonly string[]): string =>
  `${where}: ${missing.join(', ')} not given, so no concentration is told. That is not 0.`;
