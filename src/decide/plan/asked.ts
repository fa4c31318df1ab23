import { grouped } from '../../terms/groups.ts';
import { median } from 'simple-statistics';
import type { SeasonSeen } from '../../analyse/seen.ts';
import { plantsIn } from '../../terms/lines.ts';
import type { Bed, Wish } from '../../terms/plan.ts';
import type { ClassSettings } from '../../terms/settings.ts';
import { everySeason, isLine } from '../../terms/trial.ts';
import type { Line, Planting, Trial, Variety } from '../../terms/trial.ts';
import type { ClassOutcome, NextSeason } from '../nextSeason.ts';
import { halfUp } from './plants.ts';
import type { PlantsAsked, Wanted } from './plants.ts';

/** What a plan is made from. */
export interface PlanSource {
  readonly trial: Trial;
  readonly seasons: readonly SeasonSeen[];
  /** Null where no season is recorded. */
  readonly next: NextSeason | null;
  readonly year: number;
  /** True for a season that has begun: its plantings alone are shown. */
  readonly hasBegun: boolean;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, own) => total + own, 0);

/** Plants of each class in the last season that grew it. */
function grownLast({ trial, year }: PlanSource, classId: string): number {
  const varieties = new Set<string>(trial.varieties.filter((own) => own.classId === classId).map(({ id }) => id));
  const last = trial.seasons.findLast((own) => own.year < year);
  return plantsIn((last?.plantings ?? []).filter(({ variety }) => varieties.has(variety)));
}

/** Whole numbers in proportion to weights that add up to a total: largest remainder. */
export function inProportion(total: number, weights: readonly number[]): readonly number[] {
  const all = sum(weights);
  if (all === 0) return weights.map(() => 0);
  const exact = weights.map((own) => (total * own) / all);
  const whole = exact.map(Math.floor);
  const order = exact
    .map((own, i) => ({ i, rest: own - Math.floor(own) }))
    .toSorted((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of order.slice(0, total - sum(whole))) whole[i]!++;
  return whole;
}

/** Plants that wishes and lines of a class need at all events. */
function neededBy(asked: PlantsAsked): number {
  return sum(asked.varieties.map(({ plants, atLeast }) => plants ?? atLeast ?? 0));
}

/** Places of a bed. */
export const sizeOf = ({ rows, columns, leaveOut }: Bed): number => rows * columns - leaveOut.length;

/** Places in beds that only some classes may use, shared among them as they were last season. */
function keptFor(beds: readonly Bed[], ids: readonly string[], last: readonly number[]): readonly number[] {
  const kept = ids.map(() => 0);
  for (const bed of beds) {
    if (bed.classes === null) continue;
    const own = ids.map((id, i) => (bed.classes?.includes(id) ? Math.max(1, last[i] ?? 0) : 0));
    inProportion(sizeOf(bed), own).forEach((places, i) => (kept[i]! += places));
  }
  return kept;
}

/**
 * Places of each class: as set; else those of its own beds, and of the others its part as it was last season. A class
 * whose wishes need more has them met first where there are that many.
 */
export function placesOf(
  source: PlanSource,
  beds: readonly Bed[],
  classes: readonly ClassSettings[],
): readonly number[] {
  const last = classes.map(({ id }) => grownLast(source, id));
  if (beds.length === 0) return classes.map(({ places }, i) => places ?? last[i] ?? 0);
  const ids = classes.map(({ id }) => id);
  const kept = keptFor(beds, ids, last);
  const pool = sum(beds.filter((bed) => bed.classes === null).map(sizeOf));
  const has = (id: string): boolean => source.trial.varieties.some(({ classId }) => classId === id);
  const needed = classes.map((own) => neededBy(askedOf(source, own, 0)));
  // Places of the pool that a class has, where they are decided: set, or needed.
  const decided = classes.map(({ places }, i) => (places === null ? null : Math.max(0, places - (kept[i] ?? 0))));
  const all = sum(last);
  const total = pool + sum(kept);
  for (;;) {
    const left = Math.max(0, pool - sum(decided.map((own) => own ?? 0)));
    const open = classes.map(({ id }, i) => {
      if (decided[i] !== null || !has(id)) return 0;
      return all > 0 ? Math.max(0, (total * (last[i] ?? 0)) / all - (kept[i] ?? 0)) : 1;
    });
    const isSomeOpen = sum(open) > 0;
    const weights = isSomeOpen ? open : classes.map(({ id }, i) => (decided[i] === null && has(id) ? 1 : 0));
    const parts = inProportion(left, weights);
    const lacks = (i: number): number => (needed[i] ?? 0) - (kept[i] ?? 0);
    const short = classes.findIndex((_, i) => decided[i] === null && (parts[i] ?? 0) < lacks(i));
    const isPossible = sum(classes.map((_, i) => (decided[i] === null ? Math.max(0, lacks(i)) : 0))) <= left;
    if (short < 0 || !isPossible)
      return classes.map(({ places }, i) => places ?? (kept[i] ?? 0) + (decided[i] ?? parts[i] ?? 0));
    decided[short] = lacks(short);
  }
}

/** Plants of a line's next generation: as many as its parent had. */
function linePlants(line: Line, { trial }: PlanSource): number {
  const [seed] = line.from;
  const season = trial.seasons.find(({ year }) => year === seed?.season);
  const parents = (season?.plantings ?? []).filter(({ variety }) => variety === seed?.variety);
  const isOdd = !trial.varieties.some((own) => own.id === seed?.variety && isLine(own));
  const own = isOdd ? 0 : plantsIn(parents);
  if (own > 0) return own;
  return line.generation === 1 ? 1 : (trial.settings.classes.get(line.classId)?.linePlants ?? 1);
}

/** A wish together with the rows of plantings.csv that are grown at all events. */
interface Asks {
  readonly wish: Wish | null;
  readonly rows: number;
}

function bounds({ wish, rows }: Asks, hasBegun: boolean): Pick<Wanted, 'plants' | 'atLeast' | 'atMost'> {
  if (hasBegun) return { plants: rows, atLeast: null, atMost: null };
  const least = Math.max(wish?.atLeast ?? 0, rows);
  return { plants: wish?.plants ?? null, atLeast: least === 0 ? null : least, atMost: wish?.atMost ?? null };
}

/** True where a variety was grown in a season before, whatever was recorded of it. */
const wasGrown = ({ trial, year }: PlanSource, id: string): boolean =>
  everySeason(trial).some((season) => season.year < year && season.plantings.some(({ variety }) => variety === id));

/** How a variety stands in the plan; null for one that is not to be grown. */
function wantedOf(variety: Variety, source: PlanSource, outcome: ClassOutcome | undefined, asks: Asks): Wanted | null {
  const { id, retired } = variety;
  const isAsked = asks.rows > 0 || (asks.wish?.plants ?? 0) > 0 || (asks.wish?.atLeast ?? 0) > 0;
  if (asks.rows === 0 && (asks.wish?.isRefused || source.hasBegun)) return null;
  const advice = outcome?.advice?.varieties.find((own) => own.variety === id);
  const isCheck = source.trial.settings.classes.get(variety.classId)?.checkVariety === id;
  const own = { variety: id, isCheck, ...bounds(asks, source.hasBegun) };
  if (advice) return { ...own, kind: 'tried', share: advice.share, verdict: advice.verdict };
  const grown = wasGrown(source, id);
  if (isLine(variety)) {
    if (grown && !isAsked) return null;
    const plants =
      (source.hasBegun ? asks.rows : asks.wish?.plants) ??
      Math.max(asks.rows, grown ? (asks.wish?.atLeast ?? 0) : linePlants(variety, source));
    return { ...own, kind: 'line', share: null, verdict: null, plants };
  }
  const isOver = retired === true || (typeof retired === 'number' && retired <= source.year);
  if (isOver && !isAsked) return null;
  const kind =
    grown && !outcome?.excluded.some((one) => one.variety === id && one.why === 'untried') ? 'tried' : 'newcomer';
  // Grown, but nothing says how good it is: nothing speaks against it.
  return { ...own, kind, share: kind === 'tried' ? 0 : null, verdict: kind === 'tried' ? 'try-again' : null };
}

/** Rows of a season's plantings that are fixed, by variety. */
export function fixedRows({ trial, year }: PlanSource): ReadonlyMap<string, readonly Planting[]> {
  return grouped(trial.planned?.year === year ? trial.planned.plantings : [], ({ variety }) => variety);
}

/** What is asked of a class. */
export function askedOf(source: PlanSource, own: ClassSettings, places: number): PlantsAsked {
  const { trial, next, year } = source;
  const outcome = next?.classes.find(({ classId }) => classId === own.id);
  const wishes = new Map<string, Wish>((trial.wishes.get(year) ?? []).map((wish) => [wish.variety, wish]));
  const rows = fixedRows(source);
  const varieties = trial.varieties
    .filter(({ classId }) => classId === own.id)
    .flatMap((variety) => {
      const plants = plantsIn(rows.get(variety.id) ?? []);
      return wantedOf(variety, source, outcome, { wish: wishes.get(variety.id) ?? null, rows: plants }) ?? [];
    });
  const tried = varieties.filter(({ kind }) => kind === 'tried').length;
  return {
    places,
    spots: outcome?.case.spots ?? own.spots ?? tried,
    newcomers: own.newcomers,
    newcomerPlants: trial.settings.plan.newcomerPlants,
    isEqual: trial.settings.plan.plants === 'equal',
    bar: own.bar,
    varieties,
  };
}

/** Middle of some days. */
export function middleOf(days: readonly number[]): number | null {
  return days.length === 0 ? null : halfUp(median([...days]));
}

/** Varieties of a class with their plants, those without left out, in the order of their ids. */
export const grownOf = (asked: PlantsAsked, plants: readonly number[]): ReadonlyMap<string, number> =>
  new Map(
    asked.varieties
      .map(({ variety }, i) => [variety, plants[i] ?? 0] as const)
      .filter(([, n]) => n > 0)
      .toSorted(([a], [b]) => (a < b ? -1 : 1)),
  );

export const allPlants = (grown: ReadonlyMap<string, number>): number => sum([...grown.values()]);

export const wishOf = ({ trial, year }: PlanSource, variety: string): Wish | null =>
  (trial.wishes.get(year) ?? []).find((own) => own.variety === variety) ?? null;
