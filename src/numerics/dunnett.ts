import { normalDensity } from './normal.ts';
import { tabledNormalCdf } from './normalTable.ts';
import { scaleRule, wholePower } from './range.ts';
import { tQuantile } from './distributions.ts';
import { findRoot } from './root.ts';

/** Over this the integrand is a step, and its rule would need points without end. */
const LARGEST = 0.999;

/**
 * Factors of a correlation matrix of product form, ρij = λi λj for i ≠ j.
 *
 * @param correlation  k × k correlation matrix
 * @returns            λ, or null where the matrix has no such form, or is all but singular
 */
export function productFactors(correlation: readonly (readonly number[])[]): readonly number[] | null {
  const k = correlation.length;
  if (k === 1) return [0];
  if (k === 2) {
    const root = Math.sqrt(Math.abs(correlation[0]![1]!));
    return root <= LARGEST ? [root, Math.sign(correlation[0]![1]!) * root] : null;
  }
  const factors = correlation.map((row, i) => {
    const j = i === 0 ? 1 : 0;
    const l = i <= 1 ? 2 : 1;
    return Math.sqrt(Math.max(0, (row[j]! * row[l]!) / correlation[j]![l]!));
  });
  const fits = correlation.every((row, i) =>
    row.every((value, j) => i === j || Math.abs(value - factors[i]! * factors[j]!) < 1e-9),
  );
  return fits && factors.every((factor) => factor <= LARGEST) ? factors : null;
}

const REACH = 8;

/** Factors that stand for several comparisons: where replication is equal, one stands for all. */
interface GroupedFactors {
  readonly factors: readonly number[];
  readonly times: readonly number[];
}

function grouped(all: readonly number[]): GroupedFactors {
  const times = new Map<number, number>();
  // The integrand is the same for a factor and its opposite.
  for (const factor of all) times.set(Math.abs(factor), (times.get(Math.abs(factor)) ?? 0) + 1);
  return { factors: [...times.keys()], times: [...times.values()] };
}

function normalUpperTail(c: number, { factors, times }: GroupedFactors): number {
  const spreads = factors.map((factor) => Math.sqrt(1 - factor * factor));
  const step = Math.min(0.25, 0.3 * Math.min(...spreads));
  let sum = 0;
  // Two-sided, so the integrand is the same at z and -z.
  for (let z = step / 2; z <= REACH; z += step) {
    let inside = 1;
    for (let j = 0; j < factors.length; j++) {
      const shift = factors[j]! * z;
      const outside = tabledNormalCdf((shift - c) / spreads[j]!) + tabledNormalCdf((-shift - c) / spreads[j]!);
      inside *= wholePower(1 - outside, times[j]!);
    }
    sum += normalDensity(z) * 2 * step * (1 - inside);
  }
  return sum;
}

/**
 * P(max |Tj| > t) for multivariate t with product correlation, as comparisons with one check have it.
 *
 * @param t        value ≥ 0
 * @param factors  λ of the correlation ρij = λi λj, each within ±0.999
 * @param df       degrees of freedom, Infinity allowed
 * @throws RangeError if a factor is outside its range
 * @source Dunnett (1964), Biometrics 20:482-491
 */
export function dunnettUpperTail(t: number, factors: readonly number[], df: number): number {
  if (factors.some((factor) => !(Math.abs(factor) <= LARGEST))) throw new RangeError('a factor is not within ±0.999');
  const { nodes, weights } = scaleRule(df, 0.36);
  const groups = grouped(factors);
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * normalUpperTail(t * nodes[i]!, groups);
  return Math.min(1, Math.max(0, sum));
}

/**
 * A single comparison's critical value and Bonferroni's, between which that of k comparisons lies (slightly widened).
 *
 * @param p   1 - the error rate of all k together, in (0, 1)
 * @param df  residual degrees of freedom, above 0
 */
export function criticalBounds(p: number, k: number, df: number): readonly [number, number] {
  return [tQuantile(0.5 + p / 2, df) * (1 - 1e-3), tQuantile(1 - (1 - p) / (2 * k), df) * (1 + 1e-3)];
}

/**
 * Two-sided critical value: P(max |Tj| > value) = 1 - p.
 *
 * @param p        in (0, 1)
 * @param factors  λj of the correlations λi λj, one for each comparison
 * @param df       residual degrees of freedom, above 0
 * @throws NotConverged where the root is not found
 * @source Dunnett (1964) Biometrics 20:482
 */
export function dunnettQuantile(p: number, factors: readonly number[], df: number): number {
  const [low, high] = criticalBounds(p, factors.length, df);
  return findRoot((t) => dunnettUpperTail(t, factors, df) - (1 - p), low, high, 1e-11);
}
