import { describe, expect, it } from 'vitest';
import { plantsOfEach, blocksOf } from '../../../src/decide/plan/plants.ts';
import type { Wanted } from '../../../src/decide/plan/plants.ts';
import type { Verdict } from '../../../src/decide/verdict.ts';
import { blockVariance } from '../../../src/numerics/blockVariance.ts';
import { reference, referenceRows } from '../../reference/read.ts';

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
      .map(
        (row): Wanted => ({
          variety: row['variety']!,
          kind: row['kind'] as Wanted['kind'],
          share: number(row['share']),
          verdict: row['verdict'] === '' ? null : (row['verdict'] as Verdict),
          isCheck: row['check'] === 'yes',
          plants: number(row['plants']),
          atLeast: number(row['at_least']),
          atMost: number(row['at_most']),
        }),
      );
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
