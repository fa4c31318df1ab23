import { choleskyFactor, solveLower, solveUpper } from '../../numerics/cholesky.ts';
import type { Cholesky } from '../../numerics/cholesky.ts';
import { cell, nth } from '../../numerics/element.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass, GardenRows } from './gardenCells.ts';

/** Standard deviations of stage two over gardens, working scale, each > 0. */
export interface GardenSpreads {
  /** σ_v, between varieties. */
  readonly between: number;
  /** σ_w, of a variety from season to season. */
  readonly withSeason: number;
  /** σ_u, of a variety from garden to garden. */
  readonly withGarden: number;
  /** σ_r, the rest: the spot, and what garden and season make together. */
  readonly rest: number;
}

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
function eliminated(rows: GardenRows, { withGarden, rest }: GardenSpreads): Eliminated {
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
      const variance_ = cell(variance, i) + rest * rest;
      inverse[i] = 1 / variance_;
      total += 1 / variance_;
      product *= variance_;
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

/** A class given the spreads: cells b = v + w of variety × season are normal with these means and precision L Lᵀ. */
export interface GardensGiven {
  readonly own: GardenClass;
  readonly spreads: GardenSpreads;
  readonly means: Float64Array;
  readonly factor: Cholesky;
  readonly logLikelihood: number;
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

/**
 * Cells of variety × season given the four spreads, gardens eliminated one by one, and the logarithm of the restricted
 * likelihood: garden-season means are flat.
 *
 * @source gardens page 2.3; Patterson & Thompson (1971) Biometrika 58:545; reference case o2
 */
export function gardensGiven(own: GardenClass, spreads: GardenSpreads): GardensGiven {
  const { gardens, varietyOf, cellsOf } = packedGardens(own);
  const size = varietyOf.length;
  const precision = new Float64Array(size * size);
  const right = new Float64Array(size);
  let twice = 0;
  for (const rows of gardens) {
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
  if (!factor) return { own, spreads, means: right, factor: precision, logLikelihood: -Infinity };
  solveLower(factor, size, right);
  for (let i = 0; i < size; i++) twice += 2 * Math.log(cell(factor, i * size + i)) - cell(right, i) ** 2;
  return { own, spreads, means: solveUpper(factor, size, right), factor, logLikelihood: -twice / 2 };
}

/** A normal figure that is linear in the cells: constant + pull'b + noise. */
export interface LinearFigure {
  readonly constant: number;
  readonly pull: Float64Array;
  readonly noise: number;
}

/** Mean and variance of a linear figure. */
export function momentsOf({ means, factor }: GardensGiven, { constant, pull, noise }: LinearFigure) {
  const size = means.length;
  const mean = pull.reduce((sum, own, i) => sum + own * cell(means, i), constant);
  const half = solveLower(factor, size, pull.slice());
  return { mean, variance: half.reduce((sum, own) => sum + own * own, noise) };
}

/** A variety's v given its cells: the same pull on each, and what is left of its variance. */
export function varietyPart({ own, spreads }: GardensGiven, variety: number) {
  const cells = nth(packedGardens(own).cellsOf, variety);
  const [v2, w2] = [spreads.between ** 2, spreads.withSeason ** 2];
  const whole = w2 + cells.length * v2;
  return { cells, pull: v2 / whole, left: cells.length === 0 ? v2 : (v2 * w2) / whole };
}

/** Means c of a garden's seasons given the cells: constants + pulls b + N(0, (L Lᵀ)⁻¹). */
export interface GardenLevels {
  readonly rows: GardenRows;
  readonly inverse: Float64Array;
  readonly constants: Float64Array;
  /** Seasons × rows: what each row's cell is multiplied by. */
  readonly weights: Float64Array;
  readonly factor: Cholesky;
}

/** What a garden's rows say of its own means; θ about the class's middle. */
export function gardenLevels(rows: GardenRows, spreads: GardenSpreads): GardenLevels {
  const { inverse, weights, means: factor } = eliminated(rows, spreads);
  const { seasons, theta } = rows;
  const n = theta.length;
  const solved = new Float64Array(seasons * n);
  const column = new Float64Array(seasons);
  const constants = new Float64Array(seasons);
  for (let i = 0; i < n; i++) {
    for (let s = 0; s < seasons; s++) column[s] = cell(weights, s * n + i);
    solveUpper(factor, seasons, solveLower(factor, seasons, column));
    for (let s = 0; s < seasons; s++) {
      solved[s * n + i] = cell(column, s);
      constants[s]! += cell(column, s) * cell(theta, i);
    }
  }
  return { rows, inverse, constants, weights: solved, factor };
}

/** The levels of one garden; null where it has no rows in the class. */
export function levelsOf({ own, spreads }: GardensGiven, garden: string): GardenLevels | null {
  const rows = packedGardens(own).gardens.find((one) => one.garden === garden);
  return rows ? gardenLevels(rows, spreads) : null;
}

/** Adds parts of a garden's means to a linear figure; returns the variance that they bring. */
function addLevels(
  { rows, constants, weights, factor }: GardenLevels,
  parts: Float64Array,
  into: LinearFigure,
): LinearFigure {
  const { seasons, cell: at } = rows;
  const n = at.length;
  let constant = into.constant;
  for (let s = 0; s < seasons; s++) {
    constant += cell(parts, s) * cell(constants, s);
    for (let i = 0; i < n; i++) into.pull[at[i]!]! -= cell(parts, s) * cell(weights, s * n + i);
  }
  const half = solveLower(factor, seasons, parts.slice());
  return { ...into, constant, noise: half.reduce((sum, own) => sum + own * own, into.noise) };
}

/** Mean of the garden-season means, all of them alike, or of one garden's: linear in the cells. */
export function meanOfGardens({ own, spreads, means }: GardensGiven, garden: string | null): LinearFigure {
  const { gardens, middle } = packedGardens(own);
  const chosen = gardens.filter((rows) => garden === null || rows.garden === garden);
  const count = chosen.reduce((sum, { seasons }) => sum + seasons, 0);
  return chosen.reduce<LinearFigure>(
    (figure, rows) => addLevels(gardenLevels(rows, spreads), new Float64Array(rows.seasons).fill(1 / count), figure),
    { constant: middle, pull: new Float64Array(means.length), noise: 0 },
  );
}

/** v + u of a variety in a garden given cells and means: constant + pull b + parts c + noise. */
export interface OwnInGarden extends LinearFigure {
  /** A part for each of the garden's seasons. */
  readonly parts: Float64Array;
}

/** v + u of a variety in a garden, whether it was seen there or not. */
export function ownInGarden(given: GardensGiven, { rows, inverse }: GardenLevels, variety: number): OwnInGarden {
  const part = varietyPart(given, variety);
  const pull = new Float64Array(given.means.length);
  for (const i of part.cells) pull[i]! += part.pull;
  const parts = new Float64Array(rows.seasons);
  const mine = [...rows.variety.keys()].filter((i) => rows.variety[i] === variety);
  const tau = 1 / (1 / given.spreads.withGarden ** 2 + mine.reduce((sum, i) => sum + cell(inverse, i), 0));
  let constant = 0;
  for (const i of mine) {
    const weight = tau * cell(inverse, i);
    constant += weight * cell(rows.theta, i);
    pull[rows.cell[i]!]! -= weight;
    parts[rows.season[i]!]! -= weight;
  }
  return { constant, pull, parts, noise: part.left + tau };
}

/**
 * v + u of a variety in a garden, with the garden's mean level or without it, as one linear figure.
 *
 * @param share  1 with the level, 0 without
 */
export function inGarden(given: GardensGiven, levels: GardenLevels, variety: number, share: 0 | 1): LinearFigure {
  const own = ownInGarden(given, levels, variety);
  const parts = own.parts.map((part) => part + share / levels.rows.seasons);
  return addLevels(levels, parts, { ...own, constant: own.constant + share * packedGardens(given.own).middle });
}

/** v of a variety over the club, with the mean level of its gardens where `level` gives it. */
export function inClub(given: GardensGiven, variety: number, level: LinearFigure | null): LinearFigure {
  const part = varietyPart(given, variety);
  const pull = level ? level.pull.slice() : new Float64Array(given.means.length);
  for (const i of part.cells) pull[i]! += part.pull;
  return { constant: level?.constant ?? 0, pull, noise: part.left + (level?.noise ?? 0) };
}
