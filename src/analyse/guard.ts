import type { Estimate } from '../terms/estimate.ts';

/** So many times what was picked at the most an estimate may be; a limit of its interval so many. */
const FAR_ESTIMATE = 10;
const FAR_LIMIT = 100;

/** True for a figure that what was seen allows: finite, and not beyond so many times of it. */
function isNear(value: number, seen: readonly number[], times: number, isLog: boolean): boolean {
  if (!Number.isFinite(value)) return false;
  const [least, most] = [Math.min(...seen), Math.max(...seen)];
  if (!isLog) {
    // One planting, or equal ones, span nothing: their size is what is left to go by.
    const span = Math.max(most - least, Math.abs(most), Math.abs(least)) || Infinity;
    return value >= least - times * span && value <= most + times * span;
  }
  const positive = seen.filter((own) => own > 0);
  return value <= times * most && value >= Math.min(...positive) / times;
}

/**
 * True for a limit of an interval that says nothing beside values of this size.
 *
 * @param seen   values that the interval is made from, natural scale
 * @param isLog  for limits on the logarithmic scale
 */
export function isFarLimit(limit: number, seen: readonly number[], isLog: boolean): boolean {
  return !isNear(limit, seen, FAR_LIMIT, isLog);
}

/** True for an estimate that no data of these values can have. */
export function isBeyond(estimate: number, seen: readonly number[], isLog: boolean): boolean {
  return !isNear(estimate, seen, FAR_ESTIMATE, isLog);
}

/**
 * An estimate as it may be published: never a figure that is not finite or beyond what anyone picked.
 *
 * @param seen   values of the plantings of its class, per plant
 * @param isLog  true where differences are ratios
 * @returns      without an interval where a limit of it says nothing; without anything where the estimate does
 */
export function guarded(
  {
    n,
    estimate,
    low,
    high,
  }: { readonly n: number; readonly estimate: number; readonly low: number; readonly high: number },
  seen: readonly number[],
  isLog: boolean,
): Estimate {
  if (isBeyond(estimate, seen, isLog)) return { n, estimate: null, low: null, high: null, reason: 'not-estimable' };
  const isWide = [low, high].some((limit) => isFarLimit(limit, seen, isLog));
  return isWide ? { n, estimate, low: null, high: null, reason: 'too-wide' } : { n, estimate, low, high, reason: null };
}
