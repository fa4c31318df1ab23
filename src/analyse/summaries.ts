import type { Day } from '../terms/day.ts';
import { isOfClub } from '../terms/gardens.ts';
import { pickingsOf } from '../terms/record.ts';
import { yieldUnitsOf } from '../terms/ofVariety.ts';
import { onceEach, oncePer } from '../terms/once.ts';
import type { Planting, Season, Trial, Variety } from '../terms/trial.ts';
import type { MarkedValue } from './expected/values.ts';
import type { PlantModel } from './plantTypes.ts';
import type { SeasonSeen } from './seen.ts';
import { ratingModel } from './traitsSeen.ts';

/** What each unit of a variety yielded, g a plant, as it is drawn; none of a club, whose units are members' gardens. */
export function drawnYields(seen: Pick<SeasonSeen, 'season' | 'yields'>, variety: string): readonly number[] {
  if (isOfClub(seen.season)) return [];
  return yieldUnitsOf(seen, variety).flatMap(({ id, plants }) => {
    const grams = seen.yields.get(id)?.grams ?? null;
    return grams === null ? [] : [grams / plants];
  });
}

const plantsIn = (units: readonly Planting[]): number => units.reduce((sum, { plants }) => sum + plants, 0);

/** Unusable fruit of a variety: fruits and grams a plant; null where nobody recorded any. */
export function cullsOf(
  seen: SeasonSeen,
  variety: string,
): { readonly fruits: number; readonly weight: number } | null {
  const units = yieldUnitsOf(seen, variety);
  if (!units.some((unit) => pickingsOf(unit).some(({ hasCulls }) => hasCulls))) return null;
  const plants = plantsIn(units);
  const total = (of: (id: string) => number): number => units.reduce((sum, unit) => sum + of(unit.id), 0) / plants;
  return {
    fruits: total((id) => seen.yields.get(id)?.cullFruits ?? 0),
    weight: total((id) => seen.yields.get(id)?.cullGrams ?? 0),
  };
}

interface DayGrams {
  readonly day: Day;
  readonly grams: number;
}

const daysOf = oncePer((seen: SeasonSeen) => onceEach((variety: string) => addedByDay(seen, variety)));

/** Weight picked of a variety on each day, g a plant, in order of days; empty where nothing was weighed. */
export const gramsByDay = (seen: SeasonSeen, variety: string): readonly DayGrams[] => daysOf(seen)(variety);

function addedByDay(seen: SeasonSeen, variety: string): readonly DayGrams[] {
  // Of a club the days of those few members who write them down are no curve of all.
  if (isOfClub(seen.season)) return [];
  const units = yieldUnitsOf(seen, variety);
  const plants = plantsIn(units);
  const byDay = new Map<Day, number>();
  let isCounted = false;
  for (const unit of units)
    for (const { day, ripe, green } of pickingsOf(unit)) {
      isCounted ||= ripe.fruits + green.fruits > 0;
      if (day !== null) byDay.set(day, (byDay.get(day) ?? 0) + ripe.grams + green.grams);
    }
  const weighed = [...byDay.values()].reduce((sum, grams) => sum + grams, 0);
  // What was counted and never weighed has no curve of its weight.
  if (plants === 0 || (weighed === 0 && isCounted)) return [];
  return [...byDay].toSorted(([a], [b]) => a - b).map(([day, grams]) => ({ day, grams: grams / plants }));
}

/** A night below it stops peppers and tomatoes from setting fruit. Common practice, no source. */
export const COLD_NIGHT_C = 10;

/** The weather of a season: days recorded, mean temperature in °C, cold nights, rain in mm; null without a record. */
export function weatherOf({ weather }: Season): {
  readonly days: number;
  readonly meanC: number;
  readonly coldNights: number;
  readonly rainMm: number;
} | null {
  if (weather.length === 0) return null;
  const days = weather.length;
  return {
    days,
    meanC: weather.reduce((sum, day) => sum + (day.tminC + day.tmaxC) / 2, 0) / days,
    coldNights: weather.filter((day) => day.tminC < COLD_NIGHT_C).length,
    rainMm: weather.reduce((sum, day) => sum + (day.rainMm ?? 0), 0),
  };
}

/** Mean of the estimates of some varieties, each counting once; null without one. */
export function meanOfEstimates({ estimates }: PlantModel, varieties: readonly string[]): number | null {
  const values = varieties.map((id) => estimates.get(id)?.estimate ?? null).filter((value) => value !== null);
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/**
 * A variety's own mean over its seasons, weighted as they are sure (inverse variances), working scale; null without a season.
 */
export function ownMean(values: readonly MarkedValue[]): number | null {
  if (values.length === 0) return null;
  const weights = values.reduce((sum, { variance }) => sum + 1 / variance, 0);
  return values.reduce((sum, { theta, variance }) => sum + theta / variance, 0) / weights;
}

/** From so many Scoville heat units on a fruit is hot: common practice, no source (lists of types begin jalapeños there). */
const HOT_SHU = 2500;
/** A mean score of heat beyond this part of its scale is hot. Common practice, no source. */
const HOT_PART = 0.3;

/** True for a variety that burns: by what its packet claims, or by what tasters scored in any season. */
export function isHot(variety: Variety, seasons: readonly SeasonSeen[], { settings }: Trial): boolean {
  if ((variety.claimHeat ?? []).some((claim) => claim !== null && claim >= HOT_SHU)) return true;
  const heat = settings.traits.get('heat');
  if (heat?.kind !== 'rating') return false;
  return seasons.some((seen) => {
    const estimate = ratingModel(seen, 'heat')?.estimates.get(variety.id)?.estimate ?? null;
    return estimate !== null && estimate > heat.from + HOT_PART * (heat.to - heat.from);
  });
}
