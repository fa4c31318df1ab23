import { tQuantile, tTwoSided } from '../numerics/distributions.ts';
import { dunnettQuantile, dunnettUpperTail, productFactors } from '../numerics/dunnett.ts';
import { letterDisplay } from '../numerics/letters.ts';
import { multivariateTQuantile, multivariateTUpperTail } from '../numerics/multivariateT.ts';
import { studentizedRangeQuantile } from '../numerics/range.ts';
import { squaredSed } from './plantClasses.ts';
import type { ClassMeans } from './plantTypes.ts';
import { nth } from '../numerics/element.ts';

/** A difference on the working scale, given back as a ratio or a difference; no interval where a limit says nothing. */
export interface Contrast {
  readonly estimate: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly p: number;
}

export interface ClassComparisons {
  readonly letters: ReadonlyMap<string, string>;
  readonly againstCheck: {
    readonly checkVariety: string;
    readonly varieties: readonly ({ readonly variety: string } & Contrast)[];
  } | null;
  readonly newAgainstReturning: Contrast | null;
}

export interface ComparisonOptions {
  readonly df: number;
  readonly level: number;
  /** True where the working scale is a logarithm, so that differences are ratios. */
  readonly isRatio: boolean;
  readonly lowerIsBetter: boolean;
  readonly checkVariety: string | null;
  /** Varieties new in the season. */
  readonly fresh: readonly string[];
}

function lettersOf(means: ClassMeans, { df, level, lowerIsBetter }: ComparisonOptions): ReadonlyMap<string, string> {
  const { varieties, estimates, covariance } = means;
  const order = varieties
    .map((_, i) => i)
    .toSorted((a, b) => (lowerIsBetter ? 1 : -1) * (nth(estimates, a) - nth(estimates, b)) || a - b);
  const critical = varieties.length > 1 ? studentizedRangeQuantile(level, varieties.length, df) / Math.SQRT2 : Infinity;
  const separated = (a: number, b: number): boolean => {
    const [i, j] = [nth(order, a), nth(order, b)];
    return Math.abs(nth(estimates, i) - nth(estimates, j)) > critical * Math.sqrt(squaredSed(covariance, i, j));
  };
  const letters = letterDisplay(order.length, separated);
  return new Map(order.map((i, rank) => [nth(varieties, i), nth(letters, rank)]));
}

/** So many times another is more than any two varieties differ: a limit beyond it says nothing. */
const FAR_RATIO = 1e4;

function contrast(difference: number, half: number, p: number, isRatio: boolean): Contrast {
  if (!isRatio) return { estimate: difference, low: difference - half, high: difference + half, p };
  const isFar = Math.abs(difference) + half > Math.log(FAR_RATIO);
  const limits = isFar
    ? { low: null, high: null }
    : { low: Math.exp(difference - half), high: Math.exp(difference + half) };
  return { estimate: Math.exp(difference), ...limits, p };
}

function checkContrasts(means: ClassMeans, options: ComparisonOptions): ClassComparisons['againstCheck'] {
  const { varieties, estimates, covariance } = means;
  const check = varieties.indexOf(options.checkVariety ?? '');
  if (check < 0 || varieties.length < 2) return null;
  const others = varieties.map((_, i) => i).filter((i) => i !== check);
  const joint = (i: number, j: number): number =>
    nth(nth(covariance, i), j) -
    nth(nth(covariance, i), check) -
    nth(nth(covariance, j), check) +
    nth(nth(covariance, check), check);
  const seds = others.map((i) => Math.sqrt(joint(i, i)));
  const correlation = others.map((i, a) =>
    others.map((j, b) => (a === b ? 1 : joint(i, j) / (nth(seds, a) * nth(seds, b)))),
  );
  const factors = productFactors(correlation);
  const { df, level } = options;
  const critical = factors ? dunnettQuantile(level, factors, df) : multivariateTQuantile(level, correlation, df);
  const tail = (t: number): number =>
    factors ? dunnettUpperTail(t, factors, df) : multivariateTUpperTail(t, correlation, df);
  const compared = others.map((i, a) => {
    const difference = nth(estimates, i) - nth(estimates, check);
    const p = tail(Math.abs(difference) / nth(seds, a));
    return { variety: nth(varieties, i), ...contrast(difference, critical * nth(seds, a), p, options.isRatio) };
  });
  return { checkVariety: nth(varieties, check), varieties: compared };
}

function newContrast(
  { varieties, estimates, covariance }: ClassMeans,
  { df, level, isRatio, fresh }: ComparisonOptions,
): Contrast | null {
  const isNew = (variety: string): boolean => fresh.includes(variety);
  const count = varieties.filter(isNew).length;
  const known = varieties.length - count;
  if (count === 0 || known === 0) return null;
  const weights = varieties.map((variety) => (isNew(variety) ? 1 / count : -1 / known));
  const difference = weights.reduce((sum, w, i) => sum + w * nth(estimates, i), 0);
  const variance = weights.reduce(
    (sum, w, i) => sum + weights.reduce((row, v, j) => row + w * v * nth(nth(covariance, i), j), 0),
    0,
  );
  const se = Math.sqrt(variance);
  return contrast(difference, tQuantile(0.5 + level / 2, df) * se, tTwoSided(difference / se, df), isRatio);
}

/**
 * Comparisons within a class: all pairs (Tukey-Kramer letters), against the check variety (Dunnett, two-sided), new
 * against returning (one contrast).
 *
 * @param means    the class's estimates on the working scale with their covariance
 * @source methods page A2; Tukey (1953), Kramer (1956) Biometrics 12:307; Dunnett (1964) Biometrics 20:482
 */
export function compareClass(means: ClassMeans, options: ComparisonOptions): ClassComparisons {
  return {
    letters: lettersOf(means, options),
    againstCheck: checkContrasts(means, options),
    newAgainstReturning: newContrast(means, options),
  };
}
