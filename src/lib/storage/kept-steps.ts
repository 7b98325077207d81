/** The steps of undo and redo as they are kept with a stored workbook. */
import type { JsonChange } from './json-change.ts';

export interface KeptSteps {
  /** Back from the workbook, the last step last: each turns what the one after it leads to into what was before. */
  readonly past: readonly JsonChange[];
  /** Forward from the workbook, the next step first. */
  readonly future: readonly JsonChange[];
}

/** Of which save of which format the steps are: of another, they lead nowhere. */
export interface StepsOf {
  readonly revision: number;
  readonly version: number;
}

/** Characters of the steps of one workbook, back and forward. A cell takes about a hundred, a pasted list some thousands. */
const mostCharacters = { past: 200_000, future: 50_000 } as const;

/** The steps nearest to the workbook, as many as there is room for. `steps` come the nearest first. */
export function asManyAsKept(
  steps: Iterable<JsonChange>,
  way: keyof typeof mostCharacters
): readonly JsonChange[] {
  const kept: JsonChange[] = [];
  let characters = 0;
  for (const step of steps) {
    characters += JSON.stringify(step).length;
    if (characters > mostCharacters[way]) break;
    kept.push(step);
  }
  return kept;
}

export const stepsToText = (steps: KeptSteps, of: StepsOf): string => JSON.stringify({ ...of, ...steps });

/** The steps that a text holds; null where they are of another save or format, `unreadable` where it holds none. */
export function stepsInText(text: string, of: StepsOf): KeptSteps | null | 'unreadable' {
  try {
    const read = JSON.parse(text) as Partial<StepsOf>;
    const steps = stepsIn(read);
    if (steps === null || typeof read.revision !== 'number') return 'unreadable';
    return read.revision === of.revision && read.version === of.version ? steps : null;
  } catch {
    return 'unreadable';
  }
}

/** The steps in what was read from somewhere; null where there are none. Whether each fits is seen when it is taken. */
export function stepsIn(read: unknown): KeptSteps | null {
  const { past, future } = (read ?? {}) as Partial<Record<keyof KeptSteps, unknown>>;
  return areChanges(past) && areChanges(future) ? { past, future } : null;
}

const areChanges = (read: unknown): read is readonly JsonChange[] =>
  Array.isArray(read) && read.every((each) => typeof each === 'object' && each !== null);
