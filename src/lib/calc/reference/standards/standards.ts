/** The monitoring standards that a site can choose, and the layers that come on top of any. */
import { anzca } from './anzca.ts';
import { asaNeuromuscular } from './asa-neuromuscular.ts';
import { asa } from './asa.ts';
import { associationOfAnaesthetists } from './association-of-anaesthetists.ts';
import { cas } from './cas.ts';
import { eaesPneumoperitoneum } from './eaes-pneumoperitoneum.ts';
import { jsa } from './jsa.ts';
import { lowFlow } from './low-flow.ts';
import type { MonitoringDocument } from './monitoring-rule.ts';
import { sevofluraneLabel } from './sevoflurane-label.ts';
import { whoWfsa } from './who-wfsa.ts';

/** Id of a choice → its documents. */
export const standards = {
  'who-wfsa': [whoWfsa],
  asa: [asa, asaNeuromuscular],
  'association-of-anaesthetists': [associationOfAnaesthetists],
  cas: [cas],
  anzca: [anzca],
  jsa: [jsa]
} as const satisfies Readonly<Record<string, readonly MonitoringDocument[]>>;
export type StandardId = keyof typeof standards;

export const layers: readonly MonitoringDocument[] = [eaesPneumoperitoneum, lowFlow, sevofluraneLabel];

/** Everything that was read or recalled, standards first. */
export const monitoringDocuments: readonly MonitoringDocument[] = [
  ...Object.values(standards).flat(),
  ...layers
];
