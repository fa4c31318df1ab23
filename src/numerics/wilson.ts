import { normalQuantile } from './normal.ts';

/**
 * Wilson score interval for a share.
 *
 * @param k      successes, whole number, 0 ≤ k ≤ n
 * @param n      trials, whole number ≥ 1
 * @param level  interval level in (0, 1)
 * @returns      [low, high], both in [0, 1]
 * @throws RangeError if k or n is not a whole number in range
 * @source Wilson (1927), J. Am. Stat. Assoc. 22:209-212
 */
export function wilsonInterval(k: number, n: number, level: number): readonly [number, number] {
  if (!Number.isInteger(k) || !Number.isInteger(n) || n < 1 || k < 0 || k > n) {
    throw new RangeError(`${k} of ${n} is not a share`);
  }
  const z = normalQuantile(0.5 + level / 2);
  const centre = (k + (z * z) / 2) / (n + z * z);
  const half = (z / (n + z * z)) * Math.sqrt((k * (n - k)) / n + (z * z) / 4);
  return [k === 0 ? 0 : Math.max(0, centre - half), k === n ? 1 : Math.min(1, centre + half)];
}
