/** A scenario's year: what it uses, what that costs and what it emits. */
import type { AgentFate } from '../emissions/agent-fate.ts';
import { agentFate } from '../emissions/agent-fate.ts';
import type { EmittingUse } from '../emissions/co2e-lines.ts';
import { co2eLines } from '../emissions/co2e-lines.ts';
import { manufacture } from '../emissions/manufacture.ts';
import type { LedgerEntry } from '../emissions/ledger.ts';
import { ledgerEntries } from '../emissions/ledger.ts';
import type { Co2eLine, CostLine } from '../estimate-types.ts';
import type { Fleet, Period } from '../fleet/standing.ts';
import type { Agent, EstimateInput, Payment, Scenario } from '../input.ts';
import type { ConsumablePrices } from '../money/consumable-prices.ts';
import { captureCost } from '../money/capture-cost.ts';
import { costOfAbsorbents } from '../money/consumables.ts';
import type { YearlyCost } from '../money/cost-lines.ts';
import { costLines } from '../money/cost-lines.ts';
import type { Decimal } from '../money/decimal.ts';
import { kept, once } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption } from '../year/consumption.ts';
import type { AgentUse } from '../year/consumption.ts';
import {
  nitrousOxideLost,
  nitrousOxideLostOfSupply,
  recoveryMinutes,
  together
} from '../year/consumption.ts';
import { atExhaustAtSpillFactor, liquidAtSpillFactor, massBalance } from '../year/mass-balance.ts';
import {
  estimateOverPurchase,
  purchasedForTheatres,
  purchasedLiquid,
  scaledToPurchases
} from '../year/reconciliation.ts';
import { electricityOfPumps, withPumps } from '../year/scavenging-pumps.ts';
import { techniqueAmounts } from '../year/technique-amounts.ts';
import { captureOf, emissionsOfAbsorbent, massOfNitrousOxide } from './amounts.ts';
import type { SourcesOfCases } from './case-sources.ts';
import type { YearPart } from './year-parts.ts';

export interface AgentYearFigures {
  readonly liquidMl: Quantity;
  readonly bottles: Quantity;
  readonly cost: Quantity<Decimal>;
  readonly estimateOverPurchase: Quantity | null;
}

export interface YearFigures {
  readonly agents: Readonly<Partial<Record<Agent, AgentYearFigures>>>;
  readonly oxygenM3: Quantity;
  readonly airM3: Quantity;
  readonly nitrousOxideKg: Quantity;
  readonly absorbentKg: Quantity;
  readonly electricityKWh: Quantity;
  readonly intravenousCases: Quantity;
  readonly propofolDrawnUpG: Quantity;
  readonly propofolWastedG: Quantity;
  readonly eegSensors: Quantity;
  readonly regionalCases: Quantity;
  readonly cost: Readonly<Record<CostLine | 'total', Quantity<Decimal>>>;
  readonly co2eKg: Readonly<Record<Co2eLine | 'total', Quantity>>;
}

export interface ScenarioYearReckoning {
  readonly figures: YearFigures;
  readonly cost: YearlyCost;
  readonly emitting: EmittingUse;
  /** Ids of the absorbents in use, in the order of `emitting`. */
  readonly absorbents: readonly string[];
}

type AgentFates = Readonly<Partial<Record<Agent, AgentFate>>>;

export interface ScenarioYears {
  /** The year of a period, at today's prices. */
  readonly yearIn: (scenario: Scenario, period: Period) => ScenarioYearReckoning;
  /** What the absorbent costs in a year that is used on the machines of one payment, once all of them have come. */
  readonly absorbentUnder: (scenario: Scenario, payment: Payment) => Quantity<Decimal>;
  /** Where the mass of each agent goes in the year of a period. */
  readonly fateIn: (scenario: Scenario, period: Period) => AgentFates;
  /** The same, by the id of the theatre group in which the agent is used; the groups add up to the year. */
  readonly fateByGroupIn: (scenario: Scenario, period: Period) => Readonly<Record<string, AgentFates>>;
  /** What the year's emissions are made of, line by line. */
  readonly ledgerIn: (scenario: Scenario, period: Period) => readonly LedgerEntry[];
  /** Today's estimate ÷ purchase, by agent; null where no purchases were given or nothing is used. */
  readonly reconciliation: (agent: Agent) => Quantity | null;
  /** The two that it compares, mL; null where none of it is given to patients, or no purchases are given. */
  readonly estimatedToday: (agent: Agent) => Quantity | null;
  readonly purchasedToday: (agent: Agent) => Quantity | null;
}

export function scenarioYears(
  r: Reckoner,
  input: EstimateInput,
  {
    today,
    fleet,
    sources,
    partsIn,
    prices
  }: {
    today: Scenario;
    fleet: Fleet;
    sources: SourcesOfCases;
    partsIn: (scenario: Scenario, period: Period) => readonly [YearPart, ...YearPart[]];
    prices: () => ConsumablePrices;
  }
): ScenarioYears {
  const { reference, site, accounting, potentials } = input;
  const balance = massBalance(r, reference);
  const partsOf = kept((scenario: Scenario) => kept((period: Period) => partsIn(scenario, period)));
  const partsOfToday = () => partsOf(today)(fleet.periods(today)[0]);

  /** A quantity of a year: that of its parts, added up. */
  const inAll = (
    parts: readonly YearPart[],
    unit: Parameters<typeof together>[1],
    of: (use: Consumption) => Quantity
  ): Quantity =>
    together(
      r,
      unit,
      parts.map(({ use }) => of(use))
    );

  const nitrousOxideUsedKg = (parts: readonly YearPart[]): Quantity =>
    massOfNitrousOxide(
      r,
      input,
      inAll(parts, 'L', (use) => use.nitrousOxideL)
    );
  const usedTodayKg = once(() => nitrousOxideUsedKg(partsOfToday()));
  /**
   * What was bought and is not used today is lost, whatever else is done, until the supply itself is changed; null where
   * no purchases were given, as what a change is worth is not known then.
   */
  const nitrousOxideLostKg = (scenario: Scenario, period: Period, usedKg: Quantity): Quantity | null => {
    const bought = input.gases.nitrousOxideBoughtKgPerYear;
    if (bought === null) return null;
    const { nitrousOxideSupply: supply } = scenario;
    const hasChanged = supply !== 'as-today' && period.fromYear > scenario.nitrousOxideSupplyYear;
    if (hasChanged && supply === 'none') return r.assumption(0, 'kg', 'Nitrous oxide is no longer bought.');
    if (hasChanged)
      return r.apply(nitrousOxideLostOfSupply, {
        usedKg,
        lossPercent: r.cell(
          scenario.nitrousOxideLossPercent,
          '%',
          'scenarios',
          scenario.id,
          'nitrousOxideLossPercent'
        )
      });
    return r.apply(nitrousOxideLost, {
      boughtKg: r.cell(bought, 'kg', 'gases', 'nitrousOxideBoughtKgPerYear'),
      usedKg: usedTodayKg()
    });
  };

  const usesToday = (agent: Agent): readonly AgentUse[] =>
    partsOfToday().flatMap(({ use }) => use.agents[agent] ?? []);
  /** Liquid that today's cases use by the model; null where they are given none. */
  const estimatedToday = kept((agent: Agent): Quantity | null => {
    const used = usesToday(agent);
    return used.length === 0
      ? null
      : together(
          r,
          'mL',
          used.map(({ liquidMl }) => liquidMl)
        );
  });
  /** Usable liquid that was bought for the theatres; null where no purchases were given. */
  const purchasedToday = kept((agent: Agent): Quantity | null => {
    const supply = input.agents.find((each) => each.agent === agent);
    if (supply === undefined || supply.bottlesBoughtPerYear === null) return null;
    const elsewhere = supply.bottlesUsedElsewherePerYear;
    const of = {
      bottles: r.cell(supply.bottlesBoughtPerYear, '1', 'agents', agent, 'bottlesBoughtPerYear'),
      bottleMl: r.cell(supply.bottleMl, 'mL', 'agents', agent, 'bottleMl'),
      unusablePercent: r.cell(supply.unusablePercent, '%', 'agents', agent, 'unusablePercent')
    };
    return elsewhere === null
      ? r.apply(purchasedLiquid, of)
      : r.apply(purchasedForTheatres, {
          ...of,
          elsewhere: r.cell(elsewhere, '1', 'agents', agent, 'bottlesUsedElsewherePerYear')
        });
  });

  /** Today's estimate and what was bought; null where either is missing. */
  const purchases = kept((agent: Agent) => {
    const [estimatedMl, purchasedMl] = [estimatedToday(agent), purchasedToday(agent)];
    if (estimatedMl === null || purchasedMl === null || r.value(estimatedMl) === 0) return null;
    // None for the theatres are none to compare with.
    if (!(r.value(purchasedMl) > 0)) return null;
    return {
      unmeasuredSpillMl: () =>
        together(
          r,
          'mL',
          usesToday(agent).map((use) => use.unmeasuredSpillMl())
        ),
      estimatedMl,
      purchasedMl
    };
  });
  const reconciliation = kept((agent: Agent): Quantity | null => {
    const against = purchases(agent);
    if (against === null) return null;
    const { estimatedMl, purchasedMl } = against;
    return r.apply(estimateOverPurchase, { estimatedMl, purchasedMl });
  });
  const factorOfSpill = kept((agent: Agent): Quantity | null => {
    const against = purchases(agent);
    if (against === null) return null;
    const { unmeasuredSpillMl, estimatedMl, purchasedMl } = against;
    const spilledMl = unmeasuredSpillMl();
    return balance === null ? null : balance.spillFactorOfPurchases({ estimatedMl, purchasedMl, spilledMl });
  });
  /** What a use becomes where its agent is scaled to the purchases. */
  const scaled = (agent: Agent, use: AgentUse): Pick<AgentUse, 'liquidMl' | 'atExhaustMl'> => {
    const { liquidMl, atExhaustMl, unmeasuredSpillMl, unmeasuredAtExhaustMl } = use;
    const supply = input.agents.find((each) => each.agent === agent);
    if (supply?.scaleToPurchases !== true) return use;
    if (balance !== null) {
      const factor = factorOfSpill(agent);
      if (factor === null) return use;
      return {
        liquidMl: r.apply(liquidAtSpillFactor, { liquidMl, factor, spilledMl: unmeasuredSpillMl() }),
        atExhaustMl: () =>
          r.apply(atExhaustAtSpillFactor, {
            atExhaustMl: atExhaustMl(),
            factor,
            unmeasuredMl: unmeasuredAtExhaustMl()
          })
      };
    }
    const ratio = reconciliation(agent);
    if (ratio === null) return use;
    return {
      liquidMl: r.apply(scaledToPurchases, { liquidMl, ratio }),
      atExhaustMl: () => r.apply(scaledToPurchases, { liquidMl: atExhaustMl(), ratio })
    };
  };

  /** Agent used in each part: emissions go by where it was used, cost by how much it is in all. */
  const agentUsesIn = (parts: readonly YearPart[], capture: ReturnType<typeof captureOf>) =>
    parts.flatMap(({ use }) =>
      (Object.keys(use.agents) as Agent[]).flatMap((agent): EmittingUse['agents'] => {
        const of = use.agents[agent];
        if (of === undefined) return [];
        const { liquidMl, atExhaustMl } = scaled(agent, of);
        return [
          {
            agent,
            liquidMl,
            takenUpMl: of.takenUpMl,
            capture: { ...capture, atExhaustMl: once(atExhaustMl) }
          }
        ];
      })
    );

  const absorbentIn = (parts: readonly YearPart[]): Record<string, Quantity> => {
    const massKg: Record<string, Quantity> = {};
    for (const id of new Set(parts.map(({ machine }) => machine.absorbent)))
      massKg[id] = inAll(
        parts.filter(({ machine }) => machine.absorbent === id),
        'kg',
        (use) => use.absorbentKg
      );
    return massKg;
  };

  const reckonYear = (scenario: Scenario, period: Period): ScenarioYearReckoning => {
    const parts = partsOf(scenario)(period);
    const agentUses = agentUsesIn(parts, captureOf(r, scenario));
    const liquidMl: Partial<Record<Agent, Quantity>> = {};
    for (const agent of new Set(agentUses.map((use) => use.agent)))
      liquidMl[agent] = together(
        r,
        'mL',
        agentUses.filter((use) => use.agent === agent).map((use) => use.liquidMl)
      );
    const absorbentKg = absorbentIn(parts);
    const paidApart = parts.filter(({ payment }) => payment?.includesConsumables !== true);
    const absorbentPaidForKg = paidApart.length < parts.length ? absorbentIn(paidApart) : absorbentKg;
    const oxygenM3 = inAll(parts, 'm3', (use) => use.oxygenM3);
    const airM3 = inAll(parts, 'm3', (use) => use.airM3);
    const machinesKWh = inAll(parts, 'kWh', (use) => use.electricityKWh);
    const pumpsKWh = electricityOfPumps(r, input.theatreGroups, scenario);
    const electricityKWh = pumpsKWh === null ? machinesKWh : r.apply(withPumps, { machinesKWh, pumpsKWh });
    const intravenousCases = inAll(parts, '1', (use) => use.intravenousCases);
    const taken = techniqueAmounts(r, input.intravenous, {
      intravenousCases,
      propofolGivenG: inAll(parts, 'g', (use) => use.propofolGivenG)
    });
    const techniques = {
      intravenousCases,
      ...taken,
      intravenousH: inAll(parts, 'h', (use) => use.intravenousH),
      regionalCases: inAll(parts, '1', (use) => use.regionalCases)
    };
    const usedKg = scenario === today ? usedTodayKg() : nitrousOxideUsedKg(parts);
    const lostKg = nitrousOxideLostKg(scenario, period, usedKg);
    const emitting: EmittingUse = {
      agents: agentUses,
      nitrousOxideKg: usedKg,
      nitrousOxideLostKg: lostKg,
      oxygenM3,
      absorbents: Object.entries(absorbentKg).map(([id, massKg]) => ({
        massKg,
        kgCo2ePerKg: emissionsOfAbsorbent(r, sources.absorbentById(id))
      })),
      electricityKWh,
      intravenousH: techniques.intravenousH,
      regionalCases: techniques.regionalCases,
      made: manufacture(
        r,
        {
          liquidMl,
          machines: period.serviced,
          generalAnaesthetics: () => inAll(parts, '1', (use) => use.generalAnaesthetics)
        },
        input
      )
    };
    const co2eKg = co2eLines(r, emitting, {
      accounting,
      site,
      reference,
      potentials,
      regional: input.regional
    });
    // Saved against today, which so saves none.
    const minutesSaved = scenario === today ? 0 : scenario.recoveryMinutesSavedPerCase;
    const cost = costLines(r, {
      prices: prices(),
      cells: input,
      scenario,
      serviced: period.serviced,
      used: {
        liquidMl,
        oxygenM3,
        airM3,
        nitrousOxideKg: usedKg,
        nitrousOxideLostKg: lostKg,
        absorbentKg: absorbentPaidForKg,
        techniques,
        electricityKWh,
        co2eKg: co2eKg.total,
        capture: captureCost(r, scenario, () => agentFate(r, agentUses, reference)),
        recoveryMinutes: r.apply(recoveryMinutes, {
          minutesPerCase: r.cell(
            minutesSaved,
            'min',
            'scenarios',
            scenario.id,
            'recoveryMinutesSavedPerCase'
          ),
          generalAnaesthetics: together(
            r,
            '1',
            parts.filter(({ follows }) => follows).map(({ use }) => use.generalAnaesthetics)
          )
        })
      }
    });
    const agents: Partial<Record<Agent, AgentYearFigures>> = {};
    for (const agent of Object.keys(liquidMl) as Agent[]) {
      const priced = cost.byAgent[agent];
      const liquid = liquidMl[agent];
      if (priced !== undefined && liquid !== undefined)
        agents[agent] = { liquidMl: liquid, ...priced, estimateOverPurchase: reconciliation(agent) };
    }
    return {
      cost,
      emitting,
      absorbents: Object.keys(absorbentKg),
      figures: {
        agents,
        oxygenM3,
        airM3,
        nitrousOxideKg: usedKg,
        absorbentKg: together(r, 'kg', Object.values(absorbentKg)),
        electricityKWh,
        intravenousCases,
        ...taken,
        regionalCases: techniques.regionalCases,
        cost: { ...cost.lines, total: cost.total },
        co2eKg
      }
    };
  };
  const yearsOf = kept((scenario: Scenario) => kept((period: Period) => reckonYear(scenario, period)));

  const fateOf = (scenario: Scenario, parts: readonly YearPart[]): AgentFates =>
    agentFate(r, agentUsesIn(parts, captureOf(r, scenario)), reference);
  const fateIn: ScenarioYears['fateIn'] = (scenario, period) => fateOf(scenario, partsOf(scenario)(period));

  return {
    yearIn: (scenario, period) => yearsOf(scenario)(period),
    fateIn,
    fateByGroupIn: (scenario, period) =>
      Object.fromEntries(
        input.theatreGroups.map(({ id }) => [
          id,
          fateOf(
            scenario,
            partsOf(scenario)(period).filter(({ theatreGroup }) => theatreGroup === id)
          )
        ])
      ),
    ledgerIn: (scenario, period) => {
      const { emitting, figures, absorbents } = yearsOf(scenario)(period);
      return ledgerEntries(
        r,
        {
          use: emitting,
          fate: fateIn(scenario, period),
          liquidMl: Object.fromEntries(
            Object.entries(figures.agents).map(([agent, { liquidMl }]) => [agent, liquidMl])
          ),
          airM3: figures.airM3,
          absorbentNames: absorbents
        },
        {
          accounting,
          site,
          reference,
          potentials,
          agents: input.agents,
          regional: input.regional
        }
      );
    },
    absorbentUnder: (scenario, payment) => {
      const isUnder = (part: { readonly payment: Payment | null }): boolean => part.payment === payment;
      const period = fleet.periods(scenario).findLast(({ standings }) => standings.some(isUnder));
      const parts = period === undefined ? [] : partsOf(scenario)(period).filter(isUnder);
      return costOfAbsorbents(r, prices(), absorbentIn(parts));
    },
    reconciliation,
    estimatedToday,
    purchasedToday
  };
}
