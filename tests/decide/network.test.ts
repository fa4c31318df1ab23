import { describe, expect, it } from 'vitest';
import type { GardenValue } from '../../src/analyse/expected/gardenCells.ts';
import { packedGardens } from '../../src/analyse/expected/gardenCells.ts';
import { expectedOverGardens } from '../../src/analyse/expected/gardenExpected.ts';
import { gardensGiven } from '../../src/analyse/expected/gardenGiven.ts';
import { likeliestCells } from '../../src/analyse/expected/gardenLikeliest.ts';
import { cellMeans, errorDraws, networkGiven, projected } from '../../src/analyse/expected/gardenNetwork.ts';
import { networkOf } from '../../src/analyse/expected/networkRows.ts';
import { gardenPosterior } from '../../src/analyse/expected/gardenPosterior.ts';
import { likeliestByReml } from '../../src/analyse/expected/gardenReml.ts';
import { inClub, meanOfGardens } from '../../src/analyse/expected/gardenFigures.ts';
import { momentsOf } from '../../src/analyse/expected/linearFigures.ts';
import { openGardenDraws } from '../../src/decide/gardenDraws.ts';
import { choleskyFactor, solveLower, solveUpper } from '../../src/numerics/cholesky.ts';
import { conjugateGradients } from '../../src/numerics/conjugateGradients.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { barleyNetwork } from '../reference/barleyNetwork.ts';
import { reference } from '../reference/read.ts';

// What is worked out without a matrix of all cells, beside what is worked out with one.
const SPREADS = { between: 0.15, withSeason: 0.08, withGarden: 0.1, rest: 0.14 };
const A = 0.5;

/** Invented gardens, each with some of the varieties in all seasons. */
function invented(name: string, gardens: number, varieties: number, seasons: readonly number[], each: number) {
  const { normal, uniform } = randomStream(name);
  const ids = Array.from({ length: varieties }, (_, i) => `v${String(i).padStart(4, '0')}`);
  const v = ids.map(() => 0.3 * normal());
  const w = ids.map(() => seasons.map(() => 0.2 * normal()));
  const values = Array.from({ length: gardens }, (_, g): readonly GardenValue[] => {
    const grown = Array.from({ length: each }, () => Math.floor(varieties * uniform()));
    const u = new Map([...new Set(grown)].map((i) => [i, 0.2 * normal()]));
    return seasons.flatMap((season, s) => {
      const level = 0.4 * normal();
      return [...u].map(([i, own]) => ({
        variety: ids[i]!,
        garden: `g${g}`,
        season,
        theta: level + v[i]! + w[i]![s]! + own + 0.235 * normal() + 0.25 * normal(),
        variance: 0.0625,
      }));
    });
  }).flat();
  return { own: { classId: 'all', varieties: ids, values }, v };
}

describe('conjugate gradients', () => {
  it('solve what a Cholesky factor solves', () => {
    const { normal } = randomStream('positive definite');
    const size = 40;
    const half = Array.from({ length: size * size }, normal);
    const a = Float64Array.from({ length: size * size }, (_, at) => {
      const [i, j] = [Math.floor(at / size), at % size];
      let sum = i === j ? 1 : 0;
      for (let k = 0; k < size; k++) sum += half[i * size + k]! * half[j * size + k]!;
      return sum;
    });
    const b = Float64Array.from({ length: size }, normal);
    const found = conjugateGradients(
      (x, into) => {
        for (let i = 0; i < size; i++) into[i] = x.reduce((sum, own, j) => sum + a[i * size + j]! * own, 0);
      },
      (x, into) => x.forEach((own, i) => (into[i] = own / a[i * size + i]!)),
      b,
      1e-12,
    );
    const factor = choleskyFactor(a.slice(), size)!;
    const exact = solveUpper(factor, size, solveLower(factor, size, b.slice()));
    exact.forEach((own, i) => expect(found[i]).toBeCloseTo(own, 8));
  });
  it('of nothing are nothing', () => {
    const same = (x: Float64Array, into: Float64Array): void => into.set(x);
    expect([...conjugateGradients(same, same, new Float64Array(3), 1e-10)]).toEqual([0, 0, 0]);
  });
});

describe('o2 without a matrix (lmer in R)', () => {
  const network = networkOf(barleyNetwork);
  const given = networkGiven(network, SPREADS);
  const exact = gardensGiven(barleyNetwork, SPREADS);
  it('has the means of cells that the factor gives, which are R’s', () => {
    const means = cellMeans(given, network.theta);
    exact.means.forEach((own, i) => expect(means[i]).toBeCloseTo(own, 10));
  });
  it('takes levels and cells out: what is left of them is nothing', () => {
    const level = Float64Array.from(network.levelOf, (own) => (own === 3 ? 1 : 0));
    projected(given, level).forEach((own) => expect(own).toBeCloseTo(0, 9));
  });
  it('finds REML’s spreads, two of them at nothing', () => {
    const { reml } = reference('gardens/o2_barley_network');
    const { spreads: found } = likeliestByReml([barleyNetwork], A, null, 'exact');
    expect(found.withSeason ** 2 / reml.variety_by_season).toBeCloseTo(1, 4);
    expect(found.rest ** 2 / reml.rest).toBeCloseTo(1, 4);
    expect(found.between ** 2).toBeLessThan(1e-7);
    expect(found.withGarden ** 2).toBeLessThan(1e-7);
  });
  it('draws errors with the variances that the factor gives', () => {
    const draws = { means: exact.means, errors: { kind: 'draws' as const, draws: errorDraws(given, 'o2', 4000) } };
    barleyNetwork.varieties.forEach((_, i) => {
      for (const figure of [inClub(exact, i, null), inClub(exact, i, meanOfGardens(exact, null))]) {
        const [own, drawn] = [momentsOf(exact, figure), momentsOf(draws, figure)];
        expect(drawn.mean).toBeCloseTo(own.mean, 12);
        // A variance of 4,000 draws has a standard error of 2.2 %.
        expect(Math.abs(drawn.variance / own.variance - 1)).toBeLessThan(0.09);
      }
    });
  });
});

describe('likeliest spreads', () => {
  it.each([
    ['exact', invented('exact', 25, 15, [1, 2, 3], 5).own, 0.01],
    ['random', invented('signs', 150, 60, [1, 2, 3], 8).own, 0.05],
  ] as const)('by %s traces: nowhere near is the restricted likelihood larger', (probes, own, part) => {
    const { spreads: found } = likeliestByReml([own], A, null, probes);
    const most = gardensGiven(own, found).logLikelihood!;
    for (const key of ['between', 'withSeason', 'withGarden', 'rest'] as const)
      for (const times of [1 - part, 1 + part])
        expect(gardensGiven(own, { ...found, [key]: times * found[key] }).logLikelihood).toBeLessThan(most);
  });
  it('of one season are shared out as the prior has it, and a prediction is as wide as on the grid', () => {
    const { own } = invented('one season', 150, 120, [1], 8);
    const width = (cells: ReturnType<typeof likeliestCells>): number =>
      cells.reduce((sum, cell) => {
        const given = gardensGiven(own, cell);
        const { variance } = momentsOf(given, inClub(given, 0, null));
        return sum + cell.weight * (variance + cell.withSeason ** 2);
      }, 0);
    const likeliest = likeliestCells([own], A);
    expect(Math.min(...likeliest.map(({ withSeason }) => withSeason))).toBeGreaterThan(0);
    expect(Math.sqrt(width(likeliest) / width(gardenPosterior([own], A, 8)))).toBeCloseTo(1, 1);
  });
});

describe('two seasons that have hardly a variety in common', () => {
  it('leave to the prior how variety and season share what they tell', () => {
    const { own } = invented('hardly', 200, 120, [1, 2], 8);
    const few = own.values.filter(({ variety, season }) => season === 1 || variety < 'v0004');
    const cells = likeliestCells([{ ...own, values: few }], A);
    const sizes = cells.map(({ between, withSeason }) => Math.hypot(between, withSeason));
    expect(new Set(cells.map(({ withSeason }) => withSeason.toFixed(4))).size).toBe(4);
    for (const size of sizes) expect(size).toBeCloseTo(sizes[0]!, 9);
    // Where most varieties stand in both seasons their own values say it.
    const unsure = (all: typeof cells): number => {
      const mean = all.reduce((sum, { weight, withSeason }) => sum + weight * withSeason, 0);
      return Math.sqrt(all.reduce((sum, { weight, withSeason }) => sum + weight * (withSeason - mean) ** 2, 0));
    };
    expect(unsure(likeliestCells([own], A))).toBeLessThan(unsure(cells) / 2);
  });
  it('and even of twenty cells the spreads are near the posterior means of a dense grid in R (o2)', () => {
    const { v, w, u, r } = reference('gardens/o2_barley_network').posterior_sd_mean;
    const cells = likeliestCells([barleyNetwork], A);
    const mean = (of: (cell: (typeof cells)[number]) => number): number =>
      cells.reduce((sum, cell) => sum + cell.weight * of(cell), 0);
    // REML has two of the four at nothing there.
    expect(Math.abs(mean(({ between }) => between) - v)).toBeLessThan(0.015);
    expect(Math.abs(mean(({ withSeason }) => withSeason) - w)).toBeLessThan(0.015);
    expect(Math.abs(mean(({ withGarden }) => withGarden) - u)).toBeLessThan(0.015);
    expect(Math.abs(mean(({ rest }) => rest) - r)).toBeLessThan(0.015);
  });
});

describe('a network with more cells than a matrix can hold', () => {
  const { own, v } = invented('network', 900, 800, [1, 2], 8);
  const { cells, classes, ...spreads } = expectedOverGardens([own], A, 0.95);
  it('finds the spreads that the values were drawn with', () => {
    expect(packedGardens(own).varietyOf.length).toBeGreaterThan(800);
    expect(cells.length).toBeLessThanOrEqual(8);
    expect(Math.abs(spreads.between - 0.3)).toBeLessThan(0.03);
    expect(Math.abs(spreads.withSeason - 0.2)).toBeLessThan(0.03);
    expect(Math.abs(spreads.withGarden - 0.2)).toBeLessThan(0.03);
    expect(Math.abs(spreads.rest - 0.235)).toBeLessThan(0.02);
  });
  it('predicts within its intervals 95 of 100 times', () => {
    const { normal } = randomStream('next season');
    const { classMean, varieties } = classes[0]!;
    const held = varieties.filter(({ low, high }, i) => {
      const next = classMean + v[i]! + 0.2 * normal();
      return low < next && next < high;
    }).length;
    // 800 of them: a standard error of 0.8, and the class's middle that all share.
    expect(held / varieties.length).toBeGreaterThan(0.92);
    expect(held / varieties.length).toBeLessThan(0.98);
  });
  it('draws for verdicts have the means and spreads of what is expected', () => {
    const n = own.varieties.length;
    const draws = openGardenDraws(own, cells, '1/all/yield');
    const [values, newcomer] = [new Float64Array(1000 * n), new Float64Array(1000)];
    draws.next(values, newcomer);
    const { varieties } = classes[0]!;
    let [worst, ratio] = [0, 0];
    varieties.forEach(({ mean, low, high }, i) => {
      const drawn = Array.from({ length: 1000 }, (_, j) => values[j * n + i]!);
      const middle = drawn.reduce((sum, x) => sum + x, 0) / 1000;
      const sd = Math.sqrt(drawn.reduce((sum, x) => sum + (x - middle) ** 2, 0) / 999);
      worst = Math.max(worst, Math.abs(middle - mean));
      ratio += sd / ((high - low) / (2 * 1.959964)) / n;
    });
    expect(worst).toBeLessThan(1e-9);
    expect(ratio).toBeCloseTo(1, 1);
  });
});
