import { createHash } from 'node:crypto';
import { seasonSeen } from '../analyse/seen.ts';
import type { SeasonSeen } from '../analyse/seen.ts';
import { lastWinter } from '../decide/lastWinter.ts';
import { adviseNextSeason } from '../decide/nextSeason.ts';
import { writingOf } from '../present/numbers.ts';
import type { AdviceSource } from '../present/nextSeason/source.ts';
import type { SourceFile } from '../read/decode.ts';
import type { TrialFiles } from '../records/folder.ts';
import type { Trial } from '../terms/trial.ts';
import { nth } from '../numerics/element.ts';
import { compareSeasons } from './compareSeasons.ts';
import type { Compared } from './drawings.ts';

/** Everything worked out from the records: what was seen, compared and advised. */
export interface Worked {
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  readonly compared: Promise<readonly Compared[]>;
  readonly advice: AdviceSource | null;
}

/** A hash of the records: the words and photos of a trial are not among them. */
function recordsKey({ settings, varieties, seasons }: TrialFiles): string {
  const hash = createHash('sha256');
  const add = (source: SourceFile | null): void => {
    if (!source) return;
    hash.update(`${source.path}\0`).update(source.rows ? JSON.stringify(source.rows) : source.bytes);
  };
  add(settings);
  add(varieties);
  for (const [year, tables] of seasons) {
    hash.update(String(year));
    for (const source of tables.values()) add(source);
  }
  return hash.digest('hex');
}

function adviceSource(trial: Trial, seasons: readonly SeasonSeen[]): AdviceSource | null {
  if (seasons.length === 0) return null;
  const writing = writingOf(trial.settings);
  return { trial, seasons, next: adviseNextSeason(trial, seasons), winters: lastWinter(trial, seasons), writing };
}

/** What was worked out last, for `view`: a change of words alone works nothing out anew. */
let last: { readonly key: string; readonly worked: Worked } | null = null;

/** What the records of a trial come to; the same records are worked out once. */
export function workOut(found: TrialFiles, trial: Trial): Worked {
  const key = recordsKey(found);
  if (last?.key === key) return last.worked;
  const seasons = trial.seasons.map((season) => seasonSeen(trial, season));
  const comparisons = compareSeasons(trial, seasons);
  const compared = comparisons.then((all) => seasons.map((seen, i) => ({ seen, compared: nth(all, i) })));
  // A fault is told by whoever waits for it, not as one that nobody did.
  compared.catch(() => {});
  const worked = { trial, seasons, compared, advice: adviceSource(trial, seasons) };
  last = { key, worked };
  return worked;
}
