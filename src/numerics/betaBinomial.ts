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
  let below = 0;
  for (let x = 0; x < k; x++) below += Math.exp(logBetaBinomial(x, n, p, correlation));
  return Math.max(0, 1 - below);
}
