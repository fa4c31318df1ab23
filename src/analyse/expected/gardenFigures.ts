import { solveLower, solveUpper } from '../../numerics/cholesky.ts';
import type { Cholesky } from '../../numerics/cholesky.ts';
import { cell, nth } from '../../numerics/element.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass, GardenRows, GardenSpreads } from './gardenCells.ts';
import { eliminated } from './gardenGiven.ts';
import type { GardensGiven } from './gardenGiven.ts';
import { joinedCells, wholePull } from './linearFigures.ts';
import type { LinearFigure } from './linearFigures.ts';

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

/** The same for a garden with one season and a row a variety. */
function plainLevels(rows: GardenRows, { withGarden, rest }: GardenSpreads): GardenLevels {
  const { theta, variance } = rows;
  const weights = variance.map((own) => 1 / (own + rest * rest + withGarden * withGarden));
  const total = weights.reduce((sum, own) => sum + own, 0);
  let mean = 0;
  for (let i = 0; i < weights.length; i++) {
    weights[i]! /= total;
    mean += cell(weights, i) * cell(theta, i);
  }
  const inverse = variance.map((own) => 1 / (own + rest * rest));
  return { rows, inverse, constants: Float64Array.of(mean), weights, factor: Float64Array.of(Math.sqrt(total)) };
}

/** What a garden's rows say of its own means; θ about the class's middle. */
export function gardenLevels(rows: GardenRows, spreads: GardenSpreads): GardenLevels {
  if (rows.isPlain) return plainLevels(rows, spreads);
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

/** A figure while it is put together. */
interface Sums {
  readonly by: Float64Array;
  /** Where in it the cell of each of a garden's rows stands. */
  readonly ofRows: Int32Array;
  constant: number;
  noise: number;
}

/** Adds parts of a garden's means to a linear figure. */
function addLevels({ rows, constants, weights, factor }: GardenLevels, parts: Float64Array, into: Sums): void {
  const { seasons } = rows;
  const n = rows.cell.length;
  for (let s = 0; s < seasons; s++) {
    into.constant += cell(parts, s) * cell(constants, s);
    for (let i = 0; i < n; i++) into.by[into.ofRows[i]!]! -= cell(parts, s) * cell(weights, s * n + i);
  }
  const half = solveLower(factor, seasons, parts.slice());
  into.noise = half.reduce((sum, own) => sum + own * own, into.noise);
}

const levels = new WeakMap<GardenClass, Map<string, LinearFigure>>();
const MOST_LEVELS = 64;

/** Mean of the garden-season means, all of them alike, or of one garden's: linear in the cells. */
export function meanOfGardens(given: GardensGiven, garden: string | null): LinearFigure {
  const { own, spreads, means } = given;
  const { gardens, middle, isPlain } = packedGardens(own);
  // Levels do not depend on the varieties' spreads, and of plain gardens on the sum of the other two alone.
  const key = isPlain ? `${(spreads.withGarden ** 2 + spreads.rest ** 2).toPrecision(12)} ${garden ?? ''}` : null;
  const known = key === null ? undefined : levels.get(own)?.get(key);
  if (known) return known;
  const chosen = gardens.filter((rows) => garden === null || rows.garden === garden);
  const count = chosen.reduce((sum, { seasons }) => sum + seasons, 0);
  const by = new Float64Array(means.length);
  let [constant, noise] = [middle, 0];
  for (const rows of chosen) {
    const sums: Sums = { by, ofRows: rows.cell, constant, noise };
    addLevels(gardenLevels(rows, spreads), new Float64Array(rows.seasons).fill(1 / count), sums);
    ({ constant, noise } = sums);
  }
  const made = { constant, noise, pull: wholePull(by) };
  if (key !== null) {
    const kept = levels.get(own) ?? new Map<string, LinearFigure>();
    levels.set(own, kept.size < MOST_LEVELS ? kept.set(key, made) : new Map([[key, made]]));
  }
  return made;
}

/** v + u of a variety in a garden given cells and means: constant + pull b + parts c + noise. */
export interface OwnInGarden extends LinearFigure {
  /** A part for each of the garden's seasons. */
  readonly parts: Float64Array;
}

/** The same with its pull still open: over the cells of the garden's rows and of the variety. */
function openOwn(given: GardensGiven, { rows, inverse }: GardenLevels, variety: number) {
  const part = varietyPart(given, variety);
  const { at, ofRows, ofOthers } = joinedCells(rows.cell, part.cells);
  const by = new Float64Array(at.length);
  for (const i of ofOthers) by[i] = part.pull;
  const parts = new Float64Array(rows.seasons);
  const [from, to] = rowsOfVariety(rows, variety);
  let known = 0;
  for (let i = from; i < to; i++) known += cell(inverse, i);
  const tau = 1 / (1 / given.spreads.withGarden ** 2 + known);
  let constant = 0;
  for (let i = from; i < to; i++) {
    const weight = tau * cell(inverse, i);
    constant += weight * cell(rows.theta, i);
    by[ofRows[i]!]! -= weight;
    parts[rows.season[i]!]! -= weight;
  }
  return { constant, at, by, ofRows, parts, noise: part.left + tau };
}

/** Where a variety's rows begin and end in a garden. */
function rowsOfVariety({ variety, from }: GardenRows, own: number): readonly [from: number, to: number] {
  for (let k = 0; k + 1 < from.length; k++) if (variety[from[k]!] === own) return [from[k]!, from[k + 1]!];
  return [0, 0];
}

/** v + u of a variety in a garden, whether it was seen there or not. */
export function ownInGarden(given: GardensGiven, levels: GardenLevels, variety: number): OwnInGarden {
  const { constant, at, by, parts, noise } = openOwn(given, levels, variety);
  return { constant, pull: { at, by }, parts, noise };
}

/**
 * v + u of a variety in a garden, with the garden's mean level or without it, as one linear figure.
 *
 * @param share  1 with the level, 0 without
 */
export function inGarden(given: GardensGiven, levels: GardenLevels, variety: number, share: 0 | 1): LinearFigure {
  const { at, parts, ...own } = openOwn(given, levels, variety);
  const sums: Sums = { ...own, constant: own.constant + share * packedGardens(given.own).middle };
  addLevels(
    levels,
    parts.map((part) => part + share / levels.rows.seasons),
    sums,
  );
  return { constant: sums.constant, noise: sums.noise, pull: { at, by: sums.by } };
}

/** v of a variety over the club, with the mean level of its gardens where `level` gives it. */
export function inClub(given: GardensGiven, variety: number, level: LinearFigure | null): LinearFigure {
  const part = varietyPart(given, variety);
  const noise = part.left + (level?.noise ?? 0);
  if (!level) {
    const pull = { at: Int32Array.from(part.cells), by: new Float64Array(part.cells.length).fill(part.pull) };
    return { constant: 0, pull, noise };
  }
  const by = level.pull.by.slice();
  for (const i of part.cells) by[i]! += part.pull;
  return { constant: level.constant, pull: { at: level.pull.at, by }, noise };
}
