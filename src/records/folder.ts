import { foldHeader, nearestName } from '../terms/names.ts';
import { fileOnly, placeText } from '../terms/place.ts';
import type { ProblemLog } from '../terms/problem.ts';
import type { SourceFile } from '../read/decode.ts';
import { SEASON_TABLES } from './seasonDrafts.ts';
import type { SeasonTable } from './seasonDrafts.ts';

/** What was found in a trial folder, sorted by what it is. */
export interface TrialFiles {
  readonly hasData: boolean;
  readonly settings: SourceFile | null;
  readonly varieties: SourceFile | null;
  /** Seed lots. */
  readonly seeds: SourceFile | null;
  /** Beds and their places. */
  readonly beds: SourceFile | null;
  readonly seasons: ReadonlyMap<number, ReadonlyMap<SeasonTable, SourceFile>>;
  /** Members' sheets and full records, by year and garden; a sheet is a season.csv. */
  readonly gardens: ReadonlyMap<number, ReadonlyMap<string, ReadonlyMap<SeasonTable, SourceFile>>>;
  /** Gardens of a club. */
  readonly gardensList: SourceFile | null;
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
  /** Workbooks that could not be read, with the reason. */
  readonly workbooks?: readonly { readonly path: string; readonly detail: string }[];
  /** Tables that are there twice: the second, and the first. */
  readonly twice: readonly { readonly path: string; readonly other: string }[];
}

/** Which table a file or a sheet is: settings, varieties, or one of a season's; null for any other. */
type TableName =
  | 'trial.yaml'
  | 'varieties.csv'
  | 'seeds.csv'
  | 'places.csv'
  | 'gardens.csv'
  | 'addresses.csv'
  | { readonly year: number; readonly table: SeasonTable; readonly garden?: string };

const seasonTable = (stem: string): SeasonTable | undefined => SEASON_TABLES.find((name) => name === `${stem}.csv`);

/** A sheet named `harvests` in data/2026.xlsx or data/2026/book.xlsx, or `2026 harvests` in any workbook of data/. */
function sheetName(path: string): TableName | null {
  const [file = '', sheet = ''] = path.split(/#(.*)/s);
  const stem = foldHeader(sheet);
  if (stem === 'varieties' || stem === 'seeds' || stem === 'places' || stem === 'gardens') return `${stem}.csv`;
  const year = /^data\/(\d{4})(?:\.\w+$|\/)/.exec(file)?.[1];
  const named = /^(?:(\d{4})_(\w+)|(\w+)_(\d{4}))$/.exec(stem);
  const table = seasonTable(named?.[2] ?? named?.[3] ?? stem);
  const own = named?.[1] ?? named?.[4] ?? year;
  return table && own !== undefined ? { year: Number(own), table } : null;
}

const TOP_TABLES = ['trial.yaml', 'varieties.csv', 'seeds.csv', 'places.csv', 'gardens.csv', 'addresses.csv'] as const;

/** A member's sheet, data/2026/gardens/g07.csv (or a workbook's one sheet), or a table of data/2026/gardens/g07/. */
function gardenTable(path: string): TableName | null {
  const [, year, garden, table] = /^data\/(\d{4})\/gardens\/([^/]+?)(?:\/([^/#]+)|\.\w+)(?:#.*)?$/.exec(path) ?? [];
  if (year === undefined || garden === undefined) return null;
  if (table === undefined) return { year: Number(year), garden, table: 'season.csv' };
  const own = SEASON_TABLES.find((name) => name === table);
  return own ? { year: Number(year), garden, table: own } : null;
}

function tableName(path: string): TableName | null {
  if (path.includes('/gardens/')) return gardenTable(path);
  if (path.includes('#')) return sheetName(path);
  const [, first = '', second, ...deeper] = path.split('/');
  if (second === undefined) return TOP_TABLES.find((name) => name === first) ?? null;
  const table = SEASON_TABLES.find((name) => name === second);
  return /^\d{4}$/.test(first) && table && deeper.length === 0 ? { year: Number(first), table } : null;
}

const TOP = ['trial.yaml', 'varieties.csv', 'seeds.csv', 'places.csv', 'gardens.csv'];
const SHEETS = [
  'varieties',
  'seeds',
  'places',
  'gardens',
  ...SEASON_TABLES.map((name) => name.replace('.csv', '')),
].join(', ');

type Tables = Map<SeasonTable, SourceFile>;

/** The tables that one belongs to: of its season, or of a garden in it. */
function tablesOf(
  { year, garden }: Exclude<TableName, string>,
  seasons: Map<number, Tables>,
  gardens: Map<number, Map<string, Tables>>,
): Tables {
  const own: Tables = seasons.get(year) ?? new Map();
  // A season is one even where members alone have sent anything.
  seasons.set(year, own);
  if (garden === undefined) return own;
  const all = gardens.get(year) ?? new Map<string, Tables>();
  gardens.set(year, all);
  const tables: Tables = all.get(garden) ?? new Map();
  all.set(garden, tables);
  return tables;
}

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
  const gardens = new Map<number, Map<string, Map<SeasonTable, SourceFile>>>();
  const others: string[] = [];
  const content = found.filter(({ path }) => path.startsWith('content/') && path.endsWith('.md'));
  const photos = found
    .filter(({ path }) => path.startsWith('content/photos/') && !path.endsWith('.md'))
    .map(({ path }) => path.replace('content/photos/', ''));
  const top = new Map<string, SourceFile>();
  const twice: { path: string; other: string }[] = [];
  for (const source of found) {
    if (!source.path.startsWith('data/')) continue;
    const name = tableName(source.path);
    if (name === null) {
      others.push(source.path);
      continue;
    }
    const tables: Map<string, SourceFile> = typeof name === 'string' ? top : tablesOf(name, seasons, gardens);
    const key = typeof name === 'string' ? name : name.table;
    const known = tables.get(key);
    if (known) twice.push({ path: source.path, other: known.path });
    else tables.set(key, source);
  }
  return {
    hasData,
    settings: top.get('trial.yaml') ?? null,
    varieties: top.get('varieties.csv') ?? null,
    seeds: top.get('seeds.csv') ?? null,
    beds: top.get('places.csv') ?? null,
    seasons,
    gardens,
    gardensList: top.get('gardens.csv') ?? null,
    content,
    photos,
    addresses: top.get('addresses.csv') ?? null,
    unreadable,
    others,
    twice,
  };
}

/** Reports files and folders that could not be read. */
function reportUnreadable({ unreadable, workbooks, twice }: TrialFiles, log: ProblemLog): void {
  for (const { path, reason } of unreadable) {
    if (reason === 'outside') log.add('outside-folder', fileOnly(path));
    else if (reason === 'changed') log.add('file-changed', fileOnly(path));
    else log.add('file-unreadable', fileOnly(path), '', { reason });
  }
  for (const { path, detail } of workbooks ?? []) log.add('workbook-unreadable', fileOnly(path), '', { detail });
  for (const { path, other } of twice) log.add('file-twice', fileOnly(path), '', { other: placeText(fileOnly(other)) });
}

/** Reports what is missing, misnamed or unreadable in a folder. */
export function listFolder(files: TrialFiles, log: ProblemLog): void {
  reportUnreadable(files, log);
  if (!files.hasData) {
    log.add('no-data-folder', fileOnly('data'));
    return;
  }
  const isUnreadable = (path: string): boolean => files.unreadable.some((file) => file.path === path);
  const someUnread = files.unreadable.length + (files.workbooks?.length ?? 0) > 0;
  if (!files.varieties && !isUnreadable('data/varieties.csv'))
    log.add('missing-varieties', fileOnly('data/varieties.csv'));
  if (files.seasons.size === 0 && !someUnread) log.add('no-seasons', fileOnly('data'));
  const strange = new Set<string>();
  for (const path of files.others) {
    if (path.includes('#')) {
      log.add('sheet-unknown', fileOnly(path), '', { tables: SHEETS });
      continue;
    }
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
