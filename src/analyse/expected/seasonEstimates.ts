import { grouped } from '../../terms/groups.ts';
import { answersTo, plantModel, rankedIn, ratingModel, ratioModel, ripeningModel, ripenings } from '../traitsSeen.ts';
import type { TraitFacts } from '../../terms/traits.ts';
import type { PlantModel } from '../plantTypes.ts';
import type { SeasonSeen } from '../seen.ts';
import { plantsAlone, togetherFactor } from '../units.ts';
import { countedUnits, pooledCounts } from './borrowing.ts';
import type { PooledCounts } from './borrowing.ts';
import { ownVariance } from './spreads.ts';
import type { SeasonSpread } from './spreads.ts';
import { given, keyed, nth } from '../../numerics/element.ts';

/** How a season's value came by its standard error, or that the value itself stands for something else. */
export type ValueMark = 'own' | 'borrowed' | 'assumed' | 'nothing-picked' | 'later-than';

/** One variety's result in one season before anything is borrowed. */
export interface SeasonResult {
  readonly year: number;
  readonly variety: string;
  readonly classId: string;
  /** Working scale; null where nothing was picked, which is placed once the class's values are known. */
  readonly theta: number | null;
  /** The season's own squared standard error; null where it has to be borrowed. */
  readonly variance: number | null;
  /** Plants alone, fruits counted, plantings or cells: what a borrowed variance is divided by. */
  readonly units: number;
  readonly isLaterThan: boolean;
  /** Half the class's smallest positive planting yield, working scale: the place of a yield of nothing. */
  readonly floor: number | null;
}

/** A trait's results in one season. */
interface SeasonPart {
  readonly results: readonly SeasonResult[];
  readonly spreads: readonly SeasonSpread[];
}

/** A trait's results in all seasons. */
export interface TraitResults extends SeasonPart {
  /** For fruits, where a season has a spread; else null. */
  readonly counts: PooledCounts | null;
}

const NONE: SeasonPart = { results: [], spreads: [] };

/** Estimates with their squared standard errors, working scale. */
function onWorkingScale({
  classes,
}: Pick<PlantModel, 'classes'>): ReadonlyMap<string, { theta: number; variance: number }> {
  return new Map(
    classes.flatMap(({ varieties, estimates, covariance }) =>
      varieties.map(
        (variety, i) => [variety, { theta: nth(estimates, i), variance: nth(nth(covariance, i), i) }] as const,
      ),
    ),
  );
}

function plantResults(
  seen: SeasonSeen,
  { key, scale }: TraitFacts,
  classOf: ClassOf,
  pooled: PooledCounts | null,
): SeasonPart {
  const model = ratioModel(seen, key) ?? plantModel(seen, key);
  if (!model) return NONE;
  const isLog = scale === 'log';
  const working = onWorkingScale(model);
  const amountOf = (id: string): number | null => {
    const own = seen.yields.get(id);
    return (key === 'fruits' ? own?.fruits : own?.grams) ?? null;
  };
  const units = seen.season.yieldUnits.filter(({ id, cause }) => cause !== 'accident' && amountOf(id) !== null);
  const unitsOf = grouped(units, ({ variety }) => variety);
  const floors = new Map<string, number>();
  for (const { id, plants, variety } of isLog ? units : []) {
    const value = amountOf(id)! / plants;
    const classId = classOf(variety);
    if (value > 0) floors.set(classId, Math.min(value, floors.get(classId) ?? Infinity));
  }
  const results = [...model.estimates].flatMap(([variety, { estimate, n }]): readonly SeasonResult[] => {
    if (estimate === null) return [];
    const classId = classOf(variety);
    const layout = model.layouts.get(classId);
    const own = working.get(variety);
    const standing = unitsOf.get(variety) ?? [];
    const floor = isLog && floors.has(classId) ? Math.log(keyed(floors, classId) / 2) : null;
    const theta = own ? own.theta : isLog ? (estimate > 0 ? Math.log(estimate) : null) : estimate;
    const counted = theta === null ? Math.exp(floor ?? 0) : estimate;
    const basis = isLog
      ? countedUnits(model, counted, pooled) * plantsAlone(standing, layout, model.spotCorrelation)
      : n /
        (model.scales?.get(classId) ?? 1) /
        togetherFactor(layout, model.plants.get(variety) ?? n, model.spotCorrelation);
    const variance = own ? ownVariance(own.variance, model.residualDf) : null;
    const { year } = seen.season;
    return [{ year, variety, classId, theta, variance, units: basis, isLaterThan: false, floor }];
  });
  return { results, spreads: [{ variance: model.dispersion, df: model.residualDf }] };
}

function ripeningResults(seen: SeasonSeen, classOf: ClassOf): SeasonPart {
  const model = ripeningModel(seen);
  if (!model) return NONE;
  const working = onWorkingScale(model);
  const year = seen.season.year;
  const plantingsBy = grouped(ripenings(seen), ({ unit }) => unit.variety);
  const results = [...model.estimates].flatMap(([variety, { estimate }]): readonly SeasonResult[] => {
    const watched = (plantingsBy.get(variety) ?? []).filter(
      ({ unit, ripe }) => ripe !== null || unit.cause !== 'accident',
    );
    if (watched.length === 0) return [];
    const plants = watched.reduce((sum, { unit }) => sum + unit.plants, 0);
    const together = togetherFactor(model.layouts.get(classOf(variety)), plants, model.spotCorrelation);
    const base = { year, variety, classId: classOf(variety), units: watched.length / together, floor: null };
    const own = working.get(variety);
    if (own)
      return [{ ...base, theta: own.theta, variance: ownVariance(own.variance, model.residualDf), isLaterThan: false }];
    if (estimate !== null) return [{ ...base, theta: Math.log(estimate), variance: null, isLaterThan: false }];
    const days = watched.map(({ ripe, watchedInCurve }) => Math.log(Math.max(0.5, ripe ?? watchedInCurve)));
    const theta = days.reduce((sum, log) => sum + log, 0) / days.length;
    return [{ ...base, theta, variance: null, isLaterThan: true }];
  });
  return { results, spreads: [{ variance: model.dispersion, df: model.residualDf }] };
}

function ratingResults(seen: SeasonSeen, key: string, classOf: ClassOf): SeasonPart {
  const model = ratingModel(seen, key);
  if (!model) return NONE;
  const at = new Map(model.means?.varieties.map((variety, i) => [variety, i]));
  const results = [...model.estimates].flatMap(([variety, { estimate, n }]): readonly SeasonResult[] => {
    const i = at.get(variety);
    const theta = i === undefined ? estimate : nth(given(model.means).estimates, i);
    if (theta === null) return [];
    const variance =
      i === undefined ? null : ownVariance(nth(nth(given(model.means).covariance, i), i), model.residualDf);
    return [
      {
        year: seen.season.year,
        variety,
        classId: classOf(variety),
        theta,
        variance,
        units: n,
        isLaterThan: false,
        floor: null,
      },
    ];
  });
  return { results, spreads: [{ variance: model.means ? model.dispersion : null, df: model.residualDf }] };
}

/** Shares of a yes-no trait: variance of (k + 1) of (n + 2), so that 3 of 3 is not taken for certain. */
function answerResults(seen: SeasonSeen, key: string, classOf: ClassOf): SeasonPart {
  const results = [...(answersTo(seen, key) ?? [])].map(([variety, { k, n }]): SeasonResult => {
    const p = (k + 1) / (n + 2);
    const variance = (p * (1 - p)) / n;
    return {
      year: seen.season.year,
      variety,
      classId: classOf(variety),
      theta: k / n,
      variance,
      units: n,
      isLaterThan: false,
      floor: null,
    };
  });
  return { results, spreads: [] };
}

/** Worths of what members ranked, each with its quasi-variance: any two may be set beside each other. */
function rankingResults(seen: SeasonSeen, key: string): SeasonPart {
  const results = rankedIn(seen, key).flatMap(({ classId, varieties }) =>
    varieties.map(({ variety, answers, logWorth, quasiVariance }): SeasonResult => ({
      year: seen.season.year,
      variety,
      classId,
      theta: logWorth,
      variance: quasiVariance,
      units: answers,
      isLaterThan: false,
      floor: null,
    })),
  );
  return { results, spreads: [] };
}

/**
 * A trait's results in every season, on the working scale: logarithms of yield, fruits and days, ratings and measures
 * as they are, shares from 0 to 1, logarithms of worths.
 *
 * @source methods page B
 */
export function seasonResults(seasons: readonly SeasonSeen[], facts: TraitFacts, classOf: ClassOf): TraitResults {
  const { key, kind } = facts;
  const pooled = key === 'fruits' ? pooledCounts(seasons) : null;
  const all = seasons.map((seen) => {
    if (kind === 'days') return ripeningResults(seen, classOf);
    if (kind === 'rating') return ratingResults(seen, key, classOf);
    if (kind === 'yes-no') return answerResults(seen, key, classOf);
    if (kind === 'ranking') return rankingResults(seen, key);
    return plantResults(seen, facts, classOf, pooled);
  });
  return {
    results: all.flatMap(({ results }) => results),
    spreads: all.flatMap(({ spreads }) => spreads),
    counts: pooled,
  };
}

/**
 * Variance of one unit where no season has one of its own, of a value on the working scale.
 *
 * @param theta  working scale, of which a relative SD is a share
 * @source methods page B
 */
export function assumedVariance({ assumedSd: { size, isRelative } }: TraitFacts, theta: number): number {
  return (isRelative ? size * theta : size) ** 2;
}

export type ClassOf = (variety: string) => string;
