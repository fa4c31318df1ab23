import { tQuantile } from '../numerics/distributions.ts';
import { keyed, nth } from '../numerics/element.ts';
import { ifConverged } from '../numerics/notConverged.ts';
import { fitBlocks } from '../numerics/incompleteBlocks.ts';
import { fitTimesInBlocks, likeliestSpread } from '../numerics/timesInBlocks.ts';
import type { BlockedTime, BlockedTimesFit } from '../numerics/timesInBlocks.ts';
import type { Estimate, Reason } from '../terms/estimate.ts';
import { grouped } from '../terms/groups.ts';
import type { Recall } from '../terms/recall.ts';
import { byPart } from './gardenModel.ts';
import { guarded } from './guard.ts';
import { indexed } from './plantClasses.ts';
import type { Indexed } from './plantClasses.ts';
import type { ClassMeans } from './plantTypes.ts';
import type { Ripening } from './ripening.ts';
import { classF, timeOf } from './ripeningModel.ts';
import type { RipeningModel, RipeningModelOptions } from './ripeningModel.ts';

type Options = Pick<RipeningModelOptions, 'level' | 'lookEvery' | 'classOf'> & {
  readonly gardenCorrelation: number;
  /** Gives what was worked out before. */
  readonly recall: Recall;
};

/** Units of varieties and gardens of which something ripened, of gardens with two varieties or more. */
function joinedRipenings(list: readonly Ripening[], blockOf: (own: Ripening) => string): readonly Ripening[] {
  let used = list;
  for (;;) {
    const varieties = new Map<string, Set<string>>();
    const ripe = new Set<string>();
    for (const own of used) {
      const block = blockOf(own);
      varieties.set(block, (varieties.get(block) ?? new Set()).add(own.unit.variety));
      if (own.ripe === null) continue;
      ripe.add(block);
      ripe.add(own.unit.variety);
    }
    const next = used.filter(
      (own) => ripe.has(own.unit.variety) && ripe.has(blockOf(own)) && keyed(varieties, blockOf(own)).size > 1,
    );
    if (next.length === used.length) return used;
    used = next;
  }
}

function withoutFit(list: readonly Ripening[]): Map<string, Estimate> {
  const estimates = new Map<string, Estimate>();
  for (const { unit, ripe } of list) {
    const known = estimates.get(unit.variety);
    const reason: Reason = ripe === null && known?.reason !== 'alone-in-garden' ? 'none-ripened' : 'alone-in-garden';
    estimates.set(unit.variety, { n: (known?.n ?? 0) + 1, estimate: null, low: null, high: null, reason });
  }
  return estimates;
}

/**
 * Times that differ by less than the days between looks have no spread to see: their middles by least squares, with the
 * spread that a time anywhere between two looks has, if it is the larger.
 */
function withinLooks(times: readonly BlockedTime[]): BlockedTimesFit {
  const middles = times.map(({ low, high }) => (Math.log(low) + Math.log(Number.isFinite(high) ? high : low)) / 2);
  const looks = times.map(({ low, high }) => (Number.isFinite(high) ? Math.log(high / low) ** 2 / 12 : 0));
  const ones = times.map(() => 1);
  const [group, block] = [times.map((time) => time.group), times.map((time) => time.block)];
  const fit = fitBlocks({ family: 'gaussian', y: middles, group, block, relativeVariance: ones });
  const ownSpread = ((fit.dispersion ?? 0) * fit.residualDf) / times.length;
  const spread = Math.max(ownSpread, looks.reduce((sum, own) => sum + own, 0) / times.length);
  return {
    sigma: Math.sqrt(spread),
    partOf: fit.partOf,
    parts: fit.parts,
    means(groups, blocks) {
      const { estimates, covariance } = fit.marginalMeans(groups, blocks);
      return {
        estimates: estimates.map((own) => own + fit.offset),
        covariance: covariance.map((row) => row.map((own) => own * spread)),
      };
    },
  };
}

function fitted(
  used: readonly Ripening[],
  variety: Indexed,
  block: Indexed,
  { lookEvery, recall }: Pick<Options, 'lookEvery' | 'recall'>,
): BlockedTimesFit | null {
  const times = used.map((own, i) => ({ ...timeOf(own, nth(variety.at, i), lookEvery), block: nth(block.at, i) }));
  // Plants that were never seen ripe can leave a variety, or a garden, without a time.
  return ifConverged(
    () =>
      fitTimesInBlocks(times, recall('times in blocks', times, likeliestSpread)) ??
      (lookEvery > 0 ? withinLooks(times) : null),
  );
}

/** Medians of each part of each class with their covariance, corrected for a small sample. */
function partMeans(
  used: readonly Ripening[],
  { fit, variety, block, factor }: { fit: BlockedTimesFit; variety: Indexed; block: Indexed; factor: number },
  classOf: Options['classOf'],
): readonly ClassMeans[] {
  return byPart(fit, variety)
    .map((members) => {
      const groups = [...new Set(members.map((i) => nth(variety.at, i)))];
      const { estimates, covariance } = fit.means(groups, [...new Set(members.map((i) => nth(block.at, i)))]);
      return {
        classId: classOf(nth(used, nth(members, 0)).unit.variety),
        varieties: groups.map((group) => nth(variety.levels, group)),
        estimates,
        covariance: covariance.map((row) => row.map((own) => own * factor)),
      };
    })
    .toSorted((a, b) => b.varieties.length - a.varieties.length);
}

/**
 * Days to first ripe fruit over gardens: log-normal, variety + garden, a variety in a garden the unit.
 *
 * @param list  ripening of each variety in each garden
 * @source gardens page 2.1; Kalbfleisch & Prentice (2002); small samples as methods page A3
 */
export function fitGardenRipening(list: readonly Ripening[], options: Options): RipeningModel {
  const { classOf, level } = options;
  const blockOf = ({ unit }: Ripening): string => `${classOf(unit.variety)}/${unit.garden}`;
  const used = joinedRipenings(list, blockOf);
  const [variety, block] = [indexed(used.map(({ unit }) => unit.variety)), indexed(used.map(blockOf))];
  const usedBy = grouped(used, ({ unit }) => unit.variety);
  const estimates = withoutFit(list);
  const layouts = new Map(list.map(({ unit }) => [classOf(unit.variety), 'spread'] as const));
  const how = { layouts, spotCorrelation: options.gardenCorrelation };
  const fit = used.length > 0 ? fitted(used, variety, block, options) : null;
  const residualDf = used.length - variety.levels.length - block.levels.length + (fit?.parts ?? 0);
  if (!fit || residualDf <= 0) {
    for (const own of variety.levels) {
      const n = keyed(usedBy, own).length;
      estimates.set(own, { n, estimate: null, low: null, high: null, reason: 'no-residual-df' });
    }
    return { ...how, residualDf: Math.max(0, residualDf), dispersion: null, estimates, classes: [], f: new Map() };
  }
  const classes = partMeans(used, { fit, variety, block, factor: used.length / residualDf }, classOf);
  const t = tQuantile(0.5 + level / 2, residualDf);
  for (const means of classes)
    means.varieties.forEach((own, i) => {
      const mine = keyed(usedBy, own);
      const middle = nth(means.estimates, i);
      const half = t * Math.sqrt(nth(nth(means.covariance, i), i));
      const figures = {
        n: mine.length,
        estimate: Math.exp(middle),
        low: Math.exp(middle - half),
        high: Math.exp(middle + half),
      };
      estimates.set(
        own,
        guarded(
          figures,
          mine.map(({ ripe, watchedInModel }) => ripe ?? watchedInModel),
          true,
        ),
      );
    });
  const f = new Map(classes.toReversed().map((own) => [own.classId, classF(own, residualDf)]));
  return { ...how, residualDf, dispersion: (fit.sigma ** 2 * used.length) / residualDf, estimates, classes, f };
}
