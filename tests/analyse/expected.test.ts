import { describe, expect, it } from 'vitest';
import { expectedTrait } from '../../src/analyse/expected/expectedTrait.ts';
import { seasonMeans, spreadPosterior, varietyGiven } from '../../src/analyse/expected/posterior.ts';
import type { ClassValues } from '../../src/analyse/expected/posterior.ts';
import { adviseClass } from '../../src/decide/adviseClass.ts';
import type { ClassCase, TraitCase } from '../../src/decide/cases.ts';
import { reference } from '../reference/read.ts';

interface Brute {
  readonly prior_scale: number;
  readonly data: readonly { variety: string; season: string; theta: number; variance: number }[];
  readonly varieties: readonly string[];
  readonly between: number;
  readonly season: number;
  readonly class_mean: number;
  readonly mean: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly spots: number;
  readonly good: number;
  readonly bad: number;
  readonly share: readonly number[];
  readonly above: readonly number[];
}

function valuesOf({ data, varieties }: Brute): ClassValues {
  const seasons = [...new Set(data.map(({ season }) => season))];
  return {
    classId: 'barley',
    seasons: seasons.length,
    varieties: varieties.map((id) => ({
      id,
      values: data
        .filter(({ variety }) => variety === id)
        .map(({ season, theta, variance }) => ({ season: seasons.indexOf(season), theta, variance })),
    })),
  };
}

// Instrumented code is a hundred times slower: mutation tests do without the long simulations.
const isMutated = process.env['STRYKER_MUTATOR_WORKER'] !== undefined;

// k03: barley of Immer et al. (1934) over places and years; R 4.2, dense normal algebra on a grid of 48,400 points.
describe('what is expected from all seasons', () => {
  const cases = reference('k03_stage_two') as Record<string, Brute>;
  it.each(['two_years', 'twelve_seasons', 'one_year'])('agrees with brute force in R, %s', (name) => {
    const brute = cases[name]!;
    const { between, withSeason, classes } = expectedTrait([valuesOf(brute)], brute.prior_scale, 0.95, 64);
    const near = (ours: number, theirs: number): void => expect(Math.abs(ours - theirs)).toBeLessThan(2e-4);
    near(between, brute.between);
    near(withSeason, brute.season);
    near(classes[0]!.classMean, brute.class_mean);
    classes[0]!.varieties.forEach((own, i) => {
      near(own.mean, brute.mean[i]!);
      near(own.low, brute.low[i]!);
      near(own.high, brute.high[i]!);
    });
  });

  const traitCase = (brute: Brute): TraitCase => ({
    trait: 'yield',
    scale: 'log',
    better: 'higher',
    ends: null,
    priorScale: brute.prior_scale,
    classes: [valuesOf(brute)],
    nextSeason: { variance: { barley: 0.16 }, perPlant: true },
  });
  const classCase = ({ spots, good, bad, varieties }: Brute): ClassCase => ({
    classId: 'barley',
    spots,
    bar: 'newcomer',
    checkVariety: null,
    competitors: varieties.map((id) => ({
      id,
      competes: true,
      untested: false,
      missed: false,
      counted: [],
      wanted: null,
    })),
    goals: [{ trait: 'yield', weight: 1, good, bad }],
    must: [],
    together: 0,
  });
  const sharesOf = (brute: Brute, points: number, simulations: number) => {
    const own = traitCase(brute);
    const expected = expectedTrait(own.classes, own.priorScale, 0.95, points);
    const settings = { keepFrom: 0.8, dropBelow: 0.2, simulations, seed: 1 };
    return new Map(
      adviseClass(classCase(brute), new Map([['yield', { own, expected }]]), settings, false).varieties.map(
        (advice) => [advice.variety, advice],
      ),
    );
  };

  // k03: a million seasons drawn in R from the joint normal of all effects; 3.3 standard errors of both simulations.
  it.skipIf(isMutated).each(['two_years', 'one_year'])('gives the shares of a long simulation in R, %s', (name) => {
    const brute = cases[name]!;
    const shares = sharesOf(brute, 48, 400_000);
    brute.varieties.forEach((id, i) => {
      expect(Math.abs(shares.get(id)!.share - brute.share[i]!)).toBeLessThan(0.0035);
      expect(Math.abs(shares.get(id)!.above - brute.above[i]!)).toBeLessThan(0.0035);
    });
  });

  it.skipIf(isMutated).each(['two_years', 'one_year'])(
    'changes no share by more than 0.005 when the grid is doubled, %s',
    (name) => {
      const brute = cases[name]!;
      const [coarse, fine] = [sharesOf(brute, 24, 400_000), sharesOf(brute, 48, 400_000)];
      for (const id of brute.varieties)
        expect(Math.abs(coarse.get(id)!.share - fine.get(id)!.share)).toBeLessThan(0.005);
    },
  );
});

const garden = (rows: readonly (readonly [id: string, theta: readonly number[], variance: number])[]): ClassValues => ({
  classId: 'c',
  seasons: Math.max(...rows.map(([, theta]) => theta.length)),
  varieties: rows.map(([id, theta, variance]) => ({
    id,
    values: theta.map((value, season) => ({ season, theta: value, variance })),
  })),
});

describe('limits that must hold', () => {
  const own = garden([
    ['a', [1.0, 1.2, 0.9], 0.04],
    ['b', [1.4, 1.9, 1.6], 0.04],
    ['c', [0.7], 0.04],
  ]);

  it('is the weighted mean where varieties differ without limit and no season differs from another', () => {
    const lone = garden([
      ['a', [2], 0.01],
      ['b', [3], 0.09],
    ]);
    const { means } = seasonMeans(lone, 1e-9, 0);
    // No difference between varieties: the season mean is weighted by 1/variance, (2/0.01 + 3/0.09) / (1/0.01 + 1/0.09).
    expect(means[0]).toBeCloseTo((2 / 0.01 + 3 / 0.09) / (1 / 0.01 + 1 / 0.09), 9);
    const two = [
      { season: 0, theta: 1, variance: 0.01 },
      { season: 1, theta: 3, variance: 0.09 },
    ];
    const given = varietyGiven(two, 2, 1e6, 0);
    expect(given.fixed).toBeCloseTo((1 / 0.01 + 3 / 0.09) / (1 / 0.01 + 1 / 0.09), 9);
    expect(given.ownShare).toBeCloseTo(1, 9);
  });
  it('pulls one season and few plants furthest to the class', () => {
    const mixed = garden([
      ['many', [2, 2, 2, 2, 2], 0.01],
      ['few', [2], 0.16],
      ['x', [1, 1, 1, 1, 1], 0.01],
      ['y', [1.1, 1.1, 1.1, 1.1, 1.1], 0.01],
      ['z', [0.9, 0.9, 0.9, 0.9, 0.9], 0.01],
    ]);
    const [expected] = expectedTrait([mixed], 0.5, 0.95).classes;
    const of = (id: string) => expected!.varieties.find(({ variety }) => variety === id)!;
    expect(of('many').ownShare).toBeGreaterThan(0.9);
    expect(of('few').ownShare).toBeLessThan(of('many').ownShare - 0.15);
    expect(of('few').mean).toBeLessThan(of('many').mean);
    expect(of('few').high - of('few').low).toBeGreaterThan(of('many').high - of('many').low);
  });
  it('comes to the plain mean after many seasons', () => {
    const seasons = Array.from({ length: 60 }, (_, s) => 0.1 * Math.sin(7 * s));
    const long = garden([
      ['a', seasons.map((x) => 1 + x), 0.04],
      ['b', seasons.map((x, s) => 2 + x + 0.05 * Math.cos(3 * s)), 0.04],
      ['c', seasons.map((x, s) => 1.5 + x - 0.05 * Math.cos(5 * s)), 0.04],
    ]);
    const [expected] = expectedTrait([long], 0.5, 0.95).classes;
    const plain = long.varieties.map(({ values }) => values.reduce((sum, { theta }) => sum + theta, 0) / values.length);
    expected!.varieties.forEach(({ mean }, i) => expect(Math.abs(mean - plain[i]!)).toBeLessThan(0.01));
  });
  it('sums to one over the grid, and widens the interval with the level', () => {
    const cells = spreadPosterior([own], 0.5);
    expect(cells.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    const [narrow, wide] = [0.8, 0.99].map((level) => expectedTrait([own], 0.5, level).classes[0]!.varieties);
    narrow!.forEach(({ low, high }, i) => {
      expect(wide![i]!.low).toBeLessThan(low);
      expect(wide![i]!.high).toBeGreaterThan(high);
    });
  });
  it('leaves a variety without records at the class, with the spread of the prior', () => {
    const { classes, between } = expectedTrait(
      [
        garden([
          ...([
            ['a', [1], 0.04],
            ['b', [2], 0.04],
          ] as const),
          ['never', [], 0.04],
        ]),
      ],
      0.5,
      0.95,
    );
    const never = classes[0]!.varieties[2]!;
    expect(never.ownShare).toBe(0);
    expect(never.mean).toBeCloseTo(classes[0]!.classMean, 9);
    expect(Math.sqrt(never.variance)).toBeGreaterThan(between * 0.95);
  });
  it('shifts with the data and scales with the prior', () => {
    const moved = garden(
      own.varieties.map(({ id, values }) => [id, values.map(({ theta }) => theta + 100), 0.04] as const),
    );
    const [here, there] = [own, moved].map((one) => expectedTrait([one], 0.5, 0.95));
    here!.classes[0]!.varieties.forEach(({ mean, high }, i) => {
      expect(there!.classes[0]!.varieties[i]!.mean - 100).toBeCloseTo(mean, 7);
      expect(there!.classes[0]!.varieties[i]!.high - 100).toBeCloseTo(high, 5);
    });
  });
});
