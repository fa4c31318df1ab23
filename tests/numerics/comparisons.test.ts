import { describe, expect, it } from 'vitest';
import { dunnettQuantile, dunnettUpperTail, productFactors } from '../../src/numerics/dunnett.ts';
import { multivariateTUpperTail } from '../../src/numerics/multivariateT.ts';
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
});
