import type { Settings } from '../terms/settings.ts';

/** Unit in which a trait is stored and written: g, fruits, d, points, share, or that of a measure. */
export function unitOfTrait(key: string, { traits }: Pick<Settings, 'traits'>): string {
  if (key === 'yield' || key === 'early_yield') return 'g';
  if (key === 'fruits') return 'fruits';
  if (key === 'first_ripe') return 'd';
  const trait = traits.get(key);
  if (trait?.kind === 'measure') return trait.unit;
  return trait?.kind === 'yes-no' ? 'share' : 'points';
}

/** The same as results.json names it: per plant where it is. */
export function publishedUnit(key: string, settings: Pick<Settings, 'traits'>): string {
  const unit = unitOfTrait(key, settings);
  return unit === 'g' && settings.traits.get(key) === undefined ? 'g/plant' : unit === 'fruits' ? 'fruits/plant' : unit;
}
