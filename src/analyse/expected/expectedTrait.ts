import { mixtureQuantile } from '../../numerics/mixture.ts';
import { solveLower } from '../../numerics/cholesky.ts';
import { classMeanOf, spreadMeans } from './classMean.ts';
import { seasonMeans, spreadPosterior, varietyGiven } from './posterior.ts';
import type { ClassValues, SeasonMeans, SpreadCell, VarietyGiven } from './posterior.ts';
import { nth } from '../../numerics/element.ts';

/** What next season is expected to bring of a trait, for one variety, on the working scale. */
export interface ExpectedVariety {
  readonly variety: string;
  readonly mean: number;
  /** Prediction interval: the season-to-season spread is in it. */
  readonly low: number;
  readonly high: number;
  /** Share of the distance from the class that comes from the variety's own records, 0 to 1. */
  readonly ownShare: number;
  /** Posterior variance of the variety's own part, season-to-season spread not in it. */
  readonly variance: number;
}

export interface ExpectedClass {
  readonly classId: string;
  /** Posterior mean of the class's mean in an average season, working scale. */
  readonly classMean: number;
  readonly varieties: readonly ExpectedVariety[];
}

/** A trait's posterior with what it says of every class. */
export interface ExpectedTrait {
  readonly cells: readonly SpreadCell[];
  /** Posterior means of σ_v and σ_w, working scale. */
  readonly between: number;
  readonly withSeason: number;
  readonly classes: readonly ExpectedClass[];
}

/** Mean and variance of class mean + variety in a cell: q'm + fixed, the season means integrated out. */
function levelOf(
  given: VarietyGiven,
  { means, factor }: SeasonMeans,
): { readonly mean: number; readonly variance: number } {
  const size = means.length;
  const q = new Float64Array(size);
  let mean = given.fixed;
  for (let s = 0; s < size; s++) {
    q[s] = 1 / size - nth(given.pull, s);
    mean += nth(q, s) * nth(means, s);
  }
  solveLower(factor, size, q);
  let variance = given.variance;
  for (let s = 0; s < size; s++) variance += nth(q, s) * nth(q, s);
  return { mean, variance };
}

const meansOf = (own: ClassValues, cells: readonly SpreadCell[]): readonly SeasonMeans[] =>
  cells.map(({ between, withSeason }) => seasonMeans(own, between, withSeason));

function expectedClass(own: ClassValues, cells: readonly SpreadCell[], level: number): ExpectedClass {
  const means = meansOf(own, cells);
  const average = (of: (cell: SpreadCell, i: number) => number): number =>
    cells.reduce((sum, cell, i) => sum + cell.weight * of(cell, i), 0);
  const varieties = own.varieties.map(({ id, values }): ExpectedVariety => {
    const given = cells.map(({ between, withSeason }) => varietyGiven(values, own.seasons, between, withSeason));
    const levels = given.map((one, i) => levelOf(one, nth(means, i)));
    const parts = cells.map(({ weight, withSeason }, i) => ({
      weight,
      mean: nth(levels, i).mean,
      sd: Math.sqrt(nth(levels, i).variance + withSeason ** 2),
    }));
    return {
      variety: id,
      mean: average((_, i) => nth(levels, i).mean),
      low: mixtureQuantile(parts, (1 - level) / 2),
      high: mixtureQuantile(parts, (1 + level) / 2),
      ownShare: average((_, i) => nth(given, i).ownShare),
      variance: average((_, i) => nth(given, i).variance),
    };
  });
  return { classId: own.classId, classMean: classMeanOf(means, cells), varieties };
}

/** A trait's posterior with what is said of each class by it. */
function fromPosterior(
  classes: readonly ClassValues[],
  cells: readonly SpreadCell[],
  of: (own: ClassValues) => ExpectedClass,
): ExpectedTrait {
  return { cells, ...spreadMeans(cells), classes: classes.map(of) };
}

/**
 * Stage two for one trait: all seasons and classes together.
 *
 * @param classes     the trait's values by class
 * @param priorScale  A of the priors, working scale
 * @param level       level of the prediction interval
 * @param points      grid points along each axis
 * @source methods page B; Piepho et al. (2012) Biom. J. 54:844; Gelman (2006) Bayesian Anal. 1:515
 */
export function expectedTrait(
  classes: readonly ClassValues[],
  priorScale: number,
  level: number,
  points?: number,
): ExpectedTrait {
  const cells = spreadPosterior(classes, priorScale, points);
  return fromPosterior(classes, cells, (own) => expectedClass(own, cells, level));
}

/** The same without its varieties: all that verdicts are drawn from. */
export function expectedSpreads(classes: readonly ClassValues[], priorScale: number): ExpectedTrait {
  const cells = spreadPosterior(classes, priorScale);
  return fromPosterior(classes, cells, (own) => ({
    classId: own.classId,
    classMean: classMeanOf(meansOf(own, cells), cells),
    varieties: [],
  }));
}
