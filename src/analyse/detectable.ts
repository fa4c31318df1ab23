import { median } from 'simple-statistics';
import { detectableNoncentrality } from '../numerics/power.ts';
import type { PlantModel } from './plantModel.ts';
import { relativeVariance } from './plantModel.ts';
import { togetherFactor } from './units.ts';
import type { Unit } from './units.ts';

export interface Detectable {
  /** Median number of plantings of a variety of the class. */
  readonly plantings: number;
  /** Ratio (over 1) or difference that two such varieties must show to be separated with 80 % power. */
  readonly difference: number;
}

/**
 * What difference a season could have seen: two varieties of the class with its median number of plantings.
 *
 * @param units  the class's plantings in the model
 * @param level  interval level; the test is two-sided at 1 - level
 * @returns      null without a dispersion
 * @source Cohen (1988); see numerics/power
 */
export function detectableDifference(
  model: PlantModel,
  units: readonly Unit[],
  level: number,
  spotCorrelation: number,
): Detectable | null {
  if (model.dispersion === null || model.residualDf < 1 || units.length === 0) return null;
  const counts = new Map<string, number>();
  for (const { planting } of units) counts.set(planting.variety, (counts.get(planting.variety) ?? 0) + 1);
  const plantings = median([...counts.values()]);
  const plants = median(units.map((unit) => unit.plants));
  const mean = units.reduce((sum, { y }) => sum + y, 0) / units.length;
  const { classId } = units[0]!;
  const unit = (model.scales?.get(classId) ?? 1) * (model.family === 'poisson' ? 1 / mean : 1);
  const together = togetherFactor(model.layouts.get(classId), plantings, spotCorrelation);
  const se = Math.sqrt((model.dispersion * unit * relativeVariance(plants, spotCorrelation) * together) / plantings);
  const needed = detectableNoncentrality(0.8, model.residualDf, 1 - level) * Math.SQRT2 * se;
  const difference = model.family === 'gaussian' ? needed : Math.exp(needed);
  return Number.isFinite(difference) ? { plantings, difference } : null;
}
