/** A formula as printed, evaluated by a general-purpose expression library in 40 digits, against its code. */
import { all, create } from 'mathjs';
import type { FactoryFunctionMap } from 'mathjs';
import { Decimal } from '#lib/calc/money/decimal.ts';
import type { AnyFormula } from './recorded.ts';

const math = create(all as FactoryFunctionMap, { number: 'BigNumber', precision: 40 });

/** Repeatable numbers in [0, 1): a linear congruential sequence (Numerical Recipes, 1992). */
const sequence = (seed: number) => () => (seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) / 2 ** 32;

/**
 * The largest difference on 200 random inputs, relative where the value is above 1.
 * @param sample values that it was given, which say what is a list, a number or an amount
 * @throws Error where it is written as no expression
 */
export function worstDifference(
  formula: Pick<AnyFormula, 'id' | 'expression' | 'inputs' | 'compute'>,
  sample: Record<string, unknown>
): number {
  const { id, expression } = formula;
  if (expression === null) throw new Error(`${id} is written as no expression.`);
  const printed = math.compile(expression);
  const next = sequence(id.length + 1);
  let worst = 0;
  for (let run = 0; run < 200; run++) {
    const code: Record<string, unknown> = {};
    const symbols: Record<string, unknown> = {};
    for (const [name, { symbol, testRange: [low, high] = [0.1, 10] }] of Object.entries(formula.inputs)) {
      const draw = (like: unknown): { value: unknown; big: unknown } => {
        const number = Number((low + next() * (high - low)).toPrecision(12));
        return {
          value: like instanceof Decimal ? new Decimal(number) : number,
          big: math.bignumber(number)
        };
      };
      const like = sample[name];
      const drawn = Array.isArray(like) ? like.map(draw) : draw(like);
      code[name] = Array.isArray(drawn) ? drawn.map(({ value }) => value) : drawn.value;
      symbols[symbol] = Array.isArray(drawn) ? drawn.map(({ big }) => big) : drawn.big;
    }
    const wanted = math.number(printed.evaluate(symbols) as never) as number;
    const found = formula.compute(code);
    const difference = found instanceof Decimal ? found.minus(wanted).toNumber() : (found as number) - wanted;
    worst = Math.max(worst, Math.abs(difference) / Math.max(1, Math.abs(wanted)));
  }
  return worst;
}
