import { foldName } from '../terms/names.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { RatingTrait } from '../terms/traits.ts';
import type { Score } from '../terms/trial.ts';
import { mean } from 'simple-statistics';
import { fitAdditive } from '../numerics/additive.ts';
import type { AdditiveFit } from '../numerics/additive.ts';
import { fitBlocks } from '../numerics/incompleteBlocks.ts';
import { connectedParts } from '../numerics/connected.ts';
import { tQuantile } from '../numerics/distributions.ts';
import { keyed, nth } from '../numerics/element.ts';

/** A trait's scores of one season, freed of the tasters' generosity. */
export interface RatingModel {
  readonly trait: RatingTrait;
  readonly method: 'additive' | 'mean';
  readonly tasters: number;
  readonly residualDf: number;
  readonly dispersion: number | null;
  readonly estimates: ReadonlyMap<string, Estimate & { readonly tasters: number }>;
  readonly kendallW: number | null;
  /** All varieties with their covariance, dispersion included; null where there is no interval. */
  readonly means: {
    readonly varieties: readonly string[];
    readonly estimates: readonly number[];
    readonly covariance: readonly (readonly number[])[];
  } | null;
}

interface Cell {
  readonly rater: string;
  readonly variety: string;
  readonly mean: number;
}

/** Means of each rater's scores of each variety. */
export function cellsOf(scores: readonly Score[], raterOf: (score: Score) => string): readonly Cell[] {
  const cells = new Map<string, { rater: string; variety: string; sum: number; n: number }>();
  for (const score of scores) {
    const rater = raterOf(score);
    const key = JSON.stringify([rater, score.variety]);
    const cell = cells.get(key) ?? { rater, variety: score.variety, sum: 0, n: 0 };
    cell.sum += score.score;
    cell.n++;
    cells.set(key, cell);
  }
  return [...cells.values()].map(({ rater, variety, sum, n }) => ({ rater, variety, mean: sum / n }));
}

function numbered(values: readonly string[]): { readonly levels: readonly string[]; readonly at: readonly number[] } {
  const levels = [...new Set(values)];
  const numbers = new Map(levels.map((level, i) => [level, i]));
  return { levels, at: values.map((value) => keyed(numbers, value)) };
}

/**
 * Kendall's coefficient of concordance, corrected for ties; null unless every taster scored every variety.
 *
 * @source Kendall & Babington Smith (1939), Ann. Math. Stat. 10:275
 */
export function kendallW(cells: readonly Cell[]): number | null {
  const raters = numbered(cells.map(({ rater }) => rater));
  const varieties = numbered(cells.map(({ variety }) => variety));
  const [m, n] = [raters.levels.length, varieties.levels.length];
  if (cells.length !== m * n || m < 2 || n < 2) return null;
  const sums = new Float64Array(n);
  let ties = 0;
  for (let r = 0; r < m; r++) {
    const own = cells.flatMap((cell, i) =>
      raters.at[i] === r ? [{ mean: cell.mean, variety: nth(varieties.at, i) }] : [],
    );
    for (const { mean, variety } of own) {
      const below = own.filter((other) => other.mean < mean).length;
      const same = own.filter((other) => other.mean === mean).length;
      sums[variety]! += below + (same + 1) / 2;
      ties += same * same - 1;
    }
  }
  const average = (m * (n + 1)) / 2;
  const s = sums.reduce((total, sum) => total + (sum - average) ** 2, 0);
  const bottom = m * m * (n ** 3 - n) - m * ties;
  return bottom > 0 ? (12 * s) / bottom : null;
}

function fitCells(
  cells: readonly Cell[],
): { readonly fit: AdditiveFit; readonly varieties: readonly string[]; readonly raters: number } | null {
  const raters = numbered(cells.map(({ rater }) => rater));
  const varieties = numbered(cells.map(({ variety }) => variety));
  if (raters.levels.length < 2 || connectedParts(varieties.at, raters.at).count > 1) return null;
  const ones = cells.map(() => 1);
  const y = cells.map(({ mean }) => mean);
  const fit = fitAdditive({
    family: 'gaussian',
    y,
    group: varieties.at,
    block: raters.at,
    weight: ones,
    relativeVariance: ones,
  });
  return { fit, varieties: varieties.levels, raters: raters.levels.length };
}

/** Cells of tasters of two varieties and more, of the part of the table with the most varieties. */
function largestPart(cells: readonly Cell[]): readonly Cell[] {
  const count = new Map<string, number>();
  for (const { rater } of cells) count.set(rater, (count.get(rater) ?? 0) + 1);
  const several = cells.filter(({ rater }) => keyed(count, rater) > 1);
  const varieties = numbered(several.map(({ variety }) => variety));
  const { ofRow } = connectedParts(varieties.at, numbered(several.map(({ rater }) => rater)).at);
  const sizes = new Map<number, number>();
  for (const part of ofRow) sizes.set(part, (sizes.get(part) ?? 0) + 1);
  const largest = [...sizes].toSorted(([, a], [, b]) => b - a)[0]?.[0];
  return several.filter((_, i) => nth(ofRow, nth(varieties.at, i)) === largest);
}

/** The same fit with tasters eliminated one by one: there may be very many. */
function fitGardenCells(cells: readonly Cell[]): ReturnType<typeof fitCells> {
  const raters = numbered(cells.map(({ rater }) => rater));
  const varieties = numbered(cells.map(({ variety }) => variety));
  if (raters.levels.length < 2) return null;
  const fit = fitBlocks({
    family: 'gaussian',
    y: cells.map((cell) => cell.mean),
    group: varieties.at,
    block: raters.at,
    relativeVariance: cells.map(() => 1),
  });
  return { fit, varieties: varieties.levels, raters: raters.levels.length };
}

/** Raw means without intervals, where the table of tasters and varieties does not hang together. */
function rawMeans(cells: readonly Cell[], byTaster: readonly Cell[], tasters: number): RatingModel['estimates'] {
  const estimates = new Map<string, Estimate & { tasters: number }>();
  for (const variety of new Set(cells.map((cell) => cell.variety))) {
    const means = cells.filter((cell) => cell.variety === variety).map((cell) => cell.mean);
    const estimate = tasters > 1 ? null : mean(means);
    const reason = tasters > 1 ? 'not-connected' : 'one-taster';
    const own = byTaster.filter((cell) => cell.variety === variety).length;
    estimates.set(variety, { n: means.length, tasters: own, estimate, low: null, high: null, reason });
  }
  return estimates;
}

type FittedCells = NonNullable<ReturnType<typeof fitCells>>;

/** So small a part of the mean square is rounding: identical scores. */
const ROUNDING = 1e-12;

function meanSquare(cells: readonly Cell[]): number {
  return mean(cells.map((cell) => cell.mean ** 2));
}

function fittedMeans(
  trait: RatingTrait,
  cells: readonly Cell[],
  byTaster: readonly Cell[],
  fitted: FittedCells,
  level: number,
) {
  const { fit, varieties, raters } = fitted;
  const means = fit.marginalMeans(
    varieties.map((_, i) => i),
    Array.from({ length: raters }, (_, i) => i),
  );
  const hasSpread = fit.dispersion !== null && fit.dispersion > ROUNDING * meanSquare(cells);
  const t = fit.residualDf > 0 ? tQuantile(0.5 + level / 2, fit.residualDf) : 0;
  const cut = (value: number): number => Math.min(trait.to, Math.max(trait.from, value));
  const reason = fit.residualDf <= 0 ? 'no-residual-df' : hasSpread ? null : 'no-spread';
  const estimates = new Map<string, Estimate & { tasters: number }>();
  varieties.forEach((variety, i) => {
    const middle = nth(means.estimates, i) + fit.offset;
    const half = t * Math.sqrt((fit.dispersion ?? 0) * nth(nth(means.covariance, i), i));
    const [low, high] = reason === null ? [cut(middle - half), cut(middle + half)] : [null, null];
    const n = cells.filter((cell) => cell.variety === variety).length;
    const tasters = byTaster.filter((cell) => cell.variety === variety).length;
    estimates.set(variety, { n, tasters, estimate: cut(middle), low, high, reason });
  });
  const covariance = means.covariance.map((row) => row.map((value) => value * (fit.dispersion ?? 0)));
  const shifted = means.estimates.map((estimate) => estimate + fit.offset);
  return { estimates, means: hasSpread ? { varieties, estimates: shifted, covariance } : null };
}

/**
 * Scores of a season's rating: taster + variety by least squares on the cells. With one taster the date takes the
 * taster's place where dates and varieties hang together.
 *
 * @param scores  the scores of the trait, at least one
 * @source methods page A4; Searle, Speed & Milliken (1980) Am. Stat. 34:216 for marginal means
 */
export function fitRatings(trait: RatingTrait, scores: readonly Score[], level: number, isClub = false): RatingModel {
  const tasters = new Set(scores.map(({ taster }) => foldName(taster))).size;
  const byTaster = cellsOf(scores, ({ taster }) => foldName(taster));
  const all = tasters > 1 ? byTaster : cellsOf(scores, ({ day }) => String(day));
  const cells = isClub ? largestPart(all) : all;
  const fitted = isClub ? fitGardenCells(cells) : fitCells(cells);
  const base = { trait, tasters, kendallW: tasters > 1 ? kendallW(byTaster) : null };
  if (!fitted) {
    const method = tasters > 1 ? 'additive' : 'mean';
    return {
      ...base,
      method,
      residualDf: 0,
      dispersion: null,
      estimates: rawMeans(all, byTaster, tasters),
      means: null,
    };
  }
  const { residualDf, dispersion } = fitted.fit;
  const made = fittedMeans(trait, cells, byTaster, fitted, level);
  // Of a club, what hangs together with the most varieties; the others have scores, and nothing to compare them by.
  const estimates = new Map([...(isClub ? rawMeans(all, byTaster, tasters) : []), ...made.estimates]);
  return { ...base, method: 'additive', residualDf, dispersion, ...made, estimates };
}
