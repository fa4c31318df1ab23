/** Prints figures and ratios: npm run bench. Nothing here is asserted. */
import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  createReadStream,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  writeFileSync,
  createWriteStream,
} from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parse } from 'csv-parse';
import { compareSeason } from '../../src/analyse/compareSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { dotsByVega } from './dotsByVega.ts';
import { readFolder } from '../../src/main/readFolder.ts';
import type { Chart } from '../../src/present/charts/kinds.ts';
import { adviceFigures } from '../../src/present/nextSeason/figures.ts';
import { plainUnits } from '../../src/present/units.ts';
import { specification } from '../../src/present/charts/specification.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { classFigures } from '../../src/present/seasonFigures/class.ts';

const root = resolve(import.meta.dirname, '../..');
const command = join(root, 'dist/src/main/keeprow.js');
const node = process.execPath;

interface Run {
  readonly seconds: number;
  readonly megabytes: number;
}

/** Best of some runs of a command, with its peak memory. */
function best(args: readonly string[], times: number, fitCodes: readonly number[] = [0]): Run {
  const runs = Array.from({ length: times }, () => {
    const start = performance.now();
    const run = spawnSync(
      '/usr/bin/env',
      [
        'bash',
        '-c',
        'TIMEFORMAT=; "$@"; code=$?; exit $code',
        '-',
        node,
        '--import',
        join(root, 'tests/bench/peak.mjs'),
        ...args,
      ],
      { encoding: 'utf8' },
    );
    if (!fitCodes.includes(run.status ?? -1)) throw new Error(`${args.join(' ')}: ${run.stderr}`);
    const peak = /PEAK (\d+)/.exec(run.stderr);
    return { seconds: (performance.now() - start) / 1000, megabytes: peak ? Number(peak[1]) / 1024 : 0 };
  });
  return runs.reduce((a, b) => (b.seconds < a.seconds ? b : a));
}

function line(what: string, run: Run, against?: Run): void {
  const ratio = against ? `  ${(run.seconds / against.seconds).toFixed(2)} x` : '';
  process.stdout.write(`${what.padEnd(58)} ${run.seconds.toFixed(2)} s  ${run.megabytes.toFixed(0)} MB${ratio}\n`);
}

/** Writes the demo's charts, both renditions, as specification and data; returns the file. */
async function demoCharts(): Promise<string> {
  const { trial } = checkTrial(await readFolder(root));
  const writing = writingOf(trial!.settings);
  const seasons = trial!.seasons.map((season) => seasonSeen(trial!, season));
  const seasonCharts = seasons.flatMap((seen) => {
    const compared = compareSeason(trial!, seen);
    return [...trial!.settings.classes.keys()].flatMap((classId) =>
      classFigures({ seen, compared, trial: trial!, classId, writing }),
    );
  });
  const next = adviseNextSeason(trial!, seasons);
  const source = { trial: trial!, seasons, next, winters: [], writing };
  const figures = [...seasonCharts, ...next.classes.flatMap((outcome) => adviceFigures(source, outcome))];
  const drawings = figures.flatMap(({ chart }) =>
    [560, 170].map((width) => {
      const plain = JSON.parse(plainUnits(JSON.stringify(chart))) as Chart;
      return plain.kind === 'dots' ? dotsByVega(plain, width) : specification(plain, width);
    }),
  );
  const file = join(mkdtempSync(join(tmpdir(), 'keeprow-charts-')), 'charts.json');
  writeFileSync(file, JSON.stringify(drawings));
  return file;
}

async function millionRows(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-million-'));
  mkdirSync(join(folder, 'data/2026'), { recursive: true });
  writeFileSync(
    join(folder, 'data/trial.yaml'),
    'title: Region\nseasons: {2026: {sown: 2026-03-01, transplanted: 2026-05-20}}\n',
  );
  const plantings = 6000;
  const name = (i: number): string => `v${i % 500}`;
  writeFileSync(
    join(folder, 'data/varieties.csv'),
    `variety\n${Array.from({ length: 500 }, (_, i) => name(i)).join('\n')}\n`,
  );
  writeFileSync(
    join(folder, 'data/2026/plantings.csv'),
    `planting,variety\n${Array.from({ length: plantings }, (_, i) => `p${i},${name(i)}`).join('\n')}\n`,
  );
  const out = createWriteStream(join(folder, 'data/2026/harvests.csv'));
  out.write('date,planting,fruits,weight_g,stage,notes\n');
  for (let i = 0; i < 1_000_000; i++) {
    const day = new Date(Date.UTC(2026, 6, 1 + (Math.floor(i / plantings) % 110))).toISOString().slice(0, 10);
    const row = `${day},p${i % plantings},${1 + (i % 7)},${100 + (i % 613) + Math.floor(i / 660000)},ripe,\n`;
    if (!out.write(row)) await once(out, 'drain');
  }
  out.end();
  await once(out, 'finish');
  return folder;
}

async function streamAlone(file: string): Promise<void> {
  const parser = createReadStream(file).pipe(parse());
  let rows = 0;
  for await (const row of parser) rows += (row as string[]).length > 0 ? 1 : 0;
  if (rows !== 1_000_001) throw new Error(`${rows} rows`);
}

/** Seconds from an edit to the reload that `view` sends, best of three. */
async function rebuildInView(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-view-'));
  for (const part of ['data', 'content']) cpSync(join(root, part), join(folder, part), { recursive: true });
  const child = spawn(node, [command, 'view', folder, '--port', '0', '--quiet']);
  const address = await new Promise<string>((found) => {
    child.stdout.on('data', (text: Buffer) => {
      const url = /http:\/\/localhost:\d+/.exec(text.toString());
      if (url) found(url[0].replace('localhost', '127.0.0.1'));
    });
  });
  const changes = (await fetch(`${address}/__keeprow/changes`)).body!.getReader();
  await changes.read();
  let fastest = Infinity;
  const file = join(folder, 'data/2026/harvests.csv');
  for (let i = 0; i < 3; i++) {
    const start = performance.now();
    writeFileSync(file, `${readFileSync(file, 'utf8')}2026-10-2${i},wren-hill,1,6${i},ripe,\n`);
    await changes.read();
    fastest = Math.min(fastest, (performance.now() - start) / 1000);
  }
  child.kill();
  return fastest;
}

if (process.argv[2] === 'stream') await streamAlone(process.argv[3]!);
else {
  const empty = best(['-e', '0'], 7);
  line('an empty Node program', empty);
  line('keeprow --version', best([command, '--version'], 7), empty);
  line('keeprow --help', best([command, '--help'], 7), empty);
  line('check of the demo', best([command, 'check', root, '--quiet'], 5));
  const bare = best(['--import', 'tsx', join(root, 'tests/bench/bareBuild.ts'), await demoCharts()], 5);
  line('bare Eleventy + Vega, as many pages, the same charts', bare);
  const out = join(mkdtempSync(join(tmpdir(), 'keeprow-bench-')), 'site');
  line('cold build of the demo', best([command, 'build', root, '--out', out, '--quiet'], 5), bare);
  line('rebuild in view after one edit', { seconds: await rebuildInView(), megabytes: 0 });
  const folder = await millionRows();
  const file = join(folder, 'data/2026/harvests.csv');
  process.stdout.write(`1,000,000 picking rows, ${(readFileSync(file).length / 1e6).toFixed(0)} MB\n`);
  const stream = best(['--import', 'tsx', join(root, 'tests/bench/bench.ts'), 'stream', file], 4);
  line('csv-parse alone, streaming', stream);
  line('keeprow check', best([command, 'check', folder, '--quiet'], 4), stream);
}
