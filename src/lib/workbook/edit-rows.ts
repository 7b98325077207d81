/** Rows in and out of the workbook's lists. */
import type { Agent, CaseRow, FlowPlan, Machine, Scenario, TheatreGroup } from '#lib/calc/input.ts';
import { agents, monitorItems } from '#lib/calc/input.ts';
import { blankWorkbook } from './blank.ts';
import { keptOf } from './kept-by-path.ts';
import { limits } from './workbook.ts';
import type { Workbook } from './workbook.ts';

/** The workbook's lists that grow and shrink. */
export type ListName =
  | 'theatreGroups'
  | 'caseMix'
  | 'flowPlans'
  | 'machines'
  | 'scenarios'
  | 'agents'
  | 'absorbents'
  | 'monitorPrices';

/** A change that was made, or a sentence on why it was not. */
export type RowsChanged = { readonly workbook: Workbook } | { readonly sentence: string };

const most: Readonly<Record<ListName, number>> = {
  theatreGroups: limits.theatreGroups,
  caseMix: limits.caseMix,
  flowPlans: limits.flowPlans,
  scenarios: limits.scenarios,
  machines: limits.machines,
  absorbents: limits.absorbents,
  agents: agents.length,
  monitorPrices: monitorItems.length
};

/** An entry's id within its list. */
export function entryKey(entry: object): string {
  const { id, agent, item } = entry as { id?: string; agent?: string; item?: string };
  return id ?? agent ?? item ?? '';
}

/** An id made from a name, unlike every other in the list: `Neck surgery` → `neck-surgery`, `neck-surgery-2`. */
export function freshId(name: string, taken: Iterable<string>): string {
  const ids = taken instanceof Set ? (taken as ReadonlySet<string>) : new Set(taken);
  const stem =
    name
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40)
      .replace(/-+$/, '') || 'row';
  if (!ids.has(stem)) return stem;
  let number = 2;
  while (ids.has(`${stem}-${number}`)) number++;
  return `${stem}-${number}`;
}

const newCase: Omit<CaseRow, 'id'> = {
  name: 'New case group',
  casesPerYear: 0,
  minutes: 60,
  ageYears: 50,
  weightKg: 75,
  technique: 'volatile',
  agent: null,
  targetMac: 1,
  nitrousOxidePercent: 0,
  inspiredOxygenPercent: 40,
  pneumoperitoneum: 'none',
  neuromuscularBlock: true,
  airway: 'tracheal-tube',
  measuredMlPerCase: null,
  theatreGroups: {}
};

/** What the id of a new entry starts with, in lists whose entries have one. */
const stems = {
  theatreGroups: 'theatres',
  caseMix: 'case',
  flowPlans: 'plan',
  machines: 'machine',
  scenarios: 'scenario',
  absorbents: 'absorbent'
} as const;

/** A key for a new entry, unlike the others; null where every agent or monitor stands in the list already. */
function freshKey(list: ListName, keys: ReadonlySet<string>): string | null {
  if (list === 'agents') return agents.find((each) => !keys.has(each)) ?? null;
  if (list === 'monitorPrices') return monitorItems.find((each) => !keys.has(each)) ?? null;
  return freshId(stems[list], keys);
}

/** Entries for a list, one for each of these keys, with settings to start from. */
function newEntries(workbook: Workbook, list: ListName, keys: readonly string[]): readonly object[] {
  const blank = blankWorkbook();
  switch (list) {
    case 'caseMix': {
      const agent: Agent | null = workbook.agents[0]?.agent ?? null;
      const technique = agent === null ? 'intravenous' : 'volatile';
      return keys.map((id): CaseRow => ({ id, ...newCase, agent, technique }));
    }
    case 'flowPlans':
      return keys.map((id) => ({ ...(blank.flowPlans[0] as FlowPlan), id, name: 'New flow plan' }));
    case 'machines': {
      const absorbent = workbook.absorbents[0]?.id ?? 'soda-lime';
      return keys.map((id) => ({ ...(blank.machines[0] as Machine), id, name: 'New machine', absorbent }));
    }
    case 'scenarios': {
      const today = workbook.scenarios.find((scenario) => scenario.baseline) as Scenario;
      return keys.map((id) => ({ ...today, id, name: 'New scenario', baseline: false }));
    }
    case 'absorbents':
      return keys.map((id) => ({ ...blank.absorbents[0], id, name: 'New absorbent' }));
    case 'agents':
      return keys.map((agent) => ({ ...blank.agents[0], agent, bottlePrice: '0' }));
    case 'monitorPrices':
      return keys.map((item) => ({ item, unitPrice: '0' }));
    case 'theatreGroups': {
      const [like] = workbook.theatreGroups;
      return keys.map((id): TheatreGroup => ({
        ...(like as TheatreGroup),
        id,
        name: 'More theatres',
        theatres: 1,
        machineAgeYears: null,
        staffedHoursPerTheatre: null,
        monitors: {}
      }));
    }
  }
}

/** How many more entries a list holds. */
export const roomIn = (workbook: Workbook, list: ListName): number => most[list] - workbook[list].length;

/** What is said where a list has no room for another entry. */
export const fullSentence = (list: ListName): string =>
  `This list holds at most ${most[list]} entries; nothing was added.`;

const full = (list: ListName): RowsChanged => ({ sentence: fullSentence(list) });

/** Puts new entries into a list before the position `at`. */
export function insertRows(
  workbook: Workbook,
  { list, at, count }: { list: ListName; at: number; count: number }
): RowsChanged {
  if (count > roomIn(workbook, list)) return full(list);
  const taken = new Set((workbook[list] as readonly object[]).map(entryKey));
  const keys: string[] = [];
  while (keys.length < count) {
    const key = freshKey(list, taken);
    if (key === null) return full(list);
    taken.add(key);
    keys.push(key);
  }
  return insertKeyed(workbook, { list, at, keys });
}

/** Puts new entries of these keys, which no other entry has, into a list before the position `at`. */
export function insertKeyed(
  workbook: Workbook,
  { list, at, keys }: { list: ListName; at: number; keys: readonly string[] }
): RowsChanged {
  if (keys.length > roomIn(workbook, list)) return full(list);
  const entries: object[] = [...workbook[list]];
  entries.splice(at, 0, ...newEntries(workbook, list, keys));
  return { workbook: { ...workbook, [list]: entries } };
}

/** Puts a copy of each of these entries below the last of them. */
export function duplicateRows(
  workbook: Workbook,
  { list, rows }: { list: ListName; rows: readonly number[] }
): RowsChanged {
  if (list === 'agents' || list === 'monitorPrices')
    return { sentence: 'Each of these stands once in the list, so there is nothing to duplicate.' };
  const entries: object[] = [...workbook[list]];
  if (rows.length > roomIn(workbook, list)) return full(list);
  const at = Math.max(...rows) + 1;
  let { keptTexts, neverGiven } = workbook;
  rows.forEach((row, index) => {
    const original = workbook[list][row];
    if (original === undefined) return;
    const id = freshId(entryKey(original), entries.map(entryKey));
    const copy = { ...original, id, name: `${original.name} (copy)`.slice(0, 200) };
    entries.splice(at + index, 0, list === 'scenarios' ? { ...copy, baseline: false } : copy);
    // A cell that nobody has given a valid value has none in the copy either.
    const from = `${list}.${entryKey(original)}.`;
    const lacking = (workbook.neverGiven ?? []).filter((path) => path.startsWith(from));
    if (lacking.length === 0) return;
    const copied = (path: string): string => `${list}.${id}.${path.slice(from.length)}`;
    neverGiven = [...(neverGiven ?? []), ...lacking.map(copied)];
    const texts = lacking.flatMap((path): [string, string][] => {
      const text = workbook.keptTexts[path];
      return text === undefined ? [] : [[copied(path), text]];
    });
    keptTexts = { ...keptTexts, ...Object.fromEntries(texts) };
  });
  return {
    workbook: {
      ...workbook,
      keptTexts,
      ...(neverGiven === undefined ? {} : { neverGiven }),
      [list]: entries
    }
  };
}

/** Moves entries by some places; a block that would leave the list stays at its edge. */
export function moveRows(
  workbook: Workbook,
  { list, rows, by }: { list: ListName; rows: readonly number[]; by: number }
): RowsChanged {
  const entries: object[] = [...workbook[list]];
  const moving = [...new Set(rows)].sort((a, b) => a - b).flatMap((row) => entries[row] ?? []);
  const first = Math.min(...rows);
  const rest = entries.filter((entry) => !moving.includes(entry));
  const at = Math.min(Math.max(first + by, 0), rest.length);
  rest.splice(at, 0, ...moving);
  return { workbook: { ...workbook, [list]: rest } };
}

/** Puts all entries of a list into another order: `order` names each place once. */
export function orderRows(
  workbook: Workbook,
  { list, order }: { list: ListName; order: readonly number[] }
): RowsChanged {
  const entries: readonly object[] = workbook[list];
  const ordered = [...new Set(order)].flatMap((row) => entries[row] ?? []);
  if (ordered.length !== entries.length)
    throw new Error(`An order of ${entries.length} rows names each of them once.`);
  return { workbook: { ...workbook, [list]: ordered } };
}

/** Takes entries out of a list, with their ranges, notes and kept texts; refuses where something still refers to one. */
export function deleteRows(
  workbook: Workbook,
  { list, rows }: { list: ListName; rows: readonly number[] }
): RowsChanged {
  const going = rows.flatMap((row) => workbook[list][row] ?? []);
  const keys = going.map(entryKey);
  const refusal = refusalToDelete(workbook, list, keys);
  if (refusal !== null) return { sentence: refusal };
  const goingKeys = new Set(keys);
  const gone = (path: string): boolean => {
    const [where, key = '', field] = path.split('.');
    return where === list && field !== undefined && goingKeys.has(key);
  };
  return {
    workbook: {
      ...workbook,
      ...keptOf(workbook, (path) => !gone(path)),
      ...withoutMentions(workbook, list, goingKeys),
      [list]: (workbook[list] as readonly object[]).filter((entry) => !goingKeys.has(entryKey(entry)))
    }
  };
}

/** What other entries say of those that go, and that nothing rests on once they are gone, goes with them. */
function withoutMentions(
  { scenarios, caseMix, theatreGroups }: Workbook,
  list: ListName,
  going: ReadonlySet<string>
): Partial<Workbook> {
  const staying = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).filter(([key]) => !going.has(key)));
  const standing = theatreGroups[0]?.machine ?? '';
  switch (list) {
    case 'caseMix':
      return {
        scenarios: scenarios.map((each) => ({
          ...each,
          flowPlanByCase: staying(each.flowPlanByCase),
          intravenousPercentByCase: staying(each.intravenousPercentByCase),
          regionalPercentByCase: staying(each.regionalPercentByCase)
        }))
      };
    case 'machines':
      return {
        scenarios: scenarios.map((each) => {
          const plans = staying(each.plans);
          const [first] = Object.values(each.plans);
          // Today needs a plan: where the only one was named for a machine that goes, it is kept for one that stands.
          const isLost = each.baseline && Object.keys(plans).length === 0 && first !== undefined;
          return { ...each, plans: isLost ? { [standing]: first } : plans };
        })
      };
    case 'theatreGroups':
      return {
        scenarios: scenarios.map((each) => ({
          ...each,
          moves: each.moves.filter(({ theatreGroup }) => !going.has(theatreGroup))
        })),
        caseMix: caseMix.map((row) => ({ ...row, theatreGroups: staying(row.theatreGroups) }))
      };
    default:
      return {};
  }
}

function refusalToDelete(workbook: Workbook, list: ListName, keys: readonly string[]): string | null {
  const inUse = (what: string, users: readonly string[]): string | null =>
    users.length === 0 ? null : `${what} in use by ${users.join(', ')}; choose another there first.`;
  switch (list) {
    case 'machines':
      return inUse(
        'This machine is',
        [
          ...workbook.theatreGroups.filter(({ machine }) => keys.includes(machine)),
          ...workbook.scenarios.filter(({ moves }) => moves.some(({ machine }) => keys.includes(machine)))
        ].map(({ name }) => name)
      );
    case 'theatreGroups': {
      if (workbook.theatreGroups.every(({ id }) => keys.includes(id)))
        return 'The last theatres cannot be deleted: cases are done somewhere.';
      const only = workbook.caseMix.filter(({ theatreGroups }) => {
        const left = Object.entries(theatreGroups).filter(([id]) => !keys.includes(id));
        const all = left.reduce((sum, [, percent]) => sum + percent, 0);
        const others = workbook.theatreGroups.filter(
          ({ id }) => !keys.includes(id) && theatreGroups[id] === undefined
        );
        return Object.keys(theatreGroups).length > 0 && all !== 100 && others.length === 0;
      });
      return only.length === 0
        ? null
        : `${only.map(({ name }) => `“${name}”`).join(', ')} would not add up to 100 % without these theatres; change its shares first.`;
    }
    case 'flowPlans':
      return inUse(
        'This flow plan is',
        workbook.scenarios
          .filter((s) =>
            [...Object.values(s.plans), ...Object.values(s.flowPlanByCase)].some((id) => keys.includes(id))
          )
          .map((s) => s.name)
      );
    case 'absorbents':
      return inUse(
        'This absorbent is',
        workbook.machines.filter((m) => keys.includes(m.absorbent)).map((m) => m.name)
      );
    case 'agents':
      return inUse('This agent is', [
        ...workbook.caseMix
          .filter((row) => row.agent !== null && keys.includes(row.agent))
          .map((row) => row.name),
        ...workbook.scenarios
          .filter((s) => Object.values(s.agentSwitch).some((agent) => keys.includes(agent)))
          .map((s) => s.name)
      ]);
    case 'scenarios':
      return workbook.scenarios.some((s) => s.baseline && keys.includes(s.id))
        ? 'The baseline stands for today and cannot be deleted; every saving is counted against it.'
        : null;
    default:
      return null;
  }
}
