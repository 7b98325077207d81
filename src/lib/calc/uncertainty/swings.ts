/** What each uncertain input does by itself: the figures at its low and at its high, all others at their entered value. */
import type { UncertainInput } from './draws.ts';
import type { Model } from './run.ts';

/** What was set, and the figures that came of it; `figures` null where the values together make no sense. */
export interface Outcome {
  readonly values: readonly number[];
  readonly figures: readonly number[] | null;
}

export interface Swing {
  /** The input; several where they vary together. */
  readonly paths: readonly string[];
  /** At the low, then at the high; for a choice at each possibility. */
  readonly outcomes: readonly Outcome[];
}

/** The figures with every input at its entered value. */
export function plainFigures(model: Model, inputs: readonly UncertainInput[]): ReturnType<Model> {
  return model(inputs.map(({ mode }) => mode));
}

/** Places of the inputs that have width, those that vary together side by side, in the order of the inputs. */
export function widthsTogether(inputs: readonly UncertainInput[]): number[][] {
  const groups = new Map<string, number[]>();
  inputs.forEach((input, index) => {
    if ('choices' in input ? input.choices < 2 : input.low === input.high) return;
    const word =
      'choices' in input || input.together === undefined ? `input ${index}` : `together ${input.together}`;
    groups.set(word, [...(groups.get(word) ?? []), index]);
  });
  return [...groups.values()];
}

/** The swings of all inputs, in the order of the inputs; inputs without width are left out. */
export function swings(model: Model, inputs: readonly UncertainInput[]): Swing[] {
  const entered = inputs.map(({ mode }) => mode);
  return widthsTogether(inputs).map((indices) => {
    const first = inputs[indices[0] as number] as UncertainInput;
    const settings =
      'choices' in first
        ? Array.from({ length: first.choices }, (_, choice) => [choice])
        : (['low', 'high'] as const).map((end) =>
            indices.map((index) => {
              const input = inputs[index] as UncertainInput;
              return 'choices' in input ? input.mode : input[end];
            })
          );
    return {
      paths: indices.map((index) => (inputs[index] as UncertainInput).path),
      outcomes: settings.map((values) => {
        const all = [...entered];
        indices.forEach((index, k) => (all[index] = values[k] as number));
        return { values, figures: model(all) };
      })
    };
  });
}

/**
 * How far one figure swings: from its lowest to its highest outcome. Infinity where some outcomes are “never” and others
 * not, 0 where all are alike or none exists.
 */
export function widthOfSwing({ outcomes }: Swing, figure: number): number {
  const given = outcomes
    .flatMap(({ figures }) => figures?.[figure] ?? [])
    .filter((value) => !Number.isNaN(value));
  if (given.length === 0) return 0;
  const [least, most] = [Math.min(...given), Math.max(...given)];
  return least === most ? 0 : most - least;
}

/** The swings with the widest of one figure first; equally wide ones keep their order. */
export function widestFirst(given: readonly Swing[], figure: number): Swing[] {
  const width = new Map(given.map((swing) => [swing, widthOfSwing(swing, figure)]));
  return [...given].sort((a, b) => compare(width.get(b) as number, width.get(a) as number));
}

/** Not by difference: two infinite widths are equal. */
const compare = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);
