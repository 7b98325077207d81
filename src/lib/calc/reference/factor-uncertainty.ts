/** How uncertain published factors are, 5 to 95 %, where their source says so. Shown beside a line; no figure rests on it. */
import type { Evidence, Source } from './constant.ts';

export interface FactorUncertainty {
  readonly subject: 'halogenated-agents' | 'nitrous-oxide';
  readonly percent: number;
  readonly words: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const table: Source = {
  authors: 'IPCC',
  title: 'Sixth Assessment Report, Working Group I',
  year: 2021,
  locator: 'Table 7.15'
};

export const factorUncertainties: readonly FactorUncertainty[] = [
  {
    subject: 'halogenated-agents',
    percent: 38,
    words:
      'by analogy with two hydrofluorocarbons, over 100 years; the carbon dioxide that it is set against is part of it and cancels between agents',
    source: table,
    evidence: 'memory'
  },
  {
    subject: 'nitrous-oxide',
    percent: 48,
    words: 'over 100 years',
    source: table,
    evidence: 'memory'
  }
];
