import type { Day } from '../../terms/day.ts';
import { shownColumns } from '../../terms/published.ts';
import { publishedSeason, withheldGardens } from '../withheld.ts';
import { isOfClub } from '../../terms/gardens.ts';
import { everySeason } from '../../terms/trial.ts';
import type { Season, Trial } from '../../terms/trial.ts';

/** A remark as it is published. */
export interface PublishedRemark {
  readonly year: number;
  /** Null where the whole season is meant. */
  readonly day: Day | null;
  readonly variety: string;
  /** Null where it is about a variety with several plantings. */
  readonly planting: string | null;
  readonly text: string;
}

/** Gardens other than the trial's own, where there are several: what a member writes beside a sheet is for the secretary. */
const membersOf = (trial: Trial): ReadonlySet<string> =>
  new Set([
    ...withheldGardens(trial),
    ...everySeason(trial).flatMap((own) =>
      isOfClub(own) ? own.gardens.filter((code) => code !== trial.settings.gardens.own) : [],
    ),
  ]);

/** What was written down in a season and is published: of plantings first, then beside their records by day. */
export function remarksOf(season: Season, trial: Trial): readonly PublishedRemark[] {
  const { year, plantings, remarks } = publishedSeason(season, membersOf(trial));
  const { show } = trial.settings.publish;
  const ofPlantings = plantings.flatMap(({ id, variety, notes, unknownColumns }) => {
    const parts = [...(notes !== null && show.includes('notes') ? [notes] : []), ...shownColumns(unknownColumns, show)];
    return parts.length === 0 ? [] : [{ year, day: null, variety, planting: id, text: parts.join('; ') }];
  });
  const byDay = remarks.toSorted((a, b) => (a.day ?? 0) - (b.day ?? 0));
  return [...ofPlantings, ...byDay.map((own) => ({ year, ...own }))];
}
