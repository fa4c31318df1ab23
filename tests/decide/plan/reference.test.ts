import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { degreeDaysOf } from '../../../src/analyse/degreeDays.ts';
import { clumpVariance } from '../../../src/decide/plan/clumps.ts';
import { frostAfterDay, frostRisk, safeDay } from '../../../src/decide/plan/frost.ts';
import { plantsOfEach, blocksOf } from '../../../src/decide/plan/plants.ts';
import type { Wanted } from '../../../src/decide/plan/plants.ts';
import { ripeAhead, warmthReached } from '../../../src/decide/plan/ripening.ts';
import { chanceOfPlants, seedsNeeded } from '../../../src/decide/plan/seeds.ts';
import { codesFor, servingOf, williamsSquare } from '../../../src/decide/plan/serving.ts';
import type { Verdict } from '../../../src/decide/verdict.ts';
import { atLeastOf } from '../../../src/numerics/betaBinomial.ts';
import { blockVariance } from '../../../src/numerics/blockVariance.ts';
import { randomStream } from '../../../src/numerics/random.ts';
import { isoDate } from '../../../src/terms/day.ts';
import type { Day } from '../../../src/terms/day.ts';
import { reference, referenceRows } from '../../reference/read.ts';
import type { Results } from '../../reference/read.ts';

/* Values from R beside each case: the scripts in tests/reference/plan say how, and from which source. */

describe('o01: how well a layout in blocks compares varieties (lm and eigenvalues in R)', () => {
  const rows = referenceRows('plan/o01_block_efficiency');
  const results = reference('plan/o01_block_efficiency');
  it.each(Object.keys(results))('%s', (design) => {
    const own = rows.filter((row) => row['design'] === design);
    const [varieties, blocks] = (['variety', 'block'] as const).map((key) => [...new Set(own.map((row) => row[key]))]);
    const counts = varieties!.map((v) =>
      Float64Array.from(blocks!, (b) => own.filter((row) => row['variety'] === v && row['block'] === b).length),
    );
    const found = blockVariance(counts)!;
    expect(found.average).toBeCloseTo(results[design].average_variance, 9);
    expect(found.without).toBeCloseTo(results[design].without_blocks, 9);
    expect(found.without / found.average).toBeCloseTo(results[design].efficiency, 9);
    expect(found.least).toBeCloseTo(results[design].smallest_pair, 9);
    expect(found.most).toBeCloseTo(results[design].largest_pair, 9);
  });
  it('a layout that does not join its varieties is told', () => {
    expect(blockVariance([Float64Array.of(1, 0), Float64Array.of(1, 0), Float64Array.of(0, 2)])).toBeNull();
  });
});

describe('o02: plants of each variety (the rule in R, exact)', () => {
  const rows = referenceRows('plan/o02_plants');
  const results = reference('plan/o02_plants');
  const number = (text: string | undefined): number | null => (text === undefined || text === '' ? null : Number(text));
  it.each(referenceRows('plan/o02_plants_settings'))('$case', (asked) => {
    const varieties = rows
      .filter((row) => row['case'] === asked['case'])
      .map((row): Wanted => ({
        variety: row['variety']!,
        kind: row['kind'] as Wanted['kind'],
        share: number(row['share']),
        verdict: row['verdict'] === '' ? null : (row['verdict'] as Verdict),
        isCheck: row['check'] === 'yes',
        plants: number(row['plants']),
        atLeast: number(row['at_least']),
        atMost: number(row['at_most']),
      }));
    const found = plantsOfEach({
      places: Number(asked['places']),
      spots: Number(asked['spots']),
      newcomers: number(asked['newcomers']),
      newcomerPlants: 1,
      isEqual: asked['plants'] === 'equal',
      bar: asked['bar'] as 'newcomer' | 'check',
      varieties,
    });
    const own = results[asked['case']!];
    if (!own.possible) {
      expect(found.short).toBe(own.places_short);
      return;
    }
    expect(Object.fromEntries(varieties.map(({ variety }, i) => [variety, found.plants[i]]))).toEqual(own.plants);
    expect(found.free).toBe(own.places_left_free);
    expect(found.cut).toEqual(own.left_out_of_list);
    const total = found.plants.reduce((sum, n) => sum + n, 0);
    expect(blocksOf(total, found.plants.filter((n) => n > 0).length)).toBe(own.blocks);
  });
});

describe('o03: seeds to sow (exact sums in R)', () => {
  const rows: readonly Record<string, number | null>[] = reference('plan/o03_seeds');
  it.each(rows.filter((row) => row['of'] !== undefined))('$plants plants, $germinated of $of', (row) => {
    const counted = { germinated: row['germinated']!, of: row['of']! };
    const found = seedsNeeded(row['plants']!, counted);
    expect(found.spare).toBe(row['spare']);
    expect(found.seeds).toBe(row['seeds']);
    expect(found.chance).toBeCloseTo(row['chance']!, 9);
    if (row['at_hand'] !== null)
      expect(chanceOfPlants(row['plants']!, row['at_hand']!, counted)).toBeCloseTo(row['chance_at_hand']!, 9);
  });
  it.each(rows.filter((row) => row['rate'] !== undefined))('$plants plants at $rate (facts 2.1)', (row) => {
    const chance = (seeds: number): number => atLeastOf(row['plants']!, seeds, row['rate']!, 0);
    expect(chance(row['seeds']!)).toBeCloseTo(row['chance']!, 9);
    expect(chance(row['seeds']!)).toBeGreaterThanOrEqual(0.95);
    expect(chance(row['seeds']! - 1)).toBeLessThan(0.95);
  });
});

/** Days of a year of 365 days. */
const ofYear = (text: string): number => {
  const [month, date] = text.split('-').slice(-2).map(Number);
  return (Date.UTC(2023, month! - 1, date) - Date.UTC(2022, 11, 31)) / 864e5;
};

describe('o04: last frost (R)', () => {
  const rows = referenceRows('plan/o04_frost');
  const results = reference('plan/o04_frost');
  it.each(Object.keys(results))('%s', (name) => {
    const own = rows.filter((row) => row['case'] === name);
    const days = own.flatMap((row) => (row['last_frost'] ? [ofYear(row['last_frost'])] : []));
    const [first] = own;
    const stated = first!['stated']
      ? { day: ofYear(first!['stated']), laterIn: Number(first!['stated_chance']) }
      : null;
    const found = frostRisk(days, stated);
    const expected = results[name];
    if (expected === null) {
      expect(found).toBeNull();
      return;
    }
    expect(found!.springs).toBe(expected.springs);
    expect(found!.middle).toBeCloseTo(expected.middle, 9);
    expect(found!.scale).toBeCloseTo(expected.scale, 9);
    expect(found!.df).toBe(expected.df);
    expect(safeDay(found!, expected.risk)).toBe(ofYear(expected.day));
    if (expected.planted_out !== null)
      expect(frostAfterDay(found!, ofYear(expected.planted_out))).toBeCloseTo(expected.risk_then, 9);
  });
});

describe('o05: days to ripe fruit set against the season (R)', () => {
  const day = (text: string): Day => (Date.parse(`${text}T00:00Z`) / 864e5) as Day;
  const weather = new Map(
    referenceRows('plan/o05_ripening_weather').map((row) => [
      day(row['date']!),
      degreeDaysOf(Number(row['tmin_c']), Number(row['tmax_c']), { baseC: 10, capC: 30, method: 2 }),
    ]),
  );
  const results: readonly Record<string, Results>[] = reference('plan/o05_ripening');
  it.each(referenceRows('plan/o05_ripening'))('$variety', (row) => {
    const own = results.find(({ variety }) => variety === row['variety'])!;
    const [estimate, low, high] = ['estimate', 'low', 'high'].map((key) => Number(row[key]));
    const [out, by] = [day(row['plant_out']!), day(row['by']!)];
    const found = ripeAhead({ estimate: estimate!, low: low!, high: high! }, 0.95, out, by);
    expect(isoDate(found.expected)).toBe(own['expected']);
    expect(found.sdLog).toBeCloseTo(own['sd_log'], 9);
    expect(found.chance).toBeCloseTo(own['chance_by'], 9);
    expect(isoDate(found.latest)).toBe(own['plant_out_at_latest']);
    if (!row['degree_days']) return;
    for (const [year, expected] of Object.entries<string>(own['in_the_warmth_of'])) {
      const from = day(`${year}-${row['plant_out']!.slice(5)}`);
      const reached = warmthReached(
        from,
        Number(row['degree_days']),
        (at) => weather.get(at) ?? null,
        day(`${year}-12-31`),
      );
      expect(reached === null ? 'not reached' : isoDate(reached)).toBe(expected);
    }
  });
});

describe('o06: serving orders (counts and designs in R)', () => {
  it.each(
    Object.entries<Results>(
      JSON.parse(readFileSync(new URL('../../reference/plan/o06_serving.json', import.meta.url), 'utf8')).squares,
    ),
  )('a square of %s', (n, own) => {
    const square = williamsSquare(Number(n));
    expect(square.length).toBe(own.rows);
    expect(square[0]!.map((one) => one + 1)).toEqual(own.first_row);
    const followers = new Map<string, number>();
    for (const row of square)
      row.forEach((one, i) => {
        if (i > 0) followers.set(`${row[i - 1]} ${one}`, (followers.get(`${row[i - 1]} ${one}`) ?? 0) + 1);
      });
    expect([...new Set(followers.values())]).toEqual([own.times_straight_after_each_other[0]]);
    expect(followers.size).toBe(Number(n) * (Number(n) - 1));
    for (let i = 0; i < Number(n); i++) expect(new Set(square.map((row) => row[i])).size).toBe(Number(n));
  });
  it.each(
    Object.entries<Results>(
      JSON.parse(readFileSync(new URL('../../reference/plan/o06_serving.json', import.meta.url), 'utf8')).designs,
    ),
  )('%s: at most 2 % worse than the best found', (name, own) => {
    const varieties = Array.from({ length: own.varieties }, (_, i) => `v${String(i + 1).padStart(2, '0')}`);
    const served = servingOf(varieties, Array(own.tasters).fill(own.samples_each), randomStream(name));
    const counts = varieties.map((v) => Float64Array.from(served, (order) => order.filter((one) => one === v).length));
    expect(blockVariance(counts)!.average).toBeLessThanOrEqual(1.02 * own.average_variance);
    expect(served.every((order) => order.length === own.samples_each)).toBe(true);
  });
  it('codes have three different digits and differ in two', () => {
    const codes = codesFor(40, randomStream('codes'));
    expect(codes).toHaveLength(40);
    for (const code of codes) expect(code).toMatch(/^[1-9]\d\d$/);
    for (const [i, a] of codes.entries())
      for (const b of codes.slice(0, i)) expect([...a].filter((digit, k) => digit !== b[k]).length).toBeGreaterThan(1);
  });
});

describe('o07: plants side by side and in clumps (R)', () => {
  const rows: readonly Record<'plants' | 'clumps' | 'rho' | 'variance' | 'worth_plants_apart', number>[] =
    reference('plan/o07_clumps');
  it.each(rows)(
    '$plants plants in $clumps clumps at $rho',
    ({ plants, clumps, rho, variance, worth_plants_apart: worth }) => {
      expect(clumpVariance(plants, clumps, rho)).toBeCloseTo(variance, 12);
      expect(1 / clumpVariance(plants, clumps, rho)).toBeCloseTo(worth, 12);
    },
  );
});
