/** What tells alike inputs of one step apart: the entry of the workbook that each of them is about. */
import { readCell } from '#lib/calc/cell-path.ts';
import type { Working } from '#lib/calc/working/working.ts';
import { inputsOf } from '#lib/calc/working/working-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';

/** Nodes looked at below one input: its subject stands near the top. */
const reach = 120;

/** Paths of the entries that an input rests on, e.g. `caseMix.lap-chole`, the nearest first. */
function entriesUnder(working: Working): readonly string[] {
  const entries = new Set<string>();
  const queue: Working[] = [working];
  for (let at = 0; at < queue.length && at < reach; at++) {
    const next = queue[at] as Working;
    if (next.kind === 'cell' || next.kind === 'default') {
      const [room, entry, ...rest] = next.path.split('.');
      if (rest.length > 0) entries.add(`${room}.${entry}`);
    } else queue.push(...inputsOf(next).map(({ input }) => input));
  }
  return [...entries];
}

/**
 * A name for each of some alike inputs: of the first entry that it rests on and that not all of them share. Empty where
 * nothing tells them apart.
 */
export function subjectsOf(inputs: readonly Working[], workbook: Workbook): readonly string[] {
  if (inputs.length < 2) return inputs.map(() => '');
  const entries = inputs.map(entriesUnder);
  const counts = new Map<string, number>();
  for (const path of entries.flat()) counts.set(path, (counts.get(path) ?? 0) + 1);
  return entries.map((paths) => {
    const own = paths.find((path) => (counts.get(path) ?? 0) < inputs.length);
    const entry = (own === undefined ? undefined : readCell(workbook, own)) as
      { readonly name?: string; readonly agent?: string; readonly item?: string } | undefined;
    return entry?.name ?? entry?.agent ?? entry?.item ?? '';
  });
}
