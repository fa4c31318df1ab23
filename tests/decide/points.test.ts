import { describe, expect, it } from 'vitest';
import { pointRange, pointsOf } from '../../src/decide/points.ts';
import { chanceToSettle } from '../../src/decide/settling.ts';
import { neededScore, partOfLast } from '../../src/decide/spots.ts';
import { hundredths, isOnTheEdge, verdictOf } from '../../src/decide/verdict.ts';

describe('points', () => {
  // Derringer & Suich (1980) with straight lines; the three values are the worked check of the trade's facts (6.11).
  it('runs straight from bad to good', () => {
    expect(pointsOf({ good: 2.5, bad: 0.5 }, 1.5)).toBeCloseTo(50, 12);
    expect(pointsOf({ good: 60, bad: 100 }, 75)).toBeCloseTo(62.5, 12);
    expect(pointsOf({ good: 9, bad: 4 }, 7)).toBeCloseTo(60, 12);
  });
  it('is flat outside', () => {
    expect(pointsOf({ good: 60, bad: 100 }, 40)).toBe(100);
    expect(pointsOf({ good: 60, bad: 100 }, 140)).toBe(0);
  });
  it('falls from the edges of what is good to what is bad', () => {
    const range = { good: [12, 18], bad: [6, 30] } as const;
    expect([6, 9, 12, 15, 18, 24, 30, 31].map((x) => pointsOf(range, x))).toEqual([0, 50, 100, 100, 100, 50, 0, 0]);
  });
  it('takes two standard deviations about the class where no range is given', () => {
    const basis = { better: 'lower', scale: 'log', ends: null, classMean: Math.log(80), between: 0.1 } as const;
    const { good, bad } = pointRange({ good: null, bad: null }, basis);
    expect(good).toBeCloseTo(80 * Math.exp(-0.2), 9);
    expect(bad).toBeCloseTo(80 * Math.exp(0.2), 9);
    const rating = { better: 'higher', scale: 'plain', ends: [1, 9], classMean: 8, between: 1 } as const;
    expect(pointRange({ good: null, bad: null }, rating)).toEqual({ good: 9, bad: 6 });
  });
});

describe('spots', () => {
  it('goes to the best, and those tied at the last spot share what is left', () => {
    const earned = (scores: readonly number[], spots: number, bar = 0) => {
      const list = Float64Array.from(scores);
      const needed = neededScore(list, bar, spots);
      return { needed, part: partOfLast(list, spots, needed) };
    };
    expect(earned([5, 1, 9, 7], 2)).toEqual({ needed: 7, part: 1 });
    expect(earned([5, 5, 9, 5], 2)).toEqual({ needed: 5, part: 1 / 3 });
    expect(earned([5, 5], 3, 5)).toEqual({ needed: 5, part: 1 });
    expect(earned([5, -Infinity], 1, 6)).toMatchObject({ needed: 6 });
    // Long lists are parted another way: the same as in order.
    const many = Array.from({ length: 500 }, (_, i) => (i * 7919) % 997);
    expect(earned(many, 40)).toEqual({ needed: many.toSorted((a, b) => b - a)[39], part: 1 });
  });
});

describe('verdicts', () => {
  const settings = { keepFrom: 0.8, dropBelow: 0.2, simulations: 100, seed: 1 };
  const verdict = (share: number, above: number, untested = false) => verdictOf(share, above, settings, { untested });
  it('keeps, drops, has no room, or asks for another season', () => {
    expect(verdict(0.8, 0.9)).toBe('keep');
    expect(verdict(0.79, 0.9)).toBe('try-again');
    expect(verdict(0.1, 0.19)).toBe('drop');
    expect(verdict(0.1, 0.2)).toBe('no-room');
    expect(verdict(0.2, 0.2)).toBe('try-again');
    expect(verdict(0.9, 0.9, true)).toBe('try-again');
  });
  it('are written so that no share seems to reach a limit that it does not', () => {
    const shares = [0.799, 0.8, 0.7949, 0.1951, 0.2, 0.199999, 0.5, 1, 0];
    expect(shares.map((share) => hundredths(share, settings))).toEqual([79, 80, 79, 19, 20, 19, 50, 100, 0]);
  });
  it('says when it is on the edge', () => {
    const edge = (share: number, above: number) => isOnTheEdge(share, above, settings);
    expect([0.79, 0.805, 0.82, 0.195].map((share) => edge(share, 0.9))).toEqual([true, true, false, true]);
    expect([0.195, 0.205, 0.18, 0.22].map((above) => edge(0.1, above))).toEqual([true, true, false, false]);
  });
});

describe('the chance that another season settles it', () => {
  const limits = { keepFrom: 0.8, dropBelow: 0.2 };
  it('is nothing where nothing can be learnt', () => {
    expect(chanceToSettle(0.5, 4, [{ slope: 1, variance: 0, noise: 1 }], limits)).toBe(0);
  });
  it('grows with the plants, and is near certain where all can be learnt at once', () => {
    const chance = (noise: number): number => chanceToSettle(0.5, 1, [{ slope: 1, variance: 0.99, noise }], limits);
    expect(chance(4)).toBeLessThan(chance(1));
    expect(chance(1)).toBeLessThan(chance(0.1));
    expect(chance(1e-6)).toBeGreaterThan(0.85);
  });
  // A long simulation of the same normal model: mean after the season ~ N(0.5, 0.5), spread left 0.5 (from memory: Raiffa & Schlaifer).
  it('agrees with a simulation of the model it states', () => {
    let state = 12345;
    const uniform = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
    const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let settled = 0;
    const n = 200_000;
    for (let i = 0; i < n; i++) {
      const z = (0.25 + Math.sqrt(0.5) * normal()) / Math.sqrt(0.5);
      if (z >= 0.8416212335729143 || z < -0.8416212335729143) settled++;
    }
    const share = 0.5987063256829237; // P(Z < 0.25)
    const ours = chanceToSettle(share, 1, [{ slope: 1, variance: 1, noise: 1 }], limits);
    expect(Math.abs(ours - settled / n)).toBeLessThan(0.005);
  });
});
