import { describe, expect, it } from 'vitest';
import { openStrata } from '../../src/numerics/strata.ts';

describe('sets of random numbers', () => {
  it('have one number in each stratum, in random order, another set each time', () => {
    const stream = openStrata('1/sweet/yield/p1');
    const [a, b] = [new Float64Array(125), new Float64Array(125)];
    stream.uniforms(a);
    stream.uniforms(b);
    expect([...a].map((u) => Math.floor(u * 125)).toSorted((x, y) => x - y)).toEqual([...a.keys()]);
    expect(a).not.toEqual(b);
    expect([...a]).not.toEqual([...a].toSorted((x, y) => x - y));
  });
  it('are the same for a name, whatever else is drawn', () => {
    const of = (name: string) => {
      const set = new Float64Array(50);
      openStrata(name).normals(set);
      return [...set];
    };
    expect(of('a')).toEqual(of('a'));
    expect(of('a')).not.toEqual(of('b'));
  });
  it('have the moments of a standard normal: 0, 1, 0, 3 (textbook)', () => {
    const stream = openStrata('moments');
    const set = new Float64Array(125);
    const sums = [0, 0, 0, 0];
    for (let i = 0; i < 800; i++) {
      stream.normals(set);
      for (const z of set) [z, z ** 2, z ** 3, z ** 4].forEach((power, k) => (sums[k]! += power / (125 * 800)));
    }
    [0, 1, 0, 3].forEach((expected, k) =>
      expect(Math.abs(sums[k]! - expected)).toBeLessThan([3e-3, 3e-3, 0.02, 0.04][k]!),
    );
  });
  it('leave a sum of two streams less uncertain than independent numbers do', () => {
    // Variance of the mean of exp(x + y) over 125 draws: independent (e^4 - e^2) / 125; sets leave about (e - 1)² e² of it.
    const means = Array.from({ length: 400 }, (_, r) => {
      const [x, y] = [new Float64Array(125), new Float64Array(125)];
      openStrata(`${r}/x`).normals(x);
      openStrata(`${r}/y`).normals(y);
      return x.reduce((sum, own, i) => sum + Math.exp(own + y[i]!) / 125, 0);
    });
    const mean = means.reduce((a, b) => a + b) / 400;
    const variance = means.reduce((a, b) => a + (b - mean) ** 2, 0) / 399;
    expect(variance / ((Math.exp(4) - Math.exp(2)) / 125)).toBeLessThan(0.65);
    expect(variance / (((Math.exp(1) - 1) ** 2 * Math.exp(2)) / 125)).toBeGreaterThan(0.7);
  });
});
