import { describe, expect, it } from 'vitest';
import { fitLogNormal } from '../../src/numerics/logNormal.ts';
import { tQuantile } from '../../src/numerics/distributions.ts';
import { detectableNoncentrality, tPower } from '../../src/numerics/power.ts';
import { reference } from '../reference/read.ts';

// k01: R survival::survreg 3.5, Kalbfleisch & Prentice (1980) veterans' times cut at day 90.
describe('the log-normal model of times', () => {
  const { times, events, group, ...fits } = reference('k01_lognormal');
  const levels: readonly string[] = fits.exact.level;
  it.each(['exact', 'week'])('has the locations, scale and covariance of survreg, %s', (name) => {
    const back = name === 'week' ? 7 : 0;
    const data = times.map((time: number, i: number) => {
      const low = events[i] === 1 ? Math.max(0, time - back) : time;
      return { low, high: events[i] === 1 ? time : Infinity, group: levels.indexOf(group[i]) };
    });
    const fit = fitLogNormal(data, levels.length)!;
    const expected = fits[name];
    expect(Math.abs(fit.sigma / expected.sigma - 1)).toBeLessThan(1e-6);
    expect(Math.abs(fit.logLikelihood - expected.loglik)).toBeLessThan(1e-6 * Math.abs(expected.loglik));
    levels.forEach((_, i) => {
      expect(Math.abs(fit.locations[i]! / expected.location[i] - 1)).toBeLessThan(1e-6);
      levels.forEach((__, j) =>
        expect(Math.abs(fit.covariance[i]![j]! - expected.covariance[i][j])).toBeLessThan(
          1e-6 * Math.abs(expected.covariance[i][i]),
        ),
      );
    });
  });
  it('has no fit where every group could be one time', () => {
    expect(
      fitLogNormal(
        [
          { low: 50, high: 57, group: 0 },
          { low: 53, high: 60, group: 0 },
        ],
        1,
      ),
    ).toBeNull();
  });
});

// o24: R power.t.test(strict = TRUE) and its noncentral t.
describe('power', () => {
  it('of two varieties, and the difference seen with 80 %, are as R has them', () => {
    for (const row of reference('o24_power_mdd').grid) {
      const sed = (row.cv_percent / 100) * Math.sqrt(2 / row.n);
      expect(
        Math.abs(tPower(0.2 / sed, row.df_pooled, tQuantile(0.975, row.df_pooled)) / row.power_at_20pct_pooled - 1),
      ).toBeLessThan(1e-6);
      expect(
        Math.abs(
          (detectableNoncentrality(0.8, row.df_pooled, tQuantile(0.975, row.df_pooled)) * sed) / row.mdd80_pooled_df -
            1,
        ),
      ).toBeLessThan(1e-6);
    }
  });
});
