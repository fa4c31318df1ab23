import { cell } from './element.ts';
import { notConverged } from './notConverged.ts';

/** Takes a vector, which it leaves as it is, to another one. */
export type LinearMap = (x: Float64Array, into: Float64Array) => void;

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += cell(a, i) * cell(b, i);
  return sum;
}

const MOST_ROUNDS = 2000;

/**
 * Solves A x = b for a symmetric positive definite A that is known by its products alone.
 *
 * @param product       x → A x
 * @param precondition  x → M⁻¹ x, with M close to A and easily solved
 * @param right         b
 * @param tolerance     length of what is left of b, in parts of b, both as M⁻¹ measures them
 * @throws NotConverged after 2,000 rounds
 * @source Hestenes & Stiefel (1952) J. Res. Natl. Bur. Stand. 49:409; Golub & Van Loan (2013) Matrix Computations, §11.5
 */
export function conjugateGradients(
  product: LinearMap,
  precondition: LinearMap,
  right: Float64Array,
  tolerance: number,
): Float64Array {
  const size = right.length;
  const found = new Float64Array(size);
  const left = right.slice();
  const [eased, moved] = [new Float64Array(size), new Float64Array(size)];
  precondition(left, eased);
  const way = eased.slice();
  let length = dot(left, eased);
  const enough = tolerance * tolerance * length;
  for (let round = 0; length > enough; round++) {
    if (round === MOST_ROUNDS) return notConverged('conjugate gradients');
    product(way, moved);
    const step = length / dot(way, moved);
    for (let i = 0; i < size; i++) {
      found[i]! += step * cell(way, i);
      left[i]! -= step * cell(moved, i);
    }
    precondition(left, eased);
    const next = dot(left, eased);
    for (let i = 0; i < size; i++) way[i] = cell(eased, i) + (next / length) * cell(way, i);
    length = next;
  }
  return found;
}
