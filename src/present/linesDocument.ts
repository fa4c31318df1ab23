import type { CrossReport } from '../decide/lines/crossReport.ts';
import { sowingRows } from '../analyse/seed/sowing.ts';
import { isoDateOrNull } from '../terms/day.ts';
import type { SeedContent } from './pages/seed.ts';
import type { Results } from './publication/schema.ts';

/** What is published of crosses and seed. */
export interface PublishedLines {
  readonly crosses: readonly CrossReport[];
  /** Null where no lot is recorded, or seed is hidden. */
  readonly seed: SeedContent | null;
}

function byRatio(own: CrossReport['traits'][number]): Readonly<Record<string, number>> | null {
  if (!own.genes) return null;
  const shares: Record<string, number> = { none: own.genes.posterior.other.share };
  for (const { ratio, share } of own.genes.posterior.models) shares[ratio] = (shares[ratio] ?? 0) + share;
  return shares;
}

function lineDocument(report: CrossReport): Results['lines'][number] {
  const { cross, newest, mixed, traits, spreads, advice, offTypes, outlook } = report;
  return {
    line: cross.id,
    name: cross.name,
    families: cross.families.map(({ variety }) => variety.id),
    generation: newest?.generation ?? null,
    mixed: mixed?.selfed ?? null,
    mixed_at_most: mixed?.most ?? null,
    ratios: Object.fromEntries(
      traits.map(({ trait, ratios }) => [trait.key, ratios && ratios.map(({ name, p }) => ({ ratio: name, p }))]),
    ),
    models: Object.fromEntries(traits.map((own) => [own.trait.key, byRatio(own)])),
    plants: (advice?.plants ?? []).map(({ plant, trueFor, wanted, passedOn, best }) => ({
      planting: plant.planting.id,
      season: plant.year,
      states: Object.fromEntries(plant.states),
      breeds_true: Object.fromEntries(trueFor),
      wanted_share: wanted?.share ?? null,
      wanted_chance: wanted?.chance ?? null,
      passed_on: Object.fromEntries(passedOn),
      among_best_three: best?.amongThree ?? null,
      carry: advice?.carry.includes(plant) ? ('yes' as const) : ('no' as const),
    })),
    off_types: Object.fromEntries(offTypes.map(({ trait, k, n, atMost }) => [trait, { k, n, at_most: atMost }])),
    spread: Object.fromEntries(
      spreads.map(({ trait, ratio }) => [trait, ratio && { ratio: ratio.ratio, low: ratio.low, high: ratio.high }]),
    ),
    outlook,
  };
}

/** Crosses and seed as results.json has them. */
export function linesDocument({ crosses, seed }: PublishedLines): Pick<Results, 'lines' | 'seed_lots' | 'sowing'> {
  return {
    lines: crosses.map(lineDocument),
    seed_lots: (seed?.lots ?? []).map(({ lot, variety, age, left, tested, expected, plants, seeds, act }) => ({
      lot: lot.id,
      variety: variety?.id ?? null,
      age,
      left,
      germinated: tested,
      expected,
      plants,
      seeds,
      act,
    })),
    sowing: (seed?.dates ?? []).flatMap((own) =>
      sowingRows(own).map(({ chance, out, sow, warm }) => ({
        class: own.classId,
        frost_chance: chance,
        plant_out: isoDateOrNull(out),
        sow: isoDateOrNull(sow),
        soil_warm: isoDateOrNull(warm),
      })),
    ),
  };
}
