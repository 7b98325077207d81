/**
 * What an entry of a list holds beside its cells, as the text of one more column in a file: several values stand in one
 * cell, with semicolons between them.
 */
import type { Agent, MonitorItem } from '#lib/calc/input.ts';
import type { ChoiceField, Field } from '#lib/workbook/field.ts';
import { quoted } from '#lib/workbook/field.ts';
import {
  agentOptions,
  monitorInPlaceField,
  monitorItemOptions,
  planOnMachineField,
  shareOfCasesField,
  toIntravenousField,
  toRegionalField
} from '#lib/workbook/fields.ts';
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

/** A value's text, or its id where the signs between parts stand in its name. */
function partText(value: unknown, field: Field, context: Context): string {
  const text = cellText(value, { ...context, field });
  return field.kind === 'choice' && /[;=→\n]/.test(text) ? String(value) : text;
}

/** A record as `key = value; …`, with the keys of one field and the values of another. */
const pairs = <V>({
  title,
  form,
  key,
  value
}: {
  title: string;
  form: string;
  key: Field;
  value: Field;
}): AttachedField =>
  attached<Readonly<Record<string, V>>>({
    title,
    form,
    write: (record, context) =>
      Object.entries(record)
        .map(([id, each]) => `${partText(id, key, context)} = ${partText(each, value, context)}`)
        .join('; '),
    read: (text, context) => {
      const record: Record<string, V> = {};
      for (const part of partsOf(text)) {
        const [from, to, ...more] = part.split(/=|→/);
        if (from === undefined || to === undefined || more.length > 0)
          throw new UnreadablePart(
            `${title}: ${quoted(part)} was given; allowed is ${form.replace('; …', '')}, one after the other with semicolons.`
          );
        const id = valueOf<string>(from, key, context);
        if (Object.hasOwn(record, id))
          throw new UnreadablePart(`${title}: ${quoted(from.trim())} stands there twice.`);
        const read = valueOf<V | null>(to, value, context);
        if (read === null)
          throw new UnreadablePart(
            `${title}: ${quoted(part)} was given; after the equals sign something is needed.`
          );
        record[id] = read;
      }
      return record;
    }
  });

const caseGroup: ChoiceField = { kind: 'choice', title: 'Case group', options: 'caseMix', words: '' };
const machine: ChoiceField = { kind: 'choice', title: 'Machine', options: 'machines', words: '' };
const theatres: ChoiceField = { kind: 'choice', title: 'Theatre group', options: 'theatreGroups', words: '' };

export const theatreGroupAttached = {
  monitors: pairs<number>({
    title: 'Monitors in place',
    form: 'monitor = theatres that have it; …',
    key: monitor,
    value: monitorInPlaceField
  })
} as const;

export const caseAttached = {
  theatreGroups: pairs<number>({
    title: 'Shares by theatre group',
    form: 'theatres = per cent; …',
    key: theatres,
    value: shareOfCasesField
  })
} as const;

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
  plans: pairs<string>({
    title: 'Plans on machines',
    form: 'machine = plan; …',
    key: machine,
    value: planOnMachineField
  }),
  agentSwitch: pairs<Agent>({
    title: 'Agents given instead',
    form: 'agent = other; …',
    key: agent,
    value: agent
  }),
  intravenousPercentByCase: pairs<number>({
    title: 'Cases that become intravenous',
    form: 'case group = per cent; …',
    key: caseGroup,
    value: toIntravenousField
  }),
  regionalPercentByCase: pairs<number>({
    title: 'Cases that become regional',
    form: 'case group = per cent; …',
    key: caseGroup,
    value: toRegionalField
  })
} as const;
