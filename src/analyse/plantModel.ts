import { blockFactor } from './blocks.ts';
import { fitAdditive } from '../numerics/additive.ts';
import type { AdditiveFit } from '../numerics/additive.ts';
import type { AdditiveData } from '../numerics/additiveData.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Season } from '../terms/trial.ts';
import { countSpread, sizeSpread, varianceOfCounts } from './classSpread.ts';
import { classResult, indexed, plantsOf } from './plantClasses.ts';
import type { Fitted } from './plantClasses.ts';
import type { ModelOptions, PlantModel } from './plantTypes.ts';
import { layoutsOf, placeVariance } from './units.ts';
import type { Layout, Unit } from './units.ts';
import { keyed, nth } from '../numerics/element.ts';
import { isOfClub } from '../terms/gardens.ts';
import { fitGardenModel } from './gardenModel.ts';
import { cvPercent, estimable, spreads } from './plantFit.ts';

/** Classes of which a planting gave nothing: their blocks have no effect that a logarithm could tell (methods A1). */
function classesWithNothing(units: readonly Unit[], { family }: ModelOptions): ReadonlySet<string> {
  return new Set(family === 'gaussian' ? [] : units.flatMap(({ y, classId }) => (y > 0 ? [] : [classId])));
}

/** A class's means tell its dispersion of measures; a variety's own number that of its fruits. */
function refitted(data: AdditiveData, used: readonly Unit[], first: AdditiveFit, options: ModelOptions) {
  if (data.family === 'poisson') {
    const counts = countSpread(used, data.relativeVariance, first);
    const relative = varianceOfCounts(counts, first.fitted);
    const relativeVariance = data.relativeVariance.map((own, i) => own * nth(relative, i));
    const fit = counts.k === 0 ? first : fitAdditive({ ...data, relativeVariance });
    return { fit, counts, scales: counts.scales };
  }
  const scales = data.family === 'gaussian' && !options.isYield ? sizeSpread(used) : null;
  if (!scales) return { fit: first, counts: null, scales: null };
  const of = used.map(({ classId }) => keyed(scales, classId));
  const fit = fitAdditive({
    ...data,
    weight: data.weight.map((own, i) => own / nth(of, i)),
    relativeVariance: data.relativeVariance.map((own, i) => own * nth(of, i)),
  });
  return { fit, counts: null, scales };
}

interface Prepared {
  readonly used: readonly Unit[];
  readonly layouts: ReadonlyMap<string, Layout>;
  readonly kind: PlantModel['factor'];
  readonly levels: readonly string[] | null;
  readonly withoutBlocks: ReadonlySet<string>;
}

/** The units of the fit with what stands for their likeness of place. */
function prepare(season: Season, units: readonly Unit[], options: ModelOptions): Prepared {
  const used = estimable(units, options);
  const layouts = layoutsOf(season, units);
  const classOf = new Map<string, string>(used.map(({ planting, classId }) => [planting.id, classId]));
  const plantings = used.map(({ planting }) => planting);
  const named = ({ id }: { readonly id: string }): string => keyed(classOf, id);
  const nothing = classesWithNothing(units, options);
  const factor = options.withBlocks ? blockFactor(plantings, named, nothing) : null;
  const isBlocked = options.withBlocks && blockFactor(plantings, named).kind !== 'none';
  return {
    used,
    layouts,
    kind: factor?.kind ?? 'none',
    levels: factor?.levels ?? null,
    withoutBlocks: isBlocked ? nothing : new Set(),
  };
}

/**
 * Variety + block over all classes of a season: one dispersion, one residual df.
 *
 * @param units    plantings with their response per plant, at least one
 * @param options  family, interval level and spot correlation
 * @source methods page A1; McCullagh & Nelder (1989) ch. 8-9; Gomez & Gomez (1984) ch. 2
 */
export function fitPlantModel(season: Season, units: readonly Unit[], options: ModelOptions): PlantModel {
  if (isOfClub(season)) return fitGardenModel(units, options);
  const { used, layouts, kind, levels, withoutBlocks } = prepare(season, units, options);
  const variety = indexed(used.map(({ planting }) => planting.variety));
  const block = levels === null ? null : indexed(levels);
  const data: AdditiveData = {
    family: options.family,
    y: used.map(({ y }) => y),
    group: variety.at,
    block: block?.at ?? null,
    weight: used.map(({ plants }) => plants),
    relativeVariance: used.map(({ plants, classId }) =>
      placeVariance(layouts.get(classId), plants, options.spotCorrelation),
    ),
  };
  const { fit, counts, scales } = refitted(data, used, fitAdditive(data), options);
  const fitted: Fitted = { options, used, variety, block, fit, layouts, hasSpread: spreads(fit, used) };
  const membersOf = (id: string): readonly number[] => used.flatMap((unit, i) => (unit.classId === id ? [i] : []));
  const results = [...new Set(used.map(({ classId }) => classId))].map((id) => classResult(fitted, id, membersOf(id)));
  const isStray = results.some(({ estimates: own }) => own.some(({ reason }) => reason === 'not-estimable'));
  // An estimate that no planting could have given comes from the blocks: totals over plants have none.
  if (isStray && block !== null) return fitPlantModel(season, units, { ...options, withBlocks: false });
  const estimates = new Map<string, Estimate>();
  for (const { planting } of units) {
    const n = (estimates.get(planting.variety)?.n ?? 0) + 1;
    estimates.set(planting.variety, { n, estimate: 0, low: null, high: null, reason: 'nothing-picked' });
  }
  for (const { means, estimates: own } of results)
    means.varieties.forEach((name, i) => estimates.set(name, nth(own, i)));
  return {
    family: options.family,
    factor: block === null ? 'none' : kind,
    parts: null,
    leftOut: null,
    layouts,
    residualDf: fit.residualDf,
    dispersion: fitted.hasSpread ? fit.dispersion : null,
    cvPercent: cvPercent(fit, used),
    counts,
    plants: new Map(variety.levels.map((name, group) => [name, plantsOf(fitted, group)])),
    withoutBlocks,
    scales,
    spotCorrelation: options.spotCorrelation,
    estimates,
    classes: fitted.hasSpread ? results.map(({ means }) => means) : [],
    f: new Map(results.map(({ means, f }) => [means.classId, f])),
    lsd: new Map(results.map(({ means, lsd }) => [means.classId, lsd])),
  };
}
