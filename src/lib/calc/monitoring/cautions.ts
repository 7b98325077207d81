import type { MonitoringStandard } from '../input.ts';
import { statement } from '../reference/statements.ts';
import type { Statement } from '../reference/statements.ts';

/** What a reader of the list must know besides it, for the chosen standard. */
export function cautions(standard: MonitoringStandard): Statement[] {
  return [
    'caution.standards-differ',
    'caution.malignant-hyperthermia',
    'caution.regional-with-sedation',
    ...(standard === 'asa' ? ['caution.asa-amendment'] : [])
  ].map(statement);
}
