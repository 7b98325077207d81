/** What a millilitre, a cubic metre or a kilogram of each consumable costs. */
import type { Agent, EstimateInput } from '../input.ts';
import { kept } from '../working/kept.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { MoneyInputError } from './money-input-error.ts';
import type { TechniqueUse } from './technique-cost.ts';
import { techniquePrices } from './technique-cost.ts';

/** A bottle of an agent and what can be used of it. */
export interface AgentPrice {
  readonly bottleMl: Quantity;
  readonly unusablePercent: Quantity;
  readonly pricePerMl: Quantity<Decimal>;
}

/** Made once for an estimate: all cases and all scenarios are priced by it. */
export interface ConsumablePrices {
  readonly ofAgent: (agent: Agent) => AgentPrice;
  readonly absorbentPerKg: (id: string) => Quantity<Decimal>;
  readonly oxygenPerM3: Quantity<Decimal>;
  readonly airPerM3: Quantity<Decimal>;
  readonly nitrousOxidePerKg: Quantity<Decimal>;
  readonly ofTechniques: (use: TechniqueUse) => Quantity<Decimal>;
}

/** The cells with prices of consumables. */
export type Supplies = Pick<EstimateInput, 'agents' | 'gases' | 'absorbents' | 'intravenous' | 'regional'>;

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

/**
 * Prices by their cells.
 * @throws MoneyInputError, when it is asked for, where an agent or an absorbent has no price, or nothing of a bottle is
 *   usable.
 */
export function consumablePrices(r: Reckoner, supplies: Supplies): ConsumablePrices {
  const { gases } = supplies;
  return {
    ofAgent: kept((agent) => agentPrice(r, supplies, agent)),
    absorbentPerKg: kept((id) => absorbentPrice(r, supplies, id)),
    oxygenPerM3: r.cell(amount(gases.oxygenPerM3), 'currency/m3', 'gases', 'oxygenPerM3'),
    airPerM3: r.cell(amount(gases.airPerM3), 'currency/m3', 'gases', 'airPerM3'),
    nitrousOxidePerKg: r.cell(amount(gases.nitrousOxidePerKg), 'currency/kg', 'gases', 'nitrousOxidePerKg'),
    ofTechniques: techniquePrices(r, supplies)
  };
}

function agentPrice(r: Reckoner, supplies: Supplies, agent: Agent): AgentPrice {
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
  return {
    bottleMl,
    unusablePercent,
    pricePerMl: r.apply(pricePerUsableMl, { bottlePrice, bottleMl, unusablePercent })
  };
}

function absorbentPrice(r: Reckoner, { absorbents }: Supplies, id: string): Quantity<Decimal> {
  const absorbent = absorbents.find((entry) => entry.id === id);
  if (absorbent === undefined)
    throw new MoneyInputError(
      `absorbents.${id}`,
      `No absorbent “${id}” is priced, though a machine uses it.`
    );
  return r.cell(amount(absorbent.pricePerKg), 'currency/kg', 'absorbents', id, 'pricePerKg');
}
