import { gaussLegendre } from '../../numerics/gaussLegendre.ts';
import { nth } from '../../numerics/element.ts';
import { cellCount } from './gardenCells.ts';
import type { GardenClass, GardenSpreads } from './gardenCells.ts';
import { gardensGiven, MOST_FULL } from './gardenGiven.ts';
import { likeliestByReml, toldOf } from './gardenReml.ts';
import type { Told } from './gardenReml.ts';

/**
 * A place among the spreads: of variety and season, and of garden and rest, how large they are together and by which angle
 * they share it. One season tells the sums of squares and hardly the parts: along these axes the posterior is no thin arc.
 */
export type Point = readonly [ofVariety: number, seasonAngle: number, ofGarden: number, restAngle: number];

/** A point of the grid over the four standard deviations, with its share of the posterior. */
export interface GardenSpreadCell extends GardenSpreads {
  readonly weight: number;
}

export const spreadsOf = ([ofVariety, seasonAngle, ofGarden, restAngle]: Point): GardenSpreads => ({
  between: ofVariety * Math.cos(seasonAngle),
  withSeason: ofVariety * Math.sin(seasonAngle),
  withGarden: ofGarden * Math.cos(restAngle),
  rest: ofGarden * Math.sin(restAngle),
});

type Pair = 'variety' | 'garden';

/** What the half-normal priors multiply half a pair's sum of squares by, at an angle. */
const steepness = (pair: Pair, angle: number, priorScale: number): number =>
  (pair === 'garden' ? 4 : Math.cos(angle) ** 2 + 4 * Math.sin(angle) ** 2) / priorScale ** 2;

/** Angles that stand for all of a pair that is told only together, with their weights at a sum of squares. */
function anglesAt(pair: Pair, square: number, priorScale: number) {
  // A garden's angle moves its own figures alone.
  const { nodes, weights } = gaussLegendre(pair === 'variety' ? 4 : 2);
  const angles = Array.from(nodes, (x, i) => {
    const angle = (x * Math.PI) / 2;
    const steep = steepness(pair, angle, priorScale);
    return { angle, steep, weight: nth(weights, i) * Math.exp(-0.5 * square * steep) };
  });
  const total = angles.reduce((sum, { weight }) => sum + weight, 0);
  return { total, angles: angles.map((own) => ({ ...own, weight: own.weight / total })) };
}

/** Log density of a pair's prior at a sum of squares, over all angles where they are told only together. */
function logPrior(pair: Pair, size: number, angle: number, isTold: boolean, priorScale: number): number {
  if (isTold) return Math.log(size) - 0.5 * size * size * steepness(pair, angle, priorScale);
  return Math.log(size) + Math.log(anglesAt(pair, size * size, priorScale).total);
}

/** The search for the likeliest place ends at steps of so much of its first ones. */
const CLOSE = 1 / 128;

/** The likeliest place by steps along each axis that the values tell, halved where none leads up. */
function byLikelihood(classes: readonly GardenClass[], told: Told, priorScale: number): Point {
  const density = (at: Point): number =>
    classes.reduce(
      (log, own) => log + gardensGiven(own, spreadsOf(at)).logLikelihood!,
      logPrior('variety', at[0], at[1], !told.isOneSeason, priorScale) +
        logPrior('garden', at[2], at[3], !told.isPlain, priorScale),
    );
  const axes = ([0, 1, 2, 3] as const).filter(
    (axis) => !(axis === 1 && told.isOneSeason) && !(axis === 3 && told.isPlain),
  );
  let at: Point = [0.6 * priorScale, 0.5, 0.6 * priorScale, 0.8];
  const ends: Point = [4 * priorScale, Math.PI / 2, 3 * priorScale, Math.PI / 2];
  let best = density(at);
  for (let part = 1; part >= CLOSE; part /= 2) {
    for (let isBetter = true; isBetter;) {
      isBetter = false;
      for (const axis of axes)
        for (const sign of [-1, 1]) {
          const step = sign * part * (axis % 2 === 0 ? 0.2 * priorScale : 0.3);
          const next = at.map((own, i) => (i === axis ? own + step : own)) as unknown as Point;
          if (next[axis] <= 0 || next[axis] >= ends[axis]) continue;
          const there = density(next);
          if (there <= best) continue;
          [at, best, isBetter] = [next, there, true];
        }
    }
  }
  return at;
}

/** Slopes of the log prior along the variances that `likeliestByReml` looks for. */
function priorSlopes({ isOneSeason, isPlain }: Told, variances: readonly number[], priorScale: number) {
  const ofPair = (pair: Pair, own: readonly number[]): readonly number[] => {
    const square = own.reduce((sum, x) => sum + x, 0);
    const steeps =
      own.length === 2
        ? [steepness(pair, 0, priorScale), steepness(pair, Math.PI / 2, priorScale)]
        : [anglesAt(pair, square, priorScale).angles.reduce((sum, { weight, steep }) => sum + weight * steep, 0)];
    return steeps.map((steep) => 0.5 / square - 0.5 * steep);
  };
  const split = isOneSeason ? 1 : 2;
  return [
    ...ofPair('variety', variances.slice(0, split)),
    ...ofPair('garden', variances.slice(split, isPlain ? split + 1 : split + 2)),
  ];
}

function byInformation(classes: readonly GardenClass[], told: Told, priorScale: number): Point {
  const { between, withSeason, withGarden, rest } = likeliestByReml(classes, priorScale, (variances) =>
    priorSlopes(told, variances, priorScale),
  );
  return [
    Math.hypot(between, withSeason),
    Math.atan2(withSeason, between),
    Math.hypot(withGarden, rest),
    Math.atan2(rest, withGarden),
  ];
}

/**
 * The likeliest spreads, where cells are too many for a grid: with so many the spreads are known well enough for one place
 * to stand for all (shares are off by 0.002 at 240 cells, gardens page 2.3). How two share what is told only together the
 * values cannot say: there the prior has its angles. Where cells are too many for a matrix, by average information.
 *
 * @source gardens page 2.3 and 3; Gelman (2006) Bayesian Anal. 1:515 for the priors
 */
export function likeliestCells(classes: readonly GardenClass[], priorScale: number): readonly GardenSpreadCell[] {
  const told = toldOf(classes);
  const isFull = classes.every((own) => cellCount(own) <= MOST_FULL);
  const [ofVariety, seasonAngle, ofGarden, restAngle] = isFull
    ? byLikelihood(classes, told, priorScale)
    : byInformation(classes, told, priorScale);
  const ofVarieties = told.isOneSeason
    ? anglesAt('variety', ofVariety ** 2, priorScale).angles
    : [{ angle: seasonAngle, weight: 1 }];
  const ofGardens = told.isPlain
    ? anglesAt('garden', ofGarden ** 2, priorScale).angles
    : [{ angle: restAngle, weight: 1 }];
  return ofVarieties.flatMap((v) =>
    ofGardens.map((u) => ({
      ...spreadsOf([ofVariety, v.angle, ofGarden, u.angle]),
      weight: v.weight * u.weight,
    })),
  );
}
