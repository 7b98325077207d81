/** What law and policy say of the agents that today's practice gives, for a reader. */
import type { LawfulPracticeState } from '../attribution/lawful-practice.ts';
import { lawfulPracticeState, restrictionsOfToday } from '../attribution/lawful-practice.ts';
import type { Restriction } from '../estimate-types.ts';
import type { EstimateInput } from '../input.ts';
import { citation } from '../working/citation.ts';

const next: Readonly<Record<LawfulPracticeState, string>> = {
  'nothing-restricted': '',
  'not-given':
    'What the law asks for already is no saving: name on Scenarios the agent that would be given instead, and each saving is shown against lawful practice as well.',
  'restricted-itself':
    'The agent named on Scenarios in its place is restricted itself, so no lawful practice is compared with.',
  'not-on-prices':
    'The agent named on Scenarios in its place is not on Prices, so no lawful practice is compared with.',
  given: 'What the law asks for already is no saving: each saving is shown against lawful practice as well.'
};

export function restrictionsInWords(input: EstimateInput): Restriction[] {
  const state = lawfulPracticeState(input);
  return restrictionsOfToday(input).map(({ id, agent, kind, inForce, statement, source, evidence }) => {
    const end =
      kind === 'policy'
        ? 'This is a policy and not a law: it is shown, and changes no figure.'
        : inForce
          ? next[state]
          : `That is after the price year ${input.priceYear} and within the appraisal: what the law will ask for is no saving from then on.`;
    return {
      id,
      agent,
      kind,
      inForce,
      sentence: `Today’s practice gives ${agent}. ${statement} ${end}`,
      source: citation(source),
      evidence
    };
  });
}
