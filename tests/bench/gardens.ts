/**
 * Many gardens, from sheets and pickings to the site: npm run bench:gardens [most rows, 50e6]. Prints time, processor
 * time and peak memory of paired runs; nothing is asserted. Invented clubs.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { randomStream } from '../../src/numerics/random.ts';
import { compare } from './paired.ts';

const MOST = Number(process.argv[2] ?? 50e6);
const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');
const folder = mkdtempSync(join(tmpdir(), 'keeprow-gardens-'));
const [GARDENS, EACH, VARIETIES] = [1000, 20, 60];

const code = (g: number): string => `k${String(g).padStart(6, '0')}`;
const variety = (i: number): string => `v${String(i).padStart(2, '0')}`;

/** A trial folder with its sheets. */
function club(): string {
  const { normal, uniform } = randomStream('bench');
  const data = join(folder, 'club/data');
  mkdirSync(join(data, '2026/gardens'), { recursive: true });
  const settings =
    'title: Network\nclasses: {all: {name: All, spots: 10}}\ngoals: {all: {yield: 3, taste: 2, first_ripe: 1}}\n';
  const traits = 'traits: {taste: {kind: rating, from: 1, to: 9, better: higher}}\n';
  writeFileSync(
    join(data, 'trial.yaml'),
    `${settings}${traits}seasons: {2026: {transplanted: 2026-05-20, finished: yes}}\n`,
  );
  const ids = Array.from({ length: VARIETIES }, (_, i) => variety(i));
  writeFileSync(join(data, 'varieties.csv'), `variety\n${ids.join('\n')}\n`);
  const own = ids.map(() => 0.3 * normal());
  for (let g = 0; g < GARDENS; g++) {
    const level = 7 + 0.4 * normal();
    const start = Math.floor(VARIETIES * uniform());
    const rows = Array.from({ length: EACH }, (_, k) => {
      const i = (start + k * 7) % VARIETIES;
      const grams = Math.round(2 * Math.exp(level + own[i]! + 0.3 * normal() + 0.25 * normal()));
      const ripe = new Date(Date.UTC(2026, 4, 20 + Math.round(70 * Math.exp(0.08 * normal()))))
        .toISOString()
        .slice(0, 10);
      const taste = Math.min(9, Math.max(1, Math.round(6 + 3 * own[i]! + normal())));
      return `${variety(i)},2,${grams},${ripe},${taste},${uniform() < 0.6 ? 'yes' : 'no'}`;
    });
    writeFileSync(
      join(data, '2026/gardens', `${code(g)}.csv`),
      `variety,plants,weight_g,first_ripe,taste,again\n${rows.join('\n')}\n`,
    );
  }
  return join(folder, 'club');
}

/** Tables of pickings, as CSV and as Parquet: gardens with twenty plantings of fifty pickings each. */
async function pickings(rows: number): Promise<{ readonly csv: string; readonly parquet: string }> {
  const [csv, parquet] = ['csv', 'parquet'].map((kind) => join(folder, `${rows}.${kind}`)) as [string, string];
  const connection = await (await DuckDBInstance.create()).connect();
  const source = `SELECT 'r' || (i // 500000 % 2) AS region, 'k' || lpad(CAST(i // 1000 AS VARCHAR), 6, '0') AS garden, 2026 AS season, 'p' || (i // 50 % 20) AS planting, DATE '2026-07-01' + CAST(i % 50 AS INTEGER) AS date, 1 + i * 7 % 9 AS fruits, 1000 * (40 + i * 31 % 400) AS weight_mg FROM range(0, ${rows}) t(i)`;
  await connection.run(`COPY (${source}) TO '${parquet}'`);
  if (rows <= 10e6) await connection.run(`COPY (${source}) TO '${csv}' (HEADER)`);
  connection.closeSync();
  return { csv, parquet };
}

/** What the plantings are, for so many rows of pickings. */
function plantingsOf(rows: number): string {
  const path = join(folder, 'plantings.csv');
  const lines = ['garden,planting,variety,plants'];
  for (let g = 0; g < rows / 1000; g++)
    for (let p = 0; p < 20; p++) lines.push(`${code(g)},p${p},${variety((g + p * 3) % VARIETIES)},2`);
  writeFileSync(path, `${lines.join('\n')}\n`);
  return path;
}

const alone = (kind: string, file: string): readonly string[] => [
  join(import.meta.dirname, 'duckAlone.mjs'),
  kind,
  file,
];

for (const rows of [1e6, 10e6, 50e6].filter((own) => own <= MOST)) {
  const { csv, parquet } = await pickings(rows);
  const plantings = plantingsOf(rows);
  const totals = (file: string): readonly string[] => {
    const into = join(folder, `into-${rows}`);
    mkdirSync(join(into, 'data'), { recursive: true });
    writeFileSync(join(into, 'data/trial.yaml'), 'title: Totals\n');
    return [command, 'totals', '--from', file, '--plantings', plantings, '--into', into, '--quiet'];
  };
  process.stdout.write(`\n${rows.toLocaleString('en')} pickings\n`);
  compare(
    [
      { what: 'DuckDB alone, Parquet', args: alone('read_parquet', parquet) },
      { what: 'keeprow totals, Parquet', args: totals(parquet) },
    ],
    rows > 1e6 ? 3 : 5,
  );
  if (rows === 1e6)
    compare(
      [
        { what: 'csv-parse alone, CSV', args: [join(import.meta.dirname, 'streamAlone.mjs'), csv] },
        { what: 'keeprow totals, CSV, own reader', args: totals(csv) },
        { what: 'DuckDB alone, CSV', args: alone('read_csv', csv) },
      ],
      3,
    );
  if (rows === 10e6)
    compare(
      [
        { what: 'DuckDB alone, CSV', args: alone('read_csv', csv) },
        { what: 'keeprow totals, CSV, DuckDB', args: totals(csv) },
      ],
      3,
    );
  rmSync(csv, { force: true });
  rmSync(parquet);
}

const trial = club();
const sheet = join(trial, 'data/2026/gardens', `${code(0)}.csv`);
const build = [command, 'build', trial, '--quiet'];
process.stdout.write(`\n${GARDENS} sheets of ${EACH} varieties\n`);
compare(
  [
    { what: 'check', args: [command, 'check', trial, '--quiet'] },
    { what: 'build, cold', args: build },
    { what: 'build again', args: build, cache: join(folder, 'cache') },
    { what: 'build again', args: build, cache: join(folder, 'cache') },
    {
      what: 'build, one sheet changed',
      args: build,
      cache: join(folder, 'cache'),
      before: () => writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(/,2,\d/, ',2,7')),
    },
  ],
  1,
);
