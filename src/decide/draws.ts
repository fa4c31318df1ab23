import { solveUpper } from '../numerics/cholesky.ts';
import { randomStream } from '../numerics/random.ts';
import { seasonMeans } from '../analyse/expected/posterior.ts';
import type { ClassValues, SeasonMeans, SpreadCell } from '../analyse/expected/posterior.ts';

/** Draws next seasons of one trait in one class, a batch at a time. */
export interface TraitDraws {
  /**
   * Fills the next batch, working scale.
   *
   * @param values    varieties × batch, a variety's draws side by side
   * @param newcomer  an untried variety in the middle of its class, one a draw
   */
  readonly next: (values: Float64Array, newcomer: Float64Array) => void;
}

/** Where a uniform number falls among weights that were added up. */
function pick(cumulated: Float64Array, u: number): number {
  let [low, high] = [0, cumulated.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (cumulated[middle]! < u) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Opens the draws of a trait in a class: variance cell, season means and varieties jointly, a new season for each.
 * Every variety has a stream of its own, so that neither the order of rows nor another variety changes its numbers.
 *
 * @param own    the class's values; every competitor is among its varieties
 * @param cells  the posterior of the two standard deviations
 * @param name   name of the stream: seed, class and trait
 * @source methods page C
 */
export function openDraws(own: ClassValues, cells: readonly SpreadCell[], name: string): TraitDraws {
  const { seasons, varieties } = own;
  const shared = randomStream(name);
  const streams = varieties.map(({ id }) => randomStream(`${name}/${id}`));
  const cumulated = new Float64Array(cells.length);
  cells.reduce((sum, { weight }, i) => (cumulated[i] = sum + weight), 0);
  const known = new Map<number, SeasonMeans>();
  const given = (cell: number): SeasonMeans => {
    const found = known.get(cell) ?? seasonMeans(own, cells[cell]!.between, cells[cell]!.withSeason);
    known.set(cell, found);
    return found;
  };
  const means = new Float64Array(seasons);
  return {
    next(values, newcomer) {
      const batch = newcomer.length;
      for (let j = 0; j < batch; j++) {
        const at = pick(cumulated, shared.uniform());
        const cell = cells[at]!;
        const season = given(at);
        for (let s = 0; s < seasons; s++) means[s] = shared.normal();
        solveUpper(season.factor, seasons, means);
        let classMean = 0;
        for (let s = 0; s < seasons; s++) {
          means[s]! += season.means[s]!;
          classMean += means[s]! / seasons;
        }
        newcomer[j] = classMean;
        const [v2, w2] = [cell.between ** 2, cell.withSeason ** 2];
        for (let i = 0; i < varieties.length; i++) {
          const list = varieties[i]!.values;
          let [total, weighted] = [0, 0];
          for (const one of list) {
            const d = 1 / (one.variance + w2);
            total += d;
            weighted += d * (one.theta - means[one.season]!);
          }
          const variance = v2 / (1 + v2 * total);
          values[i * batch + j] = classMean + variance * weighted + Math.sqrt(variance + w2) * streams[i]!.normal();
        }
      }
    },
  };
}
