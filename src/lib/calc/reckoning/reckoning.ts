/**
 * The whole calculation, from cells to figures, as quantities. Run with the plain reckoner it is the estimate; run with
 * the recorder, the same code gives any one figure's working. Figures are made on demand and kept, so that asking for
 * one computes only what it needs.
 */
import type { EmittingSide } from './against.ts';
import { Against } from './against.ts';
import { estimateCase } from '../case/estimate-case.ts';
import type { CaseGiven } from '../case/case-given.ts';
import type { CaseResult, CaseMethod, CaseUse } from '../case/case-result.ts';
import type { CaseMemo } from '../known-cases/case-memo.ts';
import { kept, once } from '../working/kept.ts';
import { caseGivens } from './case-givens.ts';
import type { EmittingUse } from '../emissions/co2e-lines.ts';
import { co2eLines } from '../emissions/co2e-lines.ts';
import type { Co2eLine, CostLine, FailedCell } from '../estimate-types.ts';
import type { Agent, CaseRow, EstimateInput, FlowPlan, Machine, MonitorItem, Scenario } from '../input.ts';
import { costOfCase } from '../money/consumables.ts';
import { consumablePrices } from '../money/consumable-prices.ts';
import type { YearlyCost } from '../money/cost-lines.ts';
import { costLines } from '../money/cost-lines.ts';
import { costOfToday } from '../money/cost-of-ownership.ts';
import type { Decimal } from '../money/decimal.ts';
import { investment } from '../money/investment.ts';
import { costOfGap, monitorCost } from '../money/monitor-cost.ts';
import { timeFactors } from '../money/time-factors.ts';
import { monitoringNeeds } from '../monitoring/monitoring-needs.ts';
import type { UnpricedNeed } from '../monitoring/monitoring-needs.ts';
import { gapsOf } from '../monitoring/gaps.ts';
import { monitorsToBuy } from '../monitoring/monitors-to-buy.ts';
import { deviceFor, theatresLacking } from '../monitoring/theatres-missing.ts';
import { monitoringQuestion } from './monitoring-of-scenario.ts';
import { recordedCase } from '../known-cases/recorded-case.ts';
import { take } from '../reference/reference-set.ts';
import { plain } from '../working/plain.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Consumption, RowResult } from '../year/consumption.ts';
import {
  consumption,
  cubicMetres,
  electricity,
  hours,
  nitrousOxideLost,
  nitrousOxideMass,
  recoveryMinutes,
  restOfCases,
  together
} from '../year/consumption.ts';
import { vapourOfYear } from '../year/vapour.ts';
import {
  estimateOverPurchase,
  purchasedLiquid,
  scaledToMeasured,
  scaledToPurchases
} from '../year/reconciliation.ts';

/** One case on a scenario's own plan and machine. */
export interface CaseReckoning<C extends CaseUse = CaseResult> {
  readonly row: CaseRow;
  readonly plan: FlowPlan;
  readonly machine: Machine;
  readonly agent: Agent | null;
  readonly method: CaseMethod;
  readonly result: C;
}

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
  readonly cost: Readonly<Record<CostLine | 'total', Quantity<Decimal>>>;
  readonly co2eKg: Readonly<Record<Co2eLine | 'total', Quantity>>;
}

/** What a case costs and emits beside what it uses. */
export interface PricedCase {
  readonly co2eKg: Quantity;
  readonly cost: Quantity<Decimal>;
}

/** A part of a scenario's year that runs on one machine with one capture. */
interface Part {
  readonly scenario: Scenario;
  readonly machine: Machine;
  readonly use: Consumption;
  readonly capturePercent: Quantity;
}

interface ScenarioYearReckoning {
  readonly figures: YearFigures;
  readonly cost: YearlyCost;
}

export type Reckoning = ReturnType<typeof reckon>;

/**
 * The calculation over one input, with all that an estimate tells of its cases. Nothing is computed until it is asked
 * for.
 * @param memo where results of cases are kept over edits; a recorder takes the values from there, and records a case
 *   once somebody looks at how it came about.
 */
export const reckon = (r: Reckoner, input: EstimateInput, memo?: CaseMemo) =>
  reckonWith(r, input, (given) => {
    const run = (): CaseResult => estimateCase(r, given);
    if (memo === undefined) return run();
    const known = memo.result(given, plainCase);
    return r.records ? recordedCase(known, run) : known;
  });

const plainCase = (given: CaseGiven): CaseResult => estimateCase(plain, given);

/**
 * The calculation over one input, with as much of each case as is given it. Nothing is computed until it is asked for.
 * @param modelled the model's figures of a case
 */
export function reckonWith<C extends CaseUse>(
  r: Reckoner,
  input: EstimateInput,
  modelled: (given: CaseGiven) => C
) {
  const { reference, site, accounting } = input;
  const today = input.scenarios.find((scenario) => scenario.baseline);
  if (today === undefined)
    throw new Error('The input has no baseline; a workbook is checked before it gets here.');

  const { machineOf, absorbentById, planOf, agentOf, givenOf } = caseGivens(input);

  const sameAsToday = (scenario: Scenario, row: CaseRow): boolean =>
    scenario === today ||
    (scenario.machine === today.machine &&
      planOf(scenario, row) === planOf(today, row) &&
      agentOf(scenario, row) === agentOf(today, row));

  const casesOf = kept((scenario: Scenario) => kept((row: CaseRow) => reckonCase(scenario, row)));

  function reckonCase(scenario: Scenario, row: CaseRow): CaseReckoning<C> {
    if (scenario !== today && sameAsToday(scenario, row)) return casesOf(today as Scenario)(row);
    const given = givenOf(scenario, row);
    const { plan, machine, agent } = given;
    if (agent === null || row.measuredMlPerCase === null) {
      const result = modelled(given);
      return { row, plan, machine, agent, method: result.method, result };
    }
    const measuredMl = r.cell(row.measuredMlPerCase, 'mL', 'caseMix', row.id, 'measuredMlPerCase');
    const model = modelled(given);
    // What was measured takes the place of the liquid alone: where the agent went stays the model's own figure.
    if (scenario === today)
      return { row, plan, machine, agent, method: 'measured', result: { ...model, liquidMl: measuredMl } };
    const todayModelMl = modelled(givenOf(today as Scenario, row)).liquidMl;
    // Where the model gives nothing for today there is no ratio to carry over.
    if (!(r.value(todayModelMl) > 0))
      return { row, plan, machine, agent, method: model.method, result: model };
    const liquidMl = r.apply(scaledToMeasured, {
      modelMl: model.liquidMl,
      measuredMl,
      todayModelMl
    });
    return { row, plan, machine, agent, method: 'scaled-to-measured', result: { ...model, liquidMl } };
  }

  const powerOf = (machine: Machine): Quantity =>
    machine.powerW === null
      ? r.fallback(take(reference, 'machine.power'), 'machines', machine.id, 'powerW')
      : r.cell(machine.powerW, 'W', 'machines', machine.id, 'powerW');

  const captureOf = (scenario: Scenario): Quantity =>
    r.cell(scenario.capturePercent, '%', 'scenarios', scenario.id, 'capturePercent');

  /** Rows whose case failed on bad figures are left out of the totals and named. */
  const failed: FailedCell[] = [];
  const soundRows = kept((scenario: Scenario) =>
    input.caseMix.filter((row) => {
      try {
        casesOf(scenario)(row);
        return true;
      } catch (error) {
        if (!(error instanceof RangeError) && (error as Error).name !== 'OutOfRangeError') throw error;
        failed.push({ path: `caseMix.${row.id}`, sentence: (error as Error).message });
        return false;
      }
    })
  );
  const rowsOf = kept((scenario: Scenario): readonly CaseRow[] => {
    const sound = new Set(soundRows(today));
    return scenario === today ? soundRows(today) : soundRows(scenario).filter((row) => sound.has(row));
  });

  const parts = kept((scenario: Scenario): readonly Part[] => {
    const everyCase = r.assumption(
      100,
      '%',
      'Every case of a group whose plan, machine and agent are those of today.'
    );
    const adopted = r.cell(scenario.adoptionPercent, '%', 'scenarios', scenario.id, 'adoptionPercent');
    const splits = (row: CaseRow) =>
      scenario !== today &&
      scenario.adoptionPercent < 100 &&
      (!sameAsToday(scenario, row) || scenario.capturePercent !== today.capturePercent);
    const rowResult = (of: Scenario, row: CaseRow, sharePercent: Quantity): RowResult => {
      const { agent, result } = casesOf(of)(row);
      return { row, agent, result, sharePercent };
    };
    const part = (of: Scenario, rows: readonly RowResult[]): Part => {
      const machine = machineOf(of);
      return {
        scenario: of,
        machine,
        use: consumption(r, { rows, powerW: powerOf(machine) }),
        capturePercent: captureOf(of)
      };
    };
    const rows = rowsOf(scenario);
    const own = part(
      scenario,
      rows.map((row) => rowResult(scenario, row, splits(row) ? adopted : everyCase))
    );
    const split = rows.filter(splits);
    if (split.length === 0) return [own];
    const rest = r.apply(restOfCases, { adoptionPercent: adopted });
    return [
      own,
      part(
        today,
        split.map((row) => rowResult(today, row, rest))
      )
    ];
  });

  const nitrousOxideKg = (volumeL: Quantity): Quantity =>
    r.apply(nitrousOxideMass, {
      volumeL,
      pressureKPa: r.cell(site.ambientPressureKPa, 'kPa', 'site', 'ambientPressureKPa'),
      molarMassGPerMol: r.constant(take(reference, 'nitrous-oxide.molar-mass')),
      gasConstant: r.constant(take(reference, 'gas-constant')),
      temperatureC: r.cell(site.theatreTemperatureC, '°C', 'site', 'theatreTemperatureC'),
      zeroCelsiusK: r.constant(take(reference, 'zero-celsius'))
    });
  const nitrousOxideUsedKg = kept((of: Scenario): Quantity =>
    nitrousOxideKg(
      together(
        r,
        'L',
        parts(of).map((part) => part.use.nitrousOxideL)
      )
    )
  );

  /** Today's estimate ÷ purchase, by agent; null where no purchases were given or nothing is used. */
  const reconciliation = kept((agent: Agent): Quantity | null => {
    const supply = input.agents.find((each) => each.agent === agent);
    const use = parts(today)[0]?.use.agents[agent];
    if (supply === undefined || supply.bottlesBoughtPerYear === null || supply.bottlesBoughtPerYear === 0)
      return null;
    if (use === undefined || r.value(use.liquidMl) === 0) return null;
    return r.apply(estimateOverPurchase, {
      estimatedMl: use.liquidMl,
      purchasedMl: r.apply(purchasedLiquid, {
        bottles: r.cell(supply.bottlesBoughtPerYear, '1', 'agents', agent, 'bottlesBoughtPerYear'),
        bottleMl: r.cell(supply.bottleMl, 'mL', 'agents', agent, 'bottleMl'),
        unusablePercent: r.cell(supply.unusablePercent, '%', 'agents', agent, 'unusablePercent')
      })
    });
  });
  const scaled = (agent: Agent, liquidMl: Quantity): Quantity => {
    const supply = input.agents.find((each) => each.agent === agent);
    const ratio = supply?.scaleToPurchases === true ? reconciliation(agent) : null;
    return ratio === null ? liquidMl : r.apply(scaledToPurchases, { liquidMl, ratio });
  };

  const prices = once(() => consumablePrices(r, input));

  const yearOf = kept((scenario: Scenario): ScenarioYearReckoning => {
    const all = parts(scenario);
    const agentUses = all.flatMap(({ use, capturePercent }) =>
      (Object.keys(use.agents) as Agent[]).flatMap((agent) => {
        const of = use.agents[agent];
        return of === undefined
          ? []
          : [{ agent, liquidMl: scaled(agent, of.liquidMl), takenUpMl: of.takenUpMl, capturePercent }];
      })
    );
    const liquidMl: Partial<Record<Agent, Quantity>> = {};
    for (const agent of new Set(agentUses.map((use) => use.agent)))
      liquidMl[agent] = together(
        r,
        'mL',
        agentUses.filter((use) => use.agent === agent).map((use) => use.liquidMl)
      );
    const absorbentKg: Record<string, Quantity> = {};
    for (const id of new Set(all.map(({ machine }) => machine.absorbent)))
      absorbentKg[id] = together(
        r,
        'kg',
        all.filter(({ machine }) => machine.absorbent === id).map(({ use }) => use.absorbentKg)
      );
    const oxygenM3 = together(
      r,
      'm3',
      all.map(({ use }) => use.oxygenM3)
    );
    const airM3 = together(
      r,
      'm3',
      all.map(({ use }) => use.airM3)
    );
    const electricityKWh = together(
      r,
      'kWh',
      all.map(({ use }) => use.electricityKWh)
    );
    const usedKg = nitrousOxideUsedKg(scenario);
    const bought = input.gases.nitrousOxideBoughtKgPerYear;
    const nitrousOxideLostKg =
      bought === null
        ? null
        : r.apply(nitrousOxideLost, {
            boughtKg: r.cell(bought, 'kg', 'gases', 'nitrousOxideBoughtKgPerYear'),
            usedKg: nitrousOxideUsedKg(today)
          });
    const co2eKg = co2eLines(
      r,
      {
        agents: agentUses,
        nitrousOxideKg: usedKg,
        nitrousOxideLostKg,
        oxygenM3,
        absorbents: Object.entries(absorbentKg).map(([id, massKg]) => ({
          massKg,
          kgCo2ePerKg: absorbentFactor(id)
        })),
        electricityKWh,
        intravenousH: together(
          r,
          'h',
          all.map(({ use }) => use.intravenousH)
        )
      },
      { accounting, site, reference }
    );
    const saved = scenario === today ? 0 : scenario.recoveryMinutesSavedPerCase;
    const cost = costLines(r, {
      prices: prices(),
      cells: input,
      scenario,
      machine: machineOf(scenario),
      used: {
        liquidMl,
        oxygenM3,
        airM3,
        nitrousOxideKg: usedKg,
        nitrousOxideLostKg,
        absorbentKg,
        electricityKWh,
        co2eKg: co2eKg.total,
        recoveryMinutes: r.apply(recoveryMinutes, {
          minutesPerCase: r.cell(saved, 'min', 'scenarios', scenario.id, 'recoveryMinutesSavedPerCase'),
          generalAnaesthetics: (all[0] as Part).use.generalAnaesthetics
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
      figures: {
        agents,
        oxygenM3,
        airM3,
        nitrousOxideKg: usedKg,
        absorbentKg: together(r, 'kg', Object.values(absorbentKg)),
        electricityKWh,
        cost: { ...cost.lines, total: cost.total },
        co2eKg
      }
    };
  });

  const absorbentFactor = (id: string): Quantity | null => {
    const factor = absorbentById(id).kgCo2ePerKg;
    return factor === null ? null : r.cell(factor, 'kg CO2e/kg', 'absorbents', id, 'kgCo2ePerKg');
  };

  const pricedCaseOf = kept((scenario: Scenario) => kept((row: CaseRow) => priceCase(scenario, row)));

  function priceCase(scenario: Scenario, row: CaseRow): PricedCase {
    const { machine, agent, result } = casesOf(scenario)(row);
    const minutes = r.cell(row.minutes, 'min', 'caseMix', row.id, 'minutes');
    const nothing = r.assumption(
      0,
      'min',
      'No breathing system, and no intravenous anaesthesia, in this case.'
    );
    const usedKg = nitrousOxideKg(result.nitrousOxideL);
    const oxygenM3 = r.apply(cubicMetres, { litres: result.oxygenL });
    const electricityKWh = r.apply(electricity, {
      minutes: row.technique === 'regional' ? nothing : minutes,
      powerW: powerOf(machine)
    });
    const use: EmittingUse = {
      agents:
        agent === null
          ? []
          : [
              {
                agent,
                liquidMl: result.liquidMl,
                takenUpMl: result.takenUpMl,
                capturePercent: captureOf(scenario)
              }
            ],
      nitrousOxideKg: usedKg,
      nitrousOxideLostKg: null,
      oxygenM3,
      absorbents: [{ massKg: result.absorbentKg, kgCo2ePerKg: absorbentFactor(machine.absorbent) }],
      electricityKWh,
      intravenousH: r.apply(hours, { minutes: row.technique === 'intravenous' ? minutes : nothing })
    };
    return {
      co2eKg: co2eLines(r, use, { accounting, site, reference }).total,
      cost: costOfCase(r, prices(), {
        liquidMl: agent === null ? {} : { [agent]: result.liquidMl },
        oxygenM3,
        airM3: r.apply(cubicMetres, { litres: result.airL }),
        nitrousOxideKg: usedKg,
        nitrousOxideLostKg: null,
        absorbentKg: { [machine.absorbent]: result.absorbentKg }
      })
    };
  }

  const monitoringAsked = kept((scenario: Scenario) =>
    monitoringQuestion(input, {
      machine: machineOf(scenario),
      cases: rowsOf(scenario).map((row) => casesOf(scenario)(row))
    })
  );
  const monitoring = kept((scenario: Scenario): readonly UnpricedNeed[] =>
    monitoringNeeds(monitoringAsked(scenario))
  );

  const lackingIn = (scenario: Scenario, item: MonitorItem): Quantity => {
    const { id, monitors, units } = machineOf(scenario);
    const builtIn = { items: monitors, units };
    return theatresLacking(r, item, { theatres: site.theatres, stock: input.monitors, builtIn, machine: id });
  };

  /** The figures of a scenario's monitoring: by rule, the theatres that lack the item and the cost. */
  const monitoringFigures = (scenario: Scenario) => {
    const needs = monitoring(scenario);
    const byRule = needs.map(({ rule, item, theatresMissing, unitPrice }) => {
      const device = deviceFor(item);
      const lacking = device === null || theatresMissing === null ? null : lackingIn(scenario, device);
      const cost =
        lacking === null || unitPrice === null ? null : costOfGap(r, { item, theatres: lacking, unitPrice });
      return [rule, { theatresMissing: lacking, cost }] as const;
    });
    return Object.fromEntries(byRule);
  };
  const monitoringGaps = (scenario: Scenario): Quantity =>
    gapsOf(r, monitoring(scenario), (item) => lackingIn(scenario, item));
  const vapourOf = (scenario: Scenario) =>
    vapourOfYear(
      r,
      rowsOf(scenario).map((row) => casesOf(scenario)(row))
    );

  const factors = once(() => timeFactors(r, accounting));
  const sideOf = kept((scenario: Scenario): EmittingSide => {
    const lackedToday = new Set(monitorsToBuy(monitoringAsked(today)).toBuy.map(({ item }) => item));
    const missing =
      scenario === today
        ? []
        : monitorsToBuy(monitoringAsked(scenario)).toBuy.map(({ item, unitPrice }) => ({
            item,
            unitPrice,
            theatresMissing: lackingIn(scenario, item),
            missingToday: lackedToday.has(item) ? lackingIn(today, item) : null
          }));
    const { cost, figures } = yearOf(scenario);
    return {
      cost,
      co2eKg: figures.co2eKg.total,
      investment: investment(r, {
        scenario,
        machine: machineOf(scenario),
        buysMachine: scenario.machine !== today.machine,
        monitors: monitorCost(r, missing),
        accounting
      })
    };
  });
  const yearsOfToday = once(() => costOfToday(r, { baseline: sideOf(today), factors: factors() }));

  const footprintTonnes = (): Quantity | null => {
    const { departmentFootprintTonnes: footprint } = site;
    if (footprint === null || !(footprint > 0)) return null;
    return r.cell(footprint, 't CO2e', 'site', 'departmentFootprintTonnes');
  };

  const against = kept(
    (scenario: Scenario) =>
      new Against(r, {
        today: sideOf(today),
        scenario: sideOf(scenario),
        factors: factors(),
        costOfToday: yearsOfToday,
        footprintTonnes: footprintTonnes()
      })
  );

  return {
    today,
    cases: (scenario: Scenario): readonly CaseReckoning<C>[] =>
      rowsOf(scenario).map((row) => casesOf(scenario)(row)),
    pricedCase: (scenario: Scenario, row: CaseRow): PricedCase => pricedCaseOf(scenario)(row),
    caseOf: (scenario: Scenario, row: CaseRow): CaseReckoning<C> => casesOf(scenario)(row),
    year: (scenario: Scenario): YearFigures => yearOf(scenario).figures,
    against,
    monitoring,
    monitoringFigures,
    monitoringGaps,
    vapour: vapourOf,
    reconciliation,
    failed: (): readonly FailedCell[] => failed
  };
}
