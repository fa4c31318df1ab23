import type { Day } from '../terms/day.ts';
import type { SourceFile } from '../read/decode.ts';
import type { CheckContext } from '../sheet/context.ts';
import type { RecordDraft } from './draft.ts';
import type { VarietyRegistry } from './registry.ts';
import type { SeasonSpan } from './rules/seasonDays.ts';
import type { SeasonDrafts, SeasonTable } from './seasonDrafts.ts';
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

/** What the tables of a season hold, beside its plantings. */
export function recordsOfTables({ year, tables }: SeasonDrafts, { index, span, from, registry, context }: Laying) {
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
