/**
 * How the computed constants follow from others. Kept apart from the records, which are plain data, so that a set
 * with a parent overridden can recompute what depends on it.
 */

/** One computed constant: the expression is for the reader, `compute` for the code; a test holds them together. */
export interface Derivation {
  /** Id of the constant that it gives. */
  readonly yields: string;
  /** Symbol in `expression` → id of the parent. */
  readonly from: Readonly<Record<string, string>>;
  /** In the symbols of `from`, evaluable by an expression library. */
  readonly expression: string;
  readonly compute: (value: (id: string) => number) => number;
}

const sumOf = (value: (id: string) => number, ids: readonly string[]): number =>
  ids.reduce((sum, id) => sum + value(id), 0);

const symbolOf = (id: string): string => (id.split('.')[1] ?? id).replaceAll('-', '_');

const weight = 'body.standard-weight';
const organOutput = 'organ.cardiac-output.flow';

/** Litres of the organs of a group in an adult of standard weight. */
function volumeOf(yields: string, organs: readonly string[]): Derivation {
  const ids = organs.map((organ) => `organ.${organ}.volume`);
  return {
    yields,
    from: { ...Object.fromEntries(ids.map((id) => [`V_${symbolOf(id)}`, id])), W: weight },
    expression: `(${ids.map((id) => `V_${symbolOf(id)}`).join(' + ')}) * W`,
    compute: (value) => sumOf(value, ids) * value(weight)
  };
}

/** Percent of cardiac output that goes to the organs of a group. */
function shareOf(yields: string, organs: readonly string[]): Derivation {
  const ids = organs.map((organ) => `organ.${organ}.flow`);
  return {
    yields,
    from: { ...Object.fromEntries(ids.map((id) => [`Q_${symbolOf(id)}`, id])), Q_total: organOutput },
    expression: `100 * (${ids.map((id) => `Q_${symbolOf(id)}`).join(' + ')}) / Q_total`,
    compute: (value) => (100 * sumOf(value, ids)) / value(organOutput)
  };
}

/** The same figure under another body model's name. */
const same = (yields: string, parent: string): Derivation => ({
  yields,
  from: { x: parent },
  expression: 'x',
  compute: (value) => value(parent)
});

const halfOf = (yields: string, parent: string): Derivation => ({
  yields,
  from: { V: parent },
  expression: 'V / 2',
  compute: (value) => value(parent) / 2
});

/**
 * Percent of the model's own cardiac output, 0.2 · 70^0.75 L/min, that a fat compartment gets: volume × perfusion,
 * one litre of fat counted as one kilogram.
 */
function fatShare(yields: string, volume: string, perfusion: string): Derivation {
  const coefficient = 'body.cardiac-output.coefficient';
  const exponent = 'body.size-exponent';
  return {
    yields,
    from: { V: volume, p: perfusion, k: coefficient, W: weight, b: exponent },
    expression: '100 * V * p / (k * W ^ b)',
    compute: (value) =>
      (100 * value(volume) * value(perfusion)) / (value(coefficient) * value(weight) ** value(exponent))
  };
}

const adult = 'body.reference-adult';
const twoFat = 'body.two-fat';

/** Every derivation, parents before children. */
export const derivations: readonly Derivation[] = [
  // Gut and spleen drain through the liver: their flow is inside the liver's, their volume is not.
  volumeOf(`${adult}.vessel-rich.volume`, ['brain', 'gut', 'heart', 'kidney', 'liver', 'spleen', 'thyroid']),
  shareOf(`${adult}.vessel-rich.share`, ['brain', 'heart', 'kidney', 'liver', 'thyroid']),
  volumeOf(`${adult}.muscle.volume`, ['muscle', 'skin']),
  shareOf(`${adult}.muscle.share`, ['muscle', 'skin']),
  volumeOf(`${adult}.fat.volume`, ['adipose']),
  shareOf(`${adult}.fat.share`, ['adipose']),
  same(`${twoFat}.vessel-rich.volume`, `${adult}.vessel-rich.volume`),
  same(`${twoFat}.vessel-rich.share`, `${adult}.vessel-rich.share`),
  same(`${twoFat}.muscle.volume`, `${adult}.muscle.volume`),
  same(`${twoFat}.muscle.share`, `${adult}.muscle.share`),
  halfOf(`${twoFat}.fat-well-perfused.volume`, `${adult}.fat.volume`),
  fatShare(
    `${twoFat}.fat-well-perfused.share`,
    `${twoFat}.fat-well-perfused.volume`,
    'fat-perfusion.well-perfused'
  ),
  halfOf(`${twoFat}.fat-poorly-perfused.volume`, `${adult}.fat.volume`),
  fatShare(
    `${twoFat}.fat-poorly-perfused.share`,
    `${twoFat}.fat-poorly-perfused.volume`,
    'fat-perfusion.poorly-perfused'
  ),
  {
    yields: 'absorbent.soda-lime.stoichiometric-limit',
    from: {
      x: 'absorbent.soda-lime.calcium-hydroxide-share',
      M: 'calcium-hydroxide.molar-mass',
      R: 'gas-constant',
      T_0: 'zero-celsius',
      P: 'standard-atmosphere'
    },
    expression: 'x / 100 * 1000 / M * R * (T_0 + 20) / P',
    compute: (value) =>
      ((((value('absorbent.soda-lime.calcium-hydroxide-share') / 100) * 1000) /
        value('calcium-hydroxide.molar-mass')) *
        value('gas-constant') *
        (value('zero-celsius') + 20)) /
      value('standard-atmosphere')
  },
  {
    yields: 'absorbent.process-co2',
    from: { M_CO2: 'carbon-dioxide.molar-mass', M: 'calcium-hydroxide.molar-mass' },
    expression: 'M_CO2 / M',
    compute: (value) => value('carbon-dioxide.molar-mass') / value('calcium-hydroxide.molar-mass')
  },
  {
    yields: 'oxygen.co2e',
    from: { m: 'oxygen.co2e-per-bed-day', F: 'oxygen.bed-day-flow' },
    expression: 'm / (F * 1440 / 1000)',
    compute: (value) => value('oxygen.co2e-per-bed-day') / ((value('oxygen.bed-day-flow') * 1440) / 1000)
  }
];

/** Expression with what its symbols stand for, e.g. `V / 2, where V is body.reference-adult.fat.volume`. */
export function derivationInWords({ expression, from }: Derivation): string {
  const meanings = Object.entries(from).map(([symbol, id]) => `${symbol} is ${id}`);
  return `${expression}, where ${meanings.join(', ')}`;
}
