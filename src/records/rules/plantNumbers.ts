import { fileOnly } from '../../terms/place.ts';
import type { Season } from '../../terms/trial.ts';
import type { CheckContext } from '../../sheet/context.ts';
import { nth } from '../../numerics/element.ts';

/** Fewer varieties than this say nothing of how a grower plants. */
const SOME = 3;

/** Plants of every variety of a season, in order of size. */
function plantsOf({ plantings }: Season): readonly number[] {
  const sums = new Map<string, number>();
  for (const { variety, plants } of plantings) sums.set(variety, (sums.get(variety) ?? 0) + plants);
  return [...sums.values()].toSorted((a, b) => a - b);
}

/**
 * Warns of a season in which every variety has one plant, where the middle variety of another had several: perhaps their
 * numbers were left out, and every yield a plant is too high. Common practice, no source.
 */
export function reportPlantNumbers(seasons: readonly Season[], { log }: CheckContext): void {
  const all = seasons
    .map((season) => ({ season, plants: plantsOf(season) }))
    .filter(({ plants }) => plants.length >= SOME);
  for (const { season, plants } of all) {
    if (nth(plants, -1) > 1) continue;
    const other = all.find((one) => nth(one.plants, Math.floor(one.plants.length / 2)) > 1);
    if (!other) continue;
    const facts = {
      year: String(other.season.year),
      plants: String(nth(other.plants, Math.floor(other.plants.length / 2))),
    };
    log.add('plants-all-one', fileOnly(`data/${season.year}/plantings.csv`), String(season.year), facts);
  }
}
