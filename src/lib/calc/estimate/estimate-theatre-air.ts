/** The estimate's figures of theatre air, plain and ready for JSON. */
import type { LimitHeldAgainst, TheatreAir } from '../estimate-types.ts';
import type { HeldAgainst, TheatreAir as Reckoned } from '../reckoning/theatre-air.ts';
import { plain } from '../working/plain.ts';
import type { Quantity } from '../working/reckoner.ts';

const orNull = (quantity: Quantity | null): number | null =>
  quantity === null ? null : plain.value(quantity);

const held = ({ terms, mgPerM3, sharePercent }: HeldAgainst): LimitHeldAgainst => ({
  limit: terms.limit.id,
  ppm: terms.limit.value,
  mgPerM3: plain.value(mgPerM3),
  averaging: terms.averaging,
  sharePercent: orNull(sharePercent)
});

export const theatreAirEstimate = ({ rooms, recovery }: Reckoned): TheatreAir => ({
  rooms: rooms.map(({ standing, missing, lines }) => ({
    theatreGroup: standing.group.id,
    machine: standing.machine.id,
    missing: [...missing],
    lines: lines.map((line) => ({
      subject: line.subject,
      highestCase: line.row?.id ?? null,
      escapingLPerMin: orNull(line.escapingLPerMin),
      steadyPpm: orNull(line.steadyPpm),
      endOfCasePpm: orNull(line.endOfCasePpm),
      meanPpm: orNull(line.meanPpm),
      heldAgainst: line.heldAgainst.map(held),
      noLimit: line.noLimit,
      course: line.course.map(({ minute, ppm }) => ({ minute, ppm: plain.value(ppm) }))
    }))
  })),
  recovery: {
    missing: [...recovery.missing],
    lines: recovery.lines.map((line) => ({
      subject: line.subject,
      meanPpm: orNull(line.meanPpm),
      heldAgainst: line.heldAgainst.map(held),
      noLimit: line.noLimit
    }))
  }
});
