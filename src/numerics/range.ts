import { tQuantile } from './distributions.ts';
import { logGamma } from './gamma.ts';
import { normalCdf, normalDensity } from './normal.ts';
import { notConverged } from './notConverged.ts';
import { tabledNormalCdf } from './normalTable.ts';
import { findRoot } from './root.ts';

/** Nodes and weights for an expectation over s, where df·s² is chi-square with df degrees of freedom. */
interface ScaleRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

const scaleRules = new Map<string, ScaleRule>();

/**
 * Trapezoid rule in ln s: the integrand is analytic and dies off at both ends, so the error falls
 * faster than any power of the step.
 *
 * @param fineness  step in standard deviations of ln s
 */
export function scaleRule(df: number, fineness = 0.27): ScaleRule {
  const key = `${df} ${fineness}`;
  const known = scaleRules.get(key);
  if (known) return known;
  const rule = df === Infinity ? { nodes: [1], weights: [1] } : makeScaleRule(df, fineness);
  scaleRules.set(key, rule);
  return rule;
}

const MOST_NODES = 10_000;

function makeScaleRule(df: number, fineness: number): ScaleRule {
  const constant = Math.log(2) + (df / 2) * Math.log(df / 2) - logGamma(df / 2);
  const logDensity = (u: number): number => constant + df * u - (df / 2) * Math.exp(2 * u);
  const step = fineness / Math.sqrt(2 * df);
  const nodes: number[] = [];
  const weights: number[] = [];
  const add = (u: number): boolean => {
    const log = logDensity(u);
    nodes.push(Math.exp(u));
    weights.push(Math.exp(log) * step);
    return log > logDensity(0) - 31;
  };
  for (let u = 0; add(u); u += step) if (nodes.length > MOST_NODES) notConverged('the rule over the scale');
  for (let u = -step; add(u); u -= step) if (nodes.length > MOST_NODES) notConverged('the rule over the scale');
  return { nodes, weights };
}

const STEP = 0.16;
const REACH = 8;
const centres: number[] = [];
for (let z = -REACH; z <= REACH; z += STEP) centres.push(z);
const density = centres.map((z) => normalDensity(z) * STEP);
const lower = centres.map(normalCdf);

/** P(range of k standard normals > w). */
function normalRangeUpperTail(w: number, k: number): number {
  let sum = 0;
  for (let i = 0; i < centres.length; i++) {
    // The largest of the k lies at z; the range exceeds w unless the other k - 1 lie in (z - w, z).
    const within = lower[i]! - tabledNormalCdf(centres[i]! - w);
    sum += density[i]! * (wholePower(lower[i]!, k - 1) - wholePower(within, k - 1));
  }
  return k * sum;
}

/** xⁿ by squaring: several times faster than `**`. */
export function wholePower(x: number, n: number): number {
  let result = 1;
  let square = x;
  for (let rest = n; rest > 0; rest >>= 1) {
    if (rest & 1) result *= square;
    square *= square;
  }
  return result;
}

/**
 * Upper tail of the studentized range.
 *
 * @param q   value ≥ 0
 * @param k   number of means ≥ 2
 * @param df  degrees of freedom of the standard error, Infinity allowed
 * @returns   P(Q > q), absolute error about 1e-11
 * @source Tukey (1953); the double integral is in Harter (1960) Ann. Math. Stat. 31:1122
 */
export function studentizedRangeUpperTail(q: number, k: number, df: number): number {
  const { nodes, weights } = scaleRule(df);
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * normalRangeUpperTail(q * nodes[i]!, k);
  return Math.min(1, Math.max(0, sum));
}

/** Quantiles by what they were asked for: traits of a season often share their degrees of freedom. */
const quantiles = new Map<string, number>();
const MOST_KNOWN = 10_000;

/**
 * Quantile of the studentized range.
 *
 * @param p   probability in (0, 1)
 * @param k   number of means ≥ 2
 * @param df  degrees of freedom
 */
export function studentizedRangeQuantile(p: number, k: number, df: number): number {
  const key = `${p} ${k} ${df}`;
  const known = quantiles.get(key);
  if (known !== undefined) return known;
  // A pair's value and Bonferroni's for all pairs hold it between them.
  const low = Math.SQRT2 * tQuantile(0.5 + p / 2, df) * (1 - 1e-3);
  const high = Math.SQRT2 * tQuantile(1 - (1 - p) / (k * (k - 1)), df) * (1 + 1e-3);
  const found = findRoot((q) => studentizedRangeUpperTail(q, k, df) - (1 - p), low, high, 1e-12);
  if (quantiles.size < MOST_KNOWN) quantiles.set(key, found);
  return found;
}
