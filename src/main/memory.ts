import { getHeapStatistics } from 'node:v8';
import type { Trial } from '../terms/trial.ts';

// Measured on whole builds of 300 and 1,000 varieties of one class in one season, of 100 in ten, and of 10,000
// plantings: npm run bench prints such figures.
const BASE_MB = 250;
const MB_A_VARIETY_AND_SEASON = 0.8;
const MB_A_PLANTING = 0.03;

/** Memory that a build of a trial may take at its most [MB]. */
export function memoryOf({ seasons }: Pick<Trial, 'seasons'>): number {
  let mb = BASE_MB;
  for (const { plantings } of seasons) {
    const grown = new Set(plantings.map(({ variety }) => variety)).size;
    mb += MB_A_VARIETY_AND_SEASON * grown + MB_A_PLANTING * plantings.length;
  }
  return mb;
}

/** What to say before a build that may need more memory than there is; null where it fits. */
export function whatWillNotFit(trial: Trial, limitMb = getHeapStatistics().heap_size_limit / 2 ** 20): string | null {
  const needed = Math.ceil(memoryOf(trial) / 100) * 100;
  if (needed < limitMb) return null;
  return `this trial may need ${needed} MB of memory and Node gives ${Math.floor(limitMb)} MB: if the build ends early, set NODE_OPTIONS=--max-old-space-size=${2 * needed}`;
}
