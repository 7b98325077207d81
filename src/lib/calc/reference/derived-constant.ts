import { constant } from './constant.ts';
import type { Constant } from './constant.ts';
import { derivationInWords, derivations } from './derivations.ts';

/**
 * Builds a constant that follows from others: value, parents and derivation come from `derivations.ts`.
 * @param parents the records among which its parents are.
 * @throws Error where no derivation yields this id or a parent is missing: a programmer's mistake.
 */
export function derivedConstant(
  definition: Omit<Constant, 'value' | 'evidence' | 'alternatives' | 'parents' | 'derivation' | 'override'>,
  parents: readonly Constant[]
): Constant {
  const derivation = derivations.find(({ yields }) => yields === definition.id);
  if (derivation === undefined) throw new Error(`No derivation yields “${definition.id}”.`);
  const value = derivation.compute((id) => {
    const parent = parents.find((candidate) => candidate.id === id);
    if (parent === undefined) throw new Error(`“${definition.id}” lacks its parent “${id}”.`);
    return parent.value;
  });
  return constant({
    ...definition,
    value,
    evidence: 'computed',
    parents: Object.values(derivation.from),
    derivation: derivationInWords(derivation)
  });
}
