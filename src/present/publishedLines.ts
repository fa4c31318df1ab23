import { lotOutlook } from '../analyse/seed/seedLots.ts';
import { sowingDates } from '../analyse/seed/sowing.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { crossReports } from '../decide/lines/crossReport.ts';
import type { NextSeason } from '../decide/nextSeason.ts';
import { afresh } from '../terms/recall.ts';
import type { Trial } from '../terms/trial.ts';
import type { PublishedLines } from './linesDocument.ts';

/**
 * What is told of a trial's crosses and seed.
 *
 * @param next    advice of next season; null without a season
 * @param recall  gives what was worked out before
 */
export function publishedLines(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  next: NextSeason | null,
  recall = afresh,
): PublishedLines {
  const crosses = crossReports(trial, seasons, next, recall);
  if (trial.lots.length === 0 || trial.settings.publish.hide.includes('seed')) return { crosses, seed: null };
  const lots = trial.lots.map((lot) => lotOutlook(lot, trial, trial.settings.interval, recall));
  return { crosses, seed: { lots, dates: sowingDates(trial) } };
}
