import type { EstimateInput, Scenario } from '../input.ts';

/**
 * Id of the machine that comes to most theatres, the first of those that come to as many; null where none comes. What is
 * asked or said of “the machine” of a scenario is of this one.
 */
export function machineThatComes(
  { theatreGroups }: Pick<EstimateInput, 'theatreGroups'>,
  { moves, machinesStay }: Pick<Scenario, 'moves' | 'machinesStay'>
): string | null {
  if (machinesStay) return null;
  const theatres = new Map<string, number>();
  for (const { theatreGroup, machine, theatres: asked } of moves) {
    const all = theatreGroups.find(({ id }) => id === theatreGroup)?.theatres ?? 0;
    theatres.set(machine, (theatres.get(machine) ?? 0) + (asked ?? all));
  }
  let [most, found]: [number, string | null] = [0, null];
  for (const [machine, number] of theatres) if (number > most) [most, found] = [number, machine];
  return found;
}
