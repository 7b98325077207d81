/** What a monitoring standard asks for, as data: one rule an item, in our own words, with source and evidence. */
import type { Evidence, Source } from '../constant.ts';

/** A monitor of the theatre, or a measure that no device is bought for. */
export type RuleItem =
  | 'pulse-oximetry'
  | 'non-invasive-blood-pressure'
  | 'ecg'
  | 'capnography'
  | 'inspired-oxygen'
  | 'agent-concentration'
  | 'nitrous-oxide-concentration'
  | 'airway-pressure'
  | 'exhaled-volume'
  | 'disconnect-alarm'
  | 'temperature'
  | 'neuromuscular'
  | 'processed-eeg'
  | 'arterial-blood-gas'
  | 'anaesthesia-provider'
  | 'co2-at-intubation'
  | 'leak-test'
  | 'absorbent-check'
  | 'sevoflurane-flow-caution';

/** How strongly an item is asked for, the standard's own word beside it; `caution`: a restriction, no advice to do it. */
export type RuleLevel = 'required' | 'caution' | 'recommended' | 'suggested' | 'available';

/**
 * What can make a rule apply, and how a reader is told. A row of the case mix and its flow plan answer most of them;
 * those that only the patient on the day can answer are shown as “when triggered”.
 */
export const circumstances = {
  every: 'every anaesthetic',
  'general-anaesthesia':
    'general anaesthesia, or moderate to deep sedation (an intravenous row without an airway)',
  'airway-device': 'a tracheal tube or a supraglottic airway',
  'tracheal-tube': 'a tracheal tube',
  ventilator:
    'a ventilator in use (a tracheal tube or a neuromuscular blocker; with a supraglottic airway it may be)',
  'breathing-system': 'a breathing system in use (a tracheal tube, a supraglottic airway or a mask)',
  'volatile-agent': 'a volatile agent given',
  sevoflurane: 'sevoflurane given',
  'nitrous-oxide': 'nitrous oxide given',
  'neuromuscular-block': 'a neuromuscular blocker given',
  'intravenous-anaesthesia': 'intravenous anaesthesia',
  'co2-pneumoperitoneum': 'CO2 insufflated',
  'flow-up-to-1': 'a fresh gas flow of 1 L/min or less in any phase',
  'flow-below-2': 'a fresh gas flow below 2 L/min in any phase',
  'temperature-change-expected': 'a change of temperature intended, expected or suspected',
  'cardiopulmonary-disease': 'disease of heart or lungs',
  'high-awareness-risk': 'a high risk of awareness'
} as const;
export type Circumstance = keyof typeof circumstances;

export interface MonitoringRule {
  /** Stable, e.g. `cas.capnography`. */
  readonly id: string;
  readonly item: RuleItem;
  readonly level: RuleLevel;
  /** The word of the standard, e.g. `shall`. */
  readonly word: string;
  /** All of them must hold. */
  readonly when: readonly Circumstance[];
  /** What more the standard says, in our own words; an empty string where it says no more. */
  readonly detail: string;
  readonly evidence: Evidence;
}

/** A standard that a site chooses, or a layer that comes on top of any standard. */
export type Layer = 'standard' | 'laparoscopy' | 'low-flow' | 'label';

export interface MonitoringDocument {
  /** E.g. `cas`. */
  readonly id: string;
  /** Name with its edition. */
  readonly name: string;
  readonly layer: Layer;
  readonly source: Source;
  /** What of it could be read, and what follows for a reader. */
  readonly limits: string;
  readonly rules: readonly MonitoringRule[];
}
