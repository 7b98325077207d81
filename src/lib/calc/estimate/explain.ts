import { attribution } from '../attribution/attribution.ts';
import { CaseMemo } from '../known-cases/case-memo.ts';
import {
  attributionFigures,
  attributionRooms,
  incrementFigures,
  isAttributionRoom,
  isListOfIncrements
} from './explain-attribution.ts';
import { caseQuantities } from '../case/case-result.ts';
import type { EstimateInput } from '../input.ts';
import { reckon } from '../reckoning/reckoning.ts';
import { recorder, workingOf } from '../working/recorder.ts';
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Working } from '../working/working.ts';

const rooms = [
  'perYear',
  'cases',
  'againstBaseline',
  ...attributionRooms,
  'waysToPay',
  'monitoring',
  'monitoringGaps',
  'vapourOnOwnPlan',
  'agentFate',
  'agentFateByGroup',
  'ledger',
  'intensity',
  'theatreAir'
];

/** A figure with this path does not exist, or nothing was computed for it. */
export class NoSuchFigureError extends Error {
  constructor(path: string, allowed: string) {
    super(`There is no figure at “${path}”; allowed is ${allowed}.`);
    this.name = 'NoSuchFigureError';
  }
}

/**
 * How one figure of the estimate came about: the same calculation run again with the recorder, for this figure alone.
 * @param path as in the estimate, e.g. `today.perYear.cost.total`, `closed.cases.lap-chole.liquidMl`,
 *   `closed.againstBaseline.years.3.savings.agents`, `closed.monitoring.low-flow.agent-concentration.cost`,
 *   `closed.attribution.flow.npv`, `increments.tonnes.closed:without-machine.costPerTonne`.
 * @throws NoSuchFigureError with what is allowed at the first part that leads nowhere.
 */
export function explain(input: EstimateInput, path: string): Working {
  return explainer(input)(path);
}

/**
 * `explain` for many figures of one input: steps that they share are recorded once, and are the same objects.
 * @param r a recorder, for an input that is not the workbook's in all its cells (`recorderOver`)
 * @param memo results of cases that are known: what is behind them is recorded when it is looked at
 */
export function explainer(
  input: EstimateInput,
  r: Reckoner = recorder,
  memo?: CaseMemo
): (path: string) => Working {
  const reckoning = reckon(r, input, memo);
  // Many runs stand behind one figure: their cases are recorded when they are looked at.
  const known = memo ?? new CaseMemo();
  const apart = attribution(r, input, (named) => reckon(named, input, known));
  return (path) => {
    const [scenarioId = '', room = '', ...rest] = path.split('.');
    if (scenarioId === 'increments' && isListOfIncrements(room))
      return follow(incrementFigures(apart), [room, ...rest], path);
    if (scenarioId === 'reconciliation' && (room === 'agents' || room === 'nitrousOxide'))
      return follow(reckoning.reconciliation(), [room, ...rest], path);
    const scenario = input.scenarios.find((each) => each.id === scenarioId);
    if (scenario === undefined)
      throw new NoSuchFigureError(
        path,
        `one that begins with ${input.scenarios.map((each) => each.id).join(', ')}`
      );
    if (isAttributionRoom(room))
      return follow(attributionFigures(apart, scenario, [room, ...rest]), rest, path);
    switch (room) {
      case 'perYear':
        return follow(reckoning.year(scenario), rest, path);
      case 'againstBaseline':
        return follow(reckoning.against(scenario), rest, path);
      case 'cases': {
        const [caseId = '', ...figure] = rest;
        const row = input.caseMix.find((each) => each.id === caseId);
        if (row === undefined)
          throw new NoSuchFigureError(
            path,
            `cases. and one of ${input.caseMix.map((each) => each.id).join(', ')}`
          );
        const { result } = reckoning.caseOf(scenario, row);
        const used = Object.fromEntries(caseQuantities.map((name) => [name, result[name]]));
        return follow(
          { ...used, floorMl: reckoning.floorOf(scenario, row), ...reckoning.pricedCase(scenario)(row) },
          figure,
          path
        );
      }
      case 'monitoring':
        // Ids of rules hold a dot, e.g. `low-flow.agent-concentration`.
        return follow(
          reckoning.monitoringFigures(scenario),
          [rest.slice(0, -1).join('.'), ...rest.slice(-1)],
          path
        );
      case 'waysToPay':
        return follow(reckoning.waysToPay(scenario), rest, path);
      case 'monitoringGaps':
        return follow(reckoning.monitoringGaps(scenario), rest, path);
      case 'vapourOnOwnPlan':
        return follow(reckoning.vapour(scenario), rest, path);
      case 'agentFate':
        return follow(reckoning.agentFate(scenario), rest, path);
      case 'agentFateByGroup':
        return follow(reckoning.agentFateByGroup(scenario), rest, path);
      case 'ledger':
        return follow(reckoning.ledger(scenario), rest, path);
      case 'intensity':
        return follow(reckoning.intensity(scenario), rest, path);
      case 'theatreAir':
        return follow(reckoning.theatreAir(scenario), rest, path);
      default:
        throw new NoSuchFigureError(path, `${scenarioId}. and one of ${rooms.join(', ')}`);
    }
  };
}

function follow(figures: unknown, parts: readonly string[], path: string): Working {
  let here: unknown = figures;
  for (const part of parts) {
    const next =
      typeof here === 'object' && here !== null
        ? (here as Readonly<Record<string, unknown>>)[part]
        : undefined;
    if (next === undefined || next === null) throw new NoSuchFigureError(path, namesIn(here));
    here = next;
  }
  if (!isWorking(here)) throw new NoSuchFigureError(path, namesIn(here));
  return workingOf(here as unknown as Quantity);
}

const isWorking = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'kind' in value && 'value' in value;

const namesIn = (value: unknown): string =>
  typeof value === 'object' && value !== null && !isWorking(value)
    ? `one of ${[...Object.keys(value), ...gettersOf(value)].join(', ')} there`
    : 'nothing further';

/** Names of the figures that an object of a class makes when they are read. */
function gettersOf(value: object): string[] {
  const kind: unknown = Object.getPrototypeOf(value);
  if (kind === null || kind === Object.prototype) return [];
  return Object.entries(Object.getOwnPropertyDescriptors(kind))
    .filter(([, { get }]) => get !== undefined)
    .map(([name]) => name);
}
