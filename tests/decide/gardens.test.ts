import { describe, expect, it } from 'vitest';
import { expectedInGarden, expectedOverGardens } from '../../src/analyse/expected/gardenExpected.ts';
import { inClub, inGarden, levelsOf, meanOfGardens } from '../../src/analyse/expected/gardenFigures.ts';
import { momentsOf } from '../../src/analyse/expected/linearFigures.ts';
import { gardensGiven } from '../../src/analyse/expected/gardenGiven.ts';
import { gardenPosterior } from '../../src/analyse/expected/gardenPosterior.ts';
import { openGardenDraws } from '../../src/decide/gardenDraws.ts';
import { choleskyFactor, solveLower } from '../../src/numerics/cholesky.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { neededScore } from '../../src/decide/spots.ts';
import { barleyNetwork } from '../reference/barleyNetwork.ts';
import { reference } from '../reference/read.ts';

const own = barleyNetwork;
const { varieties } = own;
/** A of the case's priors: half-normal 0.5, and 0.25 for the other three. */
const A = 0.5;
const cells = gardenPosterior([own], A);

describe('o2: six gardens, two seasons, ten varieties (lmer, and a dense grid in R)', () => {
  const results = reference('gardens/o2_barley_network');
  it('at given spreads: v in the club, v + u in a garden', () => {
    const { v, w, u, r } = results.given_sd.sd;
    const given = gardensGiven(own, { between: v, withSeason: w, withGarden: u, rest: r });
    const levels = levelsOf(given, 'waseca')!;
    for (const expected of results.given_sd.varieties) {
      const i = varieties.indexOf(expected.variety);
      const club = momentsOf(given, inClub(given, i, null));
      const garden = momentsOf(given, inGarden(given, levels, i, 0));
      expect(club.mean).toBeCloseTo(expected.v, 8);
      expect(Math.sqrt(club.variance)).toBeCloseTo(expected.v_sd, 8);
      expect(garden.mean).toBeCloseTo(expected.in_waseca, 8);
      expect(Math.sqrt(garden.variance)).toBeCloseTo(expected.in_waseca_sd, 8);
    }
  });
  it('posterior means of the four spreads, and of the varieties', () => {
    const mean = (of: (cell: (typeof cells)[number]) => number): number =>
      cells.reduce((sum, cell) => sum + cell.weight * of(cell), 0);
    const sd = results.posterior_sd_mean;
    const within = (value: number, expected: number): void => expect(Math.abs(value - expected)).toBeLessThan(2e-3);
    within(
      mean(({ between }) => between),
      sd.v,
    );
    within(
      mean(({ withSeason }) => withSeason),
      sd.w,
    );
    within(
      mean(({ withGarden }) => withGarden),
      sd.u,
    );
    within(
      mean(({ rest }) => rest),
      sd.r,
    );
    const given = cells.map((cell) => gardensGiven(own, cell));
    for (const expected of results.posterior_v) {
      const i = varieties.indexOf(expected.variety);
      const all = given.map((one) => momentsOf(one, inClub(one, i, null)));
      const average = (of: (k: number) => number): number =>
        cells.reduce((sum, { weight }, k) => sum + weight * of(k), 0);
      const middle = average((k) => all[k]!.mean);
      within(middle, expected.mean);
      within(Math.sqrt(average((k) => all[k]!.variance + all[k]!.mean ** 2) - middle ** 2), expected.sd);
    }
  });
  it('the order of the values changes nothing', () => {
    const turned = { ...own, values: own.values.toReversed() };
    const spreads = { between: 0.15, withSeason: 0.08, withGarden: 0.1, rest: 0.14 };
    expect(gardensGiven(turned, spreads).logLikelihood).toBe(gardensGiven(own, spreads).logLikelihood);
  });
});

describe('o8: shares in the club, in a garden seen, in one without records (dense grid in R, 120,000 draws)', () => {
  const results = reference('gardens/o8_barley_shares');
  const n = varieties.length;
  const DRAWS = 100_000;
  /** Shares of earned spots and of seasons above a newcomer, from the draws that verdicts are made of. */
  function shares(garden: string | null) {
    const draws = openGardenDraws(own, cells, '1/all/yield', garden);
    const [values, newcomer] = [new Float64Array(1000 * n), new Float64Array(1000)];
    const found = varieties.map(() => ({ share: 0, above: 0, mean: 0 }));
    for (let done = 0; done < DRAWS; done += 1000) {
      draws.next(values, newcomer);
      for (let j = 0; j < 1000; j++) {
        const list = Array.from({ length: n }, (_, i) => values[j * n + i]! - newcomer[j]!);
        const score = neededScore(Float64Array.from(list), 0, results.spots);
        list.forEach((value, i) => {
          found[i]!.mean += value / DRAWS;
          if (value < 0) return;
          found[i]!.above += 1 / DRAWS;
          if (value >= score) found[i]!.share += 1 / DRAWS;
        });
      }
    }
    return found;
  }
  it.each([
    ['club', null],
    ['waseca', 'waseca'],
    ['elsewhere', 'a garden without records'],
  ] as const)('%s', (key, garden) => {
    const found = shares(garden);
    for (const expected of results[key]) {
      const one = found[varieties.indexOf(expected.variety)]!;
      expect(Math.abs(one.share - expected.share)).toBeLessThan(0.01);
      expect(Math.abs(one.above - expected.above)).toBeLessThan(0.01);
      expect(Math.abs(one.mean - expected.mean)).toBeLessThan(0.004);
    }
  });
  it('a garden’s prediction is wider than the club’s', () => {
    const club = expectedOverGardens([own], A, 0.95).classes[0]!;
    const garden = expectedInGarden(own, cells, 'waseca', 0.95)!;
    expect(expectedInGarden(own, cells, 'nowhere', 0.95)).toBeNull();
    club.varieties.forEach(({ low, high }, i) => {
      const there = garden.varieties[i]!;
      expect(there.high - there.low).toBeGreaterThan(high - low);
    });
  });
});

describe('a garden with one season and a row a variety', () => {
  const plain = own.values.filter(({ season }) => season === 1931);
  const spreads = { between: 0.15, withSeason: 0.08, withGarden: 0.1, rest: 0.14 };
  it('and one with two have the likelihood of a dense normal', () => {
    expect(gardensGiven(own, spreads).logLikelihood).toBeCloseTo(dense(own.values, spreads), 8);
    const one = gardensGiven({ ...own, values: plain }, spreads);
    const [a, b] = [meanOfGardens(one, null), meanOfGardens(one, 'waseca')];
    // The likelihood by hand: a dense normal with the garden means flat (Patterson & Thompson 1971).
    expect(one.logLikelihood).toBeCloseTo(dense(plain, spreads), 8);
    expect(momentsOf(one, a).variance).toBeLessThan(momentsOf(one, b).variance);
  });
});

/** Restricted likelihood of values with a flat mean for each garden and season, everything dense. */
function dense(values: typeof own.values, { between, withSeason, withGarden, rest }: Record<string, number>): number {
  const n = values.length;
  const same = (i: number, j: number, ...keys: ('variety' | 'garden' | 'season')[]): number =>
    keys.every((key) => values[i]![key] === values[j]![key]) ? 1 : 0;
  const v = Float64Array.from({ length: n * n }, (_, at) => {
    const [i, j] = [Math.floor(at / n), at % n];
    return (
      between! ** 2 * same(i, j, 'variety') +
      withSeason! ** 2 * same(i, j, 'variety', 'season') +
      withGarden! ** 2 * same(i, j, 'variety', 'garden') +
      (i === j ? rest! ** 2 : 0)
    );
  });
  const factor = choleskyFactor(v, n)!;
  const levels = [...new Set(values.map(({ garden, season }) => `${garden}/${season}`))];
  const solved = levels.map((level) =>
    solveLower(
      factor,
      n,
      Float64Array.from(values, ({ garden, season }) => (`${garden}/${season}` === level ? 1 : 0)),
    ),
  );
  const y = solveLower(
    factor,
    n,
    Float64Array.from(values, ({ theta }) => theta),
  );
  const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  const k = levels.length;
  const m = choleskyFactor(
    Float64Array.from({ length: k * k }, (_, at) => dot(solved[Math.floor(at / k)]!, solved[at % k]!)),
    k,
  )!;
  const r = solveLower(
    m,
    k,
    Float64Array.from(solved, (column) => dot(column, y)),
  );
  let twice = dot(y, y) - dot(r, r);
  for (let i = 0; i < n; i++) twice += 2 * Math.log(factor[i * n + i]!);
  for (let i = 0; i < k; i++) twice += 2 * Math.log(m[i * k + i]!);
  return -twice / 2;
}

describe('more cells than a grid can hold', () => {
  it('the likeliest spreads stand for all, near those that the values were drawn with', () => {
    const { normal, uniform } = randomStream('many cells');
    const ids = Array.from({ length: 90 }, (_, i) => `v${String(i).padStart(2, '0')}`);
    const v = ids.map(() => 0.3 * normal());
    const w = ids.map(() => [0, 1, 2].map(() => 0.2 * normal()));
    const values = Array.from({ length: 60 }, (_, g) => {
      const start = Math.floor(90 * uniform());
      const u = Array.from({ length: 12 }, () => 0.2 * normal());
      return [0, 1, 2].flatMap((season) => {
        const level = 0.4 * normal();
        return u.map((own, k) => {
          const i = (start + 7 * k) % 90;
          const theta = level + v[i]! + w[i]![season]! + own + 0.15 * normal();
          return { variety: ids[i]!, garden: `g${g}`, season, theta, variance: 0 };
        });
      });
    }).flat();
    const many = { classId: 'all', varieties: ids, values };
    const [only, ...others] = gardenPosterior([many], A);
    expect(others).toEqual([]);
    const near = (value: number, truth: number, within: number): void =>
      expect(Math.abs(value - truth)).toBeLessThan(within);
    near(only!.between, 0.3, 0.06);
    near(only!.withSeason, 0.2, 0.03);
    near(only!.withGarden, 0.2, 0.02);
    near(only!.rest, 0.15, 0.01);
  });
});
