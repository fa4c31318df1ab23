import type { SeasonMeans, SpreadCell } from './posterior.ts';
import { nth } from '../../numerics/element.ts';

/**
 * Posterior mean of a class's mean in an average season, working scale: the mean of its recorded season means.
 *
 * @param given  the class's season means in every cell
 */
export function classMeanOf(given: readonly SeasonMeans[], cells: readonly SpreadCell[]): number {
  let average = 0;
  given.forEach(({ means }, i) => {
    average += (nth(cells, i).weight * means.reduce((sum, m) => sum + m, 0)) / means.length;
  });
  return average;
}

/**
 * Posterior means of σ_v and σ_w, working scale.
 *
 * @param cells  of the grid, their weights adding up to 1
 * @source methods page B
 */
export function spreadMeans(cells: readonly SpreadCell[]): { readonly between: number; readonly withSeason: number } {
  return {
    between: cells.reduce((sum, { between, weight }) => sum + weight * between, 0),
    withSeason: cells.reduce((sum, { withSeason, weight }) => sum + weight * withSeason, 0),
  };
}
