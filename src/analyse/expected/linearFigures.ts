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

/** Sums by cell while a figure is put together. */
export type PullSums = Map<number, number>;

export function addTo(sums: PullSums, at: number, by: number): void {
  sums.set(at, (sums.get(at) ?? 0) + by);
}

/** The sums in order of their cells. */
export function pullOf(sums: PullSums): Pull {
  const at = Int32Array.from(sums.keys()).toSorted();
  return { at, by: Float64Array.from(at, (i) => sums.get(i)!) };
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
  pull.at.forEach((i, k) => (half[i] = cell(pull.by, k)));
  return { mean, variance: solveLower(errors.factor, size, half).reduce((sum, own) => sum + own * own, noise) };
}
