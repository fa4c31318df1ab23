import { isOfClub } from '../terms/gardens.ts';
import type { Season } from '../terms/trial.ts';
import type { Writing } from './numbers.ts';

/** How a season is written of: where several gardens have records, of gardens in place of plantings and tasters. */
export function seasonWriting(writing: Writing, season: Season): Writing {
  if (!isOfClub(season)) return writing;
  const { words } = writing;
  const { club, charts, bench } = words;
  return {
    ...writing,
    words: {
      ...words,
      tables: { ...words.tables, ...club.tables },
      charts: { ...charts, dots: club.dots, ripening: { ...charts.ripening, ...club.ripening } },
      bench: {
        ...bench,
        season: { ...bench.season, readKeyText: club.ticks },
        variety: { ...bench.variety, ...club.howMany },
      },
    },
  };
}
