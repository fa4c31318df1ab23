import { grouped } from './groups.ts';
import { oncePer } from './once.ts';
import type { Planting, Season } from './trial.ts';

const NO_PLANTINGS: readonly Planting[] = [];

const byVariety = oncePer(({ plantings }: Season) => grouped(plantings, ({ variety }) => variety));

const unitsByVariety = oncePer(({ yieldUnits }: Season) =>
  grouped(
    yieldUnits.filter(({ cause }) => cause !== 'accident'),
    ({ variety }) => variety,
  ),
);

/** Plantings of a variety in a season, in the order of the table; a season is looked through once for all varieties. */
export function plantingsOf(season: Season, variety: string): readonly Planting[] {
  return byVariety(season).get(variety) ?? NO_PLANTINGS;
}

/** Units of a variety's yield in a season, those lost by accident left out. */
export function yieldUnitsOf({ season }: { readonly season: Season }, variety: string): readonly Planting[] {
  return unitsByVariety(season).get(variety) ?? NO_PLANTINGS;
}
