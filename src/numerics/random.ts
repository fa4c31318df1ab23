import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { normalQuantile } from './normal.ts';

/** A stream of random numbers that its name alone decides. */
export interface RandomStream {
  /** Uniform on (0, 1), never at an end. */
  readonly uniform: () => number;
  /** Standard normal, one uniform each, so that the same uniforms give the same normals. */
  readonly normal: () => number;
}

/** Seed of a name: FNV-1a, 32 bits. */
export function hashOf(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h;
}

/**
 * Opens the stream of a name: the same numbers on every machine, whatever else is drawn beside it.
 *
 * @param name  any text, such as `1/sweet/yield/p12`
 */
export function randomStream(name: string): RandomStream {
  const generator = xoroshiro128plus(hashOf(name));
  const uniform = (): number => {
    const u = uniformFloat64(generator);
    return u > 0 ? u : 2 ** -54;
  };
  return { uniform, normal: () => normalQuantile(uniform()) };
}
