import { fileOnly } from '../../terms/place.ts';
import { recordsOf, totalsOf } from '../../terms/record.ts';
import type { Planting, Season } from '../../terms/trial.ts';
import { isoDate } from '../../terms/day.ts';
import type { CheckContext } from '../../sheet/context.ts';

/**
 * True for a season that is over: a later one follows it, trial.yaml says so, its totals are known or its harvests
 * complete, every planting is gone, what was recorded has no dates at all (a notebook), or something was recorded at its
 * end, no more than the days between two looks before its last day.
 *
 * @param finished  what `seasons.<year>.finished` says; null where it says nothing
 */
function isOver(season: Season, finished: boolean | null): boolean {
  if (finished !== null) return finished;
  if (season.harvestsComplete || season.plantings.some((own) => totalsOf(own) !== null)) return true;
  if (season.plantings.length > 0 && season.plantings.every(({ removed }) => removed !== null)) return true;
  const { any, last } = recordsOf(season);
  if (!any) return false;
  return last === null || last >= season.lastDay - season.lookEvery;
}

/**
 * True for a season that is planned: it has plantings, none of them a date, and no table a value.
 */
function isPlanned(season: Season): boolean {
  const { plantings, firstDay, weather, seedBatches, states, measurements, scores, answers } = season;
  const isDated = ({ sown, transplanted, removed, topped }: Planting): boolean =>
    (sown ?? transplanted ?? removed) !== null || topped !== null;
  return (
    firstDay === null &&
    !plantings.some((own) => isDated(own) || totalsOf(own) !== null) &&
    [weather, seedBatches, states, measurements, scores, answers].every(({ length }) => length === 0) &&
    !recordsOf(season).any
  );
}

/** Notes that the last season is not over, and what would say that it is. */
function noteOngoing(season: Season, { log }: CheckContext): void {
  const { last } = recordsOf(season);
  const facts = {
    end: isoDate(season.lastDay),
    last: last === null ? '–' : isoDate(last),
    line: `seasons: {${season.year}: {finished: yes}}`,
  };
  log.add('season-ongoing', fileOnly(`data/${season.year}`), String(season.year), facts);
}

/** The last season where it is not over; null where all are. */
function ongoingOf(seasons: readonly Season[], context: CheckContext): Season | null {
  const newest = seasons.at(-1);
  if (!newest || isOver(newest, context.settings.seasons.get(newest.year)?.finished ?? null)) return null;
  noteOngoing(newest, context);
  return newest;
}

/** The last season where nothing of it is dated or recorded: it is planned. Null where it has begun. */
function plannedOf(seasons: readonly Season[], { log, settings }: CheckContext): Season | null {
  const newest = seasons.at(-1);
  const isSaid = newest && settings.seasons.get(newest.year)?.finished != null;
  if (!newest || isSaid || !isPlanned(newest)) return null;
  log.add('season-planned', fileOnly(`data/${newest.year}`), String(newest.year));
  return newest;
}

/** Seasons by how far they are: over, going on, planned. */
export function sortSeasons(
  seasons: readonly Season[],
  context: CheckContext,
): { readonly planned: Season | null; readonly ongoing: Season | null; readonly over: readonly Season[] } {
  const planned = plannedOf(seasons, context);
  const begun = seasons.filter((season) => season !== planned);
  const ongoing = ongoingOf(begun, context);
  return { planned, ongoing, over: begun.filter((season) => season !== ongoing) };
}
