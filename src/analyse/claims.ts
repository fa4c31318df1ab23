import type { Estimate } from '../terms/estimate.ts';

/** How the packet's claim stands to what was seen. */
export type ClaimVerdict = 'inside' | 'seen-lower' | 'seen-higher' | 'cannot-tell';

/**
 * Sets a claim against an interval: outside only where the whole interval is.
 *
 * @param claim  lower and upper claim, in the unit of the estimate
 */
export function judgeClaim(
  claim: readonly [number, number],
  { estimate, low, high }: Pick<Estimate, 'estimate' | 'low' | 'high'>,
): ClaimVerdict {
  if (estimate === null) return 'cannot-tell';
  if (low !== null && low > claim[1]) return 'seen-higher';
  if (high !== null && high < claim[0]) return 'seen-lower';
  if (low === null || high === null) return 'cannot-tell';
  return estimate >= claim[0] && estimate <= claim[1] ? 'inside' : 'cannot-tell';
}
