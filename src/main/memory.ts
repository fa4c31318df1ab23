import { getHeapStatistics } from 'node:v8';
import { grouped } from '../terms/groups.ts';
import { classLookup } from '../terms/trial.ts';
import type { Trial } from '../terms/trial.ts';

// Measured on whole builds of 300 and 1,000 varieties of five classes in ten seasons, and of 1,000 of one class in one:
// npm run bench:scale prints such figures. What is said of pairs grows with the square of a class.
const BASE_MB = 250;
const MB_A_VARIETY_AND_SEASON = 0.08;
const MB_A_PAIR = 0.0003;
const MB_A_PLANTING = 0.02;

/** Memory that a build of a trial may take at its most [MB]. */
export function memoryOf({ seasons, varieties }: Pick<Trial, 'seasons' | 'varieties'>): number {
  const classOf = classLookup(varieties);
  let mb = BASE_MB;
  for (const { plantings } of seasons) {
    const grown = new Set(plantings.map(({ variety }) => variety));
    const ofClass = grouped(grown, (id) => classOf(id));
    for (const own of ofClass.values()) mb += MB_A_VARIETY_AND_SEASON * own.length + MB_A_PAIR * own.length ** 2;
    mb += MB_A_PLANTING * plantings.length;
  }
  return mb;
}

/** What to say before a build that may need more memory than there is; null where it fits. */
export function whatWillNotFit(trial: Trial, limitMb = getHeapStatistics().heap_size_limit / 2 ** 20): string | null {
  const needed = Math.ceil(memoryOf(trial) / 100) * 100;
  if (needed < limitMb) return null;
  return `this trial may need ${needed} MB of memory and Node gives ${Math.floor(limitMb)} MB: if the build ends early, set NODE_OPTIONS=--max-old-space-size=${2 * needed}`;
}
