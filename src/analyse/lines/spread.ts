import { fQuantile, fUpperTail } from '../../numerics/distributions.ts';

/** Sum of squares about the mean, or means, with its degrees of freedom. */
export interface Squares {
  readonly ss: number;
  readonly df: number;
}

/** Squares about the mean of one group. */
export function squaresOf(values: readonly number[]): Squares {
  const mean = values.reduce((sum, own) => sum + own, 0) / values.length;
  return { ss: values.reduce((sum, own) => sum + (own - mean) ** 2, 0), df: values.length - 1 };
}

export const added = (squares: readonly Squares[]): Squares => ({
  ss: squares.reduce((sum, own) => sum + own.ss, 0),
  df: squares.reduce((sum, own) => sum + own.df, 0),
});

/** How many times the variance of fixed varieties a line's plants have. */
export interface SpreadRatio {
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  /** One-sided: a line that does not vary would show so much. */
  readonly p: number;
}

/**
 * Variance of a line's plants beside that of fixed varieties.
 *
 * @param level  of the interval, 0 to 1
 * @returns      null where one of them has none
 * @source F distribution; Emerson & East (1913), reference case o33
 */
export function spreadRatio(line: Squares, fixed: Squares, level: number): SpreadRatio | null {
  if (line.df < 1 || fixed.df < 1 || fixed.ss <= 0) return null;
  const ratio = line.ss / line.df / (fixed.ss / fixed.df);
  const tail = (1 - level) / 2;
  return {
    ratio,
    low: ratio / fQuantile(1 - tail, line.df, fixed.df),
    high: ratio / fQuantile(tail, line.df, fixed.df),
    p: fUpperTail(ratio, line.df, fixed.df),
  };
}
