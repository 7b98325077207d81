/** The figures of levers, twins and alternatives by the names that the estimate gives them, for whoever asks about one. */
import type { Attribution } from '../attribution/attribution.ts';
import type { MoneyRow } from '../attribution/money-increments.ts';
import type { TonnesRow } from '../attribution/tonnes-increments.ts';
import type { Lever, Scenario } from '../input.ts';
import { levers } from '../input.ts';

/** Rooms of a scenario whose figures are made of runs with some of its levers off. */
export const attributionRooms = [
  'attribution',
  'ladder',
  'ladderInOrder',
  'withoutMachine',
  'machineAdds',
  'againstLawful'
] as const;
export type AttributionRoom = (typeof attributionRooms)[number];

export const isAttributionRoom = (room: string): room is AttributionRoom =>
  attributionRooms.some((each) => each === room);

/** The lists under `increments`; no room of a scenario has such a name, so that a scenario may be called the same. */
export const isListOfIncrements = (name: string): boolean => name === 'money' || name === 'tonnes';

/**
 * What a room of a scenario holds, by name: of `attribution` and `ladder` by lever, of `ladderInOrder` by an order with
 * plus signs between its levers, e.g. `flow+agent`, and then by lever.
 */
export function attributionFigures(
  apart: Attribution,
  scenario: Scenario,
  [room, order = '']: readonly [AttributionRoom, ...string[]]
): unknown {
  switch (room) {
    case 'attribution':
      return Object.fromEntries(apart.parts(scenario).map((part) => [part.lever, part]));
    case 'ladder':
      return rungs(apart, scenario, levers);
    case 'ladderInOrder':
      return { [order]: rungs(apart, scenario, order.split('+') as readonly Lever[]) };
    case 'withoutMachine':
      return apart.twin(scenario)?.twin;
    case 'machineAdds':
      return apart.twin(scenario)?.machineAdds;
    case 'againstLawful':
      return apart.againstLawful(scenario);
  }
}

const rungs = (apart: Attribution, scenario: Scenario, order: readonly Lever[]) =>
  Object.fromEntries(apart.ladder(scenario, order).map(({ lever, step }) => [lever, step]));

/** Both lists, by alternative. */
export function incrementFigures(apart: Attribution): unknown {
  const { money, tonnes } = apart.increments();
  return {
    money: Object.fromEntries(money.map((row) => [row.id, figuresByOutlay(row)])),
    tonnes: Object.fromEntries(tonnes.map((row) => [row.id, figuresByTonnes(row)]))
  };
}

function figuresByOutlay({ presentValueOfOutlay, step }: MoneyRow) {
  if (step === null) return { presentValueOfOutlay };
  const { figures } = step;
  return {
    presentValueOfOutlay,
    extraInvestment: figures.investment,
    extraYearlySaving: figures.yearlySaving,
    npv: figures.npv,
    simplePaybackYears: figures.simplePaybackYears,
    irrPercent: figures.irrPercent
  };
}

function figuresByTonnes({ netPresentCost, tonnes, step }: TonnesRow) {
  if (step === null) return { netPresentCost, tonnes };
  const { extraCost, extraTonnes, costPerTonne } = step;
  return { netPresentCost, tonnes, extraCost, extraTonnes, costPerTonne };
}
