import { quickselect } from 'simple-statistics';
import { cell, nth } from '../numerics/element.ts';

/** Who earns a spot in one simulated season, added to the counts. */
export interface SpotCount {
  /** Seasons in which a variety earned a spot; shared where several tie at the last one. */
  readonly earned: Float64Array;
  /** Seasons in which its score reached the bar. */
  readonly above: Float64Array;
}

/** Up to so many comparisons, keeping the best in order is faster than parting the list. */
const FEW = 200;

/** Room for the best of a list. */
const best = new Float64Array(FEW);

/** Score at the last spot, of a short list. */
function bySinking(scores: readonly number[], spots: number): number {
  best.fill(-Infinity, 0, spots);
  for (let i = 0; i < scores.length; i++) {
    const own = scores[i]!;
    if (own <= best[spots - 1]!) continue;
    let at = spots - 1;
    for (; at > 0 && best[at - 1]! < own; at--) best[at] = best[at - 1]!;
    best[at] = own;
  }
  return cell(best, spots - 1);
}

/** Score at the last spot; the list is reordered. */
function byParting(scores: number[], spots: number): number {
  quickselect(scores, scores.length - spots);
  return nth(scores, scores.length - spots);
}

/**
 * Lowest score that still earns a spot, and how the last spots are shared.
 *
 * @param scores  of the competitors, -Infinity for one that missed a limit; may be reordered
 * @param spots   how many spots there are, ≥ 1
 * @returns       the score at the last spot, and the part of a spot that each of those tied there has
 */
export function lastSpot(scores: number[], spots: number): { readonly score: number; readonly part: number } {
  const n = scores.length;
  if (n <= spots) return { score: -Infinity, part: 1 };
  const score = n * spots <= FEW ? bySinking(scores, spots) : byParting(scores, spots);
  let [better, tied] = [0, 0];
  for (const own of scores) {
    if (own > score) better++;
    else if (own === score) tied++;
  }
  return { score, part: (spots - better) / tied };
}
