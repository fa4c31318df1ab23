import { nth } from '../../numerics/element.ts';
import { randomStream } from '../../numerics/random.ts';
import type { Squares } from './spread.ts';

/** A season in which plants of a cross stood beside fixed varieties. */
export interface SpreadSeason {
  readonly line: Squares;
  readonly fixed: Squares;
  /** Inherited variance in the line's families as a part of the F2's: 1 of an F2, a half of an F3. */
  readonly part: number;
}

/** Whether little of a trait is thought to be passed on (yield, fruits, days, ratings) or nothing is known (measures). */
export type InheritedPrior = 'low' | 'open';

/** Points of the share at which it is looked at. */
const POINTS = 2000;
const shares = Float64Array.from({ length: POINTS }, (_, i) => (i + 0.5) / POINTS);

/** Share of one plant's deviation that is inherited, in a generation with a part of the F2's inherited variance. */
const inGeneration = (share: number, part: number): number => (part * share) / (part * share + 1 - share);

/**
 * Weights of the F2's inherited share at 2,000 points from 0 to 1, adding up to 1.
 *
 * @source prior Beta(1, 2) or uniform: Ben Chaim & Paran (2000), fruit size and shape inherit better; reference case o33
 */
export function shareWeights(seasons: readonly SpreadSeason[], prior: InheritedPrior): Float64Array {
  const logs = shares.map((share) => {
    let log = prior === 'low' ? Math.log(1 - share) : 0;
    for (const { line, fixed, part } of seasons) {
      const own = inGeneration(share, part);
      log += (line.df / 2) * Math.log1p(-own) - ((line.df + fixed.df) / 2) * Math.log((1 - own) * line.ss + fixed.ss);
    }
    return log;
  });
  const top = logs.reduce((most, own) => Math.max(most, own), -Infinity);
  const weights = logs.map((own) => Math.exp(own - top));
  const total = weights.reduce((sum, own) => sum + own, 0);
  return weights.map((own) => own / total);
}

/** Mean and interval of the inherited share in a generation. */
export function shareSummary(
  weights: Float64Array,
  part: number,
  level: number,
): { readonly mean: number; readonly median: number; readonly low: number; readonly high: number } {
  let mean = 0;
  weights.forEach((own, i) => (mean += own * inGeneration(nth(shares, i), part)));
  const at = (p: number): number => {
    let below = 0;
    for (let i = 0; i < POINTS; i++) {
      const own = nth(weights, i);
      if (below + own >= p) return inGeneration((i + (p - below) / own) / POINTS, part);
      below += own;
    }
    return 1;
  };
  return { mean, median: at(0.5), low: at((1 - level) / 2), high: at(1 - (1 - level) / 2) };
}

/** What is drawn of the plants of one family, or generation: their inherited deviations from its mean. */
export interface InheritedDraws {
  /** A row a draw, a figure a plant, working scale. */
  readonly deviations: readonly Float64Array[];
  /** Inherited variance in each draw, working scale squared. */
  readonly inherited: Float64Array;
  /** What is not inherited in each draw. */
  readonly rest: Float64Array;
}

/**
 * Draws the inherited deviations of plants.
 *
 * @param values   what was seen of each plant, working scale, season's places taken out; at least 2
 * @param fixed    squares of the fixed varieties beside them
 * @param weights  of the F2's share, from `shareWeights`
 * @param part     inherited variance as a part of the F2's
 * @param name     decides the draws, with their number
 * @source methods page L6; reference case o39
 */
export function inheritedDraws(
  values: readonly number[],
  fixed: Squares,
  { weights, part }: { readonly weights: Float64Array; readonly part: number },
  name: string,
  draws = 4000,
): InheritedDraws {
  const { uniform, normal } = randomStream(name);
  const mean = values.reduce((sum, own) => sum + own, 0) / values.length;
  const deviations = values.map((own) => own - mean);
  const ss = deviations.reduce((sum, own) => sum + own ** 2, 0);
  const df = values.length - 1 + fixed.df;
  const rows: Float64Array[] = [];
  const inherited = new Float64Array(draws);
  const rest = new Float64Array(draws);
  const cumulated = Float64Array.from(weights);
  for (let i = 1; i < POINTS; i++) cumulated[i] = nth(cumulated, i) + nth(cumulated, i - 1);
  for (let d = 0; d < draws; d++) {
    const u = uniform();
    let [from, to] = [0, POINTS - 1];
    while (from < to) {
      const middle = (from + to) >> 1;
      if (nth(cumulated, middle) < u) from = middle + 1;
      else to = middle;
    }
    const share = inGeneration((from + uniform()) / POINTS, part);
    let chi = 0;
    for (let i = 0; i < df; i++) chi += normal() ** 2;
    const variance = ((1 - share) * ss + fixed.ss) / chi;
    inherited[d] = share * variance;
    rest[d] = (1 - share) * variance;
    const sd = Math.sqrt(share * variance);
    rows.push(Float64Array.from(deviations, (own) => share * own + sd * normal()));
  }
  return { deviations: rows, inherited, rest };
}

/**
 * How often each plant is truly the best, and among the best so many, by draws of a score.
 *
 * @param scores  a row a draw, a figure a plant; the higher the better
 */
export function trulyBest(
  scores: readonly Float64Array[],
  among: number,
): { readonly best: readonly number[]; readonly amongBest: readonly number[] } {
  const plants = nth(scores, 0).length;
  const [best, amongBest] = [new Float64Array(plants), new Float64Array(plants)];
  for (const row of scores) {
    const order = [...row.keys()].toSorted((a, b) => nth(row, b) - nth(row, a));
    order.slice(0, among).forEach((plant, rank) => {
      if (rank === 0) best[plant] = nth(best, plant) + 1;
      amongBest[plant] = nth(amongBest, plant) + 1;
    });
  }
  const share = (count: number): number => count / scores.length;
  return { best: [...best].map(share), amongBest: [...amongBest].map(share) };
}
