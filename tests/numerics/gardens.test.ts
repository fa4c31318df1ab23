import { describe, expect, it } from 'vitest';
import { tQuantile } from '../../src/numerics/distributions.ts';
import { fitBlocks } from '../../src/numerics/incompleteBlocks.ts';
import { fitTimesInBlocks } from '../../src/numerics/timesInBlocks.ts';
import { fitAdditive } from '../../src/numerics/additive.ts';
import { equalityF } from '../../src/numerics/wald.ts';
import { indexed, reference, referenceRows } from '../reference/read.ts';

const close = (value: number, expected: number, relative: number): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));
};

function read(name: string) {
  const rows = referenceRows(name).map((row) => ({
    garden: row['garden']!,
    variety: row['variety']!,
    y: Number(row['weight_g']) / Number(row['plants']),
  }));
  const varieties = indexed(rows.map(({ variety }) => variety));
  const gardens = indexed(rows.map(({ garden }) => garden));
  const data = {
    y: rows.map(({ y }) => y),
    group: varieties.index,
    block: gardens.index,
    relativeVariance: rows.map(() => 1),
  };
  return { data, varieties: varieties.levels, gardens: gardens.levels };
}

const upTo = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

describe('o1: fifteen gardens of two varieties each (Cochran & Cox 1957, 11.51; lm and glm in R)', () => {
  const { data, varieties, gardens } = read('gardens/o1_meat_gardens');
  const { difference, ratio } = reference('gardens/o1_meat_gardens');
  it('differences: residual, F, means over gardens and their standard errors', () => {
    const fit = fitBlocks({ ...data, family: 'gaussian' });
    expect(fit.residualDf).toBe(difference.residual_df);
    expect(fit.parts).toBe(1);
    close(fit.dispersion!, difference.residual_ms, 1e-8);
    const means = fit.marginalMeans(upTo(varieties.length), upTo(gardens.length));
    const covariance = means.covariance.map((row) => row.map((own) => own * fit.dispersion!));
    close(equalityF(means.estimates, covariance)!.f, difference.f.value, 1e-8);
    for (const own of difference.varieties) {
      const i = varieties.indexOf(own.variety);
      close(means.estimates[i]! + fit.offset, own.mean, 1e-8);
      close(Math.sqrt(covariance[i]![i]!), own.se, 1e-8);
    }
    const sed = Math.sqrt(covariance[0]![0]! + covariance[1]![1]! - 2 * covariance[0]![1]!);
    close(sed, difference.se_difference, 1e-8);
  });
  it('ratios: dispersion, estimates and intervals', () => {
    const fit = fitBlocks({ ...data, family: 'gamma' });
    close(fit.dispersion!, ratio.dispersion, 1e-8);
    const means = fit.marginalMeans(upTo(varieties.length), upTo(gardens.length));
    const t = tQuantile(0.975, fit.residualDf);
    for (const own of ratio.varieties) {
      const i = varieties.indexOf(own.variety);
      const half = t * Math.sqrt(fit.dispersion! * means.covariance[i]![i]!);
      close(Math.exp(means.estimates[i]!), own.estimate, 1e-8);
      close(Math.exp(means.estimates[i]! - half), own.low, 1e-8);
      close(Math.exp(means.estimates[i]! + half), own.high, 1e-8);
    }
  });
});

describe('o6: gardens in two parts (glm in R)', () => {
  const { data, varieties, gardens } = read('gardens/o6_parts');
  const results = reference('gardens/o6_parts');
  const fit = fitBlocks({ ...data, family: 'gamma' });
  it('one dispersion over both parts, ratios within each', () => {
    expect(fit.parts).toBe(2);
    expect(fit.residualDf).toBe(results.residual_df);
    close(fit.dispersion!, results.dispersion, 1e-7);
    for (const [part, members, reference_] of [
      [results.part_1, ['m', 'p', 's'], 'm'],
      [results.part_2, ['t', 'v'], 't'],
    ] as const) {
      const groups = members.map((id) => varieties.indexOf(id));
      const first = fit.partOf[groups[0]!]!;
      const own = upTo(gardens.length).filter((b) => fit.partOf[data.group[data.block.indexOf(b)]!] === first);
      expect(own).toHaveLength(3);
      const { estimates } = fit.marginalMeans(groups, own);
      for (const [name, ratio] of Object.entries(part.log_ratio_to_first)) {
        const i = members.indexOf(name.replace('variety', '') as never);
        close(estimates[i]! - estimates[members.indexOf(reference_ as never)]!, ratio as number, 1e-7);
      }
    }
  });
});

describe('gardens eliminated one by one', () => {
  // The same model by the room's other fit, which sweeps out the varieties instead.
  it.each(['gamma', 'poisson', 'gaussian'] as const)('%s: as the fit with blocks as columns', (family) => {
    const { data, varieties, gardens } = read('gardens/o1_meat_gardens');
    const relativeVariance = data.y.map((_, i) => 0.4 + 0.6 / (1 + (i % 3)));
    const own = fitBlocks({ ...data, relativeVariance, family });
    const other = fitAdditive({ ...data, relativeVariance, weight: relativeVariance.map((v) => 1 / v), family });
    close(own.dispersion!, other.dispersion!, 1e-9);
    const [a, b] = [own, other].map((fit) => fit.marginalMeans(upTo(varieties.length), upTo(gardens.length)));
    a!.estimates.forEach((estimate, i) => {
      expect(Math.abs(estimate + own.offset - b!.estimates[i]! - other.offset)).toBeLessThan(1e-9);
      a!.covariance[i]!.forEach((value, j) => expect(Math.abs(value - b!.covariance[i]![j]!)).toBeLessThan(1e-9));
    });
  });
  it('a zero beside others counts', () => {
    const fit = fitBlocks({
      family: 'gamma',
      y: [10, 0, 8, 4, 12, 6],
      group: [0, 1, 0, 1, 0, 1],
      block: [0, 0, 1, 1, 2, 2],
      relativeVariance: [1, 1, 1, 1, 1, 1],
    });
    const { estimates } = fit.marginalMeans([0, 1], [0, 1, 2]);
    expect(estimates[1]! - estimates[0]!).toBeLessThan(Math.log(0.5));
    expect(Number.isFinite(estimates[1]!)).toBe(true);
  });
});

describe('k1: censored times within gardens (survival::survreg in R)', () => {
  const rows = referenceRows('gardens/k1_times');
  const results = reference('gardens/k1_times');
  const varieties = indexed(rows.map((row) => row['variety']!));
  const gardens = indexed(rows.map((row) => row['garden']!));
  const times = rows.map((row, i) => ({
    low: Number(row['low']),
    high: row['high'] === '' ? Infinity : Number(row['high']),
    group: varieties.index[i]!,
    block: gardens.index[i]!,
  }));
  it('spread, medians over gardens and their standard errors', () => {
    const fit = fitTimesInBlocks(times)!;
    close(fit.sigma, results.sigma, 1e-6);
    const groups = results.varieties.map(({ variety }: { variety: string }) => varieties.levels.indexOf(variety));
    const { estimates, covariance } = fit.means(groups, upTo(gardens.levels.length));
    results.varieties.forEach((own: { log_median: number; se: number }, i: number) => {
      close(estimates[i]!, own.log_median, 1e-6);
      close(Math.sqrt(covariance[i]![i]!), own.se, 1e-5);
    });
    const sed = Math.sqrt(covariance[0]![0]! + covariance[1]![1]! - 2 * covariance[0]![1]!);
    close(sed, results.se_difference_first_two, 1e-5);
  });
  it('exact times: least squares on their logarithms', () => {
    const exact = times.map(({ low, group, block }) => ({ low: low + group, high: low + group, group, block }));
    const fit = fitTimesInBlocks(exact)!;
    const plain = fitBlocks({
      family: 'gaussian',
      y: exact.map(({ low }) => Math.log(low)),
      group: varieties.index,
      block: gardens.index,
      relativeVariance: exact.map(() => 1),
    });
    close(fit.sigma ** 2, (plain.dispersion! * plain.residualDf) / exact.length, 1e-9);
  });
});
