import { parentPort, workerData } from 'node:worker_threads';
import { compareSeason } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';

const { trial, seasons } = workerData as { readonly trial: Trial; readonly seasons: readonly SeasonSeen[] };
parentPort?.postMessage(seasons.map((seen) => compareSeason(trial, seen)));
