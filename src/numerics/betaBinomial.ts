import { logGamma } from './gamma.ts';

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Up to so many trials factors are multiplied: fewer and cheaper steps than gamma functions. */
const FEW = 300;
const SMALL = 1e-200;

/** Logarithm of a product of so many factors. */
function logProduct(count: number, factor: (i: number) => number): number {
  let [log, product] = [0, 1];
  for (let i = 0; i < count; i++) {
    product *= factor(i);
    if (product < SMALL) {
      log += Math.log(product);
      product = 1;
    }
  }
  return log + Math.log(product);
}

/**
 * Logarithm of the chance of k of n where the members of a group resemble each other.
 *
 * @param p            chance of each, above 0 and below 1
 * @param correlation  within the group, 0 to below 1; 0 is the binomial distribution
 */
export function logBetaBinomial(k: number, n: number, p: number, correlation: number): number {
  const many = n > FEW;
  const logChoose = many
    ? logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1)
    : logProduct(k, (i) => (n - k + 1 + i) / (i + 1));
  if (correlation === 0) return logChoose + k * Math.log(p) + (n - k) * Math.log1p(-p);
  const size = (1 - correlation) / correlation;
  const [a, b] = [p * size, (1 - p) * size];
  if (many) return logChoose + logBeta(k + a, n - k + b) - logBeta(a, b);
  return logChoose + logProduct(k, (i) => (a + i) / (size + i)) + logProduct(n - k, (i) => (b + i) / (size + k + i));
}

/** Chance of at least k of n, as `logBetaBinomial`. */
export function atLeastOf(k: number, n: number, p: number, correlation: number): number {
  if (n < k) return 0;
  if (k === 0) return 1;
  // Each chance from the one before: P(x)/P(x - 1) = (n - x + 1)(a + x - 1)/(x(b + n - x)).
  const size = (1 - correlation) / correlation;
  const odds = p / (1 - p);
  const next = (chance: number, x: number): number =>
    correlation === 0
      ? (chance * (n - x + 1) * odds) / x
      : (chance * (n - x + 1) * (p * size + x - 1)) / (x * ((1 - p) * size + n - x));
  let chance = Math.exp(logBetaBinomial(0, n, p, correlation));
  let below = chance;
  for (let x = 1; x < k; x++) {
    // Where the first were too small for a double, one begins when it no longer is.
    chance = chance > 0 ? next(chance, x) : Math.exp(logBetaBinomial(x, n, p, correlation));
    below += chance;
  }
  return Math.max(0, 1 - below);
}
