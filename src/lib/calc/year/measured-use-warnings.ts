/** What a reader must know where a case group's own measured use stands against what the model gives for it. */
import type { CaseUse, CaseWarning } from '../case/case-result.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { MassBalance } from './mass-balance.ts';

/** Bounds of the measured spill against the model's outside which a reader is told; common practice, no source. */
const spillFactorBounds = { low: 0.5, high: 2 } as const;

const millilitres = (value: number): string => `${value.toPrecision(3)} mL`;

/** Remarks on today's case; none where measurement and model agree. */
export function measuredUseWarnings(
  r: Reckoner,
  balance: MassBalance,
  { model, measuredMl }: { model: CaseUse; measuredMl: Quantity }
): readonly CaseWarning[] {
  const measured = r.value(measuredMl);
  const heldMl = r.value(model.takenUpMl) + r.value(model.leftMl);
  if (measured < heldMl)
    return [
      {
        code: 'measured-below-uptake',
        sentence: `The measured ${millilitres(measured)} is less than the ${millilitres(heldMl)} that patient and circuit take by the model even if nothing spills, so ${millilitres(heldMl)} is used. Usual causes: cases shorter, lighter or at a lower target than this group’s, or a log that leaves a part out.`
      }
    ];
  if (balance.saysNothing(model))
    return [
      {
        code: 'measured-without-spill',
        sentence:
          'Today’s plan spills next to nothing by the model, so what was measured says nothing about other plans: they are the model’s own figures.'
      }
    ];
  const factor = r.value(
    balance.spillFactor({ model, measured: balance.splitOfMeasured(model, measuredMl) })
  );
  return factor >= spillFactorBounds.low && factor <= spillFactorBounds.high
    ? []
    : [
        {
          code: 'measured-far-from-model',
          sentence:
            `By what was measured, ${factor.toPrecision(2)} times as much spills as the model says for today’s plan. ` +
            (factor < 1
              ? 'Usual causes: flows below the plan, cases shorter or at a lower target than this group’s.'
              : 'Usual causes: flows or dial settings above the plan, long wash-outs, cases longer than this group’s, a log that counts other agents in.')
        }
      ];
}
