import { answersTo, plantModel, plantModels, ratingModel, ripeningModel } from '../../src/analyse/traitsSeen.ts';
import { describe, expect, it } from 'vitest';
import { detectableDifference } from '../../src/analyse/detectable.ts';
import type { ClassComparisons } from '../../src/analyse/comparisons.ts';
import { measureUnits } from '../../src/analyse/measures.ts';
import type { PlantModel } from '../../src/analyse/plantTypes.ts';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import type { Unit } from '../../src/analyse/units.ts';
import { reference } from '../reference/read.ts';
import type { Results } from '../reference/read.ts';
import { folderOf, READINGS } from '../reference/seasonFolder.ts';
import { check, comparedIn, seenIn } from '../sites/folder.ts';

// k04: a whole season of an invented garden, worked out again in R (glm, lm, survreg, survfit, mvtnorm) from the same
// CSV tables by tests/reference/k04_season.R. R's ptukey and qmvt are good to about 1e-5, the rest to rounding.
const expected = reference('k04_season');
const near = (value: number | null | undefined, wanted: number, relative = 1e-7): void => {
  expect(typeof value).toBe('number');
  expect(Math.abs(value! - wanted)).toBeLessThanOrEqual(relative * Math.max(1e-6, Math.abs(wanted)));
};
const alike = (values: readonly (number | null | undefined)[], wanted: readonly number[], relative = 1e-7): void => {
  expect(values).toHaveLength(wanted.length);
  values.forEach((value, i) => near(value, wanted[i]!, relative));
};
const list = <T>(value: T | readonly T[]): readonly T[] => (Array.isArray(value) ? (value as T[]) : [value as T]);

function compareModel(model: PlantModel, wanted: Results, isRatio: boolean): void {
  expect(model.residualDf).toBe(wanted.df);
  near(model.dispersion, wanted.dispersion);
  if (wanted.cv === null) expect(model.cvPercent).toBeNull();
  else near(model.cvPercent, wanted.cv);
  expect([...model.classes].map(({ classId }) => classId)).toEqual(Object.keys(wanted.classes));
  for (const [classId, own] of Object.entries<Results>(wanted.classes)) {
    const estimates = own.varieties.map((id: string) => model.estimates.get(id)!);
    expect(estimates.map((one: { n: number }) => one.n)).toEqual(own.n);
    for (const limit of ['estimate', 'low', 'high'] as const)
      alike(
        estimates.map((one: Record<string, number>) => one[limit]),
        own[limit],
        isRatio ? 1e-7 : 1e-9,
      );
    expect(estimates.map((one: { reason: unknown }) => one.reason)).toEqual(own.varieties.map(() => null));
    const means = model.classes.find((one) => one.classId === classId)!;
    expect(means.varieties).toEqual(own.varieties);
    alike(means.estimates, own.working);
    alike(
      means.covariance.map((row, i) => Math.sqrt(row[i]!)),
      own.se,
    );
    const f = model.f.get(classId)!;
    near(f.value, own.f, 1e-6);
    near(f.p, own.p, 1e-5);
    expect([f.df1, f.df2]).toEqual([own.df1, wanted.df]);
    if (own.lsd === null) expect(model.lsd.get(classId)).toBeNull();
    else near(model.lsd.get(classId), own.lsd);
  }
}

function compareContrasts(own: ClassComparisons, wanted: Results): void {
  expect(own.againstCheck!.checkVariety).toBe(wanted.check);
  const others = own.againstCheck!.varieties;
  expect(others.map(({ variety }) => variety)).toEqual(wanted.others);
  alike(
    others.map(({ estimate }) => estimate),
    list(wanted.against),
  );
  others.forEach(({ low, high, p }, i) => {
    const [wantedLow, wantedHigh] = [list<number>(wanted.against_low)[i]!, list<number>(wanted.against_high)[i]!];
    const width = wantedHigh - wantedLow;
    expect(Math.abs(low! - wantedLow)).toBeLessThan(1e-3 * width);
    expect(Math.abs(high! - wantedHigh)).toBeLessThan(1e-3 * width);
    expect(Math.abs(p - list<number>(wanted.against_p)[i]!)).toBeLessThan(2e-4);
  });
  for (const key of ['estimate', 'low', 'high', 'p'] as const)
    near(own.newAgainstReturning![key], wanted.fresh[key], 1e-6);
  const letters = wanted.varieties.map((id: string) => own.letters.get(id)!);
  wanted.varieties.forEach((a: string, i: number) =>
    wanted.varieties.slice(i + 1).forEach((b: string, j: number) => {
      const isSeparated = wanted.separated.some((pair: string[]) => pair.includes(a) && pair.includes(b));
      const shares = [...letters[i]].some((letter) => letters[i + 1 + j].includes(letter));
      expect(`${a} ${b} ${shares}`).toBe(`${a} ${b} ${!isSeparated}`);
    }),
  );
  const best = wanted.varieties[wanted.estimate.indexOf(Math.max(...wanted.estimate))];
  expect(own.letters.get(best)).toContain('a');
}

function unitsOf(seen: SeasonSeen, key: string, classId: string): readonly Unit[] {
  const classOf = (id: string): string => seen.varieties.find(({ variety }) => variety.id === id)!.variety.classId;
  const measured = measureUnits(seen.season, 'length', classOf);
  const of = (id: string): number | null => {
    const own = seen.yields.get(id)!;
    return key === 'yield' ? own.grams : key === 'fruits' ? own.fruits : own.earlyGrams;
  };
  const picked = seen.season.yieldUnits
    .filter(({ id, cause }) => cause !== 'accident' && seen.yields.has(id))
    .map((planting): Unit => ({
      planting,
      classId: classOf(planting.variety),
      plants: planting.plants,
      y: of(planting.id)! / planting.plants,
    }));
  return (key === 'length' ? measured : picked).filter((unit) => unit.classId === classId);
}

// Everything is worked out within each test, so that mutation testing knows which test rests on what.
describe.each(Object.entries(READINGS))('a whole season against R, read as %s', (name, reading) => {
  const folder = folderOf(reading);
  const wanted = expected.readings[name];
  it('is read without an error, and every model is there', () => {
    const seen = seenIn(folder);
    expect(check(folder).trial).not.toBeNull();
    expect(plantModels(seen).map(([key]) => key)).toEqual(['yield', 'fruits', 'early_yield', 'length']);
  });
  it.each(['yield', 'fruits', 'early_yield', 'length'])('%s: estimates, spread, F, LSD', (key) => {
    const seen = seenIn(folder);
    const model = plantModel(seen, key)!;
    const isRatio = reading.scale === 'ratio' && key !== 'length';
    const family = !isRatio ? 'gaussian' : key === 'fruits' ? 'poisson' : 'gamma';
    // A planting of each class gave nothing, so that there are no blocks on the ratio scale, but for `whole`.
    const factor =
      isRatio && (key === 'early_yield' || name !== 'whole')
        ? 'none'
        : reading.without.includes('block')
          ? reading.without.includes('stands_in')
            ? 'none'
            : 'stands-in'
          : 'block';
    expect([model.family, model.factor]).toEqual([family, factor]);
    expect(model.withoutBlocks.size).toBe(name === 'blocks' && isRatio && key !== 'early_yield' ? 2 : 0);
    expect([...model.layouts.values()]).toEqual([reading.layout, reading.layout]);
    compareModel(model, wanted[key], isRatio);
    if (family === 'poisson') near(model.counts!.k, wanted[key].k);
    else expect(model.counts).toBeNull();
  });
  it.each(['yield', 'fruits', 'early_yield', 'length'])('%s: check variety, new and returning, letters', (key) => {
    const compared = comparedIn(folder);
    for (const [classId, own] of Object.entries<Results>(wanted[key].classes))
      compareContrasts(compared.get(key)!.get(classId)!, own);
  });
  it.each(['yield', 'fruits', 'early_yield', 'length'])('%s: the difference that could have been seen', (key) => {
    const seen = seenIn(folder);
    const model = plantModel(seen, key)!;
    for (const [classId, own] of Object.entries<Results>(wanted[key].classes)) {
      const used = unitsOf(seen, key, classId).filter(({ planting }) => own.varieties.includes(planting.variety));
      const found = detectableDifference(model, used, 0.95, 0.2)!;
      expect(found.plantings).toBe(own.median_plantings);
      near(found.difference, own.detectable, 1e-6);
    }
  });
  it('first ripe fruit: estimates and F', () => {
    const seen = seenIn(folder);
    const compared = comparedIn(folder);
    const model = ripeningModel(seen)!;
    const own = wanted.first_ripe;
    // Ripening has no blocks, and is worked out under the other readings.
    if (own === null) return;
    expect(model.residualDf).toBe(own.df);
    near(model.dispersion, own.dispersion, 1e-6);
    const estimates = own.varieties.map((id: string) => model.estimates.get(id)!);
    expect(estimates.map((one: { n: number }) => one.n)).toEqual(own.n);
    for (const limit of ['estimate', 'low', 'high'] as const)
      alike(
        estimates.map((one: Record<string, number>) => one[limit]),
        own[limit],
        1e-6,
      );
    for (const [classId, f] of Object.entries<Results>(own.f)) {
      const found = model.f.get(classId)!;
      near(found.value, f.value, 1e-6);
      near(found.p, f.p, 1e-5);
      expect([found.df1, found.df2]).toEqual([f.df1, own.df]);
    }
    expect(compared.get('first_ripe')!.get('sweet')!.againstCheck!.checkVariety).toBe('amber');
  });
});

describe('the rest of the season against R', () => {
  const folder = folderOf(READINGS['blocks']!);
  it('adds every planting up', () => {
    const seen = seenIn(folder);
    for (const [id, own] of Object.entries<Results>(expected.plantings)) {
      const { grams, fruits, earlyGrams, ripeGrams, greenGrams, cullFruits, cullGrams, fruitsWeightAssumed } =
        seen.yields.get(id)!;
      alike([grams, earlyGrams, ripeGrams, greenGrams], [own.grams, own.early, own.ripe, own.green], 1e-12);
      expect([fruits, cullFruits, cullGrams, fruitsWeightAssumed]).toEqual([
        own.fruits,
        own.cull_fruits,
        own.cull_grams,
        own.unweighed,
      ]);
    }
    expect(seen.yields.get('p9')).toMatchObject({ grams: 0, fruits: 0 });
    expect(seen.yields.get('p16')).toMatchObject({ grams: 0, fruits: 0 });
  });
  it('draws the ripening curves in days and in degree days, by both methods', () => {
    const seen = seenIn(folder);
    const other = seenIn(folderOf({ ...READINGS['blocks']!, method: 1 }));
    for (const [which, curves] of [
      ['curve', seen.varieties.map(({ variety, ripening }) => [variety.id, ripening!] as const)],
      ['warm2', seen.varieties.map(({ variety, ripeningDegreeDays }) => [variety.id, ripeningDegreeDays!] as const)],
      ['warm1', other.varieties.map(({ variety, ripeningDegreeDays }) => [variety.id, ripeningDegreeDays!] as const)],
    ] as const) {
      for (const [id, { ripe, unripe, median }] of curves) {
        const own = expected[which][id];
        if (which === 'curve') expect([ripe, unripe]).toEqual([own.ripe, own.unripe]);
        for (const [limit, value] of [
          ['estimate', own.median],
          ['low', own.low],
          ['high', own.high],
        ] as const) {
          if (value === null) expect(median[limit]).toBeNull();
          else near(median[limit], value, 1e-9);
        }
        expect(median.n).toBe(ripe + unripe);
      }
    }
  });
  it.each(['flavour', 'crisp'])('%s: tasters set aside, concordance where the table is full', (trait) => {
    const seen = seenIn(folder);
    const model = ratingModel(seen, trait)!;
    const own = expected[trait];
    expect([model.method, model.tasters, model.residualDf]).toEqual(['additive', own.tasters, own.df]);
    near(model.dispersion, own.dispersion, 1e-9);
    const estimates = own.varieties.map((id: string) => model.estimates.get(id)!);
    expect(estimates.map((one: { n: number }) => one.n)).toEqual(own.n);
    expect(estimates.map((one: { tasters: number }) => one.tasters)).toEqual(own.n);
    for (const limit of ['estimate', 'low', 'high'] as const)
      alike(
        estimates.map((one: Record<string, number>) => one[limit]),
        own[limit],
        1e-9,
      );
    own.covariance.forEach((row: number[], i: number) => alike(model.means!.covariance[i]!, row, 1e-8));
    if (own.w === null) expect(model.kendallW).toBeNull();
    else near(model.kendallW, own.w, 1e-12);
  });
  it('counts shares with Wilson intervals', () => {
    const seen = seenIn(folder);
    for (const { variety, shares } of seen.varieties) {
      const own = expected.shares[variety.id];
      for (const key of ['cropped', 'ripe_by_end'] as const) {
        const { k, n, low, high } = shares[key]!;
        expect([k, n]).toEqual([own[key].k, own[key].n]);
        expect(low).toBeCloseTo(own[key].low, 12);
        expect(high).toBeCloseTo(own[key].high, 12);
      }
      expect(answersTo(seen, 'again')!.get(variety.id)).toMatchObject({ k: own.again.k, n: own.again.n });
      near(answersTo(seen, 'again')!.get(variety.id)!.high, own.again.high, 1e-9);
    }
    const { shares } = seen.varieties.find(({ variety }) => variety.id === 'gorse')!;
    expect([shares.hot!.k, shares.hot!.n, shares.off_type!.k, shares.off_type!.n]).toEqual([3, 8, 1, 5]);
    expect(seen.varieties[0]!.shares.germinated).toMatchObject({ k: 13, n: 16 });
    expect(seen.varieties[1]!.shares.germinated).toBeUndefined();
    expect(seen.varieties[1]!.shares.hot).toBeUndefined();
  });
  it('counts what was set out and what left the analysis, and who is new', () => {
    const seen = seenIn(folder);
    const brief = seen.varieties.map((own) => [
      own.variety.id,
      own.status,
      own.plantsSetOut,
      own.plantings,
      own.plantingsExcluded,
    ]);
    expect(brief).toEqual([
      ['amber', 'returning', 4, 3, 0],
      ['brook', 'new', 5, 3, 1],
      ['cinder', 'returning', 3, 2, 0],
      ['dell', 'new', 5, 3, 0],
      ['ember', 'returning', 4, 3, 0],
      ['flint', 'new', 5, 3, 0],
      ['gorse', 'returning', 3, 2, 0],
    ]);
  });
});
