import type { MarginalMeans } from './additive.ts';
import { cell, nth } from './element.ts';
import { blockMeans, blocksTable, predictBlocks, solveBlocks } from './incompleteBlocks.ts';
import type { BlocksTable } from './incompleteBlocks.ts';
import { logSigmaBracket, timeDerivatives } from './logNormal.ts';
import type { CensoredTime, Derivatives } from './logNormal.ts';
import { notConverged } from './notConverged.ts';
import { findRoot } from './root.ts';

/** A time of a group in a block. */
export interface BlockedTime extends CensoredTime {
  readonly block: number;
}

export interface BlockedTimesFit {
  readonly sigma: number;
  readonly partOf: readonly number[];
  readonly parts: number;
  /** Medians of groups averaged over blocks of one part, as logarithms, with the covariance of the observed information. */
  readonly means: (groups: readonly number[], blocks: readonly number[]) => MarginalMeans;
}

const MOST_STEPS = 200;
const CLOSE = 1e-10;
const SMALLEST_PART = 1e-4;
/** The least that a censored time weighs, of what an exact one does: far out its likelihood is flat. */
const LEAST_WEIGHT = 1e-9;

const startOf = ({ low, high }: BlockedTime): number =>
  high === Infinity ? Math.log(low) : low > 0 ? (Math.log(low) + Math.log(high)) / 2 : Math.log(high / 2);

interface Located {
  readonly eta: Float64Array;
  readonly all: readonly Derivatives[];
  readonly w: Float64Array;
}

const at = (times: readonly BlockedTime[], eta: Float64Array, sigma: number): Located => {
  const all = times.map((time, i) => timeDerivatives(time, cell(eta, i), sigma));
  const least = LEAST_WEIGHT / sigma ** 2;
  return { eta, all, w: Float64Array.from(all, ({ mm }) => Math.max(least, -mm)) };
};

const likelihood = ({ all }: Located): number => all.reduce((sum, { value }) => sum + value, 0);

/** Best locations for a spread: Newton steps by weighted least squares, halved where they go too far. */
function located(table: BlocksTable, times: readonly BlockedTime[], sigma: number, start: Float64Array): Located {
  let here = at(times, start, sigma);
  for (let step = 0; step < MOST_STEPS; step++) {
    const from = here;
    const z = from.eta.map((e, i) => e + nth(from.all, i).m / cell(from.w, i));
    const next = predictBlocks(table, solveBlocks(table, { z, w: from.w }));
    const towards = (part: number): Located =>
      at(
        times,
        next.map((own, i) => cell(from.eta, i) + part * (own - cell(from.eta, i))),
        sigma,
      );
    // The first step leaves the start, which is no sum of effects.
    const isTooFar = (own: Located, part: number): boolean =>
      step > 0 && part > SMALLEST_PART && likelihood(own) < likelihood(from) - 1e-12;
    let part = 1;
    let there = towards(part);
    while (isTooFar(there, part)) there = towards((part /= 2));
    const change = there.eta.reduce((most, own, i) => Math.max(most, Math.abs(own - cell(from.eta, i))), 0);
    here = there;
    if (change < CLOSE) return here;
  }
  return notConverged('the times of varieties within gardens');
}

/** The likeliest spread of times in blocks, and the locations that go with it. */
export interface TimesSpread {
  readonly sigma: number;
  /** Of each time, as logarithms. */
  readonly eta: Float64Array;
}

const tableOf = (times: readonly BlockedTime[]): BlocksTable =>
  blocksTable(
    times.map(({ group }) => group),
    times.map(({ block }) => block),
  );

/**
 * The spread that is the likeliest: the slow part of the fit, plain data so that it can be remembered.
 *
 * @returns  null where no spread is the likeliest
 * @throws NotConverged where censored times leave it without a maximum
 */
export function likeliestSpread(times: readonly BlockedTime[]): TimesSpread | null {
  const table = tableOf(times);
  let start = Float64Array.from(times, startOf);
  const slope = (logSigma: number): number => {
    const found = located(table, times, Math.exp(logSigma), start);
    start = Float64Array.from(found.eta);
    return found.all.reduce((sum, { t }) => sum + t, 0);
  };
  const bracket = logSigmaBracket(slope);
  if (!bracket) return null;
  const sigma = Math.exp(findRoot(slope, ...bracket, 1e-12));
  return { sigma, eta: start };
}

/**
 * Accelerated failure time model: log-normal, group + block, one scale; blocks are eliminated one by one.
 *
 * @param times  of groups and blocks of which each has one that is not right-censored
 * @param spread  the likeliest, where it is known
 * @returns      the fit; null where no spread is the likeliest
 * @throws NotConverged where censored times leave it without a maximum
 * @source Kalbfleisch & Prentice (2002) ch. 3; gardens page 2.1
 */
export function fitTimesInBlocks(
  times: readonly BlockedTime[],
  spread = likeliestSpread(times),
): BlockedTimesFit | null {
  if (!spread) return null;
  const { sigma, eta: start } = spread;
  const table = tableOf(times);
  const { all, w } = located(table, times, sigma, start);
  const solve = (z: Float64Array) => solveBlocks(table, { z, w });
  // H⁻¹h of the locations against the scale, by the same normal equations.
  const against = solve(Float64Array.from(all, ({ mt }, i) => -mt / cell(w, i)));
  const pulled = predictBlocks(table, against);
  const scale = all.reduce((sum, { tt, mt }, i) => sum - tt + mt * cell(pulled, i), 0);
  const locations = solve(at(times, start, sigma).eta);
  const [ofLocations, ofScale] = [blockMeans(table, { w }, locations), blockMeans(table, { w }, against)];
  return {
    sigma,
    partOf: table.partOf,
    parts: table.parts,
    means(groups, blocks) {
      const { estimates, covariance } = ofLocations(groups, blocks);
      const pull = ofScale(groups, blocks).estimates;
      return {
        estimates,
        covariance: covariance.map((row, i) => row.map((own, j) => own + (nth(pull, i) * nth(pull, j)) / scale)),
      };
    },
  };
}
