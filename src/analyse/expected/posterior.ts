import { choleskyFactor, solveLower, solveUpper } from '../../numerics/cholesky.ts';
import type { Cholesky } from '../../numerics/cholesky.ts';
import { gaussLegendre } from '../../numerics/gaussLegendre.ts';
import { cell } from '../../numerics/element.ts';

/** One variety's estimate of a trait in one season, on the working scale. */
export interface SeasonValue {
  /** Position among the class's seasons. */
  readonly season: number;
  readonly theta: number;
  /** Squared standard error. */
  readonly variance: number;
}

/** A class's estimates of one trait over all seasons. */
export interface ClassValues {
  readonly classId: string;
  /** How many seasons have the trait recorded in the class; at least one. */
  readonly seasons: number;
  /** A variety’s values stand in order of seasons. */
  readonly varieties: readonly { readonly id: string; readonly values: readonly SeasonValue[] }[];
}

/** A point of the grid over the two standard deviations, with its share of the posterior. */
export interface SpreadCell {
  /** SD between varieties, working scale. */
  readonly between: number;
  /** SD of a variety from season to season, working scale. */
  readonly withSeason: number;
  readonly weight: number;
}

/** Class-season means given the two standard deviations: normal with mean `means` and precision L Lᵀ. */
export interface SeasonMeans {
  readonly means: Float64Array;
  readonly factor: Cholesky;
  readonly logLikelihood: number;
}

/** A class's values side by side; θ about their middle, so that large values lose no digits. */
interface Packed {
  /** Where each variety's values begin, and where the last one's end. */
  readonly from: Int32Array;
  readonly season: Int32Array;
  readonly theta: Float64Array;
  readonly variance: Float64Array;
  readonly middle: number;
}

const packings = new WeakMap<ClassValues, Packed>();

function packed(own: ClassValues): Packed {
  const known = packings.get(own);
  if (known) return known;
  const all = own.varieties.flatMap(({ values }) => values);
  const middle = all.length > 0 ? all.reduce((sum, { theta }) => sum + theta, 0) / all.length : 0;
  let end = 0;
  const made: Packed = {
    from: Int32Array.from([0, ...own.varieties.map(({ values }) => (end += values.length))]),
    season: Int32Array.from(all, ({ season }) => season),
    theta: Float64Array.from(all, ({ theta }) => theta - middle),
    variance: Float64Array.from(all, ({ variance }) => variance),
    middle,
  };
  packings.set(own, made);
  return made;
}

/**
 * Season means of a class given σ_v and σ_w, the varieties integrated out one by one (each needs only the rank-one
 * update of its own seasons), and the logarithm of the restricted likelihood.
 *
 * @param own         the class, at least one value in every season
 * @param between     σ_v ≥ 0
 * @param withSeason  σ_w ≥ 0
 * @source methods page B; Patterson & Thompson (1971) Biometrika 58:545 for the restricted likelihood;
 *         Sherman & Morrison (1950) Ann. Math. Stat. 21:124 for the update
 */
export function seasonMeans(own: ClassValues, between: number, withSeason: number): SeasonMeans {
  const size = own.seasons;
  const precision = new Float64Array(size * size);
  const right = new Float64Array(size);
  const { from, season, theta, variance, middle } = packed(own);
  const [v2, w2] = [between * between, withSeason * withSeason];
  // One logarithm of a product in place of one a value, before it leaves the room of a double.
  let [twice, product] = [0, 1];
  const weights = new Float64Array(size);
  for (let i = 0; i + 1 < from.length; i++) {
    const [start, end] = [from[i]!, from[i + 1]!];
    let [total, weighted] = [0, 0];
    for (let a = start; a < end; a++) {
      const d = 1 / (cell(variance, a) + w2);
      weights[a - start] = d;
      total += d;
      weighted += d * cell(theta, a);
      twice += d * cell(theta, a) * cell(theta, a);
      product *= d;
      if (product < 1e-100 || product > 1e100) {
        twice -= Math.log(product);
        product = 1;
      }
    }
    const k = v2 / (1 + v2 * total);
    product /= 1 + v2 * total;
    twice -= k * weighted * weighted;
    for (let a = start; a < end; a++) {
      const d = cell(weights, a - start);
      const row = season[a]! * size;
      precision[row + season[a]!]! += d;
      right[season[a]!]! += d * (cell(theta, a) - k * weighted);
      // The lower triangle is enough: values stand in order of seasons.
      for (let b = start; b <= a; b++) precision[row + season[b]!]! -= k * d * cell(weights, b - start);
    }
  }
  twice -= Math.log(product);
  const factor = choleskyFactor(precision, size);
  if (!factor) return { means: right, factor: precision, logLikelihood: -Infinity };
  solveLower(factor, size, right);
  for (let s = 0; s < size; s++) twice += 2 * Math.log(factor[s * size + s]!) - cell(right, s) * cell(right, s);
  const means = solveUpper(factor, size, right);
  for (let s = 0; s < size; s++) means[s]! += middle;
  return { means, factor, logLikelihood: -twice / 2 };
}

/** One variety given the season means: v = fixed − Σ pull_s·m_s + N(0, variance). */
export interface VarietyGiven {
  readonly fixed: number;
  readonly pull: Float64Array;
  readonly variance: number;
  /** Share of v that comes from the variety's own values, 0 to 1; the rest is the class. */
  readonly ownShare: number;
}

/**
 * A variety's normal distribution given the season means and the two standard deviations.
 *
 * @param values   working scale, with their variances
 * @param seasons  how many season means there are
 * @source methods page B; Gelman et al. (2013) Bayesian Data Analysis ch. 5
 */
export function varietyGiven(
  values: readonly SeasonValue[],
  seasons: number,
  between: number,
  withSeason: number,
): VarietyGiven {
  const w2 = withSeason * withSeason;
  const pull = new Float64Array(seasons);
  let total = 0;
  for (const { variance } of values) total += 1 / (variance + w2);
  const variance = (between * between) / (1 + between * between * total);
  let fixed = 0;
  for (const { season, theta, variance: own } of values) {
    const g = variance / (own + w2);
    pull[season]! += g;
    fixed += g * theta;
  }
  return { fixed, pull, variance, ownShare: variance * total };
}

/**
 * Scale of the prior of σ_w given σ_v. A season by itself cannot tell the two apart: with priors of their own it says
 * that small ones are alike, and then a year's shares are too cautious.
 *
 * @returns working scale
 */
export function seasonScale(between: number, priorScale: number): number {
  return Math.hypot(0.6 * between, priorScale / 10);
}

const NEGLIGIBLE = 16;
const PASSES = 12;

interface Box {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** A node of the grid with its log density, and the logarithm of the weight of its place. */
interface Node extends Pick<SpreadCell, 'between' | 'withSeason'> {
  readonly log: number;
  readonly logPlace: number;
}

/** Log densities at the nodes of a rule along each side of a box. */
function evaluate(density: (v: number, w: number) => number, { from, to }: Box, points: number): readonly Node[] {
  const { nodes, weights } = gaussLegendre(points);
  return nodes.flatMap((p, i) =>
    nodes.map((q, j): Node => {
      const between = from[0] + p * (to[0] - from[0]);
      const withSeason = from[1] + q * (to[1] - from[1]);
      return { between, withSeason, log: density(between, withSeason), logPlace: Math.log(weights[i]! * weights[j]!) };
    }),
  );
}

/** The part of the box that holds the posterior, the nodes next to it included. */
function narrowed({ from, to }: Box, cells: readonly Node[]): Box {
  const top = Math.max(...cells.map(({ log }) => log));
  const kept = cells.filter(({ log }) => log > top - NEGLIGIBLE);
  const ends = (axis: 0 | 1, of: (cell: Node) => number): readonly [number, number] => {
    const places = [from[axis], ...new Set(cells.map(of)), to[axis]].toSorted((a, b) => a - b);
    const [first, last] = [Math.min(...kept.map(of)), Math.max(...kept.map(of))];
    return [places.findLast((place) => place < first)!, places.find((place) => place > last)!];
  };
  const [v, w] = [ends(0, ({ between }) => between), ends(1, ({ withSeason }) => withSeason)];
  return { from: [v[0], w[0]], to: [v[1], w[1]] };
}

/**
 * Posterior of σ_v ~ half-normal(A) and σ_w ~ half-normal(its scale given σ_v), variances shared over classes, by
 * Gauss-Legendre quadrature on a box that is drawn closer about the posterior until it fills it. No chains, no tuning:
 * the same bytes every run.
 *
 * @param classes     every class's values of the trait
 * @param priorScale  A, working scale, > 0
 * @param points      nodes along each axis
 * @returns           cells with a weight above 1e-8 of the largest; weights sum to 1
 * @source methods page B; Gelman (2006) Bayesian Anal. 1:515 for the priors
 */
export function spreadPosterior(
  classes: readonly ClassValues[],
  priorScale: number,
  points = 24,
): readonly SpreadCell[] {
  const density = (v: number, w: number): number => {
    const scale = seasonScale(v, priorScale);
    let log = -0.5 * ((v / priorScale) ** 2 + (w / scale) ** 2) - Math.log(scale);
    for (const own of classes) log += seasonMeans(own, v, w).logLikelihood;
    return log;
  };
  let box: Box = { from: [0, 0], to: [8 * priorScale, 4 * priorScale] };
  let cells = evaluate(density, box, points);
  for (let pass = 0; pass < PASSES; pass++) {
    const next = narrowed(box, cells);
    const kept = (axis: 0 | 1): number => (next.to[axis] - next.from[axis]) / (box.to[axis] - box.from[axis]);
    if (kept(0) * kept(1) > 0.6) break;
    box = next;
    cells = evaluate(density, box, points);
  }
  const mass = ({ log, logPlace }: Node): number => log + logPlace;
  const top = Math.max(...cells.map(mass));
  const kept = cells
    .map((cell) => ({ ...cell, weight: Math.exp(mass(cell) - top) }))
    .filter(({ weight }) => weight > 1e-8);
  const sum = kept.reduce((total, { weight }) => total + weight, 0);
  return kept.map(({ between, withSeason, weight }) => ({ between, withSeason, weight: weight / sum }));
}
