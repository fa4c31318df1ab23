import { binomialTails } from './distributions.ts';
import { logGamma } from './gamma.ts';

const logChoose = (n: number, k: number): number => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/**
 * Logarithm of the chance of k of n where the members of a group resemble each other.
 *
 * @param p            chance of each, above 0 and below 1
 * @param correlation  within the group, 0 to below 1; 0 is the binomial distribution
 */
export function logBetaBinomial(k: number, n: number, p: number, correlation: number): number {
  if (correlation === 0) return logChoose(n, k) + k * Math.log(p) + (n - k) * Math.log1p(-p);
  const size = (1 - correlation) / correlation;
  return logChoose(n, k) + logBeta(k + p * size, n - k + (1 - p) * size) - logBeta(p * size, (1 - p) * size);
}

/** Chance of at least k of n, as `logBetaBinomial`. */
export function atLeastOf(k: number, n: number, p: number, correlation: number): number {
  if (n < k) return 0;
  if (k === 0) return 1;
  if (correlation === 0) return 1 - binomialTails(k - 1, n, p)[0];
  const size = (1 - correlation) / correlation;
  const [a, b] = [p * size, (1 - p) * size];
  // Each chance from the one before: P(x)/P(x - 1) = (n - x + 1)(a + x - 1)/(x(b + n - x)).
  let chance = Math.exp(logBetaBinomial(0, n, p, correlation));
  let below = chance;
  for (let x = 1; x < k; x++) {
    // Where the first were too small for a double, one begins when it no longer is.
    chance =
      chance > 0
        ? (chance * (n - x + 1) * (a + x - 1)) / (x * (b + n - x))
        : Math.exp(logBetaBinomial(x, n, p, correlation));
    below += chance;
  }
  return Math.max(0, 1 - below);
}
