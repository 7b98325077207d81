import type { Constant } from './constant.ts';
import { derivations } from './derivations.ts';

/**
 * Computes anew, in place, what follows from changed constants, through every generation. A derived constant that is
 * itself among the changed ones stays as it was given.
 * @param changed ids of the constants that are no longer what the derived ones were computed from.
 * @param renew the derived constant with its new value, given which of its parents have changed.
 * @throws Error where a derived constant lacks a parent: a programmer's mistake.
 */
export function recomputeDerived(
  constants: Map<string, Constant>,
  changed: ReadonlySet<string>,
  renew: (constant: Constant, value: number, changedParents: readonly string[]) => Constant
): void {
  const renewed = new Set(changed);
  for (const { yields, from, compute } of derivations) {
    const before = constants.get(yields);
    if (before === undefined || changed.has(yields)) continue;
    const changedParents = Object.values(from).filter((id) => renewed.has(id));
    if (changedParents.length === 0) continue;
    const value = compute((id) => {
      const parent = constants.get(id);
      if (parent === undefined) throw new Error(`“${yields}” lacks its parent “${id}”.`);
      return parent.value;
    });
    constants.set(yields, renew(before, value, changedParents));
    renewed.add(yields);
  }
}
