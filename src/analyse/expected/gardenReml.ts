import { solveLower, solveUpper, choleskyFactor } from '../../numerics/cholesky.ts';
import { cell, nth } from '../../numerics/element.ts';
import { notConverged } from '../../numerics/notConverged.ts';
import { randomStream } from '../../numerics/random.ts';
import { oncePer } from '../../terms/once.ts';
import { networkGiven, projected } from './gardenNetwork.ts';
import { networkOf, summed } from './networkRows.ts';
import type { Network } from './networkRows.ts';
import { packedGardens } from './gardenCells.ts';
import type { GardenClass, GardenSpreads } from './gardenCells.ts';

/** A variance with the rows it joins: those of one effect have it in common. */
interface Component {
  readonly where: (network: Network) => Int32Array;
  readonly effects: (network: Network) => number;
}

const VARIETY: Component = {
  where: oncePer(({ cellOf, varietyOf }) => cellOf.map((own) => varietyOf[own]!)),
  effects: ({ varieties }) => varieties,
};
const CELL: Component = { where: ({ cellOf }) => cellOf, effects: ({ varietyOf }) => varietyOf.length };
const RUN: Component = { where: ({ runOf }) => runOf, effects: ({ runFrom }) => runFrom.length - 1 };
const ROW: Component = {
  where: oncePer(({ cellOf }) => Int32Array.from(cellOf, (_, i) => i)),
  effects: ({ cellOf }) => cellOf.length,
};

/** What the classes tell: a pair of variances that is told only together is one. */
export interface Told {
  readonly isOneSeason: boolean;
  readonly isPlain: boolean;
}

export function toldOf(classes: readonly GardenClass[]): Told {
  const all = classes.map(packedGardens);
  return {
    isOneSeason: all.every(({ isOneSeason }) => isOneSeason),
    isPlain: all.every(({ isPlain }) => isPlain),
  };
}

/** What a prior's log density of the variances adds to slope and information of the likelihood. */
export type VariancePrior = (variances: readonly number[]) => Look;

/** Slope of a log density along variances, and how it bends, components × components. */
export interface Look {
  readonly slope: readonly number[];
  readonly information: Float64Array;
}

/** Rows of effects: each gets its effect's value. */
const laidOut = (effects: Float64Array, where: Int32Array): Float64Array =>
  Float64Array.from(where, (own) => effects[own]!);

/** How traces are found: from a few sets of random signs, or one by one. */
export type Probes = 'random' | 'exact';

/** Sets of signs by how many effects there are: a trace over many errs less. */
const probesFor = (effects: number): number => Math.min(16, Math.max(1, Math.ceil(8000 / effects)));

/**
 * What is left of a solution's right side, in parts of it: quadratic forms err by the square of it.
 */
const FOR_FORMS = 1e-4;

/** Traces of P A of one component: exact from unit vectors, else from signs. */
function traceOf(
  component: Component,
  network: Network,
  project: (x: Float64Array) => Float64Array,
  probes: Probes,
  name: string,
): number {
  const [where, size] = [component.where(network), component.effects(network)];
  const stream = randomStream(name);
  const count = probes === 'exact' ? size : probesFor(size);
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const probe =
      probes === 'exact'
        ? new Float64Array(size).fill(1, k, k + 1)
        : Float64Array.from({ length: size }, () => (stream.uniform() < 0.5 ? -1 : 1));
    const back = summed(project(laidOut(probe, where)), where, size);
    for (let i = 0; i < size; i++) sum += cell(probe, i) * cell(back, i);
  }
  return probes === 'exact' ? sum : sum / count;
}

function lookAt(
  classes: readonly GardenClass[],
  components: readonly Component[],
  spreads: GardenSpreads,
  probes: Probes,
): Look {
  const size = components.length;
  const [slope, information] = [components.map(() => 0), new Float64Array(size * size)];
  classes.forEach((own, c) => {
    const network = networkOf(own);
    const given = networkGiven(network, spreads);
    const project = (x: Float64Array): Float64Array => projected(given, x, FOR_FORMS);
    const left = projected(given, network.theta);
    const along = components.map((one) => {
      const where = one.where(network);
      return laidOut(summed(left, where, one.effects(network)), where);
    });
    components.forEach((one, k) => {
      const square = along[k]!.reduce((sum, own, i) => sum + own * cell(left, i), 0);
      slope[k]! += (square - traceOf(one, network, project, probes, `traces/${c}/${k}`)) / 2;
      const again = project(along[k]!);
      for (let l = 0; l <= k; l++) {
        const form = along[l]!.reduce((sum, own, i) => sum + own * cell(again, i), 0) / 2;
        information[k * size + l]! += form;
        if (l < k) information[l * size + k]! += form;
      }
    });
  });
  return { slope, information };
}

/** Two log densities together. */
const both = (a: Look, b: Look): Look => ({
  slope: a.slope.map((own, k) => own + nth(b.slope, k)),
  information: a.information.map((own, i) => own + cell(b.information, i)),
});

const MOST_ROUNDS = 200;
/** Steps so small in parts of the variance end the search. */
const CLOSE = 1e-3;
/** A variance no larger than this part of the prior's is at its end. */
const LEAST = 1e-8;

/** What the values say of the difference of two variances whose sum they tell: a parabola about where it was found. */
export interface Difference {
  readonly at: number;
  /** Slope of the log likelihood there, along the difference. */
  readonly slope: number;
  /** Standard error; endless where the values tell the sum alone. */
  readonly error: number;
}

/** The likeliest spreads; of a pair that is told only together each has half of their variance. */
export interface LikeliestSpreads {
  readonly spreads: GardenSpreads;
  /** Of σ_v² - σ_w², and of σ_u² - σ_r². */
  readonly ofVariety: Difference;
  readonly ofGarden: Difference;
}

/** The difference of two variances that stand beside each other, along the line on which their sum stays as it is. */
function differenceOf(variances: readonly number[], { slope, information }: Look, at: number): Difference {
  const size = variances.length;
  const [own, next, joint] = [
    cell(information, at * size + at),
    cell(information, (at + 1) * size + at + 1),
    cell(information, at * size + at + 1),
  ];
  return {
    at: nth(variances, at) - nth(variances, at + 1),
    slope: (nth(slope, at) - nth(slope, at + 1)) / 2,
    error: 2 / Math.sqrt(Math.max(0, own + next - 2 * joint)),
  };
}

/** Of a pair of which the values tell the sum alone. */
export const UNTOLD: Difference = { at: 0, slope: 0, error: Infinity };

/** A step along the slope, scaled by the information of those variances that are not held at their end. */
function stepOf({ slope, information }: Look, held: readonly boolean[]): readonly number[] {
  const size = slope.length;
  const matrix = information.slice();
  const step = Float64Array.from(slope, (own, k) => (held[k] ? 0 : own));
  for (let k = 0; k < size; k++)
    for (let l = 0; l < size; l++) {
      if (held[k] || held[l]) matrix[k * size + l] = k === l ? 1 : 0;
      else if (k === l) matrix[k * size + l]! *= 1 + 1e-9;
    }
  const factor = choleskyFactor(matrix, size);
  if (!factor) return Array.from(slope, (own, k) => own / nth(information, k * size + k));
  return [...solveUpper(factor, size, solveLower(factor, size, step))];
}

/**
 * The likeliest spreads by average information, traces by random signs: time and memory grow with the number of rows.
 *
 * @param classes     the trait's values by class; the spreads are shared
 * @param start       a standard deviation to begin at, working scale, > 0
 * @param prior       null for the restricted likelihood alone
 * @param probes      `exact` for traces from unit vectors, one an effect: for few of them
 * @throws NotConverged after 200 rounds
 * @source gardens page 3; Gilmour, Thompson & Cullis (1995) Biometrics 51:1440; Hutchinson (1990) Commun. Stat. Simul. 19:433
 */
export function likeliestByReml(
  classes: readonly GardenClass[],
  start: number,
  prior: VariancePrior | null,
  probes: Probes = 'random',
): LikeliestSpreads {
  const { isOneSeason, isPlain } = toldOf(classes);
  const components = [...(isOneSeason ? [CELL] : [VARIETY, CELL]), ...(isPlain ? [ROW] : [RUN, ROW])];
  const least = LEAST * start * start;
  const spreadsOf = (variances: readonly number[]): GardenSpreads => {
    const [v, w] = isOneSeason ? [variances[0]! / 2, variances[0]! / 2] : [variances[0]!, variances[1]!];
    const [u, r] = isPlain ? [variances.at(-1)! / 2, variances.at(-1)! / 2] : [variances.at(-2)!, variances.at(-1)!];
    const [between, withSeason, withGarden, rest] = [v, w, u, r].map(Math.sqrt) as [number, number, number, number];
    return { between, withSeason, withGarden, rest };
  };
  let variances: readonly number[] = components.map(() => (start * start) / 4);
  for (let round = 0; ; round++) {
    if (round === MOST_ROUNDS) return notConverged('the likeliest spreads over gardens');
    const seen = lookAt(classes, components, spreadsOf(variances), probes);
    const look = prior ? both(seen, prior(variances)) : seen;
    const held = variances.map((own, k) => own <= least && nth(look.slope, k) <= 0);
    const step = stepOf(look, held);
    const next = variances.map((own, k) => Math.min(4 * own, Math.max(least, own / 8, own + nth(step, k))));
    const isClose = next.every((own, k) => Math.abs(own - nth(variances, k)) <= CLOSE * own + least);
    variances = next;
    if (isClose)
      return {
        spreads: spreadsOf(variances),
        ofVariety: isOneSeason ? UNTOLD : differenceOf(variances, seen, 0),
        ofGarden: isPlain ? UNTOLD : differenceOf(variances, seen, variances.length - 2),
      };
  }
}
