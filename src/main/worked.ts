import { seasonSeen } from '../analyse/seen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { lastWinter } from '../decide/lastWinter.ts';
import { adviseNextSeason } from '../decide/nextSeason.ts';
import type { PublishedLines } from '../present/linesDocument.ts';
import { writingOf } from '../present/numbers.ts';
import type { AdviceSource } from '../present/nextSeason/source.ts';
import { publishedLines } from '../present/publishedLines.ts';
import type { SourceFile } from '../read/decode.ts';
import type { TrialFiles } from '../records/folder.ts';
import { checkRecords } from '../records/trial.ts';
import type { CheckedRecords } from '../records/trial.ts';
import type { Trial } from '../terms/trial.ts';
import { nth } from '../numerics/element.ts';
import { compareSeasons } from './compareSeasons.ts';
import { openMemory } from './recall.ts';
import type { Compared } from './drawings.ts';

/** Lasts as long as the process: in `view` a change works out anew what it touches. */
export const memory = openMemory();
const { recall } = memory;

/** Everything worked out from the records: what was seen, compared and advised. */
export interface Worked {
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly compared: Promise<readonly Compared[]>;
  readonly advice: AdviceSource | null;
  readonly lines: PublishedLines;
}

/** The tables of a trial and its settings: its words and photos are not among them. */
function recordsIn({
  settings,
  varieties,
  seeds,
  beds,
  gardensList,
  seasons,
  gardens,
}: TrialFiles): readonly SourceFile[] {
  const members = [...gardens.values()].flatMap((own) => [...own.values()]);
  const tables = [...seasons.values(), ...members].flatMap((own) => [...own.values()]);
  return [settings, varieties, seeds, beds, gardensList, ...tables].filter((source) => source !== null);
}

function isSame(a: SourceFile, b: SourceFile): boolean {
  if (a.path !== b.path) return false;
  return a.rows ? JSON.stringify(a.rows) === JSON.stringify(b.rows) : Buffer.compare(a.bytes, b.bytes) === 0;
}

function adviceSource(trial: Trial, seasons: readonly SeasonSeen[]): AdviceSource | null {
  if (seasons.length === 0) return null;
  const writing = writingOf(trial.settings);
  return {
    trial,
    seasons,
    next: adviseNextSeason(trial, seasons, true, recall),
    winters: lastWinter(trial, seasons, recall),
    writing,
  };
}

let lastChecked: { readonly records: readonly SourceFile[]; readonly checked: CheckedRecords } | null = null;

/** Tables and settings, read and checked; where they are byte for byte those before, what they gave then. */
export function checkOnce(found: TrialFiles): CheckedRecords {
  const records = recordsIn(found);
  const before = lastChecked;
  if (before?.records.length === records.length && records.every((own, i) => isSame(own, nth(before.records, i))))
    return before.checked;
  const checked = checkRecords(found);
  lastChecked = { records, checked };
  return checked;
}

let last: Worked | null = null;

/** What the records of a trial come to; the same trial is worked out once. */
export function workOut(trial: Trial): Worked {
  if (last?.trial === trial) return last;
  memory.begin();
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season, recall));
  const comparisons = compareSeasons(trial, seasons, memory);
  const compared = comparisons.then((all) => seasons.map((seen, i) => ({ seen, compared: nth(all, i) })));
  // A fault is told by whoever waits for it, not as one that nobody did.
  compared.catch(() => {});
  const advice = adviceSource(trial, seasons);
  const lines = publishedLines(trial, seasons, advice?.next ?? null, recall);
  last = { trial, seasons, compared, advice, lines };
  return last;
}
