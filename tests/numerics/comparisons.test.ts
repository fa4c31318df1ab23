import { describe, expect, it } from 'vitest';
import { dunnettQuantile, dunnettUpperTail, productFactors } from '../../src/numerics/dunnett.ts';
import { multivariateTQuantile, multivariateTUpperTail } from '../../src/numerics/multivariateT.ts';
import { tQuantile, tTwoSided } from '../../src/numerics/distributions.ts';
import { studentizedRangeQuantile, studentizedRangeUpperTail } from '../../src/numerics/range.ts';
import { reference } from '../reference/read.ts';

// Instrumented code is a hundred times slower: mutation tests take the small cases.
const LARGEST = process.env['STRYKER_MUTATOR_WORKER'] === undefined ? Infinity : 3;
const { dunnett_equal_n: equal, dunnett_unequal_n: unequal } = reference('o21_tukey_dunnett_exact');
const dfOf = (df: number | string): number => (df === 'Inf' ? Infinity : Number(df));
const correlation = (factors: readonly number[]): number[][] =>
  factors.map((a, i) => factors.map((b, j) => (i === j ? 1 : a * b)));

// o21: exact values by two independent integrations.
describe('comparisons with a check', () => {
  it('have the exact two-sided critical values for equal numbers', () => {
    for (const { comparisons, df, crit_two_sided_95, p_at_2_5 } of equal.filter(
      (_: unknown, i: number) => i % 7 === 0,
    )) {
      const factors = Array.from({ length: comparisons }, () => Math.SQRT1_2);
      expect(Math.abs(dunnettQuantile(0.95, factors, dfOf(df)) - crit_two_sided_95)).toBeLessThan(1e-9);
      expect(Math.abs(dunnettUpperTail(2.5, factors, dfOf(df)) - p_at_2_5)).toBeLessThan(1e-10);
    }
  });
  it('have them for unequal numbers too', () => {
    for (const { lambda, df, crit_two_sided_95 } of unequal) {
      if (lambda.length > LARGEST) continue;
      expect(Math.abs(dunnettQuantile(0.95, lambda, dfOf(df)) - crit_two_sided_95)).toBeLessThan(1e-9);
    }
  });
  it('find the product form of a correlation, and only where there is one', () => {
    const factors = [0.5773502691896257, 0.65, 0.36];
    productFactors(correlation(factors))!.forEach((factor, i) => expect(factor).toBeCloseTo(factors[i]!, 12));
    const other = correlation([0.5, 0.5, 0.5, 0.5]).map((row, i) => row.map((value, j) => (i + j === 3 ? 0.4 : value)));
    expect(productFactors(other)).toBeNull();
  });
  it('come out of the lattice to 1e-4', () => {
    for (const { lambda, df, p_at_2_5 } of unequal) {
      if (lambda.length > LARGEST) continue;
      expect(Math.abs(multivariateTUpperTail(2.5, correlation(lambda), dfOf(df)) - p_at_2_5)).toBeLessThan(1e-4);
    }
  });
  // k02: R mvtnorm 1.1, Genz & Bretz with 4 million points, itself right to about 1e-5.
  it('come out of the lattice to 2e-4 where the correlation has no product form', () => {
    for (const { corr, df, p } of reference('k02_mvt_general')) {
      if (corr.length > LARGEST) continue;
      expect(Math.abs(multivariateTUpperTail(2.5, corr, df) - p)).toBeLessThan(2e-4);
    }
  });

  /** Correlation of all pairwise differences of so many equal means; signs turned where asked. */
  const pairs = (means: number, turned = false): number[][] => {
    const contrasts: number[][] = [];
    for (let i = 0; i < means; i++)
      for (let j = i + 1; j < means; j++) {
        const sign = turned && (i + j) % 2 === 0 ? -1 : 1;
        contrasts.push(Array.from({ length: means }, (_, m) => (m === i ? sign : m === j ? -sign : 0)));
      }
    return contrasts.map((a) => contrasts.map((b) => a.reduce((sum, x, m) => sum + x * b[m]!, 0) / 2));
  };
  // Tukey (1953): the largest of all differences of k means is their range, so that P(max |T| > t) = P(Q > t√2). The
  // correlations have no product form and are singular, the hardest there are: the lattice is good to 4e-3 there, to
  // 2e-4 for comparisons with a check (above). The range is exact to 1e-11 (o21).
  it.each([
    [3, 4],
    [3, 15],
    [3, Infinity],
    [4, 7],
    [4, Infinity],
  ])('come out of the lattice as the studentized range of %i means with %d df', (means, df) => {
    for (const t of [0.8, 1.5, 2.5, 3.6])
      for (const turned of [false, true]) {
        const exact = studentizedRangeUpperTail(t * Math.SQRT2, means, df);
        expect(Math.abs(multivariateTUpperTail(t, pairs(means, turned), df) - exact)).toBeLessThan(4e-3);
      }
    const exact = studentizedRangeQuantile(0.95, means, df) / Math.SQRT2;
    expect(Math.abs(multivariateTQuantile(0.95, pairs(means), df) - exact)).toBeLessThan(0.05);
  });
  it('of one are t, of two depend on the size of the correlation alone', () => {
    expect(productFactors([[1]])).toEqual([0]);
    expect(dunnettUpperTail(2.1, [0], 8)).toBeCloseTo(tTwoSided(2.1, 8), 10);
    expect(dunnettQuantile(0.95, [0], 8)).toBeCloseTo(tQuantile(0.975, 8), 9);
    const [plus, minus] = [0.49, -0.49].map((r) =>
      productFactors([
        [1, r],
        [r, 1],
      ])!,
    );
    expect(plus!.map((x) => Math.round(x * 1e12) / 1e12)).toEqual([0.7, 0.7]);
    expect(minus!.map((x) => Math.round(x * 1e12) / 1e12)).toEqual([0.7, -0.7]);
    expect(dunnettUpperTail(2, minus!, 9)).toBeCloseTo(dunnettUpperTail(2, plus!, 9), 12);
    expect(
      productFactors([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull();
  });
});
