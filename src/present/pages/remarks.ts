import type { Day } from '../../terms/day.ts';
import { oncePer } from '../../terms/once.ts';
import { shownColumns } from '../../terms/published.ts';
import { ownPart } from '../withheld.ts';
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

function publishedRemarks(season: Season, trial: Trial): readonly PublishedRemark[] {
  const { year, plantings, remarks } = ownPart(season, trial);
  const { show } = trial.settings.publish;
  const ofPlantings = plantings.flatMap(({ id, variety, notes, unknownColumns }) => {
    const parts = [...(notes !== null && show.includes('notes') ? [notes] : []), ...shownColumns(unknownColumns, show)];
    return parts.length === 0 ? [] : [{ year, day: null, variety, planting: id, text: parts.join('; ') }];
  });
  const byDay = remarks.toSorted((a, b) => (a.day ?? 0) - (b.day ?? 0));
  return [...ofPlantings, ...byDay.map((own) => ({ year, ...own }))];
}

const ofTrial = oncePer((trial: Trial) => oncePer((season: Season) => publishedRemarks(season, trial)));

/** What was written down in a season and is published, of members nothing (it is for the secretary): of plantings first, then beside their records by day. */
export const remarksOf = (season: Season, trial: Trial): readonly PublishedRemark[] => ofTrial(trial)(season);
