/**
 * What a scenario pays outside its yearly cost, year by year: machines, installation, one-off cost, monitors and
 * replacements, less trade-in, purchases avoided and what the machines are worth at the end.
 */
import type { Arrival, Renewal } from '../fleet/standing.ts';
import type { Accounting, Machine, Scenario } from '../input.ts';
import { formula } from '../working/formula.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { Decimal, amount } from './decimal.ts';
import { MoneyInputError } from './money-input-error.ts';
import type { CapitalItem } from './capital-account.ts';
import { paymentPlan } from './payments.ts';
import { addUp, less, sumOfAmounts } from './sum-of-amounts.ts';

export const outlayKinds = [
  'purchase',
  'installation',
  'tradeIn',
  'oneOff',
  'monitors',
  'avoided',
  'replacement',
  'payments',
  'residual'
] as const;
export type OutlayKind = (typeof outlayKinds)[number];

/** One year's outlay by kind, each as a positive amount; `tradeIn`, `avoided` and `residual` are taken off. */
export interface Outlay {
  readonly year: number;
  readonly kinds: Readonly<Record<OutlayKind, Quantity<Decimal>>>;
  readonly total: Quantity<Decimal>;
}

export interface Investment {
  /** Year 0 first, up to the end of the appraisal. */
  readonly outlays: readonly Outlay[];
  /** All of it but replacements, payments for use and residual value, undiscounted: what the decision itself costs. */
  readonly initial: Quantity<Decimal>;
  /** Machines bought and bought again, each with the life over which it is written off. */
  readonly capital: readonly CapitalItem[];
}

export const purchaseOfUnits = formula<{ units: number; unitPrice: Decimal }, Decimal>({
  id: 'money.purchase-of-units',
  yields: 'Amount for units',
  words: 'Units, times the amount for one.',
  expression: 'n * p',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units' },
    unitPrice: { symbol: 'p', unit: 'currency', words: 'amount for one unit' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, unitPrice }) => unitPrice.times(units)
});

export const unitsDue = formula<{ units: number; due: number }>({
  id: 'money.units-due',
  yields: 'Units whose life ends in this year',
  words: 'Units that came together, where their life ends in this year, otherwise 0.',
  expression: 'n * d',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units that came together' },
    due: { symbol: 'd', unit: '1', words: 'whether they are due in this year' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ units, due }) => units * due
});

export const replacementOfUnits = formula<
  { units: readonly number[]; unitPrice: Decimal; installation: Decimal },
  Decimal
>({
  id: 'money.replacement-of-units',
  yields: 'Replacement of machines at the end of their life',
  words:
    'Units whose life ends in this year, times price and installation of a new one; nothing is traded in again.',
  expression: 'sum(n) * (p + q)',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units whose life ends in this year' },
    unitPrice: { symbol: 'p', unit: 'currency', words: 'price of a unit' },
    installation: { symbol: 'q', unit: 'currency', words: 'installation of a unit' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, unitPrice, installation }) =>
    unitPrice.plus(installation).times(units.reduce((sum, next) => sum.plus(next), new Decimal(0)))
});

export const ageAtEnd = formula<{ appraisalYears: number; boughtInYear: number }>({
  id: 'money.age-at-end',
  yields: 'Age at the end of the appraisal',
  words: 'Years from the purchase to the end of the appraisal.',
  expression: 'T - y',
  inputs: {
    appraisalYears: { symbol: 'T', unit: 'year', words: 'length of the appraisal' },
    boughtInYear: { symbol: 'y', unit: 'year', words: 'year of the purchase or of the last replacement' }
  },
  unit: 'year',
  source: 'definition',
  compute: ({ appraisalYears, boughtInYear }) => appraisalYears - boughtInYear
});

export const straightLineValue = formula<
  { units: number; unitPrice: Decimal; ageYears: number; lifeYears: number },
  Decimal
>({
  id: 'money.straight-line-value',
  yields: 'Worth of machines at the end of the appraisal',
  words: 'The price less straight-line wear over the life; installation is worth nothing afterwards.',
  expression: 'n * p * max(0, 1 - a / L)',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'units' },
    unitPrice: { symbol: 'p', unit: 'currency', words: 'price of a unit' },
    ageYears: { symbol: 'a', unit: 'year', words: 'age at the end of the appraisal' },
    lifeYears: { symbol: 'L', unit: 'year', words: 'life of a machine' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, unitPrice, ageYears, lifeYears }) =>
    unitPrice.times(units).times(Decimal.max(0, new Decimal(1).minus(new Decimal(ageYears).div(lifeYears))))
});

export const outlayOfYear = formula<Record<OutlayKind, Decimal>, Decimal>({
  id: 'money.outlay-of-year',
  yields: 'Outlay of the year',
  words: 'What is paid for machines and once only, less what comes back.',
  expression: 'p + q - t + o + m - v + r + u - w',
  inputs: {
    purchase: { symbol: 'p', unit: 'currency', words: 'machines bought' },
    installation: { symbol: 'q', unit: 'currency', words: 'installation' },
    tradeIn: { symbol: 't', unit: 'currency', words: 'trade-in of old machines' },
    oneOff: { symbol: 'o', unit: 'currency', words: 'training and other one-off cost' },
    monitors: { symbol: 'm', unit: 'currency', words: 'monitors that are required and lacking' },
    avoided: { symbol: 'v', unit: 'currency', words: 'purchases avoided' },
    replacement: { symbol: 'r', unit: 'currency', words: 'replacement at the end of life' },
    payments: { symbol: 'u', unit: 'currency', words: 'payments for machines that are not bought' },
    residual: { symbol: 'w', unit: 'currency', words: 'worth of the machines at the end' }
  },
  unit: 'currency',
  source: 'definition',
  compute: (k) =>
    less(
      addUp([k.purchase, k.installation, k.oneOff, k.monitors, k.replacement, k.payments]),
      addUp([k.tradeIn, k.avoided, k.residual])
    )
});

export const initialInvestment = formula<
  {
    outlays: readonly Decimal[];
    replacements: readonly Decimal[];
    payments: readonly Decimal[];
    residual: Decimal;
  },
  Decimal
>({
  id: 'money.initial-investment',
  yields: 'Investment',
  words:
    'All outlays of the appraisal, undiscounted, without replacements, payments for machines that are not bought, and the worth left at the end.',
  expression: 'sum(o) - sum(r) - sum(u) + w',
  inputs: {
    outlays: { symbol: 'o', unit: 'currency', words: 'outlays, year by year' },
    replacements: { symbol: 'r', unit: 'currency', words: 'replacements at the end of life' },
    payments: { symbol: 'u', unit: 'currency', words: 'payments for machines that are not bought' },
    residual: { symbol: 'w', unit: 'currency', words: 'worth of the machines at the end' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ outlays, replacements, payments, residual }) =>
    addUp([less(less(addUp(outlays), addUp(replacements)), addUp(payments)), residual])
});

export const renewalOfUnits = formula<{ units: number; unitPrice: Decimal; installation: Decimal }, Decimal>({
  id: 'money.renewal-of-units',
  yields: 'Today’s machines bought again at the end of their life',
  words: 'Machines of today that still stand then, times price and installation of a new one of their kind.',
  expression: 'n * (p + q)',
  inputs: {
    units: { symbol: 'n', unit: '1', words: 'machines of today that still stand' },
    unitPrice: { symbol: 'p', unit: 'currency', words: 'price of a unit' },
    installation: { symbol: 'q', unit: 'currency', words: 'installation of a unit' }
  },
  unit: 'currency',
  source: 'definition',
  compute: ({ units, unitPrice, installation }) => unitPrice.plus(installation).times(units)
});

/** What the monitors cost that become due in a year. */
export interface MonitorsOfYear {
  readonly year: number;
  readonly cost: Quantity<Decimal>;
}

/** Units of one kind that came together and are owned, which age together. */
interface Cohort {
  readonly units: Quantity;
  readonly boughtInYear: number;
  /** Years within the appraisal in which the life of the units in place ends and new ones are bought. */
  readonly replacedInYears: readonly number[];
}

/** A kind of machine with its prices, and the units of it that are owned. */
interface OwnedKind {
  readonly machine: Machine;
  readonly cohorts: readonly Cohort[];
}

/**
 * The outlays of one scenario, over the years 0 … `appraisalYears`.
 *
 * - Units bought in year t are paid at its end (year 0: at once) and save from year t + 1 on.
 * - Each unit that comes is installed, and for each theatre that gives up a machine of today's one is traded in.
 * - Units that are leased, or come with a managed service, are paid for as `paymentPlan` has it; those that are bought at
 *   the end of their term are owned from then on, and as old as they are.
 * - One-off cost and capture devices fall in year 0, that of another supply of nitrous oxide and `monitors` in their years.
 * - Units that are owned are replaced in the whole year nearest to each end of life before the end of the appraisal, price
 *   and installation again.
 * - `renewals`: machines of today that are bought again at the end of their life, likewise.
 * - `residualValue` straight-line: in the last year the price of the newest units less their wear comes back.
 * - Purchases avoided count in their (nearest whole) year; those after the end of the appraisal lie outside it.
 *
 * @throws MoneyInputError where the life of a machine is not above 0 years; as `paymentPlan`.
 */
export function investment(
  r: Reckoner,
  {
    scenario,
    arrivals,
    renewals,
    monitors,
    theatres,
    accounting
  }: {
    scenario: Scenario;
    /** All theatres: capture devices are bought for each. */
    theatres: () => Quantity;
    arrivals: readonly Arrival[];
    renewals: readonly Renewal[];
    monitors: readonly MonitorsOfYear[];
    accounting: Accounting;
  }
): Investment {
  const horizonYears = accounting.appraisalYears;
  const given = new Map<number, Map<OutlayKind, Quantity<Decimal>[]>>();
  const add = (year: number, kind: OutlayKind, paid: Quantity<Decimal>): void => {
    const ofYear = given.get(year) ?? new Map<OutlayKind, Quantity<Decimal>[]>();
    given.set(year, ofYear);
    ofYear.set(kind, [...(ofYear.get(kind) ?? []), paid]);
  };
  const times = (units: Quantity, unitPrice: Quantity<Decimal>): Quantity<Decimal> =>
    r.apply(purchaseOfUnits, { units, unitPrice });
  const capital: CapitalItem[] = [];
  const own = (year: number, machine: Machine, paid: Quantity<Decimal>): void => {
    if (!r.value(paid).isZero()) capital.push({ year, paid, lifeYears: lifeOf(r, machine) });
  };

  add(0, 'oneOff', r.cell(amount(scenario.oneOffCost), 'currency', 'scenarios', scenario.id, 'oneOffCost'));
  // The working has it in any case: a spreadsheet follows a price that is raised from 0.
  if (r.records || Number(scenario.captureDevicePrice) !== 0)
    add(
      0,
      'oneOff',
      times(
        theatres(),
        r.cell(
          amount(scenario.captureDevicePrice),
          'currency',
          'scenarios',
          scenario.id,
          'captureDevicePrice'
        )
      )
    );
  if (scenario.nitrousOxideSupply !== 'as-today' && scenario.nitrousOxideSupplyYear <= horizonYears)
    add(
      scenario.nitrousOxideSupplyYear,
      'oneOff',
      r.cell(
        amount(scenario.nitrousOxideSupplyCost),
        'currency',
        'scenarios',
        scenario.id,
        'nitrousOxideSupplyCost'
      )
    );
  for (const { year, cost } of monitors) if (year <= horizonYears) add(year, 'monitors', cost);
  const coming = arrivals.filter(({ year }) => year <= horizonYears);
  for (const { machine, year, units, tradedIn, move } of coming) {
    add(year, 'installation', times(units, priceOf(r, machine, 'installationPerUnit')));
    if (tradedIn !== null) add(year, 'tradeIn', times(tradedIn, priceOf(r, machine, 'tradeInPerUnit')));
    const terms = move?.terms.payment;
    if (move === null || terms === null || terms === undefined) {
      const paid = times(units, priceOf(r, machine, 'unitPrice'));
      add(year, 'purchase', paid);
      own(year, machine, paid);
      continue;
    }
    const path = ['scenarios', scenario.id, 'moves', String(move.index), 'payment'];
    const plan = paymentPlan(r, { units, terms, path, startYear: year, horizonYears });
    for (const { year: paidIn, payments, endPrice } of plan.years) {
      if (!r.value(payments).isZero()) add(paidIn, 'payments', payments);
      if (!r.value(endPrice).isZero()) add(paidIn, 'purchase', endPrice);
      own(paidIn, machine, endPrice);
    }
  }
  const kinds = ownedKinds(coming, horizonYears);
  const replace = (year: number, machine: Machine, paid: Quantity<Decimal>): void => {
    add(year, 'replacement', paid);
    own(year, machine, paid);
  };
  for (const kind of kinds) addReplacements(r, kind, { horizonYears, replace });
  for (const { year, machine, units } of renewals)
    replace(
      year,
      machine,
      r.apply(renewalOfUnits, {
        units,
        unitPrice: priceOf(r, machine, 'unitPrice'),
        installation: priceOf(r, machine, 'installationPerUnit')
      })
    );
  for (const year of new Set(scenario.avoidedPurchases.map((purchase) => Math.round(purchase.year))))
    add(year, 'avoided', avoidedInYear(r, scenario, year));
  if (accounting.residualValue === 'straight-line')
    for (const worth of worthAtEnd(r, { kinds, renewals, horizonYears }))
      add(horizonYears, 'residual', worth);

  const nothing = r.assumption(new Decimal(0), 'currency', 'Nothing of this kind falls in this year.');
  const inAll = (amounts: readonly Quantity<Decimal>[] = []): Quantity<Decimal> => {
    const [first] = amounts;
    if (first === undefined) return nothing;
    return amounts.length === 1 ? first : r.apply(sumOfAmounts, { amounts });
  };
  const emptyKinds = kindsWith(() => nothing);
  const outlays = Array.from({ length: horizonYears + 1 }, (_, year): Outlay => {
    const some = given.get(year);
    if (some === undefined) return { year, kinds: emptyKinds, total: nothing };
    const ofYear = kindsWith((kind) => inAll(some.get(kind)));
    return { year, kinds: ofYear, total: r.apply(outlayOfYear, ofYear) };
  });
  const paid = outlays.filter(({ year }) => given.has(year));
  return {
    outlays,
    capital,
    initial: r.apply(initialInvestment, {
      outlays: paid.map(({ total }) => total),
      replacements: paid.map(({ kinds: ofYear }) => ofYear.replacement),
      payments: paid.map(({ kinds: ofYear }) => ofYear.payments),
      residual: (outlays[horizonYears] as Outlay).kinds.residual
    })
  };
}

const priceOf = (
  r: Reckoner,
  machine: Machine,
  key: 'unitPrice' | 'installationPerUnit' | 'tradeInPerUnit'
): Quantity<Decimal> => r.cell(amount(machine[key]), 'currency', 'machines', machine.id, key);

const lifeOf = (r: Reckoner, { id, lifeYears }: Machine): Quantity =>
  r.cell(lifeYears, 'year', 'machines', id, 'lifeYears');

/** What comes and is owned at the end, by kind of machine. */
function ownedKinds(coming: readonly Arrival[], horizonYears: number): OwnedKind[] {
  const kinds = new Map<Machine, Cohort[]>();
  for (const { machine, year, units, move } of coming) {
    if (!(machine.lifeYears > 0))
      throw new MoneyInputError(
        `machines.${machine.id}.lifeYears`,
        `A life of ${machine.lifeYears} years: more than 0 is needed.`
      );
    const terms = move?.terms.payment ?? null;
    if (terms !== null && (terms.atEnd !== 'buy' || year + terms.termYears >= horizonYears)) continue;
    const replacedInYears = replacementYears({
      boughtInYear: year,
      lifeYears: machine.lifeYears,
      horizonYears
    });
    kinds.set(machine, [...(kinds.get(machine) ?? []), { units, boughtInYear: year, replacedInYears }]);
  }
  return [...kinds].map(([machine, cohorts]) => ({ machine, cohorts }));
}

const kindsWith = (of: (kind: OutlayKind) => Quantity<Decimal>): Record<OutlayKind, Quantity<Decimal>> => ({
  purchase: of('purchase'),
  installation: of('installation'),
  tradeIn: of('tradeIn'),
  oneOff: of('oneOff'),
  monitors: of('monitors'),
  avoided: of('avoided'),
  replacement: of('replacement'),
  payments: of('payments'),
  residual: of('residual')
});

/** Where the working is kept, years without a replacement say by which life there is none. */
function addReplacements(
  r: Reckoner,
  { machine, cohorts }: OwnedKind,
  {
    horizonYears,
    replace
  }: { horizonYears: number; replace: (year: number, machine: Machine, paid: Quantity<Decimal>) => void }
): void {
  const yearsAhead = Array.from({ length: horizonYears }, (_, ahead) => ahead + 1);
  for (const year of r.records ? yearsAhead : new Set(cohorts.flatMap((cohort) => cohort.replacedInYears)))
    replace(year, machine, replacementInYear(r, { year, cohorts, machine, horizonYears }));
}

/** Whole years, each later than the one before, in which units are replaced before the end of the appraisal. */
function replacementYears({
  boughtInYear,
  lifeYears,
  horizonYears
}: {
  boughtInYear: number;
  lifeYears: number;
  horizonYears: number;
}): number[] {
  const years: number[] = [];
  for (let lives = 1; ; lives += 1) {
    const year = Math.max((years.at(-1) ?? boughtInYear) + 1, boughtInYear + Math.round(lives * lifeYears));
    if (year >= horizonYears) return years;
    years.push(year);
  }
}

function replacementInYear(
  r: Reckoner,
  {
    year,
    cohorts,
    machine,
    horizonYears
  }: {
    year: number;
    cohorts: readonly Cohort[];
    machine: Machine;
    horizonYears: number;
  }
): Quantity<Decimal> {
  const lifeYears = lifeOf(r, machine);
  const appraisalYears = r.cell(horizonYears, 'year', 'accounting', 'appraisalYears');
  return r.apply(replacementOfUnits, {
    units: cohorts.map(({ units, boughtInYear, replacedInYears }) =>
      r.apply(unitsDue, {
        units,
        due: r.result(
          replacedInYears.includes(year) ? 1 : 0,
          {
            'life of a machine': lifeYears,
            'length of the appraisal': appraisalYears,
            'year of the purchase': r.assumption(
              boughtInYear,
              'year',
              `These units are bought in year ${boughtInYear}.`
            )
          },
          () => ({
            id: 'money.replacement-due',
            yields: `Whether a replacement is due in year ${year}`,
            words: `Ends of life are counted from the purchase, each taken to the nearest whole year; those at or after the end of the appraisal are left out. 1 where year ${year} is one of them, otherwise 0.`,
            unit: '1',
            source: 'definition',
            report: []
          })
        )
      })
    ),
    unitPrice: priceOf(r, machine, 'unitPrice'),
    installation: priceOf(r, machine, 'installationPerUnit')
  });
}

function avoidedInYear(r: Reckoner, scenario: Scenario, year: number): Quantity<Decimal> {
  const amounts = scenario.avoidedPurchases.flatMap((purchase, index) => {
    if (Math.round(purchase.year) !== year) return [];
    const cell = ['scenarios', scenario.id, 'avoidedPurchases', String(index)];
    return [
      r.apply(purchaseOfUnits, {
        units: r.cell(purchase.units, '1', ...cell, 'units'),
        unitPrice: r.cell(amount(purchase.unitPrice), 'currency', ...cell, 'unitPrice')
      })
    ];
  });
  return r.apply(sumOfAmounts, { amounts });
}

function worthAtEnd(
  r: Reckoner,
  {
    kinds,
    renewals,
    horizonYears
  }: { kinds: readonly OwnedKind[]; renewals: readonly Renewal[]; horizonYears: number }
): Quantity<Decimal>[] {
  const appraisalYears = r.cell(horizonYears, 'year', 'accounting', 'appraisalYears');
  const worthOf = (machine: Machine, units: Quantity, newest: number): Quantity<Decimal> =>
    r.apply(straightLineValue, {
      units,
      unitPrice: priceOf(r, machine, 'unitPrice'),
      ageYears: r.apply(ageAtEnd, {
        appraisalYears,
        boughtInYear: r.assumption(
          newest,
          'year',
          `The units in place at the end were bought in year ${newest}.`
        )
      }),
      lifeYears: lifeOf(r, machine)
    });
  const renewed = renewals.flatMap(({ machine, year, unitsAtEnd }) =>
    unitsAtEnd === null ? [] : [worthOf(machine, unitsAtEnd, year)]
  );
  return [
    ...kinds.map(({ machine, cohorts }) =>
      r.apply(sumOfAmounts, {
        amounts: cohorts.map(({ units, boughtInYear, replacedInYears }) =>
          worthOf(machine, units, replacedInYears.at(-1) ?? boughtInYear)
        )
      })
    ),
    ...renewed
  ];
}
