/**
 * Cells by path. A path names a cell of the workbook, and so of the core's input, part by part: a field's name, or in a
 * list the id of the entry (its `id`, `caseId`, `agent`, `item`, `lever` or `option`), or its index where entries carry none, e.g.
 * `caseMix.lap-chole.minutes`, `agents.sevoflurane.bottlePrice`, `flowPlans.usual.phases.0.flowLPerMin`.
 */
import { ownEntry } from './own-entry.ts';

const keyOf = (entry: unknown): unknown => {
  if (typeof entry !== 'object' || entry === null) return undefined;
  const { id, caseId, agent, item, lever, option } = entry as Record<string, unknown>;
  return id ?? caseId ?? agent ?? item ?? lever ?? option;
};

/** Index of a list's entry by its key, or by its number; −1 where there is none. */
export function indexInList(list: readonly unknown[], part: string): number {
  const keyed = list.findIndex((entry) => keyOf(entry) === part);
  if (keyed >= 0) return keyed;
  const index = /^\d+$/.test(part) ? Number(part) : -1;
  return index < list.length && keyOf(list[index]) === undefined ? index : -1;
}

/** The value at a path; undefined where the path leads nowhere. */
export function readCell(document: unknown, path: string): unknown {
  let here: unknown = document;
  for (const part of path.split('.')) {
    if (Array.isArray(here)) here = here[indexInList(here, part)];
    else if (typeof here === 'object' && here !== null)
      here = ownEntry(here as Record<string, unknown>, part);
    else return undefined;
  }
  return here;
}

/**
 * The document with another value at a path. What lies off the path is shared with the original, so that unchanged rows
 * stay the same objects. `undefined` takes a field out.
 * @throws Error where the path leads nowhere: paths come from columns and from a checked workbook, not from typing.
 */
export function writeCell<T>(document: T, path: string, value: unknown): T {
  return write(document, path.split('.'), value, path) as T;
}

function write(here: unknown, parts: readonly string[], value: unknown, path: string): unknown {
  const [part, ...rest] = parts;
  if (part === undefined) return value;
  if (Array.isArray(here)) {
    const index = indexInList(here, part);
    if (index < 0) throw new Error(`The path ${path} leads nowhere at “${part}”.`);
    const copy: unknown[] = [...(here as readonly unknown[])];
    copy[index] = write(copy[index], rest, value, path);
    return copy;
  }
  if (typeof here !== 'object' || here === null)
    throw new Error(`The path ${path} leads nowhere at “${part}”.`);
  const copy = { ...(here as Record<string, unknown>) };
  const written = write(ownEntry(copy, part), rest, value, path);
  if (written === undefined) delete copy[part];
  else copy[part] = written;
  return copy;
}
