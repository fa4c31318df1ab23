import { findRoot } from './root.ts';

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Standard normal density. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
}

const CENTRE_P = [
  2.2352520354606839287, 161.02823106855587881, 1067.6894854603709582, 18154.981253343561249, 0.065682337918207449113,
];
const CENTRE_Q = [47.20258190468824187, 976.09855173777669322, 10260.932208618978205, 45507.789335026729956];
const MIDDLE_P = [
  0.39894151208813466764, 8.8831497943883759412, 93.506656132177855979, 597.27027639480026226, 2494.5375852903726711,
  6848.1904505362823326, 11602.651437647350124, 9842.7148383839780218, 1.0765576773720192317e-8,
];
const MIDDLE_Q = [
  22.266688044328115691, 235.38790178262499861, 1519.377599407554805, 6485.558298266760755, 18615.571640885098091,
  34900.952721145977266, 38912.003286093271411, 19685.429676859990727,
];
const TAIL_P = [
  0.21589853405795699, 0.1274011611602473639, 0.022235277870649807, 0.001421619193227893466, 2.9112874951168792e-5,
  0.02307344176494017303,
];
const TAIL_Q = [
  1.28426009614491121, 0.468238212480865118, 0.0659881378689285515, 0.00378239633202758244, 7.29751555083966205e-5,
];

function ratio(p: readonly number[], q: readonly number[], x: number): number {
  const last = p.length - 1;
  let numerator = p[last]! * x;
  let denominator = x;
  for (let i = 0; i < last - 1; i++) {
    numerator = (numerator + p[i]!) * x;
    denominator = (denominator + q[i]!) * x;
  }
  return (numerator + p[last - 1]!) / (denominator + q[last - 1]!);
}

/** exp(-y²/2) with y² split so that the rounding of the square does not reach the result. */
function gaussian(y: number): number {
  const coarse = Math.trunc(y * 16) / 16;
  return Math.exp(-coarse * coarse * 0.5) * Math.exp(-(y - coarse) * (y + coarse) * 0.5);
}

function upperTail(y: number): number {
  if (y <= 5.656854249492381) return gaussian(y) * ratio(MIDDLE_P, MIDDLE_Q, y);
  const r = 1 / (y * y);
  const correction = r * ratio(TAIL_P, TAIL_Q, r);
  return (gaussian(y) * (1 / ROOT_TWO_PI - correction)) / y;
}

/**
 * Standard normal distribution function.
 *
 * @param z  any real number
 * @returns  P(Z ≤ z), relative error about 1e-15 in both tails
 * @source Cody (1969), Rational Chebyshev approximations for the error function, Math. Comp. 23:631
 */
export function normalCdf(z: number): number {
  const y = Math.abs(z);
  if (y <= 0.67448975) return 0.5 + z * ratio(CENTRE_P, CENTRE_Q, z * z);
  // Beyond 40 the tail is under the smallest double.
  const tail = y > 40 ? 0 : upperTail(y);
  return z > 0 ? 1 - tail : tail;
}

/**
 * Standard normal quantile.
 *
 * @param p  probability in (0, 1)
 * @returns  z with P(Z ≤ z) = p
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability must lie between 0 and 1, not ${p}`);
  if (p > 0.5) return p === 0.5 ? 0 : -normalQuantile(1 - p);
  if (p === 0.5) return 0;
  return findRoot((z) => Math.log(normalCdf(z)) - Math.log(p), -40, 0);
}
