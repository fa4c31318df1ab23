import { seasonKey } from '../terms/ids.ts';
import { isDay, partsOf } from '../terms/day.ts';
import type { Day } from '../terms/day.ts';
import { fileOnly } from '../terms/place.ts';
import type { SeasonSettings } from '../terms/settings.ts';
import type { Planting, Season } from '../terms/trial.ts';
import type { SourceFile } from '../read/decode.ts';
import type { CheckContext } from '../sheet/context.ts';
import { finishPlanting, joinPlantings } from './draft.ts';
import type { PlantingDraft, RecordDraft } from './draft.ts';
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
import type { SeasonDrafts, SeasonTable } from './seasonDrafts.ts';
import { recordsOfTables } from './seasonTables.ts';
import { seasonIndex } from './target.ts';
import { nth } from '../numerics/element.ts';

/** First pass over a season: its plantings and totals. */
export function readPlantings(
  year: number,
  tables: ReadonlyMap<SeasonTable, SourceFile>,
  registry: VarietyRegistry,
  trialContext: CheckContext,
): SeasonDrafts {
  const context = { ...trialContext, limited: [], remarks: [] };
  const own = context.settings.seasons.get(year);
  const days = { sown: own?.sown ?? null, transplanted: own?.transplanted ?? null };
  const plantings = tables.get('plantings.csv');
  const totals = (['totals.csv', 'season.csv'] as const).flatMap((name) => {
    const source = tables.get(name);
    return source ? [{ source, isByPlanting: name === 'season.csv' }] : [];
  });
  if (!plantings && totals.length === 0) context.log.add('missing-plantings', fileOnly(`data/${year}`), String(year));
  const planted = plantings ? checkPlantings(plantings, days, registry, context) : [];
  const read = totals.flatMap(({ source, isByPlanting }) =>
    checkTotals(source, { ...days, isByPlanting }, registry, context),
  );
  const varieties = new Set(planted.map(({ fields }) => fields.variety));
  for (const { fields } of read) {
    if (varieties.has(fields.variety)) context.log.add('totals-and-plantings', fields.place, fields.variety);
  }
  const all = withIds([...planted, ...read], context);
  for (const { fields } of all) {
    if (fields.sown !== null && partsOf(fields.sown).year < year)
      context.log.add('sown-earlier-year', fields.place, fields.id);
  }
  return {
    year,
    tables,
    planted: all.slice(0, planted.length),
    totalled: all.slice(planted.length),
    limited: context.limited,
  };
}

/** Units of an analysis: plantings by themselves, and those of a variety that was recorded under its name joined. */
function unitsOf(
  drafts: readonly PlantingDraft[],
  plantings: readonly Planting[],
  joint: ReadonlyMap<string, readonly RecordDraft[]>,
): readonly Planting[] {
  if (joint.size === 0) return plantings;
  const units: Planting[] = [];
  const done = new Set<string>();
  for (const [i, draft] of drafts.entries()) {
    const { variety } = draft.fields;
    const records = joint.get(variety);
    if (!records) units.push(nth(plantings, i));
    else if (!done.has(variety)) {
      done.add(variety);
      units.push(
        joinPlantings(
          drafts.filter(({ fields }) => fields.variety === variety),
          records,
        ),
      );
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
  const index = seasonIndex(all, registry, elsewhere);
  const fileOf = (name: SeasonTable): string => tables.get(name)?.path ?? `data/${year}/${name}`;
  const { picked, ripened, measures, states, scores, ...rest } = recordsOfTables(drafts, {
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
    hasHarvests: tables.has('harvests.csv') && hasPickings(drafts, own, picked),
    plantings,
    yieldUnits: unitsOf(all, plantings, listed([picked])),
    ripeningUnits: unitsOf(all, plantings, listed([picked, ripened])),
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
