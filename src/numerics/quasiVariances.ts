import { choleskyFactor, solveLower, solveUpper } from './cholesky.ts';
import { cell, nth } from './element.ts';

/** Variances that stand for a covariance: the variance of a difference of two is about the sum of theirs. */
export interface QuasiVariances {
  readonly variances: readonly number[];
  /** Smallest and largest relative error of a standard error of a difference. */
  readonly worst: readonly [number, number];
}

const STEPS = 300;
const DONE = 1e-14;

/**
 * Quasi-variances: least squares of log(q_i + q_j) on the logarithm of the variance of i - j, over all pairs.
 *
 * @param covariance  of two estimates or more
 * @source Firth & de Menezes (2004) Biometrika 91:65; reference case o5
 */
export function quasiVariances(covariance: readonly (readonly number[])[]): QuasiVariances {
  const k = covariance.length;
  const at = (i: number, j: number): number => nth(nth(covariance, i), j);
  const pairs: (readonly [i: number, j: number, variance: number])[] = [];
  for (let j = 0; j < k; j++) for (let i = 0; i < j; i++) pairs.push([i, j, at(i, i) + at(j, j) - 2 * at(i, j)]);
  const worstOf = (q: Float64Array): readonly [number, number] => {
    const errors = pairs.map(([i, j, variance]) => Math.sqrt((cell(q, i) + cell(q, j)) / variance) - 1);
    return errors.length === 0 ? [0, 0] : [Math.min(...errors), Math.max(...errors)];
  };
  const mean = pairs.reduce((sum, [, , variance]) => sum + variance, 0) / Math.max(1, pairs.length);
  let q = new Float64Array(k).fill(mean / 2);
  // Two have one difference: each is half of it.
  if (k < 3) return { variances: [...q], worst: worstOf(q) };
  for (let step = 0; step < STEPS; step++) {
    const cross = new Float64Array(k * k);
    const right = new Float64Array(k);
    for (const [i, j, variance] of pairs) {
      const sum = cell(q, i) + cell(q, j);
      const residual = Math.log(variance / sum) / sum;
      for (const a of [i, j]) {
        right[a]! += residual;
        for (const b of [i, j]) cross[a * k + b]! += 1 / sum ** 2;
      }
    }
    const factor = choleskyFactor(cross, k);
    if (!factor) break;
    const change = solveUpper(factor, k, solveLower(factor, k, right));
    let part = 1;
    const moved = (): Float64Array => q.map((own, i) => own + part * cell(change, i));
    while (pairs.some(([i, j]) => cell(moved(), i) + cell(moved(), j) <= 0)) part /= 2;
    q = Float64Array.from(moved());
    if (Math.max(...change.map(Math.abs)) < DONE) break;
  }
  return { variances: [...q], worst: worstOf(q) };
}
