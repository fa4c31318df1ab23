import { describe, expect, it } from 'vitest';
import { countSpread, varianceOfCounts } from '../../src/analyse/classSpread.ts';
import type { Unit } from '../../src/analyse/units.ts';
import { fitAdditive } from '../../src/numerics/additive.ts';
import type { Planting } from '../../src/terms/trial.ts';

// The dispersion of fruit numbers by class. A season worked out in R stands in season.test.ts (k04).
function spreadOf(byClass: Readonly<Record<string, readonly (readonly number[])[]>>) {
  const units = Object.entries(byClass).flatMap(([classId, varieties]) =>
    varieties.flatMap((own, v) =>
      own.map((y): Unit => ({ planting: { variety: `${classId}${v}` } as Planting, classId, y, plants: 1 })),
    ),
  );
  const names = [...new Set(units.map(({ planting }) => planting.variety))];
  const places = units.map(() => 1);
  const fit = fitAdditive({
    family: 'poisson',
    y: units.map(({ y }) => y),
    group: units.map(({ planting }) => names.indexOf(planting.variety)),
    block: null,
    weight: places,
    relativeVariance: places,
  });
  return { spread: countSpread(units, places, fit), fit, units };
}

const few = [
  [2, 8, 5],
  [7, 1, 4],
];
const many = [
  [60, 180, 120],
  [150, 30, 90],
];

describe('the dispersion of fruit numbers', () => {
  it('grows with the number of a variety so that Pearson’s statistic is the degrees of freedom', () => {
    const { spread, fit, units } = spreadOf({ a: few, b: many });
    expect([spread.byClass.get('a'), spread.byClass.get('b'), spread.all]).toEqual([4.5, 105, 54.75]);
    const statistic = units.reduce((sum, { y }, i) => {
      const mu = fit.fitted[i]!;
      return sum + (y - mu) ** 2 / (mu * (1 + spread.k * mu));
    }, 0);
    expect(statistic).toBeCloseTo(fit.residualDf, 10);
    const variances = varianceOfCounts(spread, fit.fitted);
    expect(variances[0]! / variances.at(-1)!).toBeCloseTo((1 + 5 * spread.k) / (1 + 90 * spread.k), 12);
    expect(spread.scales!.get('b')! / spread.scales!.get('a')!).toBeCloseTo(
      (1 + 105 * spread.k) / (1 + 4.5 * spread.k),
      12,
    );
  });
  it('differs between the varieties of one class too', () => {
    const { spread, fit } = spreadOf({ a: [...few, ...many] });
    expect(spread.scales).toBeNull();
    expect(new Set(varianceOfCounts(spread, fit.fitted)).size).toBe(4);
  });
  it('is one for all where numbers vary no more than chance', () => {
    const { spread, fit } = spreadOf({
      a: [
        [4, 5],
        [5, 6],
      ],
      b: [
        [100, 101],
        [90, 91],
      ],
    });
    expect(fit.dispersion).toBeLessThan(1);
    expect([spread.k, spread.scales]).toEqual([0, null]);
    expect(new Set(varianceOfCounts(spread, fit.fitted))).toEqual(new Set([1]));
  });
  it('is not known from one planting of each variety', () => {
    expect(spreadOf({ a: [[4], [5]], b: [[100], [90]] }).spread.k).toBe(0);
  });
});
