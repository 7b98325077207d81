/**
 * The ledger of one scenario's year at today's prices: eight lines of cash and their sum, and beside it
 * two lines that nobody is billed for.
 */
import type { CashLine, CostLine, ShadowLine } from '../estimate-types.ts';
import type { Serviced } from '../fleet/standing.ts';
import type { Agent, EstimateInput, Scenario } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { costConsumables } from './consumables.ts';
import type { ConsumablePrices } from './consumable-prices.ts';
import type { AgentCost, ConsumableAmounts } from './consumables.ts';
import { Decimal, amount } from './decimal.ts';
import { addUp, sumOfAmounts } from './sum-of-amounts.ts';

export const cashLineNames = [
  'agents',
  'gases',
  'absorbent',
  'drugs',
  'capture',
  'service',
  'electricity',
  'other'
] as const satisfies readonly CashLine[];

export const shadowLineNames = ['carbon', 'recovery'] as const satisfies readonly ShadowLine[];

export const costLineNames = [...cashLineNames, ...shadowLineNames] as const satisfies readonly CostLine[];

/** What one scenario's year uses up, adoption applied. */
export interface YearlyAmounts extends ConsumableAmounts {
  readonly electricityKWh: Quantity;
  /** All emissions of the year, kg CO2e. */
  readonly co2eKg: Quantity;
  /** Recovery-room minutes that the scenario saves in the year; 0 for today's practice. */
  readonly recoveryMinutes: Quantity;
  /** What capture costs. */
  readonly capture: Quantity<Decimal>;
}

export interface YearlyCost {
  readonly byAgent: Readonly<Partial<Record<Agent, AgentCost>>>;
  readonly lines: Readonly<Record<CostLine, Quantity<Decimal>>>;
  /** Cash: without carbon and recovery. */
  readonly total: Quantity<Decimal>;
}

export const costOfService = formula<{ units: number; servicePerUnit: Decimal }, Decimal>({
  id: 'money.cost-of-service',
  yields: 'Cost of service in a year',
  words: 'Machines, times the yearly service of one.',
  expression: 'n * p',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'machines' },
    servicePerUnit: { symbol: 'p', unit: 'currency', words: 'yearly service of one machine' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, servicePerUnit }) => servicePerUnit.times(units)
});

function serviceOf(r: Reckoner, serviced: readonly Serviced[]): Quantity<Decimal> {
  const paidFor = serviced.filter(({ payment }) => payment?.includesService !== true);
  const amounts = paidFor.map(({ machine, units }) =>
    r.apply(costOfService, {
      units,
      servicePerUnit: r.cell(
        amount(machine.servicePerUnitPerYear),
        'currency',
        'machines',
        machine.id,
        'servicePerUnitPerYear'
      )
    })
  );
  const [only] = amounts;
  return amounts.length === 1 && only !== undefined ? only : r.apply(sumOfAmounts, { amounts });
}

export const costOfElectricity = formula<{ electricityKWh: number; pricePerKWh: Decimal }, Decimal>({
  id: 'money.cost-of-electricity',
  yields: 'Cost of electricity in a year',
  words: 'Electricity used, times its price.',
  expression: 'E * p',
  inputs: {
    electricityKWh: { symbol: 'E', unit: 'kWh', words: 'electricity used' },
    pricePerKWh: { symbol: 'p', unit: 'currency/kWh', words: 'price of electricity' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ electricityKWh, pricePerKWh }) => pricePerKWh.times(electricityKWh)
});

export const costOfCarbon = formula<{ co2eKg: number; pricePerTonne: Decimal }, Decimal>({
  id: 'money.cost-of-carbon',
  yields: 'Shadow cost of emissions in a year',
  words:
    'Emissions in tonnes, times the price put on a tonne. Nobody is billed for it, so it is in no total of cash.',
  expression: 'm / 1000 * p',
  inputs: {
    co2eKg: { symbol: 'm', unit: 'kg CO2e', words: 'emissions' },
    pricePerTonne: { symbol: 'p', unit: 'currency/(tonne CO2e)', words: 'price put on a tonne of CO2e' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ co2eKg, pricePerTonne }) => pricePerTonne.times(co2eKg).div(1000)
});

export const valueOfRecovery = formula<{ minutes: number; valuePerMinute: Decimal }, Decimal>({
  id: 'money.value-of-recovery',
  yields: 'Value of recovery minutes saved, as a negative cost',
  words:
    'Minutes saved in the recovery room, times the value put on one. Minutes seldom turn into money: the evidence is weak.',
  expression: '-(t * p)',
  inputs: {
    minutes: { symbol: 't', unit: 'min', words: 'recovery minutes saved' },
    valuePerMinute: { symbol: 'p', unit: 'currency/min', words: 'value put on a minute' }
  },
  unit: 'currency',
  source: 'definition',
  // Taken from 0, so that no saving is 0 and not −0.
  compute: ({ minutes, valuePerMinute }) => new Decimal(0).minus(valuePerMinute.times(minutes))
});

export const yearlyCost = formula<Record<CashLine, Decimal>, Decimal>({
  id: 'money.yearly-cost',
  yields: 'Cost of a year',
  words: 'All lines of cash added up.',
  expression: 'a + g + b + d + c + s + e + o',
  inputs: {
    agents: { symbol: 'a', unit: 'currency', words: 'agents' },
    gases: { symbol: 'g', unit: 'currency', words: 'oxygen, air and nitrous oxide' },
    absorbent: { symbol: 'b', unit: 'currency', words: 'absorbent' },
    drugs: { symbol: 'd', unit: 'currency', words: 'intravenous and regional drugs and material' },
    capture: { symbol: 'c', unit: 'currency', words: 'capture of agent' },
    service: { symbol: 's', unit: 'currency', words: 'service' },
    electricity: { symbol: 'e', unit: 'currency', words: 'electricity' },
    other: { symbol: 'o', unit: 'currency', words: 'other yearly cost' }
  },
  unit: 'currency',
  source: 'definition',
  compute: (lines) => addUp(cashLineNames.map((line) => lines[line]))
});

/**
 * The ledger of one scenario's year.
 *
 * Lines are positive where they cost; `recovery` is zero or negative. Prices are those of today; growth is applied in
 * the cash flow. Service is for every machine that stands, spares and those of today that stay among them, but for those
 * whose payment includes it.
 *
 * @param serviced the machines of the year
 * @throws MoneyInputError as `costConsumables`.
 */
export function costLines(
  r: Reckoner,
  {
    prices,
    cells,
    scenario,
    serviced,
    used
  }: {
    prices: ConsumablePrices;
    cells: Pick<EstimateInput, 'site' | 'accounting'>;
    scenario: Scenario;
    serviced: readonly Serviced[];
    used: YearlyAmounts;
  }
): YearlyCost {
  const { byAgent, agents, gases, absorbent, drugs } = costConsumables(r, prices, used);
  const { site, accounting } = cells;
  const cash: Record<CashLine, Quantity<Decimal>> = {
    agents,
    gases,
    absorbent,
    drugs,
    capture: used.capture,
    service: serviceOf(r, serviced),
    electricity: r.apply(costOfElectricity, {
      electricityKWh: used.electricityKWh,
      pricePerKWh: r.cell(
        amount(site.electricityPricePerKWh),
        'currency/kWh',
        'site',
        'electricityPricePerKWh'
      )
    }),
    other: r.cell(amount(scenario.yearlyExtraCost), 'currency', 'scenarios', scenario.id, 'yearlyExtraCost')
  };
  const shadow: Record<ShadowLine, Quantity<Decimal>> = {
    carbon: r.apply(costOfCarbon, {
      co2eKg: used.co2eKg,
      pricePerTonne: r.cell(
        amount(accounting.carbonPricePerTonne),
        'currency/(tonne CO2e)',
        'accounting',
        'carbonPricePerTonne'
      )
    }),
    recovery: r.apply(valueOfRecovery, {
      minutes: used.recoveryMinutes,
      valuePerMinute: r.cell(
        amount(accounting.recoveryMinuteValue),
        'currency/min',
        'accounting',
        'recoveryMinuteValue'
      )
    })
  };
  return { byAgent, lines: { ...cash, ...shadow }, total: r.apply(yearlyCost, cash) };
}
