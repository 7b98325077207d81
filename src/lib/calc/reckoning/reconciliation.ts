/** Today's use beside what was bought: of each agent, and of nitrous oxide. */
import type { Agent, EstimateInput } from '../input.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { ReconciliationFinding } from '../year/reconciliation.ts';
import { findingOf, nitrousOxideLostShare } from '../year/reconciliation.ts';

export interface ReconciledAgent {
  readonly purchasedMl: Quantity | null;
  readonly estimatedMl: Quantity | null;
  readonly estimateOverPurchase: Quantity | null;
  readonly finding: ReconciliationFinding;
}

export interface Reconciled {
  /** In the order of the supplies. */
  readonly agents: Readonly<Partial<Record<Agent, ReconciledAgent>>>;
  readonly nitrousOxide: {
    readonly boughtKg: Quantity | null;
    readonly usedKg: Quantity;
    readonly lostKg: Quantity | null;
    readonly lostPercent: Quantity | null;
  };
}

export function reconciled(
  r: Reckoner,
  input: EstimateInput,
  {
    ratio,
    estimated,
    purchased,
    usedKg,
    lostKg
  }: {
    ratio: (agent: Agent) => Quantity | null;
    estimated: (agent: Agent) => Quantity | null;
    purchased: (agent: Agent) => Quantity | null;
    /** Nitrous oxide that today's cases use, and what is lost. */
    usedKg: Quantity;
    lostKg: Quantity | null;
  }
): Reconciled {
  const bought = input.gases.nitrousOxideBoughtKgPerYear;
  const boughtKg = bought === null ? null : r.cell(bought, 'kg', 'gases', 'nitrousOxideBoughtKgPerYear');
  return {
    agents: Object.fromEntries(
      input.agents.map(({ agent }): [Agent, ReconciledAgent] => {
        const [estimatedMl, purchasedMl, of] = [estimated(agent), purchased(agent), ratio(agent)];
        return [
          agent,
          {
            purchasedMl,
            estimatedMl,
            estimateOverPurchase: of,
            finding:
              of !== null
                ? findingOf(r.value(of))
                : purchasedMl === null
                  ? 'not-given'
                  : estimatedMl === null || r.value(estimatedMl) === 0
                    ? 'not-used'
                    : 'all-elsewhere'
          }
        ];
      })
    ),
    nitrousOxide: {
      boughtKg,
      usedKg,
      lostKg,
      lostPercent:
        boughtKg === null || lostKg === null || !(r.value(boughtKg) > 0)
          ? null
          : r.apply(nitrousOxideLostShare, { lostKg, boughtKg })
    }
  };
}
