import { solveUpper } from '../numerics/cholesky.ts';
import { randomStream } from '../numerics/random.ts';
import { seasonMeans, varietyGiven } from '../analyse/expected/posterior.ts';
import type { ClassValues, SeasonMeans, SpreadCell } from '../analyse/expected/posterior.ts';
import { cell, nth } from '../numerics/element.ts';

/** Draws next seasons of one trait in one class, a batch at a time. */
export interface TraitDraws {
  /**
   * Fills the next batch, working scale.
   *
   * @param values    batch × varieties, a draw's varieties side by side
   * @param newcomer  an untried variety in the middle of its class, one a draw
   */
  readonly next: (values: Float64Array, newcomer: Float64Array) => void;
}

/** Where a uniform number falls among weights that were added up. */
export function pickCell(cumulated: Float64Array, u: number): number {
  let [low, high] = [0, cumulated.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (cell(cumulated, middle) < u) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A cell's season means and varieties, worked out once and used by every draw that falls into it. */
interface CellDraws {
  readonly season: SeasonMeans;
  /** v_i = fixed_i − Σ pull_is·m_s, a variety's seasons side by side. */
  readonly fixed: Float64Array;
  readonly pull: Float64Array;
  /** SD of a variety's next season given the season means. */
  readonly sd: Float64Array;
}

function cellDraws({ seasons, varieties }: ClassValues, cell: SpreadCell, season: SeasonMeans): CellDraws {
  const n = varieties.length;
  const [fixed, pull, sd] = [new Float64Array(n), new Float64Array(n * seasons), new Float64Array(n)];
  varieties.forEach(({ values }, i) => {
    const given = varietyGiven(values, seasons, cell.between, cell.withSeason);
    fixed[i] = given.fixed;
    pull.set(given.pull, i * seasons);
    sd[i] = Math.sqrt(given.variance + cell.withSeason ** 2);
  });
  return { season, fixed, pull, sd };
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
  const known = new Map<number, CellDraws>();
  const given = (at: number): CellDraws => {
    let found = known.get(at);
    if (!found) {
      const cell = nth(cells, at);
      found = cellDraws(own, cell, seasonMeans(own, cell.between, cell.withSeason));
      known.set(at, found);
    }
    return found;
  };
  const means = new Float64Array(seasons);
  return {
    next(values, newcomer) {
      const batch = newcomer.length;
      for (let j = 0; j < batch; j++) {
        const { season, fixed, pull, sd } = given(pickCell(cumulated, shared.uniform()));
        for (let s = 0; s < seasons; s++) means[s] = shared.normal();
        solveUpper(season.factor, seasons, means);
        let classMean = 0;
        for (let s = 0; s < seasons; s++) {
          means[s]! += cell(season.means, s);
          classMean += cell(means, s) / seasons;
        }
        newcomer[j] = classMean;
        for (let i = 0; i < varieties.length; i++) {
          let value = classMean + cell(fixed, i);
          for (let s = 0, at = i * seasons; s < seasons; s++) value -= cell(pull, at + s) * cell(means, s);
          values[j * varieties.length + i] = value + cell(sd, i) * streams[i]!.normal();
        }
      }
    },
  };
}
