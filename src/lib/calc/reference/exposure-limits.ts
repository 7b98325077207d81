/** Workplace limits for agents in theatre air, each with its country and averaging time. */
import { constant } from './constant.ts';
import type { Evidence, Source } from './constant.ts';
import { hseEh40, niosh1977 } from './sources.ts';

interface Limit {
  readonly country: string;
  readonly subject: string;
  readonly ppm: number;
  readonly conditions: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const trgs900: Source = { title: 'TRGS 900, workplace limit values, Germany', locator: 'TRGS 900' };
const dgs1985: Source = { title: 'Circular of the Direction générale de la santé, France', year: 1985 };
const dutchHealthCouncil: Source = {
  authors: 'Dutch Health Council',
  title: 'Advice on occupational exposure limits for inhaled anaesthetics',
  locator: 'health-based limits'
};
const regulation833: Source = { title: 'Ontario Regulation 833', locator: 'Regulation 833' };
const swedishAuthority: Source = { title: 'AFS, workplace limit values, Sweden', locator: 'AFS' };
const acgih: Source = { authors: 'ACGIH', title: 'Threshold limit values', locator: 'nitrous oxide' };

const limits: readonly Limit[] = [
  {
    country: 'united-states',
    subject: 'halogenated-agents',
    ppm: 2,
    conditions: 'recommendation; ceiling over 1 h',
    source: niosh1977,
    evidence: 'read'
  },
  {
    country: 'united-states',
    subject: 'nitrous-oxide',
    ppm: 25,
    conditions: 'recommendation; time-weighted over the administration',
    source: niosh1977,
    evidence: 'read'
  },
  {
    country: 'united-states',
    subject: 'nitrous-oxide-over-8-h',
    ppm: 50,
    conditions: '8 h',
    source: acgih,
    evidence: 'read'
  },
  ...[
    { subject: 'nitrous-oxide', ppm: 100 },
    { subject: 'isoflurane', ppm: 50 },
    { subject: 'enflurane', ppm: 50 },
    { subject: 'halothane', ppm: 10 }
  ].map((limit): Limit => ({
    country: 'united-kingdom',
    ...limit,
    conditions: '8 h',
    source: hseEh40,
    evidence: 'read'
  })),
  ...['sevoflurane', 'isoflurane', 'desflurane'].map((subject): Limit => ({
    country: 'sweden',
    subject,
    ppm: 10,
    conditions: '8 h; 20 ppm short term',
    source: swedishAuthority,
    evidence: 'memory'
  })),
  {
    country: 'germany',
    subject: 'nitrous-oxide',
    ppm: 100,
    conditions: '8 h; peak factor 2',
    source: trgs900,
    evidence: 'read'
  },
  {
    country: 'france',
    subject: 'nitrous-oxide',
    ppm: 25,
    conditions: 'maintenance phase',
    source: dgs1985,
    evidence: 'read'
  },
  {
    country: 'france',
    subject: 'halogenated-agents',
    ppm: 2,
    conditions: 'recommendation; maintenance phase',
    source: dgs1985,
    evidence: 'read'
  },
  {
    country: 'netherlands',
    subject: 'isoflurane',
    ppm: 20,
    conditions: 'advisory; 153 mg/m3',
    source: dutchHealthCouncil,
    evidence: 'read'
  },
  {
    country: 'netherlands',
    subject: 'sevoflurane',
    ppm: 18,
    conditions: 'advisory; 153 mg/m3 by analogy',
    source: dutchHealthCouncil,
    evidence: 'read'
  },
  {
    country: 'netherlands',
    subject: 'nitrous-oxide',
    ppm: 83,
    conditions: 'advisory; 152 mg/m3',
    source: dutchHealthCouncil,
    evidence: 'read'
  },
  {
    country: 'ontario',
    subject: 'nitrous-oxide',
    ppm: 25,
    conditions: '8 h',
    source: regulation833,
    evidence: 'read'
  },
  {
    country: 'ontario',
    subject: 'isoflurane',
    ppm: 2,
    conditions: '8 h',
    source: regulation833,
    evidence: 'read'
  }
];

const words = (id: string): string => id.replaceAll('-', ' ');

export const exposureLimits = limits.map(({ country, subject, ppm, conditions, source, evidence }) =>
  constant({
    id: `exposure-limit.${country}.${subject}`,
    name: `Exposure limit for ${words(subject)}, ${words(country).replace(/\b[a-z]/g, (letter) => letter.toUpperCase())}`,
    value: ppm,
    printed: String(ppm),
    unit: 'ppm',
    conditions,
    source,
    evidence,
    kind: 'exposure-limit'
  })
);
