/**
 * What stands in the theatres, and when: the machines of today, those that come under a scenario and the theatres they
 * go to, year by year.
 */
import type { EstimateInput, Machine, Scenario } from '../input.ts';
import { ownEntry } from '../own-entry.ts';
import { formula } from '../working/formula.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';

/** Machines that come together. */
export interface Arrival {
  /** Years from the decision, 0 for now; they serve from the year after. */
  readonly year: number;
  readonly units: Quantity;
  /** Theatres that move to them; units beyond these are spares. */
  readonly theatres: Quantity;
}

/** Theatres in which one machine stands and one plan is followed. */
export interface Standing {
  readonly machine: Machine;
  /** Whether they follow the scenario's plan: they have moved, or would have, or the scenario moves none. */
  readonly moved: boolean;
  readonly theatres: Quantity;
  /** Machines that are serviced for them: one a theatre, and spares. */
  readonly units: Quantity;
  /** Of all theatres; null: all of them. */
  readonly sharePercent: Quantity | null;
}

/** Years in which the same machines stand in the same theatres. */
export interface Period {
  readonly fromYear: number;
  readonly standings: readonly [Standing, ...Standing[]];
}

export interface Fleet {
  /** What a scenario buys, in order of time; nothing where today's machines stay. */
  readonly arrivals: (scenario: Scenario) => readonly Arrival[];
  /** In order of time, from year 1 on; the last is the settled one. */
  readonly periods: (scenario: Scenario) => readonly [Period, ...Period[]];
}

export const theatresThatMove = formula<{ units: number; theatres: number; before: readonly number[] }>({
  id: 'fleet.theatres-that-move',
  yields: 'Theatres that move to the machines that come',
  words:
    'One for each machine that comes, as long as a theatre is left with today’s; machines beyond that are spares.',
  expression: 'min(u, T - sum(b))',
  inputs: {
    units: { symbol: 'u', unit: '1', words: 'machines that come' },
    theatres: { symbol: 'T', unit: '1', words: 'theatres' },
    before: { symbol: 'b', unit: '1', words: 'theatres that have moved before' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ units, theatres, before }) => Math.min(units, theatres - sum(before))
});

export const theatresThatStay = formula<{ theatres: number; moved: readonly number[] }>({
  id: 'fleet.theatres-that-stay',
  yields: 'Theatres with today’s machine',
  words: 'Theatres less those that have moved to another machine.',
  expression: 'T - sum(m)',
  inputs: {
    theatres: { symbol: 'T', unit: '1', words: 'theatres' },
    moved: { symbol: 'm', unit: '1', words: 'theatres that have moved' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ theatres, moved }) => theatres - sum(moved)
});

export const together = formula<{ parts: readonly number[] }>({
  id: 'fleet.added-up',
  yields: 'Machines or theatres, added up',
  words: 'What has come year by year, added up.',
  expression: 'sum(n)',
  inputs: { parts: { symbol: 'n', unit: '1', words: 'of each year' } },
  unit: '1',
  source: 'definition',
  compute: ({ parts }) => sum(parts)
});

export const shareOfTheatres = formula<{ these: number; theatres: number }>({
  id: 'fleet.share-of-theatres',
  yields: 'Share of the cases that are done in these theatres',
  words: 'These theatres as a percentage of all: cases are spread evenly over the theatres.',
  expression: '100 * t / T',
  inputs: {
    these: { symbol: 't', unit: '1', words: 'these theatres' },
    theatres: { symbol: 'T', unit: '1', words: 'all theatres' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ these, theatres }) => (100 * these) / theatres
});

const sum = (numbers: readonly number[]): number => numbers.reduce((all, next) => all + next, 0);

/**
 * The fleet of an input: a machine of today's stands in every theatre, and those that come take the places of as many.
 *
 * - Units that come in year y (0: now) serve from year y + 1. `unitsByYear` null: all of the machine's units now.
 * - Units beyond the theatres that are left are spares: bought and serviced, and no theatre moves for them.
 * - Fewer units than theatres leave today's machine in the rest.
 * - `machinesStay`: nothing is bought; theatres that would move follow the scenario's plan from the same year on, on the
 *   machine that stands there.
 */
export function fleetOf(
  r: Reckoner,
  input: Pick<EstimateInput, 'machines' | 'site' | 'caseMix'>,
  today: Scenario
): Fleet {
  const machineOf = (id: string): Machine => {
    const found = input.machines.find((machine) => machine.id === id);
    if (found === undefined)
      throw new Error(`The input has no machine “${id}”; a workbook is checked before it gets here.`);
    return found;
  };
  const theatres = r.cell(input.site.theatres, '1', 'site', 'theatres');
  const standingToday: Omit<Standing, 'moved'> = {
    machine: machineOf(today.machine),
    theatres,
    units: theatres,
    sharePercent: null
  };

  const coming = kept((scenario: Scenario): readonly Arrival[] => {
    if (scenario.machine === today.machine) return [];
    const machine = machineOf(scenario.machine);
    const units = scenario.unitsByYear?.map((number, year) =>
      r.cell(number, '1', 'scenarios', scenario.id, 'unitsByYear', String(year))
    ) ?? [r.cell(machine.units, '1', 'machines', machine.id, 'units')];
    const found: Arrival[] = [];
    units.forEach((coming, year) => {
      if (!(r.value(coming) > 0)) return;
      const before = found.map((arrival) => arrival.theatres);
      found.push({
        year,
        units: coming,
        theatres: r.apply(theatresThatMove, { units: coming, theatres, before })
      });
    });
    return found;
  });

  /** Whether nothing tells theatres that would have moved from the others: on machines that stay, with one plan for both. */
  const isOnePlace = kept(
    ({ machinesStay, flowPlan, flowPlanByCase, recoveryMinutesSavedPerCase }: Scenario): boolean =>
      machinesStay &&
      recoveryMinutesSavedPerCase === 0 &&
      input.caseMix.every(({ id }) => {
        const ofToday = ownEntry(today.flowPlanByCase, id) ?? today.flowPlan;
        const own = ownEntry(flowPlanByCase, id);
        return (own ?? flowPlan) === (own ?? ofToday);
      })
  );

  function standingsWith(
    scenario: Scenario,
    arrived: readonly Arrival[]
  ): readonly [Standing, ...Standing[]] {
    const [first] = arrived;
    if (first === undefined || isOnePlace(scenario))
      return [{ ...standingToday, moved: first !== undefined || scenario.machine === today.machine }];
    const moved = arrived.map((arrival) => arrival.theatres);
    const staying = r.apply(theatresThatStay, { theatres, moved });
    const all = (parts: readonly Quantity[]): Quantity =>
      parts.length === 1 ? (parts[0] as Quantity) : r.apply(together, { parts });
    const isPart = r.value(staying) > 0;
    const share = (these: Quantity): Quantity | null =>
      isPart ? r.apply(shareOfTheatres, { these, theatres }) : null;
    const here = all(moved);
    const on = {
      theatres: here,
      sharePercent: share(here),
      moved: true,
      ...(scenario.machinesStay
        ? { machine: standingToday.machine, units: here }
        : { machine: machineOf(scenario.machine), units: all(arrived.map(({ units }) => units)) })
    };
    if (!isPart) return [on];
    return [
      on,
      { ...standingToday, moved: false, theatres: staying, units: staying, sharePercent: share(staying) }
    ];
  }

  return {
    arrivals: (scenario) => (scenario.machinesStay ? [] : coming(scenario)),
    periods: kept((scenario: Scenario): readonly [Period, ...Period[]] => {
      const all = coming(scenario);
      const later = all.filter(({ year }) => year > 0);
      return [
        {
          fromYear: 1,
          standings: standingsWith(
            scenario,
            all.filter(({ year }) => year === 0)
          )
        },
        ...later.map(({ year }) => ({
          fromYear: year + 1,
          standings: standingsWith(
            scenario,
            all.filter((arrival) => arrival.year <= year)
          )
        }))
      ];
    })
  };
}

/** The period that a year falls into. */
export function periodOf<P extends Pick<Period, 'fromYear'>>(periods: readonly [P, ...P[]], year: number): P {
  return periods.findLast(({ fromYear }) => fromYear <= year) ?? periods[0];
}
