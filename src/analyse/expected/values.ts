import { mean, median } from 'simple-statistics';
import type { WorkingScale } from '../../terms/scales.ts';
import type { TraitFacts } from '../../terms/traits.ts';
import type { SeasonSeen } from '../seen.ts';
import type { ClassValues, SeasonValue } from './posterior.ts';
import { assumedVariance, seasonResults } from './seasonEstimates.ts';
import type { PooledCounts } from './borrowing.ts';
import type { ClassOf, SeasonResult, TraitResults, ValueMark } from './seasonEstimates.ts';
import { pooledVariance } from './spreads.ts';

/** A season's value of a variety as stage two takes it. */
export interface MarkedValue {
  readonly year: number;
  readonly variety: string;
  readonly classId: string;
  readonly theta: number;
  readonly variance: number;
  readonly mark: ValueMark;
}

/** A trait over all seasons and classes, ready for stage two. */
export interface TraitValues {
  readonly trait: string;
  readonly scale: WorkingScale;
  /** A of the half-normal priors, working scale. */
  readonly priorScale: number;
  readonly values: readonly MarkedValue[];
  /** Variance of one unit (plant, fruit counted, planting or cell), and how many a season's result usually rests on. */
  readonly unitVariance: number;
  readonly usualUnits: number;
  /** For fruits, where a season has a spread; else null. */
  readonly counts: PooledCounts | null;
}

/** SD of the varieties' means over all seasons; a fifth of their mean where there is no spread to see. */
function spreadOfMeans(values: readonly MarkedValue[]): number {
  const byVariety = new Map<string, number[]>();
  for (const { variety, theta } of values) byVariety.set(variety, [...(byVariety.get(variety) ?? []), theta]);
  const means = [...byVariety.values()].map(mean);
  const middle = mean(means);
  const sd =
    means.length > 1 ? Math.sqrt(means.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (means.length - 1)) : 0;
  return sd > 0 ? sd : Math.max(Math.abs(middle) / 5, 1e-6);
}

/**
 * Where a yield of nothing is placed, and how surely: half the smallest yield, as far from the class as it is. A season
 * in which a class gave nothing at all tells its varieties from nothing.
 */
function placeNothing(own: SeasonResult, others: readonly SeasonResult[], borrowed: number) {
  const known = others.filter(({ theta, classId }) => theta !== null && classId === own.classId);
  const sameYear = known.filter(({ year }) => year === own.year);
  if (sameYear.length === 0 || own.floor === null) return null;
  const distance = own.floor - mean(sameYear.map(({ theta }) => theta!));
  return { theta: own.floor, variance: borrowed + distance * distance };
}

/**
 * Results as values for stage two: a season's own standard error where it has one, else borrowed from the other
 * seasons, else assumed; a yield of nothing and a variety that never ripened placed as the methods page says.
 *
 * @returns  null where nothing was recorded
 * @source methods page B
 */
export function markedValues(facts: TraitFacts, { results, spreads, counts }: TraitResults): TraitValues | null {
  if (results.length === 0) return null;
  const pooled = pooledVariance(spreads);
  // A measure of nothing is not assumed to be without error.
  const typical = mean(results.map(({ theta }) => Math.abs(theta ?? 0))) || 1;
  const values = results.flatMap((own): readonly MarkedValue[] => {
    const { year, variety, classId, isLaterThan } = own;
    const unit = pooled ?? assumedVariance(facts, own.theta || typical);
    const borrowed = unit / Math.max(own.units, 1e-9);
    const mark: ValueMark = own.variance !== null ? 'own' : pooled === null ? 'assumed' : 'borrowed';
    if (own.theta === null) {
      const placed = placeNothing(own, results, borrowed);
      return placed ? [{ year, variety, classId, ...placed, mark: 'nothing-picked' }] : [];
    }
    if (isLaterThan) {
      const theta = own.theta + Math.sqrt(unit);
      return [{ year, variety, classId, theta, variance: borrowed, mark: 'later-than' }];
    }
    return [{ year, variety, classId, theta: own.theta, variance: own.variance ?? borrowed, mark }];
  });
  if (values.length === 0) return null;
  const hasOwnVariance = facts.kind === 'yes-no' || facts.kind === 'ranking';
  const answered = results.filter(({ variance }) => variance !== null).map(({ variance, units }) => variance! * units);
  const assumed = assumedVariance(facts, mean(values.map(({ theta }) => theta)) || typical);
  const unitVariance = pooled ?? (hasOwnVariance && answered.length > 0 ? mean(answered) : assumed);
  const usualUnits = median(results.map(({ units }) => units));
  const priorScale = facts.priorScale ?? spreadOfMeans(values);
  return { trait: facts.key, scale: facts.scale, priorScale, values, unitVariance, usualUnits, counts };
}

/**
 * A trait's values for stage two, from what was seen in every season.
 *
 * @param seasons  what was seen, in order of years
 * @returns        null where the trait was never recorded
 * @source methods page B; Piepho et al. (2012) Biom. J. 54:844 for the two stages
 */
export function traitValues(seasons: readonly SeasonSeen[], facts: TraitFacts, classOf: ClassOf): TraitValues | null {
  return markedValues(facts, seasonResults(seasons, facts, classOf));
}

/**
 * A class's values, varieties and seasons numbered; every variety of the list is in it, with or without values.
 *
 * @returns the class, or null where the trait was never recorded in it
 */
export function classValues(
  { values }: Pick<TraitValues, 'values'>,
  classId: string,
  varieties: readonly string[],
): ClassValues | null {
  const own = values.filter((value) => value.classId === classId);
  if (own.length === 0) return null;
  const years = [...new Set(own.map(({ year }) => year))].toSorted((a, b) => a - b);
  const byVariety = new Map<string, SeasonValue[]>(varieties.map((id) => [id, []]));
  for (const { variety, year, theta, variance } of own) {
    byVariety.get(variety)?.push({ season: years.indexOf(year), theta, variance });
  }
  const inOrder = (list: readonly SeasonValue[]): readonly SeasonValue[] =>
    list.toSorted((a, b) => a.season - b.season);
  return {
    classId,
    seasons: years.length,
    varieties: [...byVariety].map(([id, list]) => ({ id, values: inOrder(list) })),
  };
}
