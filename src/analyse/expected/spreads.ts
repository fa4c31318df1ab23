/** What a season says of a trait's spread: a variance of one unit, and how well it is known. */
export interface SeasonSpread {
  /** Variance of one unit on the working scale (for fruits: of one fruit counted). */
  readonly variance: number | null;
  readonly df: number;
}

/**
 * Variance of one unit over the seasons that have one, each counting with its residual df; null where none has.
 *
 * @source methods page B; pooled mean square as in Gomez & Gomez (1984) ch. 8
 */
export function pooledVariance(seasons: readonly SeasonSpread[]): number | null {
  let [sum, df] = [0, 0];
  for (const own of seasons) {
    if (own.variance === null || own.df <= MOST_BORROWING_DF) continue;
    sum += own.df * own.variance;
    df += own.df;
  }
  return df > 0 ? sum / df : null;
}

/** With so few residual df a season's own standard error is not used. */
const MOST_BORROWING_DF = 2;

/**
 * A season's own squared standard error, widened for being estimated: the variance of t on df.
 *
 * @returns null where the season has too few df for one
 */
export function ownVariance(variance: number | null, df: number): number | null {
  return variance === null || df <= MOST_BORROWING_DF ? null : (variance * df) / (df - 2);
}
