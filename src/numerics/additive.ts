import type { AdditiveData, Family } from './additiveData.ts';
import { notConverged } from './notConverged.ts';
import { groupAverages, layoutOf, predict, solve } from './sweep.ts';
import type { Layout, Solution, Working } from './sweep.ts';
import { cell } from './element.ts';

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

const MOST_STEPS = 500;
const SMALLEST_PART = 1e-6;
/** Differences so small are none. */
const ROUNDING = 1e-14;
const CLOSE_ENOUGH = 1e-9;

/** Working response and weights of the estimating equations (Fisher scoring). */
function working(data: AdditiveData, eta: Float64Array): Working {
  const z = eta.map((e, i) => e + (data.y[i]! - Math.exp(e)) / Math.exp(e));
  const w = eta.map((e, i) => data.weight[i]! * (data.family === 'poisson' ? Math.exp(e) : 1));
  return { z, w };
}

/** The same with the observed information, which finds the way where plants differ much: a gamma step by expectation swings. */
function newtonWorking(data: AdditiveData, eta: Float64Array): Working {
  if (data.family === 'poisson' || data.y.some((y) => y === 0)) return working(data, eta);
  const z = eta.map((e, i) => e + 1 - Math.exp(e) / data.y[i]!);
  const w = eta.map((e, i) => (data.weight[i]! * data.y[i]!) / Math.exp(e));
  return { z, w };
}

/** What the fit makes smallest, up to a constant: half the deviance, convex in the linear predictor. */
function distance({ family, y, weight }: AdditiveData, eta: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < y.length; i++) {
    const e = cell(eta, i);
    sum += weight[i]! * (family === 'poisson' ? Math.exp(e) - y[i]! * e : y[i]! * Math.exp(-e) + e);
  }
  return sum;
}

/** A part of the way from one predictor to another. */
function towards(from: Float64Array, to: Float64Array, part: number): Float64Array {
  return part === 1 ? to : from.map((own, i) => own + part * (cell(to, i) - own));
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
 * @throws RangeError if a group of a logarithmic family has no positive response; NotConverged where zeros in a whole
 *   block leave a logarithmic family without a fit
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
    eta = Float64Array.from(data.group, (g) => Math.log(cell(means, g)));
    let change = Infinity;
    for (let i = 0; i < MOST_STEPS && change >= 1e-13; i++) {
      const next = predict(data, layout, solve(data, layout, newtonWorking(data, eta)));
      change = 0;
      for (let j = 0; j < next.length; j++) change = Math.max(change, Math.abs(cell(next, j) - cell(eta, j)));
      // A whole step may go too far: then half of it, or less.
      let part = 1;
      const from = distance(data, eta);
      while (part > SMALLEST_PART && !(distance(data, towards(eta, next, part)) <= from + ROUNDING * Math.abs(from)))
        part /= 2;
      eta = towards(eta, next, part);
    }
    // The last digits may go on changing; more than these must not.
    if (!(change < CLOSE_ENOUGH)) notConverged('the quasi-likelihood fit');
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

/** Sum of products of two vectors. */
function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let c = 0; c < a.length; c++) sum += a[c]! * b[c]!;
  return sum;
}

/**
 * Means of some groups averaged over some blocks. An estimate is Σ hᵢ zᵢ with hᵢ = [i in its group] wᵢ / W + shift · rowᵢ,
 * so that all covariances come from sums over groups and over pairs of block columns.
 */
function marginal(solved: Solved, groups: readonly number[], blocks: readonly number[]): MarginalMeans {
  const { data, layout, solution, w, fitted } = solved;
  const { columns } = layout;
  const target = new Float64Array(columns);
  for (const b of blocks) {
    const column = layout.columnOf[b] ?? -1;
    if (column >= 0) target[column]! += 1 / blocks.length;
  }
  const totals = new Float64Array(layout.groups);
  data.group.forEach((g, i) => (totals[g]! += cell(w, i)));
  const own = new Float64Array(layout.groups);
  const mixed = Array.from({ length: layout.groups }, () => new Float64Array(columns));
  const between = Array.from({ length: columns }, () => new Float64Array(columns));
  data.group.forEach((g, i) => {
    const variance = data.relativeVariance[i]! * linkVariance(data.family, fitted[i]!);
    const part = cell(w, i) / cell(totals, g);
    own[g]! += part * part * variance;
    for (let c = 0; c < columns; c++) {
      const h = cell(solution.blockRows[c]!, i) * variance;
      mixed[g]![c]! += part * h;
      for (let d = 0; d < columns; d++) between[c]![d]! += h * cell(solution.blockRows[d]!, i);
    }
  });
  const shifts = groups.map((group) => target.map((t, c) => t - cell(solution.blockShares[group]!, c)));
  const carried = shifts.map((shift) => between.map((row) => dot(row, shift)));
  const covariance = groups.map((a, i) =>
    groups.map(
      (b, j) =>
        (a === b ? cell(own, a) : 0) +
        dot(mixed[a]!, shifts[j]!) +
        dot(mixed[b]!, shifts[i]!) +
        dot(shifts[i]!, carried[j]!),
    ),
  );
  const estimates = groups.map((group, i) => cell(solution.groupMeans, group) + dot(shifts[i]!, solution.blockEffects));
  return { estimates, covariance };
}
