import type { AdditiveFit } from '../numerics/additive.ts';
import { fUpperTail, tQuantile } from '../numerics/distributions.ts';
import { equalityF } from '../numerics/wald.ts';
import type { Estimate } from '../terms/estimate.ts';
import { guarded } from './guard.ts';
import type { ClassF, ClassMeans, ModelOptions } from './plantTypes.ts';
import { togetherFactor } from './units.ts';
import type { Layout, Unit } from './units.ts';
import { nth } from '../numerics/element.ts';

/** A fit with everything its classes are worked out from. */
export interface Fitted {
  readonly options: ModelOptions;
  readonly used: readonly Unit[];
  readonly variety: Indexed;
  readonly block: Indexed | null;
  readonly fit: AdditiveFit;
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly hasSpread: boolean;
}

export interface ClassResult {
  readonly means: ClassMeans;
  readonly estimates: readonly Estimate[];
  readonly f: ClassF | null;
  readonly lsd: number | null;
}

/** Values numbered in order of first sight. */
export interface Indexed {
  readonly levels: readonly string[];
  readonly at: readonly number[];
}

/** Numbers values in order of first sight. */
export function indexed(values: readonly string[]): Indexed {
  const numbers = new Map<string, number>();
  const at = values.map((value) => {
    const known = numbers.get(value) ?? numbers.size;
    numbers.set(value, known);
    return known;
  });
  return { levels: [...numbers.keys()], at };
}

/** Plants of a variety in the fit. */
export function plantsOf({ used, variety }: Pick<Fitted, 'used' | 'variety'>, group: number): number {
  return used.reduce((sum, { planting }, i) => sum + (variety.at[i] === group ? planting.plants : 0), 0);
}

/** Total over plants of a variety: what the estimate is without blocks, to the last digit. */
function totalOverPlants({ used, variety }: Fitted, group: number): number {
  const own = used.filter((_, i) => variety.at[i] === group);
  return own.reduce((sum, { y, plants }) => sum + y * plants, 0) / own.reduce((sum, { plants }) => sum + plants, 0);
}

function classF(
  { fit, hasSpread }: Fitted,
  estimates: readonly number[],
  covariance: ClassMeans['covariance'],
): ClassF | null {
  const test = hasSpread ? equalityF(estimates, covariance) : null;
  return test && { value: test.f, df1: test.df1, df2: fit.residualDf, p: fUpperTail(test.f, test.df1, fit.residualDf) };
}

/**
 * Least significant difference: only where replication is equal, every pair is told equally well and F is
 * significant (Gomez & Gomez 1984 §5.1).
 */
function classLsd(
  { options, used, fit }: Fitted,
  members: readonly number[],
  covariance: ClassMeans['covariance'],
  counts: readonly number[],
  f: ClassF | null,
): number | null {
  const isEqual = new Set(counts).size === 1 && new Set(members.map((i) => nth(used, i).plants)).size === 1;
  if (options.family !== 'gaussian' || !isEqual || !f || f.p >= 1 - options.level) return null;
  const squares = covariance.flatMap((row, i) => row.slice(0, i).map((_, j) => squaredSed(covariance, i, j)));
  const [least, most] = [Math.min(...squares), Math.max(...squares)];
  if (most > least * (1 + 1e-9)) return null;
  return tQuantile(0.5 + options.level / 2, fit.residualDf) * Math.sqrt(most);
}

/** Squared standard error of the difference of two varieties of a class: Vii + Vjj - 2 Vij, working scale. */
export function squaredSed(covariance: ClassMeans['covariance'], i: number, j: number): number {
  return nth(nth(covariance, i), i) + nth(nth(covariance, j), j) - 2 * nth(nth(covariance, i), j);
}

/**
 * Estimates of a class, or of what gardens join of it, with their intervals and tests; a limit beyond anything that was picked is none.
 *
 * @param members  positions of its units in the fit
 * @source methods page A1, A2
 */
export function classResult(fitted: Fitted, classId: string, members: readonly number[]): ClassResult {
  const { options, used, variety, block, fit, layouts, hasSpread } = fitted;
  const { family, level, spotCorrelation } = options;
  const groups = [...new Set(members.map((i) => nth(variety.at, i)))];
  const means = fit.marginalMeans(groups, block ? [...new Set(members.map((i) => nth(block.at, i)))] : []);
  const counts = groups.map((group) => variety.at.filter((at) => at === group).length);
  const inflation = groups.map((group) =>
    togetherFactor(layouts.get(classId), plantsOf(fitted, group), spotCorrelation),
  );
  const covariance = means.covariance.map((row, i) =>
    row.map((value, j) => value * (fit.dispersion ?? 0) * Math.sqrt(nth(inflation, i) * nth(inflation, j))),
  );
  const t = fit.residualDf > 0 ? tQuantile(0.5 + level / 2, fit.residualDf) : 0;
  const isLog = family !== 'gaussian';
  const back = isLog ? Math.exp : (x: number): number => x + fit.offset;
  const own = members.map((i) => nth(used, i).y);
  const reason = fit.residualDf <= 0 ? 'no-residual-df' : hasSpread ? null : 'no-spread';
  const estimates = groups.map((group, i): Estimate => {
    const middle = nth(means.estimates, i);
    const half = t * Math.sqrt(nth(nth(covariance, i), i));
    const estimate = isLog && block === null ? totalOverPlants(fitted, group) : back(middle);
    const figures = { n: nth(counts, i), estimate, low: back(middle - half), high: back(middle + half) };
    return reason === null ? guarded(figures, own, isLog) : { ...figures, low: null, high: null, reason };
  });
  const f = classF(fitted, means.estimates, covariance);
  return {
    means: {
      classId,
      varieties: groups.map((group) => nth(variety.levels, group)),
      estimates: means.estimates.map((m) => m + fit.offset),
      covariance,
    },
    estimates,
    f,
    lsd: classLsd(fitted, members, covariance, counts, f),
  };
}
