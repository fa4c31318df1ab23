import { quickselect } from 'simple-statistics';
import { cell } from '../numerics/element.ts';

/** Who earns a spot in one simulated season, added to the counts. */
export interface SpotCount {
  /** Seasons in which a variety earned a spot; shared where several tie at the last one. */
  readonly earned: Float64Array;
  /** Seasons in which its score reached the bar. */
  readonly above: Float64Array;
}

/** Up to so many comparisons, keeping the lowest in order is faster than parting the list. */
const FEW = 400;

/** Room for scores that reach the bar, and for the lowest of them in order. */
let reached = new Float64Array(64);
const lowest = new Float64Array(FEW);

/** The k-th lowest of the first n that reached the bar, k ≥ 1. */
function bySinking(n: number, k: number): number {
  lowest.fill(Infinity, 0, k);
  for (let i = 0; i < n; i++) {
    const own = cell(reached, i);
    if (own >= lowest[k - 1]!) continue;
    let at = k - 1;
    for (; at > 0 && lowest[at - 1]! > own; at--) lowest[at] = lowest[at - 1]!;
    lowest[at] = own;
  }
  return cell(lowest, k - 1);
}

/**
 * The score that earns a spot: the bar's, or that of the last spot where more reach the bar than have room.
 *
 * @param scores  of the competitors, -Infinity for one that missed a limit
 * @param spots   how many spots there are, ≥ 1
 */
export function neededScore(scores: Float64Array, bar: number, spots: number): number {
  if (reached.length < scores.length) reached = new Float64Array(2 * scores.length);
  let n = 0;
  for (let i = 0; i < scores.length; i++) {
    const own = scores[i]!;
    if (own >= bar) reached[n++] = own;
  }
  if (n < spots) return bar;
  const k = n - spots + 1;
  if (n * k <= FEW) return bySinking(n, k);
  quickselect(reached as unknown as number[], k - 1, 0, n - 1);
  return cell(reached, k - 1);
}

/**
 * How the last spots are shared: the part of a spot that each of those has whose score is just what is needed.
 *
 * @returns  1 where there is room for all of them
 */
export function partOfLast(scores: Float64Array, spots: number, needed: number): number {
  let [better, tied] = [0, 0];
  for (let i = 0; i < scores.length; i++) {
    const own = scores[i]!;
    if (own > needed) better++;
    else if (own === needed) tied++;
  }
  return Math.min(1, (spots - better) / tied);
}
