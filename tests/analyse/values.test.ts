import { describe, expect, it } from 'vitest';
import { classMeanOf, spreadMeans } from '../../src/analyse/expected/classMean.ts';
import { assumedVariance } from '../../src/analyse/expected/seasonEstimates.ts';
import { traitFacts } from '../../src/terms/traits.ts';
import { ownVariance, pooledVariance } from '../../src/analyse/expected/spreads.ts';
import { classValues, traitValues } from '../../src/analyse/expected/values.ts';
import type { TraitValues } from '../../src/analyse/expected/values.ts';
import { seasonSeen } from '../../src/analyse/seen.ts';
import type { DeclaredTrait } from '../../src/terms/traits.ts';
import { reference, referenceRows } from '../reference/read.ts';
import type { Results } from '../reference/read.ts';
import { folderOf, READINGS } from '../reference/seasonFolder.ts';
import { advisedIn, check } from '../sites/folder.ts';
import type { Folder } from '../sites/folder.ts';

// How a season's estimate enters stage two: methods page B. R's figures are those of k04; the rest is worked by hand.
const k04 = reference('k04_season');

function valuesIn(folder: Folder, trait: string): TraitValues | null {
  const { trial } = check(folder);
  const classOf = (id: string): string => trial!.varieties.find((variety) => variety.id === id)!.classId;
  const seasons = trial!.seasons.map((season) => seasonSeen(trial!, season));
  return traitValues(seasons, traitFacts(trait, trial!.settings.traits), classOf);
}
const brief = (values: TraitValues | null) =>
  values!.values.map(({ year, variety, theta, variance, mark }) => [year, variety, theta, variance, mark]);
const close = (x: number) => expect.closeTo(x, 7);

describe('a season with a spread of its own', () => {
  const folder = folderOf(READINGS['blocks']!);
  it.each(['yield', 'fruits'])('%s: logarithms with the variance of R, widened for its df', (trait) => {
    const own = k04.readings.blocks[trait];
    const found = valuesIn(folder, trait)!;
    expect(found).toMatchObject({ trait, scale: 'log', priorScale: 0.5, unitVariance: close(own.dispersion) });
    for (const one of Object.values<Results>(own.classes))
      one.varieties.forEach((variety: string, i: number) => {
        const value = found.values.find((each) => each.variety === variety)!;
        expect(value).toMatchObject({ year: 2026, mark: 'own', theta: close(one.working[i]) });
        expect(value.variance).toBeCloseTo((one.se[i] ** 2 * own.df) / (own.df - 2), 8);
      });
    expect(found.values.map(({ classId }) => classId)).toEqual([...Array(4).fill('sweet'), ...Array(3).fill('hot')]);
  });
  it('first ripe fruit and ratings, each on its scale', () => {
    const ripe = k04.readings.blocks.first_ripe;
    const found = valuesIn(folder, 'first_ripe')!;
    expect(found).toMatchObject({ scale: 'log', priorScale: 0.5 });
    ripe.varieties.forEach((variety: string, i: number) => {
      const value = found.values.find((each) => each.variety === variety)!;
      expect(value.theta).toBeCloseTo(Math.log(ripe.estimate[i]), 6);
      expect(value.variance).toBeCloseTo((ripe.se[i] ** 2 * ripe.df) / (ripe.df - 2), 6);
    });
    const flavour = k04.flavour;
    const rated = valuesIn(folder, 'flavour')!;
    // A quarter of the scale from 1 to 9.
    expect(rated).toMatchObject({
      scale: 'plain',
      priorScale: 2,
      unitVariance: close(flavour.dispersion),
      usualUnits: 4,
    });
    rated.values.forEach(({ variety, theta, variance, mark }) => {
      const i = flavour.varieties.indexOf(variety);
      expect([theta, mark]).toEqual([close(flavour.estimate[i]), 'own']);
      expect(variance).toBeCloseTo((flavour.covariance[i][i] * flavour.df) / (flavour.df - 2), 8);
    });
  });
  it('differences too enter as the ratio model has them', () => {
    const blocks = { ...READINGS['blocks']!, scale: 'difference' as const };
    const own = k04.readings.blocks.yield;
    const found = valuesIn(folderOf(blocks), 'yield')!;
    for (const one of Object.values<Results>(own.classes))
      one.varieties.forEach((variety: string, i: number) => {
        const value = found.values.find((each) => each.variety === variety)!;
        expect(value.theta).toBeCloseTo(one.working[i], 8);
        expect(value.variance).toBeCloseTo((one.se[i] ** 2 * own.df) / (own.df - 2), 8);
      });
    expect(found.unitVariance).toBeCloseTo(own.dispersion, 8);
  });
  it('a measure has the spread of its varieties’ means as prior scale', () => {
    const own = k04.readings.blocks.length;
    const means: number[] = Object.values<Results>(own.classes).flatMap(({ working }) => working);
    const middle = means.reduce((sum, x) => sum + x, 0) / means.length;
    const sd = Math.sqrt(means.reduce((sum, x) => sum + (x - middle) ** 2, 0) / (means.length - 1));
    expect(valuesIn(folder, 'length')!.priorScale).toBeCloseTo(sd, 8);
  });
  it('a yes-no trait is its share, with the variance of (k + 1) of (n + 2)', () => {
    const found = valuesIn(folder, 'again')!;
    expect(found).toMatchObject({ scale: 'plain', priorScale: 0.25 });
    for (const { variety, theta, variance, mark } of found.values) {
      const { k, n } = k04.shares[variety].again;
      const p = (k + 1) / (n + 2);
      expect([theta, variance, mark]).toEqual([k / n, close((p * (1 - p)) / n), 'own']);
    }
    const each = Object.values<Results>(k04.shares).map(
      ({ again: { k, n } }) => (((k + 1) / (n + 2)) * (n + 1 - k)) / (n + 2),
    );
    expect(found.unitVariance).toBeCloseTo(each.reduce((sum, x) => sum + x, 0) / each.length, 10);
    expect(found.usualUnits).toBe(4);
  });
});

const SETTINGS =
  'title: Values\nclasses:\n  a: {}\ntraits:\n  flavour: {kind: rating, from: 1, to: 9, better: higher}\n  length: {kind: measure, unit: cm, better: higher}\n';
const notebook = (rows: string, header = 'variety,plants,weight_g,fruits,flavour,length_cm'): Folder => ({
  'trial.yaml': SETTINGS,
  'varieties.csv': 'variety,class\none,a\ntwo,a\nthree,a\n',
  '2025/totals.csv': `${header}\n${rows}`,
});

/** Squared standard error of one planting of so many plants, standing together: methods page A1 with ρ = 0.2. */
const bulk = (variance: number, plants: number): number => variance * (0.2 + 0.8 / plants) * (1 + 0.2 / 0.8);

describe('what members ranked', () => {
  it('enters as log worths with their quasi-variances, as glm in R has them (o4)', () => {
    const { with_ghost: own } = reference('gardens/o4_barley_triads');
    const rows = referenceRows('gardens/o4_barley_triads');
    const names = [...new Set(rows.flatMap(({ given }) => given!.split(';')))].toSorted();
    const found = valuesIn(
      {
        'trial.yaml': 'title: T\ntraits: {crop: {kind: ranking}}\n',
        'varieties.csv': `variety\n${names.join('\n')}\n`,
        '2026/totals.csv': `variety,plants,weight_g\n${names.map((name) => `${name},2,900`).join('\n')}\n`,
        '2026/sent.csv': `garden,variety\n${rows.flatMap(({ garden, given }) => given!.split(';').map((id) => `${garden},${id}`)).join('\n')}\n`,
        '2026/answers.csv': `garden,crop_best,crop_worst\n${rows.map((row) => `${row['garden']},${row['crop_best']},${row['crop_worst']}`).join('\n')}\n`,
      },
      'crop',
    )!;
    expect(found).toMatchObject({ scale: 'worth', priorScale: 1 });
    expect(found.values).toHaveLength(names.length);
    for (const { variety, theta, variance, mark } of found.values) {
      expect([variety, mark]).toEqual([variety, 'own']);
      expect(theta).toBeCloseTo(own.log_worth[variety], 5);
      expect(variance).toBeCloseTo(own.quasi_variance[variety], 5);
    }
  });
});

describe('a season without one', () => {
  it('is assumed where no season has one: 40 % a plant, a fifth of a scale, 20 % of a measure', () => {
    const folder = notebook('one,4,4000,40,7,12\ntwo,2,1000,30,5,8\n');
    expect(brief(valuesIn(folder, 'yield'))).toEqual([
      [2025, 'one', close(Math.log(1000)), close(bulk(0.16, 4)), 'assumed'],
      [2025, 'two', close(Math.log(500)), close(bulk(0.16, 2)), 'assumed'],
    ]);
    expect(brief(valuesIn(folder, 'flavour'))).toEqual([
      [2025, 'one', 7, close(2.56), 'assumed'],
      [2025, 'two', 5, close(2.56), 'assumed'],
    ]);
    expect(brief(valuesIn(folder, 'length'))).toEqual([
      [2025, 'one', 12, close(2.4 ** 2 * (1 + (4 * 0.2) / 0.8)), 'assumed'],
      [2025, 'two', 8, close(1.6 ** 2 * (1 + (2 * 0.2) / 0.8)), 'assumed'],
    ]);
    expect(valuesIn(folder, 'first_ripe')).toBeNull();
    const measure: DeclaredTrait = { key: 'x', kind: 'measure', unit: 'cm', factor: 1, better: 'higher' };
    const rating: DeclaredTrait = { key: 'x', kind: 'rating', from: 0, to: 10, better: 'higher' };
    expect([
      ...['first_ripe', 'yield', 'fruits'].map((key) => assumedVariance(traitFacts(key, new Map()), 4)),
      assumedVariance(traitFacts('x', new Map([['x', rating]])), 4),
      assumedVariance(traitFacts('x', new Map([['x', measure]])), 4),
    ]).toEqual([close(0.0225), close(0.16), close(0.16), 4, close(0.64)]);
  });
  it('of fruits is assumed a plant, as of yield', () => {
    expect(brief(valuesIn(notebook('one,4,4000,40,7,12\ntwo,2,1000,30,5,8\n'), 'fruits'))).toEqual([
      [2025, 'one', close(Math.log(10)), close(bulk(0.16, 4)), 'assumed'],
      [2025, 'two', close(Math.log(15)), close(bulk(0.16, 2)), 'assumed'],
    ]);
  });
  it('of fruits is borrowed from classes of other size by 1 + k m', () => {
    const grown = ['few', 'many'].flatMap((id) => [1, 2, 3, 4].map((i) => `${id}${i},${id},2026-05-20`));
    const fruits = [2, 9, 4, 5, 60, 190, 120, 30];
    const folder: Folder = {
      'trial.yaml': 'title: Two classes\nclasses:\n  a: {}\n  b: {}\nseasons: {2026: {layout: spread}}\n',
      'varieties.csv': 'variety,class\nfew,a\nmany,b\nold,b\n',
      '2025/totals.csv': 'variety,plants,fruits\nold,1,200\n',
      '2026/plantings.csv': `planting,variety,transplanted\n${grown.join('\n')}\n`,
      '2026/harvests.csv': `date,planting,fruits\n${grown.map((row, i) => `2026-08-01,${row.split(',')[0]},${fruits[i]}`).join('\n')}\n`,
    };
    const means = [5, 100];
    const squares = fruits.map((x, i) => (x - means[i < 4 ? 0 : 1]!) ** 2 / means[i < 4 ? 0 : 1]!);
    // k by bisection: Pearson's statistic is 6, the degrees of freedom.
    let [low, high] = [0, 10];
    for (let i = 0; i < 200; i++) {
      const k = (low + high) / 2;
      if (squares.reduce((sum, x, j) => sum + x / (1 + k * means[j < 4 ? 0 : 1]!), 0) > 6) low = k;
      else high = k;
    }
    expect(low).toBeGreaterThan(0.1);
    const old = valuesIn(folder, 'fruits')!.values.find(({ variety }) => variety === 'old')!;
    // One planting of one plant, together as 2025 says nothing: times 1.25.
    expect([old.theta, old.variance]).toEqual([close(Math.log(200)), close(((1 + low * 200) / 200) * 1.25)]);
  });
  it('of a season without any fruit leaves the others as they were', () => {
    const plants = ['one', 'two'].flatMap((id) => [1, 2, 3].map((i) => `${id}${i},${id},2026-05-20`));
    const folder = (year2027: Folder): Folder => ({
      'trial.yaml': `${SETTINGS}goals: {a: {fruits: 1}}\nseasons: {2026: {harvests: complete}, 2027: {harvests: complete}}\n`,
      'varieties.csv': 'variety,class\none,a\ntwo,a\n',
      '2026/plantings.csv': `planting,variety,transplanted\n${plants.join('\n')}\n`,
      '2026/harvests.csv': `date,planting,fruits\n${plants.map((row, i) => `2026-08-01,${row.split(',')[0]},${4 + ((5 * i) % 7)}`).join('\n')}\n`,
      ...year2027,
    });
    const empty = {
      '2027/plantings.csv': `planting,variety,transplanted\n${plants.join('\n').replaceAll('2026', '2027')}\n`,
      '2027/observations.csv': `date,planting,event\n${plants.map((row) => `2027-08-01,${row.split(',')[0]},nothing-picked`).join('\n')}\n`,
      '2027/harvests.csv': 'date,planting,fruits\n',
    };
    expect(brief(valuesIn(folder(empty), 'fruits'))).toEqual(brief(valuesIn(folder({}), 'fruits')));
    expect(advisedIn(folder(empty)).classes[0]!.advice!.varieties).toHaveLength(2);
  });
  it('of fruits rests on the fruits counted where a Poisson spread is borrowed', () => {
    const two: Folder = {
      ...notebook('one,4,4000,40,,\ntwo,2,1000,30,,\n'),
      '2026/plantings.csv':
        'planting,variety,transplanted\np1,one,2026-05-20\np2,one,2026-05-20\np3,one,2026-05-20\np4,one,2026-05-20\n',
      '2026/harvests.csv':
        'date,planting,fruits,weight_g\n2026-08-01,p1,10,1000\n2026-08-01,p2,14,1400\n2026-08-01,p3,9,900\n2026-08-01,p4,12,1100\n',
    };
    const fruits = [10, 14, 9, 12];
    const phi = fruits.reduce((sum, x) => sum + (x - 11.25) ** 2 / 11.25, 0) / 3;
    // Plants side by side: se² times 1 + 4·0.2/0.8 = 2; df 3: times 3.
    expect(brief(valuesIn(two, 'fruits'))).toEqual([
      [2025, 'one', close(Math.log(10)), close(bulk(phi / 10, 4)), 'borrowed'],
      [2025, 'two', close(Math.log(15)), close(bulk(phi / 15, 2)), 'borrowed'],
      [2026, 'one', close(Math.log(11.25)), close((phi / 45) * 2 * 3), 'own'],
    ]);
    const grams = [1000, 1400, 900, 1100];
    const cv2 = grams.reduce((sum, x) => sum + (x / 1100 - 1) ** 2, 0) / 3;
    expect(brief(valuesIn(two, 'yield'))).toEqual([
      [2025, 'one', close(Math.log(1000)), close(bulk(cv2, 4)), 'borrowed'],
      [2025, 'two', close(Math.log(500)), close(bulk(cv2, 2)), 'borrowed'],
      [2026, 'one', close(Math.log(1100)), close((cv2 / 4) * 2 * 3), 'own'],
    ]);
    // 4 plants recorded together tell as much as 2.5 alone, 1 / (0.2 + 0.8 / 4), and standing together as 2; so do four alone.
    expect(valuesIn(two, 'yield')!.usualUnits).toBeCloseTo(2, 12);
  });
  it('puts a yield of nothing at half the smallest planting, as unsure as it is far away', () => {
    const folder: Folder = {
      'trial.yaml': SETTINGS,
      'varieties.csv': 'variety,class\none,a\ntwo,a\nthree,a\n',
      '2026/plantings.csv':
        'planting,variety,transplanted\np1,one,2026-05-20\np2,two,2026-05-20\np3,three,2026-05-20\n',
      '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-01,p1,10,1000\n2026-08-01,p2,4,400\n',
      '2026/observations.csv': 'date,planting,event\n2026-08-01,p3,lost\n',
    };
    const distance = Math.log(200) - (Math.log(1000) + Math.log(400)) / 2;
    expect(brief(valuesIn(folder, 'yield'))).toEqual([
      [2026, 'one', close(Math.log(1000)), close(bulk(0.16, 1)), 'assumed'],
      [2026, 'two', close(Math.log(400)), close(bulk(0.16, 1)), 'assumed'],
      [2026, 'three', close(Math.log(200)), close(bulk(0.16, 1) + distance ** 2), 'nothing-picked'],
    ]);
  });
  it('measures how far nothing is from the same year’s peers of its class, and is silent without any', () => {
    const two: Folder = {
      'trial.yaml': SETTINGS.replace('  a: {}', '  a: {}\n  b: {}'),
      'varieties.csv': 'variety,class\none,a\ntwo,a\nfar,b\nlost,b\n',
      '2025/totals.csv': 'variety,plants,weight_g\none,1,800\nfar,1,90\n',
      '2026/plantings.csv': 'planting,variety,transplanted\np1,one,2026-05-20\np2,two,2026-05-20\np3,lost,2026-05-20\n',
      '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-01,p1,10,1000\n',
      '2026/observations.csv': 'date,planting,event\n2026-08-01,p2,lost\n2026-08-01,p3,lost\n',
    };
    // The only yield of class a in 2026 is 1000 g: nothing stands at 500 g, ln 2 from its peer. Class b gave nothing at
    // all in 2026: that tells its varieties from nothing.
    expect(brief(valuesIn(two, 'yield')).filter(([, , , , mark]) => mark === 'nothing-picked')).toEqual([
      [2026, 'two', close(Math.log(500)), close(bulk(0.16, 1) + Math.LN2 ** 2), 'nothing-picked'],
    ]);
    const only: Folder = { ...two, '2025/totals.csv': 'variety,plants,weight_g\none,1,800\n' };
    expect(brief(valuesIn(only, 'yield')).map(([year, variety]) => [year, variety])).toEqual([
      [2025, 'one'],
      [2026, 'one'],
      [2026, 'two'],
    ]);
  });
  it('of a measure without any spread takes a fifth of its mean for the prior', () => {
    expect(valuesIn(notebook('one,4,4000,40,7,12\ntwo,2,1000,30,5,12\n'), 'length')!.priorScale).toBeCloseTo(2.4, 12);
    expect(valuesIn(notebook('one,4,4000,40,7,12\n'), 'length')!.priorScale).toBeCloseTo(2.4, 12);
    expect(valuesIn(notebook('one,4,4000,40,7,0\n'), 'length')!.priorScale).toBe(1e-6);
  });
  it('puts a variety that never ripened one SD after the end of its watch', () => {
    const folder: Folder = {
      'trial.yaml': `${SETTINGS}seasons: {2026: {harvests: complete}}\n`,
      'varieties.csv': 'variety,class\none,a\ntwo,a\nthree,a\n',
      '2026/plantings.csv':
        'planting,variety,transplanted,removed,cause\np1,one,2026-05-20,,\np2,two,2026-05-20,,\np3,two,2026-05-20,2026-07-01,accident\np4,three,2026-05-20,2026-07-01,accident\n',
      '2026/harvests.csv': 'date,planting,fruits,weight_g\n2026-08-03,p1,10,1000\n',
    };
    expect(brief(valuesIn(folder, 'first_ripe'))).toEqual(
      [
        [2026, 'two', close(Math.log(164) + 0.15), close(bulk(0.0225, 1)), 'later-than'],
        [2026, 'one', close(Math.log(75)), close(bulk(0.0225, 1)), 'assumed'],
      ].toSorted((a, b) => String(a[1]).localeCompare(String(b[1]))),
    );
  });
});

describe('spreads borrowed between seasons', () => {
  it('count with their df, and not at all with two or fewer', () => {
    expect(
      pooledVariance([
        { variance: 2, df: 3 },
        { variance: 5, df: 6 },
        { variance: 90, df: 2 },
        { variance: null, df: 9 },
      ]),
    ).toBe(4);
    expect(pooledVariance([{ variance: 90, df: 2 }])).toBeNull();
    expect(pooledVariance([])).toBeNull();
  });
  it('are widened to the variance of t for the season itself', () => {
    expect([ownVariance(2, 4), ownVariance(3, 3), ownVariance(3, 2), ownVariance(null, 9)]).toEqual([4, 9, null, null]);
  });
});

describe('a class ready for stage two', () => {
  const values = [
    { year: 2026, variety: 'one', classId: 'a', theta: 3, variance: 0.1, mark: 'own' as const },
    { year: 2024, variety: 'one', classId: 'a', theta: 2, variance: 0.2, mark: 'own' as const },
    { year: 2024, variety: 'two', classId: 'a', theta: 1, variance: 0.3, mark: 'own' as const },
    { year: 2025, variety: 'far', classId: 'b', theta: 9, variance: 0.3, mark: 'own' as const },
  ];
  it('numbers its own seasons in order, and keeps varieties without values', () => {
    expect(classValues({ values }, 'a', ['two', 'one', 'new'])).toEqual({
      classId: 'a',
      seasons: 2,
      varieties: [
        { id: 'two', values: [{ season: 0, theta: 1, variance: 0.3 }] },
        {
          id: 'one',
          values: [
            { season: 0, theta: 2, variance: 0.2 },
            { season: 1, theta: 3, variance: 0.1 },
          ],
        },
        { id: 'new', values: [] },
      ],
    });
    expect(classValues({ values }, 'c', ['one'])).toBeNull();
  });
  it('has as its mean that of its seasons, over the cells of the posterior', () => {
    const cells = [
      { between: 1, withSeason: 2, weight: 0.25 },
      { between: 3, withSeason: 4, weight: 0.75 },
    ];
    const given = [
      [1, 3],
      [5, 9],
    ].map((means) => ({ means: Float64Array.from(means), factor: new Float64Array(4), logLikelihood: 0 }));
    expect(classMeanOf(given, cells)).toBe(0.25 * 2 + 0.75 * 7);
    expect(spreadMeans(cells)).toEqual({ between: 2.5, withSeason: 3.5 });
  });
});
