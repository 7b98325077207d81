/**
 * What is used up, priced: agents, gases and absorbent, of a year or of one case. A quantity is priced as it is used;
 * what stays in the bottle is in the price of a usable millilitre.
 */
import type { Agent, EstimateInput } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { MoneyInputError } from './money-input-error.ts';
import { sumCalled } from './sum-of-amounts.ts';

const agentsCost = sumCalled('money.agents-cost', 'Cost of agents');
const absorbentsCost = sumCalled('money.absorbents-cost', 'Cost of absorbent');
const caseCost = sumCalled('money.case-cost', 'Cost of agent, gases and absorbent of a case');

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
}

/** The cells with prices that consumables need. */
export type Supplies = Pick<EstimateInput, 'agents' | 'gases' | 'absorbents'>;

export const pricePerUsableMl = formula<
  { bottlePrice: Decimal; bottleMl: number; unusablePercent: number },
  Decimal
>({
  id: 'money.price-per-usable-ml',
  yields: 'Price of a usable millilitre of agent',
  words: 'The price of a bottle over what can be used of it: what stays behind in it is paid for as well.',
  expression: 'p / (B * (1 - u / 100))',
  inputs: {
    bottlePrice: { symbol: 'p', unit: 'currency', words: 'price of a bottle' },
    bottleMl: { symbol: 'B', unit: 'mL', words: 'content of a bottle' },
    unusablePercent: { symbol: 'u', unit: '%', words: 'share of a bottle that cannot be used' }
  },
  unit: 'currency/mL',
  source: 'definition',
  compute: ({ bottlePrice, bottleMl, unusablePercent }) =>
    bottlePrice.div(new Decimal(1).minus(new Decimal(unusablePercent).div(100)).times(bottleMl))
});

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
 * @throws MoneyInputError where an agent or an absorbent is used that has no price, or nothing of a bottle is usable.
 */
export function costConsumables(r: Reckoner, supplies: Supplies, used: ConsumableAmounts): ConsumablesCost {
  const byAgent: Partial<Record<Agent, AgentCost>> = {};
  for (const [agent, liquidMl] of Object.entries(used.liquidMl) as [Agent, Quantity][])
    byAgent[agent] = agentCost(r, supplies, agent, liquidMl);
  const { gases } = supplies;
  return {
    byAgent,
    agents: r.apply(agentsCost, { amounts: Object.values(byAgent).map(({ cost }) => cost) }),
    gases: r.apply(costOfGases, {
      oxygenM3: used.oxygenM3,
      oxygenPerM3: r.cell(amount(gases.oxygenPerM3), 'currency/m3', 'gases', 'oxygenPerM3'),
      airM3: used.airM3,
      airPerM3: r.cell(amount(gases.airPerM3), 'currency/m3', 'gases', 'airPerM3'),
      nitrousOxideKg: used.nitrousOxideKg,
      nitrousOxideLostKg:
        used.nitrousOxideLostKg ?? r.assumption(0, 'kg', 'Losses of the piped supply are not counted here.'),
      nitrousOxidePerKg: r.cell(amount(gases.nitrousOxidePerKg), 'currency/kg', 'gases', 'nitrousOxidePerKg')
    }),
    absorbent: r.apply(absorbentsCost, {
      amounts: Object.entries(used.absorbentKg).map(([id, kg]) => absorbentCost(r, supplies, id, kg))
    })
  };
}

function agentCost(r: Reckoner, supplies: Supplies, agent: Agent, liquidMl: Quantity): AgentCost {
  const supply = supplies.agents.find((entry) => entry.agent === agent);
  if (supply === undefined)
    throw new MoneyInputError(
      `agents.${agent}`,
      `No bottle of ${agent} is priced, though cases use it: add one to Prices.`
    );
  if (!(supply.bottleMl > 0))
    throw new MoneyInputError(
      `agents.${agent}.bottleMl`,
      `A bottle of ${supply.bottleMl} mL of ${agent}: it must hold more than 0 mL.`
    );
  if (!(supply.unusablePercent >= 0 && supply.unusablePercent < 100))
    throw new MoneyInputError(
      `agents.${agent}.unusablePercent`,
      `${supply.unusablePercent} % of a bottle of ${agent} cannot be used: 0 % to less than 100 % is allowed.`
    );
  const bottleMl = r.cell(supply.bottleMl, 'mL', 'agents', agent, 'bottleMl');
  const unusablePercent = r.cell(supply.unusablePercent, '%', 'agents', agent, 'unusablePercent');
  const bottlePrice = r.cell(amount(supply.bottlePrice), 'currency', 'agents', agent, 'bottlePrice');
  const pricePerMl = r.apply(pricePerUsableMl, { bottlePrice, bottleMl, unusablePercent });
  return {
    bottles: r.apply(bottles, { liquidMl, bottleMl, unusablePercent }),
    cost: r.apply(costOfAgent, { liquidMl, pricePerMl })
  };
}

function absorbentCost(
  r: Reckoner,
  supplies: Supplies,
  id: string,
  absorbentKg: Quantity
): Quantity<Decimal> {
  const absorbent = supplies.absorbents.find((entry) => entry.id === id);
  if (absorbent === undefined)
    throw new MoneyInputError(
      `absorbents.${id}`,
      `No absorbent “${id}” is priced, though a machine uses it.`
    );
  return r.apply(costOfAbsorbent, {
    absorbentKg,
    pricePerKg: r.cell(amount(absorbent.pricePerKg), 'currency/kg', 'absorbents', id, 'pricePerKg')
  });
}

/** Cost of what one case uses up: agents, gases and absorbent. Same errors as `costConsumables`. */
export function costOfCase(r: Reckoner, supplies: Supplies, used: ConsumableAmounts): Quantity<Decimal> {
  const { agents, gases, absorbent } = costConsumables(r, supplies, used);
  return r.apply(caseCost, { amounts: [agents, gases, absorbent] });
}
