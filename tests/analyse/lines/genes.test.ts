import { describe, expect, it } from 'vitest';
import {
  mixedAtLast,
  mixedGivenNone,
  mixedShare,
  effectiveMothers,
  familySpread,
  someCrossed,
} from '../../../src/analyse/lines/generations.ts';
import { breedsTrue, genePosterior } from '../../../src/analyse/lines/geneModels.ts';
import type { GeneFamily, GenePedigree } from '../../../src/analyse/lines/geneModels.ts';
import { plantsForChance, wantedForecast } from '../../../src/analyse/lines/nextPlants.ts';
import { offTypesAllowed, offTypesAtMost } from '../../../src/analyse/lines/offTypes.ts';
import { ratiosNotRuledOut } from '../../../src/analyse/lines/ratios.ts';
import { multinomialP } from '../../../src/numerics/multinomial.ts';
import { binomialTails } from '../../../src/numerics/distributions.ts';
import { reference } from '../../reference/read.ts';

/* Values from R beside each case (o30 to o34): the scripts in tests/reference say how, and from which source. */
const o30 = reference('o30_small_segregation');
const o31 = reference('o31_mendel_f3');
const o32 = reference('o32_generations_offtypes');
const o34 = reference('o34_gene_pedigree');

describe('ratios of a small family (o30, exact enumeration in R)', () => {
  it.each(o30.families as { case: string; counts: number[]; exact_p: Record<string, number> }[])(
    'case $case',
    ({ counts, exact_p }) => {
      for (const [name, p] of Object.entries(exact_p))
        expect(multinomialP(counts, name.split(':').map(Number)), name).toBeCloseTo(p, 9);
    },
  );
  it('names those that stay, in the order of the states', () => {
    for (const { counts, not_ruled_out: named } of o30.families.slice(0, 6))
      expect(
        ratiosNotRuledOut(counts)
          .map(({ name }) => name)
          .toSorted(),
      ).toEqual([...named].toSorted());
  });
  it('uses chi-square for large families, and says nothing where it cannot', () => {
    expect(multinomialP([300, 100, 50, 12], [9, 3, 3, 1])).toBeLessThan(1);
    expect(multinomialP([900, 3, 1, 1], [997, 1, 1, 1])).toBeNull();
  });
});

describe('generations (o31, o32: Mendel 1866 as Fisher 1936 counted, Falconer & Mackay 1996)', () => {
  it('mixed share, with and without foreign pollen', () => {
    const { heterozygous: own } = o32;
    own.generation.forEach((g: number, i: number) => {
      expect(mixedShare(g)).toBeCloseTo(own.selfed[i], 12);
      expect(mixedShare(g, 0.42)).toBeCloseTo(own['foreign_pollen_42_percent'][i], 12);
    });
    expect(mixedAtLast(0.012)).toBeCloseTo(own.limit['1.2'], 12);
    const spread: { generation: number[]; variance: number[] } = o32.spread_in_family_of_F2;
    expect(spread.generation.map(familySpread)).toEqual(spread.variance);
  });
  it('a dominant-looking plant none of whose offspring shows the other state', () => {
    for (const { generation, offspring, probability } of o31.heterozygous_given_none_seen)
      expect(mixedGivenNone(generation, offspring)).toBeCloseTo(probability, 9);
  });
  it('off-types, crossed seeds and mothers', () => {
    for (const { k, n, upper } of o32.upper_limit_one_sided_95) expect(offTypesAtMost(k, n)).toBeCloseTo(upper, 9);
    for (const { n, rate, share } of o32.passes)
      expect(binomialTails(offTypesAllowed(n), n, rate)[0]).toBeCloseTo(share, 9);
    expect([5, 6, 20, 35, 36, 82, 83].map(offTypesAllowed)).toEqual([0, 1, 1, 1, 2, 2, 3]);
    for (const { rate, seeds, at_least_one } of o32.crossed_in_packet)
      expect(someCrossed(rate, seeds)).toBeCloseTo(at_least_one, 9);
    for (const { shares, number } of o32.effective_mothers)
      expect(effectiveMothers(shares.split(' ').map(Number))).toBeCloseTo(number, 9);
  });
});

const plants = (states: readonly number[], families: Readonly<Record<number, GeneFamily>> = {}): GeneFamily => ({
  counts: states.length > 0 ? Array(Math.max(2, ...states)).fill(0) : [],
  plants: states.map((state, i) => ({ state: state - 1, family: families[i] ?? null })),
});
const counted = (counts: readonly number[]): GeneFamily => ({ counts, plants: [] });
const pedigree = (f2: GeneFamily, more: Partial<GenePedigree> = {}): GenePedigree => ({
  states: 2,
  f2,
  bulks: [],
  f1: null,
  parents: null,
  calledWrong: 0.02,
  ...more,
});
const EIGHT = [1, 1, 1, 2, 1, 1, 2, 1];
const FAMILIES = plants(EIGHT, { 0: counted([8, 0]), 2: counted([5, 3]) });
const CASES: readonly GenePedigree[] = [
  pedigree(plants(EIGHT)),
  pedigree(plants(EIGHT), { f1: 0 }),
  pedigree(plants(EIGHT), { f1: 0, parents: [0, 1] }),
  pedigree(counted([11, 9]), { f1: 0, parents: [1, 1] }),
  pedigree(FAMILIES, { f1: 0 }),
  pedigree(plants(EIGHT, { 0: plants([1, 1, 2, 1], { 3: counted([7, 0]) }) }), { f1: 0 }),
  pedigree(counted([3, 7, 2]), { states: 3, f1: 1 }),
  pedigree(counted([19, 6, 9]), { states: 3, f1: 0 }),
  pedigree(counted([8, 3, 1, 0]), { states: 4, f1: 0 }),
  pedigree(counted([22, 8]), { f1: 0 }),
];

/** What o34 leaves out, from the same R functions: name, path and state of the plant that is asked about. */
const TRUE: Readonly<Record<string, number>> = {
  [`${o34[0].name} 1 1`]: 0.369093969283,
  [`${o34[0].name} 1 2`]: 0.006566494106,
  [`${o34[0].name} 4 1`]: 0.024630817664,
  [`${o34[1].name} 1 2`]: 0.006499821247,
  [`${o34[2].name} 1 2`]: 0.006607726329,
  [`${o34[4].name} 1 1`]: 0.820760078958,
  [`${o34[4].name} 3 1`]: 0.001166280022,
  [`${o34[4].name} 2 2`]: 0.006397037046,
  [`${o34[5].name} 1,4 1`]: 0.823228715491,
  [`${o34[5].name} 1,1 2`]: 0.00517896874,
};

describe('gene models over a selfing pedigree (o34, peeling in R)', () => {
  it.each(CASES.map((own, i) => [o34[i].name as string, own, o34[i]] as const))('%s', (name, own, expected) => {
    const posterior = genePosterior(own);
    expected.models.forEach((row: { prior: number; log_likelihood: number; share: number }, i: number) => {
      const model = posterior.models[i] ?? posterior.other;
      expect(model.prior).toBeCloseTo(row.prior, 10);
      expect(model.logLikelihood).toBeCloseTo(row.log_likelihood, 8);
      expect(model.share).toBeCloseTo(row.share, 8);
    });
    for (const ask of expected.plants ?? []) {
      const path = [ask.path].flat().map((at: number) => at - 1);
      const good = [ask.state - 1];
      expect(breedsTrue(own, posterior, path, good)).toBeCloseTo(TRUE[`${name} ${ask.path} ${ask.state}`]!, 8);
      const forecast = wantedForecast([{ pedigree: own, posterior, good }], [{ paths: [path], plants: 0 }]);
      expect(forecast.shares[0]).toBeCloseTo(ask.share_next, 8);
      // R has the closed form of what no model tells, this 200 points.
      expect(Math.abs(forecast.chance([ask.next_plants]) - ask.at_least_one)).toBeLessThan(1e-4);
    }
  });

  it('several traits from one mother, one trait from several (o34)', () => {
    const first = CASES[4]!;
    const second = pedigree(plants([1, 2, 2, 3, 1, 2, 2, 1]), { states: 3, f1: 1 });
    const traits = [first, second].map((own) => ({ pedigree: own, posterior: genePosterior(own), good: [0] }));
    for (const [at, own] of [
      [0, o34[10].from_plant_1],
      [1, o34[10].from_plant_2],
    ] as const) {
      const forecast = wantedForecast(traits, [{ paths: [[at], [at]], plants: 0 }]);
      expect(Math.abs(forecast.shares[0]! - own.share)).toBeLessThan(1e-3);
      expect(Math.abs(forecast.chance([12]) - own.at_least_one)).toBeLessThan(1e-3);
    }
    const own = CASES[1]!;
    const green = [{ pedigree: own, posterior: genePosterior(own), good: [1] }];
    const split = (mothers: readonly number[], n: number): number =>
      wantedForecast(
        green,
        mothers.map((at) => ({ paths: [[at]], plants: n })),
      ).chance(mothers.map(() => n));
    expect(Math.abs(split([0], 12) - o34[11].one_mother)).toBeLessThan(1e-3);
    expect(Math.abs(split([0, 1], 6) - o34[11].two)).toBeLessThan(2e-3);
    expect(Math.abs(split([0, 1, 2, 4], 3) - o34[11].four)).toBeLessThan(3e-3);
  });

  it('an all-dark family raises that a plant breeds true, a green sister lowers it, an unscored plant changes nothing', () => {
    const share = (family: GeneFamily): number => {
      const own = pedigree(plants(EIGHT, { 0: family }), { f1: 0 });
      return breedsTrue(own, genePosterior(own), [0], [0]);
    };
    const [none, dark, mixed] = [share(counted([0, 0])), share(counted([8, 0])), share(counted([8, 1]))];
    expect(dark).toBeGreaterThan(none);
    expect(mixed).toBeLessThan(dark);
    expect(share({ counts: [8, 0], plants: [{ state: null, family: null }] })).toBeCloseTo(dark, 12);
  });

  it('the fewest plants for a chance', () => {
    const own = CASES[1]!;
    const forecast = wantedForecast(
      [{ pedigree: own, posterior: genePosterior(own), good: [1] }],
      [{ paths: [[3]], plants: 0 }],
    );
    const n = plantsForChance(forecast, 0.9)!;
    expect(forecast.chance([n])).toBeGreaterThanOrEqual(0.9);
    expect(forecast.chance([n - 1])).toBeLessThan(0.9);
  });
});
