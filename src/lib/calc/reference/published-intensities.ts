/** What an hour of anaesthesia was found to emit elsewhere, to stand beside a department's own. No figure rests on them. */
import type { Evidence, Source } from './constant.ts';

export interface PublishedIntensity {
  readonly practice: string;
  /** As printed, principal drugs alone, counted from what pharmacies bought. */
  readonly co2eKgPerHour: number;
  readonly cases: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const purchases2025: Source = {
  authors: 'Bernat M, Cuvillon P, Brieussel T et al.',
  title:
    'The carbon footprint of general anaesthesia in adult patients: a multicentre observational comparison of intravenous and inhalation anaesthetic strategies in 35,242 procedures',
  container: 'Br J Anaesth',
  year: 2025,
  locator: 'abstract; the set of warming potentials is not in it'
};

export const publishedIntensities: readonly PublishedIntensity[] = [
  {
    practice: 'sevoflurane with the flow set by hand and optimised',
    co2eKgPerHour: 3.8,
    cases: '15 461 cases'
  },
  { practice: 'sevoflurane with end-tidal control', co2eKgPerHour: 3.1, cases: '7873 cases' },
  { practice: 'total intravenous', co2eKgPerHour: 0.4, cases: '10 717 cases' }
].map((row) => ({ ...row, source: purchases2025, evidence: 'read' }));
