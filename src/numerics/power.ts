import { tQuantile } from './distributions.ts';
import { normalCdf } from './normal.ts';
import { scaleRule } from './range.ts';
import { findRoot } from './root.ts';

/**
 * Power of a two-sided t test.
 *
 * @param noncentrality  true difference over its standard error, ≥ 0
 * @param df             degrees of freedom of the standard error
 * @param alpha          two-sided level of the test
 * @returns              chance that the test separates them, on either side
 * @source Cohen (1988) Statistical Power Analysis; noncentral t as a mixture of normals over the scale
 */
export function tPower(noncentrality: number, df: number, alpha: number): number {
  const t = tQuantile(1 - alpha / 2, df);
  const { nodes, weights } = scaleRule(df);
  return nodes.reduce(
    (sum, s, i) => sum + weights[i]! * (normalCdf(noncentrality - t * s) + normalCdf(-noncentrality - t * s)),
    0,
  );
}

/**
 * Difference, in standard errors, that a two-sided t test sees with a given power.
 *
 * @param power  chance to see it, over alpha and under 1
 */
export function detectableNoncentrality(power: number, df: number, alpha: number): number {
  return findRoot((d) => tPower(d, df, alpha) - power, 0, 20 + 2 * tQuantile(1 - alpha / 2, df), 1e-10);
}
