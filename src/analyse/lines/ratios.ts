import { multinomialP } from '../../numerics/multinomial.ts';

/** A ratio in the order of the states: 3:1 where the first is the commoner. */
export interface Ratio {
  readonly name: string;
  readonly parts: readonly number[];
  readonly p: number;
}

const RATIOS: readonly (readonly number[])[] = [
  [3, 1],
  [9, 7],
  [13, 3],
  [15, 1],
  [1, 1],
  [1, 2, 1],
  [9, 3, 4],
  [12, 3, 1],
  [9, 6, 1],
  [9, 3, 3, 1],
];

/** All orders of some items. */
export function orders<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length < 2) return [items];
  return items.flatMap((own, i) => orders(items.filter((_, j) => j !== i)).map((rest) => [own, ...rest]));
}

/** A ratio stays while its P-value is at least so. */
const NOT_RULED_OUT = 0.05;

/**
 * The ratios of one selfed family that its counts do not rule out, the likeliest first.
 *
 * @param counts   plants of each of two to four states
 * @param isGiven  whether a ratio, its parts in the order of the states, is possible with what is known of F1 and parents
 * @source reference case o30
 */
export function ratiosNotRuledOut(
  counts: readonly number[],
  isGiven: (parts: readonly number[]) => boolean = () => true,
): readonly Ratio[] {
  const named = new Map<string, readonly number[]>();
  for (const parts of RATIOS.filter((own) => own.length === counts.length))
    for (const own of orders(parts)) named.set(own.join(':'), own);
  return [...named]
    .filter(([, parts]) => isGiven(parts))
    .flatMap(([name, parts]) => {
      const p = multinomialP(counts, parts);
      return p !== null && p >= NOT_RULED_OUT ? [{ name, parts, p }] : [];
    })
    .toSorted((a, b) => b.p - a.p);
}
