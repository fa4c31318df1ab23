import { nearestName } from '../terms/names.ts';
import { fileOnly } from '../terms/place.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { SourceFile } from '../read/decode.ts';
import { SEASON_TABLES } from './season.ts';
import type { SeasonTable } from './season.ts';

/** What was found in a trial folder, sorted by what it is. */
export interface TrialFiles {
  readonly hasData: boolean;
  readonly settings: SourceFile | null;
  readonly varieties: SourceFile | null;
  readonly seasons: ReadonlyMap<number, ReadonlyMap<SeasonTable, SourceFile>>;
  /** Markdown files of `content/`. */
  readonly content: readonly SourceFile[];
  /** Names of the files in `content/photos/`. */
  readonly photos: readonly string[];
  /** The ledger of published addresses. */
  readonly addresses: SourceFile | null;
  /** Files and folders that could not be read, with what the system said. */
  readonly unreadable: readonly { readonly path: string; readonly reason: string }[];
  /** Names that are none of the contract's, for near misses: `data/2026/observation.csv`. */
  readonly others: readonly string[];
}

const TOP = ['trial.yaml', 'varieties.csv'];

/**
 * Sorts the files below `data/`.
 *
 * @param found       every readable file, its path from the trial folder
 * @param unreadable  what could not be read
 */
export function sortFiles(
  found: readonly SourceFile[],
  unreadable: TrialFiles['unreadable'],
  hasData: boolean,
): TrialFiles {
  const seasons = new Map<number, Map<SeasonTable, SourceFile>>();
  const others: string[] = [];
  const content = found.filter(({ path }) => path.startsWith('content/') && path.endsWith('.md'));
  const photos = found
    .filter(({ path }) => path.startsWith('content/photos/') && !path.endsWith('.md'))
    .map(({ path }) => path.replace('content/photos/', ''));
  let settings: SourceFile | null = null;
  let addresses: SourceFile | null = null;
  let varieties: SourceFile | null = null;
  for (const source of found) {
    if (!source.path.startsWith('data/')) continue;
    const [, first = '', second, ...deeper] = source.path.split('/');
    const table = SEASON_TABLES.find((name) => name === second);
    if (source.path === 'data/trial.yaml') settings = source;
    else if (source.path === 'data/varieties.csv') varieties = source;
    else if (source.path === 'data/addresses.csv') addresses = source;
    else if (/^\d{4}$/.test(first) && table && deeper.length === 0) {
      const tables = seasons.get(Number(first)) ?? new Map<SeasonTable, SourceFile>();
      tables.set(table, source);
      seasons.set(Number(first), tables);
    } else others.push(source.path);
  }
  return { hasData, settings, varieties, seasons, content, photos, addresses, unreadable, others };
}

/** Reports what is missing, misnamed or unreadable in a folder. */
export function listFolder(files: TrialFiles, log: ProblemLog): void {
  for (const { path, reason } of files.unreadable) log.add('file-unreadable', fileOnly(path), '', { reason });
  if (!files.hasData) {
    log.add('no-data-folder', fileOnly('data'));
    return;
  }
  const isUnreadable = (path: string): boolean => files.unreadable.some((file) => file.path === path);
  if (!files.varieties && !isUnreadable('data/varieties.csv'))
    log.add('missing-varieties', fileOnly('data/varieties.csv'));
  if (files.seasons.size === 0 && files.unreadable.length === 0) log.add('no-seasons', fileOnly('data'));
  const strange = new Set<string>();
  for (const path of files.others) {
    const [, first = '', second, ...deeper] = path.split('/');
    if (deeper.length > 0) continue;
    const name = second ?? first;
    const isSeason = second !== undefined && /^\d{4}$/.test(first);
    if (second !== undefined && !isSeason && (SEASON_TABLES as readonly string[]).includes(second)) strange.add(first);
    const expected = second === undefined ? TOP : isSeason ? SEASON_TABLES : [];
    const stem = (file: string): string => file.replace(/\.[a-z]+$/i, '');
    const near = nearestName(stem(name), expected.map(stem));
    const full = expected.find((file) => stem(file) === near);
    if (full !== undefined && /\.(csv|ya?ml|txt|tsv)$/i.test(name)) {
      log.add('file-name-near', fileOnly(path), name, { near: full });
    }
  }
  for (const folder of strange) log.add('not-a-year', fileOnly(`data/${folder}`), folder);
}
