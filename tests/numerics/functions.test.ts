import { describe, expect, it } from 'vitest';
import {
  betaCdf,
  betaQuantile,
  binomialQuantile,
  binomialTails,
  chiSquareQuantile,
  chiSquareUpperTail,
  fQuantile,
  fUpperTail,
  tQuantile,
  tTwoSided,
  tUpperTail,
} from '../../src/numerics/distributions.ts';
import { choleskyFactor, solveLower, solveUpper } from '../../src/numerics/cholesky.ts';
import { connectedParts } from '../../src/numerics/connected.ts';
import { devianceTerm, incompleteGamma, logGamma } from '../../src/numerics/gamma.ts';
import { incompleteBeta } from '../../src/numerics/beta.ts';
import { kaplanMeier, survivalQuantile } from '../../src/numerics/kaplanMeier.ts';
import { letterDisplay } from '../../src/numerics/letters.ts';
import { mixtureQuantile } from '../../src/numerics/mixture.ts';
import { normalCdf, normalDensity, normalQuantile } from '../../src/numerics/normal.ts';
import { findDecreasingRoot, findRoot } from '../../src/numerics/root.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { tPower } from '../../src/numerics/power.ts';
import { wilsonInterval } from '../../src/numerics/wilson.ts';
import { equalityF } from '../../src/numerics/wald.ts';
import { reference } from '../reference/read.ts';

// k05: R's own functions over a grid from the middle to the far tails.
const grid: Readonly<Record<string, readonly (readonly number[])[]>> = reference('k05_functions');
const everywhere = (name: string, of: (...at: number[]) => number, relative: number, least = 1e-300): void => {
  for (const row of grid[name]!) {
    const [wanted, at] = [row.at(-1)!, row.slice(0, -1)];
    const value = of(...at);
    if (!(Math.abs(value - wanted) <= relative * Math.max(Math.abs(wanted), least)))
      expect.fail(`${name}(${at.join(', ')}) is ${value}, in R ${wanted}`);
  }
};

describe('distributions over the grid', () => {
  it('normal', () => {
    everywhere('normal', normalCdf, 1e-14);
    everywhere('normal_quantile', normalQuantile, 1e-14);
    expect(normalCdf(-41)).toBe(0);
    expect(normalCdf(41)).toBe(1);
    expect(normalDensity(1.3)).toBeCloseTo(0.17136859204780736, 16);
  });
  it("Student's t", () => {
    everywhere('t_upper', tUpperTail, 1e-12);
    everywhere('t_quantile', tQuantile, 1e-11);
    expect(tUpperTail(1.3, Infinity)).toBe(normalCdf(-1.3));
    expect(tQuantile(0.9, Infinity)).toBe(normalQuantile(0.9));
    expect(tTwoSided(-2.5, 7)).toBe(2 * tUpperTail(2.5, 7));
    expect(tTwoSided(0, 7)).toBe(1);
  });
  it('F, chi-square, gamma', () => {
    everywhere('f_upper', fUpperTail, 1e-12);
    // R's qf turns a beta quantile about and loses digits near 0: qf(0.001, 1, 9) is 2.5e-10 off its own qt(0.5005, 9)².
    everywhere('f_quantile', fQuantile, 1e-8);
    expect(fQuantile(0.001, 1, 9) / tQuantile(0.5005, 9) ** 2).toBeCloseTo(1, 11);
    everywhere('chi_upper', chiSquareUpperTail, 1e-12);
    everywhere('chi_quantile', chiSquareQuantile, 1e-11);
    everywhere('gamma', (x, a) => incompleteGamma(a, x)[0], 1e-12);
    everywhere('log_gamma', (z) => logGamma(z), 2e-14, 1);
    expect([fUpperTail(0, 3, 4), fUpperTail(-1, 3, 4), fUpperTail(Infinity, 3, 4)]).toEqual([1, 1, 0]);
    expect([incompleteGamma(2, 0), incompleteGamma(2, Infinity)]).toEqual([
      [0, 1],
      [1, 0],
    ]);
  });
  it('beta and binomial', () => {
    everywhere('beta', betaCdf, 1e-12);
    everywhere('beta_quantile', betaQuantile, 1e-11);
    everywhere('binomial', (k, n, q) => binomialTails(k, n, q)[0], 1e-12);
    for (const [k, n, q, below] of grid['binomial']! as readonly (readonly [number, number, number, number])[])
      expect(binomialTails(k, n, q)[1]).toBeCloseTo(1 - below, 12);
    everywhere('binomial_quantile', binomialQuantile, 0);
    expect([binomialTails(-1, 5, 0.3), binomialTails(5, 5, 0.3), binomialTails(6, 5, 0.3)]).toEqual([
      [0, 1],
      [1, 0],
      [1, 0],
    ]);
    expect([incompleteBeta(2, 3, 0, 1), incompleteBeta(2, 3, 1, 0)]).toEqual([
      [0, 1],
      [1, 0],
    ]);
    for (const [a, b, x] of [
      [2, 3, 0.1],
      [2, 3, 0.9],
      [40, 2, 0.95],
    ] as const) {
      const [lower, upper] = incompleteBeta(a, b, x, 1 - x);
      expect(lower + upper).toBeCloseTo(1, 14);
    }
  });
  it('refuse a probability of 0, 1 or more', () => {
    for (const p of [0, 1, -0.1, 1.1, NaN]) {
      expect(() => normalQuantile(p)).toThrow('between 0 and 1');
      expect(() => tQuantile(p, 3)).toThrow('between 0 and 1');
      expect(() => fQuantile(p, 3, 3)).toThrow('between 0 and 1');
      expect(() => chiSquareQuantile(p, 3)).toThrow('between 0 and 1');
      expect(() => betaQuantile(p, 3, 3)).toThrow('between 0 and 1');
    }
  });
  it('have a deviance term without cancellation', () => {
    // x ln(x / m) + m - x; near m its series (x - m)² / 2m - (x - m)³ / 6m² …: 50 digits by hand.
    expect(devianceTerm(0, 3)).toBe(3);
    expect(devianceTerm(6, 3)).toBeCloseTo(6 * Math.log(2) - 3, 14);
    expect(devianceTerm(1000001, 1000000) / (0.5e-6 - 1e-12 / 6)).toBeCloseTo(1, 11);
    expect(devianceTerm(1.2, 1.1)).toBeCloseTo(1.2 * Math.log(1.2 / 1.1) - 0.1, 14);
  });
});

describe('roots', () => {
  const counted = (f: (x: number) => number) => {
    let calls = 0;
    return { f: (x: number): number => (calls++, f(x)), calls: (): number => calls };
  };
  // Brent's method needs about ten evaluations for a smooth function, bisection over fifty.
  it.each([
    ['a cube', (x: number) => x ** 3 - 2, 0, 4, Math.cbrt(2), 14],
    ['an exponential', (x: number) => Math.exp(x) - 5, 0, 10, Math.log(5), 16],
    ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.73908513321516064, 9],
    ["Wallis' cubic", (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265, 8],
    ["Wallis' cubic from afar", (x: number) => x ** 3 - 2 * x - 5, -3, 30, 2.0945514815423265, 19],
    ['a long tail', (x: number) => 1 / (1 + x * x) - 0.001, 0, 1000, Math.sqrt(999), 14],
    ['a logarithm', (x: number) => Math.log(x) - 2, 1e-3, 1e4, Math.exp(2), 19],
    ['a reciprocal', (x: number) => 1 / x - 0.01, 1, 1000, 100, 22],
    ['a steep step', (x: number) => Math.tanh(50 * (x - 0.3)), -4, 5, 0.3, 20],
    ['a flat foot', (x: number) => (x - 1) ** 5, -3, 4, 1, 160],
  ] as const)('of %s, in few evaluations', (_, f, low, high, root, most) => {
    for (const sign of [1, -1]) {
      const own = counted((x) => sign * f(x));
      expect(Math.abs(findRoot(own.f, low, high) - root)).toBeLessThan(root === 1 ? 1e-3 : 1e-14 * root);
      expect(own.calls()).toBeLessThanOrEqual(most);
    }
  });
  it('are taken at an end, and stop at the tolerance', () => {
    expect(findRoot((x) => x - 2, 2, 5)).toBe(2);
    expect(findRoot((x) => x - 5, 2, 5)).toBe(5);
    const [tight, loose] = [0, 0.1].map((tolerance) => {
      const own = counted((x) => Math.exp(x) - 5);
      const root = findRoot(own.f, 0, 10, tolerance);
      return { root, calls: own.calls() };
    });
    expect(Math.abs(loose!.root - Math.log(5))).toBeLessThan(0.1);
    expect(loose!.calls).toBeLessThan(tight!.calls);
  });
  it('need a change of sign', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 2)).toThrow('no change of sign between -1 and 2');
  });
  it('of a falling function are bracketed by doubling either way', () => {
    for (const root of [1e-6, 0.4, 1, 3, 7e5]) {
      const own = counted((x) => Math.log(root) - Math.log(x));
      expect(findDecreasingRoot(own.f, 1)).toBeCloseTo(root, 8);
      expect(own.calls()).toBeLessThan(70);
    }
  });
});

describe('Kaplan-Meier by hand', () => {
  it('counts ties, and those who leave at the time of an event as at risk', () => {
    const steps = kaplanMeier([5, 3, 5, 8, 3, 9], [true, true, false, true, true, false]);
    expect(steps).toEqual([
      {
        time: 3,
        atRisk: 6,
        events: 2,
        censored: 0,
        survival: expect.closeTo(2 / 3, 14),
        hazardVariance: expect.closeTo(2 / 24, 14),
      },
      {
        time: 5,
        atRisk: 4,
        events: 1,
        censored: 1,
        survival: expect.closeTo(0.5, 14),
        hazardVariance: expect.closeTo(1 / 6, 14),
      },
      {
        time: 8,
        atRisk: 2,
        events: 1,
        censored: 0,
        survival: expect.closeTo(0.25, 14),
        hazardVariance: expect.closeTo(1 / 6 + 0.5, 14),
      },
      {
        time: 9,
        atRisk: 1,
        events: 0,
        censored: 1,
        survival: expect.closeTo(0.25, 14),
        hazardVariance: expect.closeTo(1 / 6 + 0.5, 14),
      },
    ]);
    // S is exactly 1/2 at 5 and drops next at 8: the median is the middle; R survfit prints 6.5.
    expect(survivalQuantile(steps, 0.5, 0.95).estimate).toBe(6.5);
  });
  it('has the first day below one half, a limit where one is reached, else none', () => {
    const own = survivalQuantile(kaplanMeier([1, 2, 3], [true, true, true]), 0.5, 0.95);
    expect(own.estimate).toBe(2);
    // R survfit has no upper limit here: the curve falls to 0 before it.
    expect(own.high).toBeNull();
    expect(survivalQuantile(kaplanMeier([1, 2, 3], [false, false, true]), 0.5, 0.95)).toEqual({
      estimate: 3,
      low: null,
      high: null,
    });
    expect(survivalQuantile(kaplanMeier([1, 2], [false, false]), 0.5, 0.95)).toEqual({
      estimate: null,
      low: null,
      high: null,
    });
    expect(survivalQuantile(kaplanMeier([4, 7], [true, false]), 0.5, 0.95).estimate).toBe(4);
    expect(kaplanMeier([], [])).toEqual([]);
  });
});

describe('Kaplan-Meier where a curve meets the share exactly', () => {
  // R survfit 3.5: quantile(survfit(Surv(c(1,2,3,4), c(1,1,1,1)) ~ 1), c(.25, .5, .75)) prints 1.5, 2.5, 3.5.
  it('takes the middle to the next drop, and passes over times without an event', () => {
    const all = kaplanMeier([1, 2, 3, 4], [true, true, true, true]);
    expect([0.75, 0.5, 0.25].map((share) => survivalQuantile(all, share, 0.95).estimate)).toEqual([1.5, 2.5, 3.5]);
    const gap = kaplanMeier([1, 2, 2.5, 3, 4], [true, true, false, true, true]);
    // S: 0.8, 0.6, 0.6, 0.3, 0: 0.6 is met at 2, and the next drop is at 3.
    expect(survivalQuantile(gap, 0.6, 0.95).estimate).toBe(2.5);
    expect(gap.map(({ events }) => events)).toEqual([1, 1, 0, 1, 1]);
    // Where no drop follows, survfit goes on to the middle of what was watched (1.5); ours stays at the drop, since the
    // end of a season is nothing that happened to a plant.
    expect(survivalQuantile(kaplanMeier([1, 2], [true, false]), 0.5, 0.95).estimate).toBe(1);
  });
});

describe('parts of a table', () => {
  it('hang together through shared columns', () => {
    expect(connectedParts([0, 0, 1, 2], [0, 1, 1, 2])).toEqual({ ofRow: [0, 0, 1], ofColumn: [0, 0, 1], count: 2 });
    expect(connectedParts([0, 1, 2, 1, 2], [0, 1, 2, 0, 1])).toEqual({
      ofRow: [0, 0, 0],
      ofColumn: [0, 0, 0],
      count: 1,
    });
    expect(connectedParts([0, 1, 2, 3], [0, 1, 0, 1])).toEqual({ ofRow: [0, 1, 0, 1], ofColumn: [0, 1], count: 2 });
    expect(connectedParts([], [])).toEqual({ ofRow: [], ofColumn: [], count: 0 });
  });
  it('a long chain is one part', () => {
    const n = 300;
    const rows = Array.from({ length: 2 * n - 1 }, (_, i) => Math.floor((i + 1) / 2));
    const columns = Array.from({ length: 2 * n - 1 }, (_, i) => Math.floor(i / 2));
    expect(connectedParts(rows, columns).count).toBe(1);
  });
});

describe('letters', () => {
  const display = (count: number, pairs: readonly (readonly [number, number])[]) =>
    letterDisplay(count, (i, j) => pairs.some(([a, b]) => a === i && b === j));
  // Piepho (2004): insert and absorb. The small cases follow from the definition.
  it('are one for all where nothing is separated, one each where everything is', () => {
    expect(display(0, [])).toEqual([]);
    expect(display(1, [])).toEqual(['a']);
    expect(display(3, [])).toEqual(['a', 'a', 'a']);
    expect(
      display(3, [
        [0, 1],
        [0, 2],
        [1, 2],
      ]),
    ).toEqual(['a', 'b', 'c']);
  });
  it('overlap where the ends differ and the middle does not', () => {
    expect(display(3, [[0, 2]])).toEqual(['a', 'ab', 'b']);
    expect(display(4, [[0, 3]])).toEqual(['a', 'ab', 'ab', 'b']);
    expect(
      display(4, [
        [0, 2],
        [0, 3],
        [1, 3],
      ]),
    ).toEqual(['a', 'ab', 'bc', 'c']);
    expect(
      display(4, [
        [0, 1],
        [2, 3],
      ]),
    ).toEqual(['ab', 'cd', 'ac', 'bd']);
  });
  it('go on after z', () => {
    const all = letterDisplay(54, () => true);
    expect([all[0], all[25], all[26], all[27], all[52]]).toEqual(['a', 'z', 'a1', 'b1', 'a2']);
  });
  it('are shared if and only if a pair is not separated, whatever the pairs', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const count = 2 + (seed % 6);
      const apart = (i: number, j: number): boolean => Math.imul(seed * 31 + i * 7 + j * 13, 2654435761) % 3 === 0;
      const shown = letterDisplay(count, apart).map((text) => text.match(/[a-z]\d*/g)!);
      for (let i = 0; i < count; i++)
        for (let j = i + 1; j < count; j++)
          expect(shown[i]!.some((letter) => shown[j]!.includes(letter))).toBe(!apart(i, j));
      const columns = [...new Set(shown.flat())].map((letter) =>
        shown.flatMap((own, i) => (own.includes(letter) ? [i] : [])),
      );
      for (const a of columns) for (const b of columns) if (a !== b) expect(a.every((i) => b.includes(i))).toBe(false);
      expect([...new Set(shown.flat())]).toEqual([...new Set(shown.flat())].toSorted());
    }
  });
});

describe('small pieces', () => {
  it('Wilson intervals end where they must, and refuse what is no share', () => {
    // Newcombe (1998) Stat. Med. 17:857, table I, method 3.
    expect(wilsonInterval(81, 263, 0.95).map((x) => x.toFixed(4))).toEqual(['0.2553', '0.3662']);
    expect(wilsonInterval(15, 148, 0.95).map((x) => x.toFixed(4))).toEqual(['0.0624', '0.1605']);
    expect(wilsonInterval(0, 20, 0.95).map((x) => x.toFixed(4))).toEqual(['0.0000', '0.1611']);
    expect(wilsonInterval(1, 29, 0.95).map((x) => x.toFixed(4))).toEqual(['0.0061', '0.1718']);
    expect([wilsonInterval(0, 1, 0.9)[0], wilsonInterval(3, 3, 0.9)[1]]).toEqual([0, 1]);
    for (const [k, n] of [
      [-1, 3],
      [4, 3],
      [0, 0],
      [1.5, 3],
      [1, 2.5],
    ] as const)
      expect(() => wilsonInterval(k, n, 0.95)).toThrow(`${k} of ${n} is not a share`);
  });
  it('a Cholesky factor solves, and there is none of a matrix that is not positive definite', () => {
    // A = L Lᵀ with L = [2 0 0; 1 3 0; -1 2 1], worked by hand.
    const factor = choleskyFactor(Float64Array.from([4, 2, -2, 2, 10, 5, -2, 5, 6]), 3)!;
    expect([...factor]).toEqual([2, 0, 0, 1, 3, 0, -1, 2, 1]);
    const right = Float64Array.from([4 * 1 + 2 * 2 - 2 * 3, 2 + 20 + 15, -2 + 10 + 18]);
    expect([...solveUpper(factor, 3, solveLower(factor, 3, right))]).toEqual([1, 2, 3]);
    expect(choleskyFactor(Float64Array.from([1, 2, 2, 1]), 2)).toBeNull();
    expect(choleskyFactor(Float64Array.from([0]), 1)).toBeNull();
  });
  it('a mixture of normals has the quantiles of its distribution', () => {
    const one = [{ weight: 1, mean: 3, sd: 2 }];
    expect(mixtureQuantile(one, 0.975)).toBeCloseTo(3 + 2 * 1.9599639845400536, 7);
    const two = [
      { weight: 0.25, mean: 0, sd: 1 },
      { weight: 0.75, mean: 10, sd: 3 },
    ];
    for (const p of [0.01, 0.2, 0.5, 0.99]) {
      const x = mixtureQuantile(two, p);
      expect(0.25 * normalCdf(x) + 0.75 * normalCdf((x - 10) / 3)).toBeCloseTo(p, 8);
    }
  });
  it('equal estimates have F = 0, one estimate none, a singular covariance none', () => {
    expect(
      equalityF(
        [2, 2, 2],
        [
          [1, 0, 0],
          [0, 1, 0],
          [0, 0, 1],
        ],
      ),
    ).toEqual({ f: 0, df1: 2 });
    expect(equalityF([2], [[1]])).toBeNull();
    expect(
      equalityF(
        [2, 3],
        [
          [1, 1],
          [1, 1],
        ],
      ),
    ).toBeNull();
    // Independent means 1, 2, 4 with variance 1/2: F = Σ (m - m̄)² / (2 · ½).
    expect(
      equalityF(
        [1, 2, 4],
        [
          [0.5, 0, 0],
          [0, 0.5, 0],
          [0, 0, 0.5],
        ],
      )!.f,
    ).toBeCloseTo(14 / 3, 12);
  });
  it('a test without a difference rejects at its level', () => {
    for (const df of [2, 5, 40]) expect(tPower(0, df, tQuantile(0.975, df))).toBeCloseTo(0.05, 8);
  });
  it('a stream is decided by its name, and lies between 0 and 1', () => {
    const [a, again, b] = ['1/a', '1/a', '1/b'].map(randomStream);
    const [first, second, other] = [a!, again!, b!].map((own) => Array.from({ length: 2000 }, () => own.uniform()));
    expect(first).toEqual(second);
    expect(first).not.toEqual(other);
    expect(Math.min(...first!)).toBeGreaterThan(0);
    expect(Math.max(...first!)).toBeLessThan(1);
    // Mean of 2,000 uniforms: SE 0.0065; their correlation with another stream: SE 0.022.
    expect(Math.abs(first!.reduce((sum, u) => sum + u, 0) / 2000 - 0.5)).toBeLessThan(0.026);
    const cross = first!.reduce((sum, u, i) => sum + (u - 0.5) * (other![i]! - 0.5), 0) / 2000;
    expect(Math.abs(cross * 12)).toBeLessThan(0.09);
    const normals = Array.from({ length: 2000 }, () => a!.normal());
    expect(Math.abs(normals.reduce((sum, z) => sum + z * z, 0) / 2000 - 1)).toBeLessThan(0.13);
  });
});
