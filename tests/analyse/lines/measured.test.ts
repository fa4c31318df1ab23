import { describe, expect, it } from 'vitest';
import { inheritedDraws, shareSummary, shareWeights, trulyBest } from '../../../src/analyse/lines/inherited.ts';
import { comesBack, responseOf } from '../../../src/analyse/lines/response.ts';
import { withoutBlocks } from '../../../src/analyse/lines/plantValues.ts';
import { added, spreadRatio, squaresOf } from '../../../src/analyse/lines/spread.ts';
import { daysToEmerge, frostAfter } from '../../../src/analyse/seed/lastFrost.ts';
import { germinationAt, seedsFor, viabilityOf } from '../../../src/analyse/seed/viability.ts';
import { sharesAgreeP } from '../../../src/numerics/multinomial.ts';
import { reference, referenceRows } from '../../reference/read.ts';

/* Values from R beside each case (o33, o35 to o40): the scripts in tests/reference say how, and from which source. */
const near = (got: number, expected: number, within: number): void =>
  expect(Math.abs(got - expected), `${got} beside ${expected}`).toBeLessThan(within);
const numbers = (rows: readonly Record<string, string>[], column: string): readonly number[] =>
  rows.map((row) => Number(row[column]));

describe('spread beside fixed varieties', () => {
  it('ears of maize (Emerson & East 1913, frequencies from memory; o33)', () => {
    const { ten_F2_four_F1: small } = reference('o33_emerson_east');
    const [line, fixed] = [squaresOf(small.F2), squaresOf(small.F1)];
    expect(line.ss).toBeCloseTo(small.ss_F2, 9);
    const found = spreadRatio(line, fixed, 0.95)!;
    expect(found.ratio).toBeCloseTo(small.f.F, 9);
    expect(found.low).toBeCloseTo(small.f.low, 8);
    expect(found.high).toBeCloseTo(small.f.high, 7);
    expect(found.p).toBeCloseTo(small.f.p, 9);
    for (const [name, prior, part] of [
      ['uniform_prior', 'open', 1],
      ['beta_1_2_prior', 'low', 1],
      ['as_if_an_F3_family_beta_1_2', 'low', 0.5],
    ] as const) {
      const own = shareSummary(shareWeights([{ line, fixed, part }], prior), part, 0.95);
      for (const key of ['mean', 'low', 'median', 'high'] as const) near(own[key], small[name][key], 2e-4);
    }
  });
});

describe('which plants to carry (o39, invented; 400,000 draws in R)', () => {
  const rows = referenceRows('o39_which_plants_plants');
  const checks = referenceRows('o39_which_plants_checks');
  it.each([
    ['yield_log', 'yield_g', Math.log, 'low'],
    ['length_raw', 'length_cm', (x: number) => x, 'open'],
  ] as const)('%s', (name, column, scale, prior) => {
    const expected = reference('o39_which_plants')[name];
    const values = numbers(rows, column).map(scale);
    const fixed = added(
      ['A', 'B', 'C'].map((own) =>
        squaresOf(
          numbers(
            checks.filter(({ variety }) => variety === own),
            column,
          ).map(scale),
        ),
      ),
    );
    expect(fixed.ss).toBeCloseTo(expected.ss_checks, 8);
    const weights = shareWeights([{ line: squaresOf(values), fixed, part: 1 }], prior);
    const { mean } = shareSummary(weights, 1, 0.95);
    near(mean, expected.share.mean, 1e-4);
    const centre = values.reduce((sum, own) => sum + own, 0) / values.length;
    values.forEach((own, i) => near(mean * (own - centre), expected.passed_on[i], 1e-4));
    const { deviations } = inheritedDraws(values, fixed, { weights, part: 1 }, 'o39', 100_000);
    const { best, amongBest } = trulyBest(deviations, 3);
    best.forEach((own, i) => near(own, expected.truly_best[i], 0.006));
    amongBest.forEach((own, i) => near(own, expected.truly_in_best_three[i], 0.006));
  });
});

describe('what a choice gave', () => {
  it('response beside the same check in both seasons (o40, invented)', () => {
    const expected = reference('o40_response');
    const rows = referenceRows('o40_response');
    const logs = (group: string): readonly number[] =>
      numbers(
        rows.filter((row) => row['group'] === group),
        'yield_g',
      ).map(Math.log);
    const own = responseOf(
      { line: logs('F2 2025'), check: logs('check 2025') },
      { line: logs('F3 2026 of the fifth plant'), check: logs('check 2026') },
      0.95,
    )!;
    expect(own.df).toBe(expected.df);
    expect(Math.exp(own.estimate)).toBeCloseTo(expected.response, 9);
    expect(Math.exp(own.low)).toBeCloseTo(expected.low, 8);
    expect(Math.exp(own.high)).toBeCloseTo(expected.high, 7);
  });
  it('Galton’s sweet peas: the slope of family means on mothers (o35), and nothing for five families', () => {
    const expected = reference('o35_galton_peas');
    const rows = referenceRows('o35_galton_peas');
    const columns = Object.keys(rows[0]!);
    const [x, y] = [numbers(rows, columns[0]!), numbers(rows, columns.find((own) => /mean/.test(own)) ?? columns[1]!)];
    const own = comesBack(x, y, 0.95)!;
    expect(own.slope).toBeCloseTo(expected.slope, 9);
    expect(own.low).toBeCloseTo(expected.low, 9);
    expect(own.high).toBeCloseTo(expected.high, 9);
    expect(comesBack(x.slice(0, 5), y.slice(0, 5), 0.95)).toBeNull();
  });
});

describe('seed', () => {
  const o36 = reference('o36_germination');
  const o37 = reference('o37_viability');
  interface Lot {
    readonly germinated: number | number[];
    readonly seeds: number | number[];
    readonly mean: number;
    readonly low: number;
    readonly high: number;
    readonly sow: readonly { readonly plants: number; readonly seeds: number }[];
  }
  it.each([...(o36.small as Lot[]), o36.crowder_O75_bean as Lot, o36.crowder_O73_cucumber as Lot])(
    'sown in the season of its test: $germinated of $seeds (o36, adaptive integrals in R)',
    (own) => {
      const [k, n] = [[own.germinated].flat(), [own.seeds].flat()];
      const lot = viabilityOf(
        k.map((germinated, i) => ({ age: 0, germinated, seeds: n[i]! })),
        'room',
        true,
      );
      const found = germinationAt(lot, 0, 0.95);
      near(found.mean, own.mean, 1e-6);
      near(found.low, own.low, 1e-6);
      near(found.high, own.high, 1e-6);
      for (const { plants, seeds } of own.sow) expect(seedsFor(lot, 0, plants, 0.9)).toBe(seeds);
    },
  );
  it('batches that agree, or do not (exact, o36)', () => {
    const p = o36.batches_agree_exact_p;
    expect(sharesAgreeP([9, 5], [10, 10])).toBeCloseTo(p['9,5 of 10,10'], 9);
    expect(sharesAgreeP([10, 3], [10, 10])).toBeCloseTo(p['10,3 of 10,10'], 9);
    expect(sharesAgreeP([11, 12, 10], [12, 12, 12])).toBeCloseTo(p['11,12,10 of 12,12,12'], 9);
  });
  it.each(o37.forecasts as { age: number | number[]; germinated: number | number[]; seeds: number | number[] }[])(
    'ages from $age years (o37, Ellis & Roberts 1980)',
    (own) => {
      const [age, k, n] = [[own.age].flat(), [own.germinated].flat(), [own.seeds].flat()];
      const lot = viabilityOf(
        age.map((at, i) => ({ age: at, germinated: k[i]!, seeds: n[i]! })),
        'room',
      );
      const last = Math.max(...age);
      const expected = own as unknown as Record<
        'next_year' | 'in_three_years',
        { mean: number; low: number; high: number }
      >;
      for (const [years, { mean, low, high }] of [
        [1, expected.next_year],
        [3, expected.in_three_years],
      ] as const) {
        const found = germinationAt(lot, last + years, 0.95);
        near(found.mean, mean, 1e-3);
        near(found.low, low, 5e-3);
        near(found.high, high, 5e-3);
      }
      near(
        seedsFor(lot, last + 1, 6, 0.9) ?? 0,
        (own as unknown as { sow_for_6_next_year: number }).sow_for_6_next_year,
        1.5,
      );
    },
  );
  it('more certainty never takes fewer seeds, older seed neither', () => {
    const lot = viabilityOf([{ age: 0, germinated: 8, seeds: 10 }], 'room');
    const at = (certainty: number, age: number): number => seedsFor(lot, age, 6, certainty)!;
    expect(at(0.95, 1)).toBeGreaterThanOrEqual(at(0.8, 1));
    expect(at(0.9, 3)).toBeGreaterThanOrEqual(at(0.9, 1));
  });
  it('last frost, and days to come up (o38)', () => {
    const { spring, three_years: three, pepper_days_to_emerge: emerge } = reference('o38_frost');
    const days = numbers(
      referenceRows('o38_frost'),
      Object.keys(referenceRows('o38_frost')[0]!).find((own) => /spring|last/.test(own))!,
    );
    expect(frostAfter(days, 0.5)).toBeCloseTo(spring.half, 9);
    expect(frostAfter(days, 0.1)).toBeCloseTo(spring.tenth, 9);
    expect(frostAfter(three.days, 0.25)).toBeCloseTo(three.quarter, 9);
    for (const { soil_c: soil, days: own } of emerge) expect(daysToEmerge(soil)).toBeCloseTo(own, 9);
    expect([daysToEmerge(14), daysToEmerge(36)]).toEqual([null, null]);
  });
});

describe('blocks of the fixed varieties and the line', () => {
  it('are taken out as lm(y ~ variety + block) does (R 4.2)', () => {
    const rows = [
      ['a1', 'a', '1', 10],
      ['a2', 'a', '2', 13],
      ['a3', 'a', '3', 11],
      ['b1', 'b', '1', 7],
      ['b2', 'b', '2', 9],
      ['l2', 'l', '2', 20],
      ['l3', 'l', '3', 16],
    ] as const;
    const block = new Map<string, string>(rows.map(([planting, , own]) => [planting, own]));
    const values = rows.map(([planting, variety, , value]) => ({ planting, variety, value }));
    const { adjusted, df } = withoutBlocks(values, (id) => block.get(id)!, false);
    expect(df).toBe(2);
    const ss = added(
      ['a', 'b', 'l'].map((own) =>
        squaresOf(values.filter(({ variety }) => variety === own).map(({ planting }) => adjusted.get(planting)!)),
      ),
    );
    // deviance(lm(y ~ v + b)) with these values
    expect(ss.ss).toBeCloseTo(1.6, 9);
  });
});
