import { choleskyFactor, solveLower } from './cholesky.ts';
import { cell, nth } from './element.ts';

/** How well a layout in blocks compares varieties; variance of one plant 1. */
export interface BlockVariance {
  /** Mean variance of a difference of two varieties, blocks taken out. */
  readonly average: number;
  /** The same without blocks, at the same plants. */
  readonly without: number;
  readonly least: number;
  readonly most: number;
}

/** Counts of a layout as its equations take them: D = K - N'R⁻¹N without the last block, factored. */
function reduced(counts: readonly Float64Array[]) {
  const blocks = nth(counts, 0).length;
  const size = blocks - 1;
  const plants = counts.map((row) => row.reduce((sum, n) => sum + n, 0));
  const d = new Float64Array(size * size);
  counts.forEach((row, v) => {
    for (let i = 0; i < size; i++) {
      const own = cell(row, i);
      if (own === 0) continue;
      d[i * size + i]! += own;
      for (let j = 0; j <= i; j++) d[i * size + j]! -= (own * cell(row, j)) / nth(plants, v);
    }
  });
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) d[j * size + i] = d[i * size + j]!;
  return { size, plants, factor: size === 0 ? null : choleskyFactor(d, size) };
}

/** A part of a layout's least pivot below which two of its parts share no variety. */
const CONNECTED = 1e-9;

/**
 * Mean variance of a difference of two varieties, from traces alone: for a search that asks often.
 *
 * @param counts  plants of each variety in each block, varieties × blocks
 * @returns       Infinity where the blocks do not join all varieties
 * @source D = K - N'R⁻¹N, G = R⁻¹ + R⁻¹ND⁻N'R⁻¹, 2(v·tr G - 1'G1)/(v(v - 1)); reference case o01
 */
export function averageVariance(counts: readonly Float64Array[]): number {
  const v = counts.length;
  const { size, plants, factor } = reduced(counts);
  let trace = plants.reduce((sum, n) => sum + 1 / n, 0);
  let total = trace;
  if (size > 0) {
    if (!factor) return Infinity;
    for (let i = 0; i < size; i++) if (factor[i * size + i]! ** 2 < CONNECTED) return Infinity;
    const sums = new Float64Array(size);
    counts.forEach((row, at) => {
      const scaled = Float64Array.from({ length: size }, (_, i) => cell(row, i) / nth(plants, at));
      scaled.forEach((own, i) => (sums[i]! += own));
      const half = solveLower(factor, size, scaled);
      trace += half.reduce((sum, own) => sum + own * own, 0);
    });
    total += solveLower(factor, size, sums).reduce((sum, own) => sum + own * own, 0);
  }
  return v < 2 ? 0 : (2 * (v * trace - total)) / (v * (v - 1));
}

/**
 * How well a layout in blocks compares its varieties.
 *
 * @param counts  plants of each variety in each block, varieties × blocks, each variety at least once
 * @returns       null where the blocks do not join all varieties
 * @source reference case o01
 */
export function blockVariance(counts: readonly Float64Array[]): BlockVariance | null {
  const average = averageVariance(counts);
  if (!Number.isFinite(average)) return null;
  const { size, plants, factor } = reduced(counts);
  const halves = counts.map((row, at) => {
    const scaled = Float64Array.from({ length: size }, (_, i) => cell(row, i) / nth(plants, at));
    return factor ? solveLower(factor, size, scaled) : scaled;
  });
  let [least, most, without, pairs] = [Infinity, 0, 0, 0];
  for (let a = 0; a < counts.length; a++) {
    for (let b = 0; b < a; b++) {
      const free = 1 / nth(plants, a) + 1 / nth(plants, b);
      const [x, y] = [nth(halves, a), nth(halves, b)];
      let variance = free;
      for (let i = 0; i < size; i++) variance += (cell(x, i) - cell(y, i)) ** 2;
      least = Math.min(least, variance);
      most = Math.max(most, variance);
      without += free;
      pairs++;
    }
  }
  return { average, without: pairs === 0 ? 0 : without / pairs, least: Math.min(least, most), most };
}
