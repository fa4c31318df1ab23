import { solveLower } from '../../numerics/cholesky.ts';
import type { Cholesky } from '../../numerics/cholesky.ts';
import { cell } from '../../numerics/element.ts';

/** What some cells of variety × season are multiplied by, in order of cells. */
export interface Pull {
  readonly at: Int32Array;
  readonly by: Float64Array;
}

/** A normal figure that is linear in the cells: constant + pull'b + noise. */
export interface LinearFigure {
  readonly constant: number;
  readonly pull: Pull;
  readonly noise: number;
}

/**
 * Cells of two lists in order, each once.
 *
 * @param rows    in order, as the others are
 * @returns       the cells, and where among them those of each list stand
 */
export function joinedCells(rows: Int32Array, others: readonly number[]) {
  const at = new Int32Array(rows.length + others.length);
  const [ofRows, ofOthers] = [new Int32Array(rows.length), new Int32Array(others.length)];
  let [i, k, size] = [0, 0, 0];
  while (i < rows.length || k < others.length) {
    const [row, other] = [rows[i] ?? Infinity, others[k] ?? Infinity];
    at[size] = Math.min(row, other);
    if (row <= other) ofRows[i++] = size;
    if (other <= row) ofOthers[k++] = size;
    size++;
  }
  return { at: at.subarray(0, size), ofRows, ofOthers };
}

/** Every number of a vector of cells. */
export const wholePull = (by: Float64Array): Pull => ({ at: Int32Array.from(by, (_, i) => i), by });

/** Cells times what pulls them, added to a number. */
export function pulledBy({ at, by }: Pull, cells: Float64Array, constant: number): number {
  let total = constant;
  for (let k = 0; k < at.length; k++) total += cell(by, k) * cell(cells, at[k]!);
  return total;
}

/** How surely cells are known: by the factor of their precision, or, where they are too many for one, by draws of their errors. */
export type CellErrors =
  | { readonly kind: 'factor'; readonly factor: Cholesky }
  | { readonly kind: 'draws'; readonly draws: readonly Float64Array[] };

/** Mean and variance of a linear figure. */
export function momentsOf(
  { means, errors }: { readonly means: Float64Array; readonly errors: CellErrors },
  { constant, pull, noise }: LinearFigure,
) {
  const mean = pulledBy(pull, means, constant);
  if (errors.kind === 'draws') {
    const squares = errors.draws.reduce((sum, draw) => sum + pulledBy(pull, draw, 0) ** 2, 0);
    return { mean, variance: noise + squares / errors.draws.length };
  }
  const size = means.length;
  const half = new Float64Array(size);
  for (let k = 0; k < pull.at.length; k++) half[pull.at[k]!] = cell(pull.by, k);
  solveLower(errors.factor, size, half);
  let variance = noise;
  for (let i = 0; i < size; i++) variance += cell(half, i) ** 2;
  return { mean, variance };
}
