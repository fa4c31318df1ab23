import { median } from 'simple-statistics';
import { detectableNoncentrality } from '../numerics/power.ts';
import { studentizedRangeQuantile } from '../numerics/range.ts';
import type { PlantModel } from './plantTypes.ts';
import { placeVariance, togetherFactor } from './units.ts';
import type { Unit } from './units.ts';
import { nth } from '../numerics/element.ts';

export interface Detectable {
  /** Median number of plantings of a variety of the class. */
  readonly plantings: number;
  /** Ratio (over 1) or difference that two such varieties must show to be separated with 80 % power. */
  readonly difference: number;
}

/**
 * What difference the letters of a class could have told apart: two varieties with its median number of plantings,
 * all pairs of the class being compared.
 *
 * @param units  the class's plantings in the model
 * @param level  level of the letters
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
  if (counts.size < 2) return null;
  const { classId } = nth(units, 0);
  const layout = model.layouts.get(classId);
  const plantings = median([...counts.values()]);
  const plants = median(units.map((unit) => unit.plants));
  const standing = median(units.map(({ planting }) => planting.plants));
  const mean = units.reduce((sum, { y }) => sum + y, 0) / units.length;
  const unit = (model.scales?.get(classId) ?? 1) * (model.family === 'poisson' ? 1 / mean : 1);
  const together = togetherFactor(layout, plantings * standing, spotCorrelation);
  const variance = model.dispersion * unit * placeVariance(layout, plants, spotCorrelation) * together;
  const critical = studentizedRangeQuantile(level, counts.size, model.residualDf) / Math.SQRT2;
  const needed = detectableNoncentrality(0.8, model.residualDf, critical) * Math.sqrt((2 * variance) / plantings);
  const difference = model.family === 'gaussian' ? needed : Math.exp(needed);
  return Number.isFinite(difference) ? { plantings, difference } : null;
}
