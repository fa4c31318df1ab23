import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { sortFiles } from '../../src/records/folder.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { csvText } from '../../src/terms/csv.ts';
import type { Problem } from '../../src/terms/problem.ts';

/** The rows of a table, its header first. */
export type Sheet = string[][];
/** The tables of a trial by their path below `data/`. */
export type Sheets = ReadonlyMap<string, Sheet>;
/** Bytes or text of the files of a trial, by their path below `data/`. */
export type Files = ReadonlyMap<string, string | Uint8Array>;

const DATA = resolve(import.meta.dirname, '../../data');

/** The demo's settings and tables as text, of all seasons or from a year on. */
export function demoFiles(from = 0): Map<string, string> {
  const files = new Map<string, string>();
  for (const path of readdirSync(DATA, { recursive: true, encoding: 'utf8' }))
    if (
      /\.(?:csv|yaml)$/.test(path) &&
      path !== 'addresses.csv' &&
      !(Number(path.slice(0, 4)) < from) &&
      !path.startsWith('2027')
    )
      files.set(path.replaceAll('\\', '/'), readFileSync(join(DATA, path), 'utf8'));
  return files;
}

/** The tables among some files. */
export function sheetsOf(files: ReadonlyMap<string, string>): Map<string, Sheet> {
  const sheets = new Map<string, Sheet>();
  for (const [path, text] of files) if (path.endsWith('.csv')) sheets.set(path, parse(text));
  return sheets;
}

/** Tables as files again; what is no table comes from the others. */
export function filesOf(sheets: Sheets, others: ReadonlyMap<string, string>): Map<string, string> {
  const files = new Map(others);
  for (const [path, rows] of sheets) files.set(path, csvText(rows));
  return files;
}

export interface Outcome {
  readonly problems: readonly Problem[];
  /** Everything that was read, places apart; null where an error kept it from being read. */
  readonly records: string | null;
}

/** What is read from some files. */
export function outcomeOf(files: Files): Outcome {
  const found = [...files].map(([path, text]) => ({
    path: `data/${path}`,
    bytes: typeof text === 'string' ? new TextEncoder().encode(text) : text,
  }));
  const { trial, problems } = checkTrial(sortFiles(found, [], true));
  const plain = (key: string, value: unknown): unknown =>
    key === 'place' ? undefined : value instanceof Map ? [...value] : value;
  return { problems, records: trial && JSON.stringify(trial, plain) };
}

export type Fate = 'told' | 'the same' | 'silent';

/** What became of changed files beside the unchanged ones. */
export function fateOf(changed: Files, clean: Outcome): Fate {
  const found = outcomeOf(changed);
  const known = new Set(clean.problems.map(({ code, places }) => `${code} ${places.length}`));
  if (found.problems.some(({ code, places }) => !known.has(`${code} ${places.length}`))) return 'told';
  return found.records === clean.records ? 'the same' : 'silent';
}

/** Random choices of a case, the same for the same name. */
export interface Chance {
  readonly uniform: () => number;
  /** A whole number from 0 to below n. */
  readonly below: (n: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
}

export function chanceOf(name: string): Chance {
  const { uniform } = randomStream(name);
  const below = (n: number): number => Math.floor(uniform() * n);
  return { uniform, below, pick: (from) => from[below(from.length)]! };
}
