import { gaussLegendre } from '../../numerics/gaussLegendre.ts';
import { nth } from '../../numerics/element.ts';
import type { GardenClass, GardenSpreads } from './gardenCells.ts';
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
  return angles.map((own) => ({ ...own, weight: own.weight / total }));
}

/** Slopes of the log prior along the variances that `likeliestByReml` looks for. */
function priorSlopes({ isOneSeason, isPlain }: Told, variances: readonly number[], priorScale: number) {
  const ofPair = (pair: Pair, own: readonly number[]): readonly number[] => {
    const square = own.reduce((sum, x) => sum + x, 0);
    const steeps =
      own.length === 2
        ? [steepness(pair, 0, priorScale), steepness(pair, Math.PI / 2, priorScale)]
        : [anglesAt(pair, square, priorScale).reduce((sum, { weight, steep }) => sum + weight * steep, 0)];
    return steeps.map((steep) => 0.5 / square - 0.5 * steep);
  };
  const split = isOneSeason ? 1 : 2;
  return [
    ...ofPair('variety', variances.slice(0, split)),
    ...ofPair('garden', variances.slice(split, isPlain ? split + 1 : split + 2)),
  ];
}

/** Two variances whose difference has a standard error of so much of their sum are told only together. */
const UNTOLD = 0.5;

/**
 * The likeliest spreads, where cells are too many for a grid: with so many the spreads are known well enough for one place
 * to stand for all (shares are off by 0.002 at 240 cells, gardens page 2.3). How two share what is told only together the
 * values cannot say: there the prior has its angles.
 *
 * @source gardens page 2.3 and 3; Gelman (2006) Bayesian Anal. 1:515 for the priors
 */
export function likeliestCells(classes: readonly GardenClass[], priorScale: number): readonly GardenSpreadCell[] {
  const told = toldOf(classes);
  const found = likeliestByReml(classes, priorScale, (variances) => priorSlopes(told, variances, priorScale));
  const { between, withSeason, withGarden, rest } = found.spreads;
  const [ofVariety, ofGarden] = [Math.hypot(between, withSeason), Math.hypot(withGarden, rest)];
  const ofVarieties =
    found.ofVariety > UNTOLD * ofVariety ** 2
      ? anglesAt('variety', ofVariety ** 2, priorScale)
      : [{ angle: Math.atan2(withSeason, between), weight: 1 }];
  const ofGardens =
    found.ofGarden > UNTOLD * ofGarden ** 2
      ? anglesAt('garden', ofGarden ** 2, priorScale)
      : [{ angle: Math.atan2(rest, withGarden), weight: 1 }];
  return ofVarieties.flatMap((v) =>
    ofGardens.map((u) => ({
      ...spreadsOf([ofVariety, v.angle, ofGarden, u.angle]),
      weight: v.weight * u.weight,
    })),
  );
}
