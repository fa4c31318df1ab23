/** Tables written and read back, corrupted trials, killed builds, hostile names, files without measure: npm run bench:faults. */
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createWriteStream, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import * as fc from 'fast-check';
import { randomStream } from '../../src/numerics/random.ts';
import { corruption, judge } from '../laws/corruptions.ts';
import { filledRows, readBack, written, writtenTables } from '../laws/tables.ts';
import { command, copyOfDemo } from '../sites/demoFolder.ts';
import { hostileTrial, SMALL, writeTrial } from '../sites/hostile.ts';

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const share = Number(process.env['SHARE'] ?? 1);
const times = (full: number): number => Math.max(1, Math.round(full * share));

function tables(): void {
  const count = times(100_000);
  let different = 0;
  for (const table of fc.sample(writtenTables, { numRuns: count, seed: 1 }))
    if (JSON.stringify(readBack(written(table))) !== JSON.stringify(filledRows(table.rows))) different++;
  say(`random tables written and read back            ${count}, different: ${different}`);
}

function corruptions(): void {
  const count = times(100_000);
  const counts = new Map<string, number>();
  for (let i = 0; i < count; i++) {
    const verdict = judge(corruption(i));
    const kind = 'how' in verdict ? `${verdict.kind}: ${verdict.how}` : verdict.kind;
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  say(`random corruptions of a trial                  ${count}`);
  for (const [kind, n] of [...counts].toSorted((a, b) => b[1] - a[1])) say(`  ${String(n).padStart(6)}  ${kind}`);
}

/** One number for everything in a site. */
function fingerprint(site: string): string {
  const hash = createHash('sha256');
  for (const path of readdirSync(site, { recursive: true, encoding: 'utf8' }).toSorted()) {
    hash.update(path);
    try {
      hash.update(readFileSync(join(site, path)));
    } catch {
      // a folder
    }
  }
  return hash.digest('hex');
}

async function kills(): Promise<void> {
  const folder = copyOfDemo();
  const site = join(folder, '_site');
  const settings = join(folder, 'data/trial.yaml');
  const build = (): void => {
    const built = spawnSync(process.execPath, [command, 'build', folder, '--quiet'], { encoding: 'utf8' });
    if (built.status !== 0) throw new Error(built.stderr);
  };
  const text = readFileSync(settings, 'utf8');
  const versions = [text, text.replace(/^title: .*/m, 'title: The other version')];
  const known = versions.map((version) => {
    writeFileSync(settings, version);
    build();
    return fingerprint(site);
  });
  const start = performance.now();
  build();
  const whole = performance.now() - start;
  const { uniform } = randomStream('kills');
  const count = times(100);
  const found = { old: 0, new: 0, putBack: 0, missing: 0, mixed: 0 };
  let standing = 1;
  for (let i = 0; i < count; i++) {
    const next = 1 - standing;
    writeFileSync(settings, versions[next]!);
    const child = spawn(process.execPath, [command, 'build', folder, '--quiet'], { stdio: 'ignore' });
    await new Promise((later) => setTimeout(later, uniform() * 1.15 * whole));
    child.kill('SIGKILL');
    await new Promise((ended) =>
      child.exitCode === null && child.signalCode === null ? child.once('close', ended) : ended(null),
    );
    // A start that stops at an error still puts back what a kill between two steps put aside.
    if (!existsSync(site)) {
      found.putBack++;
      writeFileSync(settings, `${versions[next]!}\nunknown: 1\n`);
      spawnSync(process.execPath, [command, 'build', folder, '--quiet']);
    }
    if (!existsSync(site)) {
      found.missing++;
      build();
      standing = next;
      continue;
    }
    const now = fingerprint(site);
    if (now === known[next]) {
      found.new++;
      standing = next;
    } else if (now === known[standing]) found.old++;
    else found.mixed++;
  }
  say(
    `builds killed at a random moment               ${count}: the old site ${found.old}, the new ${found.new}, none ${found.missing}, a mix ${found.mixed} (put back at the next start ${found.putBack})`,
  );
}

/** Two trials built at once into one folder, under two names and under one. */
async function pairs(): Promise<void> {
  const count = times(20);
  let whole = 0;
  for (let i = 0; i < count; i++) {
    const above = mkdtempSync(join(tmpdir(), 'keeprow-pairs-'));
    const sites = i % 2 === 0 ? ['site-a', 'site-b'] : ['site', 'site'];
    await Promise.all(
      sites.map((name, k) => {
        writeTrial(join(above, `trial-${k}`), SMALL);
        const args = [command, 'build', join(above, `trial-${k}`), '--out', join(above, name), '--quiet'];
        return new Promise((ended) => spawn(process.execPath, args, { stdio: 'ignore' }).once('close', ended));
      }),
    );
    for (const name of sites) {
      const marker = JSON.parse(readFileSync(join(above, name, '.keeprow-site.json'), 'utf8')) as { files: string[] };
      if (marker.files.every((path) => existsSync(join(above, name, path)))) whole++;
    }
    rmSync(above, { recursive: true });
  }
  say(`pairs of builds at once                        ${count}: whole sites ${whole} of ${2 * count}`);
}

function hostile(): void {
  const rounds = times(10);
  let [strays, traces] = [0, 0];
  const codes = new Map<number | null, number>();
  for (let seed = 0; seed < 2 * rounds; seed++) {
    const trial = hostileTrial(50, seed, seed % 2 === 1);
    const built = spawnSync(process.execPath, [command, 'build', trial.folder, '--quiet'], { encoding: 'utf8' });
    strays += trial.strays().length;
    traces += / {4}at /.test(built.stderr) ? 1 : 0;
    codes.set(built.status, (codes.get(built.status) ?? 0) + 1);
  }
  const ends = [...codes].map(([code, n]) => `${n} ended with ${code}`).join(', ');
  say(
    `hostile names                                  ${100 * rounds}, written outside the site: ${strays}, traces: ${traces} (${ends})`,
  );
}

async function withoutMeasure(): Promise<void> {
  const large = async (path: string, start: string, piece: string, pieces: number, end: string): Promise<string> => {
    const folder = mkdtempSync(join(tmpdir(), 'keeprow-large-'));
    writeTrial(folder, { ...SMALL, [path]: '' });
    const stream = createWriteStream(join(folder, 'data', path));
    stream.write(start);
    for (let i = 0; i < pieces; i++)
      if (!stream.write(piece)) await new Promise((ready) => stream.once('drain', () => ready(null)));
    await new Promise<void>((done) => stream.end(end, () => done()));
    return folder;
  };
  const cases = [
    [
      'a cell of 100 MB',
      await large(
        '2026/harvests.csv',
        'date,planting,notes,weight_g\n2026-08-01,p1,"',
        'x'.repeat(2 ** 20),
        100,
        '",5\n',
      ),
    ],
    [
      'a line of 100 MB without quotes',
      await large(
        '2026/harvests.csv',
        'date,planting,notes,weight_g\n2026-08-01,p1,',
        'x'.repeat(2 ** 20),
        100,
        ',5\n',
      ),
    ],
    ['100,000 columns', await large('2026/harvests.csv', 'date,planting', ',column'.repeat(1000), 100, '\n')],
    ['settings 100,000 levels deep', await large('trial.yaml', 'title: ', '['.repeat(1000), 100, '\n')],
    [
      'settings whose aliases explode',
      await large(
        'trial.yaml',
        `a: &a [x, x]\n${[...'bcdefghijk'].map((name, i) => `${name}: &${name} [${Array.from({ length: 9 }, () => `*${'abcdefghij'[i]}`).join(', ')}]`).join('\n')}\n`,
        '',
        0,
        'title: *k\n',
      ),
    ],
  ] as const;
  const peak = resolve(import.meta.dirname, 'peak.mjs');
  for (const [what, folder] of cases) {
    const start = performance.now();
    const run = spawnSync(process.execPath, ['--import', peak, command, 'check', folder], { encoding: 'utf8' });
    const seconds = (performance.now() - start) / 1000;
    const megabytes = Number(/PEAK (\d+)/.exec(run.stderr)?.[1] ?? 0) / 1024;
    const told = /error (\S+)/.exec(run.stdout)?.[1] ?? run.stderr.slice(0, 80);
    say(`${what.padEnd(46)} ${seconds.toFixed(2)} s  ${megabytes.toFixed(0)} MB  ${told}`);
    rmSync(folder, { recursive: true });
  }
}

await withoutMeasure();
hostile();
await kills();
await pairs();
corruptions();
tables();
