import { isOfClub } from '../terms/gardens.ts';
import type { Share } from '../terms/estimate.ts';
import { afresh } from '../terms/recall.ts';
import type { Recall } from '../terms/recall.ts';
import type { Settings } from '../terms/settings.ts';
import type { MeasureTrait, RatingTrait } from '../terms/traits.ts';
import { grouped } from '../terms/groups.ts';
import { classLookup } from '../terms/trial.ts';
import { plantingsOf } from '../terms/ofVariety.ts';
import type { Season, Trial, Variety } from '../terms/trial.ts';
import { measureUnits } from './measures.ts';
import { fitPlantModel } from './plantModel.ts';
import { fitRatings } from './ratings.ts';
import { answerShares, scoresByTrait } from './scores.ts';
import { rankingsSeen } from './rankingsSeen.ts';
import { ripeningCurve, seasonRipening } from './ripening.ts';
import type { Ripening, RipeningCurve } from './ripening.ts';
import { degreeDayClock } from './degreeDays.ts';
import { fitGardenRipening } from './gardenRipening.ts';
import { fitRipening } from './ripeningModel.ts';
import type { RipeningModel } from './ripeningModel.ts';
import { varietyShares } from './shares.ts';
import type { ShareKey } from './shares.ts';
import type { TraitSeen, TraitsSeen } from './traitsSeen.ts';
import { layoutsOf } from './units.ts';
import type { Unit } from './units.ts';
import { seasonYields } from './yield.ts';
import type { PlantingYield } from './yield.ts';

/** What one variety did in one season. */
export interface VarietySeen {
  readonly variety: Variety;
  readonly status: 'new' | 'returning';
  readonly plantsSetOut: number;
  readonly plantings: number;
  readonly plantingsExcluded: number;
  readonly shares: Readonly<Partial<Record<ShareKey, Share>>>;
  readonly ripening: RipeningCurve | null;
  /** The same curve on the clock of degree days; null without weather or with a gap in it. */
  readonly ripeningDegreeDays: RipeningCurve | null;
}

/** What one season's plants did: no borrowing from other seasons. */
export interface SeasonSeen {
  readonly season: Season;
  readonly varieties: readonly VarietySeen[];
  readonly yields: ReadonlyMap<string, PlantingYield>;
  readonly traits: TraitsSeen;
}

function firstSeasons(trial: Trial): ReadonlyMap<string, number> {
  const first = new Map<string, number>();
  for (const { id, firstGrown } of trial.varieties) if (firstGrown !== null) first.set(id, firstGrown);
  for (const season of trial.seasons) {
    for (const { variety } of season.plantings) if (!first.has(variety)) first.set(variety, season.year);
  }
  return first;
}

function seenOfPlants(
  season: Season,
  yields: SeasonSeen['yields'],
  settings: Settings,
  classOf: (id: string) => string,
): readonly (readonly [key: string, seen: TraitSeen])[] {
  const options = {
    level: settings.interval,
    spotCorrelation: settings.spotCorrelation,
    gardenCorrelation: settings.gardens.correlation,
  };
  const found: [string, TraitSeen][] = [];
  const perPlant = (of: (own: PlantingYield) => number | null): readonly Unit[] =>
    season.yieldUnits.flatMap((planting) => {
      const own = yields.get(planting.id);
      const value = own && planting.cause !== 'accident' ? of(own) : null;
      return value === null
        ? []
        : [{ planting, classId: classOf(planting.variety), y: value / planting.plants, plants: planting.plants }];
    });
  const isRatio = settings.scale === 'ratio';
  // Early weights of many gardens are mostly zeros, of which no garden's effect can be told.
  const isEarlyTold = season.earlyUntil !== null && !isOfClub(season);
  const traits = [
    ['yield', perPlant(({ grams }) => grams), 'gamma'],
    ['fruits', perPlant(({ fruits }) => fruits), 'poisson'],
    ['early_yield', !isEarlyTold ? [] : perPlant(({ earlyGrams }) => earlyGrams), 'gamma'],
  ] as const;
  for (const [key, units, family] of traits) {
    if (units.length === 0) continue;
    const own = { ...options, isYield: true };
    // From many zeros no effect of a block can be told: early yields are totals over plants.
    const ratio = fitPlantModel(season, units, { ...own, family, withBlocks: key !== 'early_yield' });
    const model = isRatio ? ratio : fitPlantModel(season, units, { ...own, family: 'gaussian', withBlocks: true });
    found.push([key, { kind: 'plants', model, ratio }]);
  }
  const measures = [...settings.traits.values()].filter((trait): trait is MeasureTrait => trait.kind === 'measure');
  for (const { key } of measures) {
    const units = measureUnits(season, key, classOf);
    if (units.length === 0) continue;
    const model = fitPlantModel(season, units, { ...options, family: 'gaussian', isYield: false, withBlocks: true });
    found.push([key, { kind: 'plants', model, ratio: null }]);
  }
  return found;
}

/** A variety's ripening on the clock of degree days; null where a planting's days are not covered by the weather. */
function inDegreeDays(
  list: readonly Ripening[],
  clock: ReturnType<typeof degreeDayClock>,
  settings: Settings,
): RipeningCurve | null {
  if (!clock || list.length === 0) return null;
  const converted: Ripening[] = [];
  for (const own of list) {
    const start = own.unit[settings.firstRipeFrom]!;
    const ripe = own.ripe === null ? null : clock(start, start + own.ripe);
    const watched = clock(start, start + own.watchedInCurve);
    if (watched === null && (own.ripe === null || ripe === null)) return null;
    converted.push({ ...own, ripe, watchedInCurve: watched ?? 0 });
  }
  return ripeningCurve(converted, settings.interval);
}

function modelOfRipening(
  season: Season,
  list: readonly Ripening[],
  settings: Settings,
  classOf: (id: string) => string,
  recall: Recall,
): RipeningModel | null {
  if (!list.some(({ ripe }) => ripe !== null)) return null;
  if (isOfClub(season))
    return fitGardenRipening(list, {
      level: settings.interval,
      gardenCorrelation: settings.gardens.correlation,
      lookEvery: season.lookEvery,
      classOf,
      recall,
    });
  const units = list.map(({ unit }) => ({ planting: unit, classId: classOf(unit.variety), y: 0, plants: unit.plants }));
  return fitRipening(list, {
    level: settings.interval,
    spotCorrelation: settings.spotCorrelation,
    layouts: layoutsOf(season, units),
    lookEvery: season.lookEvery,
    classOf,
  });
}

/** Shares of members' answers that no single member can be known by: those of gardens enough. */
function toldShares(
  shares: ReadonlyMap<string, Share>,
  season: Season,
  { gardens }: Settings,
): ReadonlyMap<string, Share> {
  return isOfClub(season) ? new Map([...shares].filter(([, { n }]) => n >= gardens.least)) : shares;
}

/**
 * Everything seen in one season of a trial: plants, days, ratings, shares, by variety and by trait.
 *
 * @param recall  gives what was worked out before
 * @throws NotConverged where a fit does not end (a fault that names the fit)
 * @source methods page A
 */
export function seasonSeen(trial: Trial, season: Season, recall = afresh): SeasonSeen {
  const { settings } = trial;
  const first = firstSeasons(trial);
  const yields = seasonYields(season);
  const ripening = seasonRipening(season, settings);
  const ripeningOf = grouped(ripening, ({ unit }) => unit.variety);
  const batchesOf = grouped(season.seedBatches, (batch) => batch.variety ?? '');
  const clock = degreeDayClock(season.weather, settings.degreeDays);
  const grown = new Set(season.plantings.map(({ variety }) => variety));
  const varieties = trial.varieties
    .filter(({ id }) => grown.has(id))
    .map((variety): VarietySeen => {
      const plantings = plantingsOf(season, variety.id);
      const own = ripeningOf.get(variety.id) ?? [];
      return {
        variety,
        status: first.get(variety.id) === season.year ? 'new' : 'returning',
        plantsSetOut: plantings.reduce((sum, { plants }) => sum + plants, 0),
        plantings: plantings.length,
        plantingsExcluded: plantings.filter(({ cause }) => cause === 'accident').length,
        shares: varietyShares(
          variety.id,
          season,
          { yields, ripening: own, batches: batchesOf.get(variety.id) ?? [] },
          settings,
        ),
        // Of few gardens a curve would show each one's day.
        ripening:
          own.length >= (isOfClub(season) ? settings.gardens.least : 1) ? ripeningCurve(own, settings.interval) : null,
        ripeningDegreeDays: inDegreeDays(own, clock, settings),
      };
    });
  const classOf = classLookup(trial.varieties);
  const traits = new Map<string, TraitSeen>([
    ...seenOfPlants(season, yields, settings, classOf),
    [
      'first_ripe',
      { kind: 'ripening', plantings: ripening, model: modelOfRipening(season, ripening, settings, classOf, recall) },
    ],
  ]);
  for (const [trait, scores] of scoresByTrait(season, settings))
    traits.set(
      trait.key,
      trait.kind === 'yes-no'
        ? { kind: 'answers', shares: toldShares(answerShares(scores, settings.interval), season, settings) }
        : { kind: 'rating', model: fitRatings(trait as RatingTrait, scores, settings.interval, isOfClub(season)) },
    );
  const ranked = grouped(rankingsSeen(season, trial), ({ trait }) => trait);
  for (const [trait, classes] of ranked) traits.set(trait, { kind: 'ranking', classes });
  return { season, varieties, yields, traits };
}
