import type { AdditiveFit } from '../numerics/additive.ts';
import { keyed } from '../numerics/element.ts';
import type { ModelOptions } from './plantTypes.ts';
import type { Unit } from './units.ts';

/** Units whose variety gave anything: of nothing there is no spread, and no logarithm. */
export function estimable(units: readonly Unit[], { family, isYield }: ModelOptions): readonly Unit[] {
  if (family === 'gaussian' && !isYield) return units;
  const total = new Map<string, number>();
  for (const { planting, y } of units) total.set(planting.variety, (total.get(planting.variety) ?? 0) + y);
  return units.filter(({ planting }) => keyed(total, planting.variety) > 0);
}

/** CV of single plants in a fit, percent; null where there is none to tell. */
export function cvPercent(fit: AdditiveFit, units: readonly Unit[]): number | null {
  if (fit.dispersion === null || fit.family === 'poisson') return null;
  if (fit.family === 'gamma') return 100 * Math.sqrt(fit.dispersion);
  const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
  const mean = units.reduce((sum, unit) => sum + unit.plants * unit.y, 0) / plants;
  return mean === 0 ? null : (100 * Math.sqrt(fit.dispersion)) / Math.abs(mean);
}

/** So small a part of the mean square is rounding: identical plants, and no spread to tell anything by. */
const ROUNDING = 1e-12;

/** True for a fit whose units differ by more than rounding. */
export function spreads({ dispersion, family }: AdditiveFit, used: readonly Unit[]): boolean {
  if (dispersion === null) return false;
  const power = family === 'gamma' ? 0 : family === 'poisson' ? 1 : 2;
  const scale = used.reduce((sum, { y }) => sum + Math.abs(y) ** power, 0) / used.length;
  return dispersion > ROUNDING * scale;
}
