/** What a managed service is paid for: its fee, split into machine, service, consumables and growth. */
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';

/** Parts of a year's fee, which add up to it. */
export interface PartsOfFee {
  /** What is left for the machine; below 0 where the fee does not even cover what it includes. */
  readonly machine: Quantity<Decimal>;
  readonly service: Quantity<Decimal>;
  readonly consumables: Quantity<Decimal>;
  /** By how much the fee has grown since the first year. */
  readonly growth: Quantity<Decimal>;
}

export const machinePartOfFee = formula<
  { firstFee: Decimal; service: Decimal; consumables: Decimal },
  Decimal
>({
  id: 'money.machine-part-of-fee',
  yields: 'What the fee leaves for the machine',
  words:
    'The fee of the first year, less what the service and the consumables in it would cost by themselves.',
  expression: 'f - s - c',
  inputs: {
    firstFee: { symbol: 'f', unit: 'currency', words: 'fee of the first year' },
    service: { symbol: 's', unit: 'currency', words: 'service that is included, at its own price' },
    consumables: { symbol: 'c', unit: 'currency', words: 'consumables that are included, at their own price' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ firstFee, service, consumables }) => firstFee.minus(service).minus(consumables)
});

export const growthOfFee = formula<{ fee: Decimal; firstFee: Decimal }, Decimal>({
  id: 'money.growth-of-fee',
  yields: 'Growth of the fee since the first year',
  words: 'The fee of this year less that of the first.',
  expression: 'f_t - f',
  inputs: {
    fee: { symbol: 'f_t', unit: 'currency', words: 'fee of this year' },
    firstFee: { symbol: 'f', unit: 'currency', words: 'fee of the first year' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ fee, firstFee }) => fee.minus(firstFee)
});

/**
 * The parts of a year's fee. `service` and `consumables` are what the fee includes of them at their own price of today,
 * 0 where it does not include them.
 */
export function partsOfFee(
  r: Reckoner,
  {
    fee,
    firstFee,
    service,
    consumables
  }: {
    fee: Quantity<Decimal>;
    firstFee: Quantity<Decimal>;
    service: Quantity<Decimal>;
    consumables: Quantity<Decimal>;
  }
): PartsOfFee {
  return {
    machine: r.apply(machinePartOfFee, { firstFee, service, consumables }),
    service,
    consumables,
    growth: r.apply(growthOfFee, { fee, firstFee })
  };
}
