import { LANGUAGES } from '../terms/languages.ts';
import { appendFileSync, existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { proposeTable } from '../records/adopt/propose.ts';
import type { AdoptedTrait } from '../records/adopt/columnCells.ts';
import type { Proposal } from '../records/adopt/propose.ts';
import { SEASON_TABLES } from '../records/season.ts';
import { idFrom, isFitId } from '../sheet/cells/ids.ts';
import { checkTrial } from '../records/trial.ts';
import { adoptedSettings, adoptionText, asked, traitLines } from '../present/adoption.ts';
import type { SourceFile } from '../read/decode.ts';
import { csvText } from '../terms/csv.ts';
import { foldName } from '../terms/names.ts';
import type { DateOrder } from '../terms/settings.ts';
import { addRows } from './addRows.ts';
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
  /** What bare numbers under days are: a unit of weight, or fruits. */
  readonly picked: string | null;
  readonly isQuiet: boolean;
  readonly isJson: boolean;
}

/** Tables that a sheet can become. */
export const TABLES: readonly string[] = ['varieties', ...SEASON_TABLES.map((name) => name.replace('.csv', ''))];

const err = (text: string): void => void process.stderr.write(`keeprow: ${text}\n`);

/** `Title=weight_g`, `Title=-`, `Title=rating flavour 1 9`, `Title=measure fruit_length cm`; null if it is none. */
function saidFrom(text: string): readonly [string, string | AdoptedTrait | null] | null {
  const parts = /^(.+)=\s*(\S.*)$/s.exec(text);
  if (!parts) return null;
  const [title, meaning] = [nth(parts, 1).trim(), nth(parts, 2).trim()];
  if (meaning === '-') return [title, null];
  const rating = /^rating\s+([a-z]\w*)\s+(\d+)\s*(?:-|to|\s)\s*(\d+)(?:\s+(higher|lower|none))?$/i.exec(meaning);
  if (rating) {
    const better = rating[4]?.toLowerCase() as AdoptedTrait['better'];
    const scale = { from: Number(rating[2]), to: Number(rating[3]), ...(better ? { better } : {}) };
    return [title, { kind: 'rating', key: nth(rating, 1), ...scale }];
  }
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

/** Columns of a sheet that belong to its varieties. */
const OF_VARIETIES = ['class', 'species', 'source'];

/** varieties.csv from the names that a sheet holds, with what it says of them. */
export function varietiesOf({ tables }: Proposal): readonly (readonly string[])[] | null {
  const all = [...tables.values()];
  const head = all[0]?.[0] ?? [];
  const at = head.indexOf('variety');
  if (at < 0) return null;
  const more = OF_VARIETIES.filter((name) => head.includes(name));
  const rows = new Map<string, readonly string[]>();
  for (const row of all.flatMap((table) => table.slice(1)))
    if (row[at] && !rows.has(foldName(row[at]))) rows.set(foldName(row[at]), row);
  const taken = new Set<string>();
  return [
    ['variety', 'name', ...more],
    ...[...rows.values()].map((row) => [
      idFrom(nth(row, at), taken),
      nth(row, at),
      ...more.map((name) => row[head.indexOf(name)] ?? ''),
    ]),
  ];
}

/** A list of varieties with ids that can stand in an address; their names are kept. */
function withIds({ table, tables }: Proposal): Proposal['tables'] {
  const [head, ...rows] = tables.get(null) ?? [];
  const at = head?.indexOf('variety') ?? -1;
  if (table !== 'varieties' || !head || at < 0 || rows.every((row) => isFitId(row[at] ?? ''))) return tables;
  const taken = new Set<string>();
  const hasName = head.includes('name');
  const made = rows.map((row) => {
    const own = row.map((cell, i) => (i === at ? idFrom(cell, taken) : cell));
    return hasName ? own : [...own, nth(row, at)];
  });
  return new Map([[null, [hasName ? head : [...head, 'name'], ...made]]]);
}

/** A table that adopting would write: its path in the trial folder, its rows with their header. */
interface Writing {
  readonly path: string;
  readonly table: string;
  readonly rows: readonly (readonly string[])[];
}

/** The tables that adopting would write. */
function writingsOf(proposal: Proposal): readonly Writing[] {
  const { table, beside } = proposal;
  const own = [[table ?? '', withIds(proposal)] as const, ...beside];
  const tables = own.flatMap(([name, seasons]) =>
    [...seasons].map(([season, rows]) => ({
      path: season === null ? 'data/varieties.csv' : `data/${season}/${name}.csv`,
      table: name,
      rows,
    })),
  );
  const varieties = table === 'varieties' ? null : varietiesOf(proposal);
  return varieties ? [{ path: 'data/varieties.csv', table: 'varieties', rows: varieties }, ...tables] : tables;
}

interface Change {
  readonly path: string;
  readonly text: string;
  readonly rows: number;
  readonly kept: number;
  readonly isNew: boolean;
}

/** What would be written or added, by path; or why nothing can be. */
function changesOf(proposal: Proposal, folder: string): readonly Change[] | string {
  const changes: Change[] = [];
  for (const { path, table, rows } of writingsOf(proposal)) {
    const file = join(folder, path);
    if (!existsSync(file)) {
      changes.push({ path, text: csvText(rows), rows: rows.length - 1, kept: 0, isNew: true });
      continue;
    }
    const added = addRows(table, readFileSync(file), rows);
    if (added.kind === 'refused') return `nothing can be added to ${path}, since ${added.why}; nothing was written`;
    changes.push({ path, ...added, isNew: false });
  }
  if (!existsSync(join(folder, 'data/trial.yaml'))) {
    const text = adoptedSettings(basename(resolve(folder)), proposal.traits);
    changes.push({ path: 'data/trial.yaml', text, rows: 0, kept: 0, isNew: true });
  }
  return changes;
}

function changeText({ path, rows, kept, isNew }: Change): string {
  const count = `${rows} row${rows === 1 ? '' : 's'}`;
  if (isNew) return rows > 0 ? `${path} (${count})` : path;
  const rest = kept > 0 ? `, ${kept} there already and left as they are` : '';
  return `${path}: ${rows > 0 ? `${count} added` : 'nothing new'}${rest}`;
}

async function write(proposal: Proposal, folder: string, isQuiet: boolean): Promise<number> {
  const changes = changesOf(proposal, folder);
  if (typeof changes === 'string') {
    err(changes);
    return 2;
  }
  for (const { path, text, isNew } of changes) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    if (isNew) writeFileSync(join(folder, path), text, { flag: 'wx' });
    else if (text !== '') appendFileSync(join(folder, path), text);
  }
  const { problems } = checkTrial(await readFolder(folder));
  const missing = problems.some(({ code }) => code === 'missing-plantings');
  if (!isQuiet) {
    process.stdout.write(`\nWritten: ${changes.map(changeText).join(', ')}\n`);
    const said = changes.some(({ path, isNew }) => isNew && path === 'data/trial.yaml')
      ? ''
      : traitLines(proposal.traits);
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
  const said = choices.columns.map((text) => [text, saidFrom(text)] as const);
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
    picked: choices.picked,
    languages: settings ? [settings.language] : LANGUAGES,
    traits: new Map(traits),
  });
  if (choices.isJson) {
    const { table, columns, questions, rows } = proposal;
    process.stdout.write(`${JSON.stringify({ table, rows, columns, questions: questions.map(asked) }, null, 1)}\n`);
  } else if (!choices.isQuiet) process.stdout.write(adoptionText(basename(file), proposal));
  if (proposal.questions.length > 0) return 1;
  if (choices.into !== null) return write(proposal, choices.into, choices.isQuiet || choices.isJson);
  if (!choices.isQuiet && !choices.isJson) process.stdout.write('\nNothing was written. Write it with: --into DIR\n');
  return 0;
}

/** A sheet as it is proposed without a word of the grower's, for the names in it; null where that was told. */
export async function proposedIn(file: string): Promise<Proposal | null> {
  if (!existsSync(file) || !statSync(file).isFile()) {
    err(`there is no file ${file}`);
    return null;
  }
  const source = await sheetOf(file, null);
  const open = { said: new Map(), table: null, season: null, order: null, picked: null, traits: new Map() };
  return source && proposeTable(source, { ...open, languages: LANGUAGES });
}
