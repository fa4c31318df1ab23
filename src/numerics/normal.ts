const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Standard normal density φ(z). */
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

const NEAR_P = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457,
  67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
];
const NEAR_Q = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
  28729.085735721942674, 5226.495278852854561,
];
const FAR_P = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
  0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
];
const FAR_Q = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
  0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
];
const FARTHEST_P = [
  6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
  0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
];
const FARTHEST_Q = [
  1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
  1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
];

function polynomial(c: readonly number[], x: number): number {
  return ((((((c[7]! * x + c[6]!) * x + c[5]!) * x + c[4]!) * x + c[3]!) * x + c[2]!) * x + c[1]!) * x + c[0]!;
}

/**
 * Standard normal quantile.
 *
 * @param p  probability in (0, 1)
 * @returns  z with P(Z ≤ z) = p, relative error about 1e-16
 * @throws RangeError if p lies outside (0, 1)
 * @source Wichura (1988), algorithm AS 241, Appl. Stat. 37:477
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability must lie between 0 and 1, not ${p}`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(NEAR_P, r)) / polynomial(NEAR_Q, r);
  }
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z =
    r <= 5
      ? polynomial(FAR_P, r - 1.6) / polynomial(FAR_Q, r - 1.6)
      : polynomial(FARTHEST_P, r - 5) / polynomial(FARTHEST_Q, r - 5);
  return q < 0 ? -z : z;
}
