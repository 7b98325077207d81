/** What tells alike inputs of one step apart: the entry of the workbook, the agent or the cases that each is about. */
import { readCell } from '#lib/calc/cell-path.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { inputsOf, nameOf } from '#lib/calc/working/working-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** Nodes looked at below one input: its subject stands near the top. */
const reach = 120;

/** Of a year in two parts, which cases a part is of. */
const casesByShare: Readonly<Record<string, string>> = {
  'share.plan': 'cases on the scenario’s plan',
  'share.today': 'cases that do today’s plan'
};

/** What an input rests on: entries by their path, e.g. `caseMix.lap-chole`, the nearest first. */
function entriesUnder(working: Working): readonly string[] {
  const entries = new Set<string>();
  const queue: Working[] = [working];
  for (let at = 0; at < queue.length && at < reach; at++) {
    const next = queue[at] as Working;
    if (next.kind === 'step' && next.formula.id === 'year.rest-of-cases') {
      entries.add('share.today');
      continue;
    }
    if (next.kind === 'cell' || next.kind === 'default') {
      const [room, entry, ...rest] = next.path.split('.');
      if (rest.at(-1) === 'adoptionPercent') entries.add('share.plan');
      if (rest.length > 0) entries.add(`${room}.${entry}`);
    } else if (next.kind === 'constant') {
      const agent = /^warming\..*\.(\w+)$/.exec(next.constant.id)?.[1];
      if (agent !== undefined) entries.add(`agents.${agent}`);
    } else queue.push(...inputsOf(next).map(({ input }) => input));
  }
  return [...entries];
}

const roomOf = (path: string): string => path.slice(0, path.indexOf('.'));

/**
 * What each of some inputs of one name is about: the nearest kind of thing of which each rests on exactly one that not
 * all of them share. A sum over case groups is about none of them. Null where nothing tells the inputs apart.
 */
function tellingEntries(inputs: readonly Working[]): readonly string[] | null {
  const entries = inputs.map(entriesUnder);
  const counts = new Map<string, number>();
  for (const path of entries.flat()) counts.set(path, (counts.get(path) ?? 0) + 1);
  const own = entries.map((paths) => paths.filter((path) => (counts.get(path) ?? 0) < inputs.length));
  const distance = (room: string): number =>
    Math.min(...own.map((paths) => paths.findIndex((path) => roomOf(path) === room)));
  const rooms = [...new Set(own.flat().map(roomOf))].sort((a, b) => distance(a) - distance(b));
  for (const room of rooms) {
    const ofRoom = own.map((paths) => paths.filter((path) => roomOf(path) === room));
    if (ofRoom.every(({ length }) => length === 1)) return ofRoom.map(([path = '']) => path);
  }
  return null;
}

function nameOfEntry(path: string, workbook: Workbook): string {
  const entry = readCell(workbook, path) as
    { readonly name?: string; readonly agent?: string; readonly item?: string } | undefined;
  return casesByShare[path] ?? entry?.name ?? entry?.agent ?? entry?.item ?? '';
}

/** A name for each of some inputs of one step. Empty where its own name tells it already, or where nothing does. */
export function subjectsOf(inputs: readonly Working[], workbook: Workbook): readonly string[] {
  const alike = new Map<string, Working[]>();
  for (const input of inputs) alike.set(nameOf(input), [...(alike.get(nameOf(input)) ?? []), input]);
  const named = new Map<Working, string>();
  for (const group of alike.values()) {
    if (group.length < 2) continue;
    const entries = tellingEntries(group);
    group.forEach((input, at) => named.set(input, nameOfEntry(entries?.[at] ?? '', workbook)));
  }
  return inputs.map((input) => named.get(input) ?? '');
}
