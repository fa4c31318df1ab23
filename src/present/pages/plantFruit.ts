import { plantValues } from '../../analyse/lines/plantValues.ts';
import type { CrossPlant } from '../../analyse/lines/crosses.ts';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { cssColour } from '../../sheet/cells/colours.ts';
import type { Trial } from '../../terms/trial.ts';
import { formOf } from './fruit.ts';
import type { Fruit } from './fruit.ts';

/** A plant of a cross with its fruit, drawn from its own measures. */
export interface PlantFruit {
  readonly plant: CrossPlant;
  readonly fruit: Fruit;
  /** The state whose colour it wears; null where it is hatched. */
  readonly colourOf: string | null;
}

/** States that tell a fruit's colour: of the ripe fruit before any other. */
function colourIn({ states }: CrossPlant): { readonly trait: string; readonly colour: string } | null {
  const told = [...states].flatMap(([trait, state]) => {
    const colour = /fruit|frucht|ripe|reif/i.test(trait) ? cssColour(state) : null;
    return colour === null ? [] : [{ trait, colour }];
  });
  const isRipe = (trait: string): boolean => !/unripe|unreif/i.test(trait);
  return told.find(({ trait }) => isRipe(trait)) ?? told[0] ?? null;
}

/**
 * Fruit of the plants of a cross to one scale, each by its own length and width; plants that were not measured are left
 * out.
 *
 * @returns  empty where no plant was measured
 */
export function plantFruits(
  plants: readonly CrossPlant[],
  seasons: readonly SeasonSeen[],
  trial: Trial,
): readonly PlantFruit[] {
  return plants.flatMap((plant): readonly PlantFruit[] => {
    const seen = seasons.find(({ season }) => season.year === plant.year);
    const variety = trial.varieties.find(({ id }) => id === plant.planting.variety);
    if (!seen || !variety) return [];
    const of = (key: string): number | null => {
      const trait = trial.settings.traits.get(key);
      if (trait?.kind !== 'measure' || (trait.unit !== 'cm' && trait.unit !== 'mm')) return null;
      const own = plantValues(seen, key, trial).find(({ planting }) => planting === plant.planting.id);
      return own ? (trait.unit === 'mm' ? own.value / 10 : own.value) : null;
    };
    const [length, width] = [of('fruit_length'), of('fruit_width')];
    if (length === null || width === null) return [];
    const colour = colourIn(plant);
    const form = formOf(variety, length, width);
    const fruit = { form, length, width, measured: plant.year, colour: colour?.colour ?? null };
    return [{ plant, fruit, colourOf: colour?.trait ?? null }];
  });
}
