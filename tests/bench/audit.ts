/**
 * The second count: npm run bench:audit [-- r|tasters|trials [number [first]]]. `r` compares every figure of 200 random trials
 * with R (Rscript on the path; survival and mvtnorm), `tasters` runs 20,000 random tables of scores, `trials` 20,000
 * trials of any tables that the contract allows. Prints counts and the largest differences.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { auditTrial } from '../audit/trials.ts';
import { differences } from '../audit/differences.ts';
import type { Difference } from '../audit/differences.ts';
import { figuresOf } from '../audit/figures.ts';
import { anyTrial } from '../laws/anyTrial.ts';
import { saidOfTrial } from '../laws/saidOfTrial.ts';
import { notFinite, randomTable } from '../laws/tasterTables.ts';

const say = (text: string): void => void process.stdout.write(`${text}\n`);

function writeTrials(folder: string, count: number, first: number): void {
  for (let number = first; number <= count; number++) {
    const { files, reading } = auditTrial(number);
    for (const [path, text] of [...Object.entries(files), ['reading.csv', reading] as const]) {
      const file = join(folder, String(number), path);
      mkdirSync(dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
  }
}

function againstR(count: number, first: number): void {
  const folder = mkdtempSync(join(tmpdir(), 'keeprow-audit-'));
  try {
    const [trials, out] = [join(folder, 'trials'), join(folder, 'out')];
    mkdirSync(out);
    writeTrials(trials, count, first);
    const script = new URL('../audit/audit.R', import.meta.url).pathname;
    const run = spawnSync('Rscript', [script, trials, out], { stdio: ['ignore', 'inherit', 'inherit'] });
    if (run.status !== 0) throw new Error('Rscript is not there, or stopped');
    compare(out, count, first);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function compare(out: string, count: number, first: number): void {
  const all: (Difference & { readonly trial: number })[] = [];
  for (let number = first; number <= count; number++) {
    const file = join(out, `${number}.json`);
    if (!existsSync(file)) {
      say(`trial ${number}: R has no figures`);
      continue;
    }
    const found = differences(figuresOf(auditTrial(number).files), JSON.parse(readFileSync(file, 'utf8')));
    all.push(...found.map((one) => ({ ...one, trial: number })));
  }
  const off = all.filter((one) => one.size > 1 && !/one side/.test(one.kind));
  say(`trials with a difference: ${[...new Set(off.map((one) => `${one.trial} ${one.kind}`))].join('; ')}`);
  for (const kind of new Set(all.map((one) => one.kind))) {
    const own = all.filter((one) => one.kind === kind);
    const off = own.filter(({ size }) => size > 1);
    const worst = own.reduce((most, one) => (one.size > most.size ? one : most), own[0]!);
    say(
      `${kind.padEnd(24)} ${String(own.length).padStart(7)} compared, ${off.length} beyond their tolerance, largest ${worst.size.toPrecision(2)} of it (trial ${worst.trial}, ${worst.path}: ${String(worst.ours)} and ${String(worst.theirs)})`,
    );
  }
  say(
    `all                      ${String(all.length).padStart(7)} compared, ${all.filter(({ size }) => size > 1).length} beyond`,
  );
}

function tasters(count: number): void {
  const odd = Array.from({ length: count }, (_, i) => notFinite(randomTable(i)).length).filter((n) => n > 0).length;
  say(`tables of scores ${count}: with a figure that is not finite ${odd}`);
}

function trials(count: number, first: number): void {
  const outcomes = { site: 0, problems: 0, fault: 0 };
  let slowest = 0;
  for (let number = first; number <= count; number++) {
    const start = performance.now();
    try {
      const { outcome, faults } = saidOfTrial(anyTrial(number));
      outcomes[faults.length > 0 ? 'fault' : outcome]++;
      if (faults.length > 0) say(`trial ${number}: ${faults[0]}`);
    } catch (fault) {
      outcomes.fault++;
      say(`trial ${number}: ${(fault as Error).message}`);
    }
    slowest = Math.max(slowest, performance.now() - start);
  }
  say(
    `trials ${first} to ${count}: a site ${outcomes.site}, problems ${outcomes.problems}, a fault ${outcomes.fault}; slowest ${(slowest / 1000).toFixed(1)} s`,
  );
}

const [what, number, first] = process.argv.slice(2);
if (what === undefined || what === 'r') againstR(Number(number ?? 200), Number(first ?? 1));
if (what === undefined || what === 'tasters') tasters(Number(number ?? 20_000));
if (what === undefined || what === 'trials') trials(Number(number ?? 20_000), Number(first ?? 1));
