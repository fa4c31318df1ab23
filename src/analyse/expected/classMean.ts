import { seasonMeans } from './posterior.ts';
import type { ClassValues, SpreadCell } from './posterior.ts';

/** Posterior mean of a class's mean in an average season, working scale: the mean of its recorded season means. */
export function classMeanOf(own: ClassValues, cells: readonly SpreadCell[]): number {
  let average = 0;
  for (const { between, withSeason, weight } of cells) {
    const { means } = seasonMeans(own, between, withSeason);
    average += (weight * means.reduce((sum, m) => sum + m, 0)) / own.seasons;
  }
  return average;
}
