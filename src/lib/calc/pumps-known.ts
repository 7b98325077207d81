import type { TheatreGroup } from './input.ts';

/** Whether it is known what the scavenging pumps of a group draw today. */
export const arePumpsKnown = ({
  scavengingPumpKW,
  scavengingPumpHoursPerWeek
}: Pick<TheatreGroup, 'scavengingPumpKW' | 'scavengingPumpHoursPerWeek'>): boolean =>
  scavengingPumpKW !== null && scavengingPumpHoursPerWeek !== null;
