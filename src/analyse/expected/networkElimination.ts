import { choleskyFactor } from '../../numerics/cholesky.ts';
import type { LinearMap } from '../../numerics/conjugateGradients.ts';
import { cell } from '../../numerics/element.ts';
import type { GardenSpreads } from './gardenCells.ts';
import type { Network } from './networkRows.ts';

/** What a garden's rows are weighed with once the spreads are given. */
interface Weights {
  /** Of each row: 1 / (e + σ_r²). */
  readonly inverse: Float64Array;
  /** Of each variety in a garden: σ_u² / (1 + σ_u² Σ inverse), what Σ⁻¹ takes off. */
  readonly shared: Float64Array;
  /** Cholesky factors of X'Σ⁻¹X, one behind the other, and where each garden's begins. */
  readonly factors: Float64Array;
  readonly factorFrom: Int32Array;
}

export function weightsOf(network: Network, { withGarden, rest }: GardenSpreads): Weights {
  const { variance, runFrom, runsFrom, levelOf, levelsFrom } = network;
  const u2 = withGarden ** 2;
  const inverse = variance.map((own) => 1 / (own + rest * rest));
  const shared = new Float64Array(runFrom.length - 1);
  const gardens = levelsFrom.length - 1;
  const factorFrom = new Int32Array(gardens + 1);
  for (let g = 0; g < gardens; g++) factorFrom[g + 1] = factorFrom[g]! + (levelsFrom[g + 1]! - levelsFrom[g]!) ** 2;
  const factors = new Float64Array(factorFrom[gardens]!);
  for (let g = 0; g < gardens; g++) {
    const [first, size] = [levelsFrom[g]!, levelsFrom[g + 1]! - levelsFrom[g]!];
    const own = factors.subarray(factorFrom[g], factorFrom[g + 1]);
    for (let k = runsFrom[g]!; k < runsFrom[g + 1]!; k++) {
      const [from, to] = [runFrom[k]!, runFrom[k + 1]!];
      let total = 0;
      for (let i = from; i < to; i++) total += cell(inverse, i);
      shared[k] = u2 / (1 + u2 * total);
      for (let a = from; a < to; a++) {
        const row = (levelOf[a]! - first) * size - first;
        own[row + levelOf[a]!]! += cell(inverse, a);
        for (let b = from; b < to; b++) own[row + levelOf[b]!]! -= shared[k]! * cell(inverse, a) * cell(inverse, b);
      }
    }
    choleskyFactor(own, size);
  }
  return { inverse, shared, factors, factorFrom };
}

/** Σ⁻¹ of the rows of a garden, Σ = diag(e + σ_r²) + σ_u² for rows of a variety. */
function weighGarden(
  { runFrom, runsFrom }: Network,
  { inverse, shared }: Weights,
  g: number,
  x: Float64Array,
  into: Float64Array,
): void {
  for (let k = runsFrom[g]!; k < runsFrom[g + 1]!; k++) {
    const [from, to] = [runFrom[k]!, runFrom[k + 1]!];
    let sum = 0;
    for (let i = from; i < to; i++) sum += cell(inverse, i) * cell(x, i);
    sum *= cell(shared, k);
    for (let i = from; i < to; i++) into[i] = cell(inverse, i) * (cell(x, i) - sum);
  }
}

/** Solves L Lᵀ x = b in place, L and b parts of longer lists: no view of them is made, of which there would be millions. */
function solveIn(factors: Float64Array, from: number, size: number, b: Float64Array, first: number): void {
  for (let i = 0; i < size; i++) {
    let sum = cell(b, first + i);
    for (let k = 0; k < i; k++) sum -= cell(factors, from + i * size + k) * cell(b, first + k);
    b[first + i] = sum / cell(factors, from + i * size + i);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = cell(b, first + i);
    for (let k = i + 1; k < size; k++) sum -= cell(factors, from + k * size + i) * cell(b, first + k);
    b[first + i] = sum / cell(factors, from + i * size + i);
  }
}

/** Q x = Σ⁻¹(x - X c), c the garden's seasons as weighted least squares has them. */
export function openElimination(network: Network, weights: Weights): LinearMap {
  const { runFrom, runsFrom, levelOf, levelsFrom } = network;
  const { factors, factorFrom } = weights;
  const means = new Float64Array(levelsFrom.at(-1)!);
  const left = new Float64Array(levelOf.length);
  return (x, into) => {
    means.fill(0);
    for (let g = 0; g + 1 < levelsFrom.length; g++) {
      const [from, to] = [runFrom[runsFrom[g]!]!, runFrom[runsFrom[g + 1]!]!];
      const [first, size] = [levelsFrom[g]!, levelsFrom[g + 1]! - levelsFrom[g]!];
      weighGarden(network, weights, g, x, left);
      for (let i = from; i < to; i++) means[levelOf[i]!]! += cell(left, i);
      solveIn(factors, factorFrom[g]!, size, means, first);
      for (let i = from; i < to; i++) left[i] = cell(x, i) - means[levelOf[i]!]!;
      weighGarden(network, weights, g, left, into);
    }
  };
}
