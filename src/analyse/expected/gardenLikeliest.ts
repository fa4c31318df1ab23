import { gaussLegendre } from '../../numerics/gaussLegendre.ts';
import { nth } from '../../numerics/element.ts';
import type { GardenClass, GardenSpreads } from './gardenCells.ts';
import { likeliestByReml, toldOf, UNTOLD } from './gardenReml.ts';
import type { Difference, Look, Told } from './gardenReml.ts';

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

/** A difference so well known, in parts of the sum, stands for itself. */
const WELL_TOLD = 0.1;
/** Standard errors about the likeliest difference that count. */
const REACH = 4;

/** An angle with its weight among those that stand for all. */
interface Angle {
  readonly angle: number;
  readonly weight: number;
}

/**
 * Angles by which a pair shares a sum of squares, weighed by what the values say of the difference of their variances and by
 * the priors: of a well told one a single angle, of one that is told only together what the priors have.
 */
function anglesOf(pair: Pair, square: number, { at, slope, error }: Difference, priorScale: number): readonly Angle[] {
  const angleAt = (difference: number): number => Math.acos(Math.max(-1, Math.min(1, difference / square))) / 2;
  if (error < WELL_TOLD * square && Math.abs(at) + 2 * error < square) return [{ angle: angleAt(at), weight: 1 }];
  const [from, to] = [angleAt(at + REACH * error), angleAt(at - REACH * error)];
  // A garden's angle moves its own figures alone.
  const { nodes, weights } = gaussLegendre(pair === 'variety' ? 4 : 2);
  const logs = Array.from(nodes, (x) => {
    const angle = from + x * (to - from);
    const off = square * Math.cos(2 * angle) - at;
    return { angle, log: slope * off - 0.5 * (off / error) ** 2 - 0.5 * square * steepness(pair, angle, priorScale) };
  });
  const top = Math.max(...logs.map(({ log }) => log));
  const angles = logs.map(({ angle, log }, i) => ({ angle, weight: nth(weights, i) * Math.exp(log - top) }));
  const total = angles.reduce((sum, { weight }) => sum + weight, 0);
  return angles.map(({ angle, weight }) => ({ angle, weight: weight / total }));
}

/** Steepness of the priors over all angles of a pair that is told only together. */
const meanSteepness = (pair: Pair, square: number, priorScale: number): number =>
  anglesOf(pair, square, UNTOLD, priorScale).reduce(
    (sum, { angle, weight }) => sum + weight * steepness(pair, angle, priorScale),
    0,
  );

/** The log prior of the variances that `likeliestByReml` looks for, sums of squares taken by their roots. */
function priorOf({ isOneSeason, isPlain }: Told, variances: readonly number[], priorScale: number): Look {
  const size = variances.length;
  const slope: number[] = [];
  const information = new Float64Array(size * size);
  const split = isOneSeason ? 1 : 2;
  for (const [pair, from, to] of [
    ['variety', 0, split],
    ['garden', split, isPlain ? split + 1 : split + 2],
  ] as const) {
    const square = variances.slice(from, to).reduce((sum, own) => sum + own, 0);
    const steeps =
      to - from === 2
        ? [steepness(pair, 0, priorScale), steepness(pair, Math.PI / 2, priorScale)]
        : [meanSteepness(pair, square, priorScale)];
    slope.push(...steeps.map((steep) => 0.5 / square - 0.5 * steep));
    for (let k = from; k < to; k++) for (let l = from; l < to; l++) information[k * size + l] = 0.5 / square ** 2;
  }
  return { slope, information };
}

/**
 * The likeliest spreads, where cells are too many for a grid: with so many the spreads are known well enough for one place
 * to stand for all (shares are off by 0.002 at 240 cells, gardens page 2.3), but for how two of them share what is told
 * hardly but together.
 *
 * @source gardens page 2.3 and 3; Gelman (2006) Bayesian Anal. 1:515 for the priors
 */
export function likeliestCells(classes: readonly GardenClass[], priorScale: number): readonly GardenSpreadCell[] {
  const told = toldOf(classes);
  const found = likeliestByReml(classes, priorScale, (variances) => priorOf(told, variances, priorScale));
  const { between, withSeason, withGarden, rest } = found.spreads;
  const [ofVariety, ofGarden] = [Math.hypot(between, withSeason), Math.hypot(withGarden, rest)];
  const ofVarieties = anglesOf('variety', ofVariety ** 2, found.ofVariety, priorScale);
  const ofGardens = anglesOf('garden', ofGarden ** 2, found.ofGarden, priorScale);
  return ofVarieties.flatMap((v) =>
    ofGardens.map((u) => ({
      ...spreadsOf([ofVariety, v.angle, ofGarden, u.angle]),
      weight: v.weight * u.weight,
    })),
  );
}
