/** The published set of MAC and the group of solubilities that a workbook chose, where they hold for a case. */
import type { Agent } from '../input.ts';
import type { Constant } from '../reference/constant.ts';
import type { CaseConstants } from './case-constants.ts';
import type { CaseGiven } from './conditions.ts';

export type ChosenMac =
  | { readonly kind: 'by-age'; readonly mac40: Constant; readonly slope: Constant }
  | { readonly kind: 'in-band'; readonly mac: Constant; readonly mac40?: never; readonly slope?: never };

type Of = Pick<CaseGiven, 'conditions'>;

/** MAC of a gas by the chosen set; null where that is the reference set's own, or does not hold for this gas or age. */
export function macChosen(
  { conditions: { macSet, ageYears } }: Of,
  { groups }: Pick<CaseConstants, 'groups'>,
  gas: Agent | 'nitrous-oxide'
): ChosenMac | null {
  if (macSet === 'mapleson' || groups === null) return null;
  if (macSet === 'sevoflurane-label')
    return gas === 'sevoflurane' ? { kind: 'by-age', ...groups.label } : null;
  const { youngest, oldest, mac } = groups.textbook;
  const found = mac[gas];
  return found === undefined || ageYears < youngest.value || ageYears > oldest.value
    ? null
    : { kind: 'in-band', mac: found };
}

/** Blood/gas partition coefficient by the chosen group; null where that is the set's own, or holds no such agent. */
export const bloodGasChosen = (
  { conditions: { solubilityGroup } }: Of,
  { groups }: Pick<CaseConstants, 'groups'>,
  agent: Agent
): Constant | null => (solubilityGroup === 'patients' ? (groups?.patients[agent] ?? null) : null);

/** What of the choice does not hold for a case with an agent, and what stands in its place, in sentences. */
export function groupsNotHeld(
  given: Pick<CaseGiven, 'conditions' | 'reference'>,
  constants: Pick<CaseConstants, 'groups'>,
  agent: Agent
): readonly string[] {
  const { macSet, solubilityGroup, ageYears, nitrousOxidePercent } = given.conditions;
  const why = (gas: string): string =>
    constants.groups === null
      ? `reference set ${given.reference.id} offers no choice of it`
      : `it has none for ${gas.replace('-', ' ')} at ${ageYears} years`;
  const gases = nitrousOxidePercent > 0 ? ([agent, 'nitrous-oxide'] as const) : ([agent] as const);
  const withoutMac =
    macSet === 'mapleson'
      ? []
      : gases.filter(
          // A label of one agent says nothing of what is given beside it.
          (gas) =>
            macChosen(given, constants, gas) === null &&
            !(macSet === 'sevoflurane-label' && gas === 'nitrous-oxide')
        );
  return [
    ...withoutMac.map(
      (gas) => `The chosen set of MAC is not used, as ${why(gas)}: computed with MAC by Mapleson 1996.`
    ),
    ...(solubilityGroup === 'patients' && bloodGasChosen(given, constants, agent) === null
      ? [
          `The solubility of ${agent} is not that measured in patients, as ${
            constants.groups === null
              ? `reference set ${given.reference.id} offers no choice of it`
              : 'it was not among the agents measured'
          }: computed with the reference set’s own.`
        ]
      : [])
  ];
}
