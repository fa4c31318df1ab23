import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Proposal } from '../records/adopt/propose.ts';
import { idFrom, isFitId } from '../sheet/cells/ids.ts';
import { checkTrial } from '../records/trial.ts';
import { adoptedSettings, traitLines } from '../present/adoption.ts';
import { csvText } from '../terms/csv.ts';
import { foldName, nearestName } from '../terms/names.ts';
import { addRows } from './addRows.ts';
import { say } from './tellProblems.ts';
import { readFolder } from './readFolder.ts';
import { nth } from '../numerics/element.ts';

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
  /** Rows of the sheet that say another thing than what stands there. */
  readonly differing: readonly string[];
  readonly isNew: boolean;
}

/** What would be written or added, by path; or why nothing can be. */
function changesOf(proposal: Proposal, folder: string): readonly Change[] | string {
  const changes: Change[] = [];
  for (const { path, table, rows } of writingsOf(proposal)) {
    const file = join(folder, path);
    if (!existsSync(file)) {
      changes.push({ path, text: csvText(rows), rows: rows.length - 1, kept: 0, differing: [], isNew: true });
      continue;
    }
    const added = addRows(table, readFileSync(file), rows);
    if (added.kind === 'refused') return `nothing can be added to ${path}, since ${added.why}; nothing was written`;
    changes.push({ path, ...added, isNew: false });
  }
  if (!existsSync(join(folder, 'data/trial.yaml'))) {
    const text = adoptedSettings(basename(resolve(folder)), proposal.traits);
    changes.push({ path: 'data/trial.yaml', text, rows: 0, kept: 0, differing: [], isNew: true });
  }
  return changes;
}

/** So many rows that differ are told. */
const MOST_TOLD = 5;

/** New names that are near one of the varieties that were there: perhaps the same. */
function newNames(proposal: Proposal, before: readonly string[]): string {
  const folds = new Set(before.map(foldName));
  const names = (varietiesOf(proposal) ?? []).slice(1).map((row) => nth(row, 1));
  const lines = names.flatMap((name) => {
    const near = folds.has(foldName(name)) ? null : nearestName(name, before);
    return near === null
      ? []
      : [
          `  ${name}: is it ${near}? Then put "${name}" into also_known_as of ${near} and take its own row out of varieties.csv\n`,
        ];
  });
  return lines.length === 0 ? '' : `New varieties whose names are near known ones:\n${lines.join('')}`;
}

function changeText({ path, rows, kept, isNew }: Change): string {
  const count = `${rows} row${rows === 1 ? '' : 's'}`;
  if (isNew) return rows > 0 ? `${path} (${count})` : path;
  const rest = kept > 0 ? `, ${kept} there already and left as they are` : '';
  return `${path}: ${rows > 0 ? `${count} added` : 'nothing new'}${rest}`;
}

/** What stands in a file otherwise than in the sheet; empty where nothing does. */
function differingText({ path, differing }: Change): string {
  if (differing.length === 0) return '';
  const told = differing.slice(0, MOST_TOLD).map((own) => `  ${own}\n`);
  const rest = differing.length - told.length;
  const more = rest > 0 ? `  and ${rest} more\n` : '';
  return `${path} says otherwise and was left as it is; change it there if the sheet is right:\n${told.join('')}${more}`;
}

/**
 * Writes the tables of an adopted sheet, or adds to those that are there. Returns the exit code.
 *
 * @param before  names of the varieties that the trial has already
 */
export async function writeAdopted(
  proposal: Proposal,
  folder: string,
  before: readonly string[],
  isQuiet: boolean,
): Promise<number> {
  const changes = changesOf(proposal, folder);
  if (typeof changes === 'string') {
    say(changes);
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
    for (const change of changes) process.stdout.write(differingText(change));
    process.stdout.write(newNames(proposal, before));
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
