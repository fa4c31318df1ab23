import { solveUpper } from '../numerics/cholesky.ts';
import { openStrata } from '../numerics/strata.ts';
import { seasonMeans, varietyGiven } from '../analyse/expected/posterior.ts';
import type { ClassValues, SeasonMeans, SpreadCell } from '../analyse/expected/posterior.ts';
import { cell, nth } from '../numerics/element.ts';

/** Draws next seasons of one trait in one class, a batch at a time. */
export interface TraitDraws {
  /**
   * Fills the next batch, working scale.
   *
   * @param values    batch × varieties, a draw's varieties side by side
   * @param newcomer  an untried variety in the middle of its class, one a draw; draws are even in number
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
  /** Mean of a variety's next season, and of the class's. */
  readonly middle: Float64Array;
  readonly classMiddle: number;
  /** What a variety takes of the deviation of each season mean, a variety's seasons side by side. */
  readonly takes: Float64Array;
  /** SD of a variety's next season given the season means. */
  readonly sd: Float64Array;
}

function cellDraws(own: ClassValues, { between, withSeason }: SpreadCell): CellDraws {
  const { seasons, varieties } = own;
  const n = varieties.length;
  const season = seasonMeans(own, between, withSeason);
  const classMiddle = season.means.reduce((sum, mean) => sum + mean / seasons, 0);
  const [middle, takes, sd] = [new Float64Array(n), new Float64Array(n * seasons), new Float64Array(n)];
  varieties.forEach(({ values }, i) => {
    const given = varietyGiven(values, seasons, between, withSeason);
    middle[i] = classMiddle + given.fixed;
    for (let s = 0; s < seasons; s++) {
      middle[i] -= cell(given.pull, s) * cell(season.means, s);
      takes[i * seasons + s] = 1 / seasons - cell(given.pull, s);
    }
    sd[i] = Math.sqrt(given.variance + withSeason ** 2);
  });
  return { season, middle, classMiddle, takes, sd };
}

/**
 * Opens the draws of a trait in a class: variance cell, season means and varieties jointly, a new season for each.
 * Draws go in pairs that lie opposite each other about the means of their cell, so that chance in one is taken back by
 * the other. Every variety has a stream of its own, so that neither the order of rows nor another variety changes its
 * numbers.
 *
 * @param own    the class's values; every competitor is among its varieties
 * @param cells  the posterior of the two standard deviations
 * @param name   name of the stream: seed, class and trait
 * @source methods page C; Hammersley & Morton (1956) Proc. Camb. Phil. Soc. 52:449 for pairs of opposite draws
 */
export function openDraws(own: ClassValues, cells: readonly SpreadCell[], name: string): TraitDraws {
  const { seasons, varieties } = own;
  const n = varieties.length;
  const shared = openStrata(name);
  const streams = varieties.map(({ id }) => openStrata(`${name}/${id}`));
  const cumulated = new Float64Array(cells.length);
  cells.reduce((sum, { weight }, i) => (cumulated[i] = sum + weight), 0);
  const known: (CellDraws | undefined)[] = cells.map(() => undefined);
  let picked: readonly CellDraws[] = [];
  /** How far a batch's season means lie from the middle of their cell, a pair's side by side. */
  let apart = new Float64Array(0);
  let numbers = new Float64Array(0);
  const pickPairs = (pairs: number): void => {
    if (numbers.length !== pairs) [numbers, apart] = [new Float64Array(pairs), new Float64Array(pairs * seasons)];
    shared.uniforms(numbers);
    picked = Array.from(numbers, (u) => {
      const at = pickCell(cumulated, u);
      return (known[at] ??= cellDraws(own, nth(cells, at)));
    });
    for (let s = 0; s < seasons; s++) {
      shared.normals(numbers);
      for (let k = 0; k < pairs; k++) apart[k * seasons + s] = cell(numbers, k);
    }
    picked.forEach(({ season }, k) =>
      solveUpper(season.factor, seasons, apart.subarray(k * seasons, (k + 1) * seasons)),
    );
  };
  return {
    next(values, newcomer) {
      const pairs = newcomer.length / 2;
      pickPairs(pairs);
      for (let k = 0; k < pairs; k++) {
        let away = 0;
        for (let s = k * seasons; s < (k + 1) * seasons; s++) away += cell(apart, s) / seasons;
        newcomer[2 * k] = picked[k]!.classMiddle + away;
        newcomer[2 * k + 1] = picked[k]!.classMiddle - away;
      }
      for (let i = 0; i < n; i++) {
        streams[i]!.normals(numbers);
        for (let k = 0, into = i; k < pairs; k++, into += 2 * n) {
          const { middle, takes, sd } = picked[k]!;
          let away = cell(sd, i) * cell(numbers, k);
          for (let s = 0; s < seasons; s++) away += cell(takes, i * seasons + s) * cell(apart, k * seasons + s);
          values[into] = cell(middle, i) + away;
          values[into + n] = cell(middle, i) - away;
        }
      }
    },
  };
}
