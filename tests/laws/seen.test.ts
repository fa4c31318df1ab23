import { plantModel, ratingModel, ripeningModel, ripenings } from '../../src/analyse/traitsSeen.ts';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SeasonSeen } from '../../src/analyse/seen.ts';
import { comparedIn, seenIn } from '../sites/folder.ts';
import { folderOf, gardens } from './garden.ts';
import type { Garden } from './garden.ts';

const RUNS = { numRuns: 200, seed: 20260520, endOnFailure: true };

function law(title: string, holds: (garden: Garden) => void): void {
  it(title, () => fc.assert(fc.property(gardens, holds), RUNS));
}

const traits = ['yield', 'fruits', 'fruit_length', 'flavour'] as const;

function estimateOf(seen: SeasonSeen, trait: string, variety: string) {
  return (plantModel(seen, trait)?.estimates ?? ratingModel(seen, trait)?.estimates)?.get(variety);
}

function same(a: number | null | undefined, b: number | null | undefined, relative = 1e-9): void {
  if (a === null || a === undefined || b === null || b === undefined) expect(a ?? null).toBe(b ?? null);
  else expect(Math.abs(a - b)).toBeLessThanOrEqual(relative * Math.max(1e-9, Math.abs(a), Math.abs(b)));
}

function sameFigures(a: SeasonSeen, b: SeasonSeen, { rename = (id: string): string => id, which = traits } = {}): void {
  for (const { variety } of a.varieties) {
    for (const trait of which) {
      const [p, q] = [estimateOf(a, trait, variety.id), estimateOf(b, trait, rename(variety.id))];
      same(p?.estimate, q?.estimate);
      same(p?.low, q?.low, 1e-8);
      same(p?.high, q?.high, 1e-8);
    }
  }
}

describe('what was seen does not depend on', () => {
  law('the order of the rows', (garden) => {
    const turned = {
      ...garden,
      pickings: garden.pickings.toReversed(),
      scores: garden.scores.toReversed(),
      measures: garden.measures.toReversed(),
    };
    sameFigures(seenIn(folderOf(garden)), seenIn(folderOf(turned)));
  });
  law('the order of the rows of plantings, blocks and all', (garden) => {
    const folder = folderOf(garden, { blocks: true });
    const [head, ...rows] = folder['2026/plantings.csv']!.trim().split('\n');
    sameFigures(seenIn(folder), seenIn({ ...folder, '2026/plantings.csv': [head, ...rows.toReversed()].join('\n') }));
  });
  law('weighing in ounces or grams', (garden) => {
    sameFigures(seenIn(folderOf(garden)), seenIn(folderOf(garden, { ounces: true })));
  });
  law('measuring in inches or centimetres', (garden) => {
    sameFigures(seenIn(folderOf(garden)), seenIn(folderOf(garden, { inches: true })));
  });
  law('what the varieties are called', (garden) => {
    const names = ['zinnober', 'yarrow-hill', 'xanthe', 'wold', 'vane'];
    sameFigures(seenIn(folderOf(garden)), seenIn(folderOf(garden, { names })), {
      rename: (id) => names[Number(id.slice(1))]!,
    });
  });
  law('a picking being written in two rows', (garden) => {
    const [first, ...rest] = garden.pickings;
    const halves =
      first!.fruits > 1
        ? [
            { ...first!, fruits: 1, grams: first!.grams / 4 },
            { ...first!, fruits: first!.fruits - 1, grams: (3 * first!.grams) / 4 },
          ]
        : [first!];
    sameFigures(seenIn(folderOf(garden)), seenIn(folderOf({ ...garden, pickings: [...halves, ...rest] })));
  });
  law('a column that nobody asked for', (garden) => {
    const folder = folderOf(garden);
    const more = folder['2026/harvests.csv']!.replaceAll('\n', ',x\n').replace(/^date.*$/m, (head) =>
      head.replace(/,x$/, ',mood'),
    );
    sameFigures(seenIn(folder), seenIn({ ...folder, '2026/harvests.csv': more }));
  });
  law('semicolons and decimal commas', (garden) => {
    const folder = folderOf(garden);
    const other = folder['2026/measurements.csv']!.replaceAll(',', ';').replaceAll(/(\d)\.(\d)/g, '$1,$2');
    if (!/\d,\d/.test(other)) return;
    sameFigures(seenIn(folder), seenIn({ ...folder, '2026/measurements.csv': other }));
  });
});

describe('an estimate', () => {
  law('of yield without blocks is total over plants, exactly', (garden) => {
    const seen = seenIn(folderOf(garden));
    for (let v = 0; v < garden.varieties; v++) {
      const own = garden.plantings.flatMap((p, i) => (p.variety === v ? [i] : []));
      const grams = garden.pickings.filter((p) => own.includes(p.planting)).reduce((sum, p) => sum + p.grams, 0);
      const plants = own.reduce((sum, i) => sum + garden.plantings[i]!.plants, 0);
      same(estimateOf(seen, 'yield', `v${v}`)?.estimate, grams / plants, 1e-12);
    }
  });
  law('of yield does not change when plantings of a variety are recorded as one', (garden) => {
    const seen = seenIn(folderOf(garden));
    const merged = garden.plantings.map((p, i) => ({
      ...p,
      into: garden.plantings.findIndex((q) => q.variety === p.variety && q.block % 2 === p.block % 2),
      at: i,
    }));
    const keep = merged.filter(({ into, at }) => into === at);
    const plantings = keep.map(({ at, variety, block, start }) => ({
      variety,
      block,
      start,
      plants: merged.filter((m) => m.into === at).reduce((sum, m) => sum + m.plants, 0),
    }));
    const number = (planting: number): number => keep.findIndex(({ at }) => at === merged[planting]!.into);
    const other = {
      ...garden,
      plantings,
      pickings: garden.pickings.map((p) => ({ ...p, planting: number(p.planting) })),
      looks: [],
      measures: garden.measures.map((m) => ({ ...m, planting: number(m.planting) })),
    };
    const grouped = seenIn(folderOf(other));
    for (let v = 0; v < garden.varieties; v++)
      same(estimateOf(grouped, 'yield', `v${v}`)?.estimate, estimateOf(seen, 'yield', `v${v}`)?.estimate, 1e-10);
  });
  law('lies within its interval', (garden) => {
    const seen = seenIn(folderOf(garden, { blocks: true }));
    for (const { variety } of seen.varieties) {
      for (const trait of traits) {
        const own = estimateOf(seen, trait, variety.id);
        if (own?.low == null || own.high === null || own.estimate === null) continue;
        expect(own.low).toBeLessThanOrEqual(own.estimate);
        expect(own.high).toBeGreaterThanOrEqual(own.estimate);
      }
    }
  });
  law('has a wider interval at a higher level', (garden) => {
    const [narrow, wide] = [seenIn(folderOf(garden, { interval: 0.8 })), seenIn(folderOf(garden, { interval: 0.99 }))];
    for (const { variety } of narrow.varieties) {
      for (const trait of traits) {
        const [p, q] = [estimateOf(narrow, trait, variety.id)!, estimateOf(wide, trait, variety.id)!];
        same(p.estimate, q.estimate);
        if (p.low === null || q.low === null) continue;
        expect(q.low).toBeLessThanOrEqual(p.low + 1e-9);
        expect(q.high!).toBeGreaterThanOrEqual(p.high! - 1e-9);
      }
    }
  });
  law('of yield has no narrower interval where plants of a variety stand together', (garden) => {
    const [spread, together] = [
      seenIn(folderOf({ ...garden, layout: 'spread' })),
      seenIn(folderOf({ ...garden, layout: 'together' })),
    ];
    for (const { variety } of spread.varieties) {
      const [p, q] = [estimateOf(spread, 'yield', variety.id)!, estimateOf(together, 'yield', variety.id)!];
      if (p.low !== null && q.low !== null)
        expect(q.high! - q.low).toBeGreaterThanOrEqual((p.high! - p.low) * (1 - 1e-9));
    }
  });
  law('of yield scales with the harvest', (garden) => {
    const twice = { ...garden, pickings: garden.pickings.map((p) => ({ ...p, grams: 2 * p.grams })) };
    const [one, two] = [seenIn(folderOf(garden)), seenIn(folderOf(twice))];
    for (const { variety } of one.varieties)
      same(2 * estimateOf(one, 'yield', variety.id)!.estimate!, estimateOf(two, 'yield', variety.id)!.estimate, 1e-9);
    same(plantModel(one, 'yield')!.cvPercent, plantModel(two, 'yield')!.cvPercent, 1e-7);
  });
});

describe('ratings', () => {
  law('keep their differences when one taster is more generous', (garden) => {
    const generous = {
      ...garden,
      scores: garden.scores.map((s) => (s.taster === 0 ? { ...s, score: s.score + 1 } : s)),
    };
    const [plain, other] = [seenIn(folderOf(garden)), seenIn(folderOf(generous))];
    const middle = (seen: SeasonSeen, v: number): number => estimateOf(seen, 'flavour', `v${v}`)!.estimate!;
    for (let v = 1; v < garden.varieties; v++)
      same(middle(plain, v) - middle(plain, 0) + 10, middle(other, v) - middle(other, 0) + 10);
  });
  law('that are all equal have no interval', (garden) => {
    const seen = seenIn(folderOf({ ...garden, scores: garden.scores.map((s) => ({ ...s, score: 5 })) }));
    for (const { variety } of seen.varieties)
      expect(estimateOf(seen, 'flavour', variety.id)).toMatchObject({
        estimate: 5,
        low: null,
        high: null,
        reason: 'no-spread',
      });
  });
  law("have Kendall's W between 0 and 1", (garden) => {
    const w = ratingModel(seenIn(folderOf(garden)), 'flavour')!.kendallW;
    if (w === null) return;
    expect(w).toBeGreaterThanOrEqual(0);
    expect(w).toBeLessThanOrEqual(1 + 1e-12);
  });
});

describe('ripening', () => {
  law('has a median that no look at an unripe plant moves', (garden) => {
    const [few, many] = [seenIn(folderOf({ ...garden, looks: [] })), seenIn(folderOf(garden))];
    few.varieties.forEach((own, i) => expect(many.varieties[i]!.ripening!.median).toEqual(own.ripening!.median));
  });
  law('is moved by looks at unripe plants by no more than the days between looks', (garden) => {
    const [few, many] = [seenIn(folderOf({ ...garden, looks: [] })), seenIn(folderOf(garden))];
    for (const { variety } of few.varieties) {
      const [a, b] = [ripeningModel(few)!.estimates.get(variety.id)!, ripeningModel(many)!.estimates.get(variety.id)!];
      if (a.estimate !== null && b.estimate !== null) expect(Math.abs(a.estimate - b.estimate)).toBeLessThanOrEqual(7);
    }
  });
  law('has a model estimate between the first look back and the last ripe day', (garden) => {
    const seen = seenIn(folderOf({ ...garden, looks: [] }));
    for (const { variety } of seen.varieties) {
      const days = ripenings(seen)
        .filter(({ unit }) => unit.variety === variety.id)
        .map(({ ripe }) => ripe!);
      const { estimate } = ripeningModel(seen)!.estimates.get(variety.id)!;
      if (estimate === null) continue;
      expect(estimate).toBeGreaterThanOrEqual(Math.min(...days) - 7);
      expect(estimate).toBeLessThanOrEqual(Math.max(...days) * (1 + 1e-9));
    }
  });
  law('counts every planting as ripe or unripe', (garden) => {
    for (const { ripening, plantings } of seenIn(folderOf(garden)).varieties)
      expect(ripening!.ripe + ripening!.unripe).toBe(plantings);
  });
  law('comes later by as many days as every picking does', (garden) => {
    const late = { ...garden, looks: [], pickings: garden.pickings.map((p) => ({ ...p, day: p.day + 5 })) };
    const [early, shifted] = [seenIn(folderOf({ ...garden, looks: [] })), seenIn(folderOf(late))];
    early.varieties.forEach((own, i) =>
      same(own.ripening!.median.estimate! + 5, shifted.varieties[i]!.ripening!.median.estimate),
    );
  });
});

describe('comparisons', () => {
  law('give the check variety no comparison with itself, and the others one each', (garden) => {
    const own = comparedIn(folderOf(garden)).get('yield')?.get('all');
    if (!own?.againstCheck) return;
    expect(own.againstCheck.varieties.map(({ variety }) => variety).toSorted()).toEqual(
      Array.from({ length: garden.varieties - 1 }, (_, i) => `v${i + 1}`),
    );
  });
  law('share a letter if and only if they are not separated, whatever the order', (garden) => {
    const [a, b] = [
      comparedIn(folderOf(garden)),
      comparedIn(folderOf({ ...garden, pickings: garden.pickings.toReversed() })),
    ];
    expect([...a.get('yield')!.get('all')!.letters].toSorted()).toEqual(
      [...b.get('yield')!.get('all')!.letters].toSorted(),
    );
  });
});
