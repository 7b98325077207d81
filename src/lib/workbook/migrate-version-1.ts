/**
 * A document of version 1 as one of version 2. Version 1 had one number of theatres, one machine and one plan a scenario,
 * and the units of a machine; version 2 has groups of theatres, and machines that come to them.
 */

type Entry = Record<string, unknown>;

export interface Migrated {
  readonly document: Entry;
  /** What differs from what the file said when it was saved, and why; one sentence each. */
  readonly notes: readonly string[];
}

const entryOf = (value: unknown): Entry =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Entry) : {};
const listOf = (value: unknown): readonly Entry[] => (Array.isArray(value) ? value.map(entryOf) : []);
const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
const without = (entry: Entry, ...keys: readonly string[]): Entry =>
  Object.fromEntries(Object.entries(entry).filter(([key]) => !keys.includes(key)));

const groupId = 'main';
/** Cells of the site that are now those of its one theatre group. */
const ofTheGroup = ['theatres', 'roomVolumeM3', 'airChangesPerH', 'scavengingPercent'] as const;

/**
 * The rules, one group of theatres from what was one number:
 *
 * - theatres, room and monitors go to the group, with the machine of the baseline;
 * - a scenario with another machine brings its units in their years until the theatres are full; what is over becomes
 *   spares, and what is short leaves today's machine in the rest;
 * - its plan is that on the machine that comes, or on today's where none does;
 * - ranges and texts of cells that moved follow them; of cells that went they are dropped, and named.
 *
 * A document that is no sound version 1 is moved as far as it can be: the check of its shape then says what is wrong.
 */
export function migrateVersion1(document: Entry): Migrated {
  const notes: string[] = [];
  const site = entryOf(document['site']);
  const machines = listOf(document['machines']);
  const scenarios = listOf(document['scenarios']);
  const stock = listOf(document['monitors']);
  const today = scenarios.find(({ baseline }) => baseline === true);
  const theatres = typeof site['theatres'] === 'number' ? site['theatres'] : 1;
  const machineOfToday = textOf(today?.['machine']);
  const unitsOf = (machineId: string): number => {
    const units = machines.find(({ id }) => id === machineId)?.['units'];
    return typeof units === 'number' ? units : 0;
  };

  const standing = machines.find(({ id }) => id === machineOfToday);
  const standingUnits = unitsOf(machineOfToday);
  if (standing !== undefined && standingUnits !== theatres && standingUnits > 0)
    notes.push(
      `One “${textOf(standing['name'])}” stands in each of the ${theatres} theatres, so ${theatres} are serviced, not ${standingUnits}.`
    );

  const monitors: Record<string, unknown> = {};
  for (const { item, theatresEquipped } of stock) {
    const number = theatresEquipped;
    if (typeof number === 'number' && number > theatres)
      notes.push(
        `${textOf(item)}: ${number} theatres were said to have it, of ${theatres}; it is taken as ${theatres}.`
      );
    monitors[textOf(item)] = typeof number === 'number' ? Math.min(number, theatres) : number;
  }

  const movedScenarios = scenarios.map((scenario): Entry => {
    const machine = textOf(scenario['machine']);
    const name = textOf(scenario['name']);
    const rest = without(scenario, 'machine', 'flowPlan', 'unitsByYear');
    const plans = { [machine]: scenario['flowPlan'] };
    if (machine === machineOfToday) return { ...rest, moves: [], plans, spares: 0 };
    const units = unitsOf(machine);
    const byYear = Array.isArray(scenario['unitsByYear'])
      ? scenario['unitsByYear'].map((each) => (typeof each === 'number' ? each : 0))
      : [units];
    const moves: Entry[] = [];
    let left = theatres;
    let spares = 0;
    byYear.forEach((coming, year) => {
      const moving = Math.min(coming, left);
      spares += coming - moving;
      left -= moving;
      if (moving > 0)
        moves.push({
          theatreGroup: groupId,
          machine,
          year,
          theatres: moving === theatres ? null : moving,
          payment: null
        });
    });
    if (left > 0 || spares > 0)
      notes.push(
        spares > 0
          ? `“${name}” brought ${theatres + spares} machines to ${theatres} theatres: ${spares} count as spares, for which no theatre moves.`
          : `“${name}” brings ${theatres - left} machines to ${theatres} theatres: today’s stays in the other ${left}, with its service, its plan and its monitors.`
      );
    const adoption = scenario['adoptionPercent'];
    if (typeof adoption === 'number' && adoption < 100 && left < theatres)
      notes.push(
        `Cases that do not follow “${name}” do today’s plan on the machine that has come, as the old one is gone.`
      );
    return { ...rest, moves, plans, spares };
  });

  const dropped: string[] = [];
  const moved = <T>(record: unknown): Record<string, T> =>
    Object.fromEntries(
      Object.entries(entryOf(record)).flatMap(([path, value]) => {
        const to = movedPath(path);
        if (to === null) dropped.push(path);
        return to === null ? [] : [[to, value as T]];
      })
    );
  const ranges = moved(document['ranges']);
  const keptTexts = moved(document['keptTexts']);
  if (dropped.length > 0)
    notes.push(
      `Ranges and texts of cells that are no more are left out: ${[...new Set(dropped)].join(', ')}.`
    );

  const named = stock.map((entry) => without(entry, 'theatresEquipped'));
  return {
    notes,
    document: {
      ...without(document, 'monitors'),
      version: 2,
      site: without(site, ...ofTheGroup),
      theatreGroups: [
        {
          id: groupId,
          name: 'Theatres',
          ...Object.fromEntries(ofTheGroup.map((key) => [key, site[key]])),
          machine: machineOfToday,
          machineAgeYears: null,
          staffedHoursPerTheatre: null,
          monitors
        }
      ],
      monitorPrices: Array.isArray(document['monitors']) ? named : document['monitors'],
      machines: Array.isArray(document['machines'])
        ? machines.map((machine) => without(machine, 'units'))
        : document['machines'],
      scenarios: Array.isArray(document['scenarios']) ? movedScenarios : document['scenarios'],
      ...('ranges' in document ? { ranges } : {}),
      ...('keptTexts' in document ? { keptTexts } : {})
    }
  };
}

/** Where a cell of version 1 is now; null: it is no more. */
function movedPath(path: string): string | null {
  const [list, key = '', field = ''] = path.split('.');
  if (list === 'site' && (ofTheGroup as readonly string[]).includes(key))
    return `theatreGroups.${groupId}.${key}`;
  if (list === 'monitors')
    return field === 'theatresEquipped'
      ? `theatreGroups.${groupId}.monitors.${key}`
      : `monitorPrices.${key}.${field}`;
  if (list === 'machines' && field === 'units') return null;
  if (list === 'scenarios' && ['machine', 'flowPlan', 'unitsByYear'].includes(field)) return null;
  return path;
}
