import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

interface Run {
  /** Wall and processor time, s. */
  readonly seconds: number;
  readonly busy: number;
  readonly megabytes: number;
}

export interface Program {
  readonly what: string;
  readonly args: readonly string[];
  /** Done before each run; not timed. */
  readonly before?: () => void;
  /** KEEPROW_CACHE of the run. */
  readonly cache?: string;
  readonly fitCodes?: readonly number[];
}

/** One run of a program in a Node of its own; a thread of it that ends before tells its figures too. */
export function runOnce({ args, before, cache = 'off', fitCodes = [0] }: Program): Run {
  before?.();
  const start = performance.now();
  const run = spawnSync(process.execPath, ['--import', join(import.meta.dirname, 'peak.mjs'), ...args], {
    encoding: 'utf8',
    env: { ...process.env, KEEPROW_CACHE: cache },
  });
  const seconds = (performance.now() - start) / 1000;
  if (!fitCodes.includes(run.status ?? -1)) throw new Error(`${args.join(' ')}: ${run.stderr}`);
  const [, peak, busy] = [...run.stderr.matchAll(/PEAK (\d+) BUSY (\d+)/g)].at(-1) ?? [];
  return { seconds, busy: Number(busy) / 1e6, megabytes: Number(peak) / 1024 };
}

/** Runs programs by turns, so that what else the machine does meets all alike; prints medians and ratios to the first. */
export function compare(programs: readonly Program[], times: number): void {
  const runs = programs.map((): Run[] => []);
  for (let i = 0; i < times; i++) programs.forEach((program, k) => runs[k]!.push(runOnce(program)));
  const median = (own: readonly Run[], of: keyof Run): number =>
    own.map((run) => run[of]).toSorted((a, b) => a - b)[Math.floor(own.length / 2)]!;
  programs.forEach(({ what }, k) => {
    const own = runs[k]!;
    const ratio = own.map((run, i) => ({ ...run, busy: run.busy / runs[0]![i]!.busy }));
    const figures = [
      `${median(own, 'seconds').toFixed(2)} s`,
      `CPU ${median(own, 'busy').toFixed(2)} s`,
      `${median(own, 'megabytes').toFixed(0)} MB`,
      k === 0 ? '' : `CPU ${median(ratio, 'busy').toFixed(2)} x`,
    ];
    process.stdout.write(`${what.padEnd(58)} ${figures.join('  ')}\n`);
  });
}
