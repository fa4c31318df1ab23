/** Distribution that a fit takes its variance from. */
export type Family = 'gamma' | 'poisson' | 'gaussian';

/** A two-way layout without interaction: response ~ group + block. */
export interface AdditiveData {
  readonly family: Family;
  /** Responses; counts and weights ≥ 0 for the two families with a logarithmic link. */
  readonly y: readonly number[];
  /** Group of each response, 0-based, every group present. */
  readonly group: readonly number[];
  /** Block of each response, 0-based, every block present; null: no blocks. */
  readonly block: readonly number[] | null;
  /** Weights of the estimating equations, > 0. */
  readonly weight: readonly number[];
  /** Variance of each response relative to φ V(μ): 1 / weight in the textbook case. */
  readonly relativeVariance: readonly number[];
}
