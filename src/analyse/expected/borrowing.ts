import { ratioModel } from '../traitsSeen.ts';
import type { PlantModel } from '../plantTypes.ts';
import type { SeasonSeen } from '../seen.ts';
import { pooledVariance } from './spreads.ts';

// What a season without a usable standard error of its own takes from the others.

/** Dispersion of fruit numbers over the seasons that have one: k of 1 + k m, and φ where k is 0. */
export interface PooledCounts {
  readonly k: number;
  readonly dispersion: number;
}

/**
 * Dispersion of fruit numbers pooled over the seasons that have one of their own, by residual degrees of freedom.
 *
 * @returns  null where no season has one
 * @source methods page B
 */
export function pooledCounts(seasons: readonly SeasonSeen[]): PooledCounts | null {
  const known = seasons.flatMap((seen) => ratioModel(seen, 'fruits') ?? []).filter(({ counts }) => counts !== null);
  const pooled = (of: (model: PlantModel) => number | null): number | null =>
    pooledVariance(known.map((model) => ({ variance: of(model), df: model.residualDf })));
  const dispersion = pooled((model) => model.dispersion);
  if (dispersion === null) return null;
  return { k: pooled((model) => (model.dispersion === null ? null : model.counts!.k)) ?? 0, dispersion };
}

/** Dispersion φ (1 + k μ) of fruit numbers at a mean of μ fruits a plant (methods B). */
export function countDispersion({ k, dispersion }: PooledCounts, mean: number): number {
  return k > 0 ? 1 + k * mean : dispersion;
}

/** Units that a plant counts for where fruits are borrowed: fruits counted, as many as their dispersion leaves. */
export function countedUnits(model: PlantModel, counted: number, pooled: PooledCounts | null): number {
  return model.counts && pooled ? (counted * pooled.dispersion) / countDispersion(pooled, counted) : 1;
}
