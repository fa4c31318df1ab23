import type { LotOutlook } from '../../analyse/seed/seedLots.ts';
import type { SowingDates } from '../../analyse/seed/sowing.ts';
import type { Writing } from '../numbers.ts';
import { of100 } from './crossWords.ts';

/** What is told of seed: lots, and when to sow. */
export interface SeedContent {
  readonly lots: readonly LotOutlook[];
  readonly dates: readonly SowingDates[];
}

/** The cells of a lot, in the order of the table's head. */
export function lotCells(
  { lot, variety, age, left, tested, expected, plants, seeds, act }: LotOutlook,
  writing: Writing,
): readonly string[] {
  const { seed: say } = writing.words.lines;
  const from = lot.from.map(({ season, planting }) => `${season}/${planting}`).join(', ');
  return [
    lot.id,
    variety?.name ?? from,
    say.act[act],
    act === 'gone' ? '' : seeds === null ? say.tooMany(String(plants)) : say.seedsFor(String(seeds), String(plants)),
    left === null ? '' : writing.number(left, 0),
    age === null ? say.noAge : say.age(writing.number(age, 1)),
    tested
      ? say.up(
          String(tested.k),
          String(tested.n),
          say.between(String(Math.round(100 * tested.low)), String(Math.round(100 * tested.high))),
        )
      : say.notTested,
    act === 'gone' ? '' : `${of100(expected.mean)} % (${say.between(of100(expected.low), of100(expected.high))})`,
  ];
}

/** Lots that fall short: to test, to save or to buy. */
export const fallShort = ({ lots }: SeedContent): readonly LotOutlook[] =>
  lots.filter(({ act }) => act === 'test' || act === 'save');
