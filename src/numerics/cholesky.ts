import { cell } from './element.ts';

/** Lower triangle L of a symmetric positive definite matrix A = L Lᵀ, row by row. */
export type Cholesky = Float64Array;

/**
 * Cholesky factor.
 *
 * @param a     symmetric positive definite matrix, size × size, row by row; overwritten by its factor
 * @param size  number of rows
 * @returns     the factor, or null if the matrix is not positive definite
 * @source Golub & Van Loan (2013) Matrix Computations, §4.2
 */
export function choleskyFactor(a: Float64Array, size: number): Cholesky | null {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = cell(a, i * size + j);
      for (let k = 0; k < j; k++) sum -= cell(a, i * size + k) * cell(a, j * size + k);
      if (i === j) {
        if (!(sum > 0)) return null;
        a[i * size + i] = Math.sqrt(sum);
      } else {
        a[i * size + j] = sum / cell(a, j * size + j);
        a[j * size + i] = 0;
      }
    }
  }
  return a;
}

/**
 * Solves L x = b in place.
 *
 * @param l     lower triangle of size × size, row by row
 * @param b     right side of length size; holds x afterwards, and is returned
 */
export function solveLower(l: Cholesky, size: number, b: Float64Array): Float64Array {
  for (let i = 0; i < size; i++) {
    let sum = cell(b, i);
    for (let k = 0; k < i; k++) sum -= l[i * size + k]! * cell(b, k);
    b[i] = sum / l[i * size + i]!;
  }
  return b;
}

/**
 * Solves Lᵀ x = b in place.
 *
 * @param l     lower triangle of size × size, row by row
 * @param b     right side of length size; holds x afterwards, and is returned
 */
export function solveUpper(l: Cholesky, size: number, b: Float64Array): Float64Array {
  for (let i = size - 1; i >= 0; i--) {
    let sum = cell(b, i);
    for (let k = i + 1; k < size; k++) sum -= l[k * size + i]! * cell(b, k);
    b[i] = sum / l[i * size + i]!;
  }
  return b;
}
