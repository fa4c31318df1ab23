import * as fc from 'fast-check';
import type { Folder } from '../sites/folder.ts';

/** A random small trial as rows, before it is written as a folder. */
export interface Garden {
  readonly scale: 'ratio' | 'difference';
  readonly layout: 'together' | 'spread';
  readonly varieties: number;
  readonly plantings: readonly {
    readonly variety: number;
    readonly plants: number;
    readonly block: number;
    readonly start: number;
  }[];
  readonly pickings: readonly {
    readonly planting: number;
    readonly day: number;
    readonly fruits: number;
    readonly grams: number;
  }[];
  readonly looks: readonly { readonly planting: number; readonly day: number }[];
  readonly scores: readonly { readonly taster: number; readonly variety: number; readonly score: number }[];
  readonly measures: readonly { readonly planting: number; readonly value: number }[];
}

export const FIRST_DAY = Date.UTC(2026, 4, 20);
export const iso = (day: number): string => new Date(FIRST_DAY + day * 86_400_000).toISOString().slice(0, 10);

/** Random gardens: 2 to 5 varieties, 2 to 4 plantings each, 3 to 5 tasters who score everything. */
export const gardens: fc.Arbitrary<Garden> = fc
  .record({
    scale: fc.constantFrom('ratio' as const, 'difference' as const),
    layout: fc.constantFrom('together' as const, 'spread' as const),
    varieties: fc.integer({ min: 2, max: 5 }),
    each: fc.integer({ min: 2, max: 4 }),
    tasters: fc.integer({ min: 3, max: 5 }),
    seed: fc.array(fc.integer({ min: 0, max: 9999 }), { minLength: 400, maxLength: 400 }),
  })
  .map(({ scale, layout, varieties, each, tasters, seed }): Garden => {
    let at = 0;
    const next = (low: number, high: number): number => low + (seed[at++ % seed.length]! % (high - low + 1));
    const plantings = Array.from({ length: varieties * each }, (_, i) => ({
      variety: i % varieties,
      plants: next(1, 3),
      block: Math.floor(i / varieties),
      start: 0,
    }));
    const pickings = plantings.flatMap((_, planting) =>
      Array.from({ length: next(1, 3) }, (_, k) => ({
        planting,
        day: 60 + 12 * k + next(0, 9),
        fruits: next(1, 9),
        grams: next(50, 900),
      })),
    );
    const looks = plantings.flatMap((_, planting) => (next(0, 2) === 0 ? [{ planting, day: 40 + next(0, 15) }] : []));
    const scores = Array.from({ length: tasters }, (_, taster) =>
      Array.from({ length: varieties }, (_, variety) => ({ taster, variety, score: next(2, 8) })),
    ).flat();
    const measures = plantings.flatMap((_, planting) =>
      Array.from({ length: next(1, 3) }, () => ({ planting, value: next(40, 160) / 10 })),
    );
    return { scale, layout, varieties, plantings, pickings, looks, scores, measures };
  });

export interface Writing {
  readonly blocks?: boolean;
  readonly interval?: number;
  readonly spot?: number;
  readonly ounces?: boolean;
  readonly inches?: boolean;
  readonly names?: readonly string[];
}

/** A garden as a trial folder. */
export function folderOf(
  garden: Garden,
  { blocks = false, interval = 0.95, spot = 0.2, ounces = false, inches = false, names }: Writing = {},
): Folder {
  const name = (i: number): string => names?.[i] ?? `v${i}`;
  const weight = (grams: number): string => (ounces ? String(grams / 28.349523125) : String(grams));
  const length = (cm: number): string => (inches ? String(cm / 2.54) : String(cm));
  return {
    'trial.yaml': [
      'title: Law',
      `interval: ${interval}`,
      `spot_correlation: ${spot}`,
      `classes: {all: {scale: ${garden.scale}, check_variety: ${name(0)}}}`,
      'traits:',
      '  flavour: {kind: rating, from: 1, to: 9, better: higher}',
      '  fruit_length: {kind: measure, unit: cm}',
      `seasons: {2026: {transplanted: 2026-05-20, harvests: complete, layout: ${garden.layout}}}`,
    ].join('\n'),
    'varieties.csv': `variety,class\n${Array.from({ length: garden.varieties }, (_, i) => `${name(i)},all`).join('\n')}\n`,
    '2026/plantings.csv': `planting,variety,plants${blocks ? ',block' : ''}\n${garden.plantings.map((p, i) => `p${i},${name(p.variety)},${p.plants}${blocks ? `,b${p.block}` : ''}`).join('\n')}\n`,
    '2026/harvests.csv': `date,planting,fruits,${ounces ? 'weight_oz' : 'weight_g'}\n${garden.pickings.map((p) => `${iso(p.day)},p${p.planting},${p.fruits},${weight(p.grams)}`).join('\n')}\n`,
    ...(garden.looks.length === 0
      ? {}
      : {
          '2026/observations.csv': `date,planting,event\n${garden.looks.map((l) => `${iso(l.day)},p${l.planting},unripe`).join('\n')}\n`,
        }),
    '2026/ratings.csv': `date,taster,variety,flavour\n${garden.scores.map((s) => `2026-09-01,t${s.taster},${name(s.variety)},${s.score}`).join('\n')}\n`,
    '2026/measurements.csv': `date,planting,${inches ? 'fruit_length_in' : 'fruit_length_cm'}\n${garden.measures.map((m) => `2026-09-01,p${m.planting},${length(m.value)}`).join('\n')}\n`,
  };
}
