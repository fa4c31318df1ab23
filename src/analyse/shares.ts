import { isOfClub } from '../terms/gardens.ts';
import type { Settings } from '../terms/settings.ts';
import type { Share } from '../terms/estimate.ts';
import { plantingsOf, yieldUnitsOf } from '../terms/ofVariety.ts';
import type { Season, SeedBatch } from '../terms/trial.ts';
import { wilsonInterval } from '../numerics/wilson.ts';
import type { Ripening } from './ripening.ts';
import type { PlantingYield } from './yield.ts';
import { given, keyed } from '../numerics/element.ts';

/** What was worked out, and sown, of a season or of one variety in it. */
interface SharesBasis {
  readonly yields: ReadonlyMap<string, PlantingYield>;
  /** Of the variety. */
  readonly ripening: readonly Ripening[];
  readonly batches: readonly SeedBatch[];
}

export type ShareKey = 'germinated' | 'cropped' | 'ripe_by_end' | 'off_type' | 'hot';

function shareOf(k: number, n: number, level: number): Share | null {
  if (n === 0) return null;
  const [low, high] = wilsonInterval(k, n, level);
  return { k, n, low, high };
}

/**
 * Shares of a variety in a season, k of n with Wilson intervals. For `cropped` and `ripe_by_end` only plantings of one
 * plant count, since of a group it is not known how many of its plants cropped.
 *
 * @param settings  its interval, such as 0.95, and how many gardens of a club stand behind a figure
 * @source methods page A4; Wilson (1927) JASA 22:209
 */
export function varietyShares(
  variety: string,
  season: Season,
  { yields, ripening, batches }: SharesBasis,
  { interval: level, gardens: { least } }: Pick<Settings, 'interval' | 'gardens'>,
): Readonly<Partial<Record<ShareKey, Share>>> {
  // In a club the variety in a garden is the unit, however many plants it has there.
  const isCounted = ({ plants }: { readonly plants: number }): boolean => plants === 1 || isOfClub(season);
  const single = yieldUnitsOf({ season }, variety).filter(isCounted);
  const known = single.filter((unit) => yields.has(unit.id));
  const cropped = known.filter(
    (unit) => (keyed(yields, unit.id).fruits ?? 0) > 0 || (keyed(yields, unit.id).grams ?? 0) > 0,
  );
  const watched = ripening.filter(({ unit }) => isCounted(unit) && unit.cause !== 'accident');
  const counted = (event: string): readonly [number, number] => {
    const events = plantingsOf(season, variety).flatMap((planting) => planting.events);
    const own = events.filter((one) => one.event === event && one.count !== null && one.of !== null);
    return [own.reduce((sum, one) => sum + given(one.count), 0), own.reduce((sum, one) => sum + given(one.of), 0)];
  };
  const all: readonly (readonly [ShareKey, number, number])[] = [
    [
      'germinated',
      batches.reduce((sum, { germinated }) => sum + germinated, 0),
      batches.reduce((sum, { seeds }) => sum + seeds, 0),
    ],
    ['cropped', cropped.length, known.length],
    ['ripe_by_end', watched.filter(({ ripe }) => ripe !== null).length, watched.length],
    ['off_type', ...counted('off-type')],
    ['hot', ...counted('hot')],
  ];
  const shares: Partial<Record<ShareKey, Share>> = {};
  for (const [key, k, n] of all) {
    const share = shareOf(k, n, level);
    // Of few gardens each could be known by it.
    const isTold = !isOfClub(season) || n >= least || key === 'germinated';
    if (share && isTold) shares[key] = share;
  }
  return shares;
}
