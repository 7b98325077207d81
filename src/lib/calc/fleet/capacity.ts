/** How far the theatres of a group are taken up by the anaesthetics that are done there. */
import type { EstimateInput, TheatreGroup } from '../input.ts';
import { plain } from '../working/plain.ts';
import { sharesOfCases } from './share-of-cases.ts';

export interface Capacity {
  readonly group: TheatreGroup;
  /** Hours of anaesthesia a year, of every technique. */
  readonly anaesthesiaHours: number;
  /** Theatres × staffed hours; null: not given. */
  readonly staffedHours: number | null;
  /** null where no hours were given. */
  readonly takenUpPercent: number | null;
}

/** Σ cases a year × share done in the group × minutes / 60, against theatres × staffed hours of one. */
export function capacityOf({
  theatreGroups,
  caseMix
}: Pick<EstimateInput, 'theatreGroups' | 'caseMix'>): Capacity[] {
  const shareIn = sharesOfCases(plain, theatreGroups);
  return theatreGroups.map((group) => {
    const whole = {
      group,
      isWhole: true,
      theatres: plain.cell(group.theatres, '1', 'theatreGroups', group.id, 'theatres')
    };
    const anaesthesiaHours = caseMix.reduce((hours, row) => {
      const share = shareIn(whole, row);
      const part = share === 'all' ? 100 : share === 'none' ? 0 : plain.value(share);
      return hours + (((row.casesPerYear * part) / 100) * row.minutes) / 60;
    }, 0);
    const staffedHours =
      group.staffedHoursPerTheatre === null ? null : group.theatres * group.staffedHoursPerTheatre;
    return {
      group,
      anaesthesiaHours,
      staffedHours,
      takenUpPercent:
        staffedHours === null || staffedHours === 0 ? null : (100 * anaesthesiaHours) / staffedHours
    };
  });
}
