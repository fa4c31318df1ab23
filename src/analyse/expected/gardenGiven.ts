import { choleskyFactor, solveLower, solveUpper } from '../../numerics/cholesky.ts';
import type { Cholesky } from '../../numerics/cholesky.ts';
import { cell } from '../../numerics/element.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass, GardenRows, GardenSpreads } from './gardenCells.ts';
import { cellMeans, errorDraws, networkGiven } from './gardenNetwork.ts';
import { networkOf } from './networkRows.ts';
import type { CellErrors } from './linearFigures.ts';

/** A garden given the spreads: what its rows say of the cells of variety × season, its own means and u left out. */
interface Eliminated {
  /** Inverse variance of each row. */
  readonly inverse: Float64Array;
  /** σ_u² / (1 + σ_u² Σ inverse) of each variety: what Σ⁻¹ takes off for rows of one. */
  readonly shared: Float64Array;
  /** X'Σ⁻¹, seasons × rows. */
  readonly weights: Float64Array;
  /** Factor of X'Σ⁻¹X. */
  readonly means: Cholesky;
  readonly logDeterminant: number;
}

/** Σ = diag(e + σ_r²) + σ_u² for rows of one variety, inverted by a rank-one update a variety. */
export function eliminated(rows: GardenRows, { withGarden, rest }: GardenSpreads): Eliminated {
  const { from, season, seasons, variance } = rows;
  const size = variance.length;
  const u2 = withGarden * withGarden;
  const inverse = new Float64Array(size);
  const shared = new Float64Array(from.length - 1);
  const weights = new Float64Array(seasons * size);
  const information = new Float64Array(seasons * seasons);
  let logDeterminant = 0;
  for (let k = 0; k + 1 < from.length; k++) {
    let total = 0;
    let product = 1;
    for (let i = from[k]!; i < from[k + 1]!; i++) {
      const summed = cell(variance, i) + rest * rest;
      inverse[i] = 1 / summed;
      total += 1 / summed;
      product *= summed;
    }
    logDeterminant += Math.log(product * (1 + u2 * total));
    const part = u2 / (1 + u2 * total);
    shared[k] = part;
    for (let i = from[k]!; i < from[k + 1]!; i++)
      for (let j = from[k]!; j < from[k + 1]!; j++) {
        const own = (i === j ? cell(inverse, i) : 0) - part * cell(inverse, i) * cell(inverse, j);
        weights[season[i]! * size + j]! += own;
        information[season[i]! * seasons + season[j]!]! += own;
      }
  }
  const means = choleskyFactor(information, seasons)!;
  for (let s = 0; s < seasons; s++) logDeterminant += 2 * Math.log(cell(means, s * seasons + s));
  return { inverse, shared, weights, means, logDeterminant };
}

/** L⁻¹ X'Σ⁻¹: what the garden's own means take off the precision of its rows. */
function halfOf({ weights, means }: Eliminated, seasons: number, size: number): Float64Array {
  const half = weights.slice();
  for (let s = 0; s < seasons; s++)
    for (let i = 0; i < size; i++) {
      let sum = cell(half, s * size + i);
      for (let k = 0; k < s; k++) sum -= cell(means, s * seasons + k) * cell(half, k * size + i);
      half[s * size + i] = sum / cell(means, s * seasons + s);
    }
  return half;
}

/** A class given the spreads: cells b = v + w of variety × season are normal with these means. */
export interface GardensGiven {
  readonly own: GardenClass;
  readonly spreads: GardenSpreads;
  readonly means: Float64Array;
  readonly errors: CellErrors;
  /** Of the spreads; not known where cells are too many for a matrix. */
  readonly logLikelihood: number | null;
}

/** Adds a garden's precision of its cells, lower triangle, and its right side; returns y'Py. */
function addGarden(rows: GardenRows, done: Eliminated, precision: Float64Array, right: Float64Array): number {
  const { theta, seasons, from, cell: at } = rows;
  const [n, size] = [theta.length, right.length];
  const half = halfOf(done, seasons, n);
  const sums = new Float64Array(seasons);
  for (let s = 0; s < seasons; s++) for (let i = 0; i < n; i++) sums[s]! += cell(half, s * n + i) * cell(theta, i);
  let square = 0;
  for (let k = 0; k + 1 < from.length; k++) {
    let weighted = 0;
    for (let i = from[k]!; i < from[k + 1]!; i++) weighted += cell(done.inverse, i) * cell(theta, i);
    weighted *= cell(done.shared, k);
    for (let i = from[k]!; i < from[k + 1]!; i++) {
      const row = at[i]! * size;
      let pulled = cell(done.inverse, i) * (cell(theta, i) - weighted);
      for (let s = 0; s < seasons; s++) pulled -= cell(half, s * n + i) * cell(sums, s);
      right[at[i]!]! += pulled;
      square += pulled * cell(theta, i);
      precision[row + at[i]!]! += cell(done.inverse, i);
      for (let j = from[k]!; j <= i; j++)
        precision[row + at[j]!]! -= cell(done.shared, k) * cell(done.inverse, i) * cell(done.inverse, j);
      for (let s = 0; s < seasons; s++) {
        const own = cell(half, s * n + i);
        for (let j = 0; j <= i; j++) precision[row + at[j]!]! -= own * cell(half, s * n + j);
      }
    }
  }
  return square;
}

/** A product so small is near the end of what a number can hold: its logarithm is taken. */
const SMALL = 1e-200;

/** The same for a garden with one season and a row a variety, most often so: u and the rest are one variance. */
function addPlainGarden(
  { theta, variance, cell: at }: GardenRows,
  { withGarden, rest }: GardenSpreads,
  precision: Float64Array,
  right: Float64Array,
): number {
  const [n, size] = [theta.length, right.length];
  const added = withGarden * withGarden + rest * rest;
  let [total, mean, product, twice] = [0, 0, 1, 0];
  for (let i = 0; i < n; i++) {
    const own = variance[i]! + added;
    total += 1 / own;
    mean += theta[i]! / own;
    product *= own;
    if (product > SMALL) continue;
    twice += Math.log(product);
    product = 1;
  }
  mean /= total;
  for (let i = 0; i < n; i++) {
    const own = 1 / (variance[i]! + added);
    const row = at[i]! * size;
    const pulled = own * (theta[i]! - mean);
    right[at[i]!]! += pulled;
    twice += pulled * theta[i]!;
    precision[row + at[i]!]! += own;
    const part = own / total;
    for (let j = 0; j <= i; j++) precision[row + at[j]!]! -= part / (variance[j]! + added);
  }
  return twice + Math.log(product) + Math.log(total);
}

/** What does not depend on how two spreads share what is told only together. */
type Core = Pick<GardensGiven, 'means' | 'errors' | 'logLikelihood'>;

/** Up to so many cells of variety × season in a class their matrix is a full one. */
const MOST_FULL = 800;
/** Up to so many the posterior is on a grid, of which every place is asked for once; beyond it what was asked for is kept. */
export const MOST_ON_GRID = 250;
/** Cores of a class that are kept, however large. */
const FEWEST_KEPT = 8;

const cores = new WeakMap<GardenClass, Map<string, Core>>();
/** Numbers kept of one class's cores. */
const MOST_KEPT = 4e6;

/** The spreads as far as a class's values can tell them: the same name, the same core. */
function toldSpreads(own: GardenClass, { between, withSeason, withGarden, rest }: GardenSpreads): string {
  const { isOneSeason, isPlain } = packedGardens(own);
  const pair = (a: number, b: number, isOne: boolean): string =>
    isOne ? (a * a + b * b).toPrecision(12) : `${a}/${b}`;
  return `${pair(between, withSeason, isOneSeason)} ${pair(withGarden, rest, isPlain)}`;
}

/**
 * Cells of variety × season given the four spreads, gardens eliminated one by one, and the logarithm of the restricted
 * likelihood: garden-season means are flat.
 *
 * @source gardens page 2.3; Patterson & Thompson (1971) Biometrika 58:545; reference case o2
 */
export function gardensGiven(own: GardenClass, spreads: GardenSpreads): GardensGiven {
  const { varietyOf, isOneSeason, isPlain } = packedGardens(own);
  const isFull = varietyOf.length <= MOST_FULL;
  if (varietyOf.length <= MOST_ON_GRID && !isOneSeason && !isPlain) return { own, spreads, ...coreOf(own, spreads) };
  const kept = cores.get(own) ?? new Map<string, Core>();
  cores.set(own, kept);
  const key = toldSpreads(own, spreads);
  const known = kept.get(key);
  if (known) return { own, spreads, ...known };
  const made = isFull ? coreOf(own, spreads) : networkCore(own, spreads);
  if (kept.size >= Math.max(FEWEST_KEPT, Math.min(128, MOST_KEPT / varietyOf.length ** 2)))
    kept.delete([...kept.keys()][0]!);
  kept.set(key, made);
  return { own, spreads, ...made };
}

/** Draws of the errors of cells that are too many for a matrix: each with its opposite they err as four hundred do. */
const NETWORK_DRAWS = 200;

function networkCore(own: GardenClass, spreads: GardenSpreads): Core {
  const network = networkOf(own);
  const given = networkGiven(network, spreads);
  return {
    means: cellMeans(given, network.theta),
    errors: { kind: 'draws', draws: errorDraws(given, own.classId, NETWORK_DRAWS) },
    logLikelihood: null,
  };
}

function coreOf(own: GardenClass, spreads: GardenSpreads): Core {
  const { gardens, varietyOf, cellsOf } = packedGardens(own);
  const size = varietyOf.length;
  const precision = new Float64Array(size * size);
  const right = new Float64Array(size);
  let twice = 0;
  for (const rows of gardens) {
    if (rows.isPlain) {
      twice += addPlainGarden(rows, spreads, precision, right);
      continue;
    }
    const done = eliminated(rows, spreads);
    twice += done.logDeterminant + addGarden(rows, done, precision, right);
  }
  const [v2, w2] = [spreads.between ** 2, spreads.withSeason ** 2];
  for (const cells of cellsOf) {
    if (cells.length === 0) continue;
    const whole = w2 + cells.length * v2;
    twice += (cells.length - 1) * Math.log(w2) + Math.log(whole);
    for (const i of cells) for (const j of cells) precision[i * size + j]! += ((i === j ? 1 : 0) - v2 / whole) / w2;
  }
  const factor = choleskyFactor(precision, size);
  if (!factor) return { means: right, errors: { kind: 'factor', factor: precision }, logLikelihood: -Infinity };
  solveLower(factor, size, right);
  for (let i = 0; i < size; i++) twice += 2 * Math.log(cell(factor, i * size + i)) - cell(right, i) ** 2;
  return { means: solveUpper(factor, size, right), errors: { kind: 'factor', factor }, logLikelihood: -twice / 2 };
}
