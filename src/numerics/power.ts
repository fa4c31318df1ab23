import { normalCdf } from './normal.ts';
import { scaleRule } from './range.ts';
import { findRoot } from './root.ts';
import { nth } from './element.ts';

/**
 * Power of a two-sided test of a difference over its estimated standard error.
 *
 * @param noncentrality  true difference over its standard error, ≥ 0
 * @param df             degrees of freedom of the standard error
 * @param critical       the difference, in standard errors, from which the two are separated, > 0
 * @returns              chance that the test separates them, on either side
 * @source Cohen (1988) Statistical Power Analysis; noncentral t as a mixture of normals over the scale
 */
export function tPower(noncentrality: number, df: number, critical: number): number {
  const { nodes, weights } = scaleRule(df);
  return nodes.reduce(
    (sum, s, i) =>
      sum + nth(weights, i) * (normalCdf(noncentrality - critical * s) + normalCdf(-noncentrality - critical * s)),
    0,
  );
}

/**
 * Difference, in standard errors, that such a test sees with a given power.
 *
 * @param power  chance to see it, over the test's level and under 1
 */
export function detectableNoncentrality(power: number, df: number, critical: number): number {
  return findRoot((d) => tPower(d, df, critical) - power, 0, 20 + 2 * critical, 1e-10);
}
