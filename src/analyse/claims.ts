import type { Estimate } from '../terms/estimate.ts';

/** How the packet's claim stands to what was seen. */
export type ClaimVerdict = 'inside' | 'seen-lower' | 'seen-higher' | 'cannot-tell';

/** A claim is borne out where the whole interval lies within it, or at most a tenth beyond it. Common practice, no source. */
const MARGIN = 0.1;

/**
 * Sets a claim against an interval: borne out where the whole interval lies about the claim, else outside where the
 * whole interval is, else not told.
 *
 * @param claim  lower and upper claim, in the unit of the estimate; both the same where the packet says one figure
 * @source Schuirmann (1987) J. Pharmacokinet. Biopharm. 15:657, for likeness shown by an interval within a margin
 */
export function judgeClaim(
  claim: readonly [number, number],
  { estimate, low, high }: Pick<Estimate, 'estimate' | 'low' | 'high'>,
): ClaimVerdict {
  if (estimate === null) return 'cannot-tell';
  const isNear = low !== null && high !== null && low >= claim[0] * (1 - MARGIN) && high <= claim[1] * (1 + MARGIN);
  if (isNear) return 'inside';
  if (low !== null && low > claim[1]) return 'seen-higher';
  return high !== null && high < claim[0] ? 'seen-lower' : 'cannot-tell';
}
