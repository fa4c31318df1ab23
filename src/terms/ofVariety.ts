import { grouped } from './groups.ts';
import type { Planting, Season } from './trial.ts';

const byVariety = new WeakMap<Season, ReadonlyMap<string, readonly Planting[]>>();
const unitsByVariety = new WeakMap<Season, ReadonlyMap<string, readonly Planting[]>>();
const NO_PLANTINGS: readonly Planting[] = [];

/** Plantings of a variety in a season, in the order of the table; a season is looked through once for all varieties. */
export function plantingsOf(season: Season, variety: string): readonly Planting[] {
  const known = byVariety.get(season) ?? grouped(season.plantings, ({ variety: own }) => own);
  byVariety.set(season, known);
  return known.get(variety) ?? NO_PLANTINGS;
}

/** Units of a variety's yield in a season, those lost by accident left out. */
export function yieldUnitsOf({ season }: { readonly season: Season }, variety: string): readonly Planting[] {
  const known =
    unitsByVariety.get(season) ??
    grouped(
      season.yieldUnits.filter(({ cause }) => cause !== 'accident'),
      (unit) => unit.variety,
    );
  unitsByVariety.set(season, known);
  return known.get(variety) ?? NO_PLANTINGS;
}
