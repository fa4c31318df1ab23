import { quickselect } from 'simple-statistics';
import { nth } from '../numerics/element.ts';

/** Who earns a spot in one simulated season, added to the counts. */
export interface SpotCount {
  /** Seasons in which a variety earned a spot; shared where several tie at the last one. */
  readonly earned: Float64Array;
  /** Seasons in which its score reached the bar. */
  readonly above: Float64Array;
}

/**
 * Lowest score that still earns a spot, and how the last spots are shared.
 *
 * @param scores  of the competitors, -Infinity for one that missed a limit; reordered
 * @param spots   how many spots there are, ≥ 1
 * @returns       the score at the last spot, and the part of a spot that each of those tied there has
 */
export function lastSpot(scores: number[], spots: number): { readonly score: number; readonly part: number } {
  const n = scores.length;
  if (n <= spots) return { score: -Infinity, part: 1 };
  quickselect(scores, n - spots);
  const score = nth(scores, n - spots);
  let [better, tied] = [0, 0];
  for (const own of scores) {
    if (own > score) better++;
    else if (own === score) tied++;
  }
  return { score, part: (spots - better) / tied };
}
