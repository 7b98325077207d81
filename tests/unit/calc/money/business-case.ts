/** Small business cases for tests: everything given by hand, nothing of anaesthesia. */
import type { Accounting, EstimateInput, Machine, Scenario } from '#lib/calc/input.ts';
import { benefitCostRatio } from '#lib/calc/money/benefit-cost-ratio.ts';
import { cashFlow } from '#lib/calc/money/cash-flow.ts';
import type { Side } from '#lib/calc/money/cash-flow.ts';
import { costLines } from '#lib/calc/money/cost-lines.ts';
import type { YearlyAmounts } from '#lib/calc/money/cost-lines.ts';
import { consumablePrices } from '#lib/calc/money/consumable-prices.ts';
import type { Supplies } from '#lib/calc/money/consumable-prices.ts';
import { costOfOwnership, costOfToday } from '#lib/calc/money/cost-of-ownership.ts';
import { avoidedOverAppraisal, costPerTonneAvoided } from '#lib/calc/money/cost-per-tonne.ts';
import { Decimal, text } from '#lib/calc/money/decimal.ts';
import { internalRates } from '#lib/calc/money/internal-rate.ts';
import type { Arrival } from '#lib/calc/fleet/standing.ts';
import { investment } from '#lib/calc/money/investment.ts';
import { kept } from '#lib/calc/working/kept.ts';
import type { YearlyCost } from '#lib/calc/money/cost-lines.ts';
import { netPresentValue } from '#lib/calc/money/net-present-value.ts';
import type { PaybackYear } from '#lib/calc/money/payback.ts';
import { aheadForATime, payback } from '#lib/calc/money/payback.ts';
import { socialView } from '#lib/calc/money/shadow-money.ts';
import { discountedFlows, sumsUpToYears } from '#lib/calc/money/sums-over-years.ts';
import { timeFactors } from '#lib/calc/money/time-factors.ts';
import { plain } from '#lib/calc/working/plain.ts';
import type { Quantity, Reckoner } from '#lib/calc/working/reckoner.ts';
import { unpricedTechniques } from '#lib/workbook/unpriced-techniques.ts';

export const accounting: Accounting = {
  warmingSet: 'AR6',
  warmingHorizonYears: 100,
  customWarming: {},
  discountRatePercent: 3.5,
  appraisalYears: 10,
  paybackLimitYears: 5,
  carbonPricePerTonne: '0',
  agentGrowthPercent: 0,
  serviceGrowthPercent: 0,
  carbonGrowthPercent: 0,
  recoveryMinuteValue: '0',
  bodyModel: 'eger',
  macSet: 'mapleson',
  solubilityGroup: 'of-the-set',
  residualValue: 'none',
  counterfactual: 'machines-last',
  capitalChargePercent: 0,
  taxPercent: 0
};

/** A machine, and how many of it stand or come. */
export type Counted = Machine & { readonly units: number };
/** A scenario, and how many machines come in each year; null: all now. */
export type Phased = Scenario & { readonly unitsByYear: readonly number[] | null };

export const machine: Counted = {
  id: 'new',
  name: 'New',
  kind: 'closed-circuit',
  circuitVolumeL: null,
  leakMlPerMin: 0,
  sampleMlPerMin: 0,
  sampleReturned: true,
  minimumFlowLPerMin: 0.25,
  canFlowAsNeeded: false,
  spillShareInspiredFraction: null,
  powerW: null,
  units: 4,
  unitPrice: '48000.00',
  tradeInPerUnit: '2000.00',
  installationPerUnit: '1500.00',
  servicePerUnitPerYear: '1800.00',
  lifeYears: 10,
  manufactureKgCo2ePerUnit: null,
  absorbent: 'soda-lime',
  monitors: []
};

export const scenario: Phased = {
  id: 'buy',
  name: 'Buy',
  baseline: false,
  moves: [],
  plans: { new: 'low' },
  spares: 0,
  adoptionFirstYearsPercent: null,
  flowPlanByCase: {},
  agentSwitch: {},
  intravenousPercentByCase: {},
  regionalPercentByCase: {},
  adoptionPercent: 100,
  adoptionWithoutMachinePercent: null,
  capturePercent: 0,
  caughtLostPercent: null,
  caughtBecomes: 'not-known',
  captureDevicePrice: '0',
  captureFeePerYear: '0',
  canisterPrice: '0',
  canisterHoldsG: null,
  scavengingPumpHoursPerWeek: null,
  nitrousOxideSupply: 'as-today',
  nitrousOxideSupplyYear: 0,
  nitrousOxideLossPercent: 2,
  nitrousOxideSupplyCost: '0',
  oneOffCost: '0',
  yearlyExtraCost: '0',
  extraCostLever: 'flow',
  recoveryMinutesSavedPerCase: 0,
  unitsByYear: null,
  machinesStay: false,
  avoidedPurchases: []
};

export const site: EstimateInput['site'] = {
  theatreTemperatureC: 20,
  ambientPressureKPa: 101.325,
  monitoringStandard: 'asa',
  facilityLevel: null,
  jurisdiction: null,
  lawfulAgentInstead: null,
  lawfulSharePercent: 100,
  electricityMarketKgCo2ePerKWh: null,
  medicalAirKWhPerM3: null,
  consumablesKgCo2ePerCase: null,
  baseYear: null,
  casesKnownBy: null,
  durationsKnownBy: null,
  bottlesKnownBy: null,
  nitrousOxideKnownBy: null,
  electricityKnownBy: null,
  airLimitsOf: null,
  recoveryRoomVolumeM3: null,
  recoveryAirChangesPerH: null,
  recoveryHoursPerYear: null,
  recoveryGivenOffPercent: 100,
  electricityPricePerKWh: '0.25',
  electricityKgCo2ePerKWh: 0.3,
  departmentFootprintTonnes: null
};

/** The cells with prices. */
type Prices = Supplies & Pick<EstimateInput, 'site' | 'accounting'>;

export const prices: Prices = {
  site,
  accounting,
  agents: [
    {
      agent: 'sevoflurane',
      bottleMl: 250,
      bottlePrice: '118.00',
      unusablePercent: 1,
      bottlesBoughtPerYear: null,
      bottlesUsedElsewherePerYear: null,
      scaleToPurchases: false,
      manufactureKgCo2ePerKg: null
    },
    {
      agent: 'desflurane',
      bottleMl: 240,
      bottlePrice: '96.50',
      unusablePercent: 0,
      bottlesBoughtPerYear: null,
      bottlesUsedElsewherePerYear: null,
      scaleToPurchases: false,
      manufactureKgCo2ePerKg: null
    }
  ],
  ...unpricedTechniques,
  gases: {
    oxygenPerM3: '0.90',
    airPerM3: '0.05',
    nitrousOxidePerKg: '4.00',
    nitrousOxideBoughtKgPerYear: null
  },
  absorbents: [
    { id: 'soda-lime', name: 'Soda lime', capacityLPerKg: 120, pricePerKg: '9.00', kgCo2ePerKg: null },
    { id: 'other', name: 'Other', capacityLPerKg: 100, pricePerKg: '11.00', kgCo2ePerKg: null }
  ]
};

/** Bare amounts of a year; what is left out is 0. */
export interface BareAmounts {
  sevofluraneMl?: number;
  desfluraneMl?: number;
  oxygenM3?: number;
  airM3?: number;
  nitrousOxideKg?: number;
  nitrousOxideLostKg?: number;
  sodaLimeKg?: number;
  electricityKWh?: number;
  co2eKg?: number;
  recoveryMinutes?: number;
  intravenousCases?: number;
  intravenousH?: number;
  propofolDrawnUpG?: number;
  eegSensors?: number;
  regionalCases?: number;
  /** Money. */
  captureCost?: string;
}

export function amountsOf(r: Reckoner, bare: BareAmounts): YearlyAmounts {
  const given = (value: number | undefined, unit: string): Quantity =>
    r.assumption(value ?? 0, unit, 'Given by the test.');
  return {
    liquidMl: { sevoflurane: given(bare.sevofluraneMl, 'mL'), desflurane: given(bare.desfluraneMl, 'mL') },
    oxygenM3: given(bare.oxygenM3, 'm3'),
    airM3: given(bare.airM3, 'm3'),
    nitrousOxideKg: given(bare.nitrousOxideKg, 'kg'),
    nitrousOxideLostKg: given(bare.nitrousOxideLostKg, 'kg'),
    absorbentKg: { 'soda-lime': given(bare.sodaLimeKg, 'kg') },
    electricityKWh: given(bare.electricityKWh, 'kWh'),
    co2eKg: given(bare.co2eKg, 'kg CO2e'),
    recoveryMinutes: given(bare.recoveryMinutes, 'min'),
    capture: r.assumption(new Decimal(bare.captureCost ?? '0'), 'currency', 'Given by the test.'),
    techniques: {
      intravenousCases: given(bare.intravenousCases, '1'),
      intravenousH: given(bare.intravenousH, 'h'),
      propofolDrawnUpG: given(bare.propofolDrawnUpG, 'g'),
      eegSensors: given(bare.eegSensors, '1'),
      regionalCases: given(bare.regionalCases, '1')
    }
  };
}

/** What a business case is made from. */
export interface Case {
  prices: Prices;
  accounting: Accounting;
  today: { scenario: Phased; machine: Counted; used: BareAmounts; monitors: string };
  then: { scenario: Phased; machine: Counted; used: BareAmounts; monitors: string };
}

/** Amounts on the way from some to others: all of those at a share of 1. */
const between = (from: BareAmounts, to: BareAmounts, share: number): BareAmounts =>
  share === 1
    ? to
    : Object.fromEntries(
        [...new Set([...Object.keys(from), ...Object.keys(to)])].map((name) => {
          const [before, after] = [from, to].map((bare) => bare[name as keyof BareAmounts] ?? 0);
          if (typeof before === 'number' && typeof after === 'number')
            return [name, before + share * (after - before)];
          // Money, which a fraction in binary would round.
          const [had, has] = [new Decimal(before ?? 0), new Decimal(after ?? 0)];
          return [name, text(had.plus(has.minus(had).times(share)))];
        })
      );

/** All figures of the case; emissions avoided are what today's practice emits beyond the scenario. */
export function appraiseCase(r: Reckoner, given: Case) {
  const boughtOf = (which: 'today' | 'then'): Arrival[] => {
    const { scenario: of, machine: on } = given[which];
    if (on.id === given.today.machine.id) return [];
    return (of.unitsByYear ?? [on.units]).flatMap((units, year) => {
      const coming = r.assumption(units, '1', 'Given by the test.');
      return units > 0 ? [{ year, machine: on, units: coming, tradedIn: coming, move: null }] : [];
    });
  };
  /** Share of the machines that have come before a year, of those that come in all. */
  const shareIn = (which: 'today' | 'then', year: number): number => {
    const bought = boughtOf(which);
    const units = (of: readonly Arrival[]): number => of.reduce((sum, each) => sum + r.value(each.units), 0);
    return units(bought) === 0 ? 1 : units(bought.filter((each) => each.year < year)) / units(bought);
  };
  const side = (which: 'today' | 'then'): Side => {
    const { scenario: of, machine: on, monitors } = given[which];
    const costAt = kept((share: number): YearlyCost => {
      const standing = (machine: Counted, of: number) => ({
        machine,
        payment: null,
        units: r.assumption(machine.units * of, '1', 'Given by the test.')
      });
      return costLines(r, {
        prices: consumablePrices(r, given.prices),
        cells: { site: given.prices.site, accounting: given.accounting },
        scenario: of,
        serviced: [standing(on, share), ...(share === 1 ? [] : [standing(given.today.machine, 1 - share)])],
        used: amountsOf(r, between(given.today.used, given[which].used, share))
      });
    });
    return {
      cost: costAt(1),
      costIn: (year) => costAt(shareIn(which, year)),
      investment: investment(r, {
        scenario: of,
        arrivals: boughtOf(which),
        renewals: [],
        monitors: [{ year: 0, cost: r.assumption(new Decimal(monitors), 'currency', 'Given by the test.') }],
        theatres: () => r.assumption(4, '1', 'Given by the test.'),
        accounting: given.accounting
      })
    };
  };
  const [baseline, then] = [side('today'), side('then')];
  const factors = timeFactors(r, given.accounting);
  const flow = cashFlow(r, { baseline, scenario: then, factors });
  const npv = netPresentValue(
    r,
    flow.years.map(({ discounted }) => discounted)
  );
  const years = factors.slice(1).map(({ year }) => year);
  const avoidedKg = (given.today.used.co2eKg ?? 0) - (given.then.used.co2eKg ?? 0);
  return {
    bottles: Object.values(then.cost.byAgent).map(({ bottles }) => bottles),
    flow,
    netPresentValue: npv,
    simplePayback: payback(r, flow.forPayback()),
    discountedPayback: payback(r, flow.forDiscountedPayback()),
    ahead: aheadForATime(r, flow.forPayback()),
    internalRates: internalRates(
      r,
      flow.years.map(({ net }) => net)
    ),
    ownership: costOfOwnership(r, { today: costOfToday(r, { baseline, factors }), flow, factors }),
    benefitCostRatio: benefitCostRatio(r, { flow, factors }),
    costPerTonneAvoided: costPerTonneAvoided(r, {
      netPresentValue: npv,
      avoidedKg: avoidedOverAppraisal(
        r,
        years.map((year) => ({
          avoidedKg: r.assumption(avoidedKg * shareIn('then', year), 'kg CO2e', 'Given by the test.'),
          years: r.assumption(1, '1', 'Given by the test.')
        }))
      )
    }),
    shadow: socialView(r, { flow, npv, factors })
  };
}

/** An amount that a test gives. */
export const moneyOf = (decimal: string | number): Quantity<Decimal> =>
  plain.assumption(new Decimal(decimal), 'currency', 'Given by the test.');
/** Amounts as decimal texts. */
export const textsOf = (list: readonly Quantity<Decimal>[]): string[] =>
  list.map((one) => text(plain.value(one)));

/** What comes in evenly over each year, and what is paid (below 0: comes in) at its end: as payback takes them. */
export function paybackYearsOf(
  r: Reckoner,
  years: readonly (readonly [evenly: number | string, paid: number | string])[]
): PaybackYear[] {
  const given = (amount: Decimal) => r.assumption(amount, 'currency', 'Given by the test.');
  let sum = new Decimal(0);
  return years.map(([evenly, paid]) => {
    sum = sum.plus(evenly).minus(paid);
    return { sum: given(sum), evenly: given(new Decimal(evenly)) };
  });
}

/** Any yearly flows at a discount rate, as the figures are made from them. */
export function sumsOf(
  r: Reckoner,
  { flows, ratePercent }: { flows: readonly (number | string)[]; ratePercent: number }
) {
  const given = flows.map((flow) => r.assumption(new Decimal(flow), 'currency', 'Given by the test.'));
  const factors = timeFactors(r, {
    ...accounting,
    discountRatePercent: ratePercent,
    appraisalYears: flows.length - 1
  });
  const discounted = discountedFlows(r, { flows: given, factors });
  return {
    flows: given,
    factors,
    discounted,
    cumulative: sumsUpToYears(r, given),
    cumulativeDiscounted: sumsUpToYears(r, discounted),
    // All flows but that of year 0 taken to come in evenly.
    forPayback: evenYears(sumsUpToYears(r, given), given),
    forDiscountedPayback: evenYears(sumsUpToYears(r, discounted), discounted)
  };
}

const evenYears = (sums: readonly Quantity<Decimal>[], flows: readonly Quantity<Decimal>[]): PaybackYear[] =>
  sums.map((sum, year) => ({ sum, evenly: flows[year] as Quantity<Decimal> }));
