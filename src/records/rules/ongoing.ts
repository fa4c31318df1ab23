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
export function isOver(season: Season, finished: boolean | null): boolean {
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
export function isPlanned(season: Season): boolean {
  const { plantings, firstDay, weather, seedBatches, states, measurements, scores } = season;
  const isDated = ({ sown, transplanted, removed, topped }: Planting): boolean =>
    (sown ?? transplanted ?? removed) !== null || topped !== null;
  return (
    plantings.length > 0 &&
    firstDay === null &&
    !plantings.some((own) => isDated(own) || totalsOf(own) !== null) &&
    [weather, seedBatches, states, measurements, scores].every(({ length }) => length === 0) &&
    !recordsOf(season).any
  );
}

/** Notes that the last season is not over, and what would say that it is. */
export function noteOngoing(season: Season, { log }: CheckContext): void {
  const { last } = recordsOf(season);
  const facts = {
    end: isoDate(season.lastDay),
    last: last === null ? '–' : isoDate(last),
    line: `seasons: {${season.year}: {finished: yes}}`,
  };
  log.add('season-ongoing', fileOnly(`data/${season.year}`), String(season.year), facts);
}
