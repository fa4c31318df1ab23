import { Worker } from 'node:worker_threads';
import { compareSeason } from '../analyse/compareSeason.ts';
import type { SeasonComparisons } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';
import type { Memory, Remembered } from './recall.ts';

interface Answer {
  readonly compared: readonly SeasonComparisons[];
  readonly remembered: Remembered;
}

/**
 * Comparisons of all seasons, worked out on a second core while this one loads and draws: their integrals are the
 * slowest part of the figures. Where most of them are remembered, this core is the faster one.
 */
export async function compareSeasons(
  trial: Trial,
  seasons: readonly SeasonSeen[],
  memory: Memory,
): Promise<readonly SeasonComparisons[]> {
  // The sources, run without being compiled, have no worker: Node loads none of them on a second core.
  const hasWorker = new URL(import.meta.url).pathname.endsWith('.js');
  if (memory.isWarm() || !hasWorker) return seasons.map((seen) => compareSeason(trial, seen, memory.recall));
  const worker = new Worker(new URL('./compareWorker.js', import.meta.url), { workerData: { trial, seasons } });
  const { compared, remembered } = await new Promise<Answer>((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
  });
  memory.add(remembered);
  return compared;
}
