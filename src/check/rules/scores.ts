import { foldName } from '../../terms/names.ts';
import { fileOnly } from '../../terms/place.ts';
import type { Season } from '../../terms/trial.ts';
import type { CheckContext } from '../context.ts';

/** Notes ratings that one person gave, and scores of totals.csv that ratings.csv puts aside. */
export function reportScores(season: Season, { settings, log }: CheckContext): void {
  const ratings = fileOnly(`data/${season.year}/ratings.csv`);
  for (const trait of settings.traits.values()) {
    if (trait.kind === 'measure') continue;
    const own = season.scores.filter((score) => score.trait === trait.key);
    if (own.length === 0) continue;
    if (trait.kind === 'rating' && new Set(own.map(({ taster }) => foldName(taster))).size === 1) {
      log.add('scores-by-one-taster', ratings, trait.key);
    }
    const totalled = season.plantings.find(({ totals }) => totals?.traits.has(trait.key));
    if (totalled) log.add('totals-and-ratings', totalled.place, trait.key);
  }
}
