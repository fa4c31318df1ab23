import { rankingsDocument } from './rankingsDocument.ts';
import { cullsOf } from '../analyse/summaries.ts';
import { answers, plantModels, ratingModels, ripenings, ripeningModel } from '../analyse/traitsSeen.ts';
import type { SeasonSeen, VarietySeen } from '../analyse/seen.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { Estimate } from '../terms/estimate.ts';
import type { Trial } from '../terms/trial.ts';
import type { PlantModel } from '../analyse/plantTypes.ts';
import { nextSeasonDocument } from './nextSeason/document.ts';
import type { ComparisonDocument, Figure, PlantingDocument, Results } from './publication/schema.ts';
import type { AdviceSource } from './nextSeason/source.ts';
import { isoDate } from '../terms/day.ts';
import { linesDocument } from './linesDocument.ts';
import type { PublishedLines } from './linesDocument.ts';
import { ongoingOf } from './pages/ongoing.ts';
import { traitFacts } from '../terms/traits.ts';
import { publishedSeason, withheldGardens } from './withheld.ts';
import type { GardenAdvice } from '../decide/adviseGarden.ts';
import { clubOf } from './pages/club.ts';

type ByClass = 'letters' | 'against_check' | 'new_against_returning';

const METHODS = { gamma: 'quasi-gamma', poisson: 'quasi-poisson', gaussian: 'least-squares' } as const;

function figures({ n, estimate, low, high, reason }: Estimate): {
  readonly n: number;
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly reason?: string;
} {
  return { n, estimate, low, high, ...(reason === null ? {} : { reason }) };
}

function modelFigure(estimate: Estimate | undefined): NonNullable<Figure['model']> | null {
  if (!estimate || estimate.estimate === null) return null;
  return { ...figures(estimate), method: 'aft-lognormal' };
}

function degreeDayFigure(own: VarietySeen, { settings }: Trial): NonNullable<Figure['degree_days']> | null {
  if (!own.ripeningDegreeDays) return null;
  const { estimate, low, high } = own.ripeningDegreeDays.median;
  const { baseC, capC, method } = settings.degreeDays;
  return { median: estimate, low, high, base_c: baseC, cap_c: capC, method };
}

/** Every figure of a variety's season by trait. */
export function seasonTraits(seen: SeasonSeen, own: VarietySeen, trial: Trial): Readonly<Record<string, Figure>> {
  const { id } = own.variety;
  const traits: Record<string, Figure> = {};
  for (const [key, model] of plantModels(seen)) {
    const estimate = model.estimates.get(id);
    if (estimate)
      traits[key] = {
        unit: traitFacts(key, trial.settings.traits).publishedUnit,
        ...figures(estimate),
        method: METHODS[model.family],
      };
  }
  if (own.ripening) {
    const { ripe, unripe, median } = own.ripening;
    const { n, estimate, low, high, reason } = median;
    traits['first_ripe'] = {
      unit: 'd',
      n,
      ripe,
      unripe,
      median: estimate,
      low,
      high,
      ...(reason === null ? {} : { reason }),
      method: 'kaplan-meier',
      model: modelFigure(ripeningModel(seen)?.estimates.get(id)),
      degree_days: degreeDayFigure(own, trial),
    };
  }
  for (const [key, model] of ratingModels(seen)) {
    const estimate = model.estimates.get(id);
    if (estimate)
      traits[key] = { unit: 'points', ...figures(estimate), tasters: estimate.tasters, method: model.method };
  }
  for (const [key, shares] of answers(seen)) {
    const share = shares.get(id);
    if (share) traits[key] = { unit: 'share', ...share, estimate: share.k / share.n, method: 'wilson' };
  }
  return traits;
}

/** The dispersion of each class where it is not one for all. */
function dispersionsOf({ scales, dispersion }: PlantModel): Pick<ComparisonDocument, 'dispersion_by_class'> {
  if (dispersion === null || !scales) return {};
  return { dispersion_by_class: Object.fromEntries([...scales].map(([id, scale]) => [id, dispersion * scale])) };
}

function comparison(model: PlantModel): Omit<ComparisonDocument, ByClass> {
  return {
    method: METHODS[model.family],
    scale: model.family === 'gaussian' ? 'difference' : 'ratio',
    residual_df: model.residualDf,
    dispersion: model.dispersion,
    ...dispersionsOf(model),
    cv_percent: model.cvPercent,
    layout: Object.fromEntries(model.layouts),
    ...(model.factor === 'garden'
      ? { factor: model.factor, parts: Object.fromEntries(model.parts ?? []) }
      : { blocks: model.factor }),
    f: Object.fromEntries(model.f),
    lsd: Object.fromEntries(model.lsd),
    kendall_w: null,
  };
}

/** Letters, comparisons with the check variety, new against returning, of one trait. */
function classComparisons(
  seen: SeasonSeen,
  compared: SeasonComparisons,
  key: string,
): Pick<ComparisonDocument, ByClass> {
  const byClass = [...(compared.get(key) ?? [])];
  const letters: Record<string, string | null> = {};
  for (const { variety } of seen.varieties) letters[variety.id] = null;
  for (const [, own] of byClass) for (const [variety, text] of own.letters) letters[variety] = text;
  return {
    letters,
    against_check: Object.fromEntries(
      byClass.map(([id, { againstCheck }]) => [
        id,
        againstCheck && { check_variety: againstCheck.checkVariety, varieties: againstCheck.varieties },
      ]),
    ),
    new_against_returning: Object.fromEntries(
      byClass.map(([id, { newAgainstReturning }]) => [id, newAgainstReturning]),
    ),
  };
}

function comparisonsOf(seen: SeasonSeen, compared: SeasonComparisons): Results['seasons'][number]['comparisons'] {
  const all: Record<string, ComparisonDocument> = {};
  for (const [key, model] of plantModels(seen))
    all[key] = { ...comparison(model), ...classComparisons(seen, compared, key) };
  const ripening = ripeningModel(seen);
  if (ripening) {
    const { residualDf, dispersion, layouts, f } = ripening;
    const cv = dispersion === null ? null : 100 * Math.sqrt(dispersion);
    all['first_ripe'] = {
      method: 'aft-lognormal',
      scale: 'ratio',
      residual_df: residualDf,
      dispersion,
      cv_percent: cv,
      layout: Object.fromEntries(layouts),
      f: Object.fromEntries(f),
      lsd: Object.fromEntries([...f.keys()].map((id) => [id, null])),
      kendall_w: null,
      ...classComparisons(seen, compared, 'first_ripe'),
    };
  }
  for (const [key, model] of ratingModels(seen)) {
    all[key] = {
      method: model.method,
      scale: 'difference',
      residual_df: model.residualDf,
      dispersion: model.dispersion,
      cv_percent: null,
      kendall_w: model.kendallW,
      ...classComparisons(seen, compared, key),
    };
  }
  return all;
}

function plantingsOf(seen: SeasonSeen, withheld: ReadonlySet<string>): readonly PlantingDocument[] {
  const season = publishedSeason(seen.season, withheld);
  const ripe = new Map(ripenings(seen).map((own) => [own.unit.id, own.ripe]));
  const units = new Map([...season.yieldUnits, ...season.ripeningUnits].map((unit) => [unit.id, unit]));
  return [...units.values()].map((unit) => {
    const grams = seen.yields.get(unit.id)?.grams ?? null;
    const fruits = seen.yields.get(unit.id)?.fruits ?? null;
    return {
      planting: unit.id,
      variety: unit.variety,
      plants: unit.plants,
      traits: {
        yield: grams === null ? null : grams / unit.plants,
        fruits: fruits === null ? null : fruits / unit.plants,
        first_ripe: ripe.get(unit.id) ?? null,
      },
    };
  });
}

function ongoingDocument(trial: Trial): Results['ongoing'] {
  const own = ongoingOf(trial);
  if (!own) return null;
  const varieties = own.classes.flatMap((one) => one.varieties);
  return {
    season: own.year,
    varieties: varieties.map(({ variety, plants, firstRipe, fruits, grams }) => ({
      variety: variety.id,
      plants,
      first_ripe: firstRipe === null ? null : isoDate(firstRipe),
      fruits,
      weight: grams,
    })),
  };
}

function gardensOf(trial: Trial, seen: SeasonSeen): Pick<Results['seasons'][number], 'gardens'> {
  const club = clubOf(trial, seen);
  return club ? { gardens: { sent: club.sent, received: club.received, counted: club.counted } } : {};
}

/** results.json: everything on a page is in it. */
export function resultsDocument(
  trial: Trial,
  seasons: readonly { readonly seen: SeasonSeen; readonly compared: SeasonComparisons }[],
  advice: AdviceSource | null,
  lines: PublishedLines,
  gardens: ReadonlyMap<string, GardenAdvice> = new Map(),
): Results {
  const withheld = withheldGardens(trial);
  return {
    format: 'keeprow-results/1',
    trial: { title: trial.settings.title, interval: trial.settings.interval },
    seasons: seasons.map(({ seen, compared }) => ({
      season: seen.season.year,
      ...gardensOf(trial, seen),
      varieties: seen.varieties.map((own) => ({
        variety: own.variety.id,
        name: own.variety.name,
        class: own.variety.classId,
        status: own.status,
        plants_set_out: own.plantsSetOut,
        plantings: own.plantings,
        plantings_excluded: own.plantingsExcluded,
        shares: own.shares,
        culls: cullsOf(seen, own.variety.id),
        traits: seasonTraits(seen, own, trial),
      })),
      plantings: plantingsOf(seen, withheld),
      comparisons: comparisonsOf(seen, compared),
      rankings: rankingsDocument(seen),
    })),
    ongoing: ongoingDocument(trial),
    ...linesDocument(lines),
    next_season: advice && nextSeasonDocument(advice, gardens),
  };
}
