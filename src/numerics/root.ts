import { notConverged } from './notConverged.ts';

/**
 * Root of a continuous function between two points of opposite sign.
 *
 * @param f   function
 * @param lo  left end
 * @param hi  right end, f(lo)·f(hi) ≤ 0
 * @returns   x with f(x) = 0 to about the spacing of doubles
 * @throws RangeError if the ends have the same sign
 * @source Brent (1973), Algorithms for minimization without derivatives, ch. 4
 */
export function findRoot(f: (x: number) => number, lo: number, hi: number, tolerance = 0): number {
  let a = lo;
  let b = hi;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (Number.isNaN(fa) || Number.isNaN(fb)) throw new RangeError(`no value at ${lo} or ${hi}`);
  if (fa > 0 === fb > 0) throw new RangeError(`no change of sign between ${lo} and ${hi}`);
  let c = a;
  let fc = fa;
  let step = b - a;
  let previous = step;
  for (let i = 0; i < 500; i++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const limit = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const middle = (c - b) / 2;
    if (Math.abs(middle) <= limit || fb === 0) return b;
    const next = interpolate({ a, b, c, fa, fb, fc, middle, limit, previous });
    previous = next === null ? middle : step;
    step = next ?? middle;
    a = b;
    fa = fb;
    b += Math.abs(step) > limit ? step : Math.sign(middle) * limit;
    fb = f(b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      previous = step = b - a;
    }
  }
  return notConverged('the search for a root');
}

interface Bracket {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fa: number;
  readonly fb: number;
  readonly fc: number;
  readonly middle: number;
  readonly limit: number;
  readonly previous: number;
}

/** Secant or inverse quadratic step, or null where bisection is safer. */
function interpolate({ a, b, c, fa, fb, fc, middle, limit, previous }: Bracket): number | null {
  if (Math.abs(previous) < limit || Math.abs(fa) <= Math.abs(fb)) return null;
  const s = fb / fa;
  let p: number;
  let q: number;
  if (a === c) {
    p = 2 * middle * s;
    q = 1 - s;
  } else {
    const r = fb / fc;
    const t = fa / fc;
    p = s * (2 * middle * t * (t - r) - (b - a) * (r - 1));
    q = (t - 1) * (r - 1) * (s - 1);
  }
  if (p > 0) q = -q;
  else p = -p;
  const accepted = 2 * p < Math.min(3 * middle * q - Math.abs(limit * q), Math.abs(previous * q));
  return accepted ? p / q : null;
}

/**
 * Root of a function that decreases through zero, the bracket found by doubling outward.
 *
 * @param f      decreasing function
 * @param start  a positive place to begin
 */
export function findDecreasingRoot(f: (x: number) => number, start: number): number {
  let lo = start;
  let hi = start;
  if (f(start) > 0) {
    do {
      lo = hi;
      hi *= 2;
    } while (f(hi) > 0 && hi < 1e300);
    // A function that never falls to zero has no root to be found.
    if (hi >= 1e300) notConverged('the bracket of a root');
  } else {
    do {
      hi = lo;
      lo /= 2;
    } while (f(lo) < 0 && lo > 1e-300);
    if (lo <= 1e-300) notConverged('the bracket of a root');
  }
  return findRoot(f, lo, hi);
}
