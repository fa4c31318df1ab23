import { incompleteBeta } from './beta.ts';
import { incompleteGamma } from './gamma.ts';
import { findDecreasingRoot, findRoot } from './root.ts';
import { normalCdf, normalQuantile } from './normal.ts';

function requireProbability(p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`a probability must lie between 0 and 1, not ${p}`);
}

/**
 * Upper tail of Student's t.
 *
 * @param t   value
 * @param df  degrees of freedom > 0, Infinity for the normal
 * @returns   P(T > t)
 * @source Abramowitz & Stegun (1964) 26.7.1
 */
export function tUpperTail(t: number, df: number): number {
  if (df === Infinity) return normalCdf(-t);
  const square = t * t;
  const [tail] = incompleteBeta(df / 2, 0.5, df / (df + square), square / (df + square));
  return t >= 0 ? tail / 2 : 1 - tail / 2;
}

/** Two-sided p value of Student's t: P(|T| > |t|), df above 0. */
export function tTwoSided(t: number, df: number): number {
  return Math.min(1, 2 * tUpperTail(Math.abs(t), df));
}

/**
 * Quantile of Student's t.
 *
 * @param p   probability in (0, 1)
 * @param df  degrees of freedom > 0
 */
export function tQuantile(p: number, df: number): number {
  requireProbability(p);
  if (df === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  const logTail = Math.log(p < 0.5 ? p : 1 - p);
  const t = findDecreasingRoot((at) => Math.log(tUpperTail(at, df)) - logTail, 1);
  return p < 0.5 ? -t : t;
}

/**
 * Upper tail of the F distribution.
 *
 * @param f    value ≥ 0
 * @param df1  numerator degrees of freedom
 * @param df2  denominator degrees of freedom
 * @returns    P(F > f)
 * @source Abramowitz & Stegun (1964) 26.6.2
 */
export function fUpperTail(f: number, df1: number, df2: number): number {
  return fTails(f, df1, df2)[1];
}

function fTails(f: number, df1: number, df2: number): readonly [number, number] {
  if (f <= 0) return [0, 1];
  if (f === Infinity) return [1, 0];
  const total = df2 + df1 * f;
  const [above, below] = incompleteBeta(df2 / 2, df1 / 2, df2 / total, (df1 * f) / total);
  return [below, above];
}

/**
 * Where a distribution on the positive numbers has a probability below it, by its smaller tail.
 *
 * @param tails  [P(X ≤ x), P(X > x)]
 */
function positiveQuantile(p: number, tails: (x: number) => readonly [number, number], start: number): number {
  requireProbability(p);
  const [logBelow, logAbove] = [Math.log(p), Math.log(1 - p)];
  return findDecreasingRoot((x) => {
    const [below, above] = tails(x);
    return p < 0.5 ? logBelow - Math.log(below) : Math.log(above) - logAbove;
  }, start);
}

/**
 * Quantile of the F distribution.
 *
 * @param p  in (0, 1); df1 and df2 above 0
 * @throws RangeError for a p outside
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  return positiveQuantile(p, (f) => fTails(f, df1, df2), 1);
}

/**
 * Upper tail of the chi-square distribution.
 *
 * @source Abramowitz & Stegun (1964) 26.4.19
 */
export function chiSquareUpperTail(x: number, df: number): number {
  return incompleteGamma(df / 2, x / 2)[1];
}

/**
 * Quantile of the chi-square distribution.
 *
 * @param p  in (0, 1); df above 0
 * @throws RangeError for a p outside
 */
export function chiSquareQuantile(p: number, df: number): number {
  return positiveQuantile(p, (x) => incompleteGamma(df / 2, x / 2), df);
}

/** Beta distribution function P(X ≤ x), x in [0, 1]. */
export function betaCdf(x: number, a: number, b: number): number {
  return incompleteBeta(a, b, x, 1 - x)[0];
}

/**
 * Quantile of the beta distribution.
 *
 * @param p  in (0, 1); a and b above 0
 * @throws RangeError for a p outside
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireProbability(p);
  return findRoot((x) => betaCdf(x, a, b) - p, 0, 1);
}

/**
 * Tails of the binomial distribution.
 *
 * @param k  count
 * @param n  trials
 * @param q  chance of one trial in [0, 1]
 * @returns  [P(X ≤ k), P(X > k)]
 * @source Abramowitz & Stegun (1964) 26.5.24
 */
export function binomialTails(k: number, n: number, q: number): readonly [number, number] {
  if (k < 0) return [0, 1];
  if (k >= n) return [1, 0];
  const [above, upTo] = incompleteBeta(k + 1, n - k, q, 1 - q);
  return [upTo, above];
}

/** Smallest k with P(X ≤ k) ≥ p. */
export function binomialQuantile(p: number, n: number, q: number): number {
  let k = 0;
  while (k < n && binomialTails(k, n, q)[0] < p) k++;
  return k;
}
