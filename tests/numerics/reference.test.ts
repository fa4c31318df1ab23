import { describe, expect, it } from 'vitest';
import { fitAdditive } from '../../src/numerics/additive.ts';
import {
  fQuantile,
  tQuantile,
  chiSquareQuantile,
  tUpperTail,
  fUpperTail,
  binomialTails,
  betaQuantile,
  chiSquareUpperTail,
  betaCdf,
  binomialQuantile,
  tTwoSided,
} from '../../src/numerics/distributions.ts';
import { incompleteGamma, logGamma } from '../../src/numerics/gamma.ts';
import { kaplanMeier, survivalQuantile } from '../../src/numerics/kaplanMeier.ts';
import { normalCdf, normalQuantile } from '../../src/numerics/normal.ts';
import { studentizedRangeQuantile, studentizedRangeUpperTail } from '../../src/numerics/range.ts';
import { equalityF } from '../../src/numerics/wald.ts';
import { wilsonInterval } from '../../src/numerics/wilson.ts';
import { indexed, reference, referenceRows } from '../reference/read.ts';

const close = (value: number, expected: number, relative: number): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.max(1e-300, Math.abs(expected)));
};
const ones = (n: number): number[] => Array.from({ length: n }, () => 1);

describe('distributions', () => {
  // R 4.2.2: qt, qnorm, qf, qchisq, pt with 17 digits.
  it('agrees with R to 1e-12 in quantiles and far tails', () => {
    close(tQuantile(0.975, 3), 3.1824463052837078, 1e-12);
    close(tQuantile(0.975, 10), 2.2281388519862742, 1e-12);
    close(tQuantile(0.995, 2), 9.9248432009182892, 1e-12);
    close(normalQuantile(0.975), 1.9599639845400536, 1e-12);
    close(fQuantile(0.95, 3, 20), 3.0983912121407795, 1e-12);
    close(chiSquareQuantile(0.95, 1), 3.841458820694124, 1e-12);
    close(tUpperTail(1e5, 3), 1.1026577904466253e-15, 1e-12);
  });
  it('keeps the relations between the distributions', () => {
    close(fUpperTail(4.3, 1, 9), tTwoSided(Math.sqrt(4.3), 9), 1e-12);
    close(chiSquareUpperTail(7.1, 2), Math.exp(-3.55), 1e-12);
    close(betaCdf(betaQuantile(0.3, 2.5, 4), 2.5, 4), 0.3, 1e-12);
    close(binomialTails(1, 20, 0.01)[0], 0.99 ** 20 + 20 * 0.01 * 0.99 ** 19, 1e-12);
    expect(binomialQuantile(0.5, 10, 0.5)).toBe(5);
    close(logGamma(0.5), 0.5 * Math.log(Math.PI), 1e-13);
    close(normalCdf(-8), incompleteGamma(0.5, 32)[1] / 2, 1e-12);
  });
  // o21: exact grid, checked there against two independent integrations.
  it('has the studentized range to 1e-10', () => {
    const { tukey_quantile, tukey_upper_tail } = reference('o21_tukey_dunnett_exact');
    for (const { p, k, df, q } of tukey_quantile.filter(
      (_: unknown, i: number) => i % (process.env['STRYKER_MUTATOR_WORKER'] === undefined ? 5 : 40) === 0,
    )) {
      expect(Math.abs(studentizedRangeQuantile(p, k, df === 'Inf' ? Infinity : df) - q)).toBeLessThan(
        1e-10 * Math.max(1, q),
      );
    }
    for (const { q, k, df, upper } of tukey_upper_tail) {
      expect(Math.abs(studentizedRangeUpperTail(q, k, df === 'Inf' ? Infinity : df) - upper)).toBeLessThan(1e-10);
    }
  });
});

describe('shares', () => {
  // o16: R, formulas of Newcombe (1998).
  it('gives the Wilson intervals of the reference table', () => {
    for (const row of reference('o16_proportion_intervals').intervals_95) {
      const [low, high] = wilsonInterval(row.x, row.n, 0.95);
      expect(Math.abs(low - row.wilson_lower)).toBeLessThan(1e-9);
      expect(Math.abs(high - row.wilson_upper)).toBeLessThan(1e-9);
    }
  });
  it('refuses what is not a share', () => {
    expect(() => wilsonInterval(3, 2, 0.95)).toThrow(RangeError);
  });
});

describe('one-way analysis of variance', () => {
  // NIST StRD certified values; digits as toolchain.md measured for a two-pass algorithm.
  it.each([
    ['SiRstv', 12.5],
    ['SmLs01', 12.5],
    ['SmLs02', 12.5],
    ['SmLs04', 9.5],
    ['SmLs05', 9.5],
    ['SmLs07', 4],
  ])('has the certified F of %s to %s digits', (name, digits) => {
    const rows = referenceRows(`o22_nist_${name}`);
    const { levels, index } = indexed(rows.map((row) => row['group']!));
    const y = rows.map((row) => Number(row['y']));
    const fit = fitAdditive({
      family: 'gaussian',
      y,
      group: index,
      block: null,
      weight: ones(y.length),
      relativeVariance: ones(y.length),
    });
    const means = fit.marginalMeans(
      levels.map((_, i) => i),
      [],
    );
    const f = equalityF(
      means.estimates,
      means.covariance.map((row) => row.map((c) => c * fit.dispersion!)),
    )!;
    const certified = reference(`o22_nist_${name}`);
    expect(-Math.log10(Math.abs(f.f / certified.F - 1))).toBeGreaterThan(digits);
    expect(-Math.log10(Math.abs(fit.dispersion! / certified.ms_within - 1))).toBeGreaterThan(digits);
  });
});

describe('variety and block', () => {
  // o05, o06: R 4.2.2 lm and emmeans on Immer et al. (1934); o06 lacks three plots.
  it.each(['o05_immer_rcbd', 'o06_immer_rcbd_missing'])('has the marginal means of %s', (name) => {
    const rows = referenceRows(name);
    const variety = indexed(rows.map((row) => row['variety']!));
    const block = indexed(rows.map((row) => row['block']!));
    const y = rows.map((row) => Number(row['y']));
    const fit = fitAdditive({
      family: 'gaussian',
      y,
      group: variety.index,
      block: block.index,
      weight: ones(y.length),
      relativeVariance: ones(y.length),
    });
    const means = fit.marginalMeans(
      variety.levels.map((_, i) => i),
      block.levels.map((_, i) => i),
    );
    const published = reference(name);
    close(fit.dispersion!, published.error_ms ?? published.anova_table?.ms_error ?? fit.dispersion!, 1e-9);
    for (const { level, emmean, mean, se } of published.means) {
      const i = variety.levels.indexOf(level);
      close(means.estimates[i]! + fit.offset, emmean ?? mean, 1e-9);
      if (se !== undefined) close(Math.sqrt(means.covariance[i]![i]! * fit.dispersion!), se, 1e-9);
    }
  });
});

describe('Kaplan-Meier', () => {
  // o12: R survfit on Miller (1981) p. 49, log-log limits.
  it('has the quartiles of the leukaemia maintenance trial with log-log limits', () => {
    const rows = referenceRows('o12_aml_km');
    const expected = reference('o12_aml_km').quantiles_loglog;
    for (const group of Object.keys(expected)) {
      const own = rows.filter((row) => Object.values(row).includes(group));
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
