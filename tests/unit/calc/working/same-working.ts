/**
 * Whether two workings say the same, all the way down. Workings share what lies below them: written out as trees they
 * take minutes, so each is numbered once, like ones alike, and only where the numbers differ is it looked where.
 */
import type { Working } from '#lib/calc/working/working.ts';
import { bits } from './recorded.ts';

type Inputs = readonly (readonly [name: string, input: Working | readonly Working[]])[];

const inputsOf = (working: Working): Inputs => ('inputs' in working ? Object.entries(working.inputs) : []);
const isList = (input: Working | readonly Working[]): input is readonly Working[] => Array.isArray(input);

/** What a working says by itself, whatever it was made from. */
export function saidBy(working: Working): string {
  const { kind, unit, value } = working;
  const own = [kind, bits(value), unit];
  switch (kind) {
    case 'step':
      return JSON.stringify([...own, working.formula.id]);
    case 'method':
      return JSON.stringify([...own, working.method]);
    case 'cell':
      return JSON.stringify([...own, working.path]);
    case 'constant':
      return JSON.stringify([...own, working.constant.id]);
    case 'default':
      return JSON.stringify([...own, working.constant.id, working.path]);
    case 'assumption':
      return JSON.stringify([...own, working.words]);
  }
}

/** Gives two workings the same number if, and only if, they say the same down to their leaves. */
function numbering(): (working: Working) => number {
  const byWorking = new Map<Working, number>();
  const byContent = new Map<string, number>();
  const numberOf = (working: Working): number => {
    const known = byWorking.get(working);
    if (known !== undefined) return known;
    const below = inputsOf(working).map(([name, input]) => [
      name,
      isList(input) ? input.map(numberOf) : numberOf(input)
    ]);
    const content = JSON.stringify([saidBy(working), below]);
    const number = byContent.get(content) ?? byContent.size;
    byContent.set(content, number);
    byWorking.set(working, number);
    return number;
  };
  return numberOf;
}

/** Inputs one by one: those of a list by their place in it. */
const oneByOne = (inputs: Inputs): (readonly [string, Working])[] =>
  inputs.flatMap(([name, input]) =>
    isList(input)
      ? input.map((each, index) => [`${name}[${index}]`, each] as const)
      : [[name, input] as const]
  );

const namesOf = (inputs: Inputs): string =>
  inputs.map(([name, input]) => (isList(input) ? `${name}[${input.length}]` : name)).join(', ');

/**
 * Says where a working first differs from the one that it ought to be, and how; null where they say the same.
 * What one finder has numbered it knows, so one is made for all figures of an input.
 */
export function differenceFinder(): (found: Working, wanted: Working) => string | null {
  const numberOf = numbering();
  const difference = (found: Working, wanted: Working, place: readonly string[]): string | null => {
    if (numberOf(found) === numberOf(wanted)) return null;
    const where = ['root', ...place].join(' › ');
    if (saidBy(found) !== saidBy(wanted)) return `${where}: ${saidBy(found)}, not ${saidBy(wanted)}`;
    const [inputs, inputsWanted] = [inputsOf(found), inputsOf(wanted)];
    if (namesOf(inputs) !== namesOf(inputsWanted))
      return `${where}: made from ${namesOf(inputs)}, not from ${namesOf(inputsWanted)}`;
    const below = oneByOne(inputsWanted);
    for (const [index, [name, input]] of oneByOne(inputs).entries()) {
      const inside = difference(input, below[index]![1], [...place, name]);
      if (inside !== null) return inside;
    }
    throw new Error(`${where}: numbered apart, and no difference is found.`);
  };
  return (found, wanted) => difference(found, wanted, []);
}
