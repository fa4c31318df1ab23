import { shownValue } from '../terms/scales.ts';
import type { WorkingScale } from '../terms/scales.ts';
import type { Better, Limit } from '../terms/traits.ts';

/** From where to where a trait's points run, shown unit; a pair is left and right of the best. */
export interface PointRange {
  readonly good: Limit;
  readonly bad: Limit;
}

interface RangeBasis {
  readonly better: Better;
  readonly scale: WorkingScale;
  readonly ends: readonly [number, number] | null;
  /** Posterior mean of the class mean and of σ_v, working scale. */
  readonly classMean: number;
  readonly between: number;
}

/**
 * Range of a trait's points: as given, else the class mean less and plus two standard deviations between varieties,
 * so that every trait has the same room and the weights weigh what they say.
 *
 * @source methods page C; Derringer & Suich (1980) J. Qual. Technol. 12:214 for straight-line desirability
 */
export function pointRange(
  given: { readonly good: Limit | null; readonly bad: Limit | null },
  basis: RangeBasis,
): PointRange {
  const { better, classMean, between } = basis;
  const at = (steps: number): number => shownValue(basis, classMean + steps * between);
  const [low, high] = [at(-2), at(2)];
  if (better === 'between') {
    const good = typeof given.good === 'number' ? ([given.good, given.good] as const) : (given.good ?? [at(-1), at(1)]);
    const bad = typeof given.bad === 'number' ? null : given.bad;
    return {
      good,
      bad: bad ?? [Math.min(low, good[0] - (high - low) / 2), Math.max(high, good[1] + (high - low) / 2)],
    };
  }
  const [good, bad] = better === 'lower' ? [low, high] : [high, low];
  return { good: given.good ?? good, bad: given.bad ?? bad };
}

/** Ends and edges of a range in order: points rise from `left` to `low` and fall from `high` to `right`. */
export interface Slopes {
  readonly left: number;
  readonly low: number;
  readonly high: number;
  readonly right: number;
}

/** A range as slopes; on the side that is good without end, both ends are endless. */
export function slopesOf({ good, bad }: PointRange): Slopes {
  const [low, high] = typeof good === 'number' ? [good, good] : good;
  if (typeof good === 'number' && typeof bad === 'number' && good !== bad)
    return bad > good
      ? { left: -Infinity, low: -Infinity, high, right: bad }
      : { left: bad, low, high: Infinity, right: Infinity };
  const [left, right] = typeof bad === 'number' ? [bad, bad] : bad;
  return { left, low, high, right };
}

/** Points between an end and an edge; where both are one, what lies beyond it has half. */
const part = (value: number, bad: number, good: number): number =>
  good === bad ? 50 : 100 * Math.min(1, Math.max(0, (value - bad) / (good - bad)));

/**
 * Points of a value, 0 to 100: straight from bad to good, flat outside; between two edges, from the edges inwards.
 *
 * @param value  natural scale of the trait
 * @source methods page C
 */
export function pointsAlong({ left, low, high, right }: Slopes, value: number): number {
  if (value < low) return part(value, left, low);
  return value > high ? part(value, right, high) : 100;
}

/** The same of a range. */
export function pointsOf(range: PointRange, value: number): number {
  return pointsAlong(slopesOf(range), value);
}

/** Outermost values of a range: beyond them points are cut off. */
export function extentOf({ good, bad }: PointRange): readonly [number, number] {
  const all = [good, bad].flat();
  return [Math.min(...all), Math.max(...all)];
}
