import type { Scenario } from '../input.ts';

/** Scenarios that capture agent of which nobody knows what becomes. */
export const caughtToNobodyKnows = (scenarios: readonly Scenario[]): readonly Scenario[] =>
  scenarios.filter(
    ({ capturePercent, caughtBecomes }) => capturePercent > 0 && caughtBecomes === 'not-known'
  );

/** What a reader must know of a scenario's capture, one sentence each. */
export function captureWarnings(scenarios: readonly Scenario[]): readonly string[] {
  return [
    ...caughtToNobodyKnows(scenarios).map(caughtNotKnown),
    ...scenarios
      .filter(({ canisterPrice, canisterHoldsG }) => Number(canisterPrice) > 0 && canisterHoldsG === null)
      .map(
        ({ name }) =>
          `“${name}” gives a canister of its capture a price and not what one holds: canisters are not counted in its cost.`
      )
  ];
}

export const caughtNotKnown = ({ name }: Pick<Scenario, 'name'>): string =>
  `“${name}” captures agent, and what becomes of it is not known: it counts as kept out of the air, which holds only if nobody lets it go.`;
