import { cell } from './element.ts';

/** Thin QR factors: columns of `q` are orthonormal, `r` is upper triangular, stored by columns. */
export interface OrthogonalFactors {
  readonly q: readonly Float64Array[];
  readonly r: readonly Float64Array[];
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += cell(a, i) * cell(b, i);
  return sum;
}

/**
 * QR factors of a matrix given by columns, by modified Gram-Schmidt with one repetition.
 *
 * @param columns  p columns of n numbers
 * @returns        q and r with columns = q·r
 * @throws RangeError if a column depends on the ones before it (relative size below 1e-10)
 * @source Björck (1996), Numerical Methods for Least Squares Problems, §2.4
 */
export function orthogonalise(columns: readonly Float64Array[]): OrthogonalFactors {
  const q: Float64Array[] = [];
  const spans: (readonly [from: number, to: number])[] = [];
  const r: Float64Array[] = [];
  for (const column of columns) {
    const v = Float64Array.from(column);
    const coefficients = new Float64Array(q.length + 1);
    const size = Math.sqrt(dot(v, v));
    for (let pass = 0; pass < 2; pass++) {
      for (let j = 0; j < q.length; j++) {
        // Beyond its first and last entry a column is 0: one of a group among many is short.
        const own = q[j]!;
        const [from, to] = spans[j]!;
        let part = 0;
        for (let i = from; i < to; i++) part += cell(own, i) * cell(v, i);
        if (part === 0) continue;
        coefficients[j]! += part;
        for (let i = from; i < to; i++) v[i]! -= part * cell(own, i);
      }
    }
    const rest = Math.sqrt(dot(v, v));
    if (!(rest > 1e-10 * size)) throw new RangeError('the columns are not independent');
    coefficients[q.length] = rest;
    q.push(v.map((x) => x / rest));
    spans.push([v.findIndex((x) => x !== 0), v.findLastIndex((x) => x !== 0) + 1]);
    r.push(coefficients);
  }
  return { q, r };
}

/**
 * Solution of r·x = b for an upper triangular r stored by columns.
 *
 * @param r  columns of length n; no element of its diagonal is 0
 * @param b  right side of length n; left as it is
 */
export function backSubstitute(r: readonly Float64Array[], b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (let j = r.length - 1; j >= 0; j--) {
    x[j]! /= cell(r[j]!, j);
    for (let i = 0; i < j; i++) x[i]! -= cell(r[j]!, i) * cell(x, j);
  }
  return x;
}
