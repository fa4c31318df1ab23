import { plantModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { kaplanMeier, survivalQuantile } from '../../src/numerics/kaplanMeier.ts';
import { reference, referenceRows } from '../reference/read.ts';
import { comparedIn, seenIn } from './folder.ts';
import type { Folder } from './folder.ts';

const slug = (name: string): string => name.toLowerCase().replace(/[^a-z0-9]+/g, '-');
const near = (value: number | null | undefined, expected: number): void => {
  expect(Math.abs(value! - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(expected));
};

/** A block trial as a folder, on the difference scale as published. */
function blocks(name: string, check: string): Folder {
  const rows = referenceRows(name);
  const ids = [...new Set(rows.map((row) => slug(row['variety']!)))];
  return {
    'trial.yaml': `title: Blocks\nclasses:\n  a: {scale: difference, check_variety: ${check}}\nspot_correlation: 0\n`,
    'varieties.csv': `variety,class\n${ids.map((id) => `${id},a`).join('\n')}\n`,
    '1931/plantings.csv': `planting,variety,block\n${rows.map((row, i) => `p${i},${slug(row['variety']!)},${row['block']}`).join('\n')}\n`,
    '1931/harvests.csv': `planting,weight_g\n${rows.map((row, i) => `p${i},${row['y']}`).join('\n')}\n`,
  };
}

// o04: oats in blocks, Yates (1935), R package MASS; o07: an augmented design after Federer (1956) cut from the barley of
// Immer et al. (1934): two checks in each of six blocks, eight entries of one or two plots; R lm and emmeans.
describe('block trials', () => {
  it('oats: means, F, CV, LSD, letters, differences from Victory', () => {
    const folder = blocks('o04_oats_rcbd', 'victory');
    const published = reference('o04_oats_rcbd');
    const model = plantModel(seenIn(folder), 'yield')!;
    near(model.dispersion, published.error_ms);
    near(model.cvPercent, published.cv_percent);
    near(model.f.get('a')!.value, published.anova[1].F);
    // F is not significant, so no least significant difference is printed.
    expect(model.lsd.get('a')).toBeNull();
    const own = comparedIn(folder).get('yield')!.get('a')!;
    for (const { level, emmean, lower, upper } of published.means) {
      const estimate = model.estimates.get(slug(level))!;
      near(estimate.estimate, emmean);
      near(estimate.low, lower);
      near(estimate.high, upper);
      expect(own.letters.get(slug(level))).toBe(published.cld_tukey_005[level]);
    }
    for (const { level, diff, p_mvt } of published.vs_check.table) {
      const found = own.againstCheck!.varieties.find(({ variety }) => variety === slug(level))!;
      near(found.estimate, diff);
      expect(Math.abs(found.p - p_mvt)).toBeLessThan(2e-4);
    }
  });
  it('an augmented design: single plots are judged by the spread of the checks', () => {
    const published = reference('o07_barley_augmented');
    const model = plantModel(seenIn(blocks('o07_barley_augmented', 'manchuria')), 'yield')!;
    expect(model.residualDf).toBe(published.error_df);
    near(model.dispersion, published.error_ms);
    for (const { level, emmean, lower, upper } of published.fixed_blocks_means) {
      const own = model.estimates.get(slug(level))!;
      expect(own.n).toBe(published.n_per_entry[level]);
      near(own.estimate, emmean);
      near(own.low, lower);
      near(own.high, upper);
    }
  });
});

// o13: R survfit, veterans' times (Kalbfleisch & Prentice 1980) all ended at day 90, as a frost does.
describe('follow-up that ends for all at one date', () => {
  it('has the quartiles and log-log limits of R, not reached where R has none', () => {
    const rows = referenceRows('o13_veteran_km_frost');
    const expected = reference('o13_veteran_km_frost').quantiles_loglog;
    for (const group of Object.keys(expected)) {
      const own = rows.filter((row) => row['variety'] === group);
      const steps = kaplanMeier(
        own.map((row) => Number(row['time'])),
        own.map((row) => row['event'] === '1'),
      );
      for (const { p, est, lower, upper } of expected[group]) {
        expect(survivalQuantile(steps, 1 - p, 0.95)).toEqual({ estimate: est, low: lower, high: upper });
      }
    }
  });
});
