import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { duckDb, findDuckDb } from '../../src/main/engines/duckdb.ts';
import { ownReader } from '../../src/main/engines/own.ts';
import { hashOf } from './hash.ts';

const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');
const temporary = (name: string): string => mkdtempSync(join(tmpdir(), `keeprow-${name}-`));

/** Pickings of many gardens: fractions of a gram, zeros, blanks, codes that look like numbers. */
function table(folder: string, region: string, from: number, to: number): string {
  const lines = ['region,garden,season,planting,date,fruits,weight_g'];
  for (let g = from; g < to; g++)
    for (let r = 0; r < 40; r++) {
      const day = `2026-08-${String(1 + ((r * 7) % 28)).padStart(2, '0')}`;
      const fruits = r % 9 === 0 ? 0 : r % 11 === 0 ? '' : 1 + ((g * r) % 9);
      const grams = r % 9 === 0 ? 0 : r % 13 === 0 ? '' : (40 + ((g * 31 + r * 17) % 400) + 0.125).toFixed(3);
      lines.push([region, String(g).padStart(3, '0'), 2026, `p${r % 4}`, day, fruits, grams].join(','));
    }
  const path = join(folder, `${region}.csv`);
  writeFileSync(path, `${lines.join('\n')}\n`);
  return path;
}

describe('totals of large tables', () => {
  it('are the same bytes by the own reader and by DuckDB, from CSV and from Parquet', async () => {
    const folder = temporary('engines');
    const files = [table(folder, 'north', 0, 60), table(folder, 'south', 60, 110)];
    const own = await ownReader(files).totals();
    expect(own).toHaveLength(110 * 4);
    expect(own[0]!.slice(0, 5)).toEqual(['north', '000', '2026', 'p0', '10']);
    const module = (await findDuckDb())!;
    const byEngine = await duckDb(module, files).totals();
    expect(hashOf(byEngine)).toBe(hashOf(own));
    const parquet = join(folder, 'all.parquet');
    const instance = await module.DuckDBInstance.create();
    const connection = await instance.connect();
    await connection.run(
      `COPY (SELECT * FROM read_csv(['${files.join("','")}'], header = true, types = {'garden': 'VARCHAR'})) TO '${parquet}'`,
    );
    connection.closeSync();
    expect(hashOf(await duckDb(module, [parquet]).totals())).toBe(hashOf(own));
  });
  it.each([
    [
      'a weight that cannot be added up exactly',
      'g1,2026,p1,2026-08-01,1,40.12345',
      'no number that can be added up exactly',
    ],
    ['a negative one', 'g1,2026,p1,2026-08-01,1,-4', 'no number that can be added up exactly'],
    ['a day that is none', 'g1,2026,p1,03/08/2026,1,40', 'is no day such as'],
  ])('%s is refused with its row', async (_, row, message) => {
    const path = join(temporary('engines'), 'a.csv');
    writeFileSync(path, `garden,season,planting,date,fruits,weight_g\n${row}\n`);
    await expect(ownReader([path]).totals()).rejects.toThrow(message);
    await expect(ownReader([path]).totals()).rejects.toThrow('row 2');
    await expect(duckDb((await findDuckDb())!, [path]).totals()).rejects.toThrow('DuckDB');
  });
});

describe('whole numbers in Parquet', () => {
  it.each([
    ['are added up as they are', '(1, 40000), (2, 50000), (NULL, NULL)', ['3', '3', '90000']],
    ['are refused where one is negative', '(1, -40000)', null],
  ])('%s', async (_, values, sums) => {
    const module = (await findDuckDb())!;
    const parquet = join(temporary('engines'), 'whole.parquet');
    const connection = await (await module.DuckDBInstance.create()).connect();
    await connection.run(
      `COPY (SELECT 'g1' AS garden, 2026 AS season, 'p1' AS planting, DATE '2026-08-01' AS date, CAST(f AS INTEGER) AS fruits, CAST(w AS BIGINT) AS weight_mg FROM (VALUES ${values}) AS t(f, w)) TO '${parquet}'`,
    );
    connection.closeSync();
    const totals = duckDb(module, [parquet]).totals();
    if (sums) expect((await totals)[0]!.slice(4, 7)).toEqual(sums);
    else await expect(totals).rejects.toThrow('no number that can be added up exactly');
  });
});

describe('keeprow totals', () => {
  const trial = (regions: string): string => {
    const folder = temporary('network');
    mkdirSync(join(folder, 'data'));
    writeFileSync(join(folder, 'data/trial.yaml'), `title: Network\n${regions}seasons: {2026: {finished: yes}}\n`);
    writeFileSync(join(folder, 'data/varieties.csv'), 'variety\na\nb\nc\nd\n');
    const gardens = Array.from({ length: 110 }, (_, g) => String(g).padStart(3, '0'));
    const plantings = gardens.flatMap((g) => [0, 1, 2, 3].map((p) => `${g},p${p},${'abcd'[p]},2`));
    writeFileSync(join(folder, 'plantings.csv'), `garden,planting,variety,plants\n${plantings.join('\n')}\n`);
    return folder;
  };
  const run = (folder: string, ...args: readonly string[]) =>
    spawnSync(
      process.execPath,
      [command, 'totals', ...args, '--plantings', join(folder, 'plantings.csv'), '--into', folder],
      { encoding: 'utf8' },
    );
  it('writes a season that check takes, may write it again, and leaves a table of the grower’s own', () => {
    const folder = trial('regions: [north, south]\n');
    const files = [table(folder, 'north', 0, 60), table(folder, 'south', 60, 110)];
    const first = run(folder, '--from', ...files);
    expect(first.stderr).toBe('');
    expect(first.stdout).toContain('4400 rows by own reader, 440 plantings');
    const path = join(folder, 'data/2026/season.csv');
    const [header, row] = readFileSync(path, 'utf8').split('\n');
    expect(header).toBe('garden,planting,variety,plants,weight_g,fruits,first_ripe');
    expect(row).toMatch(/^000,p0,a,2,\d+(?:\.\d+)?,\d+,2026-08-\d\d$/);
    expect(spawnSync(process.execPath, [command, 'check', folder, '--json'], { encoding: 'utf8' }).status).toBe(0);
    expect(run(folder, '--from', ...files).status).toBe(0);
    writeFileSync(path, 'garden,variety,plants,weight_g\n000,a,1,5\n');
    const refused = run(folder, '--from', ...files);
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain('a table of your own: nothing was written');
    expect(readFileSync(path, 'utf8')).toContain('000,a,1,5');
  });
  it('writes nothing where a region is silent', () => {
    const folder = trial('regions: [north, south, west]\n');
    const { status, stderr } = run(folder, '--from', table(folder, 'north', 0, 60), table(folder, 'south', 60, 110));
    expect(status).toBe(1);
    expect(stderr).toContain('region-silent: region west returned no rows: nothing was written');
    expect(() => readFileSync(join(folder, 'data/2026/season.csv'))).toThrow('ENOENT');
  });
  it('writes nothing where two regions have a planting of one garden', () => {
    const folder = trial('regions: [north, south]\n');
    const { status, stderr } = run(folder, '--from', table(folder, 'north', 0, 60), table(folder, 'south', 59, 110));
    expect(status).toBe(1);
    expect(stderr).toContain('garden 059, planting p0 stands in two regions');
    expect(() => readFileSync(join(folder, 'data/2026/season.csv'))).toThrow('ENOENT');
  });
  it('asks for what it cannot know', () => {
    const folder = trial('');
    writeFileSync(join(folder, 'plantings.csv'), 'garden,planting,variety,plants\n');
    const { status, stderr } = run(folder, '--from', table(folder, 'north', 0, 2));
    expect(status).toBe(1);
    expect(stderr).toContain('nothing says what planting p0 is');
  });
});
