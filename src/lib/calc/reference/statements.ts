/**
 * What the sources say that is no number: restrictions, cautions, and where a limit or a figure is missing. Each in
 * our own words, with the same discipline of source and evidence as the constants.
 */
import { agentRestrictions } from './agent-restrictions.ts';
import type { Evidence, Source } from './constant.ts';
import { commonPractice, hseEh40, usLabel } from './sources.ts';

export interface Statement {
  /** Stable, e.g. `restriction.desflurane.european-union`. */
  readonly id: string;
  readonly statement: string;
  readonly source: Source;
  readonly evidence: Evidence;
}

const feldman2021: Source = {
  authors: 'Feldman JM, Hendrickx J, Kennedy RR',
  title: 'Carbon Dioxide Absorption During Inhalation Anesthesia: A Modern Practice',
  container: 'Anesth Analg',
  year: 2021,
  locator: '132:993-1002',
  doi: '10.1213/ANE.0000000000005137'
};

const noAllClear =
  'That none is set is no all-clear: exposure is to be kept as low as can be, and local law and occupational health decide.';

export const statements: readonly Statement[] = [
  ...agentRestrictions.map(({ id, statement, source, evidence }) => ({ id, statement, source, evidence })),
  {
    id: 'missing.restriction.elsewhere',
    statement:
      'No national law that restricts an anaesthetic agent was found for Australia, Canada, New Zealand, Northern Ireland, Switzerland, the United States or Wales, where many hospitals stopped desflurane by choice. That none was found is no all-clear: local law decides.',
    source: { title: 'Literature search of this project', year: 2026 },
    evidence: 'memory'
  },
  {
    id: 'caution.sevoflurane.low-flow',
    statement:
      'The US label of sevoflurane allows no more than 2 MAC-hours at 1 to less than 2 L/min of fresh gas and does not recommend flows below 1 L/min. The local label and local policy decide.',
    source: usLabel('sevoflurane', 'fresh gas flow'),
    evidence: 'read'
  },
  {
    id: 'caution.sevoflurane.low-flow-contested',
    statement:
      'Newer statements (this one, and the ASA in 2023) contest what the US label of sevoflurane says of low flow, for absorbents without strong base. They do not change the label; the label in force and local policy decide.',
    source: feldman2021,
    evidence: 'read'
  },
  {
    id: 'caution.sevoflurane.compound-a',
    statement:
      'The reason for that restriction is compound A, which forms of sevoflurane in absorbents with strong base, more of it the lower the flow.',
    source: usLabel('sevoflurane', 'warnings'),
    evidence: 'memory'
  },
  {
    id: 'fate.nitrous-oxide',
    statement:
      'Hardly any nitrous oxide is metabolised: what a patient takes up is breathed out again later. Uptake changes when it is vented, not how much, so that all nitrous oxide given counts as an emission.',
    source: commonPractice,
    evidence: 'memory'
  },
  {
    id: 'missing.absorbent-manufacture',
    statement:
      'No published figure was found for the emissions of making CO2 absorbent: the factor is an input, empty by default, and a report says so.',
    source: { title: 'Literature search of this project', year: 2026 },
    evidence: 'memory'
  },
  {
    id: 'missing.exposure-limit.united-kingdom',
    statement: `The United Kingdom sets no exposure limit for sevoflurane or desflurane. ${noAllClear}`,
    source: hseEh40,
    evidence: 'read'
  },
  {
    id: 'missing.exposure-limit.germany',
    statement: `Germany sets no exposure limit for sevoflurane, isoflurane or desflurane. ${noAllClear}`,
    source: { title: 'DGUV Information 213-032', locator: '213-032' },
    evidence: 'read'
  },
  {
    id: 'caution.malignant-hyperthermia',
    statement:
      'A patient susceptible to malignant hyperthermia must not have a volatile agent, and is no case for low flow with one: such cases stay out of the case mix of a low-flow plan. The responsible clinician and local policy decide.',
    source: usLabel('sevoflurane', 'contraindications'),
    evidence: 'read'
  },
  {
    id: 'caution.asa-amendment',
    statement:
      'The ASA standard for basic monitoring was last amended in October 2025. That text was not available: the rules here follow an earlier one, quoted second-hand. Check the current text before you rely on them.',
    source: {
      authors: 'American Society of Anesthesiologists',
      title: 'Standards for Basic Anesthetic Monitoring',
      year: 2025,
      locator: 'amendment of October 2025'
    },
    evidence: 'second-hand'
  },
  {
    id: 'caution.regional-with-sedation',
    statement:
      'A regional row stands for a patient with whom verbal contact is kept. Enter regional anaesthesia with moderate or deep sedation as intravenous without an airway, so that capnography is asked for.',
    source: commonPractice,
    evidence: 'memory'
  },
  {
    id: 'caution.standards-differ',
    statement:
      'Monitoring standards differ by country and are revised. The law, the local standard, the manufacturer’s instructions and the responsible clinician come before this list.',
    source: commonPractice,
    evidence: 'memory'
  }
];

/** The statement with this id. @throws Error where there is none: a programmer's mistake. */
export function statement(id: string): Statement {
  const found = statements.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`There is no statement “${id}”.`);
  return found;
}
