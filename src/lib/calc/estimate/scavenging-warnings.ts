import { capacityOf } from '../fleet/capacity.ts';
import type { EstimateInput, TheatreGroup } from '../input.ts';
import { arePumpsKnown } from '../pumps-known.ts';
import { weeksPerYear } from '../year/scavenging-pumps.ts';

type Asked = Pick<EstimateInput, 'theatreGroups' | 'scenarios' | 'caseMix'>;

/** What a reader must know of scavenging pumps, one sentence each. */
export function scavengingWarnings({ theatreGroups, scenarios, caseMix }: Asked): readonly string[] {
  const halfKnown = theatreGroups.filter(
    (group) =>
      !arePumpsKnown(group) && (group.scavengingPumpKW !== null || group.scavengingPumpHoursPerWeek !== null)
  );
  const known = theatreGroups.filter(arePumpsKnown);
  const asking = scenarios.filter((each) => each.scavengingPumpHoursPerWeek !== null);
  const capacities = capacityOf({ theatreGroups, caseMix }).filter(({ group }) => arePumpsKnown(group));
  return [
    ...halfKnown.map(
      ({ name, scavengingPumpKW }) =>
        `What the scavenging pumps of “${name}” draw is not counted: ${scavengingPumpKW === null ? 'their hours are given, their power is not' : 'their power is given, their hours are not'}.`
    ),
    ...(asking.length === 0 || known.length === 0
      ? []
      : [
          `Scavenging pumps must run whenever anaesthetic gas is given, in emergencies at any hour too; local rules and the hospital’s engineers decide. They run for fewer hours in ${asking.map(({ name }) => `“${name}”`).join(', ')}.`
        ]),
    ...scenarios.flatMap(({ name, scavengingPumpHoursPerWeek: asked }) => {
      if (asked === null) return [];
      if (known.length === 0)
        return [
          `“${name}” changes the hours of scavenging pumps, and what they draw is given for no theatres: nothing is counted of it. Theatres has the cells.`
        ];
      const hoursOf = ({ theatres, scavengingPumpHoursPerWeek: today }: TheatreGroup): number =>
        theatres * Math.min(asked, today ?? asked) * weeksPerYear;
      const tooShort = capacities.filter(({ group, anaesthesiaHours }) => anaesthesiaHours > hoursOf(group));
      return [
        ...tooShort.map(
          ({ group, anaesthesiaHours }) =>
            `In “${group.name}” the cases take ${Math.round(anaesthesiaHours)} hours a year, and under “${name}” the pumps run ${Math.round(hoursOf(group))}: gas would be given while they are off.`
        ),
        ...known
          .filter(({ scavengingPumpHoursPerWeek: today }) => today !== null && asked > today)
          .map(
            (group) =>
              `“${name}” lets scavenging pumps run ${asked} hours a week, and in “${group.name}” they run ${group.scavengingPumpHoursPerWeek} today: they are taken to run no longer than that.`
          )
      ];
    })
  ];
}
