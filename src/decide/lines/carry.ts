import type { CrossTrait } from '../../analyse/lines/crossGenes.ts';
import type { Cross, CrossFamily, CrossPlant } from '../../analyse/lines/crosses.ts';
import { newestFamilies } from '../../analyse/lines/crossSpread.ts';
import type { CrossSpread } from '../../analyse/lines/crossSpread.ts';
import { inheritedDraws, trulyBest } from '../../analyse/lines/inherited.ts';
import { first, nth } from '../../numerics/element.ts';
import type { Recall } from '../../terms/recall.ts';
import type { Settings } from '../../terms/settings.ts';
import { chosenValue } from './mothers.ts';
import { chancesOfMothers, isTold, offspringBasis, offspringByPlant, trueForStates } from './offspring.ts';
import type { Offspring } from './offspring.ts';
import type { GoalDraws } from './mothers.ts';
import { pointsOf } from '../points.ts';
import type { GoalRange } from '../adviseClass.ts';

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
    const offspring = offspringByPlant(basis.recall, own, plants, linePlants);
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
  const wanted = offspringByPlant(basis.recall, basis.traits, plants, linePlants);
  const trueFor = trueForStates(basis.recall, basis.traits, plants);
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
