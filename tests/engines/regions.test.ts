import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { duckDb, findDuckDb } from '../../src/main/engines/duckdb.ts';
import { findPostgres, postgres } from '../../src/main/engines/postgres.ts';
import { TOTALS } from '../../src/main/engines/statement.ts';
import { hashOf } from './hash.ts';

// A coordinator and two regions, each a PostgreSQL of its own, from the machine's packages; left out where it has none.

const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');
const home = '/usr/lib/postgresql';
const version = existsSync(home) ? readdirSync(home).toSorted().at(-1) : undefined;
const bin = version === undefined ? null : join(home, version, 'bin');
const isRoot = process.getuid?.() === 0;
const hasRegions = bin !== null && existsSync(join(bin, 'initdb'));

/** PostgreSQL runs as no superuser. */
function as(program: string, args: readonly string[]): string {
  const own = [join(bin ?? '', program), ...args];
  const [first = '', ...rest] = isRoot ? ['runuser', '-u', 'postgres', '--', ...own] : own;
  const { status, stdout, stderr } = spawnSync(first, rest, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program}: ${stderr}${stdout}`);
  return stdout;
}

const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => done(port));
    });
  });

describe.skipIf(!hasRegions)('regions that keep their rows', () => {
  const folder = hasRegions ? mkdtempSync(join(tmpdir(), 'keeprow-regions-')) : '';
  const started: string[] = [];
  afterAll(() => {
    for (const data of started) {
      try {
        as('pg_ctl', ['-D', data, 'stop', '-m', 'immediate']);
      } catch {
        // It was stopped by the test.
      }
    }
  });
  const rows = (k: number): readonly string[] =>
    Array.from({ length: 150 }, (_, i) => {
      const [g, r] = [2 * (i % 15) + k, Math.floor(i / 15)];
      return `r${k},g${String(g).padStart(3, '0')},2026,p${r % 2},2026-08-${String(1 + (r % 28)).padStart(2, '0')},${1 + ((g * r) % 9)},${1000 * (40 + ((g * 31 + r * 17) % 400)) + r}`;
    });
  const HEADER = 'region,garden,season,planting,date,fruits,weight_mg';

  it('give the totals of one engine, and a region that is stopped is told', async () => {
    if (isRoot) chmodSync(folder, 0o777);
    for (let up = folder; up !== tmpdir(); up = join(up, '..')) chmodSync(up, 0o777);
    const ports: number[] = [];
    for (const name of ['all', 'r0', 'r1']) {
      const data = join(folder, name);
      as('initdb', ['-D', data, '-A', 'trust', '--locale=C', '-E', 'UTF8', '-U', 'keeper']);
      const port = await freePort();
      const options = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1 -c fsync=off`;
      as('pg_ctl', ['-D', data, '-o', options, '-l', join(folder, `${name}.log`), '-w', 'start']);
      started.push(data);
      ports.push(port);
    }
    const pg = (await findPostgres())!;
    const url = (k: number): string => `postgres://keeper@127.0.0.1:${ports[k]}/postgres`;
    const ask = async (k: number, ...statements: readonly string[]): Promise<void> => {
      const client = new pg.Client({ connectionString: url(k) });
      await client.connect();
      for (const statement of statements) await client.query(statement);
      await client.end();
    };
    const columns = '(region text, garden text, season int, planting text, date date, fruits int, weight_mg bigint)';
    for (const k of [0, 1]) {
      const values = rows(k).map((row) => `('${row.split(',').join("','")}')`);
      await ask(k + 1, `CREATE TABLE harvests ${columns}`, `INSERT INTO harvests VALUES ${values.join(',')}`);
      writeFileSync(join(folder, `r${k}.csv`), `${HEADER}\n${rows(k).join('\n')}\n`);
    }
    await ask(0, 'CREATE EXTENSION postgres_fdw', `CREATE TABLE harvests ${columns} PARTITION BY LIST (region)`);
    for (const k of [0, 1])
      await ask(
        0,
        `CREATE SERVER s${k} FOREIGN DATA WRAPPER postgres_fdw OPTIONS (host '127.0.0.1', port '${ports[k + 1]}', dbname 'postgres', async_capable 'true', fetch_size '50000')`,
        `CREATE USER MAPPING FOR keeper SERVER s${k} OPTIONS (user 'keeper')`,
        `CREATE FOREIGN TABLE harvests_${k} PARTITION OF harvests FOR VALUES IN ('r${k}') SERVER s${k} OPTIONS (table_name 'harvests')`,
      );
    // Each region sums its own rows: no picking crosses a border.
    const client = new pg.Client({ connectionString: url(0) });
    await client.connect();
    await client.query('SET enable_partitionwise_aggregate = on');
    const explained = (await client.query(`EXPLAIN (VERBOSE, COSTS OFF) ${TOTALS}`)).rows as { 'QUERY PLAN': string }[];
    await client.end();
    expect(explained.filter((line) => /Remote SQL.*GROUP BY/.test(line['QUERY PLAN']))).toHaveLength(2);
    const byRegions = await postgres(pg, url(0)).totals();
    const byDuckDb = await duckDb(
      (await findDuckDb())!,
      ['r0', 'r1'].map((name) => join(folder, `${name}.csv`)),
    ).totals();
    expect(byRegions).toHaveLength(60);
    expect(hashOf(byRegions)).toBe(hashOf(byDuckDb));

    const trial = join(folder, 'trial');
    mkdirSync(join(trial, 'data'), { recursive: true });
    writeFileSync(join(trial, 'data/trial.yaml'), 'title: Network\nregions: [r0, r1]\n');
    const list = byRegions.map(([, garden, , planting]) => `${garden},${planting},a,2`);
    writeFileSync(join(trial, 'plantings.csv'), `garden,planting,variety,plants\n${list.join('\n')}\n`);
    const args = ['totals', '--from', url(0), '--plantings', join(trial, 'plantings.csv'), '--into', trial];
    const run = () => spawnSync(process.execPath, [command, ...args], { encoding: 'utf8' });
    expect(run().stdout).toContain('300 rows by PostgreSQL, 60 plantings');
    as('pg_ctl', ['-D', join(folder, 'r1'), 'stop', '-m', 'fast']);
    const stopped = run();
    expect(stopped.status).toBe(1);
    expect(stopped.stderr).toContain('region-silent');
    expect(stopped.stderr).toContain('nothing was written');
  });
});
