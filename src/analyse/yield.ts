import { isTooManyUnweighed, pickingsOf, pickRecord, totalsOf } from '../terms/record.ts';
import type { Picked } from '../terms/picked.ts';
import type { Planting, Season } from '../terms/trial.ts';

/** Yield of a planting over the season, whole planting. */
export interface PlantingYield {
  /** Usable grams, ripe and green; null where it is not known. */
  readonly grams: number | null;
  /** Usable fruits, ripe and green; null where it is not known. */
  readonly fruits: number | null;
  /** Usable grams up to the day `early_until` of the season; null without one, or where rows have no date. */
  readonly earlyGrams: number | null;
  readonly ripeGrams: number | null;
  readonly greenGrams: number | null;
  readonly cullFruits: number;
  readonly cullGrams: number;
  /** Fruits whose weight was taken from the mean fruit weight. */
  readonly fruitsWeightAssumed: number;
}

function usable(planting: Planting): readonly Picked[] {
  return pickingsOf(planting).flatMap(({ ripe, green }) => [ripe, green]);
}

/** Mean weight of the fruits that were both counted and weighed; null where there is none. */
function meanFruitGrams(picked: readonly Picked[]): number | null {
  let grams = 0;
  let fruits = 0;
  for (const own of picked) {
    grams += own.grams - own.gramsUncounted;
    fruits += own.fruits - own.fruitsUnweighed;
  }
  return fruits > 0 ? grams / fruits : null;
}

/**
 * Yield of every unit of a season.
 *
 * @param season  the season
 * @returns       by unit id; units of which nothing is known are absent
 */
export function seasonYields(season: Season): ReadonlyMap<string, PlantingYield> {
  const yields = new Map<string, PlantingYield>();
  for (const unit of season.yieldUnits) {
    if (totalsOf(unit) ? pickingsOf(unit).length === 0 : !season.hasHarvests) continue;
    if (pickRecord(unit, season) === 'not-recorded') continue;
    yields.set(unit.id, yieldOf(unit, season.earlyUntil));
  }
  return yields;
}

function yieldOf(unit: Planting, earlyUntil: number | null): PlantingYield {
  const pickings = pickingsOf(unit);
  const picked = usable(unit);
  const sum = (of: (own: Picked) => number): number => picked.reduce((total, own) => total + of(own), 0);
  const fruits = sum((own) => own.fruits);
  const unweighed = sum((own) => own.fruitsUnweighed);
  const each = meanFruitGrams(picked);
  const isOpen = picked.some((own) => own.gramsOpen > 0);
  const weightKnown = !isOpen && (unweighed === 0 || (!isTooManyUnweighed(unweighed, fruits) && each !== null));
  const weigh = (own: Picked): number => own.grams + own.fruitsUnweighed * (each ?? 0);
  const ripe = pickings.reduce((total, day) => total + weigh(day.ripe), 0);
  const green = pickings.reduce((total, day) => total + weigh(day.green), 0);
  const isDated = earlyUntil !== null && pickings.every(({ day }) => day !== null);
  const early = pickings.filter(({ day }) => day !== null && earlyUntil !== null && day <= earlyUntil);
  const culls = pickings.filter(({ hasCulls }) => hasCulls);
  return {
    grams: weightKnown ? ripe + green : null,
    fruits: picked.some((own) => own.gramsUncounted > 0 || own.fruitsOpen > 0) ? null : fruits,
    earlyGrams:
      weightKnown && isDated ? early.reduce((total, day) => total + weigh(day.ripe) + weigh(day.green), 0) : null,
    ripeGrams: weightKnown ? ripe : null,
    greenGrams: weightKnown ? green : null,
    cullFruits: culls.reduce((total, { cullFruits }) => total + cullFruits, 0),
    cullGrams: culls.reduce((total, { cullGrams }) => total + cullGrams, 0),
    fruitsWeightAssumed: weightKnown ? unweighed : 0,
  };
}
