/**
 * What is used up, priced: agents, gases, absorbent and drugs, of a year or of one case. A quantity is priced as it is used;
 * what stays in the bottle is in the price of a usable millilitre.
 */
import type { Agent } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { AgentPrice, ConsumablePrices } from './consumable-prices.ts';
import { Decimal } from './decimal.ts';
import type { TechniqueUse } from './technique-cost.ts';
import { sumCalled } from './sum-of-amounts.ts';

const agentsCost = sumCalled('money.agents-cost', 'Cost of agents');
const absorbentsCost = sumCalled('money.absorbents-cost', 'Cost of absorbent');
const caseCost = sumCalled('money.case-cost', 'Cost of agent, gases, absorbent and drugs of a case');

/** What is used up, in a year or in one case. */
export interface ConsumableAmounts {
  readonly liquidMl: Readonly<Partial<Record<Agent, Quantity>>>;
  readonly oxygenM3: Quantity;
  readonly airM3: Quantity;
  /** Given to patients. */
  readonly nitrousOxideKg: Quantity;
  /** Bought but lost from the piped supply; null where not known, and for one case. */
  readonly nitrousOxideLostKg: Quantity | null;
  /** By the absorbent's id: with part adoption a year may use two. */
  readonly absorbentKg: Readonly<Record<string, Quantity>>;
  readonly techniques: TechniqueUse;
}

export interface AgentCost {
  readonly bottles: Quantity;
  readonly cost: Quantity<Decimal>;
}

export interface ConsumablesCost {
  readonly byAgent: Readonly<Partial<Record<Agent, AgentCost>>>;
  readonly agents: Quantity<Decimal>;
  readonly gases: Quantity<Decimal>;
  readonly absorbent: Quantity<Decimal>;
  readonly drugs: Quantity<Decimal>;
}

export const costOfAgent = formula<{ liquidMl: number; pricePerMl: Decimal }, Decimal>({
  id: 'money.cost-of-agent',
  yields: 'Cost of the agent',
  words: 'Liquid used, times the price of a usable millilitre.',
  expression: 'V * p',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    pricePerMl: { symbol: 'p', unit: 'currency/mL', words: 'price of a usable millilitre' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ liquidMl, pricePerMl }) => pricePerMl.times(liquidMl)
});

export const bottles = formula<{ liquidMl: number; bottleMl: number; unusablePercent: number }>({
  id: 'money.bottles',
  yields: 'Bottles used',
  words: 'Liquid used over what can be used of a bottle.',
  expression: 'V / (B * (1 - u / 100))',
  inputs: {
    liquidMl: { symbol: 'V', unit: 'mL', words: 'liquid agent used' },
    bottleMl: { symbol: 'B', unit: 'mL', words: 'content of a bottle' },
    unusablePercent: { symbol: 'u', unit: '%', words: 'share of a bottle that cannot be used' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ liquidMl, bottleMl, unusablePercent }) => liquidMl / (bottleMl * (1 - unusablePercent / 100))
});

export const costOfGases = formula<
  {
    oxygenM3: number;
    oxygenPerM3: Decimal;
    airM3: number;
    airPerM3: Decimal;
    nitrousOxideKg: number;
    nitrousOxideLostKg: number;
    nitrousOxidePerKg: Decimal;
  },
  Decimal
>({
  id: 'money.cost-of-gases',
  yields: 'Cost of oxygen, air and nitrous oxide',
  words: 'Each gas times its price; nitrous oxide lost from the supply is paid for as well.',
  expression: 'O * p_O + A * p_A + (N + L) * p_N',
  inputs: {
    oxygenM3: { symbol: 'O', unit: 'm3', words: 'oxygen used' },
    oxygenPerM3: { symbol: 'p_O', unit: 'currency/m3', words: 'price of oxygen' },
    airM3: { symbol: 'A', unit: 'm3', words: 'medical air used' },
    airPerM3: { symbol: 'p_A', unit: 'currency/m3', words: 'price of medical air' },
    nitrousOxideKg: { symbol: 'N', unit: 'kg', words: 'nitrous oxide given' },
    nitrousOxideLostKg: { symbol: 'L', unit: 'kg', words: 'nitrous oxide lost from the supply' },
    nitrousOxidePerKg: { symbol: 'p_N', unit: 'currency/kg', words: 'price of nitrous oxide' }
  },
  unit: 'currency',
  source: 'definition',
  compute: (a) =>
    a.oxygenPerM3
      .times(a.oxygenM3)
      .plus(a.airPerM3.times(a.airM3))
      .plus(a.nitrousOxidePerKg.times(new Decimal(a.nitrousOxideKg).plus(a.nitrousOxideLostKg)))
});

export const costOfAbsorbent = formula<{ absorbentKg: number; pricePerKg: Decimal }, Decimal>({
  id: 'money.cost-of-absorbent',
  yields: 'Cost of carbon dioxide absorbent',
  words: 'Absorbent used up, times its price.',
  expression: 'm * p',
  inputs: {
    absorbentKg: { symbol: 'm', unit: 'kg', words: 'absorbent used up' },
    pricePerKg: { symbol: 'p', unit: 'currency/kg', words: 'price of the absorbent' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ absorbentKg, pricePerKg }) => pricePerKg.times(absorbentKg)
});

/**
 * Prices what is used up.
 * @throws MoneyInputError as `consumablePrices`, of what is used.
 */
export function costConsumables(
  r: Reckoner,
  prices: ConsumablePrices,
  used: ConsumableAmounts
): ConsumablesCost {
  const byAgent: Partial<Record<Agent, AgentCost>> = {};
  for (const [agent, liquidMl] of Object.entries(used.liquidMl) as [Agent, Quantity][])
    byAgent[agent] = agentCost(r, prices.ofAgent(agent), liquidMl);
  return {
    byAgent,
    agents: r.apply(agentsCost, { amounts: Object.values(byAgent).map(({ cost }) => cost) }),
    gases: r.apply(costOfGases, {
      oxygenM3: used.oxygenM3,
      oxygenPerM3: prices.oxygenPerM3,
      airM3: used.airM3,
      airPerM3: prices.airPerM3,
      nitrousOxideKg: used.nitrousOxideKg,
      nitrousOxideLostKg:
        used.nitrousOxideLostKg ?? r.assumption(0, 'kg', 'Losses of the piped supply are not counted here.'),
      nitrousOxidePerKg: prices.nitrousOxidePerKg
    }),
    absorbent: costOfAbsorbents(r, prices, used.absorbentKg),
    drugs: prices.ofTechniques(used.techniques)
  };
}

/** Cost of absorbents, by id. */
export const costOfAbsorbents = (
  r: Reckoner,
  prices: ConsumablePrices,
  absorbentKg: ConsumableAmounts['absorbentKg']
): Quantity<Decimal> =>
  r.apply(absorbentsCost, {
    amounts: Object.entries(absorbentKg).map(([id, massKg]) =>
      r.apply(costOfAbsorbent, { absorbentKg: massKg, pricePerKg: prices.absorbentPerKg(id) })
    )
  });

function agentCost(
  r: Reckoner,
  { bottleMl, unusablePercent, pricePerMl }: AgentPrice,
  liquidMl: Quantity
): AgentCost {
  return {
    bottles: r.apply(bottles, { liquidMl, bottleMl, unusablePercent }),
    cost: r.apply(costOfAgent, { liquidMl, pricePerMl })
  };
}

/** Cost of what one case uses up: agents, gases, absorbent, and drugs with their material. Same errors as `costConsumables`. */
export function costOfCase(
  r: Reckoner,
  prices: ConsumablePrices,
  used: ConsumableAmounts
): Quantity<Decimal> {
  const { agents, gases, absorbent, drugs } = costConsumables(r, prices, used);
  return r.apply(caseCost, { amounts: [agents, gases, absorbent, drugs] });
}
