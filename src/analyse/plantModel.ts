import { blockFactor } from '../check/rules/blocks.ts';
import type { BlockFactor } from '../check/rules/blocks.ts';
import { fitAdditive } from '../numerics/additive.ts';
import type { AdditiveFit, Family } from '../numerics/additive.ts';
import { fUpperTail, tQuantile } from '../numerics/distributions.ts';
import { equalityF } from '../numerics/wald.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Season } from '../terms/trial.ts';
import { layoutOf } from './units.ts';
import type { Unit } from './units.ts';

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
  readonly layout: 'together' | 'spread';
  readonly residualDf: number;
  readonly dispersion: number | null;
  readonly cvPercent: number | null;
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

/** Units whose variety has anything to estimate a logarithm from. */
function estimable(units: readonly Unit[], family: Family): readonly Unit[] {
  if (family === 'gaussian') return units;
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

/**
 * Variety + block over all classes of a season: one dispersion, one residual df.
 *
 * @param units    plantings with their response per plant, at least one
 * @param options  family, interval level and spot correlation
 * @source methods page A1; McCullagh & Nelder (1989) ch. 8-9; Gomez & Gomez (1984) ch. 2
 */
export function fitPlantModel(season: Season, units: readonly Unit[], options: ModelOptions): PlantModel {
  const { family, level, spotCorrelation } = options;
  const used = estimable(units, family);
  const classOf = new Map(used.map(({ planting, classId }) => [planting.id, classId]));
  const factor = blockFactor(used.map(({ planting }) => planting), ({ id }) => classOf.get(id)!);
  const layout = layoutOf(season, used, factor);
  const variety = index(used.map(({ planting }) => planting.variety));
  const block = factor.levels === null ? null : index(factor.levels);
  const variance = used.map(({ plants }) => relativeVariance(plants, spotCorrelation));
  const fit = fitAdditive({
    family,
    y: used.map(({ y }) => y),
    group: variety.at,
    block: block?.at ?? null,
    weight: used.map(({ plants }) => plants),
    relativeVariance: variance,
  });
  const estimates = new Map<string, Estimate>();
  for (const { planting } of units) {
    const n = units.filter((unit) => unit.planting.variety === planting.variety).length;
    estimates.set(planting.variety, { n, estimate: 0, low: null, high: null, reason: 'nothing-picked' });
  }
  const classes: ClassMeans[] = [];
  const f = new Map<string, ClassF | null>();
  const lsd = new Map<string, number | null>();
  // A dispersion of rounding errors only is none.
  const scale = Math.max(...used.map(({ y }) => Math.abs(y)), 0);
  const tiny = 1e-20 * (family === 'gamma' ? 1 : family === 'poisson' ? scale : scale * scale);
  const hasSpread = fit.dispersion !== null && fit.dispersion > tiny;
  for (const classId of new Set(used.map((unit) => unit.classId))) {
    const members = used.flatMap((unit, i) => (unit.classId === classId ? [i] : []));
    const groups = [...new Set(members.map((i) => variety.at[i]!))];
    const blocks = block ? [...new Set(members.map((i) => block.at[i]!))] : [];
    const means = fit.marginalMeans(groups, blocks);
    const names = groups.map((group) => variety.levels[group]!);
    const counts = groups.map((group) => variety.at.filter((at) => at === group).length);
    const inflation = counts.map((n) => (layout === 'together' ? 1 + (n * spotCorrelation) / (1 - spotCorrelation) : 1));
    const covariance = means.covariance.map((row, i) =>
      row.map((value, j) => value * (fit.dispersion ?? 0) * Math.sqrt(inflation[i]! * inflation[j]!)),
    );
    const t = fit.residualDf > 0 ? tQuantile(0.5 + level / 2, fit.residualDf) : 0;
    // Without blocks the estimate is total over plants, to the last digit.
    const exact = (group: number): number | null => {
      if (block !== null || family === 'gaussian') return null;
      const own = used.filter((_, i) => variety.at[i] === group);
      return own.reduce((sum, { y, plants }) => sum + y * plants, 0) / own.reduce((sum, { plants }) => sum + plants, 0);
    };
    const back = family === 'gaussian' ? (x: number): number => x + fit.offset : Math.exp;
    names.forEach((name, i) => {
      const half = t * Math.sqrt(covariance[i]![i]!);
      const middle = means.estimates[i]!;
      const reason = fit.residualDf <= 0 ? 'no-residual-df' : hasSpread ? null : 'no-spread';
      const [low, high] = reason === null ? [back(middle - half), back(middle + half)] : [null, null];
      estimates.set(name, { n: counts[i]!, estimate: exact(groups[i]!) ?? back(middle), low, high, reason });
    });
    const test = hasSpread ? equalityF(means.estimates, covariance) : null;
    const result = test ? { value: test.f, df1: test.df1, df2: fit.residualDf, p: fUpperTail(test.f, test.df1, fit.residualDf) } : null;
    f.set(classId, result);
    lsd.set(classId, null);
    if (hasSpread) {
      const shifted = means.estimates.map((estimate) => estimate + fit.offset);
      classes.push({ classId, varieties: names, estimates: shifted, covariance });
      const alike = new Set(counts).size === 1 && new Set(members.map((i) => used[i]!.plants)).size === 1;
      if (family === 'gaussian' && alike && result && result.p < 1 - level) {
        const each = (variance[members[0]!]! * fit.dispersion! * inflation[0]!) / counts[0]!;
        lsd.set(classId, t * Math.sqrt(2 * each));
      }
    }
  }
  return {
    family,
    factor: factor.kind,
    layout,
    residualDf: fit.residualDf,
    dispersion: fit.dispersion,
    cvPercent: cvPercent(fit, used),
    estimates,
    classes,
    f,
    lsd,
  };
}
