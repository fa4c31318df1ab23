import type { Estimate } from '../terms/estimate.ts';

/** How the packet's claim stands to what was seen. */
export type ClaimVerdict = 'inside' | 'seen-lower' | 'seen-higher' | 'cannot-tell';

/** A claim is borne out where the whole interval lies within it, or less than a tenth beyond it. Common practice, no source. */
const MARGIN = 0.1;

/**
 * Sets a claim against an interval: outside where the whole interval is, borne out where the whole interval lies about
 * the claim, and not told by an interval that reaches farther.
 *
 * @param claim  lower and upper claim, in the unit of the estimate; both the same where the packet says one figure
 * @source Schuirmann (1987) J. Pharmacokinet. Biopharm. 15:657, for likeness shown by an interval within a margin
 */
export function judgeClaim(
  claim: readonly [number, number],
  { estimate, low, high }: Pick<Estimate, 'estimate' | 'low' | 'high'>,
): ClaimVerdict {
  if (estimate === null) return 'cannot-tell';
  if (low !== null && low > claim[1]) return 'seen-higher';
  if (high !== null && high < claim[0]) return 'seen-lower';
  if (low === null || high === null) return 'cannot-tell';
  const isNear = low >= claim[0] * (1 - MARGIN) && high <= claim[1] * (1 + MARGIN);
  return isNear ? 'inside' : 'cannot-tell';
}
