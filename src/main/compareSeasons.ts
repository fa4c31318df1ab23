import { Worker } from 'node:worker_threads';
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
  const file = import.meta.url.endsWith('.ts') ? './compareWorker.ts' : './compareWorker.js';
  const worker = new Worker(new URL(file, import.meta.url), { workerData: { trial, seasons } });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}
