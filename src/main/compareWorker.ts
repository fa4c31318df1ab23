import { parentPort, workerData } from 'node:worker_threads';
import { compareSeason } from '../analyse/compareSeason.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import type { Trial } from '../terms/trial.ts';
import { openMemory } from './recall.ts';

const { trial, seasons } = workerData as { readonly trial: Trial; readonly seasons: readonly SeasonSeen[] };
const { recall, entries } = openMemory();
const compared = seasons.map((seen) => compareSeason(trial, seen, recall));
parentPort?.postMessage({ compared, remembered: entries() });
