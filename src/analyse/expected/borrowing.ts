import { relativeVariance } from '../plantModel.ts';
import type { PlantModel } from '../plantModel.ts';
import type { SeasonSeen } from '../seen.ts';
import { pooledVariance } from './spreads.ts';

// What a season without a usable standard error of its own takes from the others.

/** As many plants, each a planting of its own, as would tell a mean as well as these plantings do. */
export function plantsAlone(plantings: readonly { readonly plants: number }[], spotCorrelation: number): number {
  const all = plantings.reduce((sum, { plants }) => sum + plants, 0);
  const variance = plantings.reduce(
    (sum, { plants }) => sum + plants ** 2 * relativeVariance(plants, spotCorrelation),
    0,
  );
  return variance === 0 ? 0 : all ** 2 / variance;
}

/** Dispersion of fruit numbers over the seasons that have one: k of 1 + k m, and φ where k is 0. */
export interface PooledCounts {
  readonly k: number;
  readonly dispersion: number;
}

export function pooledCounts(seasons: readonly SeasonSeen[]): PooledCounts | null {
  const known = seasons.flatMap(({ models }) => models.get('fruits') ?? []).filter(({ counts }) => counts !== null);
  const pooled = (of: (model: PlantModel) => number | null): number | null =>
    pooledVariance(known.map((model) => ({ variance: of(model), df: model.residualDf })));
  const dispersion = pooled((model) => model.dispersion);
  if (dispersion === null) return null;
  return { k: pooled((model) => (model.dispersion === null ? null : model.counts!.k)) ?? 0, dispersion };
}

/** Dispersion of fruit numbers in a class of so many fruits a plant. */
export function classDispersion({ k, dispersion }: PooledCounts, mean: number): number {
  return k > 0 ? 1 + k * mean : dispersion;
}

/** Units that a plant counts for where fruits are borrowed: fruits counted, as many as its class's dispersion leaves. */
export function countedUnits(model: PlantModel, classId: string, counted: number, pooled: PooledCounts | null): number {
  if (!model.counts || pooled === null) return 1;
  const mean = model.counts.byClass.get(classId) ?? counted;
  return (counted * pooled.dispersion) / classDispersion(pooled, mean);
}
