import { choleskyFactor, solveLower, solveUpper } from './cholesky.ts';
import { cell, nth } from './element.ts';
import { notConverged } from './notConverged.ts';

/** What somebody preferred: groups of items, the best first; those of a group are alike. */
export type Ranking = readonly (readonly number[])[];

/** Worths of items. */
export interface RankingFit {
  /** Logarithms of the worths; they add up to 0. */
  readonly logWorths: readonly number[];
  /** Their covariance. */
  readonly covariance: readonly (readonly number[])[];
  /** Worth of a tie of two, three … items beside theirs; empty where nobody tied. */
  readonly ties: readonly number[];
  readonly logLikelihood: number;
}

/** A choice of some items among those that are left, with everything that could have been chosen. */
interface Stage {
  readonly chosen: number;
  readonly choices: readonly (readonly number[])[];
}

const STEPS = 200;
const DONE = 1e-12;

/** All sets of one up to so many of some items. */
function setsOf(items: readonly number[], most: number): readonly (readonly number[])[] {
  let sets: (readonly number[])[] = [[]];
  for (const item of items)
    sets = [...sets, ...sets.filter(({ length }) => length < most).map((own) => [...own, item])];
  return sets.filter(({ length }) => length > 0);
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((own) => b.includes(own));

/** A ranking read in stages: each group is a choice among the items that are left. */
function stagesOf(ranking: Ranking, most: number): readonly Stage[] {
  const stages: Stage[] = [];
  let left = ranking.flat();
  for (const group of ranking) {
    if (left.length < 2) break;
    const choices = setsOf(left, Math.min(most, left.length));
    stages.push({ chosen: choices.findIndex((own) => isSame(own, group)), choices });
    left = left.filter((item) => !group.includes(item));
  }
  return stages;
}

interface Sums {
  readonly gradient: Float64Array;
  readonly information: Float64Array;
  logLikelihood: number;
}

/** Adds one choice: weights are exp(features · parameters), and the one chosen counts. */
function addChoice(sums: Sums, features: readonly Float64Array[], chosen: readonly number[], at: Float64Array): void {
  const size = at.length;
  const logs = features.map((own) => own.reduce((sum, x, i) => sum + x * cell(at, i), 0));
  const top = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - top));
  const whole = weights.reduce((sum, own) => sum + own, 0);
  const mean = new Float64Array(size);
  features.forEach((own, c) => own.forEach((x, i) => (mean[i]! += (nth(weights, c) / whole) * x)));
  const times = chosen.reduce((sum, own) => sum + own, 0);
  features.forEach((own, c) => {
    const share = nth(weights, c) / whole;
    sums.logLikelihood += nth(chosen, c) * Math.log(share);
    for (let i = 0; i < size; i++) {
      const off = cell(own, i) - cell(mean, i);
      sums.gradient[i]! += nth(chosen, c) * off;
      if (off === 0) continue;
      for (let j = 0; j < size; j++)
        sums.information[i * size + j]! += times * share * off * (cell(own, j) - cell(mean, j));
    }
  });
}

/**
 * Worths of items from rankings with ties, by Newton's way on their logarithms. Choice of a set T is as likely as
 * δ_|T| (Π of its worths)^(1/|T|), δ of one item 1.
 *
 * @param rankings  of items by number, 0 to `items` - 1
 * @param hasGhost  true for half a win and half a loss of every item against one of worth 1, which keeps worths finite
 * @throws NotConverged where worths run away, as they can without the ghost
 * @source Plackett (1975) Appl. Stat. 24:193; Davidson (1970) JASA 65:317; reference cases o3, o4
 */
export function fitRankings(rankings: readonly Ranking[], items: number, hasGhost: boolean): RankingFit {
  const most = Math.max(1, ...rankings.flat().map(({ length }) => length));
  const stages = rankings.flatMap((own) => stagesOf(own, most));
  // Without the ghost the first item is the origin.
  const first = hasGhost ? 0 : 1;
  const size = items - first + most - 1;
  const featuresOf = (set: readonly number[]): Float64Array => {
    const own = new Float64Array(size);
    for (const item of set) if (item >= first) own[item - first]! += 1 / set.length;
    if (set.length > 1) own[items - first + set.length - 2] = 1;
    return own;
  };
  const choices = stages.map(({ chosen, choices: sets }) => ({
    features: sets.map(featuresOf),
    chosen: sets.map((_, c) => (c === chosen ? 1 : 0)),
  }));
  const ghosts = hasGhost
    ? Array.from({ length: items }, (_, i) => ({ features: [featuresOf([i]), featuresOf([])], chosen: [0.5, 0.5] }))
    : [];
  let at = new Float64Array(size);
  const sumsAt = (point: Float64Array): Sums => {
    const sums: Sums = {
      gradient: new Float64Array(size),
      information: new Float64Array(size * size),
      logLikelihood: 0,
    };
    for (const own of [...choices, ...ghosts]) addChoice(sums, own.features, own.chosen, point);
    return sums;
  };
  let sums = sumsAt(at);
  let change = Infinity;
  for (let step = 0; step < STEPS && change > DONE; step++) {
    const factor = choleskyFactor(sums.information.slice(), size);
    if (!factor) return notConverged('the worths of a ranking');
    const move = solveUpper(factor, size, solveLower(factor, size, sums.gradient.slice()));
    let part = 1;
    let next = sumsAt(at.map((own, i) => own + cell(move, i)));
    while (!(next.logLikelihood >= sums.logLikelihood - 1e-12) && part > 1e-6) {
      part /= 2;
      next = sumsAt(at.map((own, i) => own + part * cell(move, i)));
    }
    at = at.map((own, i) => own + part * cell(move, i));
    sums = next;
    change = Math.max(...move.map(Math.abs));
  }
  if (change > 1e-6) notConverged('the worths of a ranking');
  return finished(at, sums, items, first);
}

/** Worths centred, with their covariance. */
function finished(at: Float64Array, { information, logLikelihood }: Sums, items: number, first: number): RankingFit {
  const size = at.length;
  const factor = choleskyFactor(information.slice(), size);
  if (!factor) return notConverged('the worths of a ranking');
  const inverse = Array.from({ length: size }, (_, j) => {
    const unit = new Float64Array(size);
    unit[j] = 1;
    return solveUpper(factor, size, solveLower(factor, size, unit));
  });
  const raw = Array.from({ length: items }, (_, i) => (i < first ? 0 : cell(at, i - first)));
  const covered = (i: number, j: number): number =>
    i < first || j < first ? 0 : cell(nth(inverse, i - first), j - first);
  const mean = raw.reduce((sum, own) => sum + own, 0) / items;
  const rows = Array.from(
    { length: items },
    (_, i) => Array.from({ length: items }, (_own, j) => covered(i, j)).reduce((sum, own) => sum + own, 0) / items,
  );
  const all = rows.reduce((sum, own) => sum + own, 0) / items;
  return {
    logWorths: raw.map((own) => own - mean),
    covariance: raw.map((_, i) => raw.map((_own, j) => covered(i, j) - nth(rows, i) - nth(rows, j) + all)),
    ties: Array.from(at.slice(items - first), Math.exp),
    logLikelihood,
  };
}
