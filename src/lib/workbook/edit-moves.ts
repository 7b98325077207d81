/** Machines that come to theatres under a scenario: rows in and out, and how they are paid for. */
import type { Move, Payment, Scenario } from '#lib/calc/input.ts';
import { ownEntry } from '#lib/calc/own-entry.ts';
import type { RowsChanged } from './edit-rows.ts';
import { keptOf } from './kept-by-path.ts';
import type { Workbook } from './workbook.ts';
import { limits } from './workbook.ts';

/** A move as a row of one table over all scenarios. */
export interface MoveRow {
  readonly scenario: Scenario;
  readonly move: Move;
  readonly index: number;
}

/** The moves of all scenarios, one after the other. */
export const moveRows = ({ scenarios }: Workbook): MoveRow[] =>
  scenarios.flatMap((scenario) => scenario.moves.map((move, index) => ({ scenario, move, index })));

export const pathOfMove = ({ scenario, index }: MoveRow): string => `scenarios.${scenario.id}.moves.${index}`;

/** The plan that stands for a machine in a scenario before anybody has chosen one: that of the machines of today. */
export function planToStartFrom({ scenarios, theatreGroups }: Workbook, { plans }: Scenario): string {
  const today = scenarios.find(({ baseline }) => baseline);
  const machines = theatreGroups.map(({ machine }) => machine);
  const own = machines.map((machine) => ownEntry(plans, machine)).find((plan) => plan !== undefined);
  const named = Object.values(plans)[0];
  const todays = machines.map((machine) => ownEntry(today?.plans ?? {}, machine));
  return own ?? named ?? todays.find((plan) => plan !== undefined) ?? '';
}

/**
 * A machine that comes under a scenario, behind those that do already: the first that is another than today's, to theatres
 * that have not moved yet, now and bought, on the plan that stands there.
 */
export function addMove(workbook: Workbook, scenarioId: string): RowsChanged {
  const scenario = workbook.scenarios.find(({ id }) => id === scenarioId);
  if (scenario === undefined || scenario.baseline)
    return {
      sentence: 'Nothing comes under the scenario that stands for today; add another scenario first.'
    };
  if (scenario.moves.length >= limits.moves)
    return { sentence: `A scenario holds at most ${limits.moves} machines that come; nothing was added.` };
  const group = workbook.theatreGroups.find(({ id, theatres }) => theatres > movedIn(scenario, id, theatres));
  if (group === undefined)
    return {
      sentence: `All theatres move under “${scenario.name}” already; say in a row that is there in how many.`
    };
  const today = new Set(workbook.theatreGroups.map(({ machine }) => machine));
  const machine = workbook.machines.find(({ id }) => !today.has(id));
  if (machine === undefined)
    return { sentence: 'There is no machine but today’s: add the one that could come on Machines.' };
  const move: Move = { theatreGroup: group.id, machine: machine.id, year: 0, theatres: null, payment: null };
  const plans =
    ownEntry(scenario.plans, machine.id) === undefined
      ? { ...scenario.plans, [machine.id]: planToStartFrom(workbook, scenario) }
      : scenario.plans;
  return { workbook: withMoves(workbook, scenario.id, [...scenario.moves, move], plans) };
}

const movedIn = ({ moves }: Scenario, groupId: string, theatres: number): number =>
  moves
    .filter(({ theatreGroup }) => theatreGroup === groupId)
    .reduce((sum, { theatres: moved }) => sum + (moved ?? theatres), 0);

/** Takes rows of the table over all scenarios away. */
export function deleteMoves(workbook: Workbook, rows: readonly number[]): RowsChanged {
  const going = rows.flatMap((row) => moveRows(workbook)[row] ?? []);
  return {
    workbook: [...new Set(going.map(({ scenario }) => scenario))].reduce((changed, { id, moves }) => {
      const gone = going.filter(({ scenario }) => scenario.id === id).map(({ index }) => index);
      return withMoves(
        changed,
        id,
        moves.filter((_, index) => !gone.includes(index))
      );
    }, workbook)
  };
}

export const newPayment: Payment = {
  kind: 'lease',
  perUnitPerYear: '0',
  includesService: false,
  includesConsumables: false,
  growthPercent: 0,
  inAdvance: true,
  termYears: 7,
  atEnd: 'renew',
  endPricePerUnit: '0'
};

/** Says how machines that come are paid for; null: they are bought. */
export function payFor(workbook: Workbook, row: MoveRow, payment: Payment | null): RowsChanged {
  const machine = workbook.machines.find(({ id }) => id === row.move.machine);
  const fitting =
    payment === null || machine === undefined
      ? payment
      : { ...payment, termYears: Math.min(payment.termYears, machine.lifeYears) };
  const paid = withMoves(
    workbook,
    row.scenario.id,
    row.scenario.moves.map((move, index) => (index === row.index ? { ...move, payment: fitting } : move))
  );
  if (payment !== null) return { workbook: paid };
  const gone = `scenarios.${row.scenario.id}.moves.${row.index}.payment.`;
  return { workbook: { ...paid, ...keptOf(paid, (path) => !path.startsWith(gone)) } };
}

/** Moves are known by their place, so what was kept for a place is void once places change. */
function withMoves(
  workbook: Workbook,
  scenarioId: string,
  moves: readonly Move[],
  plans?: Scenario['plans']
): Workbook {
  const before = workbook.scenarios.find(({ id }) => id === scenarioId)?.moves ?? [];
  const kept = moves.length >= before.length;
  return {
    ...workbook,
    ...(kept ? {} : keptOf(workbook, (path) => !path.startsWith(`scenarios.${scenarioId}.moves.`))),
    scenarios: workbook.scenarios.map((each) =>
      each.id === scenarioId ? { ...each, moves, plans: plans ?? each.plans } : each
    )
  };
}
