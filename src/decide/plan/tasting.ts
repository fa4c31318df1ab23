import { isHot } from '../../analyse/summaries.ts';
import { ratingModel } from '../../analyse/traitsSeen.ts';
import { nth } from '../../numerics/element.ts';
import { randomStream } from '../../numerics/random.ts';
import { dayOf } from '../../terms/day.ts';
import type { Day } from '../../terms/day.ts';
import { classLookup } from '../../terms/trial.ts';
import type { Variety } from '../../terms/trial.ts';
import { inProportion } from './asked.ts';
import type { PlanSource } from './asked.ts';
import { codesFor, servingOf } from './serving.ts';

/** One sample on a taster's ballot. */
export interface Sample {
  readonly order: number;
  readonly code: string;
  readonly variety: string;
  readonly classId: string;
}

export interface TastingPlan {
  readonly day: Day | null;
  readonly tasters: readonly { readonly name: string; readonly samples: readonly Sample[] }[];
  /** Fewest samples of a taster of each class, in the order served. */
  readonly flights: readonly { readonly classId: string; readonly samples: number; readonly varieties: number }[];
}

/** Who tasted last, in the order of their names; else T1, T2 …, as many as are set. */
function tastersOf({ trial }: PlanSource): readonly string[] {
  const last = trial.seasons.findLast(({ scores }) => scores.length > 0);
  const names = [...new Set((last?.scores ?? []).map(({ taster }) => taster))].filter((name) => name !== 'grower');
  if (names.length > 1) return names.toSorted();
  return Array.from({ length: trial.settings.plan.tasting.tasters }, (_, i) => `T${i + 1}`);
}

/** How hot a variety is held to be: by its scores, else by its claim; 0 for a mild one. */
function heatOf(variety: Variety, { seasons, trial }: PlanSource): number {
  const heat = trial.settings.traits.get('heat');
  const seen = seasons.flatMap((own) => ratingModel(own, 'heat')?.estimates.get(variety.id)?.estimate ?? []).at(-1);
  const claim = Math.max(0, ...(variety.claimHeat ?? []).map((own) => own ?? 0));
  if (heat?.kind !== 'rating' || seen === undefined) return claim > 0 ? Math.log10(claim) : 0;
  // A claim is a power of ten, a score a part of its scale: both from mild to as hot as they go.
  return (6 * (seen - heat.from)) / (heat.to - heat.from);
}

/**
 * Samples of each class for each taster: as many of a class as it has varieties, where all can be tasted; else shared so
 * that every variety is tasted as often as any other, give or take one.
 *
 * @returns  classes × tasters
 */
function flightsOf(sizes: readonly number[], tasters: number, most: number): readonly (readonly number[])[] {
  const all = sizes.reduce((sum, own) => sum + own, 0);
  if (all <= most) return sizes.map((own) => Array.from({ length: tasters }, () => own));
  const totals = inProportion(most * tasters, sizes);
  const room = Array.from({ length: tasters }, () => most);
  return totals.map((total, c) => {
    const own = Array.from({ length: tasters }, () => 0);
    for (let given = 0; given < total; given++) {
      const able = own.map((_, t) => t).filter((t) => nth(own, t) < nth(sizes, c) && nth(room, t) > 0);
      if (able.length === 0) break;
      const t = able.reduce((best, one) =>
        (nth(own, one) - nth(own, best) || nth(room, best) - nth(room, one)) < 0 ? one : best,
      );
      own[t]!++;
      room[t]!--;
    }
    return own;
  });
}

/** The tasting that ratings.csv has already: its codes stand on ballots that may be printed. */
function tastingTaken({ trial, year }: PlanSource): TastingPlan | null {
  const servings = trial.planned?.year === year ? trial.planned.servings : [];
  if (servings.length === 0) return null;
  const classOf = classLookup(trial.varieties);
  const names = [...new Set(servings.map(({ taster }) => taster))];
  const tasters = names.map((name) => ({
    name,
    samples: servings
      .filter(({ taster }) => taster === name)
      .map(({ order, code, variety }) => ({ order, code, variety, classId: classOf(variety) }))
      .toSorted((a, b) => a.order - b.order),
  }));
  const { day } = trial.settings.plan.tasting;
  return { day: day ? dayOf(year, day.month, day.date) : null, tasters, flights: [] };
}

/**
 * A tasting of what will be grown: codes, and what each taster is served in which order; hot classes last, the mildest of
 * a hot class first.
 *
 * @param grown  varieties by class, in the order of the classes
 * @returns      null where nothing is scored
 */
export function tastingOf(
  source: PlanSource,
  grown: readonly (readonly [classId: string, varieties: readonly string[]])[],
): TastingPlan | null {
  const { trial, seasons, year } = source;
  const { plan, traits } = trial.settings;
  const taken = tastingTaken(source);
  if (taken) return taken;
  if (![...traits.values()].some(({ kind }) => kind === 'rating') || grown.length === 0) return null;
  const varietyOf = (id: string): Variety | undefined => trial.varieties.find((own) => own.id === id);
  const heat = new Map(trial.varieties.map((own) => [own.id as string, heatOf(own, source)]));
  const classes = grown
    .map(([classId, ids]) => {
      const hot = ids.filter((id) => {
        const own = varietyOf(id);
        return own !== undefined && isHot(own, seasons, trial);
      });
      const hottest = Math.max(0, ...hot.map((id) => heat.get(id) ?? 0));
      return { classId, ids, isHot: hot.length > 0, hottest };
    })
    .toSorted((a, b) => Number(a.isHot) - Number(b.isHot) || a.hottest - b.hottest);
  const names = tastersOf(source);
  const counts = flightsOf(
    classes.map(({ ids }) => ids.length),
    names.length,
    plan.tasting.samples,
  );
  const stream = randomStream(`${plan.seed}/plan/${year}/tasting`);
  const served = classes.map(({ ids, isHot: mildFirst }, c) => {
    const lists = servingOf(ids.toSorted(), nth(counts, c), stream);
    return mildFirst ? lists.map((list) => list.toSorted((a, b) => (heat.get(a) ?? 0) - (heat.get(b) ?? 0))) : lists;
  });
  const all = [...new Set(served.flat(2))].toSorted();
  const codes = codesFor(all.length, stream);
  const codeOf = new Map(all.map((id, i) => [id, nth(codes, i)]));
  const { day } = plan.tasting;
  return {
    day: day ? dayOf(year, day.month, day.date) : null,
    tasters: names.map((name, t) => {
      const list = classes.flatMap(({ classId }, c) => nth(nth(served, c), t).map((variety) => ({ variety, classId })));
      return { name, samples: list.map((own, i) => ({ ...own, order: i + 1, code: codeOf.get(own.variety) ?? '' })) };
    }),
    flights: classes.map(({ classId, ids }, c) => ({
      classId,
      samples: Math.min(...nth(counts, c)),
      varieties: ids.length,
    })),
  };
}
