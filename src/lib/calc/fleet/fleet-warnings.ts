/** Where machines that come and theatres disagree, one sentence each. */
import { baselineOf } from '../baseline-of.ts';
import type { EstimateInput, Machine } from '../input.ts';

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What a reader must know of the machines that stand where, beside the figures. */
export function fleetWarnings(input: Pick<EstimateInput, 'machines' | 'scenarios' | 'site'>): string[] {
  const today = baselineOf(input);
  const theatres = input.site.theatres;
  const inTheatres = counted(theatres, 'theatre', 'theatres');
  const machineOf = (id: string): Machine | undefined => input.machines.find((machine) => machine.id === id);
  const standing = machineOf(today.machine);
  const warnings: string[] = [];
  if (standing !== undefined && standing.units !== theatres && standing.units > 0)
    warnings.push(
      `One “${standing.name}” stands in each of the ${inTheatres}, so ${theatres} count for service, not the ${standing.units} that are entered.`
    );
  for (const { name, machine: id, unitsByYear, machinesStay } of input.scenarios) {
    const machine = machineOf(id);
    if (machine === undefined || machinesStay || id === today.machine) continue;
    const units = unitsByYear?.reduce((sum, each) => sum + each, 0) ?? machine.units;
    if (units === theatres) continue;
    const brings = `“${name}” brings ${units === 0 ? 'no machine' : counted(units, 'machine', 'machines')} to ${inTheatres}:`;
    warnings.push(
      units > theatres
        ? `${brings} ${counted(units - theatres, 'is a spare', 'are spares')}, bought and serviced.`
        : `${brings} “${standing?.name ?? today.machine}” stays in ${units === 0 ? 'all of them' : `the other ${theatres - units}`}.`
    );
  }
  return warnings;
}
