import { LANGUAGES } from '../terms/languages.ts';
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { proposeTable } from '../records/adopt/propose.ts';
import type { AdoptedTrait } from '../records/adopt/columnCells.ts';
import type { Proposal } from '../records/adopt/propose.ts';
import { SEASON_TABLES } from '../records/season.ts';
import { isFitId } from '../sheet/cells/ids.ts';
import { checkTrial } from '../records/trial.ts';
import { adoptedSettings, adoptionText, traitLines } from '../present/adoption.ts';
import type { SourceFile } from '../read/decode.ts';
import { csvText } from '../terms/csv.ts';
import { foldName } from '../terms/names.ts';
import type { DateOrder } from '../terms/settings.ts';
import { readFolder } from './readFolder.ts';
import { openWorkbooks } from './workbooks.ts';
import { nth } from '../numerics/element.ts';

export interface AdoptChoices {
  readonly into: string | null;
  readonly season: number | null;
  readonly table: string | null;
  readonly order: DateOrder | null;
  readonly sheet: string | null;
  readonly columns: readonly string[];
  readonly isQuiet: boolean;
}

/** Tables that a sheet can become. */
export const TABLES: readonly string[] = ['varieties', ...SEASON_TABLES.map((name) => name.replace('.csv', ''))];

const err = (text: string): void => void process.stderr.write(`keeprow: ${text}\n`);

/** `Title=weight_g`, `Title=-`, `Title=rating flavour 1 9`, `Title=measure fruit_length cm`; null if it is none. */
function saidOf(text: string): readonly [string, string | AdoptedTrait | null] | null {
  const parts = /^(.+)=\s*(\S.*)$/s.exec(text);
  if (!parts) return null;
  const [title, meaning] = [nth(parts, 1).trim(), nth(parts, 2).trim()];
  if (meaning === '-') return [title, null];
  const rating = /^rating\s+([a-z]\w*)\s+(\d+)\s*(?:-|to|\s)\s*(\d+)$/i.exec(meaning);
  if (rating) return [title, { kind: 'rating', key: nth(rating, 1), from: Number(rating[2]), to: Number(rating[3]) }];
  const measure = /^measure\s+([a-z]\w*)\s+(\S+)$/i.exec(meaning);
  if (measure) return [title, { kind: 'measure', key: nth(measure, 1), unit: nth(measure, 2) }];
  return /^[a-z]\w*$/i.test(meaning) ? [title, meaning] : null;
}

/** The sheet of a file that is to be adopted; null where that was told. */
async function sheetOf(file: string, wanted: string | null): Promise<SourceFile | null> {
  const source: SourceFile = { path: file, bytes: readFileSync(file) };
  if (!/\.(xlsx|ods)$/i.test(file)) return source;
  const { sheets, unread } = await openWorkbooks([source]);
  if (unread[0]) {
    err(`${file} cannot be read: ${unread[0].detail}`);
    return null;
  }
  const names = sheets.map(({ path }) => path.slice(file.length + 1));
  const at =
    wanted === null && sheets.length === 1 ? 0 : names.findIndex((name) => foldName(name) === foldName(wanted ?? ''));
  if (at < 0) err(`${file} has the sheets ${names.join(', ')}: name one with --sheet`);
  return sheets[at] ?? null;
}

/** An id for a variety's name; two names never share one. */
function idOf(name: string, taken: Set<string>): string {
  const folded = foldName(name.replaceAll(/[\s_]+/g, '\u0001'))
    .replaceAll('\u0001', '-')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  const base = folded === '' ? 'variety' : folded;
  let id = base;
  for (let i = 2; taken.has(id); i++) id = `${base}-${i}`;
  taken.add(id);
  return id;
}

/** Columns of a sheet that belong to its varieties. */
const OF_VARIETIES = ['class', 'species', 'source'];

/** varieties.csv from the names that a sheet holds, with what it says of them. */
function varietiesOf({ tables }: Proposal): string | null {
  const all = [...tables.values()];
  const head = all[0]?.[0] ?? [];
  const at = head.indexOf('variety');
  if (at < 0) return null;
  const more = OF_VARIETIES.filter((name) => head.includes(name));
  const rows = new Map<string, readonly string[]>();
  for (const row of all.flatMap((table) => table.slice(1)))
    if (row[at] && !rows.has(foldName(row[at]))) rows.set(foldName(row[at]), row);
  const taken = new Set<string>();
  return csvText([
    ['variety', 'name', ...more],
    ...[...rows.values()].map((row) => [
      idOf(nth(row, at), taken),
      nth(row, at),
      ...more.map((name) => row[head.indexOf(name)] ?? ''),
    ]),
  ]);
}

/** A list of varieties with ids that can stand in an address; their names are kept. */
function withIds({ table, tables }: Proposal): Proposal['tables'] {
  const [head, ...rows] = tables.get(null) ?? [];
  const at = head?.indexOf('variety') ?? -1;
  if (table !== 'varieties' || !head || at < 0 || rows.every((row) => isFitId(row[at] ?? ''))) return tables;
  const taken = new Set<string>();
  const hasName = head.includes('name');
  const made = rows.map((row) => {
    const own = row.map((cell, i) => (i === at ? idOf(cell, taken) : cell));
    return hasName ? own : [...own, nth(row, at)];
  });
  return new Map([[null, [hasName ? head : [...head, 'name'], ...made]]]);
}

/** The files that adopting would write, by their path in the trial folder. */
function filesOf(proposal: Proposal, folder: string): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const { table, traits } = proposal;
  for (const [season, rows] of withIds(proposal))
    files.set(season === null ? 'data/varieties.csv' : `data/${season}/${table}.csv`, csvText(rows));
  const isNew = (path: string): boolean => !files.has(path) && !existsSync(join(folder, path));
  const varieties = isNew('data/varieties.csv') ? varietiesOf(proposal) : null;
  if (varieties !== null) files.set('data/varieties.csv', varieties);
  if (isNew('data/trial.yaml')) files.set('data/trial.yaml', adoptedSettings(basename(resolve(folder)), traits));
  return files;
}

async function write(proposal: Proposal, folder: string, isQuiet: boolean): Promise<number> {
  const files = filesOf(proposal, folder);
  const known = [...files.keys()].filter((path) => existsSync(join(folder, path)));
  if (known.length > 0) {
    err(`${known.join(', ')} ${known.length === 1 ? 'is' : 'are'} there already; nothing was written`);
    return 2;
  }
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text, { flag: 'wx' });
  }
  const { problems } = checkTrial(await readFolder(folder));
  const missing = problems.some(({ code }) => code === 'missing-plantings');
  if (!isQuiet) {
    process.stdout.write(`\nWritten: ${[...files.keys()].join(', ')}\n`);
    const said = files.has('data/trial.yaml') ? '' : traitLines(proposal.traits);
    if (said !== '') process.stdout.write(`Still to be written by hand, into data/trial.yaml:\n${said}`);
    if (missing)
      process.stdout.write(
        'Still to be written by hand: plantings.csv, a row a planting with its number of plants, which no sheet of records tells.\n',
      );
    process.stdout.write(`Look at it with: keeprow check ${folder}\n`);
  }
  return 0;
}

/** `keeprow adopt FILE`: says what a sheet's columns are, and with --into writes the tables. Returns the exit code. */
export async function runAdopt(file: string, choices: AdoptChoices): Promise<number> {
  if (!existsSync(file) || !statSync(file).isFile()) {
    err(`there is no file ${file}`);
    return 2;
  }
  const said = choices.columns.map((text) => [text, saidOf(text)] as const);
  const unclear = said.find(([, meaning]) => meaning === null);
  if (unclear) {
    err(
      `--column "${unclear[0]}" says nothing: write "Title=weight_g", "Title=rating flavour 1 9", "Title=measure length cm" or "Title=-"`,
    );
    return 2;
  }
  const source = await sheetOf(file, choices.sheet);
  if (!source) return 1;
  const settings =
    choices.into === null || !existsSync(choices.into) ? null : checkTrial(await readFolder(choices.into)).settings;
  const traits = [...(settings?.traits.values() ?? [])].map(
    ({ key, kind }) => [key, kind === 'measure' ? ('measure' as const) : ('rating' as const)] as const,
  );
  const proposal = proposeTable(source, {
    said: new Map(said.map(([, meaning]) => meaning!)),
    table: choices.table,
    season: choices.season,
    order: choices.order,
    languages: settings ? [settings.language] : LANGUAGES,
    traits: new Map(traits),
  });
  if (!choices.isQuiet) process.stdout.write(adoptionText(basename(file), proposal));
  if (proposal.questions.length > 0) return 1;
  if (choices.into !== null) return write(proposal, choices.into, choices.isQuiet);
  if (!choices.isQuiet) process.stdout.write('\nNothing was written. Write it with: --into DIR\n');
  return 0;
}
