import { grouped } from '../../terms/groups.ts';
import { mean } from 'simple-statistics';
import { keyed } from '../../numerics/element.ts';
import { isOfClub } from '../../terms/gardens.ts';
import type { TraitFacts } from '../../terms/traits.ts';
import type { Planting, Season } from '../../terms/trial.ts';
import { measureUnits } from '../measures.ts';
import { ripenings } from '../traitsSeen.ts';
import type { SeasonSeen } from '../seen.ts';
import { seasonYields } from '../yield.ts';
import type { PlantingYield } from '../yield.ts';
import type { GardenClass, GardenValue } from './gardenCells.ts';
import type { ClassOf } from './seasonEstimates.ts';

/** A trait over gardens and seasons, ready for stage two. */
export interface GardenValues {
  readonly classes: readonly GardenClass[];
  /** Squared CV of single plants inside gardens; known from so many degrees of freedom, or assumed. */
  readonly plantVariance: number;
  readonly isAssumed: boolean;
}

/** Squared CV of plants in a garden where too few are recorded one by one. @source gardens page 2.3 */
const ASSUMED = 0.128;
const FEWEST_DF = 10;

interface Amount {
  readonly planting: Planting;
  readonly value: number;
}

type AmountOf = (own: PlantingYield) => number | null;

const amountsOf = (season: Season, units: readonly Planting[], of: AmountOf): readonly Amount[] => {
  const yields = seasonYields({ ...season, yieldUnits: units });
  return units.flatMap((planting) => {
    const own = yields.get(planting.id);
    const value = own && planting.cause !== 'accident' ? of(own) : null;
    return value === null ? [] : [{ planting, value }];
  });
};

const inGardenOf = ({ garden, variety }: Planting): string => `${garden}/${variety}`;

/** Squared CV of plants of a variety inside a garden, pooled over gardens, varieties and seasons; null from few. */
function pooledPlantVariance(seasons: readonly SeasonSeen[], of: AmountOf): number | null {
  let [sum, df] = [0, 0];
  for (const { season } of seasons) {
    const groups = grouped(amountsOf(season, season.plantings, of), ({ planting }) => inGardenOf(planting));
    for (const group of groups.values()) {
      const plants = group.reduce((all, { planting }) => all + planting.plants, 0);
      const middle = group.reduce((all, { value }) => all + value, 0) / plants;
      if (group.length < 2 || middle === 0) continue;
      df += group.length - 1;
      for (const { planting, value } of group) sum += planting.plants * (value / planting.plants / middle - 1) ** 2;
    }
  }
  return df >= FEWEST_DF ? sum / df : null;
}

/** A value before nothing and never are given a place. */
interface Found {
  readonly variety: string;
  readonly garden: string;
  readonly season: number;
  /** Null: nothing was picked. */
  readonly theta: number | null;
  readonly variance: number;
}

function amounts(seen: SeasonSeen, of: AmountOf, plantVariance: number): readonly Found[] {
  const { season } = seen;
  const cells = new Map<string, { planting: Planting; plants: number; total: number }>();
  for (const { planting, value } of amountsOf(season, season.yieldUnits, of)) {
    const own = cells.get(inGardenOf(planting)) ?? { planting, plants: 0, total: 0 };
    own.plants += planting.plants;
    own.total += value;
    cells.set(inGardenOf(planting), own);
  }
  return [...cells.values()].map(({ planting: { variety, garden }, plants, total }) => ({
    variety,
    garden,
    season: season.year,
    theta: total > 0 ? Math.log(total / plants) : null,
    variance: plantVariance / plants,
  }));
}

function days(seen: SeasonSeen, { assumedSd }: TraitFacts): readonly Found[] {
  const cells = new Map<string, { planting: Planting; ripe: number[]; watched: number[] }>();
  for (const { unit, ripe, watchedInCurve } of ripenings(seen)) {
    if (ripe === null && unit.cause === 'accident') continue;
    const own = cells.get(inGardenOf(unit)) ?? { planting: unit, ripe: [], watched: [] };
    if (ripe === null) own.watched.push(Math.log(Math.max(0.5, watchedInCurve)));
    else own.ripe.push(Math.log(Math.max(0.5, ripe)));
    cells.set(inGardenOf(unit), own);
  }
  return [...cells.values()].map(({ planting: { variety, garden }, ripe, watched }) => {
    const base = { variety, garden, season: seen.season.year };
    if (ripe.length > 0) return { ...base, theta: mean(ripe), variance: 0 };
    // Never ripe: later than it was watched, by a spread (methods B).
    return { ...base, theta: mean(watched) + assumedSd.size, variance: assumedSd.size ** 2 };
  });
}

/** Means of values by garden and variety; without known error. */
function meansOf(
  season: Season,
  values: readonly { garden: string; variety: string; value: number }[],
): readonly Found[] {
  const cells = new Map<string, { garden: string; variety: string; list: number[] }>();
  for (const { garden, variety, value } of values) {
    const own = cells.get(`${garden}/${variety}`) ?? { garden, variety, list: [] };
    own.list.push(value);
    cells.set(`${garden}/${variety}`, own);
  }
  return [...cells.values()].map(({ garden, variety, list }) => ({
    garden,
    variety,
    season: season.year,
    theta: mean(list),
    variance: 0,
  }));
}

function ratings({ season }: SeasonSeen, { key }: TraitFacts, own: string): readonly Found[] {
  const gardens = new Set(season.gardens);
  const [only = own] = season.gardens;
  const ofSheets = season.plantings.flatMap(({ garden, variety, record }) => {
    const value = record.kind === 'totals' ? record.traits.get(key) : undefined;
    return value === undefined ? [] : [{ garden, variety, value }];
  });
  const scored = season.scores
    .filter(({ trait }) => trait === key)
    .map(({ taster, variety, score }) => ({
      garden: gardens.has(taster) ? taster : isOfClub(season) ? own : only,
      variety,
      value: score,
    }));
  return meansOf(season, scored.length > 0 && !isOfClub(season) ? scored : [...scored, ...ofSheets]);
}

/** A yield of nothing stands at half of the class's smallest, as unsurely as it is far from what else its garden gave. */
function placed(found: readonly Found[]): readonly GardenValue[] {
  const known = found.flatMap(({ theta }) => (theta === null ? [] : [theta]));
  if (known.length === 0) return [];
  const floor = known.reduce((least, own) => Math.min(least, own), Infinity) - Math.LN2;
  const besides = new Map<string, number[]>();
  for (const { garden, season, theta } of found)
    if (theta !== null) besides.set(`${garden}/${season}`, [...(besides.get(`${garden}/${season}`) ?? []), theta]);
  return found.flatMap((own): readonly GardenValue[] => {
    if (own.theta !== null) return [{ ...own, theta: own.theta }];
    const others = besides.get(`${own.garden}/${own.season}`);
    // A garden that gave nothing at all tells its varieties from nothing.
    if (!others) return [];
    return [{ ...own, theta: floor, variance: own.variance + (floor - mean(others)) ** 2 }];
  });
}

const AMOUNTS: Readonly<Record<string, AmountOf>> = {
  yield: ({ grams }) => grams,
  fruits: ({ fruits }) => fruits,
};

function foundOf(seen: SeasonSeen, facts: TraitFacts, plantVariance: number, classOf: ClassOf, own: string) {
  const amountOf = AMOUNTS[facts.key];
  if (amountOf) return amounts(seen, amountOf, plantVariance);
  if (facts.kind === 'days') return days(seen, facts);
  if (facts.kind === 'rating') return ratings(seen, facts, own);
  return meansOf(
    seen.season,
    measureUnits(seen.season, facts.key, classOf).map(({ planting: { garden, variety }, y }) => ({
      garden,
      variety,
      value: y,
    })),
  );
}

/**
 * A trait's values garden by garden, for stage two.
 *
 * @param grown  varieties of each class that are spoken of
 * @param own    code of the trial's own garden
 * @returns      null where one garden alone has records, and for shares of yes and what members ranked
 * @source gardens page 2.3
 */
export function gardenValues(
  seasons: readonly SeasonSeen[],
  facts: TraitFacts,
  grown: ReadonlyMap<string, readonly string[]>,
  classOf: ClassOf,
  own: string,
): GardenValues | null {
  const gardens = new Set(seasons.flatMap(({ season }) => season.gardens));
  if (gardens.size < 2 || facts.kind === 'yes-no' || facts.kind === 'ranking' || facts.key === 'early_yield')
    return null;
  const amountOf = AMOUNTS[facts.key];
  const pooled = amountOf ? pooledPlantVariance(seasons, amountOf) : null;
  const plantVariance = pooled ?? ASSUMED;
  const all = seasons.flatMap((seen) => foundOf(seen, facts, plantVariance, classOf, own));
  const byClass = new Map<string, Found[]>([...grown.keys()].map((id) => [id, []]));
  for (const value of all) byClass.get(classOf(value.variety))?.push(value);
  const classes = [...byClass]
    .map(([classId, found]) => ({ classId, varieties: keyed(grown, classId), values: placed(found) }))
    .filter(({ values }) => values.length > 0);
  if (classes.length === 0) return null;
  return { classes, plantVariance, isAssumed: pooled === null };
}
