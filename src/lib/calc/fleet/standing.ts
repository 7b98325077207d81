/**
 * What stands in the theatres, and when: the machines of today, those that come under a scenario and the theatres they
 * go to, year by year.
 */
import type { EstimateInput, Machine, Move, Payment, Scenario, TheatreGroup } from '../input.ts';
import { formula } from '../working/formula.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { planUnder } from './plan-followed.ts';
import type { TheatresOfGroup } from './share-of-cases.ts';
import { theatresTogether } from './share-of-cases.ts';

/** Machines that come together. */
export interface Arrival {
  /** Years from the decision, 0 for now; they serve from the year after. */
  readonly year: number;
  readonly machine: Machine;
  readonly units: Quantity;
  /** Of the theatres that they come to, those that give up a machine of today's; null: they are spares. */
  readonly tradedIn: Quantity | null;
  /** The move, for the way in which it is paid for, and its place among the scenario's; null: spares. */
  readonly move: { readonly terms: Move; readonly index: number } | null;
}

/** Theatres of a group in which one machine stands and one plan is followed. */
export interface Standing extends TheatresOfGroup {
  readonly machine: Machine;
  /** Id of the machine whose plan is followed: the one that stands, or would stand if machines did not stay. */
  readonly planOf: string;
  /** Whether they have moved, or would have, or the scenario moves none: there recovery minutes are saved. */
  readonly moved: boolean;
  /** Whether machines that came stand there, and not those of today. */
  readonly hasCome: boolean;
  /** What is paid for the machines there in these years; null: they are owned. */
  readonly payment: Payment | null;
  /** Share of the cases there that follow the scenario's plan in these years. */
  readonly adoptionPercent: Quantity;
}

/** Machines of one kind that stand, or stand by, in a year. */
export interface Serviced {
  readonly machine: Machine;
  readonly units: Quantity;
  /** What is paid for them in these years; null: they are owned. */
  readonly payment: Payment | null;
}

/**
 * Years in which the same machines stand in the same theatres, the same share of cases follows the plan, and nitrous oxide
 * is supplied alike.
 */
export interface Period {
  readonly fromYear: number;
  readonly standings: readonly [Standing, ...Standing[]];
  /** Every machine that is there: one a theatre, and spares. */
  readonly serviced: readonly Serviced[];
}

/** A time at which today's machines that still stand in a group reach the end of their life and are bought again. */
export interface Renewal {
  readonly year: number;
  readonly machine: Machine;
  readonly group: TheatreGroup;
  readonly units: Quantity;
  /** Of these, those that still stand at the end of the appraisal, where no later renewal follows; null: one follows. */
  readonly unitsAtEnd: Quantity | null;
}

export interface Fleet {
  /** What a scenario brings, in order of time; nothing where today's machines stay. */
  readonly arrivals: (scenario: Scenario) => readonly Arrival[];
  /** In order of time, from year 1 on; the last is the settled one. */
  readonly periods: (scenario: Scenario) => readonly [Period, ...Period[]];
  /** Where today's machines are replaced at the end of their life: when, and how many still stand then. */
  readonly renewals: (scenario: Scenario) => readonly Renewal[];
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, next) => all + next, 0);

export const theatresThatMove = formula<{ asked: number; theatres: number; before: readonly number[] }>({
  id: 'fleet.theatres-that-move',
  yields: 'Theatres that move to the machines that come',
  words: 'As many as the move says, as long as theatres are left with another machine.',
  expression: 'max(0, min(u, T - sum(b)))',
  inputs: {
    asked: { symbol: 'u', unit: '1', words: 'theatres of the move' },
    theatres: { symbol: 'T', unit: '1', words: 'theatres of the group' },
    before: { symbol: 'b', unit: '1', words: 'theatres that have moved before' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ asked, theatres, before }) => Math.max(0, Math.min(asked, theatres - sum(before)))
});

export const theatresThatStay = formula<{ theatres: number; moved: readonly number[] }>({
  id: 'fleet.theatres-that-stay',
  yields: 'Theatres of a group that are left',
  words: 'Theatres less those that have moved to another machine.',
  expression: 'T - sum(m)',
  inputs: {
    theatres: { symbol: 'T', unit: '1', words: 'theatres of the group' },
    moved: { symbol: 'm', unit: '1', words: 'theatres that have moved' }
  },
  unit: '1',
  source: 'definition',
  compute: ({ theatres, moved }) => theatres - sum(moved)
});

export const adoptionOfYear = formula<{ ofYear: number; adoption: number }>({
  id: 'fleet.adoption-of-year',
  yields: 'Adoption in this year',
  words: 'What is said of the year, and never more than the adoption that is reached in the end.',
  expression: 'min(y, a)',
  inputs: {
    ofYear: { symbol: 'y', unit: '%', words: 'adoption said of the year' },
    adoption: { symbol: 'a', unit: '%', words: 'adoption that is reached' }
  },
  unit: '%',
  source: 'definition',
  compute: ({ ofYear, adoption }) => Math.min(ofYear, adoption)
});

/** What is told of a fleet from. */
export type FleetInput = Pick<EstimateInput, 'machines' | 'theatreGroups' | 'caseMix' | 'accounting'>;

/** A move that has been taken. */
interface Taken {
  readonly group: TheatreGroup;
  readonly arrival: Arrival;
  /** Those that were left for it. */
  readonly theatres: Quantity;
  /** The year at whose end they give the machines back; null: the machines stay. */
  readonly untilYear: number | null;
}

const isThereIn =
  (year: number) =>
  (move: Taken): boolean =>
    move.arrival.year < year && (move.untilYear === null || year <= move.untilYear);
const theatresOfMove = ({ theatres }: Taken): Quantity => theatres;

/** The first year in which machines are owned that were bought at the end of their term; null: they never are. */
const ownedFrom = ({ year, payment }: Move): number | null =>
  payment?.atEnd === 'buy' ? year + payment.termYears + 1 : null;

/** What is paid for machines that came, in a year; null: they are owned then. */
function paymentIn(year: number, { move }: Arrival): Payment | null {
  if (move === null) return null;
  const owned = ownedFrom(move.terms);
  return owned !== null && year >= owned ? null : move.terms.payment;
}

/** Machines that came and are one lot in a year: of one kind, and owned or paid for by the same move. */
const lotIn = (year: number, arrival: Arrival): string =>
  `${arrival.machine.id} ${paymentIn(year, arrival) === null ? 'owned' : arrival.move?.index}`;

/** The year at whose end leased machines go back; null where they are bought, or stay to the end of the appraisal. */
function returnedAfter({ year, payment }: Move, appraisalYears: number): number | null {
  if (payment?.atEnd !== 'return') return null;
  const end = year + payment.termYears;
  return end < appraisalYears ? end : null;
}

/**
 * The fleet of an input: in each theatre group the machine of today stands, until moves bring others.
 *
 * - What comes in year y (0: now) serves from year y + 1.
 * - Moves of a group are taken in order of their years, those of one year as they are listed; each takes theatres that
 *   have not moved yet, or whose leased machines have gone back; theatres beyond the group's are no theatres.
 * - Spares come with the last move, and are of its kind: bought and serviced, and no theatre moves for them.
 * - `machinesStay`: nothing is bought; theatres that would move follow the plan of the machine that would have come from
 *   the same year on, on the one that stands there.
 */
export function fleetOf(r: Reckoner, input: FleetInput, today: Scenario): Fleet {
  const { theatreGroups: groups, accounting, caseMix } = input;
  const machineOf = (id: string): Machine => {
    const found = input.machines.find((machine) => machine.id === id);
    if (found === undefined)
      throw new Error(`The input has no machine “${id}”; a workbook is checked before it gets here.`);
    return found;
  };
  const theatresOf = kept(({ id, theatres }: TheatreGroup) =>
    r.cell(theatres, '1', 'theatreGroups', id, 'theatres')
  );
  const staying = (group: TheatreGroup, moved: readonly Quantity[]): Quantity =>
    moved.length === 0
      ? theatresOf(group)
      : r.apply(theatresThatStay, { theatres: theatresOf(group), moved });

  const taken = kept((scenario: Scenario): readonly Taken[] => {
    const found: Taken[] = [];
    const inOrder = scenario.moves
      .map((terms, index) => ({ terms, index }))
      .sort((a, b) => a.terms.year - b.terms.year);
    for (const move of inOrder) {
      const { theatreGroup, machine, year, theatres: asked } = move.terms;
      const group = groups.find(({ id }) => id === theatreGroup);
      if (group === undefined)
        throw new Error(
          `The input has no theatre group “${theatreGroup}”; a workbook is checked before it gets here.`
        );
      const earlier = found.filter((each) => each.group === group);
      const before = earlier.filter(isThereIn(year + 1)).map(theatresOfMove);
      const theatres =
        asked === null
          ? staying(group, before)
          : r.apply(theatresThatMove, {
              asked: r.cell(asked, '1', 'scenarios', scenario.id, 'moves', String(move.index), 'theatres'),
              theatres: theatresOf(group),
              before
            });
      if (!(r.value(theatres) > 0)) continue;
      const tradedIn =
        before.length === earlier.length
          ? theatres
          : r.apply(theatresThatMove, {
              asked: theatres,
              theatres: theatresOf(group),
              before: earlier.map(theatresOfMove)
            });
      found.push({
        group,
        theatres,
        untilYear: returnedAfter(move.terms, accounting.appraisalYears),
        arrival: { year, machine: machineOf(machine), units: theatres, tradedIn, move }
      });
    }
    return found;
  });
  const coming = kept((scenario: Scenario): readonly Arrival[] => {
    const moves = taken(scenario).map(({ arrival }) => arrival);
    const last = moves.at(-1);
    if (last === undefined || !(scenario.spares > 0)) return moves;
    const units = r.cell(scenario.spares, '1', 'scenarios', scenario.id, 'spares');
    return [...moves, { year: last.year, machine: last.machine, units, tradedIn: null, move: null }];
  });

  const adoptionIn = (scenario: Scenario, year: number): Quantity => {
    const reached = r.cell(scenario.adoptionPercent, '%', 'scenarios', scenario.id, 'adoptionPercent');
    const ofYear = scenario.adoptionFirstYearsPercent?.[year - 1];
    if (ofYear === undefined) return reached;
    return r.apply(adoptionOfYear, {
      ofYear: r.cell(ofYear, '%', 'scenarios', scenario.id, 'adoptionFirstYearsPercent', String(year - 1)),
      adoption: reached
    });
  };

  /** Whether nothing tells theatres that would have moved from the others: on machines that stay, with one plan for both. */
  const isOnePlace = (scenario: Scenario, group: TheatreGroup, moves: readonly Taken[]): boolean =>
    scenario.machinesStay &&
    scenario.recoveryMinutesSavedPerCase === 0 &&
    caseMix.every(({ id }) => {
      const plan = (planOf: string) => planUnder(scenario, id, { place: { group, planOf }, today });
      return moves.every(({ arrival }) => plan(arrival.machine.id) === plan(group.machine));
    });

  function standingsIn(scenario: Scenario, year: number): Standing[] {
    const adoptionPercent = adoptionIn(scenario, year);
    const movesNone = taken(scenario).length === 0;
    return groups.flatMap((group): Standing[] => {
      const machine = machineOf(group.machine);
      const here = taken(scenario).filter((each) => each.group === group && isThereIn(year)(each));
      const rest = { group, machine, planOf: group.machine, hasCome: false, payment: null, adoptionPercent };
      if (here.length === 0 || isOnePlace(scenario, group, here))
        return [{ ...rest, theatres: theatresOf(group), isWhole: true, moved: movesNone || here.length > 0 }];
      const left = staying(group, here.map(theatresOfMove));
      const isLeft = r.value(left) > 0;
      const together = lotsOf(here, ({ arrival }) =>
        scenario.machinesStay ? arrival.machine.id : lotIn(year, arrival)
      );
      const moved = together.map((of): Standing => {
        const [{ arrival }] = of;
        return {
          group,
          planOf: arrival.machine.id,
          moved: true,
          adoptionPercent,
          theatres: allOf(of.map(theatresOfMove)),
          isWhole: !isLeft && together.length === 1,
          ...(scenario.machinesStay
            ? { machine, hasCome: false, payment: null }
            : { machine: arrival.machine, hasCome: true, payment: paymentIn(year, arrival) })
        };
      });
      return isLeft ? [...moved, { ...rest, theatres: left, isWhole: false, moved: false }] : moved;
    });
  }

  const allOf = (parts: readonly Quantity[]): Quantity => {
    const [only] = parts;
    return parts.length === 1 && only !== undefined ? only : r.apply(theatresTogether, { parts });
  };

  /** Every machine in a year, those of one kind and one way of paying together, the first to come first. */
  function servicedIn(scenario: Scenario, year: number): Serviced[] {
    const moves = scenario.machinesStay ? [] : taken(scenario).filter(isThereIn(year));
    const come = scenario.machinesStay
      ? []
      : coming(scenario).filter((each) =>
          each.move === null ? each.year < year : moves.some(({ arrival }) => arrival === each)
        );
    const alike = lotsOf(come, (arrival) => lotIn(year, arrival));
    const stay = groups
      .map((group) => ({
        machine: machineOf(group.machine),
        units: staying(group, moves.filter((each) => each.group === group).map(theatresOfMove))
      }))
      .filter(({ units }) => r.value(units) > 0);
    const ofToday = new Map<Machine, Quantity[]>();
    for (const { machine, units } of stay) ofToday.set(machine, [...(ofToday.get(machine) ?? []), units]);
    return [
      ...alike.map((arrivals): Serviced => {
        const [arrival] = arrivals;
        return {
          machine: arrival.machine,
          payment: paymentIn(year, arrival),
          units: allOf(arrivals.map(({ units }) => units))
        };
      }),
      ...[...ofToday].map(([machine, units]): Serviced => ({ machine, payment: null, units: allOf(units) }))
    ];
  }

  const periods = kept((scenario: Scenario): readonly [Period, ...Period[]] => {
    const starts = new Set([1]);
    for (const { arrival, untilYear } of taken(scenario)) {
      starts.add(arrival.year + 1);
      if (untilYear !== null) starts.add(untilYear + 1);
      const owned = arrival.move === null ? null : ownedFrom(arrival.move.terms);
      if (owned !== null && owned <= accounting.appraisalYears) starts.add(owned);
    }
    if (scenario !== today) {
      scenario.adoptionFirstYearsPercent?.forEach((_, year) => starts.add(year + 2));
      if (scenario.nitrousOxideSupply !== 'as-today') starts.add(scenario.nitrousOxideSupplyYear + 1);
    }
    const made = [...starts]
      .sort((a, b) => a - b)
      .map((fromYear): Period => {
        const [first, ...others] = standingsIn(scenario, fromYear);
        if (first === undefined)
          throw new Error('The input has no theatre group; a workbook is checked before it gets here.');
        return { fromYear, standings: [first, ...others], serviced: servicedIn(scenario, fromYear) };
      });
    return made as [Period, ...Period[]];
  });

  const renewals = kept((scenario: Scenario): readonly Renewal[] => {
    if (accounting.counterfactual !== 'replaced-at-end-of-life') return [];
    return groups.flatMap((group): Renewal[] => {
      if (group.machineAgeYears === null) return [];
      const machine = machineOf(group.machine);
      const years = endsOfLife(machine, group.machineAgeYears, accounting.appraisalYears);
      const stillIn = (year: number): Quantity =>
        staying(
          group,
          scenario.machinesStay
            ? []
            : taken(scenario)
                .filter((each) => each.group === group && each.arrival.year <= year)
                .map(theatresOfMove)
        );
      return years
        .map((year, index): Renewal => ({
          year,
          machine,
          group,
          units: stillIn(year),
          unitsAtEnd: index === years.length - 1 ? stillIn(accounting.appraisalYears) : null
        }))
        .filter(({ units }) => r.value(units) > 0);
    });
  });

  return {
    arrivals: (scenario) => (scenario.machinesStay ? [] : coming(scenario)),
    periods,
    renewals
  };
}

/** Whole years within the appraisal in which machines of an age reach the end of their life, and those after them. */
function endsOfLife({ lifeYears }: Machine, ageYears: number, appraisalYears: number): number[] {
  const years: number[] = [];
  for (let lives = 0; ; lives += 1) {
    const year = Math.max(Math.round(lifeYears - ageYears) + lives * lifeYears, (years.at(-1) ?? -1) + 1);
    if (year >= appraisalYears) return years;
    years.push(year);
  }
}

/** Things with the same key together, in order of first mention. */
function lotsOf<T>(all: readonly T[], keyOf: (one: T) => string): [T, ...T[]][] {
  const lots = new Map<string, [T, ...T[]]>();
  for (const one of all) {
    const known = lots.get(keyOf(one));
    if (known === undefined) lots.set(keyOf(one), [one]);
    else known.push(one);
  }
  return [...lots.values()];
}

/** The period that a year falls into. */
export function periodOf<P extends Pick<Period, 'fromYear'>>(periods: readonly [P, ...P[]], year: number): P {
  return periods.findLast(({ fromYear }) => fromYear <= year) ?? periods[0];
}
