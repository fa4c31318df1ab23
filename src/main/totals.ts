import { existsSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { dayOf } from '../terms/day.ts';
import { csvText } from '../terms/csv.ts';
import { checkRecords } from '../records/trial.ts';
import { duckDb, findDuckDb } from './engines/duckdb.ts';
import { ownReader } from './engines/own.ts';
import { findPostgres, postgres } from './engines/postgres.ts';
import { EngineFault } from './engines/statement.ts';
import type { Engine, TotalRow } from './engines/statement.ts';
import { readFolder } from './readFolder.ts';
import { say } from './tellProblems.ts';
import type { Telling } from './tellProblems.ts';
import { writeWhole } from './writeWhole.ts';

export interface TotalsChoices {
  /** A URL, or files. */
  readonly from: readonly string[];
  /** What each planting is: garden, planting, variety, plants; a season where it differs from year to year. */
  readonly plantings: string;
  readonly into: string;
}

const HEADER = ['garden', 'planting', 'variety', 'plants', 'weight_g', 'fruits', 'first_ripe'];
/** From so many bytes on an engine reads faster than it starts. */
const LARGE = 50e6;

/** Who reads: the database that is named; DuckDB for Parquet, and for much where it is installed; else the own reader. */
async function engineFor(from: readonly string[]): Promise<Engine> {
  const url = from.find((own) => /^postgres(?:ql)?:\/\//.test(own));
  if (url !== undefined) {
    const pg = await findPostgres();
    if (!pg) throw new EngineFault('a database is read by the package pg: npm install pg');
    return postgres(pg, url);
  }
  for (const file of from) if (!existsSync(file)) throw new EngineFault(`there is no ${file}`);
  const isParquet = from.some((file) => /\.parquet$/i.test(file));
  const module = await findDuckDb();
  if (isParquet && !module) throw new EngineFault('Parquet is read by DuckDB: npm install @duckdb/node-api@1.5.6-r.1');
  const isLarge = from.reduce((sum, file) => sum + statSync(file).size, 0) > LARGE;
  return module && (isParquet || isLarge) ? duckDb(module, from) : ownReader(from);
}

const keyOf = (season: string, garden: string, planting: string): string =>
  season === '' ? `${garden}\u0000${planting}` : `${season}\u0000${garden}\u0000${planting}`;

interface Planted {
  readonly variety: string;
  readonly plants: string;
}

/** What the plantings are, by garden and planting, a season before both where the table has one. */
interface PlantedTable {
  readonly planted: ReadonlyMap<string, Planted>;
  readonly isBySeason: boolean;
}

function plantedIn(path: string): PlantedTable {
  let rows: readonly (readonly string[])[];
  try {
    rows = parse(readFileSync(path), { bom: true, skip_empty_lines: true });
  } catch (fault) {
    throw new EngineFault(`${path} could not be read: ${fault instanceof Error ? fault.message : String(fault)}`);
  }
  const [header = [], ...body] = rows;
  const at = (name: string): number => header.findIndex((title) => title.trim().toLowerCase() === name);
  const [season, garden, planting, variety, plants] = ['season', 'garden', 'planting', 'variety', 'plants'].map(at) as [
    number,
    number,
    number,
    number,
    number,
  ];
  if (garden < 0 || planting < 0 || variety < 0 || plants < 0)
    throw new EngineFault(`${path} needs the columns garden, planting, variety and plants`);
  const planted = new Map<string, Planted>();
  for (const row of body)
    planted.set(keyOf(season < 0 ? '' : row[season]!, row[garden]!, row[planting]!), {
      variety: row[variety]!,
      plants: row[plants] === '' ? '1' : row[plants]!,
    });
  return { planted, isBySeason: season >= 0 };
}

/** Gardens that stand in more than one region: a planting of theirs can come twice. */
function inTwoRegions(rows: readonly TotalRow[]): ReadonlySet<string> {
  const regionOf = new Map<string, string>();
  const found = new Set<string>();
  let [lastRegion, last] = ['', ''];
  for (const [region = '', garden = ''] of rows) {
    if (garden === last && region === lastRegion) continue;
    [lastRegion, last] = [region, garden];
    if ((regionOf.get(garden) ?? region) !== region) found.add(garden);
    regionOf.set(garden, region);
  }
  return found;
}

function isRealDay(text: string): boolean {
  const [year, month, date] = text.split('-').map(Number);
  return dayOf(year ?? 0, month ?? 0, date ?? 0) !== null;
}

/** Tables of totals by season, rows in order of gardens and plantings. */
function seasonRows(
  rows: readonly TotalRow[],
  { planted, isBySeason }: PlantedTable,
): ReadonlyMap<string, readonly TotalRow[]> {
  const seasons = new Map<string, TotalRow[]>();
  const seen = new Set<string>();
  const doubtful = inTwoRegions(rows);
  const days = new Set<string>();
  for (const [, garden = '', season = '', planting = '', , fruits = '', mg = '', first = ''] of rows) {
    if (!/^\d{4}$/.test(season))
      throw new EngineFault(`${season === '' ? 'a row' : season} is no season: a year of four digits`);
    // Of very many rows the days are few.
    if (first !== '' && !days.has(first)) {
      if (!isRealDay(first)) throw new EngineFault(`garden ${garden}, ${planting}: ${first} is no day`);
      days.add(first);
    }
    const own =
      (isBySeason ? planted.get(keyOf(season, garden, planting)) : undefined) ??
      planted.get(keyOf('', garden, planting));
    if (!own) throw new EngineFault(`garden ${garden}, season ${season}: nothing says what planting ${planting} is`);
    const grams = mg === '' ? '' : String(Number(mg) / 1000);
    if (doubtful.has(garden)) {
      const sign = keyOf(season, garden, planting);
      if (seen.has(sign)) throw new EngineFault(`garden ${garden}, planting ${planting} stands in two regions`);
      seen.add(sign);
    }
    const row = [garden, planting, own.variety, own.plants, grams, fruits, first];
    const known = seasons.get(season);
    if (known) known.push(row);
    else seasons.set(season, [row]);
  }
  return seasons;
}

/** Regions of which no row came. */
const silentRegions = (rows: readonly TotalRow[], regions: readonly string[]): readonly string[] =>
  regions.filter((region) => !rows.some(([own]) => own === region));

/** True for a table that this command may have written. */
function isOurs(path: string): boolean {
  const [header = ''] = readFileSync(path, 'utf8').split('\n', 1);
  return header === HEADER.join(',');
}

async function written({ from, plantings, into }: TotalsChoices): Promise<string> {
  const { settings } = checkRecords(await readFolder(into));
  if (!settings) throw new EngineFault(`${into} has no trial.yaml that can be read: keeprow check ${into} says why`);
  const engine = await engineFor(from);
  const rows = await engine.totals();
  const silent = silentRegions(rows, settings.gardens.regions);
  if (silent.length > 0)
    throw new EngineFault(`region-silent: region ${silent.join(', ')} returned no rows: nothing was written`);
  const seasons = seasonRows(rows, plantedIn(plantings));
  const paths = [...seasons.keys()].map((season) => join(into, 'data', season, 'season.csv'));
  for (const path of paths)
    if (existsSync(path) && !isOurs(path)) throw new EngineFault(`${path} is a table of your own: nothing was written`);
  for (const [season, own] of seasons) {
    const path = join(into, 'data', season, 'season.csv');
    mkdirSync(dirname(path), { recursive: true });
    writeWhole(path, csvText([HEADER, ...own]));
  }
  const read = rows.reduce((sum, row) => sum + Number(row[4]), 0);
  return `${read} rows by ${engine.name}, ${rows.length} plantings: ${paths.join(', ')}`;
}

/** `keeprow totals`: sums of very many pickings, by an engine or the own reader, as season.csv. Returns the exit code. */
export async function runTotals(choices: TotalsChoices, telling: Telling): Promise<number> {
  try {
    const done = await written(choices);
    if (!telling.quiet && !telling.json) process.stdout.write(`${done}\n`);
    return 0;
  } catch (fault) {
    if (!(fault instanceof EngineFault)) throw fault;
    say(fault.message);
    return 1;
  }
}
