/** Prints figures and ratios: npm run bench. Nothing here is asserted. */
import { spawn } from 'node:child_process';
import { cpSync, readdirSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync, createWriteStream } from 'node:fs';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { compareSeason } from '../../src/analyse/compareSeason.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import { checkTrial } from '../../src/records/trial.ts';
import { adviseNextSeason } from '../../src/decide/nextSeason.ts';
import { chartByVega } from './rowsByVega.ts';
import { compare, runOnce } from './paired.ts';
import { inOtherUnits } from '../../src/main/drawings.ts';
import { readFolder } from '../../src/main/readFolder.ts';
import type { Chart } from '../../src/present/charts/kinds.ts';
import { adviceFigures } from '../../src/present/nextSeason/figures.ts';
import { plainUnits } from '../../src/present/units.ts';
import { writingOf } from '../../src/present/numbers.ts';
import { classFigures } from '../../src/present/seasonFigures/class.ts';

const root = resolve(import.meta.dirname, '../..');
const command = join(root, 'dist/src/main/keeprow.js');
const node = process.execPath;

/** Writes every chart of the demo, wide and narrow, in both systems of units, as specification and data; returns the file. */
async function demoCharts(): Promise<string> {
  const { trial } = checkTrial(await readFolder(root));
  const here = { trial: trial!, writing: writingOf(trial!.settings) };
  const seasons = trial!.seasons.map((season) => seasonSeen(trial!, season));
  const compared = seasons.map((seen) => ({ seen, compared: compareSeason(trial!, seen) }));
  const next = adviseNextSeason(trial!, seasons);
  const charts = new Set<string>();
  for (const shown of [here, inOtherUnits(trial!)]) {
    const figures = compared.flatMap((season) =>
      [...trial!.settings.classes.keys()].flatMap((classId) => classFigures({ ...season, ...shown, classId })),
    );
    figures.push(
      ...next.classes.flatMap((outcome) => adviceFigures({ ...shown, seasons, next, winters: [] }, outcome)),
    );
    for (const { chart } of figures) charts.add(plainUnits(JSON.stringify(chart)));
  }
  const drawings = [...charts].flatMap((text) => {
    const chart = JSON.parse(text) as Chart;
    return [560, 170].map((width) => chartByVega(chart, width));
  });
  process.stdout.write(`${drawings.length} charts\n`);
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

/** Seconds from an edit to the reload that `view` sends, best of three. */
async function rebuildInView(): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-view-'));
  for (const part of ['data', 'content']) cpSync(join(root, part), join(folder, part), { recursive: true });
  const child = spawn(node, [command, 'view', folder, '--port', '0', '--quiet'], {
    env: { ...process.env, KEEPROW_CACHE: 'off' },
  });
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
    // The first word is that it works, the next that the page is new.
    for (let text = ''; !text.includes('changed');) text += new TextDecoder().decode((await changes.read()).value);
    fastest = Math.min(fastest, (performance.now() - start) / 1000);
  }
  child.kill();
  return fastest;
}

compare(
  [
    { what: 'an empty Node program', args: ['-e', '0'] },
    { what: 'keeprow --version', args: [command, '--version'] },
    { what: 'keeprow --help', args: [command, '--help'] },
  ],
  7,
);
const bare = await demoCharts();
const place = mkdtempSync(join(tmpdir(), 'keeprow-bench-'));
const trial = join(place, 'trial');
for (const part of ['data', 'content']) cpSync(join(root, part), join(trial, part), { recursive: true });
const build = [command, 'build', trial, '--out', join(place, 'site'), '--quiet'];
const cache = join(place, 'cache');
const harvests = join(trial, 'data/2026/harvests.csv');
let picked = 60;
const pick = (): void =>
  writeFileSync(harvests, `${readFileSync(harvests, 'utf8')}2026-10-20,wren-hill,1,${picked++},ripe,\n`);
runOnce({ what: '', args: build, cache });
const pages = readdirSync(join(place, 'site'), { recursive: true, encoding: 'utf8' }).filter((one) =>
  one.endsWith('.html'),
);
compare(
  [
    {
      what: 'bare Eleventy + Vega, as many pages, the same charts',
      args: [join(root, 'tests/bench/bareBuild.mjs'), bare, String(pages.length)],
    },
    { what: 'check of the demo', args: [command, 'check', trial, '--quiet'] },
    { what: 'cold build of the demo', args: build },
    { what: 'the same build, one picking added', args: build, cache, before: pick },
    { what: 'the same build, nothing changed', args: build, cache },
  ],
  7,
);
process.stdout.write(`${'rebuild in view after one picking'.padEnd(58)} ${(await rebuildInView()).toFixed(2)} s\n`);
const folder = await millionRows();
const file = join(folder, 'data/2026/harvests.csv');
process.stdout.write(`1,000,000 picking rows, ${(readFileSync(file).length / 1e6).toFixed(0)} MB\n`);
compare(
  [
    { what: 'csv-parse alone, streaming', args: [join(root, 'tests/bench/streamAlone.mjs'), file] },
    { what: 'keeprow check', args: [command, 'check', folder, '--quiet'] },
  ],
  4,
);
