import { describe, expect, it } from 'vitest';
import { quasiVariances } from '../../src/numerics/quasiVariances.ts';
import { fitRankings } from '../../src/numerics/rankings.ts';
import type { Ranking } from '../../src/numerics/rankings.ts';
import { reference, referenceRows } from '../reference/read.ts';

/** An answer as it is written down: best, the rest, worst; `a=b` is a tie, `same` a tie of all. */
function rankingOf(given: string, best: string, worst: string, names: readonly string[]): Ranking {
  const at = (own: readonly string[]): readonly number[] => own.map((name) => names.indexOf(name));
  const all = given.split(';');
  if (best === 'same') return [at(all)];
  const [top, low] = [best.split('='), worst.split('=')];
  const rest = all.filter((name) => !top.includes(name) && !low.includes(name));
  return [top, rest, low].filter(({ length }) => length > 0).map(at);
}

describe('o3: answers about pairs (Agresti 1990, and glm in R)', () => {
  const rows = referenceRows('gardens/o3_baseball_pairs');
  const results = reference('gardens/o3_baseball_pairs');
  const names = Object.keys(results.log_worth);
  const rankings = rows.flatMap((row): readonly Ranking[] => {
    const [a, b] = [names.indexOf(row['a']!), names.indexOf(row['b']!)];
    const times = (n: string, ranking: Ranking): readonly Ranking[] => Array.from({ length: Number(n) }, () => ranking);
    return [...times(row['a_best']!, [[a], [b]]), ...times(row['b_best']!, [[b], [a]])];
  });
  it('worths and quasi-variances are those of R, with the ghost and without', () => {
    const plain = fitRankings(rankings, names.length, false);
    const last = plain.logWorths.at(-1)!;
    // Published to two digits: 1.58, 1.44, 1.29, 1.25, 1.11, 0.68, 0.
    expect(plain.logWorths.map((own) => Number((own - last).toFixed(2)))).toEqual([
      1.58, 1.44, 1.29, 1.25, 1.11, 0.68, 0,
    ]);
    const ghost = fitRankings(rankings, names.length, true);
    for (const [fit, own, digits] of [
      [plain, results, 6],
      [ghost, results.with_ghost, 5],
    ] as const) {
      const quasi = quasiVariances(fit.covariance);
      names.forEach((name, i) => {
        expect(fit.logWorths[i]).toBeCloseTo(own.log_worth[name], digits);
        expect(quasi.variances[i]).toBeCloseTo(own.quasi_variance[name], digits);
        const worth = Math.exp(fit.logWorths[i]!);
        expect(worth / (1 + worth)).toBeCloseTo(own.before_middle[name], digits);
      });
      expect(quasi.worst[0]).toBeCloseTo(own.worst_error[0], 5);
      expect(quasi.worst[1]).toBeCloseTo(own.worst_error[1], 5);
    }
  });
});

describe('o4: best and worst of three, with ties (glm and coxph in R)', () => {
  const rows = referenceRows('gardens/o4_barley_triads');
  const { with_ties: tied, with_ghost: ghost, strict_orders_only: strict } = reference('gardens/o4_barley_triads');
  const names = Object.keys(tied.log_worth).toSorted();
  const rankings = rows.map((row) => rankingOf(row['given']!, row['crop_best']!, row['crop_worst']!, names));
  it.each([
    ['without a ghost', tied, false],
    ['with a ghost', ghost, true],
  ] as const)('%s', (_, own, hasGhost) => {
    const fit = fitRankings(rankings, names.length, hasGhost);
    const quasi = quasiVariances(fit.covariance);
    names.forEach((name, i) => {
      expect(fit.logWorths[i]).toBeCloseTo(own.log_worth[name], 5);
      expect(quasi.variances[i]).toBeCloseTo(own.quasi_variance[name], 5);
    });
    expect(fit.ties[0]).toBeCloseTo(own.tie.tie2, 5);
    expect(fit.ties[1]).toBeCloseTo(own.tie.tie3, 5);
    expect(quasi.worst[1]).toBeCloseTo(own.worst_error[1], 5);
    if (!hasGhost) expect(fit.logLikelihood).toBeCloseTo(own.log_likelihood, 5);
  });
  it('strict orders are Plackett-Luce', () => {
    const fit = fitRankings(
      rankings.filter((own) => own.length === 3),
      names.length,
      false,
    );
    names.forEach((name, i) => expect(fit.logWorths[i]).toBeCloseTo(strict.log_worth[name], 5));
  });
});

it('o5: quasi-variances of ship types (Firth & de Menezes 2004)', () => {
  const results = reference('gardens/o5_ships_quasi');
  const covariance = referenceRows('gardens/o5_ships_quasi').map((row) =>
    [1, 2, 3, 4, 5].map((j) => Number(row[`X${j}`])),
  );
  const { variances, worst } = quasiVariances(covariance);
  variances.forEach((own, i) => expect(own).toBeCloseTo(results.quasi_variance[i], 7));
  expect(variances.map((own) => Number(Math.sqrt(own).toFixed(3)))).toEqual([0.201, 0.113, 0.375, 0.324, 0.232]);
  expect(worst[0]).toBeCloseTo(results.worst_error[0], 6);
  expect(worst[1]).toBeCloseTo(results.worst_error[1], 6);
});
