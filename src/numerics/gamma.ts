import { notConverged } from './notConverged.ts';

const HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);
const TINY = 1e-300;
const MOST_TERMS = 1_000_000;

/**
 * Stirling's remainder: ln Γ(z) = ½ ln 2π + (z - ½) ln z - z + remainder.
 *
 * @param z  argument > 0
 * @returns  the remainder, right to about 1e-16
 * @source Abramowitz & Stegun (1964) 6.1.41, moved up by the recurrence for small z
 */
export function stirlingRemainder(z: number): number {
  let shift = 0;
  let x = z;
  while (x < 12) {
    shift += (x + 0.5) * Math.log1p(1 / x) - 1;
    x += 1;
  }
  const r = 1 / (x * x);
  const series =
    (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - r * (691 / 360360 - r / 156)))))) / x;
  return shift + series;
}

/**
 * Natural logarithm of the gamma function.
 *
 * @param z  argument > 0
 * @source Abramowitz & Stegun (1964) 6.1.41
 */
export function logGamma(z: number): number {
  return HALF_LOG_TWO_PI + (z - 0.5) * Math.log(z) - z + stirlingRemainder(z);
}

/**
 * Deviance term x ln(x / m) + m - x without cancellation.
 *
 * @source Loader (2000), Fast and accurate computation of binomial probabilities
 */
export function devianceTerm(x: number, m: number): number {
  if (x === 0) return m;
  const d = (x - m) / (x + m);
  if (Math.abs(d) > 0.1) return x * Math.log(x / m) + m - x;
  let sum = (x - m) * d;
  let term = 2 * x * d;
  // |d| ≤ 0.1, so that each term is a hundredth of the one before.
  for (let j = 3; j < 40; j += 2) {
    term *= d * d;
    const next = sum + term / j;
    if (next === sum) break;
    sum = next;
  }
  return sum;
}

/**
 * Regularised incomplete gamma function, both tails.
 *
 * @param a  shape > 0
 * @param x  argument ≥ 0
 * @returns  [P(a, x), Q(a, x)], each right in its own small tail
 * @source Abramowitz & Stegun (1964) 6.5.29 (series) and 6.5.31 (continued fraction)
 */
export function incompleteGamma(a: number, x: number): readonly [number, number] {
  if (x <= 0) return [0, 1];
  if (x === Infinity) return [1, 0];
  const prefactor = Math.sqrt(a / (2 * Math.PI)) * Math.exp(-devianceTerm(a, x) - stirlingRemainder(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; !(term < sum * 1e-17); n++) {
      if (n > MOST_TERMS) notConverged('the series of the incomplete gamma function');
      term *= x / (a + n);
      sum += term;
    }
    const lower = prefactor * sum;
    return [lower, 1 - lower];
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; ; i++) {
    if (i > MOST_TERMS) notConverged('the fraction of the incomplete gamma function');
    const an = -i * (i - a);
    b += 2;
    d = 1 / (an * d + b || TINY);
    c = b + an / c || TINY;
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  const upper = prefactor * h;
  return [1 - upper, upper];
}
