/** Shares of piped nitrous oxide that others found lost, to hold a hospital's own against. No figure rests on them. */
import type { Evidence, Source } from './constant.ts';
import { article } from './sources.ts';

export interface PipeLoss {
  readonly where: string;
  /** Share of what was bought or supplied, as printed or worked out of what is printed. */
  readonly lost: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

export const pipeLosses: readonly PipeLoss[] = [
  {
    where: '18 hospitals in London',
    lost: '82 % (6 487 200 L bought, 1 175 348 L used)',
    source: article({
      authors: 'Thomas MAF et al.',
      container: 'Br J Anaesth',
      year: 2024,
      locator: '133:1427-34',
      doi: '10.1016/j.bja.2024.08.027'
    }),
    evidence: 'read'
  },
  {
    where: 'a hospital in Scotland',
    lost: '96 % (126 890 L supplied, 5475 L used a year)',
    source: {
      title: 'One step closer towards a greener NHS: decommissioning of piped nitrous oxide manifolds',
      container: 'Br J Anaesth',
      locator: 'abstract'
    },
    evidence: 'read'
  },
  {
    where: 'Australia and the United Kingdom, a summary',
    lost: 'at least 50 %, often over 70 %',
    source: {
      title: 'Summary of the guide of 2024 to leaks',
      container: 'Anaesth Intensive Care',
      doi: '10.1177/0310057X261449257'
    },
    evidence: 'read'
  }
];
