import type { AdditiveData } from './additiveData.ts';
import { connectedParts } from './connected.ts';
import { backSubstitute, orthogonalise } from './orthogonal.ts';
import { cell } from './element.ts';

// One weighted least squares step of a two-way layout: groups swept out, blocks by QR.

/** Working response and weights of a step. */
export interface Working {
  readonly z: Float64Array;
  readonly w: Float64Array;
}

/** A step's solution. */
export interface Solution {
  readonly groupMeans: Float64Array;
  /** Weighted mean of each free block's indicator within each group: [group][column]. */
  readonly blockShares: readonly Float64Array[];
  /** Block effects as linear functions of z: [column][observation]. */
  readonly blockRows: readonly Float64Array[];
  readonly blockEffects: Float64Array;
}

/** Groups and free block columns of the data. */
export interface Layout {
  readonly groups: number;
  /** Column of each block, -1 for the block its connected part is measured from. */
  readonly columnOf: readonly number[];
  readonly columns: number;
}

/**
 * Numbers the groups (0 to groups - 1) and the free blocks of the data, one block in each connected part being the base.
 */
export function layoutOf(data: AdditiveData): Layout {
  const groups = Math.max(-1, ...data.group) + 1;
  if (data.block === null) return { groups, columnOf: [], columns: 0 };
  const parts = connectedParts(data.group, data.block);
  const seen = new Set<number>();
  let columns = 0;
  const columnOf = parts.ofColumn.map((part) => {
    if (!seen.has(part)) {
      seen.add(part);
      return -1;
    }
    return columns++;
  });
  return { groups, columnOf, columns };
}

/**
 * Weighted mean of each group.
 *
 * @param values  one for each observation, with weights w, and group numbers below `groups`
 * @returns       `groups` means; NaN for a group without weight
 */
export function groupAverages(
  values: ArrayLike<number>,
  w: ArrayLike<number>,
  group: readonly number[],
  groups: number,
) {
  const sums = new Float64Array(groups);
  const weights = new Float64Array(groups);
  group.forEach((g, i) => {
    sums[g]! += w[i]! * values[i]!;
    weights[g]! += w[i]!;
  });
  return sums.map((sum, g) => sum / cell(weights, g));
}

/**
 * Weighted least squares with the groups swept out first, blocks by QR.
 *
 * @returns  group means, shares of the blocks in each group, block effects: link scale
 * @throws RangeError where the blocks' columns are not independent
 * @source Frisch & Waugh (1933) Econometrica 1:387
 */
export function solve(data: AdditiveData, layout: Layout, { z, w }: Working): Solution {
  const { group, block } = data;
  const { groups, columns, columnOf } = layout;
  const n = z.length;
  const groupMeans = groupAverages(z, w, group, groups);
  const refined = groupAverages(
    z.map((value, i) => value - cell(groupMeans, group[i]!)),
    w,
    group,
    groups,
  );
  groupMeans.forEach((_, g) => (groupMeans[g]! += cell(refined, g)));
  if (block === null || columns === 0) {
    const none = Array.from({ length: groups }, () => new Float64Array(0));
    return { groupMeans, blockShares: none, blockRows: [], blockEffects: new Float64Array(0) };
  }
  const indicators = Array.from({ length: columns }, () => new Float64Array(n));
  block.forEach((b, i) => {
    const column = columnOf[b]!;
    if (column >= 0) indicators[column]![i] = 1;
  });
  const shares = indicators.map((indicator) => groupAverages(indicator, w, group, groups));
  const root = w.map(Math.sqrt);
  const centred = indicators.map((x, c) => x.map((value, i) => cell(root, i) * (value - cell(shares[c]!, group[i]!))));
  const { q, r } = orthogonalise(centred);
  const blockRows = Array.from({ length: columns }, () => new Float64Array(n));
  const right = new Float64Array(columns);
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < columns; c++) right[c] = cell(q[c]!, i) * cell(root, i);
    const solved = backSubstitute(r, right);
    for (let c = 0; c < columns; c++) blockRows[c]![i] = cell(solved, c);
  }
  // The rows are orthogonal to the groups, so deviations from the group means give the same effects with more digits.
  const deviations = z.map((value, i) => value - cell(groupMeans, group[i]!));
  const blockEffects = Float64Array.from(blockRows, (row) =>
    row.reduce((sum, h, i) => sum + h * cell(deviations, i), 0),
  );
  const blockShares = Array.from({ length: groups }, (_, g) => Float64Array.from(shares, (share) => cell(share, g)));
  return { groupMeans, blockShares, blockRows, blockEffects };
}

/** Linear predictor (link scale) of every observation, in the order of the data. */
export function predict(data: AdditiveData, layout: Layout, s: Solution): Float64Array {
  return Float64Array.from(data.group, (g, i) => {
    let eta = cell(s.groupMeans, g);
    const shares = s.blockShares[g]!;
    for (let c = 0; c < layout.columns; c++) eta -= cell(shares, c) * cell(s.blockEffects, c);
    const column = data.block === null ? -1 : (layout.columnOf[data.block[i]!] ?? -1);
    return column >= 0 ? eta + cell(s.blockEffects, column) : eta;
  });
}
