import { cell, nth } from '../numerics/element.ts';

/** What the simulated seasons say with the club's own weights, beside who earned a spot. */
export interface SimulatedSums {
  /** Mean points, goals × varieties. */
  readonly points: readonly Float64Array[];
  /** Mean points of the bar, one a goal. */
  readonly barPoints: Float64Array;
  /** Covariance of the points with the score over all competitors and draws, one a goal. */
  readonly scoreCovariance: Float64Array;
  /** Share of draws that fall outside a goal's range. */
  readonly cutOff: Float64Array;
  /** Slope of the points on the working scale, goals × varieties. */
  readonly slope: readonly Float64Array[];
  /** Mean of the score above the newcomer's. */
  readonly gain: Float64Array;
  /** Variance of the score above what earns a spot. */
  readonly marginVariance: Float64Array;
}

/** Running sums over the draws of the first weighting; tables are goals × varieties. */
export interface Sums {
  readonly x: readonly Float64Array[];
  readonly xx: readonly Float64Array[];
  readonly p: readonly Float64Array[];
  readonly px: readonly Float64Array[];
  readonly ps: Float64Array;
  readonly s: Float64Array;
  readonly bar: Float64Array;
  readonly outside: Float64Array;
  readonly gain: Float64Array;
  readonly margin: Float64Array;
  readonly marginSquared: Float64Array;
}

/** Empty sums for so many goals and varieties. */
export function openSums(goals: number, n: number): Sums {
  const table = (): readonly Float64Array[] => Array.from({ length: goals }, () => new Float64Array(n));
  return {
    x: table(),
    xx: table(),
    p: table(),
    px: table(),
    ps: new Float64Array(goals),
    s: new Float64Array(n),
    bar: new Float64Array(goals),
    outside: new Float64Array(goals),
    gain: new Float64Array(n),
    margin: new Float64Array(n),
    marginSquared: new Float64Array(n),
  };
}

/**
 * What the sums say after so many draws: means, slopes of the score on each trait, variance of the margin.
 *
 * @param competing  positions of the varieties that compete
 * @source methods page C (regression of the score on the traits over the draws)
 */
export function summary(sums: Sums, competing: readonly number[], draws: number): SimulatedSums {
  const n = competing.length;
  const mean = (sum: Float64Array): Float64Array => sum.map((own) => own / draws);
  const points = sums.p.map(mean);
  const slopeOf = (g: number, i: number): number => {
    const [x, p] = [cell(nth(sums.x, g), i), cell(nth(sums.p, g), i)];
    const variance = cell(nth(sums.xx, g), i) - (x * x) / draws;
    return variance > 0 ? (cell(nth(sums.px, g), i) - (x * p) / draws) / variance : 0;
  };
  return {
    points,
    barPoints: mean(sums.bar),
    scoreCovariance: sums.ps.map((sum, g) => {
      const average = (own: ArrayLike<number>): number => competing.reduce((total, i) => total + nth(own, i), 0) / n;
      return sum / (draws * n) - average(nth(points, g)) * average(mean(sums.s));
    }),
    cutOff: sums.outside.map((count) => count / (draws * n)),
    slope: sums.px.map((row, g) => row.map((_, i) => slopeOf(g, i))),
    gain: mean(sums.gain),
    marginVariance: sums.marginSquared.map((sum, i) => sum / draws - (cell(sums.margin, i) / draws) ** 2),
  };
}
