import { backSubstitute, orthogonalise } from './orthogonal.ts';
import { cell, nth } from './element.ts';

/**
 * Wald F statistic for the equality of all estimates.
 *
 * @param estimates   k estimates
 * @param covariance  their k × k covariance, dispersion included
 * @returns           F with k - 1 numerator degrees of freedom; null if k < 2 or the covariance is singular
 * @source Searle (1971), Linear Models, §3.6
 */
export function equalityF(
  estimates: readonly number[],
  covariance: readonly (readonly number[])[],
): { readonly f: number; readonly df1: number } | null {
  const df1 = estimates.length - 1;
  if (df1 < 1) return null;
  const difference = Float64Array.from({ length: df1 }, (_, i) => nth(estimates, i + 1) - nth(estimates, 0));
  const columns = Array.from({ length: df1 }, (_, j) =>
    Float64Array.from(
      { length: df1 },
      (_, i) =>
        nth(nth(covariance, i + 1), j + 1) -
        nth(nth(covariance, i + 1), 0) -
        nth(nth(covariance, 0), j + 1) +
        nth(nth(covariance, 0), 0),
    ),
  );
  try {
    const { q, r } = orthogonalise(columns);
    const right = Float64Array.from(q, (column) => column.reduce((sum, x, i) => sum + x * cell(difference, i), 0));
    const solved = backSubstitute(r, right);
    const f = solved.reduce((sum, x, i) => sum + x * cell(difference, i), 0) / df1;
    return Number.isFinite(f) ? { f, df1 } : null;
  } catch (fault) {
    if (fault instanceof RangeError) return null;
    throw fault;
  }
}
