/** The interest rates at which a cash flow is worth nothing on balance. */
import type { Quantity, Reckoner } from '../working/reckoner.ts';
import type { Decimal } from './decimal.ts';
import { byYear } from './no-figure.ts';

export interface InternalRates {
  readonly kind: 'none' | 'one' | 'several';
  /** The rate where there is exactly one; null otherwise. */
  readonly ratePercent: Quantity<number | null>;
  /** All rates above −100 %, rising. */
  readonly allPercent: readonly number[];
}

/**
 * All internal rates of return of the yearly flows C_0 … C_T: the rates i > −1 with Σ C_t (1 + i)^−t = 0.
 *
 * A rate is no amount of money, so it is found in plain numbers. None where the flows never change sign; more than one
 * is possible where they change it more than once, and then none of them ranks a project: use the net present value.
 * Irregularly dated flows are outside this tool: every flow falls on a year end.
 */
export function internalRates(r: Reckoner, flows: readonly Quantity<Decimal>[]): InternalRates {
  const allPercent = internalRatesOf(flows.map((flow) => r.value(flow).toNumber())).map((rate) => rate * 100);
  const only = allPercent.length === 1 ? (allPercent[0] as number) : null;
  return {
    kind: allPercent.length === 0 ? 'none' : allPercent.length === 1 ? 'one' : 'several',
    allPercent,
    ratePercent: r.result<number | null>(only, byYear(flows), () => ({
      id: 'money.internal-rate',
      yields: 'Internal rate of return',
      words:
        'The discount rate at which the net present value is 0. With x = 1 / (1 + i) the net present value is a ' +
        'polynomial in x; between two neighbouring turning points it has at most one root, which is bracketed and ' +
        'halved until it stands to the last digit. All rates above −100 % are found; with none or several, no single ' +
        'rate is given.',
      unit: '%',
      source: 'OpenStax, Principles of Finance (2022), chapter 16: internal rate of return',
      report: [
        { words: 'rates found', value: allPercent.length, unit: '1' },
        ...allPercent.map((value) => ({ words: 'rate', value, unit: '%' }))
      ]
    }))
  };
}

/** All rates i > −1 (as fractions, rising) at which the flows, year 0 first, have the net present value 0. */
export function internalRatesOf(flows: readonly number[]): number[] {
  const first = flows.findIndex((flow) => flow !== 0);
  if (first < 0) return [];
  const last = flows.findLastIndex((flow) => flow !== 0);
  const inFalling = flows.slice(first, last + 1);
  // Rates from 0 up lie at x = 1 / (1 + i) in (0, 1]; rates below 0 at y = 1 + i in (0, 1), where the flows are read
  // from the far end. So no power ever overflows.
  const fromZeroUp = rootsInUnitInterval(inFalling).map((x) => 1 / x - 1);
  const belowZero = rootsInUnitInterval([...inFalling].reverse())
    .filter((y) => y < 1)
    .map((y) => y - 1);
  return [...belowZero, ...fromZeroUp].sort((a, b) => a - b);
}

/** Roots in (0, 1] of Σ c_k x^k, rising; a root at which the polynomial only touches 0 counts once. */
function rootsInUnitInterval(coefficients: readonly number[]): number[] {
  if (coefficients.length < 2) return [];
  const derivative = coefficients.slice(1).map((c, k) => c * (k + 1));
  const scale = Math.max(...derivative.map(Math.abs));
  const turns = scale === 0 ? [] : rootsInUnitInterval(derivative.map((c) => c / scale));
  const ends = [0, ...turns.filter((x) => x < 1), 1];
  const roots: number[] = [];
  ends.forEach((end, k) => {
    if (end > 0 && isRoot(coefficients, end)) {
      roots.push(end);
      return;
    }
    const next = ends[k + 1];
    if (next === undefined || isRoot(coefficients, next)) return;
    if (valueAt(coefficients, end) * valueAt(coefficients, next) < 0)
      roots.push(halve(coefficients, end, next));
  });
  return roots;
}

/** Horner's scheme. */
const valueAt = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, c) => sum * x + c, 0);

/** Whether the value at x is 0 as far as rounding lets it be told. */
function isRoot(coefficients: readonly number[], x: number): boolean {
  const size = valueAt(coefficients.map(Math.abs), x);
  return Math.abs(valueAt(coefficients, x)) <= 8 * coefficients.length * Number.EPSILON * size;
}

/** The root between two points of opposite sign, by halving until no number lies between. */
function halve(coefficients: readonly number[], low: number, high: number): number {
  const signAtLow = Math.sign(valueAt(coefficients, low));
  let [from, to] = [low, high];
  for (;;) {
    const middle = (from + to) / 2;
    if (middle <= from || middle >= to) return middle;
    const sign = Math.sign(valueAt(coefficients, middle));
    if (sign === 0) return middle;
    if (sign === signAtLow) from = middle;
    else to = middle;
  }
}
