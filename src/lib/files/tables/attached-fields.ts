/**
 * What an entry of a list holds beside its cells, as the text of one more column in a file: several values stand in one
 * cell, with semicolons between them.
 */
import type { Agent, MonitorItem } from '#lib/calc/input.ts';
import type { ChoiceField, Field } from '#lib/workbook/field.ts';
import { quoted } from '#lib/workbook/field.ts';
import { agentOptions, monitorItemOptions } from '#lib/workbook/fields.ts';
import { readText } from '#lib/workbook/read-text.ts';
import type { Workbook } from '#lib/workbook/workbook.ts';
import { cellText } from './cell-text.ts';

/** In which workbook, and in which way of writing numbers. */
interface Context {
  readonly workbook: Workbook;
  readonly locale: string;
}

export interface AttachedField {
  readonly title: string;
  /** How the column is filled in, for its heading; '' where that is plain. */
  readonly form: string;
  write(value: unknown, context: Context): string;
  read(text: string, context: Context): { readonly value: unknown } | { readonly sentence: string };
}

class UnreadablePart extends Error {}

const partsOf = (text: string): readonly string[] =>
  text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

function valueOf<T>(text: string, field: Field, context: Context): T {
  const read = readText(text, { ...context, field });
  if ('sentence' in read) throw new UnreadablePart(read.sentence);
  return read.value as T;
}

/** A field whose reader throws `UnreadablePart`, with the sentence, where a part cannot be read. */
function attached<T>(field: {
  title: string;
  form: string;
  write: (value: T, context: Context) => string;
  read: (text: string, context: Context) => T;
}): AttachedField {
  return {
    ...field,
    write: (value, context) => field.write(value as T, context),
    read: (text, context) => {
      try {
        return { value: field.read(text, context) };
      } catch (error) {
        if (error instanceof UnreadablePart) return { sentence: error.message };
        throw error;
      }
    }
  };
}

const monitor: ChoiceField = { kind: 'choice', title: 'Monitor', options: monitorItemOptions, words: '' };
const agent: ChoiceField = { kind: 'choice', title: 'Agent', options: agentOptions, words: '' };
const today: Field = { kind: 'flag', title: 'Stands for today', words: '' };

export const machineAttached = {
  monitors: attached<readonly MonitorItem[]>({
    title: 'Monitors that it has',
    form: 'one; another',
    write: (items, context) => items.map((item) => cellText(item, { ...context, field: monitor })).join('; '),
    read: (text, context) => [
      ...new Set(partsOf(text).map((part) => valueOf<MonitorItem>(part, monitor, context)))
    ]
  })
} as const;

export const scenarioAttached = {
  baseline: attached<boolean>({
    title: today.title,
    form: '',
    write: (value, context) => cellText(value, { ...context, field: today }),
    read: (text, context) => valueOf<boolean>(text, today, context)
  }),
  agentSwitch: attached<Readonly<Partial<Record<Agent, Agent>>>>({
    title: 'Agents given instead',
    form: 'agent = other; …',
    write: (switches, context) =>
      Object.entries(switches)
        .map((pair) => pair.map((each) => cellText(each, { ...context, field: agent })).join(' = '))
        .join('; '),
    read: (text, context) => {
      const switches: Partial<Record<Agent, Agent>> = {};
      for (const part of partsOf(text)) {
        const [from, to, ...more] = part.split(/=|→/);
        if (from === undefined || to === undefined || more.length > 0)
          throw new UnreadablePart(
            `Agents given instead: ${quoted(part)} was given; allowed is an agent, an equals sign, and the agent given instead.`
          );
        const key = valueOf<Agent>(from, agent, context);
        if (key in switches)
          throw new UnreadablePart(`Agents given instead: ${quoted(from.trim())} stands there twice.`);
        switches[key] = valueOf<Agent>(to, agent, context);
      }
      return switches;
    }
  })
} as const;
