import { seasonKey } from '../terms/ids.ts';
import { isDay, partsOf } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { fileOnly } from '../terms/place.ts';
import type { SeasonSettings } from '../terms/settings.ts';
import type { Planting, Season } from '../terms/trial.ts';
import type { CheckContext } from '../sheet/context.ts';
import { finishPlanting } from './draft.ts';
import type { PlantingDraft, PlantingFields, RecordDraft } from './draft.ts';
import { joinPlantings } from './joinPlantings.ts';
import type { VarietyRegistry } from './registry.ts';
import { reportDoubtfulPickings } from './rules/doubts.ts';
import { fruitWeights, reportHeavy, reportScrambled } from './rules/fruitSizes.ts';
import type { SeasonLogs } from './rules/groups.ts';
import type { SeasonMeasures } from './rules/measured.ts';
import { reportPlaces } from './rules/places.ts';
import { reportSameScores } from './rules/scores.ts';
import { checkStates } from './rules/states.ts';
import { seasonSpan } from './rules/seasonDays.ts';
import { checkPlantings, withIds } from './tables/plantings.ts';
import { checkTotals } from './tables/totals.ts';
import { reportGardens, sortedGardens } from './rules/gardens.ts';
import { inGarden } from './gardenIn.ts';
import type { SeasonDrafts, SeasonTable, Tables } from './seasonDrafts.ts';
import { recordsOfSeason } from './seasonTables.ts';
import { seasonIndex } from './target.ts';
import { keyed, nth } from '../numerics/element.ts';

/** Tables that say what stands. */
const PLANTED: readonly SeasonTable[] = ['plantings.csv', 'totals.csv', 'season.csv'];

/** First pass over a season: its plantings and totals. */
export function readPlantings(
  year: number,
  tables: Tables,
  written: ReadonlyMap<string, Tables>,
  registry: VarietyRegistry,
  trialContext: CheckContext,
): SeasonDrafts {
  const context = { ...trialContext, limited: [], remarks: [] };
  const own = context.settings.seasons.get(year);
  const days = { sown: own?.sown ?? null, transplanted: own?.transplanted ?? null };
  const gardens = sortedGardens(year, written, context);
  const kept = [[null, tables] as const, ...gardens];
  const planted = kept.flatMap(([garden, own]) => {
    const source = own.get('plantings.csv');
    return source ? checkPlantings(source, days, registry, { ...context, garden }) : [];
  });
  const read = kept.flatMap(([garden, own]) =>
    (['totals.csv', 'season.csv'] as const).flatMap((name) => {
      const source = own.get(name);
      const isByPlanting = name === 'season.csv';
      return source ? checkTotals(source, { ...days, isByPlanting }, registry, { ...context, garden }) : [];
    }),
  );
  if (!kept.some(([, own]) => PLANTED.some((name) => own.has(name))))
    context.log.add('missing-plantings', fileOnly(`data/${year}`), String(year));
  const within = ({ variety, garden }: PlantingFields): string => inGarden(variety, garden, context.gardens.own);
  const varieties = new Set(planted.map(({ fields }) => within(fields)));
  for (const { fields } of read) {
    if (varieties.has(within(fields))) context.log.add('totals-and-plantings', fields.place, fields.variety);
  }
  reportGardens(year, gardens, [...planted, ...read], context);
  const all = withIds([...planted, ...read], context);
  for (const { fields } of all) {
    if (fields.sown !== null && partsOf(fields.sown).year < year)
      context.log.add('sown-earlier-year', fields.place, fields.id);
  }
  return {
    year,
    tables,
    gardens,
    planted: all.slice(0, planted.length),
    totalled: all.slice(planted.length),
    limited: context.limited,
  };
}

/**
 * Units of an analysis: plantings by themselves, and those of a variety that was recorded under its name joined; in a
 * season of several gardens all of a variety in a garden, since its plants there are one look at it.
 */
function unitsOf(
  drafts: readonly PlantingDraft[],
  plantings: readonly Planting[],
  joint: ReadonlyMap<string, readonly RecordDraft[]>,
  own: string,
): readonly Planting[] {
  const isClub = new Set(plantings.map(({ garden }) => garden)).size > 1;
  if (joint.size === 0 && !isClub) return plantings;
  const units: Planting[] = [];
  const done = new Set<string>();
  const byKey = new Map<string, PlantingDraft[]>();
  for (const draft of drafts) {
    const key = inGarden(draft.fields.variety, draft.fields.garden, own);
    const known = byKey.get(key);
    if (known) known.push(draft);
    else byKey.set(key, [draft]);
  }
  for (const [i, draft] of drafts.entries()) {
    const { variety, garden } = draft.fields;
    const key = inGarden(variety, garden, own);
    const together = keyed(byKey, key);
    const records = joint.get(key) ?? (isClub && together.length > 1 ? [] : null);
    if (!records) units.push(nth(plantings, i));
    else if (!done.has(key)) {
      done.add(key);
      units.push(joinPlantings(together, records, key));
    }
  }
  return units;
}

/** A season with what the rules between seasons look at. */
export interface SeasonRecords {
  readonly season: Season;
  readonly weights: SeasonLogs;
  readonly measures: SeasonMeasures;
}

/** Records of several tables under the name of a variety, by variety. */
function listed(maps: readonly ReadonlyMap<string, RecordDraft>[]): ReadonlyMap<string, readonly RecordDraft[]> {
  const lists = new Map<string, RecordDraft[]>();
  for (const map of maps) for (const [id, record] of map) lists.set(id, [...(lists.get(id) ?? []), record]);
  return lists;
}

/** Warns of what in a season's records looks like a slip. */
function reportDoubts(
  { planted, totalled }: SeasonDrafts,
  harvests: string,
  registry: VarietyRegistry,
  context: CheckContext,
): void {
  const all = [...planted, ...totalled];
  reportDoubtfulPickings(all, harvests, context);
  reportHeavy(all, harvests, registry, context);
  reportScrambled(all, harvests, context);
  reportPlaces(planted, context);
}

/** The days within which a season's records lie, and the first day on which anything was planted out. */
function daysOf({ year, planted, totalled }: SeasonDrafts, { settings }: CheckContext) {
  const own = settings.seasons.get(year);
  const all = [...planted, ...totalled];
  const sowings = [own?.sown, ...all.map(({ fields }) => fields.sown)].filter(isDay);
  const plantedOut = [own?.transplanted, ...all.map(({ fields }) => fields.transplanted)].filter(isDay);
  return {
    span: seasonSpan(year, sowings.length > 0 ? sowings : plantedOut, settings),
    from: plantedOut.length > 0 ? (Math.min(...plantedOut) as Day) : null,
    isDated: sowings.length + plantedOut.length > 0,
  };
}

/** What the settings say of a season, with what holds where they say nothing. */
function asSet(
  own: SeasonSettings | undefined,
): Pick<Season, 'lookEvery' | 'layout' | 'harvestsComplete' | 'earlyUntil'> {
  return {
    lookEvery: own?.lookEvery ?? 7,
    layout: own?.layout ?? null,
    harvestsComplete: own?.harvestsComplete ?? false,
    earlyUntil: own?.earlyUntil ?? null,
  };
}

/** A table with its header alone says that nothing was picked only where the season's harvests are complete. */
const hasPickings = (
  { planted }: SeasonDrafts,
  own: SeasonSettings | undefined,
  picked: ReadonlyMap<string, RecordDraft>,
): boolean => own?.harvestsComplete === true || picked.size > 0 || planted.some(({ record }) => record.used > 0);

const harvestsOf = ({ tables, gardens }: SeasonDrafts): boolean =>
  [tables, ...gardens.values()].some((own) => own.has('harvests.csv'));

/** Second pass over a season: its records, laid against the plantings. */
export function checkSeason(
  drafts: SeasonDrafts,
  elsewhere: ReadonlyMap<string, number>,
  registry: VarietyRegistry,
  trialContext: CheckContext,
): SeasonRecords {
  const { year, tables, planted, totalled, limited } = drafts;
  const context: CheckContext = { ...trialContext, limited, remarks: [] };
  const all = [...planted, ...totalled];
  const own = context.settings.seasons.get(year);
  const { span, from, isDated } = daysOf(drafts, context);
  const home = context.gardens.own;
  const index = seasonIndex(all, registry, elsewhere, home);
  const fileOf = (name: SeasonTable): string => tables.get(name)?.path ?? `data/${year}/${name}`;
  const { picked, ripened, measures, states, scores, ...rest } = recordsOfSeason(drafts, {
    index,
    span,
    from,
    registry,
    context,
  });
  reportDoubts(drafts, fileOf('harvests.csv'), registry, context);
  reportSameScores(scores, fileOf('ratings.csv'), context);
  const plantings = all.map(finishPlanting);
  const season: Season = {
    key: seasonKey(year),
    year,
    firstDay: isDated ? span.firstDay : null,
    lastDay: span.lastDay,
    ...asSet(own),
    gardens: [...new Set(plantings.map(({ garden }) => garden))].toSorted(),
    hasHarvests: harvestsOf(drafts) && hasPickings(drafts, own, picked),
    plantings,
    yieldUnits: unitsOf(all, plantings, listed([picked]), home),
    ripeningUnits: unitsOf(all, plantings, listed([picked, ripened]), home),
    scores,
    states: checkStates(states, plantings, context),
    measurements: measures.map(({ own: value }) => value),
    ...rest,
    limited,
    remarks: context.remarks,
  };
  return {
    season,
    weights: fruitWeights(year, all, fileOf('harvests.csv')),
    measures: { year, file: fileOf('measurements.csv'), measures },
  };
}
