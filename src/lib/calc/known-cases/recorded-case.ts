import type { CaseResult } from '../case/case-result.ts';
import { caseQuantities } from '../case/case-result.ts';
import { onDemand } from '../working/on-demand.ts';
import type { Quantity } from '../working/reckoner.ts';

/**
 * A case's result for the recorder: the figures that a plain run gave, and the working behind each once it is looked at.
 * A sum over hundreds of cases is so recorded at once, and only the cases that a reader goes into are run again.
 * @param plainResult bare values, as the plain reckoner gives them
 * @param record runs the case with the recorder
 */
export function recordedCase(plainResult: CaseResult, record: () => CaseResult): CaseResult {
  let recorded: CaseResult | undefined;
  const result: Record<string, unknown> = { ...plainResult };
  for (const key of caseQuantities)
    result[key] = onDemand(
      plainResult[key] as unknown,
      () => (recorded ??= record())[key] as Quantity<unknown>
    );
  return result as unknown as CaseResult;
}
