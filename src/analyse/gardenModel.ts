import type { AdditiveFit } from '../numerics/additive.ts';
import { keyed, nth } from '../numerics/element.ts';
import { fitBlocks } from '../numerics/incompleteBlocks.ts';
import type { BlocksFit } from '../numerics/incompleteBlocks.ts';
import { ifConverged } from '../numerics/notConverged.ts';
import type { Estimate, Reason } from '../terms/estimate.ts';
import { countSpread, sizeSpread, varianceOfCounts } from './classSpread.ts';
import type { CountSpread } from './classSpread.ts';
import { classResult, indexed, plantsOf } from './plantClasses.ts';
import type { ClassResult, Fitted, Indexed } from './plantClasses.ts';
import { cvPercent, estimable, spreads } from './plantFit.ts';
import type { ModelOptions, PlantModel } from './plantTypes.ts';
import { relativeVariance } from './units.ts';
import type { Unit } from './units.ts';

/** A garden of a class: its own block. */
const blockOf = ({ classId, planting }: Unit): string => `${classId}/${planting.garden}`;

interface Joined {
  readonly used: readonly Unit[];
  readonly lone: readonly Unit[];
  readonly empty: readonly Unit[];
}

/** Units that tell a difference between varieties: not alone in their garden, nor in one that gave nothing. */
export function joinedUnits(units: readonly Unit[], options: ModelOptions): Joined {
  const [lone, empty]: [Unit[], Unit[]] = [[], []];
  let used = estimable(units, options);
  for (;;) {
    const gardens = new Map<string, { varieties: Set<string>; sum: number }>();
    for (const unit of used) {
      const own = gardens.get(blockOf(unit)) ?? { varieties: new Set(), sum: 0 };
      own.varieties.add(unit.planting.variety);
      own.sum += Math.abs(unit.y);
      gardens.set(blockOf(unit), own);
    }
    const isEmpty = (unit: Unit): boolean => options.family !== 'gaussian' && keyed(gardens, blockOf(unit)).sum === 0;
    const isLone = (unit: Unit): boolean => keyed(gardens, blockOf(unit)).varieties.size < 2;
    const kept = used.filter((unit) => !isEmpty(unit) && !isLone(unit));
    for (const unit of used) {
      if (isEmpty(unit)) empty.push(unit);
      else if (isLone(unit)) lone.push(unit);
    }
    const next = estimable(kept, options);
    if (next.length === used.length) return { used, lone, empty };
    used = next;
  }
}

interface GardenFit {
  readonly fit: BlocksFit;
  readonly variety: Indexed;
  readonly block: Indexed;
  readonly counts: CountSpread | null;
  readonly scales: ReadonlyMap<string, number> | null;
}

/** The fit, once more where the spread of a number or a measure goes with its mean. */
function fitUnits(used: readonly Unit[], { family, gardenCorrelation, isYield }: ModelOptions): GardenFit {
  const variety = indexed(used.map(({ planting }) => planting.variety));
  const block = indexed(used.map(blockOf));
  const data = { family, y: used.map(({ y }) => y), group: variety.at, block: block.at };
  const variance = used.map(({ plants }) => relativeVariance(plants, gardenCorrelation));
  const first = fitBlocks({ ...data, relativeVariance: variance });
  const again = (of: readonly number[]): BlocksFit =>
    fitBlocks({ ...data, relativeVariance: variance.map((own, i) => own * nth(of, i)) });
  if (family === 'poisson') {
    const counts = countSpread(used, variance, first);
    const fit = counts.k === 0 ? first : again(varianceOfCounts(counts, first.fitted));
    return { fit, variety, block, counts, scales: counts.scales };
  }
  const scales = family === 'gaussian' && !isYield ? sizeSpread(used) : null;
  const fit = scales ? again(used.map(({ classId }) => keyed(scales, classId))) : first;
  return { fit, variety, block, counts: null, scales };
}

/** Positions of the units that gardens join, part by part as they first stand; a part lies within one class. */
export function byPart({ partOf }: Pick<BlocksFit, 'partOf'>, variety: Indexed): readonly (readonly number[])[] {
  const parts = new Map<number, number[]>();
  variety.at.forEach((group, i) => {
    const part = nth(partOf, group);
    const known = parts.get(part);
    if (known) known.push(i);
    else parts.set(part, [i]);
  });
  return [...parts.values()];
}

/** Positions of the units of each part of a class, the part with the most varieties first. */
function partsOf(used: readonly Unit[], { fit, variety }: GardenFit, classId: string): readonly (readonly number[])[] {
  const size = (own: readonly number[]): number => new Set(own.map((i) => nth(variety.at, i))).size;
  return byPart(fit, variety)
    .filter(([first]) => nth(used, first!).classId === classId)
    .toSorted((a, b) => size(b) - size(a));
}

/** Estimates of varieties that the fit says nothing of. */
function outside(units: readonly Unit[], { lone }: Joined): Map<string, Estimate> {
  const estimates = new Map<string, Estimate>();
  const alone = new Set(lone.map(({ planting }) => planting.variety as string));
  for (const { planting } of units) {
    const n = (estimates.get(planting.variety)?.n ?? 0) + 1;
    const reason: Reason = alone.has(planting.variety) ? 'alone-in-garden' : 'nothing-picked';
    const estimate = reason === 'nothing-picked' ? 0 : null;
    estimates.set(planting.variety, { n, estimate, low: null, high: null, reason });
  }
  return estimates;
}

/** Varieties of a fit that zeros leave without a maximum. */
function notEstimable(used: readonly Unit[], into: Map<string, Estimate>): void {
  const count = new Map<string, number>();
  for (const { planting } of used) count.set(planting.variety, (count.get(planting.variety) ?? 0) + 1);
  for (const [id, n] of count) into.set(id, { n, estimate: null, low: null, high: null, reason: 'not-estimable' });
}

const NO_FIT: Pick<PlantModel, 'residualDf' | 'dispersion' | 'cvPercent' | 'counts' | 'scales' | 'classes'> = {
  residualDf: 0,
  dispersion: null,
  cvPercent: null,
  counts: null,
  scales: null,
  classes: [],
};

function leftOutOf({ lone, empty }: Joined, classes: readonly string[]): NonNullable<PlantModel['leftOut']> {
  const gardens = (units: readonly Unit[], id: string): number =>
    new Set(units.filter(({ classId }) => classId === id).map(blockOf)).size;
  return new Map(classes.map((id) => [id, { lone: gardens(lone, id), empty: gardens(empty, id) }]));
}

/**
 * Variety + garden in a season of several gardens: gardens are incomplete blocks with flat effects, a variety in a
 * garden is the unit, each garden counts alike ("in a middling garden"). One dispersion over all parts and classes.
 *
 * @param units  a variety in a garden each, with its response per plant
 * @source gardens page 2.1; Yates (1936) Ann. Eugen. 7:121; reference cases o1 and o6
 */
export function fitGardenModel(units: readonly Unit[], options: ModelOptions): PlantModel {
  const joined = joinedUnits(units, options);
  const { used } = joined;
  const classes = [...new Set(units.map(({ classId }) => classId))];
  const layouts = new Map(classes.map((id) => [id, 'spread'] as const));
  const estimates = outside(units, joined);
  const base = {
    family: options.family,
    factor: 'garden' as const,
    layouts,
    withoutBlocks: new Set<string>(),
    spotCorrelation: options.gardenCorrelation,
    leftOut: leftOutOf(joined, classes),
    lsd: new Map(classes.map((id) => [id, null])),
  };
  const made = used.length > 0 ? ifConverged(() => fitUnits(used, options)) : null;
  if (!made) {
    notEstimable(used, estimates);
    return { ...base, ...NO_FIT, parts: new Map(), plants: new Map(), estimates, f: base.lsd };
  }
  const fit: AdditiveFit = made.fit;
  const hasSpread = spreads(fit, used);
  const fitted: Fitted = { options, used, variety: made.variety, block: made.block, fit, layouts, hasSpread };
  const byClass = classes.map((id): readonly [string, readonly ClassResult[]] => [
    id,
    partsOf(used, made, id).map((members) => classResult(fitted, id, members)),
  ]);
  const results = byClass.flatMap(([, own]) => own);
  for (const { means, estimates: own } of results)
    means.varieties.forEach((name, i) => estimates.set(name, nth(own, i)));
  return {
    ...base,
    residualDf: fit.residualDf,
    dispersion: hasSpread ? fit.dispersion : null,
    cvPercent: cvPercent(fit, used),
    counts: made.counts,
    scales: made.scales,
    plants: new Map(made.variety.levels.map((name, group) => [name, plantsOf(fitted, group)])),
    parts: new Map(byClass.map(([id, own]) => [id, own.map(({ means }) => means.varieties.toSorted())])),
    estimates,
    classes: hasSpread ? results.map(({ means }) => means) : [],
    f: new Map(byClass.map(([id, own]) => [id, own[0]?.f ?? null])),
  };
}
