import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { reference } from '../reference/read.ts';

const command = resolve(import.meta.dirname, '../../dist/src/main/keeprow.js');

interface Figure {
  readonly n: number;
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
}

/** Builds a folder of this place elsewhere and gives the last season of its results.json. */
function built(folder: string) {
  const copy = mkdtempSync(join(tmpdir(), 'keeprow-published-'));
  cpSync(join(import.meta.dirname, folder), copy, { recursive: true });
  const run = spawnSync(process.execPath, [command, 'build', copy, '--quiet'], { encoding: 'utf8' });
  expect(run.stdout + run.stderr).toBe('');
  expect(existsSync(join(copy, '_site/index.html'))).toBe(true);
  return JSON.parse(readFileSync(join(copy, '_site/results.json'), 'utf8')).seasons.at(-1);
}

const near = (value: number, expected: number, relative = 1e-9): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};
const letter = (name: string): string => name[0]!.toUpperCase();

describe('whole trials from published data', () => {
  // o05, o06: Immer et al. (1934); R 4.2.2 lm, emmeans, mvtnorm, multcompView.
  it.each([
    ['barley-complete', 'o05_immer_rcbd'],
    ['barley-missing-plots', 'o06_immer_rcbd_missing'],
  ])('%s has R’s means, intervals, mean square, letters and comparisons', (folder, name) => {
    const season = built(folder);
    const published = reference(name);
    const own = season.comparisons.yield;
    expect(own.residual_df).toBe(published.error_df);
    near(own.dispersion, published.error_ms);
    near(own.cv_percent, published.cv_percent);
    for (const { variety, traits } of season.varieties as readonly { variety: string; traits: { yield: Figure } }[]) {
      const row = published.means.find(({ level }: { level: string }) => level === letter(variety));
      expect(traits.yield.n).toBe(row.n);
      near(traits.yield.estimate, row.emmean);
      near(traits.yield.low, row.lower);
      near(traits.yield.high, row.upper);
      expect(own.letters[variety]).toBe(published.cld_tukey_005[letter(variety)]);
    }
    for (const { variety, estimate, high, p } of own.against_check.barley.varieties) {
      const row = published.vs_check.table.find(({ level }: { level: string }) => level === letter(variety));
      near(estimate, row.diff);
      expect(Math.abs((high - estimate) / row.se - published.vs_check.crit_mvt)).toBeLessThan(1e-3);
      expect(Math.abs(p - row.p_mvt)).toBeLessThan(2e-4);
    }
  });
  // o18: Randall (1989); R friedman.test on judge means.
  it('the nine judges agree as published', () => {
    const season = built('wines-nine-judges');
    const published = reference('o18_wine_ratings');
    near(season.comparisons.bitterness.kendall_w, published.friedman_on_judge_means.kendall_W_tie_corrected);
    for (const { variety, traits } of season.varieties as readonly {
      variety: string;
      traits: { bitterness: Figure };
    }[]) {
      const row = published.naive.raw.find(({ level }: { level: string }) => level.replaceAll('_', '-') === variety);
      near(traits.bitterness.estimate, row.mean);
      expect(traits.bitterness.n).toBe(9);
    }
  });
});
