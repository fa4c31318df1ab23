import { averageVariance } from '../../numerics/blockVariance.ts';
import { cell, nth } from '../../numerics/element.ts';
import type { RandomStream } from '../../numerics/random.ts';

/** What bounds the plants of varieties in blocks. */
export interface BlocksAsked {
  /** Plants of each variety. */
  readonly plants: readonly number[];
  readonly sizes: readonly number[];
  /** Fixed plants, varieties × blocks. */
  readonly fixed: readonly Float64Array[];
  /** Which varieties are tall, and how many places each block has for them; null where height does not matter. */
  readonly tall: { readonly varieties: readonly boolean[]; readonly places: readonly number[] } | null;
}

const SWAPS = 1500;
const STARTS = 3;
/** Above so many places one start is enough. */
const ONE_START_FROM = 200;

/** A whole number in [0, n). */
export const below = (stream: RandomStream, n: number): number => Math.min(n - 1, Math.floor(stream.uniform() * n));

/** Least and most plants of a variety in each block: its even part rounded down and up. */
function bounds({ plants, sizes }: BlocksAsked) {
  const total = sizes.reduce((sum, k) => sum + k, 0);
  const isAlike = Math.max(...sizes) - Math.min(...sizes) <= 1;
  const even = (n: number, k: number): number => (isAlike ? n / sizes.length : (n * k) / total);
  return plants.map((n) => sizes.map((k) => [Math.floor(even(n, k) + 1e-9), Math.ceil(even(n, k) - 1e-9)] as const));
}

type Bounds = ReturnType<typeof bounds>;

/** One plant of a variety into the block that has most room; its even part is kept where it can be. */
function place(asked: BlocksAsked, counts: Float64Array[], v: number, most: readonly number[], stream: RandomStream) {
  const room = asked.sizes.map((k, b) => k - counts.reduce((sum, row) => sum + cell(row, b), 0));
  const { tall } = asked;
  const isTall = tall !== null && nth(tall.varieties, v);
  const roomForTall = (b: number): number =>
    tall === null
      ? Infinity
      : nth(tall.places, b) - counts.reduce((sum, row, i) => sum + (nth(tall.varieties, i) ? cell(row, b) : 0), 0);
  const able = asked.sizes.map((_, b) => b).filter((b) => nth(room, b) > 0 && (!isTall || roomForTall(b) > 0));
  const inBounds = able.filter((b) => cell(nth(counts, v), b) < nth(most, b));
  const open =
    inBounds.length > 0
      ? inBounds
      : able.length > 0
        ? able
        : asked.sizes.map((_, b) => b).filter((b) => nth(room, b) > 0);
  const roomiest = Math.max(...open.map((b) => nth(room, b)));
  const best = open.filter((b) => nth(room, b) === roomiest);
  nth(counts, v)[nth(best, below(stream, best.length))]!++;
}

/** A first layout: fixed plants, then every variety's even part, then what is left, the varieties with most of it first. */
function start(asked: BlocksAsked, limits: Bounds, stream: RandomStream): Float64Array[] {
  const counts = asked.fixed.map((row) => row.slice());
  const order = asked.plants.map((_, v) => ({ v, u: stream.uniform() })).toSorted((a, b) => a.u - b.u);
  const isTall = (v: number): number => (asked.tall?.varieties[v] ? 1 : 0);
  const byHeight = order.toSorted((a, b) => isTall(b.v) - isTall(a.v));
  const left = (v: number): number => nth(asked.plants, v) - nth(counts, v).reduce((sum, n) => sum + n, 0);
  for (const { v } of byHeight)
    for (let b = 0; b < asked.sizes.length; b++) {
      const [least] = nth(nth(limits, v), b);
      const used = counts.reduce((sum, row) => sum + cell(row, b), 0);
      const more = Math.min(least - cell(nth(counts, v), b), nth(asked.sizes, b) - used, left(v));
      if (more > 0) nth(counts, v)[b]! += more;
    }
  for (const { v } of byHeight.toSorted((a, b) => isTall(b.v) - isTall(a.v) || left(b.v) - left(a.v)))
    while (left(v) > 0)
      place(
        asked,
        counts,
        v,
        nth(limits, v).map(([, most]) => most),
        stream,
      );
  return counts;
}

/** A plant of a variety that goes from one block to another. */
interface Move {
  readonly v: number;
  readonly from: number;
  readonly to: number;
}

/** True where a variety may give a plant of one block for one of another. */
function mayMove(asked: BlocksAsked, limits: Bounds, counts: readonly Float64Array[], { v, from, to }: Move): boolean {
  const own = nth(counts, v);
  if (asked.tall && nth(asked.tall.varieties, v)) return false;
  const least = Math.max(nth(nth(limits, v), from)[0], cell(nth(asked.fixed, v), from));
  return cell(own, from) - 1 >= least && cell(own, to) + 1 <= nth(nth(limits, v), to)[1];
}

/**
 * Plants of each variety in each block, so that differences of varieties are told with the least variance on average:
 * a start at random, then swaps that lower it.
 *
 * @returns  varieties × blocks, with its average variance
 */
export function varietiesToBlocks(asked: BlocksAsked, stream: RandomStream): readonly Float64Array[] {
  const limits = bounds(asked);
  const [n, blocks] = [asked.plants.length, asked.sizes.length];
  const total = asked.sizes.reduce((sum, k) => sum + k, 0);
  let best: { readonly counts: Float64Array[]; readonly variance: number } | null = null;
  for (let s = 0; s < (total > ONE_START_FROM ? 1 : STARTS); s++) {
    const counts = start(asked, limits, stream);
    let variance = averageVariance(counts);
    for (let swap = 0; swap < (n > 1 && blocks > 1 ? SWAPS : 0); swap++) {
      const [v, w, a, b] = [below(stream, n), below(stream, n), below(stream, blocks), below(stream, blocks)];
      const isSwap =
        v !== w &&
        a !== b &&
        mayMove(asked, limits, counts, { v, from: a, to: b }) &&
        mayMove(asked, limits, counts, { v: w, from: b, to: a });
      if (!isSwap) continue;
      const move = (by: number): void => {
        nth(counts, v)[a]! -= by;
        nth(counts, v)[b]! += by;
        nth(counts, w)[b]! -= by;
        nth(counts, w)[a]! += by;
      };
      move(1);
      const now = averageVariance(counts);
      if (now < variance - 1e-12) variance = now;
      else move(-1);
    }
    if (!best || variance < best.variance - 1e-12) best = { counts, variance };
  }
  return best?.counts ?? [];
}
