import { blockFactor } from '../check/rules/blocks.ts';
import type { BlockFactor } from '../check/rules/blocks.ts';
import { fitAdditive } from '../numerics/additive.ts';
import type { AdditiveFit } from '../numerics/additive.ts';
import type { AdditiveData, Family } from '../numerics/additiveData.ts';
import { fUpperTail, tQuantile } from '../numerics/distributions.ts';
import { equalityF } from '../numerics/wald.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Season } from '../terms/trial.ts';
import { countSpread, relativeDispersions, sizeSpread } from './classSpread.ts';
import type { CountSpread } from './classSpread.ts';
import { layoutsOf, togetherFactor } from './units.ts';
import type { Layout, Unit } from './units.ts';

export interface ClassF {
  readonly value: number;
  readonly df1: number;
  readonly df2: number;
  readonly p: number;
}

/** Estimates of a class on the working scale (log for gamma and poisson) with their covariance, dispersion included. */
export interface ClassMeans {
  readonly classId: string;
  readonly varieties: readonly string[];
  readonly estimates: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

/** One season's fit of a trait measured on plantings. */
export interface PlantModel {
  readonly family: Family;
  readonly factor: BlockFactor['kind'];
  /** By class. */
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly residualDf: number;
  readonly dispersion: number | null;
  readonly cvPercent: number | null;
  /** Of fruit numbers; null for every other model. */
  readonly counts: CountSpread | null;
  /** Dispersion of a class relative to the season's; null where it is one for all. */
  readonly scales: ReadonlyMap<string, number> | null;
  readonly spotCorrelation: number;
  readonly estimates: ReadonlyMap<string, Estimate>;
  /** Classes with intervals. */
  readonly classes: readonly ClassMeans[];
  readonly f: ReadonlyMap<string, ClassF | null>;
  readonly lsd: ReadonlyMap<string, number | null>;
}

export interface ModelOptions {
  readonly family: Family;
  readonly level: number;
  readonly spotCorrelation: number;
  /** True for yield and fruits: a variety of which nothing was picked is 0 without an interval. */
  readonly isYield: boolean;
  /** False: blocks are left out of the model, so that estimates are total over plants. */
  readonly withBlocks: boolean;
}

/** V(y) of a planting of so many plants, relative to a single plant's (methods: plants side by side are alike). */
export function relativeVariance(plants: number, spotCorrelation: number): number {
  return spotCorrelation + (1 - spotCorrelation) / plants;
}

function index<T>(values: readonly T[]): { readonly levels: readonly T[]; readonly at: readonly number[] } {
  const numbers = new Map<T, number>();
  const at = values.map((value) => {
    const known = numbers.get(value) ?? numbers.size;
    numbers.set(value, known);
    return known;
  });
  return { levels: [...numbers.keys()], at };
}

/** Units whose variety gave anything: of nothing there is no spread, and no logarithm. */
function estimable(units: readonly Unit[], { family, isYield }: ModelOptions): readonly Unit[] {
  if (family === 'gaussian' && !isYield) return units;
  const total = new Map<string, number>();
  for (const { planting, y } of units) total.set(planting.variety, (total.get(planting.variety) ?? 0) + y);
  return units.filter(({ planting }) => total.get(planting.variety)! > 0);
}

function cvPercent(fit: AdditiveFit, units: readonly Unit[]): number | null {
  if (fit.dispersion === null || fit.family === 'poisson') return null;
  if (fit.family === 'gamma') return 100 * Math.sqrt(fit.dispersion);
  const plants = units.reduce((sum, unit) => sum + unit.plants, 0);
  const mean = units.reduce((sum, unit) => sum + unit.plants * unit.y, 0) / plants;
  return mean === 0 ? null : (100 * Math.sqrt(fit.dispersion)) / Math.abs(mean);
}

/** A fit with everything its classes are worked out from. */
interface Fitted {
  readonly options: ModelOptions;
  readonly used: readonly Unit[];
  readonly variety: ReturnType<typeof index<string>>;
  readonly block: ReturnType<typeof index<string>> | null;
  readonly fit: AdditiveFit;
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly hasSpread: boolean;
}

interface ClassResult {
  readonly means: ClassMeans;
  readonly estimates: readonly Estimate[];
  readonly f: ClassF | null;
  readonly lsd: number | null;
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
  const isEqual = new Set(counts).size === 1 && new Set(members.map((i) => used[i]!.plants)).size === 1;
  if (options.family !== 'gaussian' || !isEqual || !f || f.p >= 1 - options.level) return null;
  const squares = covariance.flatMap((row, i) => row.slice(0, i).map((_, j) => squaredSed(covariance, i, j)));
  const [least, most] = [Math.min(...squares), Math.max(...squares)];
  if (most > least * (1 + 1e-9)) return null;
  return tQuantile(0.5 + options.level / 2, fit.residualDf) * Math.sqrt(most);
}

/** Squared standard error of the difference of two varieties of a class. */
export function squaredSed(covariance: ClassMeans['covariance'], i: number, j: number): number {
  return covariance[i]![i]! + covariance[j]![j]! - 2 * covariance[i]![j]!;
}

function classResult(fitted: Fitted, classId: string): ClassResult {
  const { options, used, variety, block, fit, layouts, hasSpread } = fitted;
  const { family, level, spotCorrelation } = options;
  const members = used.flatMap((unit, i) => (unit.classId === classId ? [i] : []));
  const groups = [...new Set(members.map((i) => variety.at[i]!))];
  const means = fit.marginalMeans(groups, block ? [...new Set(members.map((i) => block.at[i]!))] : []);
  const counts = groups.map((group) => variety.at.filter((at) => at === group).length);
  const inflation = counts.map((n) => togetherFactor(layouts.get(classId), n, spotCorrelation));
  const covariance = means.covariance.map((row, i) =>
    row.map((value, j) => value * (fit.dispersion ?? 0) * Math.sqrt(inflation[i]! * inflation[j]!)),
  );
  const t = fit.residualDf > 0 ? tQuantile(0.5 + level / 2, fit.residualDf) : 0;
  const isLog = family !== 'gaussian';
  const back = isLog ? Math.exp : (x: number): number => x + fit.offset;
  const reason = fit.residualDf <= 0 ? 'no-residual-df' : hasSpread ? null : 'no-spread';
  const estimates = groups.map((group, i): Estimate => {
    const middle = means.estimates[i]!;
    const half = t * Math.sqrt(covariance[i]![i]!);
    const [low, high] = reason === null ? [back(middle - half), back(middle + half)] : [null, null];
    const estimate = isLog && block === null ? totalOverPlants(fitted, group) : back(middle);
    return { n: counts[i]!, estimate, low, high, reason };
  });
  const f = classF(fitted, means.estimates, covariance);
  return {
    means: {
      classId,
      varieties: groups.map((group) => variety.levels[group]!),
      estimates: means.estimates.map((m) => m + fit.offset),
      covariance,
    },
    estimates,
    f,
    lsd: classLsd(fitted, members, covariance, counts, f),
  };
}

/** A dispersion of rounding errors only is none. */
function spreads({ dispersion, family }: AdditiveFit, used: readonly Unit[]): boolean {
  const scale = Math.max(0, ...used.map(({ y }) => Math.abs(y)));
  const tiny = 1e-20 * (family === 'gamma' ? 1 : family === 'poisson' ? scale : scale * scale);
  return dispersion !== null && dispersion > tiny;
}

/** The data with the dispersion of each class in their variances, and of a measure in its weights. */
function scaled(data: AdditiveData, used: readonly Unit[], scales: ReadonlyMap<string, number>): AdditiveData {
  const of = used.map(({ classId }) => scales.get(classId)!);
  const weight = data.family === 'gaussian' ? data.weight.map((own, i) => own / of[i]!) : data.weight;
  return { ...data, weight, relativeVariance: data.relativeVariance.map((own, i) => own * of[i]!) };
}

/**
 * Variety + block over all classes of a season: one dispersion, one residual df.
 *
 * @param units    plantings with their response per plant, at least one
 * @param options  family, interval level and spot correlation
 * @source methods page A1; McCullagh & Nelder (1989) ch. 8-9; Gomez & Gomez (1984) ch. 2
 */
export function fitPlantModel(season: Season, units: readonly Unit[], options: ModelOptions): PlantModel {
  const used = estimable(units, options);
  const classOf = new Map(used.map(({ planting, classId }) => [planting.id, classId]));
  const plantings = used.map(({ planting }) => planting);
  const factor = blockFactor(plantings, ({ id }) => classOf.get(id)!);
  const variety = index(used.map(({ planting }) => planting.variety));
  const block = factor.levels === null || !options.withBlocks ? null : index(factor.levels);
  const places = used.map(({ plants }) => relativeVariance(plants, options.spotCorrelation));
  const data = {
    family: options.family,
    y: used.map(({ y }) => y),
    group: variety.at,
    block: block?.at ?? null,
    weight: used.map(({ plants }) => plants),
    relativeVariance: places,
  };
  const first = fitAdditive(data);
  const counts = options.family === 'poisson' ? countSpread(used, places, first) : null;
  const isMeasure = options.family === 'gaussian' && !options.isYield;
  const scales = counts ? relativeDispersions(counts) : isMeasure ? sizeSpread(used) : null;
  const fit = scales ? fitAdditive(scaled(data, used, scales)) : first;
  const layouts = layoutsOf(season, units);
  const fitted: Fitted = { options, used, variety, block, fit, layouts, hasSpread: spreads(fit, used) };
  const results = [...new Set(used.map(({ classId }) => classId))].map((classId) => classResult(fitted, classId));
  const estimates = new Map<string, Estimate>();
  for (const { planting } of units) {
    const n = (estimates.get(planting.variety)?.n ?? 0) + 1;
    estimates.set(planting.variety, { n, estimate: 0, low: null, high: null, reason: 'nothing-picked' });
  }
  for (const { means, estimates: own } of results) means.varieties.forEach((name, i) => estimates.set(name, own[i]!));
  return {
    family: options.family,
    factor: block === null ? 'none' : factor.kind,
    layouts,
    residualDf: fit.residualDf,
    dispersion: fit.dispersion,
    cvPercent: cvPercent(fit, used),
    counts,
    scales,
    spotCorrelation: options.spotCorrelation,
    estimates,
    classes: fitted.hasSpread ? results.map(({ means }) => means) : [],
    f: new Map(results.map(({ means, f }) => [means.classId, f])),
    lsd: new Map(results.map(({ means, lsd }) => [means.classId, lsd])),
  };
}
