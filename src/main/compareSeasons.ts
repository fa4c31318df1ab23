import { Worker } from 'node:worker_threads';
import { compareSeason } from '../analyse/compareSeason.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';

/**
 * Comparisons of all seasons, worked out on a second core while this one loads and draws: their integrals are the
 * slowest part of the figures.
 */
export async function compareSeasons(
  trial: Trial,
  seasons: readonly SeasonSeen[],
): Promise<readonly SeasonComparisons[]> {
  // The sources, run without being compiled, have no worker: Node loads none of them on a second core.
  if (new URL(import.meta.url).pathname.endsWith('.ts')) return seasons.map((seen) => compareSeason(trial, seen));
  const worker = new Worker(new URL('./compareWorker.js', import.meta.url), { workerData: { trial, seasons } });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}
