import { multivariateTUpperTail } from '../../src/numerics/multivariateT.ts';
import { describe, expect, it } from 'vitest';
import { fitAdditive } from '../../src/numerics/additive.ts';
import { binomialQuantile, binomialTails, fUpperTail } from '../../src/numerics/distributions.ts';
import { letterDisplay } from '../../src/numerics/letters.ts';
import { orthogonalise } from '../../src/numerics/orthogonal.ts';

// What holds by definition, where published tables have no rows.

describe('letters of every way in which four and five items can differ', () => {
  // Piepho (2004): two share a letter if and only if they are not separated, and no letter is superfluous.
  const members = (letters: readonly string[]): readonly string[] => {
    const names = [...new Set(letters.join(''))].toSorted();
    return names.map((name) => letters.flatMap((own, i) => (own.includes(name) ? [i] : [])).join(''));
  };
  it.each([4, 5])('%d items', (count) => {
    const pairs = Array.from({ length: count }, (_, i) => i).flatMap((i) =>
      Array.from({ length: count - 1 - i }, (_, k) => [i, i + 1 + k] as const),
    );
    for (let mask = 0; mask < 2 ** pairs.length; mask++) {
      const apart = new Set(pairs.filter((_, p) => (mask >> p) & 1).map(([i, j]) => `${i} ${j}`));
      const letters = letterDisplay(count, (i, j) => apart.has(`${i} ${j}`));
      for (const [i, j] of pairs) {
        const shares = [...letters[i]!].some((letter) => letters[j]!.includes(letter));
        expect(shares).toBe(!apart.has(`${i} ${j}`));
      }
      const columns = members(letters);
      const inside = (a: string, b: string): boolean => [...a].every((item) => b.includes(item));
      // No letter lies within another, and they stand in the order of their members, the first one being a.
      expect(columns.filter((a, i) => columns.some((b, k) => k !== i && inside(a, b)))).toEqual([]);
      expect(columns).toEqual(columns.toSorted());
      expect(letters[0]!.startsWith('a')).toBe(true);
      expect(letters.every((own) => own === [...own].toSorted().join(''))).toBe(true);
    }
  });
  it('of nothing are none', () => {
    expect(letterDisplay(0, () => true)).toEqual([]);
  });
});

describe('distributions at their ends', () => {
  it('F is above nothing always, above everything never', () => {
    expect([fUpperTail(0, 2, 5), fUpperTail(-1, 2, 5), fUpperTail(Infinity, 2, 5)]).toEqual([1, 1, 0]);
  });
  it('a count is never below 0 and never over n', () => {
    expect(binomialTails(-1, 5, 0.3)).toEqual([0, 1]);
    expect(binomialTails(5, 5, 0.3)).toEqual([1, 0]);
    expect(binomialTails(6, 5, 0.3)).toEqual([1, 0]);
  });
  it('the quantile is the smallest count that reaches the share', () => {
    // One toss: P(X ≤ 0) = 1/2.
    expect([0, 0.5, 0.50001, 1].map((p) => binomialQuantile(p, 1, 0.5))).toEqual([0, 0, 1, 1]);
  });
});

describe('orthogonal factors', () => {
  it('refuse columns that depend on each other, however small they are', () => {
    const column = (...values: number[]) => Float64Array.from(values);
    expect(() => orthogonalise([column(1, 2, 3), column(2, 4, 6)])).toThrow('the columns are not independent');
    expect(() => orthogonalise([column(1e-9, 2e-9, 3e-9), column(2e-9, 4e-9, 6e-9)])).toThrow('not independent');
    expect(() => orthogonalise([column(1, 0), column(1, 1), column(0, 1)])).toThrow('not independent');
    expect(orthogonalise([column(1e-9, 0), column(1e-9, 1e-12)]).r[1]![1]).toBeCloseTo(1e-12, 20);
  });
});

describe('a quasi-likelihood fit that swings', () => {
  it('comes to its end where plants differ much from their blocks', () => {
    const weight = [3, 2, 1, 2, 2, 3, 1, 3, 1];
    const fit = fitAdditive({
      family: 'gamma',
      y: [838 / 3, 668, 151, 409, 31.5, 18, 846, 103 / 3, 686],
      group: [0, 1, 2, 0, 1, 2, 0, 1, 2],
      block: [0, 0, 0, 1, 1, 1, 2, 2, 2],
      weight,
      relativeVariance: weight.map((own) => 1 / own),
    });
    // R 4.2.2: glm(y ~ v + b, weights, quasi(link = "log", variance = "mu^2")), epsilon 1e-14, 519 iterations.
    expect(fit.dispersion).toBeCloseTo(4.43422, 5);
    [1277.67674, 274.43152, 317.31117, 189.82077, 40.7715].forEach((wanted, i) =>
      expect(Math.abs(fit.fitted[i]! / wanted - 1)).toBeLessThan(1e-6),
    );
  });
});

describe('a multivariate t of which most correlations are 0', () => {
  // R mvtnorm pmvt, GenzBretz(maxpts = 2e6, abseps = 1e-5): 0.0505408 and 0.0499986, errors below 1e-5.
  it.each([
    [20.502033621563893, 0.0505408],
    [20.724878514224983, 0.0499986],
  ])('has at %f the tail that R has', (t, tail) => {
    const correlation = [
      [1, 0.5, 0],
      [0.5, 1, 0],
      [0, 0, 1],
    ];
    expect(Math.abs(multivariateTUpperTail(t, correlation, 1) - tail)).toBeLessThan(3e-5);
  });
});
