import { describe, expect, it } from 'vitest';
import { fitAdditive } from '../../src/numerics/additive.ts';
import { chiSquareUpperTail, fUpperTail, tQuantile, tTwoSided } from '../../src/numerics/distributions.ts';
import { dunnettQuantile } from '../../src/numerics/dunnett.ts';
import { kaplanMeier, survivalQuantile } from '../../src/numerics/kaplanMeier.ts';
import { letterDisplay } from '../../src/numerics/letters.ts';
import { studentizedRangeQuantile } from '../../src/numerics/range.ts';
import { equalityF } from '../../src/numerics/wald.ts';
import { degreeDaysOf } from '../../src/analyse/degreeDays.ts';
import { indexed, reference, referenceRows } from '../reference/read.ts';

interface Analysis {
  readonly f: number;
  readonly df1: number;
  readonly df2: number;
  readonly errorMs: number;
  readonly means: readonly number[];
  readonly cv: number;
}

/** Analysis of variance of rows of numbers, one row a group; columns are blocks if said so. */
function analysis(rows: readonly (readonly number[])[], blocks = false): Analysis {
  const y = rows.flat();
  const ones = y.map(() => 1);
  const group = rows.flatMap((row, i) => row.map(() => i));
  const block = blocks ? rows.flatMap((row) => row.map((_, j) => j)) : null;
  const fit = fitAdditive({ family: 'gaussian', y, group, block, weight: ones, relativeVariance: ones });
  const all = rows.map((_, i) => i);
  const { estimates, covariance } = fit.marginalMeans(all, blocks ? rows[0]!.map((_, j) => j) : []);
  const f = equalityF(
    estimates,
    covariance.map((row) => row.map((value) => value * fit.dispersion!)),
  )!;
  const mean = y.reduce((sum, value) => sum + value, 0) / y.length;
  return {
    f: f.f,
    df1: f.df1,
    df2: fit.residualDf,
    errorMs: fit.dispersion!,
    means: estimates.map((e) => e + fit.offset),
    cv: (100 * Math.sqrt(fit.dispersion!)) / mean,
  };
}

const transpose = (rows: readonly (readonly number[])[]): number[][] =>
  rows[0]!.map((_, j) => rows.map((row) => row[j]!));

describe('textbook analyses of variance', () => {
  // Gomez & Gomez (1984) p. 26, table 2.5: rice IR8, 6 seed rates in 4 blocks; as in agridat gomez.seedrate. MS error 110,558; F 2.17; cv 6.7 %.
  const seedRate = transpose([
    [5113, 5346, 5272, 5164, 4804, 5254],
    [5398, 5952, 5713, 4831, 4848, 4542],
    [5307, 4719, 5483, 4986, 4432, 4919],
    [4678, 4264, 4749, 4410, 4748, 4098],
  ]);
  it('seed rates of rice in blocks: mean square, F, CV, LSD, HSD', () => {
    const own = analysis(seedRate, true);
    expect(own.errorMs).toBeCloseTo(110558.411, 3);
    expect(own.f).toBeCloseTo(2.1678, 4);
    expect(fUpperTail(own.f, own.df1, own.df2)).toBeCloseTo(0.1128, 4);
    expect(own.cv).toBeCloseTo(6.704, 3);
    const sed = Math.sqrt((2 * own.errorMs) / 4);
    expect(tQuantile(0.975, own.df2) * sed).toBeCloseTo(501.14, 2);
    expect(tQuantile(0.995, own.df2) * sed).toBeCloseTo(692.82, 2);
    expect((studentizedRangeQuantile(0.95, 6, own.df2) * sed) / Math.SQRT2).toBeCloseTo(763.88, 2);
    expect(own.means).toEqual([5124, 5070.25, 5304.25, 4847.75, 4708, 4703.25].map((mean) => expect.closeTo(mean, 9)));
  });
  // Gomez & Gomez (1984) tables 2.1-2.2 (data from memory): 7 insecticide treatments of rice, 4 replicates, completely randomised.
  const insecticides = [
    [2537, 2069, 2104, 1797],
    [3366, 2591, 2211, 2544],
    [2536, 2459, 2827, 2385],
    [2387, 2453, 1556, 2116],
    [1997, 1679, 1649, 1859],
    [1796, 1704, 1904, 1320],
    [1401, 1516, 1270, 1077],
  ];
  it('insecticides on rice: F 9.83, LSD 453, letters of LSD and HSD, four beat the control', () => {
    const own = analysis(insecticides);
    expect(own.errorMs).toBeCloseTo(94773.214, 3);
    expect(own.f).toBeCloseTo(9.8255, 4);
    expect(own.cv).toBeCloseTo(15.093, 3);
    const sed = Math.sqrt((2 * own.errorMs) / 4);
    const lsd = tQuantile(0.975, 21) * sed;
    const hsd = (studentizedRangeQuantile(0.95, 7, 21) * sed) / Math.SQRT2;
    expect(lsd).toBeCloseTo(452.7, 1);
    expect(hsd).toBeCloseTo(707.65, 1);
    const sorted = own.means.toSorted((a, b) => b - a);
    const letters = (limit: number): readonly string[] =>
      letterDisplay(7, (i, j) => Math.abs(sorted[i]! - sorted[j]!) > limit);
    expect(letters(lsd)).toEqual(['a', 'ab', 'bc', 'bc', 'c', 'cd', 'd']);
    expect(letters(hsd)).toEqual(['a', 'a', 'ab', 'ab', 'bc', 'bc', 'c']);
    const critical =
      dunnettQuantile(
        0.95,
        Array.from({ length: 6 }, () => Math.SQRT1_2),
        21,
      ) * sed;
    expect(critical).toBeCloseTo(607.3, 1);
    expect(own.means.slice(0, 6).map((mean) => mean - own.means[6]! > critical)).toEqual([
      true,
      true,
      true,
      true,
      false,
      false,
    ]);
  });
  // Snedecor & Cochran, fat absorbed by doughnuts (data from memory): MS 545.5, 100.9; F 5.41; HSD 16.2.
  it('doughnut fats: F 5.41, HSD 16.2', () => {
    const own = analysis([
      [64, 72, 68, 77, 56, 95],
      [78, 91, 97, 82, 85, 77],
      [75, 93, 78, 71, 63, 76],
      [55, 66, 49, 64, 70, 68],
    ]);
    expect(own.f).toBeCloseTo(5.4063, 4);
    expect(fUpperTail(own.f, 3, 20)).toBeCloseTo(0.00688, 5);
    expect(studentizedRangeQuantile(0.95, 4, 20) * Math.sqrt(own.errorMs / 6)).toBeCloseTo(16.23, 2);
  });
  // Steel & Torrie, nitrogen in red clover (data from memory): MS error 11.79, F 14.37.
  it('red clover: MS error 11.79, F 14.37, LSD 4.48, Dunnett 5.85', () => {
    const own = analysis([
      [19.4, 32.6, 27, 32.1, 33],
      [17.7, 24.8, 27.9, 25.2, 24.3],
      [17, 19.4, 9.1, 11.9, 15.8],
      [20.7, 21, 20.5, 18.8, 18.6],
      [14.3, 14.4, 11.8, 11.6, 14.2],
      [17.3, 19.4, 19.1, 16.9, 20.8],
    ]);
    expect(own.errorMs).toBeCloseTo(11.7887, 4);
    expect(own.f).toBeCloseTo(14.3705, 4);
    const sed = Math.sqrt((2 * own.errorMs) / 5);
    expect(tQuantile(0.975, 24) * sed).toBeCloseTo(4.482, 3);
    expect(
      dunnettQuantile(
        0.95,
        Array.from({ length: 5 }, () => Math.SQRT1_2),
        24,
      ) * sed,
    ).toBeCloseTo(5.853, 2);
  });
  // Steel & Torrie, oil of Redwing flax in blocks (data from memory): error MS 1.31, F about 4.8.
  it('Redwing flax in blocks: MS error 1.314, F 4.82, CV 20.7 %', () => {
    const own = analysis(
      [
        [4.4, 5.9, 6, 4.1],
        [3.3, 1.9, 4.9, 7.1],
        [4.4, 4, 4.5, 3.1],
        [6.8, 6.6, 7, 6.4],
        [6.3, 4.9, 5.9, 7.1],
        [6.4, 7.3, 7.7, 6.7],
      ],
      true,
    );
    expect(own.errorMs).toBeCloseTo(1.31442, 5);
    expect(own.f).toBeCloseTo(4.8161, 4);
    expect(own.cv).toBeCloseTo(20.74, 2);
    expect(tQuantile(0.975, 15) * Math.sqrt(own.errorMs / 2)).toBeCloseTo(1.728, 3);
  });
  // Student's sleep data (from memory) as two treatments in ten blocks: t 4.0621, p .002833.
  it('paired data are a two-group analysis in blocks', () => {
    const own = analysis(
      [
        [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2],
        [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4],
      ],
      true,
    );
    expect(Math.sqrt(own.f)).toBeCloseTo(4.0621, 4);
    expect(tTwoSided(Math.sqrt(own.f), 9)).toBeCloseTo(0.002833, 6);
  });
  // Gomez seed rates with one plot missing (Yates): error SS 1,620,266.12 on 14 df.
  it('a missing plot: the error of the least squares fit', () => {
    const y = seedRate
      .flatMap((row, i) => row.map((value, j) => ({ value, i, j })))
      .filter(({ i, j }) => !(i === 2 && j === 1));
    const ones = y.map(() => 1);
    const fit = fitAdditive({
      family: 'gaussian',
      y: y.map((d) => d.value),
      group: y.map((d) => d.i),
      block: y.map((d) => d.j),
      weight: ones,
      relativeVariance: ones,
    });
    expect(fit.residualDf).toBe(14);
    expect(fit.dispersion! * 14).toBeCloseTo(1620266.12, 1);
  });
});

// o01, o02: R 4.2.2 oneway block on PlantGrowth (Dobson 1983) and chickwts (McNeil 1977), Tukey letters, exact Dunnett.
describe.each(['o01_plantgrowth_oneway', 'o02_chickwts_oneway'])('%s', (name) => {
  const rows = referenceRows(name);
  const [first, second] = Object.keys(rows[0]!) as [string, string];
  const [groupKey, valueKey] = Number.isNaN(Number(rows[0]![first])) ? [first, second] : [second, first];
  const { levels, index } = indexed(rows.map((row) => row[groupKey]!));
  const y = rows.map((row) => Number(row[valueKey]));
  const ones = y.map(() => 1);
  const fit = fitAdditive({ family: 'gaussian', y, group: index, block: null, weight: ones, relativeVariance: ones });
  const means = fit.marginalMeans(
    levels.map((_, i) => i),
    [],
  );
  const published = reference(name);
  it('has the analysis of variance and pooled intervals of R', () => {
    const f = equalityF(
      means.estimates,
      means.covariance.map((row) => row.map((value) => value * fit.dispersion!)),
    )!;
    expect(f.f / published.anova.F).toBeCloseTo(1, 9);
    expect(fit.dispersion! / published.anova.ms_error).toBeCloseTo(1, 9);
    expect(fUpperTail(f.f, f.df1, fit.residualDf) / published.anova.p).toBeCloseTo(1, 8);
    for (const { level, mean, lower_pooled } of published.means) {
      const i = levels.indexOf(level);
      expect((means.estimates[i]! + fit.offset) / mean).toBeCloseTo(1, 9);
      const half = tQuantile(0.975, fit.residualDf) * Math.sqrt(fit.dispersion! * means.covariance[i]![i]!);
      expect((means.estimates[i]! + fit.offset - half) / lower_pooled).toBeCloseTo(1, 9);
    }
  });
  it('has the letters of Tukey-Kramer', () => {
    const order = levels.map((_, i) => i).toSorted((a, b) => means.estimates[b]! - means.estimates[a]!);
    const critical = studentizedRangeQuantile(0.95, levels.length, fit.residualDf) / Math.SQRT2;
    const letters = letterDisplay(order.length, (a, b) => {
      const [i, j] = [order[a]!, order[b]!];
      const sed = Math.sqrt(fit.dispersion! * (means.covariance[i]![i]! + means.covariance[j]![j]!));
      return Math.abs(means.estimates[i]! - means.estimates[j]!) > critical * sed;
    });
    order.forEach((i, rank) => expect(letters[rank]).toBe(published.cld_tukey_005[levels[i]!]));
  });
});

describe('times to an event', () => {
  // Freireich et al. (1963), 6-MP (data from memory); S and Greenwood's se in Kaplan-Meier texts; median 23.
  it('remissions under 6-MP', () => {
    const data = '6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+'.split(' ');
    const steps = kaplanMeier(
      data.map((d) => Number.parseInt(d, 10)),
      data.map((d) => !d.endsWith('+')),
    );
    const at = steps.filter(({ events }) => events > 0);
    expect(at.map(({ survival }) => survival.toFixed(4))).toEqual([
      '0.8571',
      '0.8067',
      '0.7529',
      '0.6902',
      '0.6275',
      '0.5378',
      '0.4482',
    ]);
    expect(at.map(({ survival, hazardVariance }) => (survival * Math.sqrt(hazardVariance)).toFixed(4))).toEqual([
      '0.0764',
      '0.0869',
      '0.0963',
      '0.1068',
      '0.1141',
      '0.1282',
      '0.1346',
    ]);
    expect(survivalQuantile(steps, 0.5, 0.95).estimate).toBe(23);
  });
  // Bewick et al. (2004) Crit. Care 8:389, table 2.
  it('the worked table of Bewick', () => {
    const steps = kaplanMeier([1, 1, 4, 5, 6, 9, 9, 22], [true, true, true, true, false, true, false, true]);
    expect(steps.filter(({ events }) => events > 0).map(({ survival }) => survival.toFixed(3))).toEqual([
      '0.750',
      '0.625',
      '0.500',
      '0.333',
      '0.000',
    ]);
  });
});

describe('degree days', () => {
  // Worked from the definitions of McMaster & Wilhelm (1997); maize 86/50 °F checks of facts of the trade (90/72 -> 29, 68/41 -> 9, from memory).
  const base10 = (method: 1 | 2, capC: number | null) => ({ baseC: 10, capC, method });
  it.each([
    [28, 16, 12, 12, 12],
    [35, 20, 17.5, 17.5, 15],
    [18, 6, 2, 4, 4],
    [14, 4, 0, 2, 2],
    [9, 2, 0, 0, 0],
    [33, 8, 10.5, 11.5, 10],
  ])('of a day of %s/%s °C: methods 1 and 2, and 2 with cap 30', (tmax, tmin, one, two, capped) => {
    expect(degreeDaysOf(tmin, tmax, base10(1, null))).toBeCloseTo(one, 12);
    expect(degreeDaysOf(tmin, tmax, base10(2, null))).toBeCloseTo(two, 12);
    expect(degreeDaysOf(tmin, tmax, base10(2, 30))).toBeCloseTo(capped, 12);
  });
  it('of maize in degrees Fahrenheit', () => {
    const maize = { baseC: 50, capC: 86, method: 2 } as const;
    expect(degreeDaysOf(72, 90, maize)).toBe(29);
    expect(degreeDaysOf(41, 68, maize)).toBe(9);
  });
});

// Mendel (1866) counts against 3:1; chi-square from the definition, p by R pchisq (facts of the trade 5.3).
describe('chi-square', () => {
  it('of Mendel’s round and wrinkled peas', () => {
    const [a, b] = [5474, 1850];
    const [ea, eb] = [0.75 * (a + b), 0.25 * (a + b)];
    const chi = (a - ea) ** 2 / ea + (b - eb) ** 2 / eb;
    expect(chi).toBeCloseTo(0.2629, 4);
    expect(chiSquareUpperTail(chi, 1)).toBeCloseTo(0.608, 3);
  });
});
