/**
 * Where an agent may no longer be given as before, and since when: dated statements, each a law or a policy. Which of
 * them apply to a hospital is asked of them by its jurisdiction; they are no legal advice, and local rules come first.
 */
import type { Evidence, Source } from './constant.ts';

/** Where the hospital is, as far as statements were looked for; `elsewhere`: none was found. */
export const jurisdictions = ['european-union', 'england', 'scotland', 'elsewhere'] as const;
export type Jurisdiction = (typeof jurisdictions)[number];

export interface AgentRestriction {
  /** Stable, e.g. `restriction.desflurane.european-union`. */
  readonly id: string;
  readonly jurisdiction: Jurisdiction;
  readonly agent: string;
  /** Only what a law asks for already is taken out of a saving; a policy is shown. */
  readonly kind: 'law' | 'policy';
  /** In force from this day, `2026-01-01`, or month, `2023-02`. */
  readonly from: string;
  readonly statement: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

export const agentRestrictions: readonly AgentRestriction[] = [
  {
    id: 'restriction.desflurane.european-union',
    jurisdiction: 'european-union',
    agent: 'desflurane',
    kind: 'law',
    from: '2026-01-01',
    statement:
      'In the European Union desflurane may not be used as an inhalation anaesthetic from 1 January 2026, except where it is strictly required on medical grounds and no other anaesthetic can be used; the institution keeps the reason and shows it to the authority on request.',
    source: { title: 'Regulation (EU) 2024/573', year: 2024, locator: 'Article 13' },
    evidence: 'second-hand'
  },
  {
    id: 'restriction.desflurane.england',
    jurisdiction: 'england',
    agent: 'desflurane',
    kind: 'policy',
    from: '2024-04-01',
    statement:
      'In England the use of desflurane is limited from 1 April 2024, by a policy of the health service, which permits it in stated circumstances.',
    source: {
      authors: 'NHS England',
      title: 'Guidance: Desflurane decommissioning and clinical use',
      year: 2024
    },
    evidence: 'read'
  },
  {
    id: 'restriction.desflurane.scotland',
    jurisdiction: 'scotland',
    agent: 'desflurane',
    kind: 'policy',
    from: '2023-02',
    statement:
      'In Scotland desflurane has been off the national contract since February 2023; stock may be used up, and exceptional circumstances remain.',
    source: { authors: 'Scottish Government', title: 'Notices on desflurane', year: 2023 },
    evidence: 'read'
  }
];

/** First calendar year, or part of one, in which the restriction is in force. */
export const yearOf = ({ from }: Pick<AgentRestriction, 'from'>): number => Number(from.slice(0, 4));
