/** Which of the curves by body weight a patient follows. */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { CaseConstants } from './case-constants.ts';
import type { gasExchangeBetween } from './physiology.ts';

/** A figure of a child by its line, of an adult by its curve, and between them by the set's bridge, where it has one. */
export function childOrAdult(
  r: Reckoner,
  {
    constants: { childWeightLimit, adultWeightLimit },
    weightKg,
    child,
    adult,
    between
  }: {
    readonly constants: CaseConstants;
    readonly weightKg: Quantity;
    readonly child: (weightKg: Quantity) => Quantity;
    readonly adult: (weightKg: Quantity) => Quantity;
    readonly between: typeof gasExchangeBetween;
  }
): Quantity {
  const weight = r.value(weightKg);
  if (weight < childWeightLimit.value) return child(weightKg);
  if (adultWeightLimit === null || weight >= adultWeightLimit.value) return adult(weightKg);
  const childKg = r.constant(childWeightLimit);
  const adultKg = r.constant(adultWeightLimit);
  return r.apply(between, {
    atChild: child(childKg),
    atAdult: adult(adultKg),
    weightKg,
    childKg,
    adultKg
  });
}
