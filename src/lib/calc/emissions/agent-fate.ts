/**
 * Where the mass of an agent goes: metabolised, caught, or vented; the three add up to what was delivered. Beside them
 * stands what of the vented was caught first.
 */
import type { Agent } from '../input.ts';
import type { ReferenceSet } from '../reference/reference-set.ts';
import { take } from '../reference/reference-set.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { EmittingUse } from './co2e-lines.ts';
import { caughtAndLostMass, caughtMass } from './capture.ts';
import { captured, ventedOf } from './co2e-lines.ts';

const deliveredMass = formula<{ liquidMl: number; densityGPerMl: number }>({
  id: 'emissions.delivered-mass',
  yields: 'Agent delivered, as mass',
  words: 'liquid used times its density',
  expression: 'V * d / 1000',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    densityGPerMl: { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ liquidMl, densityGPerMl }) => (liquidMl * densityGPerMl) / 1000
});

const metabolisedMass = formula<{
  liquidMl: number;
  takenUpMl: number;
  densityGPerMl: number;
  metabolisedPercent: number;
}>({
  id: 'emissions.metabolised-mass',
  yields: 'Agent metabolised, as mass',
  words:
    'the share of what is taken up that the body metabolises, never more than was used; the rest is breathed out',
  expression: 'min(V, m / 100 * U) * d / 1000',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    takenUpMl: { symbol: 'U', unit: 'mL', words: 'liquid agent taken up' },
    densityGPerMl: { symbol: 'd', unit: 'g/mL', words: 'density of the liquid' },
    metabolisedPercent: { symbol: 'm', unit: '%', words: 'share of what is taken up that is metabolised' }
  },
  unit: 'kg',
  source: 'definition',
  compute: ({ liquidMl, takenUpMl, densityGPerMl, metabolisedPercent }) =>
    (Math.min(liquidMl, (metabolisedPercent / 100) * takenUpMl) * densityGPerMl) / 1000
});

const inAllParts = formula<{ parts: readonly number[] }>({
  id: 'emissions.fate-in-all-parts',
  yields: 'Mass of the agent in a year',
  words: 'sum over machines and plans',
  expression: 'sum(x)',
  inputs: { parts: { symbol: 'x', unit: 'kg', words: 'each part' } },
  unit: 'kg',
  source: 'definition',
  compute: ({ parts }) => parts.reduce((sum, part) => sum + part, 0)
});

export const agentFates = [
  'deliveredKg',
  'metabolisedKg',
  'caughtKg',
  'ventedKg',
  /** Of the vented. */
  'caughtAndLostKg'
] as const;
export type AgentFate<Q = Quantity> = Readonly<Record<(typeof agentFates)[number], Q>>;

/** Of each agent in use, kg: delivered = metabolised + caught + vented. `ventedKg` is what the agents' line counts. */
export function agentFate(
  r: Reckoner,
  uses: EmittingUse['agents'],
  reference: ReferenceSet
): Readonly<Partial<Record<Agent, AgentFate>>> {
  const parts: Partial<Record<Agent, AgentFate[]>> = {};
  for (const use of uses) {
    const { agent, liquidMl, takenUpMl, capture } = use;
    const densityGPerMl = r.constant(take(reference, `${agent}.liquid-density`));
    const metabolisedPercent = r.constant(take(reference, `${agent}.metabolised`));
    const deliveredKg = r.apply(deliveredMass, { liquidMl, densityGPerMl });
    const metabolisedKg = r.apply(metabolisedMass, {
      liquidMl,
      takenUpMl,
      densityGPerMl,
      metabolisedPercent
    });
    const caught = { deliveredKg, metabolisedKg, densityGPerMl, ...captured(r, capture) };
    (parts[agent] ??= []).push({
      deliveredKg,
      metabolisedKg,
      caughtKg: r.apply(caughtMass, caught),
      ventedKg: ventedOf(r, use, reference),
      caughtAndLostKg: r.apply(caughtAndLostMass, caught)
    });
  }
  return Object.fromEntries(
    Object.entries(parts).map(([agent, of]) => [
      agent,
      Object.fromEntries(
        agentFates.map((fate) => [fate, r.apply(inAllParts, { parts: of.map((part) => part[fate]) })])
      )
    ])
  );
}
