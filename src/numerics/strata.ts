import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { cell } from './element.ts';
import { normalQuantile } from './normal.ts';
import { hashOf } from './random.ts';

/** A stream of random numbers that come in full sets: one of each of as many equally likely strata, in random order. */
export interface Strata {
  /** Fills with numbers on (0, 1). */
  readonly uniforms: (into: Float64Array) => void;
  /** Fills with standard normals. */
  readonly normals: (into: Float64Array) => void;
}

/** So many places on (0, 1), or a few more, that a number can have: a normal's variance is short by 1e-4. */
const PLACES = 10_000;

/** Normals of all places, by how many there are. */
const quantiles = new Map<number, Float64Array>();

function quantilesOf(places: number): Float64Array {
  const known = quantiles.get(places);
  if (known) return known;
  const made = new Float64Array(places);
  for (let i = 0; 2 * i < places; i++) {
    const z = normalQuantile((i + 0.5) / places);
    made[i] = z;
    made[places - 1 - i] = -z;
  }
  if (places % 2 === 1) made[(places - 1) / 2] = 0;
  quantiles.set(places, made);
  return made;
}

/**
 * Opens the stream of a name: the same numbers on every machine, whatever else is drawn beside it. A mean over such sets
 * errs only by what several streams do together, not by what one does alone.
 *
 * @param name  any text, such as `1/sweet/yield/p12`
 * @source McKay, Beckman & Conover (1979) Technometrics 21:239 (Latin hypercube); Stein (1987) Technometrics 29:143
 */
export function openStrata(name: string): Strata {
  const generator = xoroshiro128plus(hashOf(name));
  /** A whole number from 0 up to below n. */
  const below = (n: number): number => Math.floor(((generator.next() >>> 0) / 2 ** 32) * n);
  let order = new Int32Array(0);
  /** Puts the strata in a new order; returns the place within a stratum, of so many, that all have this time. */
  const shuffle = (size: number, each: number): number => {
    if (order.length !== size) order = Int32Array.from({ length: size }, (_, i) => i);
    for (let i = size - 1; i > 0; i--) {
      const k = below(i + 1);
      [order[i], order[k]] = [order[k]!, order[i]!];
    }
    return below(each);
  };
  return {
    uniforms(into) {
      const each = Math.ceil(PLACES / into.length);
      const at = shuffle(into.length, each);
      for (let i = 0; i < into.length; i++) into[i] = (order[i]! * each + at + 0.5) / (into.length * each);
    },
    normals(into) {
      const each = Math.ceil(PLACES / into.length);
      const table = quantilesOf(into.length * each);
      const at = shuffle(into.length, each);
      for (let i = 0; i < into.length; i++) into[i] = cell(table, order[i]! * each + at);
    },
  };
}
