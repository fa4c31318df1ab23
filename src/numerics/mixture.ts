import { normalCdf } from './normal.ts';
import { findRoot } from './root.ts';

/** One part of a mixture of normal distributions. */
export interface NormalPart {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/**
 * Quantile of a mixture of normals.
 *
 * @param parts  weights sum to 1, every sd > 0
 * @param p      probability in (0, 1)
 * @returns      x with P(X ≤ x) = p, to 1e-9 of the mixture's spread
 */
export function mixtureQuantile(parts: readonly NormalPart[], p: number): number {
  let [low, high] = [Infinity, -Infinity];
  for (const { mean, sd } of parts) {
    low = Math.min(low, mean - 10 * sd);
    high = Math.max(high, mean + 10 * sd);
  }
  const below = (x: number): number => {
    let sum = 0;
    for (const { weight, mean, sd } of parts) sum += weight * normalCdf((x - mean) / sd);
    return sum - p;
  };
  return findRoot(below, low, high, 1e-9 * (high - low));
}
