import { breedsTrue } from '../../analyse/lines/geneModels.ts';
import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import type { Cross, CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import { newestFamilies } from '../../analyse/lines/crossSpread.ts';
import type { CrossSpread } from '../../analyse/lines/crossSpread.ts';
import { inheritedDraws, trulyBest } from '../../analyse/lines/inherited.ts';
import { plantsForChance, wantedForecast } from '../../analyse/lines/nextPlants.ts';
import type { WantedForecast, WantedTrait } from '../../analyse/lines/nextPlants.ts';
import { first, given, nth } from '../../numerics/element.ts';
import type { Settings } from '../../terms/settings.ts';
import { chosenValue } from './mothers.ts';
import type { GoalDraws } from './mothers.ts';
import { pointsOf } from '../points.ts';
import type { GoalRange } from '../adviseClass.ts';

/** Chances for which plants are counted. */
export const CHANCES = [0.5, 0.8, 0.9] as const;
/** Traits of states whose combination is looked at. */
const MOST_TRAITS = 3;

/** One plant of the newest family, as it may be carried forward. */
export interface PlantAdvice {
  readonly plant: CrossPlant;
  /** Chance that it breeds true for its own state, by trait; null where its genes are not told. */
  readonly trueFor: ReadonlyMap<string, number | null>;
  /** Its offspring with every wanted state; null where nothing is wanted, or its genes are not told. */
  readonly wanted: {
    /** Expected share. */
    readonly share: number;
    /** Chance of at least one among the plants that a line gets. */
    readonly chance: number;
    /** Plants for a chance of 50, 80 and 90 of 100; null where 200 are not enough. */
    readonly plants: readonly (number | null)[];
  } | null;
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
}

/** Traits with a wanted state that can be told of, at most three. */
export const wantedTraits = (traits: readonly CrossTrait[]): readonly CrossTrait[] =>
  traits.filter(({ genes }) => genes?.good != null).slice(0, MOST_TRAITS);

function forecastOf(traits: readonly CrossTrait[], plants: readonly CrossPlant[]): WantedForecast | null {
  const wanted = wantedTraits(traits);
  const mothers = plants.map((plant) => wanted.map(({ genes }) => genes?.paths.get(plant) ?? null));
  if (wanted.length === 0 || plants.length === 0 || mothers.flat().includes(null)) return null;
  return wantedForecast(
    wanted.map(({ genes }): WantedTrait => ({ ...given(genes), good: given(given(genes).good) })),
    mothers.map((paths) => ({ paths: paths.map(given), plants: 0 })),
  );
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
): readonly Float64Array[] | null {
  const { cross, traits, settings } = basis;
  const stateGoals = [...(settings.stateGoals.get(cross.classId) ?? [])].flatMap(([key, weight]) => {
    const own = traits.filter(({ trait, genes }) => trait.key === key && genes?.good != null);
    return own.length === 0
      ? []
      : [{ weight, shares: plants.map((plant) => forecastOf(own, [plant])?.shares[0] ?? 0) }];
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

function adviceOf(
  basis: CrossBasis,
  plant: CrossPlant,
  scores: readonly Float64Array[] | null,
  at: number,
  linePlants: number,
) {
  const { traits, spreads } = basis;
  const forecast = forecastOf(traits, [plant]);
  const trueFor = new Map(
    traits.flatMap(({ trait, seen, genes }) => {
      const state = plant.states.get(trait.key);
      if (state === undefined) return [];
      const path = genes?.paths.get(plant);
      const chance = genes && path ? breedsTrue(genes.pedigree, genes.posterior, path, [seen.indexOf(state)]) : null;
      return [[trait.key, chance] as const];
    }),
  );
  const passedOn = spreads.flatMap(({ trait, share, adjusted, mean }) => {
    const value = adjusted.get(plant.planting.id);
    if (!share || value === undefined) return [];
    return [[trait, share.mean * (value - mean)] as const];
  });
  const mean = scores && scores.reduce((sum, row) => sum + nth(row, at), 0) / scores.length;
  return {
    plant,
    trueFor,
    wanted: forecast && {
      share: nth(forecast.shares, 0),
      chance: forecast.chance([linePlants]),
      plants: CHANCES.map((chance) => plantsForChance(forecast, chance)),
    },
    passedOn: new Map(passedOn),
    best: null,
    score: mean,
  };
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
  const byStates = numbers.flatMap((k) => {
    const forecast = forecastOf(basis.traits, plants.slice(0, k));
    const split = numbers.slice(0, k).map((_, i) => Math.floor((linePlants + k - 1 - i) / k));
    return forecast ? [forecast.chance(split)] : [];
  });
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
  const scores = scoresOf(basis, plants, drawn);
  const best = scores && drawn.length > 0 && plants.length > 1 ? trulyBest(scores, 3) : null;
  const advised = plants.map((plant, i): PlantAdvice => ({
    ...adviceOf(basis, plant, scores, i, linePlants),
    best: best && { first: nth(best.best, i), amongThree: nth(best.amongBest, i) },
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
