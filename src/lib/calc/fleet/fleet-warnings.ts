/** What a reader must know of theatres and machines beside the figures, one sentence each. */
import type { EstimateInput, Scenario } from '../input.ts';
import { plain } from '../working/plain.ts';
import { capacityOf } from './capacity.ts';
import { sharesOfCases } from './share-of-cases.ts';
import { theatresMovedBy } from './theatres-moved.ts';

type Asked = Pick<EstimateInput, 'machines' | 'scenarios' | 'theatreGroups' | 'caseMix' | 'accounting'>;

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const fleetWarnings = (input: Asked): string[] => [
  ...aboveCapacity(input),
  ...measuredOnSeveral(input),
  ...input.scenarios.flatMap((scenario) => [
    ...partMoved(input, scenario),
    ...spares(scenario),
    ...unpaid(scenario)
  ]),
  ...lifeEnds(input)
];

const aboveCapacity = (input: Asked): string[] =>
  capacityOf(input).flatMap(({ group, anaesthesiaHours, staffedHours, takenUpPercent }) =>
    staffedHours === null || (takenUpPercent ?? (anaesthesiaHours > 0 ? Infinity : 0)) <= 100
      ? []
      : [
          `“${group.name}” is staffed for ${Math.round(staffedHours)} hours a year, and its cases take ${Math.round(anaesthesiaHours)}: check the cases, their minutes, or the hours.`
        ]
  );

/** One figure of measured use for machines that use unlike amounts. */
function measuredOnSeveral({ theatreGroups, caseMix, machines }: Asked): string[] {
  const shareIn = sharesOfCases(plain, theatreGroups);
  const wholes = theatreGroups.map((group) => ({
    group,
    isWhole: true,
    theatres: plain.cell(group.theatres, '1', 'theatreGroups', group.id, 'theatres')
  }));
  return caseMix.flatMap((row) => {
    if (row.measuredMlPerCase === null || row.technique !== 'volatile') return [];
    const [first, ...others] = wholes.filter((whole) => shareIn(whole, row) !== 'none');
    if (first === undefined || others.every(({ group }) => group.machine === first.group.machine)) return [];
    const name = machines.find(({ id }) => id === first.group.machine)?.name ?? first.group.machine;
    return [
      `What was measured of “${row.name}” is taken to be the use on “${name}” in “${first.group.name}”; it is done on other machines as well, whose use is scaled to it. Where it was measured elsewhere, give it a row for each machine.`
    ];
  });
}

function partMoved(input: Asked, scenario: Scenario): string[] {
  if (scenario.machinesStay || scenario.moves.length === 0) return [];
  const moved = theatresMovedBy(input, scenario);
  const staying = input.theatreGroups
    .map((group) => ({ group, theatres: group.theatres - (moved.get(group.id) ?? 0) }))
    .filter(({ theatres }) => theatres > 0);
  if (staying.length === 0) return [];
  const all = input.theatreGroups.reduce((sum, { theatres }) => sum + theatres, 0);
  const comes = [...moved.values()].reduce((sum, theatres) => sum + theatres, 0);
  const nameOf = (id: string): string => input.machines.find((machine) => machine.id === id)?.name ?? id;
  const only = input.theatreGroups.length === 1;
  const where = staying.map(
    ({ group, theatres }) =>
      `“${nameOf(group.machine)}” stays in ${comes === 0 ? 'all of them' : only ? `the other ${theatres}` : theatres === group.theatres ? `“${group.name}”` : `${theatres} of “${group.name}”`}`
  );
  return [
    `“${scenario.name}” brings ${comes === 0 ? 'no machine' : counted(comes, 'machine', 'machines')} to ${counted(all, 'theatre', 'theatres')}: ${where.join(', ')}.`
  ];
}

function spares({ name, spares: number, moves, machinesStay }: Scenario): string[] {
  if (number === 0 || machinesStay) return [];
  return [
    moves.length === 0
      ? `“${name}” has ${counted(number, 'spare', 'spares')} but brings no machine: spares are of the kind that comes, so none is counted.`
      : `“${name}” brings ${counted(number, 'machine more as a spare', 'machines more as spares')}, bought and serviced.`
  ];
}

/** A way of paying that was chosen and not priced yet makes a machine look free. */
const unpaid = ({ name, moves, machinesStay }: Scenario): string[] =>
  !machinesStay && moves.some(({ payment }) => payment !== null && Number(payment.perUnitPerYear) === 0)
    ? [
        `“${name}” has machines that are leased or come with a service, for a payment of 0: enter what is paid for them on Scenarios.`
      ]
    : [];

function lifeEnds({ accounting, theatreGroups, scenarios }: Asked): string[] {
  if (accounting.counterfactual !== 'replaced-at-end-of-life') return [];
  const unknown = theatreGroups.filter(({ machineAgeYears }) => machineAgeYears === null);
  const avoiding = scenarios.filter(({ avoidedPurchases }) => avoidedPurchases.length > 0);
  return [
    ...unknown.map(
      ({ name }) =>
        `Today’s machines are to be replaced at the end of their life, and no age is given for those of “${name}”: they are taken to last.`
    ),
    ...avoiding.map(
      ({ name }) =>
        `“${name}” names purchases that it makes unnecessary, and today’s machines are replaced at the end of their life as well: a machine that is in both is counted twice.`
    )
  ];
}
