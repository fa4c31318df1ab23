import { connectedParts } from './connected.ts';
import { backSubstitute, orthogonalise } from './orthogonal.ts';

export type Family = 'gamma' | 'poisson' | 'gaussian';

/** A two-way layout without interaction: response ~ group + block. */
export interface AdditiveData {
  readonly family: Family;
  /** Responses; counts and weights ≥ 0 for the two families with a logarithmic link. */
  readonly y: readonly number[];
  /** Group of each response, 0-based, every group present. */
  readonly group: readonly number[];
  /** Block of each response, 0-based, every block present; null: no blocks. */
  readonly block: readonly number[] | null;
  /** Weights of the estimating equations, > 0. */
  readonly weight: readonly number[];
  /** Variance of each response relative to φ V(μ): 1 / weight in the textbook case. */
  readonly relativeVariance: readonly number[];
}

export interface AdditiveFit {
  readonly family: Family;
  readonly groups: number;
  readonly fitted: readonly number[];
  readonly residualDf: number;
  /** Pearson dispersion φ; null without residual degrees of freedom. */
  readonly dispersion: number | null;
  /** Added to every estimate of a gaussian fit; keeps the digits of responses far from zero. */
  readonly offset: number;
  readonly marginalMeans: (groups: readonly number[], blocks: readonly number[]) => MarginalMeans;
}

/** Means of groups averaged over blocks, on the link scale, and their covariance divided by φ. */
export interface MarginalMeans {
  readonly estimates: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

interface Working {
  readonly z: Float64Array;
  readonly w: Float64Array;
}

interface Solution {
  readonly groupMeans: Float64Array;
  /** Weighted mean of each free block's indicator within each group: [group][column]. */
  readonly blockShares: readonly Float64Array[];
  /** Block effects as linear functions of z: [column][observation]. */
  readonly blockRows: readonly Float64Array[];
  readonly blockEffects: Float64Array;
}

interface Layout {
  readonly groups: number;
  /** Column of each block, -1 for the block its connected part is measured from. */
  readonly columnOf: readonly number[];
  readonly columns: number;
}

function layoutOf(data: AdditiveData): Layout {
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

function groupAverages(values: ArrayLike<number>, w: ArrayLike<number>, group: readonly number[], groups: number) {
  const sums = new Float64Array(groups);
  const weights = new Float64Array(groups);
  group.forEach((g, i) => {
    sums[g]! += w[i]! * values[i]!;
    weights[g]! += w[i]!;
  });
  return sums.map((sum, g) => sum / weights[g]!);
}

/** Weighted least squares with the groups swept out first (Frisch & Waugh 1933), blocks by QR. */
function solve(data: AdditiveData, layout: Layout, { z, w }: Working): Solution {
  const { group, block } = data;
  const { groups, columns, columnOf } = layout;
  const n = z.length;
  const groupMeans = groupAverages(z, w, group, groups);
  const refined = groupAverages(
    z.map((value, i) => value - groupMeans[group[i]!]!),
    w,
    group,
    groups,
  );
  groupMeans.forEach((_, g) => (groupMeans[g]! += refined[g]!));
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
  const centred = indicators.map((x, c) => x.map((value, i) => root[i]! * (value - shares[c]![group[i]!]!)));
  const { q, r } = orthogonalise(centred);
  const blockRows = Array.from({ length: columns }, () => new Float64Array(n));
  const right = new Float64Array(columns);
  for (let i = 0; i < n; i++) {
    for (let c = 0; c < columns; c++) right[c] = q[c]![i]! * root[i]!;
    const solved = backSubstitute(r, right);
    for (let c = 0; c < columns; c++) blockRows[c]![i] = solved[c]!;
  }
  // The rows are orthogonal to the groups, so deviations from the group means give the same effects with more digits.
  const deviations = z.map((value, i) => value - groupMeans[group[i]!]!);
  const blockEffects = Float64Array.from(blockRows, (row) => row.reduce((sum, h, i) => sum + h * deviations[i]!, 0));
  const blockShares = Array.from({ length: groups }, (_, g) => Float64Array.from(shares, (share) => share[g]!));
  return { groupMeans, blockShares, blockRows, blockEffects };
}

function predict(data: AdditiveData, layout: Layout, s: Solution): Float64Array {
  return Float64Array.from(data.group, (g, i) => {
    let eta = s.groupMeans[g]!;
    const shares = s.blockShares[g]!;
    for (let c = 0; c < layout.columns; c++) eta -= shares[c]! * s.blockEffects[c]!;
    const column = data.block === null ? -1 : (layout.columnOf[data.block[i]!] ?? -1);
    return column >= 0 ? eta + s.blockEffects[column]! : eta;
  });
}

function working(data: AdditiveData, eta: Float64Array): Working {
  const z = eta.map((e, i) => e + (data.y[i]! - Math.exp(e)) / Math.exp(e));
  const w = eta.map((e, i) => data.weight[i]! * (data.family === 'poisson' ? Math.exp(e) : 1));
  return { z, w };
}

/** V(μ) of the working response: what multiplies φ · relative variance on the link scale. */
function linkVariance(family: Family, fitted: number): number {
  return family === 'poisson' ? 1 / fitted : 1;
}

function pearson(data: AdditiveData, fitted: readonly number[], df: number): number | null {
  if (df <= 0) return null;
  const sum = data.y.reduce((total, y, i) => {
    const mu = fitted[i]!;
    const unit = data.family === 'gamma' ? mu * mu : data.family === 'poisson' ? mu : 1;
    return total + (y - mu) ** 2 / (unit * data.relativeVariance[i]!);
  }, 0);
  return sum / df;
}

/**
 * Least squares or quasi-likelihood fit of group + block, with the variance of the estimates worked out
 * for responses whose variance is not the inverse of their weight.
 *
 * @param data  responses with their groups and blocks; groups joined by blocks where they can be compared
 * @returns     fitted values, dispersion and marginal means on the link scale (log for gamma and poisson)
 * @throws RangeError if a group of a logarithmic family has no positive response
 * @source McCullagh & Nelder (1989) Generalized Linear Models ch. 8-9; Searle, Speed & Milliken (1980)
 *   Am. Stat. 34:216 for marginal means; Liang & Zeger (1986) Biometrika 73:13 for the variance
 */
export function fitAdditive(data: AdditiveData): AdditiveFit {
  const layout = layoutOf(data);
  const offset = data.family === 'gaussian' ? (data.y[0] ?? 0) : 0;
  const weight = Float64Array.from(data.weight);
  let current: Working = { z: Float64Array.from(data.y, (y) => y - offset), w: weight };
  let solution: Solution;
  let eta: Float64Array;
  if (data.family === 'gaussian') {
    solution = solve(data, layout, current);
    eta = predict(data, layout, solution);
  } else {
    const means = groupAverages(data.y, weight, data.group, layout.groups);
    if (means.some((mean) => !(mean > 0))) throw new RangeError('a group without a positive response has no logarithm');
    eta = Float64Array.from(data.group, (g) => Math.log(means[g]!));
    for (let i = 0; i < 200; i++) {
      current = working(data, eta);
      solution = solve(data, layout, current);
      const next = predict(data, layout, solution);
      const change = Math.max(...next.map((value, j) => Math.abs(value - eta[j]!)));
      eta = next;
      if (change < 1e-13) break;
    }
    current = working(data, eta);
    solution = solve(data, layout, current);
  }
  const fitted = Array.from(eta, (e) => (data.family === 'gaussian' ? e + offset : Math.exp(e)));
  const residualDf = data.y.length - layout.groups - layout.columns;
  const marginalMeans = (groups: readonly number[], blocks: readonly number[]): MarginalMeans =>
    marginal({ data, layout, solution, w: current.w, fitted }, groups, blocks);
  return {
    family: data.family,
    groups: layout.groups,
    fitted,
    residualDf,
    dispersion: pearson(data, fitted, residualDf),
    offset,
    marginalMeans,
  };
}

interface Solved {
  readonly data: AdditiveData;
  readonly layout: Layout;
  readonly solution: Solution;
  readonly w: Float64Array;
  readonly fitted: readonly number[];
}

function marginal(solved: Solved, groups: readonly number[], blocks: readonly number[]): MarginalMeans {
  const { data, layout, solution, w, fitted } = solved;
  const target = new Float64Array(layout.columns);
  for (const b of blocks) {
    const column = layout.columnOf[b] ?? -1;
    if (column >= 0) target[column]! += 1 / blocks.length;
  }
  const totals = new Float64Array(layout.groups);
  data.group.forEach((g, i) => (totals[g]! += w[i]!));
  const variance = data.relativeVariance.map((v, i) => v * linkVariance(data.family, fitted[i]!));
  const rows = groups.map((group) => {
    const shift = target.map((t, c) => t - solution.blockShares[group]![c]!);
    const estimate = shift.reduce((sum, s, c) => sum + s * solution.blockEffects[c]!, solution.groupMeans[group]!);
    const linear = new Map<number, number>();
    data.group.forEach((g, i) => {
      let h = g === group ? w[i]! / totals[g]! : 0;
      for (let c = 0; c < layout.columns; c++) h += shift[c]! * solution.blockRows[c]![i]!;
      if (h !== 0) linear.set(i, h);
    });
    return { estimate, linear };
  });
  const covariance = rows.map((a) =>
    rows.map((b) => {
      let sum = 0;
      for (const [i, h] of a.linear) sum += h * (b.linear.get(i) ?? 0) * variance[i]!;
      return sum;
    }),
  );
  return { estimates: rows.map((row) => row.estimate), covariance };
}
