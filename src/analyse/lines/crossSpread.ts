import { recordedTraits, traitFacts } from '../../terms/traits.ts';
import type { Trial } from '../../terms/trial.ts';
import type { SeasonSeen } from '../seen.ts';
import type { Cross, CrossFamily } from './crosses.ts';
import { familySpread } from './generations.ts';
import { shareSummary, shareWeights } from './inherited.ts';
import type { SpreadSeason } from './inherited.ts';
import { keyed } from '../../numerics/element.ts';
import { classLookup } from '../../terms/trial.ts';
import { fixedSquares, plantValues, withoutBlocks } from './plantValues.ts';
import { added, spreadRatio, squaresOf } from './spread.ts';
import type { SpreadRatio, Squares } from './spread.ts';

/** Fewest plants of a line whose spread is looked at. */
const FEWEST_PLANTS = 4;

/** What the plants of a line's newest family showed of a measured trait, and how much of it is passed on. */
export interface CrossSpread {
  readonly trait: string;
  readonly isLog: boolean;
  readonly year: number;
  /** By planting, stored unit. */
  readonly values: ReadonlyMap<string, number>;
  /** The same without the effects of blocks, working scale. */
  readonly adjusted: ReadonlyMap<string, number>;
  /** Of `adjusted`. */
  readonly mean: number;
  /** Null where no fixed variety stood there as single plants. */
  readonly fixed: Squares | null;
  readonly ratio: SpreadRatio | null;
  /** Share of a plant's deviation that is inherited, mean and interval; null without fixed varieties. */
  readonly share: { readonly mean: number; readonly low: number; readonly high: number } | null;
  /** Weights of the F2's share; null likewise. */
  readonly weights: Float64Array | null;
  /** Inherited variance as a part of the F2's. */
  readonly part: number;
}

/** The families whose plants a grower chooses from: those of the season in which the cross last had single plants. */
export function newestFamilies(cross: Cross): readonly CrossFamily[] {
  const grown = cross.families.filter(({ plants, generation }) => plants.length > 0 && (generation ?? 2) >= 2);
  const last = Math.max(...grown.flatMap(({ plants }) => plants.map(({ year }) => year)));
  return grown.filter(({ plants }) => plants.some(({ year }) => year === last));
}

function seasonsOf(cross: Cross, trait: string, isLog: boolean, seasons: readonly SeasonSeen[], trial: Trial) {
  const classOf = classLookup(trial.varieties);
  return cross.families
    .filter(({ generation }) => (generation ?? 0) >= 2)
    .flatMap((family) =>
      family.years.flatMap((year) => {
        const seen = seasons.find(({ season }) => season.year === year);
        if (!seen) return [];
        const values = plantValues(seen, trait, trial);
        const own = values.filter(({ variety }) => variety === family.variety.id);
        if (own.length < FEWEST_PLANTS) return [];
        const blockOf = new Map<string, string | null>(seen.season.plantings.map(({ id, block }) => [id, block]));
        const ofClass = values.filter(({ variety }) => classOf(variety) === cross.classId);
        const blocks = withoutBlocks(ofClass, (id) => blockOf.get(id) ?? null, isLog);
        const fixed = fixedSquares(values, cross.classId, isLog, trial, blocks);
        const adjusted = own.map(({ planting }) => [planting, keyed(blocks.adjusted, planting)] as const);
        const line = squaresOf(adjusted.map(([, value]) => value));
        return [{ family, year, own, adjusted, fixed, line, part: familySpread(family.generation ?? 2) }];
      }),
    );
}

/** Sisters' families of one season share its fixed varieties: their squares go together. */
function bySeason(all: ReturnType<typeof seasonsOf>): readonly SpreadSeason[] {
  const seasons = new Map<string, SpreadSeason>();
  for (const { year, part, line, fixed } of all) {
    const key = `${year}/${part}`;
    const known = seasons.get(key);
    if (fixed) seasons.set(key, { line: known ? added([known.line, line]) : line, fixed, part });
  }
  return [...seasons.values()];
}

/**
 * Spread of a cross's newest plants in every trait that was measured, beside fixed varieties.
 *
 * @param level  of the intervals, 0 to 1
 * @source methods pages L5, L6
 */
export function crossSpreads(
  cross: Cross,
  seasons: readonly SeasonSeen[],
  trial: Trial,
  level: number,
): readonly CrossSpread[] {
  const newest = newestFamilies(cross);
  const { traits } = trial.settings;
  const goals = trial.settings.goals.get(cross.classId);
  const measures = recordedTraits(traits).filter(
    ({ kind, better, key }) => kind !== 'yes-no' && (better !== 'none' || goals?.has(key)),
  );
  // Fruits where nothing was weighed: they go with the yield.
  const amount = seasons.some((seen) => plantValues(seen, 'yield', trial).length > 0) ? 'yield' : 'fruits';
  return [amount, 'first_ripe', ...measures.map(({ key }) => key)].flatMap((trait): readonly CrossSpread[] => {
    const { scale, kind } = traitFacts(trait, trial.settings.traits);
    const isLog = scale === 'log';
    const all = seasonsOf(cross, trait, isLog, seasons, trial);
    const year = Math.max(...all.map((own) => own.year));
    const lasts = all.filter((own) => own.year === year && newest.includes(own.family));
    const [last] = lasts;
    if (!last) return [];
    const usable = bySeason(all);
    const line = added(lasts.map((own) => own.line));
    const prior = kind === 'measure' ? 'open' : 'low';
    const weights = last.fixed ? shareWeights(usable, prior) : null;
    const adjusted = lasts.flatMap((own) => own.adjusted);
    return [
      {
        trait,
        isLog,
        year,
        values: new Map(lasts.flatMap(({ own }) => own).map(({ planting, value }) => [planting, value])),
        adjusted: new Map(adjusted),
        mean: adjusted.reduce((sum, [, own]) => sum + own, 0) / adjusted.length,
        fixed: last.fixed,
        ratio: last.fixed ? spreadRatio(line, last.fixed, level) : null,
        share: weights ? shareSummary(weights, last.part, level) : null,
        weights,
        part: last.part,
      },
    ];
  });
}
