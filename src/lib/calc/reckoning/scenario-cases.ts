/** The cases of each scenario: what one of each row uses, on each plan and machine that it is done with. */
import { OutOfRangeError } from '../case/out-of-range-error.ts';
import type { CaseMethod, CaseResult, CaseUse, CaseWarning } from '../case/case-result.ts';
import type { CaseSources } from '../case/conditions.ts';
import type { FailedCell } from '../estimate-types.ts';
import type { ShareOfCases } from '../fleet/share-of-cases.ts';
import { sharesOfCases } from '../fleet/share-of-cases.ts';
import type { Fleet, Period, Standing } from '../fleet/standing.ts';
import type { CaseRow, EstimateInput, Scenario } from '../input.ts';
import { kept } from '../working/kept.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import { massBalance } from '../year/mass-balance.ts';
import { measuredUseWarnings } from '../year/measured-use-warnings.ts';
import { scaledToMeasured } from '../year/reconciliation.ts';
import type { CaseChoice, SourcesOfCases } from './case-sources.ts';
import { techniqueShares } from '../fleet/technique-shares.ts';

/** One case on one plan and machine. */
export interface CaseReckoning<C extends CaseUse> extends CaseChoice {
  readonly method: CaseMethod;
  readonly result: C;
}

/** The cases of a row that follow the scenario by one technique. */
export interface FollowedBy<One> {
  readonly one: One;
  /** Share of the row's cases that follow; null: all of them. */
  readonly percent: Quantity | null;
}
type EachFollowed<One> = readonly [FollowedBy<One>, ...FollowedBy<One>[]];

/** The cases of a row in theatres where one machine stands. */
export interface CasesThere<C extends CaseUse> {
  /** By technique, the row's own first. */
  readonly following: EachFollowed<CaseReckoning<C>>;
  /** What those do that do not follow; null where all are alike, or all follow. */
  readonly rest: CaseReckoning<C> | null;
}

export interface ScenarioCases<C extends CaseUse> {
  /** The cases that follow the scenario in the theatres that its machine comes to. */
  readonly ownCases: (scenario: Scenario, row: CaseRow) => EachFollowed<CaseReckoning<C>>;
  readonly casesIn: (scenario: Scenario, row: CaseRow, standing: Standing) => CasesThere<C>;
  /** The share of a row's cases that is done in these theatres. */
  readonly shareIn: (standing: Standing, row: CaseRow) => ShareOfCases;
  /** Rows that can be computed, today and in the scenario; the others are left out of its totals and named. */
  readonly rowsOf: (scenario: Scenario) => readonly CaseRow[];
  /** The rows that are left out of a scenario's totals, each with its reason. */
  readonly failedIn: (scenario: Scenario) => readonly FailedCell[];
}

/**
 * Where a scenario's own cases of a row are told of, when all has settled: of the theatres in which it is done the first
 * that have moved, or else the first.
 */
export function ownPlace(
  periods: readonly [Period, ...Period[]],
  isDoneIn: (standing: Standing) => boolean
): Standing {
  const { standings } = periods.at(-1) ?? periods[0];
  const there = standings.filter(isDoneIn);
  return there.find(({ moved }) => moved) ?? there[0] ?? standings[0];
}
/** A result with remarks added, where it is one that tells remarks. */
function noted<C extends CaseUse>(result: C, warnings: readonly CaseWarning[]): C {
  const told = (result as Partial<CaseResult>).warnings;
  return told === undefined ? result : { ...result, warnings: [...told, ...warnings] };
}

/** The choices of a row in theatres where one machine stands: what follows, and what does not where that is another. */
export function choicesIn(
  r: Reckoner,
  sources: SourcesOfCases,
  {
    today,
    scenario,
    row,
    standing,
    isFollowedByAll
  }: { today: Scenario; scenario: Scenario; row: CaseRow; standing: Standing; isFollowedByAll: boolean }
): { readonly following: EachFollowed<CaseChoice>; readonly rest: CaseChoice | null } {
  const following = choicesThatFollow(r, sources, { scenario, row, standing });
  if (scenario === today || isFollowedByAll) return { following, rest: null };
  const rest = sources.asToday(row, standing);
  return { following, rest: following.every(({ one }) => areAlike(one, rest)) ? null : rest };
}

/** The choices of the cases that follow, by technique. */
const choicesThatFollow = (
  r: Reckoner,
  sources: SourcesOfCases,
  { scenario, row, standing }: { scenario: Scenario; row: CaseRow; standing: Standing }
): EachFollowed<CaseChoice> =>
  ofEach(techniqueShares(r, scenario, row), ({ technique, percent }) => ({
    one: sources.following(scenario, row, standing, technique),
    percent
  }));

const ofEach = <From, To>(
  [first, ...others]: readonly [From, ...From[]],
  make: (from: From) => To
): readonly [To, ...To[]] => [make(first), ...others.map(make)];

const areAlike = (a: CaseChoice, b: CaseChoice): boolean =>
  a.row === b.row && a.plan === b.plan && a.machine === b.machine && a.agent === b.agent;

/**
 * @param today the baseline of the input
 * @param modelled the model's figures of a case
 */
export function scenarioCases<C extends CaseUse>(
  r: Reckoner,
  input: EstimateInput,
  {
    today,
    fleet,
    sources,
    modelled
  }: {
    today: Scenario;
    fleet: Fleet;
    sources: SourcesOfCases;
    modelled: (sources: CaseSources) => C;
  }
): ScenarioCases<C> {
  const { sourcesOf, asToday } = sources;
  const shareIn = sharesOfCases(r, input.theatreGroups);
  const placeOf = (scenario: Scenario, row: CaseRow): Standing =>
    ownPlace(fleet.periods(scenario), (standing) => shareIn(standing, row) !== 'none');
  const balance = massBalance(r, input.reference);

  const byPlan = kept((row: CaseRow) =>
    kept((plan: CaseChoice['plan']) =>
      kept((machine: CaseChoice['machine']) =>
        kept((agent: CaseChoice['agent']) => reckonCase({ row, plan, machine, agent }))
      )
    )
  );
  const reckoned = ({ row, plan, machine, agent }: CaseChoice): CaseReckoning<C> =>
    byPlan(row)(plan)(machine)(agent);
  const eachReckoned = (choices: EachFollowed<CaseChoice>): EachFollowed<CaseReckoning<C>> =>
    ofEach(choices, ({ one, percent }) => ({ one: reckoned(one), percent }));

  function reckonCase(choice: CaseChoice): CaseReckoning<C> {
    const { row } = choice;
    const model = modelled(sourcesOf(choice));
    const as = (method: CaseMethod, result: C): CaseReckoning<C> => ({ ...choice, method, result });
    if (choice.agent === null || row.measuredMlPerCase === null) return as(model.method, model);
    const measuredMl = r.cell(row.measuredMlPerCase, 'mL', 'caseMix', row.id, 'measuredMlPerCase');
    const done = asToday(row, placeOf(today, row));
    if (balance !== null) {
      const isToday = areAlike(choice, done);
      const ofToday = isToday ? model : modelled(sourcesOf(done));
      const measured = balance.splitOfMeasured(ofToday, measuredMl);
      if (isToday)
        return as(
          'measured',
          noted({ ...model, ...measured }, measuredUseWarnings(r, balance, { model, measuredMl }))
        );
      const factor = balance.spillFactor({ model: ofToday, measured });
      return as('scaled-to-measured', { ...model, ...balance.splitByFactor(model, factor) });
    }
    // What was measured takes the place of the liquid alone: where the agent went stays the model's own figure.
    if (areAlike(choice, done)) return as('measured', { ...model, liquidMl: measuredMl });
    const todayModelMl = modelled(sourcesOf(done)).liquidMl;
    // Where the model gives nothing for today there is no ratio to carry over.
    if (!(r.value(todayModelMl) > 0)) return as(model.method, model);
    const liquidMl = r.apply(scaledToMeasured, { modelMl: model.liquidMl, measuredMl, todayModelMl });
    return as('scaled-to-measured', { ...model, liquidMl });
  }

  /** Asked for by what fails, by the year, by monitoring and by the air of the room: chosen once. */
  const casesThere = kept((scenario: Scenario) =>
    kept((standing: Standing) => {
      const isFollowedByAll = r.value(standing.adoptionPercent) >= 100;
      return kept((row: CaseRow): CasesThere<C> => {
        const { following, rest } = choicesIn(r, sources, {
          today,
          scenario,
          row,
          standing,
          isFollowedByAll
        });
        return { following: eachReckoned(following), rest: rest === null ? null : reckoned(rest) };
      });
    })
  );
  const casesIn: ScenarioCases<C>['casesIn'] = (scenario, row, standing) =>
    casesThere(scenario)(standing)(row);

  /** Why the cases of a row cannot be computed; null where they can. */
  const faultIn = (scenario: Scenario, row: CaseRow): FailedCell | null => {
    try {
      for (const { standings } of fleet.periods(scenario))
        for (const standing of standings)
          if (shareIn(standing, row) !== 'none') casesIn(scenario, row, standing);
      return null;
    } catch (error) {
      if (!(error instanceof OutOfRangeError || error instanceof RangeError)) throw error;
      return { path: `caseMix.${row.id}`, sentence: error.message };
    }
  };
  const sorted = kept((scenario: Scenario): { rows: readonly CaseRow[]; failed: readonly FailedCell[] } => {
    // What cannot be compared with today is in no total of a scenario either.
    const before = scenario === today ? { rows: input.caseMix, failed: [] } : sorted(today);
    const faults = before.rows.map((row) => faultIn(scenario, row));
    return {
      rows: before.rows.filter((_, index) => faults[index] === null),
      failed: [...before.failed, ...faults.filter((fault) => fault !== null)]
    };
  });

  return {
    ownCases: (scenario, row) =>
      eachReckoned(choicesThatFollow(r, sources, { scenario, row, standing: placeOf(scenario, row) })),
    casesIn,
    shareIn,
    rowsOf: (scenario) => sorted(scenario).rows,
    failedIn: (scenario) => sorted(scenario).failed
  };
}
