/** The published figures that are shown beside a cell as a guide: the cell itself stays the user's own. */
import type { ReferenceSet } from '#lib/calc/reference/reference-set.ts';
import { citation, evidenceWords } from '#lib/calc/working/citation.ts';
import { unitInWords } from '../working/working-figures.ts';

/**
 * A sentence for each guide, with its conditions, source and evidence; none where the cell has no guide.
 * @param cells as `list.field` or `part.field`, e.g. `machines.leakMlPerMin`
 */
export function guidesInWords(set: ReferenceSet, cells: string, currency: string): readonly string[] {
  return [...set.constants.values()]
    .filter(({ guideFor }) => guideFor === cells)
    .map(({ name, printed, unit, conditions, source, evidence }) => {
      const held = conditions === '' ? '' : `, ${conditions}`;
      return `${name}: ${printed} ${unitInWords(unit, currency)}${held} (${citation(source)}; ${evidenceWords[evidence]}).`;
    });
}
