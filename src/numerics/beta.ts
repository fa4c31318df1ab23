import { devianceTerm, stirlingRemainder } from './gamma.ts';
import { notConverged } from './notConverged.ts';

const TINY = 1e-300;
const MOST_TERMS = 1_000_000;

/** x^a y^b / B(a, b) with y = 1 - x given apart, without cancellation (Loader 2000). */
function prefactor(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const exponent =
    stirlingRemainder(n) -
    stirlingRemainder(a) -
    stirlingRemainder(b) -
    devianceTerm(a, n * x) -
    devianceTerm(b, n * y);
  return Math.sqrt((a * b) / (2 * Math.PI * n)) * Math.exp(exponent);
}

/** Continued fraction for I_x(a, b) / prefactor · a (Abramowitz & Stegun 26.5.8), modified Lentz. */
function fraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let h = d;
  for (let m = 1; ; m++) {
    if (m > MOST_TERMS) notConverged('the fraction of the incomplete beta function');
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) return h;
  }
}

/**
 * Regularised incomplete beta function, both tails.
 *
 * @param a  first shape > 0
 * @param b  second shape > 0
 * @param x  argument in [0, 1]
 * @param y  1 - x, given apart so that neither tail loses digits
 * @returns  [I_x(a, b), 1 - I_x(a, b)]
 * @source Abramowitz & Stegun (1964) 26.5.8; prefactor after Loader (2000)
 */
export function incompleteBeta(a: number, b: number, x: number, y: number): readonly [number, number] {
  if (x <= 0) return [0, 1];
  if (y <= 0) return [1, 0];
  if (x < (a + 1) / (a + b + 2)) {
    const lower = (prefactor(a, b, x, y) * fraction(a, b, x)) / a;
    return [lower, 1 - lower];
  }
  const upper = (prefactor(a, b, x, y) * fraction(b, a, y)) / b;
  return [1 - upper, upper];
}
