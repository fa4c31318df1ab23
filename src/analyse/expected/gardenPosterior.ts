import { gaussLegendre } from '../../numerics/gaussLegendre.ts';
import { nth } from '../../numerics/element.ts';
import { cellCount } from './gardenCells.ts';
import type { GardenClass } from './gardenCells.ts';
import { gardensGiven, MOST_ON_GRID } from './gardenGiven.ts';
import { likeliestCells, spreadsOf } from './gardenLikeliest.ts';
import type { GardenSpreadCell, Point } from './gardenLikeliest.ts';

/** A point with its log density, and the logarithm of the weight of its place. */
interface Node {
  readonly at: Point;
  readonly log: number;
  readonly logPlace: number;
}

interface Box {
  readonly from: Point;
  readonly to: Point;
}

const NEGLIGIBLE = 8;
const PASSES = 20;
/** Nodes an axis while the box is drawn closer. */
const COARSE = 4;
/** Cells are left out whose weights together are no more than this. */
const LEFT_OUT = 1e-4;

function evaluate(density: (at: Point) => number, { from, to }: Box, points: number): readonly Node[] {
  const { nodes, weights } = gaussLegendre(points);
  const place = (axis: 0 | 1 | 2 | 3, i: number): number => from[axis] + nth(nodes, i) * (to[axis] - from[axis]);
  const found: Node[] = [];
  for (let a = 0; a < points; a++)
    for (let b = 0; b < points; b++)
      for (let c = 0; c < points; c++)
        for (let d = 0; d < points; d++) {
          const at: Point = [place(0, a), place(1, b), place(2, c), place(3, d)];
          const weight = nth(weights, a) * nth(weights, b) * nth(weights, c) * nth(weights, d);
          found.push({ at, log: density(at), logPlace: Math.log(weight) });
        }
  return found;
}

/** The part of the box that holds the posterior, the nodes next to it included. */
function narrowed({ from, to }: Box, nodes: readonly Node[]): Box {
  const top = nodes.reduce((most, { log }) => Math.max(most, log), -Infinity);
  const kept = nodes.filter(({ log }) => log > top - NEGLIGIBLE);
  const ends = (axis: 0 | 1 | 2 | 3): readonly [number, number] => {
    const places = [from[axis], ...new Set(nodes.map(({ at }) => at[axis])), to[axis]].toSorted((a, b) => a - b);
    const [first, last] = kept.reduce(
      ([low, high], { at }) => [Math.min(low, at[axis]), Math.max(high, at[axis])],
      [Infinity, -Infinity],
    );
    return [places.findLast((place) => place < first)!, places.find((place) => place > last)!];
  };
  const all = [ends(0), ends(1), ends(2), ends(3)] as const;
  return {
    from: [all[0][0], all[1][0], all[2][0], all[3][0]],
    to: [all[0][1], all[1][1], all[2][1], all[3][1]],
  };
}

const volume = ({ from, to }: Box): number => from.reduce((product, low, axis) => product * (nth(to, axis) - low), 1);

/** The cells that carry all but a ten-thousandth of the posterior. */
function weighed(nodes: readonly Node[]): readonly GardenSpreadCell[] {
  const mass = nodes.map(({ log, logPlace }) => log + logPlace);
  const top = mass.reduce((most, own) => Math.max(most, own), -Infinity);
  const weights = mass.map((own) => Math.exp(own - top));
  const total = weights.reduce((sum, own) => sum + own, 0);
  let left = LEFT_OUT * total;
  let least = 0;
  for (const own of weights.toSorted((a, b) => a - b)) {
    left -= own;
    if (left < 0) break;
    least = own;
  }
  const kept = nodes.flatMap(({ at }, i) => (nth(weights, i) > least ? [{ at, weight: nth(weights, i) }] : []));
  const sum = kept.reduce((all, { weight }) => all + weight, 0);
  return kept.map(({ at, weight }) => ({ ...spreadsOf(at), weight: weight / sum }));
}

/** Nodes an axis by how many values there are. */
function pointsFor(classes: readonly GardenClass[]): number {
  const values = classes.reduce((sum, own) => sum + own.values.length, 0);
  return values < 150 ? 12 : values < 600 ? 10 : values < 2000 ? 8 : 6;
}

/**
 * Posterior of σ_v ~ half-normal(A), σ_w, σ_u, σ_r ~ half-normal(A/2), shared over classes, by Gauss-Legendre
 * quadrature on a box that is drawn closer about the posterior until it fills it. No chains: the same bytes every run.
 *
 * With more cells than a grid can hold, the likeliest spreads.
 *
 * @param classes     every class's values of the trait
 * @param priorScale  A, working scale, > 0
 * @param points      nodes along each of the four axes; fewer where much is known, since the posterior is smoother then
 * @source gardens page 2.3; Gelman (2006) Bayesian Anal. 1:515; reference case o2
 */
export function gardenPosterior(
  classes: readonly GardenClass[],
  priorScale: number,
  points = pointsFor(classes),
): readonly GardenSpreadCell[] {
  if (classes.some((own) => cellCount(own) > MOST_ON_GRID)) return likeliestCells(classes, priorScale);
  const density = (at: Point): number => {
    const spreads = spreadsOf(at);
    const { between: v, withSeason: w, withGarden: u, rest: r } = spreads;
    const half = priorScale / 2;
    // The logarithms are those of the change of axes.
    let log = Math.log(at[0]) + Math.log(at[2]);
    log -= 0.5 * ((v / priorScale) ** 2 + (w / half) ** 2 + (u / half) ** 2 + (r / half) ** 2);
    for (const own of classes) log += gardensGiven(own, spreads).logLikelihood!;
    return log;
  };
  const right = Math.PI / 2;
  let box: Box = { from: [0, 0, 0, 0], to: [4 * priorScale, right, 3 * priorScale, right] };
  for (let pass = 0; pass < PASSES; pass++) {
    const next = narrowed(box, evaluate(density, box, COARSE));
    const isFull = volume(next) > 0.6 * volume(box);
    box = next;
    if (isFull) break;
  }
  return weighed(evaluate(density, box, points));
}

/**
 * So many cells of equal weight in place of many unequal ones, evenly spaced through their weights.
 *
 * @returns the cells as they are where they are few enough
 */
export function thinnedCells(cells: readonly GardenSpreadCell[], most: number): readonly GardenSpreadCell[] {
  if (cells.length <= most) return cells;
  const taken: GardenSpreadCell[] = [];
  let below = 0;
  for (const own of cells) {
    below += own.weight;
    while (taken.length < most && below >= (taken.length + 0.5) / most) taken.push({ ...own, weight: 1 / most });
  }
  return taken;
}
