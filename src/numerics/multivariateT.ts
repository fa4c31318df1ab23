import { chiSquareQuantile } from './distributions.ts';
import { normalQuantile } from './normal.ts';
import { tabledNormalCdf } from './normalTable.ts';
import { criticalBounds, dunnettUpperTail } from './dunnett.ts';
import { findRoot } from './root.ts';
import { cell } from './element.ts';

/** Lower triangular root of a correlation matrix; dependent columns become 0. */
function cholesky(matrix: readonly (readonly number[])[]): readonly Float64Array[] {
  const k = matrix.length;
  const rows = Array.from({ length: k }, () => new Float64Array(k));
  for (let j = 0; j < k; j++) {
    for (let i = j; i < k; i++) {
      let sum = matrix[i]![j]!;
      for (let l = 0; l < j; l++) sum -= cell(rows[i]!, l) * cell(rows[j]!, l);
      if (i === j) rows[j]![j] = Math.sqrt(Math.max(sum, 0));
      else rows[i]![j] = cell(rows[j]!, j) > 1e-9 ? sum / cell(rows[j]!, j) : 0;
    }
  }
  return rows;
}

function primes(count: number): readonly number[] {
  const found = [2];
  for (let n = 3; found.length < count; n += 2) if (found.every((p) => n % p !== 0)) found.push(n);
  return found;
}

/** Fixed shifts of the lattice, so that the same question has the same answer. */
const SHIFTS = 8;
/** Points of a shift: more dimensions want more. */
const pointsFor = (k: number): number => (k <= 4 ? 2 ** 9 : k <= 8 ? 2 ** 10 : 2 ** 12);
const SCALES = 512;
/** Looks at the lattice for a critical value. */
const MOST_LOOKS = 5;

/** Room for the variables of one lattice point. */
const drawn = new Float64Array(1000);

const scaleTables = new Map<number, Float64Array>();

/** s at the middles of equal shares of probability, where df·s² is chi-square. */
function scaleTable(df: number): Float64Array {
  const known = scaleTables.get(df);
  if (known) return known;
  const table = Float64Array.from({ length: SCALES }, (_, i) =>
    df === Infinity ? 1 : Math.sqrt(chiSquareQuantile((i + 0.5) / SCALES, df) / df),
  );
  scaleTables.set(df, table);
  return table;
}

/** P(every |Zj| ≤ c) at one lattice point, each variable in turn given those before it (Genz 1992). */
function boxShare(c: number, root: readonly Float64Array[], at: Float64Array): number {
  const k = root.length;
  let product = 1;
  for (let j = 0; j < k; j++) {
    const row = root[j]!;
    let mean = 0;
    for (let l = 0; l < j; l++) mean += cell(row, l) * cell(drawn, l);
    const own = cell(row, j);
    if (own <= 1e-9) {
      if (Math.abs(mean) > c) return 0;
      drawn[j] = 0;
      continue;
    }
    const low = tabledNormalCdf((-c - mean) / own);
    const width = tabledNormalCdf((c - mean) / own) - low;
    product *= width;
    if (product === 0) return 0;
    if (j < k - 1) drawn[j] = fastQuantile(low + Math.abs(2 * cell(at, j) - 1) * width);
  }
  return product;
}

/** The product form λi λj nearest to a correlation matrix, by least squares on its off-diagonal (Harman & Jones 1966). */
function nearestProduct(correlation: readonly (readonly number[])[]): readonly number[] {
  const factors = correlation.map(() => Math.SQRT1_2);
  for (let step = 0; step < 60; step++) {
    // One after another: all at once they swing to and fro where most correlations are 0.
    for (let i = 0; i < factors.length; i++) {
      let [top, bottom] = [0, 0];
      factors.forEach((other, j) => {
        if (j === i) return;
        top += correlation[i]![j]! * other;
        bottom += other * other;
      });
      factors[i] = bottom > 0 ? Math.max(0, Math.min(0.99, top / bottom)) : 0;
    }
  }
  return factors;
}

function latticeShare(
  t: number,
  root: readonly Float64Array[],
  scales: Float64Array,
  steps: readonly number[],
): number {
  const k = root.length;
  const points = pointsFor(k);
  let inside = 0;
  for (let shift = 0; shift < SHIFTS; shift++) {
    const at = Float64Array.from(steps, (_, j) => (shift * 0.6180339887498949 * (j + 1)) % 1);
    for (let i = 0; i < points; i++) {
      for (let j = 0; j <= k; j++) {
        at[j]! += steps[j]!;
        if (cell(at, j) >= 1) at[j]! -= 1;
      }
      const place = Math.min(SCALES - 1.001, Math.max(0, Math.abs(2 * cell(at, k) - 1) * SCALES - 0.5));
      const below = Math.floor(place);
      const c = t * (cell(scales, below) + (place - below) * (cell(scales, below + 1) - cell(scales, below)));
      inside += boxShare(c, root, at);
    }
  }
  return inside / (SHIFTS * points);
}

/** A distribution with any correlation beside the one with the nearest product form, whose tail is known exactly. */
interface Approached {
  readonly factors: readonly number[];
  /** What the box holds more than that of the product form: a shifted Richtmyer lattice, both by the same points. */
  readonly difference: (t: number) => number;
}

function approached(correlation: readonly (readonly number[])[], df: number): Approached {
  const steps = primes(correlation.length + 1).map((p) => Math.sqrt(p) % 1);
  const scales = scaleTable(df);
  const factors = nearestProduct(correlation);
  const product = factors.map((a, i) => factors.map((b, j) => (i === j ? 1 : a * b)));
  const [own, near] = [cholesky(correlation), cholesky(product)];
  return {
    factors,
    difference: (t) => latticeShare(t, own, scales, steps) - latticeShare(t, near, scales, steps),
  };
}

/**
 * P(max |Tj| > t) for a multivariate t with any correlation: a lattice for what the matrix differs from its nearest
 * product form, whose probability is known exactly (a control variate).
 *
 * @param t            value ≥ 0
 * @param correlation  k × k correlation matrix
 * @param df           degrees of freedom, Infinity allowed
 * @returns            the probability, error below 1e-4 for the correlations that comparisons with a check have
 * @source Genz & Bretz (2009), Computation of Multivariate Normal and t Probabilities, ch. 4
 */
export function multivariateTUpperTail(t: number, correlation: readonly (readonly number[])[], df: number): number {
  const { factors, difference } = approached(correlation, df);
  return Math.min(1, Math.max(0, dunnettUpperTail(t, factors, df) - difference(t)));
}

const TABLE = 4096;
const quantiles = Float64Array.from({ length: TABLE + 1 }, (_, i) =>
  normalQuantile(Math.min(1 - 1e-6, Math.max(1e-6, i / TABLE))),
);

/**
 * Normal quantile good to about 1e-5, which is enough to place a lattice point: a table in the middle, in the tails
 * Abramowitz & Stegun (1964) 26.2.23 with one Newton step.
 */
function fastQuantile(u: number): number {
  if (u > 0.02 && u < 0.98) {
    const at = u * TABLE;
    const i = Math.floor(at);
    return cell(quantiles, i) + (at - i) * (cell(quantiles, i + 1) - cell(quantiles, i));
  }
  const tail = Math.max(1e-15, Math.min(u, 1 - u));
  const t = Math.sqrt(-2 * Math.log(tail));
  const z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  const better = z + (tabledNormalCdf(-z) - tail) * Math.sqrt(2 * Math.PI) * Math.exp(0.5 * z * z);
  return u < 0.5 ? -better : better;
}

/**
 * Two-sided critical value for any correlation.
 *
 * @param p            in (0, 1)
 * @param correlation  k × k, positive semidefinite
 * @param df           residual degrees of freedom, above 0
 * @returns            to about 2e-4, by a lattice with a control variate
 * @source Genz & Bretz (2009) Computation of Multivariate Normal and t Probabilities ch. 4
 */
export function multivariateTQuantile(p: number, correlation: readonly (readonly number[])[], df: number): number {
  const { factors, difference } = approached(correlation, df);
  const [low, high] = criticalBounds(p, correlation.length, df);
  // The difference hardly changes with t: two or three looks at it are enough.
  let [value, more] = [high, difference((low + high) / 2)];
  for (let step = 0; step < MOST_LOOKS; step++) {
    const tail = (t: number): number => dunnettUpperTail(t, factors, df) - more - (1 - p);
    const next = findRoot(tail, low, high, 1e-9);
    if (Math.abs(next - value) < 1e-6) return next;
    [value, more] = [next, difference(next)];
  }
  // Where the product form is far off, the whole tail is searched.
  return findRoot((t) => dunnettUpperTail(t, factors, df) - difference(t) - (1 - p), low, high, 1e-4);
}
