import { mean } from 'simple-statistics';
import type { AdditiveFit } from '../numerics/additive.ts';
import { findRoot } from '../numerics/root.ts';
import type { Unit } from './units.ts';
import { nth } from '../numerics/element.ts';

/** How far the spread of fruit numbers grows with them, in one season. */
export interface CountSpread {
  /** k of the variance μ + k μ²; 0 where fruit numbers vary no more than chance does, and one dispersion holds for all. */
  readonly k: number;
  /** Mean number per plant of each class, and of all plants. */
  readonly byClass: ReadonlyMap<string, number>;
  readonly all: number;
  /** Dispersion of every class at its mean, relative to the season's; null where it is one for all. */
  readonly scales: ReadonlyMap<string, number> | null;
}

function meanPerPlant(units: readonly Unit[]): number {
  if (units.length === 0) return 0;
  const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
  return units.reduce((sum, { y, plants: own }) => sum + own * y, 0) / plants;
}

/**
 * One dispersion cannot serve varieties of few large and of many small fruits: the variance is μ + k μ² for a variety
 * of mean μ, k such that Pearson's statistic is the residual degrees of freedom. Where fruit numbers vary no more than
 * a Poisson law has them (k = 0), one dispersion holds for all.
 *
 * @param units     plantings in the fit, with their fruits per plant
 * @param variance  variance of each relative to a single plant's
 * @param fit       their quasi-Poisson fit
 * @source Breslow (1984) Appl. Stat. 33:38, k by moments
 */
export function countSpread(units: readonly Unit[], variance: readonly number[], fit: AdditiveFit): CountSpread {
  const classes = [...new Set(units.map(({ classId }) => classId))];
  const byClass = new Map(classes.map((id) => [id, meanPerPlant(units.filter(({ classId }) => classId === id))]));
  const all = meanPerPlant(units);
  const { dispersion, residualDf, fitted } = fit;
  if (dispersion === null || dispersion <= 1) return { k: 0, byClass, all, scales: null };
  const squares = units.map(({ y }, i) => (y - nth(fitted, i)) ** 2 / (nth(fitted, i) * nth(variance, i)));
  const excess = (k: number): number =>
    squares.reduce((sum, square, i) => sum + square / (1 + k * nth(fitted, i)), 0) - residualDf;
  // At this k every plant's dispersion is at least the season's, so that the root lies below; a little more for rounding.
  const k = findRoot(excess, 0, (1.001 * (dispersion - 1)) / Math.min(...fitted));
  const scales = new Map([...byClass].map(([id, own]) => [id, (1 + k * own) / (1 + k * all)]));
  return { k, byClass, all, scales: classes.length > 1 ? scales : null };
}

/**
 * Variance of every planting's fruits relative to the season's dispersion: 1 + k μ for a planting of mean μ.
 *
 * @param fitted  mean fruits of each planting
 * @source Breslow (1984) Applied Statistics 33:38
 */
export function varianceOfCounts({ k, all }: CountSpread, fitted: readonly number[]): readonly number[] {
  return fitted.map((mean) => (1 + k * mean) / (1 + k * all));
}

/**
 * Dispersion of a measure in every class relative to the season's: its SD goes with the mean of the class, as fruits of
 * 3 cm do not differ by as many millimetres as fruits of 15 cm.
 *
 * @returns null with one class, or where a mean is not above 0: one SD for all
 */
export function sizeSpread(units: readonly Unit[]): ReadonlyMap<string, number> | null {
  const classes = [...new Set(units.map(({ classId }) => classId))];
  const meanOf = (own: readonly Unit[]): number => mean(own.map(({ y }) => y));
  const means = classes.map((id) => meanOf(units.filter(({ classId }) => classId === id)));
  if (classes.length < 2 || means.some((own) => own <= 0)) return null;
  const all = meanOf(units);
  return new Map(classes.map((id, i) => [id, (nth(means, i) / all) ** 2]));
}
