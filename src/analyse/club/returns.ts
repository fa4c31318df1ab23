import { wilsonInterval } from '../../numerics/wilson.ts';

/** What came back of a variety that members were sent. */
export interface Returns {
  readonly sent: number;
  readonly received: number;
  /** Of those who said whether they would grow it again; null where nobody did. */
  readonly again: { readonly k: number; readonly n: number; readonly low: number; readonly high: number } | null;
  /** The share if every silent member had said no, or yes; null where enough came back, or nobody answered. */
  readonly outer: readonly [low: number, high: number] | null;
}

/** From this share of returns on what the silent might say is left aside. @source gardens page 2.3 */
const ENOUGH = 0.8;

/**
 * Share of members who would grow a variety again, with what the silent could change.
 *
 * @param sent      members who were sent it, at least as many as answered
 * @param received  members of whom a record of it came back
 * @param k         those who said yes
 * @param n         those who said yes or no
 * @source Wilson (1927) JASA 22:209; Manski (1989) J. Hum. Resour. 24:343; reference case o7
 */
export function returnsOf(sent: number, received: number, k: number, n: number, level: number): Returns {
  if (n === 0) return { sent, received, again: null, outer: null };
  const [low, high] = wilsonInterval(k, n, level);
  const all = Math.max(sent, n);
  const isEnough = n >= ENOUGH * all;
  return {
    sent,
    received,
    again: { k, n, low, high },
    outer: isEnough ? null : [k / all, (k + all - n) / all],
  };
}
