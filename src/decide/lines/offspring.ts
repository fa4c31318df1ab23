import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import type { CrossPlant } from '../../analyse/lines/crosses.ts';
import { breedsTrue } from '../../analyse/lines/geneModels.ts';
import type { GeneFamily, GenePedigree, GenePosterior } from '../../analyse/lines/geneModels.ts';
import { plantsForChance, wantedForecast } from '../../analyse/lines/nextPlants.ts';
import type { SownMother, WantedTrait } from '../../analyse/lines/nextPlants.ts';
import { given, keyed, nth } from '../../numerics/element.ts';
import type { Recall } from '../../terms/recall.ts';

/** Chances for which plants are counted. */
export const CHANCES = [0.5, 0.8, 0.9] as const;
/** Traits of states whose combination is looked at. */
const MOST_TRAITS = 3;

/** Offspring of a plant with every wanted state. */
export interface Offspring {
  /** Expected share. */
  readonly share: number;
  /** Chance of at least one among the plants that a line gets. */
  readonly chance: number;
  /** Plants for a chance of 50, 80 and 90 of 100; null where 200 are not enough. */
  readonly plants: readonly (number | null)[];
}

/** Traits with a wanted state that can be told of, at most three. */
export const wantedTraits = (traits: readonly CrossTrait[]): readonly CrossTrait[] =>
  traits.filter(({ genes }) => genes?.good != null).slice(0, MOST_TRAITS);

/** What a forecast of plants' offspring rests on, without the plants themselves. */
interface OffspringBasis {
  readonly traits: readonly WantedTrait[];
  /** Where each plant stands in the pedigree of each trait. */
  readonly mothers: readonly SownMother['paths'][];
  /** Offspring that grow, of all mothers together. */
  readonly linePlants: number;
}

/** True where something is wanted of the traits and the plant's genes are told in all of them. */
export function isTold(traits: readonly CrossTrait[], plant: CrossPlant): boolean {
  const wanted = wantedTraits(traits);
  return wanted.length > 0 && wanted.every(({ genes }) => genes?.paths.has(plant));
}

/** @param plants  whose genes are told */
export function offspringBasis(
  traits: readonly CrossTrait[],
  plants: readonly CrossPlant[],
  linePlants: number,
): OffspringBasis {
  const wanted = wantedTraits(traits).map(({ genes }) => given(genes));
  return {
    traits: wanted.map(({ pedigree, posterior, good }): WantedTrait => ({ pedigree, posterior, good: given(good) })),
    mothers: plants.map((plant) => wanted.map(({ paths }) => keyed(paths, plant))),
    linePlants,
  };
}

/** What is expected of the offspring of plants; those whose genes are not told are not in it. */
export function offspringByPlant(
  recall: Recall,
  traits: readonly CrossTrait[],
  plants: readonly CrossPlant[],
  linePlants: number,
): ReadonlyMap<CrossPlant, Offspring> {
  const told = plants.filter((plant) => isTold(traits, plant));
  if (told.length === 0) return new Map();
  const found = recall('offspring', offspringBasis(traits, told, linePlants), offspringOf);
  return new Map(told.map((plant, i) => [plant, nth(found, i)]));
}

/** Of sisters that are alike in every trait one stands for all: what is said of each is the same. */
function likeness({ pedigree }: WantedTrait, path: readonly number[]): string {
  let family: GeneFamily | null = pedigree.f2;
  for (const at of path.slice(0, -1)) family = family && nth(family.plants, at).family;
  return JSON.stringify([path.slice(0, -1), family && nth(family.plants, nth(path, -1))]);
}

/** What is expected of each plant's own offspring. */
function offspringOf({ traits, mothers, linePlants }: OffspringBasis): readonly Offspring[] {
  const known = new Map<string, Offspring>();
  return mothers.map((paths) => {
    const key = paths.map((path, t) => likeness(nth(traits, t), path)).join();
    const found = known.get(key);
    if (found) return found;
    const forecast = wantedForecast(traits, [{ paths, plants: 0 }]);
    const own = {
      share: nth(forecast.shares, 0),
      chance: forecast.chance([linePlants]),
      plants: CHANCES.map((chance) => plantsForChance(forecast, chance)),
    };
    known.set(key, own);
    return own;
  });
}

/** Chance of a wanted plant with so many offspring split over one plant, two, and so on. */
export function chancesOfMothers({ traits, mothers, linePlants }: OffspringBasis): readonly number[] {
  return mothers.map((_, i) => {
    const k = i + 1;
    const forecast = wantedForecast(
      traits,
      mothers.slice(0, k).map((paths) => ({ paths, plants: 0 })),
    );
    return forecast.chance(Array.from({ length: k }, (__, m) => Math.floor((linePlants + k - 1 - m) / k)));
  });
}

interface TrueBasis {
  readonly pedigree: GenePedigree;
  readonly posterior: GenePosterior;
  /** A plant each: where it stands, and its own state. */
  readonly plants: readonly { readonly path: readonly number[]; readonly state: number }[];
}

/** Chances that plants breed true for their own state. */
function trueOf({ pedigree, posterior, plants }: TrueBasis): readonly number[] {
  return plants.map(({ path, state }) => breedsTrue(pedigree, posterior, path, [state]));
}

/** Chance that each plant breeds true for its own states, by trait; null where its genes are not told. */
export function trueForStates(
  recall: Recall,
  traits: readonly CrossTrait[],
  plants: readonly CrossPlant[],
): readonly ReadonlyMap<string, number | null>[] {
  const found = plants.map(() => new Map<string, number | null>());
  for (const { trait, seen, genes } of traits) {
    const told: { readonly path: readonly number[]; readonly state: number; readonly plant: number }[] = [];
    plants.forEach((plant, i) => {
      const state = plant.states.get(trait.key);
      if (state === undefined) return;
      nth(found, i).set(trait.key, null);
      const path = genes?.paths.get(plant);
      if (path) told.push({ path, state: seen.indexOf(state), plant: i });
    });
    if (!genes || told.length === 0) continue;
    const { pedigree, posterior } = genes;
    const asked = { pedigree, posterior, plants: told.map(({ path, state }) => ({ path, state })) };
    recall('breeds true', asked, trueOf).forEach((chance, k) => {
      nth(found, nth(told, k).plant).set(trait.key, chance);
    });
  }
  return found;
}
