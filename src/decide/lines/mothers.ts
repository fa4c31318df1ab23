import type { CrossSpread } from '../../analyse/lines/crossSpread.ts';
import type { InheritedDraws } from '../../analyse/lines/inherited.ts';
import { nth } from '../../numerics/element.ts';
import { randomStream } from '../../numerics/random.ts';
import type { GoalRange } from '../adviseClass.ts';

/** Draws of the inherited values of the plants in a measured goal. */
export interface GoalDraws {
  readonly goal: GoalRange;
  readonly spread: CrossSpread;
  /** Plants in the order of the draws. */
  readonly ids: readonly string[];
  readonly draws: InheritedDraws;
}

const SPLIT_DRAWS = 2000;

/**
 * Value of the plant that is finally chosen among the offspring of the first so many mothers, in one measured goal.
 *
 * @param order    plantings, best first
 * @param mothers  how many of them
 * @param plants   offspring of all of them together
 * @returns        working scale, above the mean of the mothers' family; the higher the better
 * @source methods page L7
 */
export function chosenValue(
  { goal, ids, draws }: GoalDraws,
  order: readonly string[],
  mothers: number,
  plants: number,
): number {
  const { normal } = randomStream(`mothers/${goal.trait}/${mothers}`);
  const { good, bad } = goal.range;
  const side = typeof good === 'number' && typeof bad === 'number' && good < bad ? -1 : 1;
  const each = Math.max(1, Math.floor(plants / mothers));
  const at = order.slice(0, mothers).map((id) => ids.indexOf(id));
  let sum = 0;
  const rows = Math.min(SPLIT_DRAWS, draws.deviations.length);
  for (let d = 0; d < rows; d++) {
    // Half of the inherited variance parts sisters of the next generation.
    const within = Math.sqrt(nth(draws.inherited, d) / 2);
    const rest = Math.sqrt(nth(draws.rest, d));
    let [seen, value] = [-Infinity, 0];
    for (const mother of at) {
      if (mother < 0) continue;
      for (let i = 0; i < each; i++) {
        const own = side * nth(nth(draws.deviations, d), mother) + within * normal();
        const shown = own + rest * normal();
        if (shown > seen) [seen, value] = [shown, own];
      }
    }
    sum += value;
  }
  return sum / rows;
}
