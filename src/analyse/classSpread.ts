import { mean } from 'simple-statistics';
import type { AdditiveFit } from '../numerics/additive.ts';
import { findRoot } from '../numerics/root.ts';
import type { Unit } from './units.ts';

/** How far the spread of fruit numbers grows with their size, in one season. */
export interface CountSpread {
  /** k of a class's dispersion 1 + k m; 0 where fruit numbers vary no more than chance does. */
  readonly k: number;
  /** Mean number per plant of each class, and of all plants. */
  readonly byClass: ReadonlyMap<string, number>;
  readonly all: number;
}

function meanPerPlant(units: readonly Unit[]): number {
  if (units.length === 0) return 0;
  const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
  return units.reduce((sum, { y, plants: own }) => sum + own * y, 0) / plants;
}

/**
 * One dispersion cannot serve classes of few large and of many small fruits: it is 1 + k m for a class of mean m,
 * k such that Pearson's statistic is the residual degrees of freedom. With one class this is the usual dispersion;
 * where that is below 1 it holds for every class.
 *
 * @param units     plantings in the fit, with their fruits per plant
 * @param variance  variance of each relative to a single plant's
 * @param fit       their quasi-Poisson fit
 * @source Breslow (1984) Appl. Stat. 33:38 for k by moments; McCullagh & Nelder (1989) ch. 10 for a modelled dispersion
 */
export function countSpread(units: readonly Unit[], variance: readonly number[], fit: AdditiveFit): CountSpread {
  const classes = [...new Set(units.map(({ classId }) => classId))];
  const byClass = new Map(classes.map((id) => [id, meanPerPlant(units.filter(({ classId }) => classId === id))]));
  const all = meanPerPlant(units);
  const { dispersion, residualDf, fitted } = fit;
  if (dispersion === null || dispersion <= 1) return { k: 0, byClass, all };
  const squares = units.map(({ y }, i) => (y - fitted[i]!) ** 2 / (fitted[i]! * variance[i]!));
  const excess = (k: number): number =>
    units.reduce((sum, { classId }, i) => sum + squares[i]! / (1 + k * byClass.get(classId)!), 0) - residualDf;
  const most = (dispersion - 1) / Math.min(...byClass.values());
  return { k: classes.length === 1 ? most : findRoot(excess, 0, 2 * most), byClass, all };
}

/** Dispersion of every class relative to the season's; null where it is one for all. */
export function relativeDispersions({ k, byClass, all }: CountSpread): ReadonlyMap<string, number> | null {
  if (k === 0 || byClass.size < 2) return null;
  return new Map([...byClass].map(([id, own]) => [id, (1 + k * own) / (1 + k * all)]));
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
  return new Map(classes.map((id, i) => [id, (means[i]! / all) ** 2]));
}
