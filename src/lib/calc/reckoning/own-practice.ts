/** What a measured use says of a case group's practice, before it is taken over into the group's row. */
import { CaseMemo } from '../known-cases/case-memo.ts';
import type { EstimateInput } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { massBalance } from '../year/mass-balance.ts';
import { measuredUseWarnings } from '../year/measured-use-warnings.ts';
import { reckon } from './reckoning.ts';

export interface OwnPractice {
  /** The model's liquid a case on today's plan, mL. */
  readonly modelMl: Quantity;
  /** Spill of this practice against the model's; null where the reference set carries a measurement over as a ratio. */
  readonly factor: Quantity | null;
  /** What a reader must know of it, one sentence each. */
  readonly warnings: readonly string[];
}

/**
 * Today's case of a row held against a measured use. What stands as measured in the row is passed over.
 * @param measuredMl liquid a case, mL
 * @returns null where the row has no agent, or cannot be computed
 */
export function ownPractice(
  r: Reckoner,
  input: EstimateInput,
  { rowId, measuredMl }: { readonly rowId: string; readonly measuredMl: number },
  memo = new CaseMemo()
): OwnPractice | null {
  const unmeasured = {
    ...input,
    caseMix: input.caseMix
      .filter(({ id }) => id === rowId)
      .map((row) => ({ ...row, measuredMlPerCase: null }))
  };
  const reckoning = reckon(r, unmeasured, memo);
  const [one] = reckoning.cases(reckoning.today);
  if (one === undefined || one.agent === null) return null;
  const model = one.result;
  const balance = massBalance(r, input.reference);
  if (balance === null) return { modelMl: model.liquidMl, factor: null, warnings: [] };
  const measured = r.cell(measuredMl, 'mL', 'caseMix', rowId, 'measuredMlPerCase');
  return {
    modelMl: model.liquidMl,
    factor: balance.spillFactor({ model, measured: balance.splitOfMeasured(model, measured) }),
    warnings: measuredUseWarnings(r, balance, { model, measuredMl: measured }).map(({ sentence }) => sentence)
  };
}
