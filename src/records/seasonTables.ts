import type { Day } from '../terms/day.ts';
import type { SourceFile } from '../read/decode.ts';
import type { CheckContext } from '../sheet/context.ts';
import type { RecordDraft } from './draft.ts';
import type { VarietyRegistry } from './registry.ts';
import type { SeasonSpan } from './rules/seasonDays.ts';
import type { SeasonDrafts, SeasonTable, Tables } from './seasonDrafts.ts';
import type { SeasonIndex } from './target.ts';
import { checkMembers } from './tables/answers.ts';
import { checkGermination } from './tables/germination.ts';
import { checkHarvests } from './tables/harvests.ts';
import { checkMeasurements } from './tables/measurements.ts';
import type { Measured } from './tables/measurements.ts';
import { checkObservations } from './tables/observations.ts';
import { checkRatings } from './tables/ratings.ts';
import type { Rated } from './tables/ratings.ts';
import { checkWeather } from './tables/weather.ts';

const NOTHING_RATED: Rated = { scores: [], servings: [] };
const NOTHING_MEASURED: Measured = { measures: [], states: [] };

interface Laying {
  readonly index: SeasonIndex;
  readonly span: SeasonSpan;
  /** First day of planting out. */
  readonly from: Day | null;
  readonly registry: VarietyRegistry;
  readonly context: CheckContext;
}

/** What the tables of the trial's own garden, or of another one, hold beside its plantings. */
function recordsOfTables(year: number, tables: Tables, { index, span, from, registry, context }: Laying) {
  const run = <T>(name: SeasonTable, none: T, check: (source: SourceFile) => T): T => {
    const source = tables.get(name);
    return source ? check(source) : none;
  };
  const none: ReadonlyMap<string, RecordDraft> = new Map();
  const picked = run('harvests.csv', none, (source) => checkHarvests(source, index, span, context));
  const ripened = run('observations.csv', none, (source) => checkObservations(source, index, span, context));
  const { scores, servings } = run('ratings.csv', NOTHING_RATED, (source) =>
    checkRatings(source, index, span, context),
  );
  const { measures, states } = run('measurements.csv', NOTHING_MEASURED, (source) =>
    checkMeasurements(source, index, span, context),
  );
  return {
    picked,
    ripened,
    scores,
    servings,
    measures,
    states,
    ...checkMembers(tables.get('sent.csv'), tables.get('answers.csv'), registry, context),
    seedBatches: run('germination.csv', [], (source) => checkGermination(source, year, registry, context)),
    weather: run('weather.csv', [], (source) => checkWeather(source, { span, from }, context)),
  };
}

type Found = ReturnType<typeof recordsOfTables>;

const merged = <V>(maps: readonly ReadonlyMap<string, V>[]): ReadonlyMap<string, V> =>
  new Map(maps.flatMap((map) => [...map]));

/** What the tables of a season hold, of every garden with records of its own; the weather is the trial's. */
export function recordsOfSeason({ year, tables, gardens }: SeasonDrafts, laying: Laying): Found {
  const own = recordsOfTables(year, tables, laying);
  // A member's sheet alone has no other tables.
  const kept = [...gardens].filter(([, { size }]) => size > 1);
  if (kept.length === 0) return own;
  const all = [
    own,
    ...kept.map(([garden, theirs]) =>
      recordsOfTables(year, theirs, { ...laying, context: { ...laying.context, garden } }),
    ),
  ];
  const listed = <K extends 'scores' | 'servings' | 'measures' | 'states' | 'seedBatches'>(key: K): Found[K] =>
    all.flatMap((one) => [...one[key]]) as Found[K];
  return {
    ...own,
    picked: merged(all.map(({ picked }) => picked)),
    ripened: merged(all.map(({ ripened }) => ripened)),
    scores: listed('scores'),
    servings: listed('servings'),
    measures: listed('measures'),
    states: listed('states'),
    seedBatches: listed('seedBatches'),
  };
}
