import { plantModel, ratingModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { fitAdditive } from '../../src/numerics/additive.ts';
import { reference, referenceRows } from '../reference/read.ts';
import { comparedIn, seenIn } from './folder.ts';
import type { Folder } from './folder.ts';

const near = (value: number | null | undefined, expected: number): void => {
  expect(Math.abs(value! - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(expected));
};

function varieties(ids: Iterable<string>): string {
  return [
    'variety,name',
    ...[...ids].map((id) => `${id.toLowerCase().replaceAll('_', '-')},${id.replaceAll('_', ' ')}`),
  ].join('\n');
}

/** Barley at six places (Immer et al. 1934), the places as blocks; yields in grams so that they stand as published. */
function barley(name: string): Folder {
  const rows = referenceRows(name);
  const plots = rows.map((row, i): Record<string, string> => ({ id: `p${i + 1}`, ...row }));
  return {
    'trial.yaml': 'title: Barley\nclasses:\n  barley: {scale: difference}\nspot_correlation: 0\n',
    'varieties.csv':
      varieties(new Set(rows.map((row) => row['variety']!)))
        .replaceAll('\n', ',barley\n')
        .replace('variety,name,barley', 'variety,name,class') + ',barley',
    '1931/plantings.csv': [
      'planting,variety,block',
      ...plots.map((row) => `${row['id']},${row['variety']},${row['block']}`),
    ].join('\n'),
    '1931/harvests.csv': ['planting,weight_g', ...plots.map((row) => `${row['id']},${row['y']}`)].join('\n'),
  };
}

describe('five barley varieties at six places', () => {
  // o05, o06: R 4.2.2 lm, emmeans, anova on Immer et al. (1934). o06 lacks three plots.
  it.each(['o05_immer_rcbd', 'o06_immer_rcbd_missing'])('gives the means, intervals, mean square, CV of %s', (name) => {
    const model = plantModel(seenIn(barley(name)), 'yield')!;
    const published = reference(name);
    expect(model.residualDf).toBe(published.error_df);
    near(model.dispersion, published.error_ms);
    near(model.cvPercent, published.cv_percent);
    for (const { level, n, emmean, lower, upper } of published.means) {
      const own = model.estimates.get(level.toLowerCase())!;
      expect(own.n).toBe(n);
      near(own.estimate, emmean);
      near(own.low, lower);
      near(own.high, upper);
    }
  });
  it('gives F and the least significant difference of the complete trial', () => {
    const model = plantModel(seenIn(barley('o05_immer_rcbd')), 'yield')!;
    const published = reference('o05_immer_rcbd');
    near(model.f.get('barley')!.value, published.anova[1].F);
    near(model.f.get('barley')!.p, published.anova[1].p);
    near(model.lsd.get('barley'), published.lsd_005);
  });
});

describe('nine judges tasting four wines', () => {
  // o18: Randall (1989); two bottles a wine are averaged to a cell, since they are one judge's taste of one wine.
  const rows = referenceRows('o18_wine_ratings');
  const ids = new Set(rows.map((row) => row['variety']!));
  const seen = seenIn({
    'trial.yaml': 'title: Wines\ntraits:\n  score: {kind: rating, from: 0, to: 100, better: higher}\n',
    'varieties.csv': varieties(ids),
    '1989/plantings.csv': ['variety', ...[...ids].map((id) => id.replaceAll('_', ' '))].join('\n'),
    '1989/ratings.csv': [
      'date,taster,variety,score',
      ...rows.map(
        (row) =>
          `1989-05-0${row['sample']},judge ${row['judge']},${row['variety']!.replaceAll('_', ' ')},${row['score']}`,
      ),
    ].join('\n'),
  });
  const model = ratingModel(seen, 'score')!;
  it('gives the mean of each wine over judges, as published', () => {
    for (const { level, mean } of reference('o18_wine_ratings').naive.raw) {
      const own = model.estimates.get(level.replaceAll('_', '-'))!;
      expect(own.n).toBe(9);
      near(own.estimate, mean);
      expect(own.low!).toBeLessThan(mean);
    }
  });
  it("has Kendall's W corrected for ties as R has it", () => {
    near(model.kendallW, reference('o18_wine_ratings').friedman_on_judge_means.kendall_W_tie_corrected);
  });
});

describe('insect counts under six sprays', () => {
  // o03: Beall (1942); R glm(quasipoisson): dispersion, and totals / plants exactly.
  it('has the dispersion and means of the quasi-poisson fit', () => {
    const rows = referenceRows('o03_insectsprays_oneway');
    const [key, count] = Object.keys(rows[0]!) as [string, string];
    const [group, value] = Number.isNaN(Number(rows[0]![key])) ? [key, count] : [count, key];
    const seen = seenIn({
      'trial.yaml': 'title: Sprays\nspot_correlation: 0\nclasses: {all: {}}\n',
      'varieties.csv': [
        'variety,class',
        ...[...new Set(rows.map((row) => row[group]!.toLowerCase()))].map((id) => `${id},all`),
      ].join('\n'),
      '1942/plantings.csv': ['planting,variety', ...rows.map((row, i) => `p${i},${row[group]}`)].join('\n'),
      '1942/harvests.csv': ['planting,fruits', ...rows.map((row, i) => `p${i},${row[value]}`)].join('\n'),
    });
    const published = reference('o03_insectsprays_oneway');
    const model = plantModel(seen, 'fruits')!;
    const units = [...seen.yields].map(([id, { fruits }]) => ({
      variety: seen.season.yieldUnits.find((unit) => unit.id === id)!.variety,
      fruits: fruits!,
    }));
    const names = [...new Set(units.map(({ variety }) => variety))];
    const ones = units.map(() => 1);
    const plain = fitAdditive({
      family: 'poisson',
      y: units.map(({ fruits }) => fruits),
      group: units.map(({ variety }) => names.indexOf(variety)),
      block: null,
      weight: ones,
      relativeVariance: ones,
    });
    expect(Math.abs(plain.dispersion! / published.quasipoisson.dispersion - 1)).toBeLessThan(1e-6);
    // Published with one dispersion for all sprays; ours grows with the mean, and its statistic is the residual df.
    const squares = units.map(({ fruits }, i) => {
      const mean = plain.fitted[i]!;
      return (fruits - mean) ** 2 / (mean * (1 + model.counts!.k * mean));
    });
    expect(squares.reduce((sum, own) => sum + own, 0)).toBeCloseTo(model.residualDf, 8);
    for (const { level, mean } of published.means) near(model.estimates.get(level.toLowerCase())!.estimate, mean);
  });
});

describe('letters and comparisons with a check', () => {
  // o01, o02, o04, o05, o06: R 4.2.2, multcompView letters at 5 % after Tukey-Kramer, exact Dunnett.
  it.each(['o05_immer_rcbd', 'o06_immer_rcbd_missing'])('gives the letters of %s', (name) => {
    const own = comparedIn(barley(name)).get('yield')!.get('barley')!;
    for (const [level, letters] of Object.entries(reference(name).cld_tukey_005))
      expect(own.letters.get(level.toLowerCase())).toBe(letters);
  });
  it('gives differences from Manchuria with their joint intervals, complete or with plots missing', () => {
    for (const name of ['o05_immer_rcbd', 'o06_immer_rcbd_missing']) {
      const folder = barley(name);
      const published = reference(name).vs_check;
      const seen = comparedIn({
        ...folder,
        'trial.yaml': folder['trial.yaml']!.replace('scale: difference', 'scale: difference, check_variety: m'),
      });
      const own = seen.get('yield')!.get('barley')!.againstCheck!;
      for (const row of published.table) {
        const found = own.varieties.find(({ variety }) => variety === row.level.toLowerCase())!;
        near(found.estimate, row.diff);
        // critical value and p by Genz & Bretz in R's mvtnorm, itself right to about 1e-4
        expect(Math.abs((found.estimate - found.low!) / row.se - published.crit_mvt)).toBeLessThan(1e-3);
        expect(Math.abs((found.high! - found.estimate) / row.se - published.crit_mvt)).toBeLessThan(1e-3);
        expect(Math.abs(found.p - row.p_mvt)).toBeLessThan(2e-4);
      }
    }
  });
});
