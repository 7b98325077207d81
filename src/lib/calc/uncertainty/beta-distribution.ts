/**
 * The beta distribution with a + b = 6, the case of every PERT distribution, whose weight of 4 on the mode makes it so.
 * NIST Digital Library of Mathematical Functions, section 8.17.
 */

const SUM = 6;

export interface BetaDistribution {
  /** x^(a − 1) (1 − x)^(5 − a) / B(a, 6 − a). */
  density(x: number): number;
  /** The share of the distribution below x, I_x(a, 6 − a). */
  shareBelow(x: number): number;
}

/** The distribution over [0, 1] with 1 ≤ a ≤ 5 and b = 6 − a. */
export function betaDistribution(a: number): BetaDistribution {
  const b = SUM - a;
  const whole = completeBeta(a);
  const turn = (a + 1) / (SUM + 2);
  return {
    density: (x) => (x ** (a - 1) * (1 - x) ** (b - 1)) / whole,
    shareBelow: (x) => {
      if (x <= 0) return 0;
      if (x >= 1) return 1;
      // On the side where the continued fraction converges fast.
      return x <= turn ? lowerShare(x, { a, b, whole }) : 1 - lowerShare(1 - x, { a: b, b: a, whole });
    }
  };
}

/** B(a, 6 − a) for 0 < a < 6, by the reflection formula Γ(a) Γ(1 − a) = π / sin(πa): no gamma function is needed. */
export function completeBeta(a: number): number {
  // Γ(6 − a) = (5 − a)(4 − a) … (1 − a) Γ(1 − a). The factor nearest to 0 is taken together with the sine, as both
  // vanish where a is whole.
  const nearest = Math.min(Math.max(Math.round(a), 1), SUM - 1);
  const off = Math.PI * (a - nearest);
  let product = off === 0 ? 1 : off / Math.sin(off);
  for (let k = 1; k < SUM; k += 1) if (k !== nearest) product *= Math.abs(k - a);
  return product / 120;
}

/** Continued fraction DLMF 8.17.22, by Lentz's method. */
function lowerShare(x: number, { a, b, whole }: { a: number; b: number; whole: number }): number {
  let [numerator, denominator] = [1, 1 / (1 - ((a + b) * x) / (a + 1))];
  let fraction = denominator;
  for (let m = 1; m < 200; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    denominator = 1 / (1 + even * denominator);
    numerator = 1 + even / numerator;
    fraction *= numerator * denominator;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    denominator = 1 / (1 + odd * denominator);
    numerator = 1 + odd / numerator;
    const factor = numerator * denominator;
    fraction *= factor;
    if (Math.abs(factor - 1) < Number.EPSILON) break;
  }
  return (x ** a * (1 - x) ** b * fraction) / (a * whole);
}
