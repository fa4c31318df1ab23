import { breedsTrue } from '../../analyse/lines/geneModels.ts';
import type { GeneFamily, GenePedigree, GenePosterior } from '../../analyse/lines/geneModels.ts';
import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import type { Cross, CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import { newestFamilies } from '../../analyse/lines/crossSpread.ts';
import type { CrossSpread } from '../../analyse/lines/crossSpread.ts';
import { inheritedDraws, trulyBest } from '../../analyse/lines/inherited.ts';
import { plantsForChance, wantedForecast } from '../../analyse/lines/nextPlants.ts';
import type { SownMother, WantedTrait } from '../../analyse/lines/nextPlants.ts';
import { first, given, keyed, nth } from '../../numerics/element.ts';
import type { Recall } from '../../terms/recall.ts';
import type { Settings } from '../../terms/settings.ts';
import { chosenValue } from './mothers.ts';
import type { GoalDraws } from './mothers.ts';
import { pointsOf } from '../points.ts';
import type { GoalRange } from '../adviseClass.ts';

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

/** One plant of the newest family, as it may be carried forward. */
export interface PlantAdvice {
  readonly plant: CrossPlant;
  /** Chance that it breeds true for its own state, by trait; null where its genes are not told. */
  readonly trueFor: ReadonlyMap<string, number | null>;
  /** Its offspring with every wanted state; null where nothing is wanted, or its genes are not told. */
  readonly wanted: Offspring | null;
  /** By trait: what is expected to be passed on of its deviation, working scale. */
  readonly passedOn: ReadonlyMap<string, number>;
  /** Chance to be truly the best, and among the best three; null without a measured goal. */
  readonly best: { readonly first: number; readonly amongThree: number } | null;
  /** Expected points of the goals, 0 to 100; null without any. */
  readonly score: number | null;
}

export interface CrossAdvice {
  /** The family of the best plant. */
  readonly family: CrossFamily;
  /** All that were grown with it. */
  readonly families: readonly CrossFamily[];
  /** Best first. */
  readonly plants: readonly PlantAdvice[];
  /** Plants whose seed is worth sowing, the first so many of `plants`. */
  readonly carry: readonly CrossPlant[];
  /** Numbers of mothers that are as good. */
  readonly asGood: readonly number[];
  /** Plants that a line gets. */
  readonly linePlants: number;
  /** Chance of a wanted plant with that many, split over `carry`; null where nothing is wanted. */
  readonly chance: number | null;
}

/** What advice on a cross rests on. */
export interface CrossBasis {
  readonly cross: Cross;
  readonly traits: readonly CrossTrait[];
  readonly spreads: readonly CrossSpread[];
  readonly goals: readonly GoalRange[];
  readonly settings: Settings;
  /** Gives what was worked out before. */
  readonly recall: Recall;
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
function isTold(traits: readonly CrossTrait[], plant: CrossPlant): boolean {
  const wanted = wantedTraits(traits);
  return wanted.length > 0 && wanted.every(({ genes }) => genes?.paths.has(plant));
}

/** @param plants  whose genes are told */
function offspringBasis(
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
function offspringByPlant(
  { recall }: CrossBasis,
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
function chancesOfMothers({ traits, mothers, linePlants }: OffspringBasis): readonly number[] {
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

function goalDraws({ cross, spreads, goals, settings }: CrossBasis): readonly GoalDraws[] {
  return goals.flatMap((goal): readonly GoalDraws[] => {
    const spread = spreads.find(({ trait }) => trait === goal.trait);
    if (!spread?.fixed || !spread.weights) return [];
    const ids = [...spread.adjusted.keys()];
    const values = [...spread.adjusted.values()];
    const name = `${settings.verdicts.seed}/${cross.id}/${goal.trait}`;
    const draws = inheritedDraws(values, spread.fixed, { weights: spread.weights, part: spread.part }, name);
    return [{ goal, spread, ids, draws }];
  });
}

/** Points of every plant in every draw: of measured goals by draws, of states by the share of offspring expected. */
function scoresOf(
  basis: CrossBasis,
  plants: readonly CrossPlant[],
  drawn: readonly GoalDraws[],
  linePlants: number,
): readonly Float64Array[] | null {
  const { cross, traits, settings } = basis;
  const stateGoals = [...(settings.stateGoals.get(cross.classId) ?? [])].flatMap(([key, weight]) => {
    const own = traits.filter(({ trait, genes }) => trait.key === key && genes?.good != null);
    if (own.length === 0) return [];
    const offspring = offspringByPlant(basis, own, plants, linePlants);
    return [{ weight, shares: plants.map((plant) => offspring.get(plant)?.share ?? 0) }];
  });
  const weight = [...drawn.map(({ goal }) => goal), ...stateGoals].reduce((sum, own) => sum + own.weight, 0);
  if (weight === 0) return null;
  const rows = nth([...drawn.map(({ draws }) => draws.deviations.length), 1], 0);
  return Array.from({ length: rows }, (_, d) =>
    Float64Array.from(plants, ({ planting }, p) => {
      const measured = drawn.reduce((sum, { goal, spread, ids, draws }) => {
        const at = ids.indexOf(planting.id);
        const value = spread.mean + (at < 0 ? 0 : nth(nth(draws.deviations, d), at));
        return sum + goal.weight * pointsOf(goal.range, spread.isLog ? Math.exp(value) : value);
      }, 0);
      const ofStates = stateGoals.reduce((sum, own) => sum + own.weight * 100 * nth(own.shares, p), 0);
      return (measured + ofStates) / weight;
    }),
  );
}

/** Chance that each plant breeds true for its own states, by trait; null where its genes are not told. */
function trueForStates(
  { traits, recall }: CrossBasis,
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

/** By trait: what is expected to be passed on of a plant's deviation. */
function passedOnOf({ spreads }: CrossBasis, { planting }: CrossPlant): ReadonlyMap<string, number> {
  return new Map(
    spreads.flatMap(({ trait, share, adjusted, mean }) => {
      const value = adjusted.get(planting.id);
      return share && value !== undefined ? [[trait, share.mean * (value - mean)] as const] : [];
    }),
  );
}

/** Numbers of mothers that are tried. */
const MOST_MOTHERS = 6;
/** As good is what comes to so much of the best. */
const AS_GOOD = 0.97;

/** How good each number of mothers is, from one on. */
interface MothersTried {
  /** Chance of a wanted plant; empty where nothing is wanted. */
  readonly byStates: readonly number[];
  /** Value of the plant finally chosen, in the heaviest measured goal; empty without one. */
  readonly byValue: readonly number[];
}

function mothersTried(
  basis: CrossBasis,
  ranked: readonly PlantAdvice[],
  drawn: readonly GoalDraws[],
  linePlants: number,
): MothersTried {
  const tried = Math.min(MOST_MOTHERS, ranked.length, linePlants);
  const numbers = Array.from({ length: tried }, (_, i) => i + 1);
  const plants = ranked.map(({ plant }) => plant);
  const untold = plants.findIndex((plant) => !isTold(basis.traits, plant));
  const told = plants.slice(0, untold < 0 ? tried : Math.min(tried, untold));
  const byStates =
    told.length > 0 ? basis.recall('mothers', offspringBasis(basis.traits, told, linePlants), chancesOfMothers) : [];
  const [main] = drawn.toSorted((a, b) => b.goal.weight - a.goal.weight);
  const order = plants.map(({ planting }) => planting.id);
  const byValue = main ? numbers.map((k) => chosenValue(main, order, k, linePlants)) : [];
  return { byStates, byValue };
}

/** Numbers of mothers that come near the best. */
function nearBest(tried: readonly number[]): readonly number[] {
  const top = Math.max(...tried);
  return tried.flatMap((own, i) => (own >= top - (1 - AS_GOOD) * Math.abs(top) ? [i + 1] : []));
}

/**
 * Which plants of a cross's newest families are worth carrying forward, and how many.
 *
 * @param goals  measured goals of its class with the range of their points; empty without advice
 * @returns      null where no plant stood by itself
 * @source methods pages L4, L6, L7
 */
export function adviseCross(basis: CrossBasis): CrossAdvice | null {
  const { cross, settings } = basis;
  const families = newestFamilies(cross);
  const linePlants = settings.classes.get(cross.classId)?.linePlants ?? 12;
  const last = Math.max(...families.flatMap(({ plants }) => plants.map(({ year }) => year)));
  const plants = families
    .flatMap((family) => family.plants)
    .filter(({ year, planting }) => year === last && planting.cause !== 'accident');
  if (plants.length === 0) return null;
  const drawn = goalDraws(basis);
  const scores = scoresOf(basis, plants, drawn, linePlants);
  const wanted = offspringByPlant(basis, basis.traits, plants, linePlants);
  const trueFor = trueForStates(basis, plants);
  const best = scores && drawn.length > 0 && plants.length > 1 ? trulyBest(scores, 3) : null;
  const advised = plants.map((plant, i): PlantAdvice => ({
    plant,
    trueFor: nth(trueFor, i),
    wanted: wanted.get(plant) ?? null,
    passedOn: passedOnOf(basis, plant),
    best: best && { first: nth(best.best, i), amongThree: nth(best.amongBest, i) },
    score: scores && scores.reduce((sum, row) => sum + nth(row, i), 0) / scores.length,
  }));
  const rank = (own: PlantAdvice): number => own.score ?? 100 * (own.wanted?.share ?? 0);
  const ranked = advised.toSorted((a, b) => rank(b) - rank(a));
  const tried = mothersTried(basis, ranked, drawn, linePlants);
  // The larger number decides: of those that are good by value, what the states ask for.
  const [byStates, byValue] = [nearBest(tried.byStates), nearBest(tried.byValue)];
  const asGood = (byStates[0] ?? 0) > (byValue[0] ?? 0) ? byStates : byValue.length > 0 ? byValue : byStates;
  const number = asGood[0] ?? 0;
  const carry = ranked.slice(0, number).map(({ plant }) => plant);
  const top = nth(ranked, 0).plant;
  const family = first(families, (own) => own.plants.includes(top));
  return { family, families, plants: ranked, carry, asGood, linePlants, chance: tried.byStates[number - 1] ?? null };
}
